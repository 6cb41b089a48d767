"""The texts of a plan's record in the other system of units.

A record is made in its event's units, and each reader has units of their own. So the same plan is recorded a second
time with nothing but the units changed, and what then reads otherwise is kept beside the record: texts by JSON pointer
(RFC 6901) into the record's JSON.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.recording import record_of
from cookout.core.planning.recordjson import to_json
from cookout.core.planning.refusals import refusals, sentences
from cookout.core.planning.result import Result
from cookout.core.quantities import Units


def other_units(units: str) -> str:
    """The other of the two systems of units."""
    return (Units.METRIC if Units(units) is Units.US else Units.US).value


def texts_in(expanded: Expanded, result: Result, record: PlanRecord, units: str) -> dict[str, str]:
    """The texts of a record that are others in those units, by where they stand in its JSON.

    `record` is what was made of `expanded` and `result`; empty where it is in those units already.
    """
    if record.units == units:
        return {}
    other = in_units(expanded, units)
    again = record_of(other, result, obstacles=_obstacles(expanded, other, record), ways_out=record.ways_out)
    return dict(_differences(to_json(record), to_json(again), ""))


def in_units(expanded: Expanded, units: str) -> Expanded:
    """The same problem of the same event, its texts in those units."""
    other = expand(
        replace(expanded.event, units=units), share_firings=expanded.share_firings, expected=expanded.expected
    )
    same = (other.problem.tasks, other.problem.links) == (expanded.problem.tasks, expanded.problem.links)
    assert same, "units change texts alone"
    # What was warned of after expansion names no quantity.
    later = expanded.warnings[len(other.warnings) :]
    warnings = (*other.warnings, *later)
    return replace(other, problem=expanded.problem, warnings=warnings, near_units=expanded.near_units)


def _obstacles(expanded: Expanded, other: Expanded, record: PlanRecord) -> tuple[str, ...]:
    """What stands in the way; food that waits too long is told with temperatures, all else without."""
    if record.obstacles == sentences(refusals(expanded.event)):
        return sentences(refusals(other.event))
    return record.obstacles


def _differences(before: object, after: object, pointer: str) -> Iterator[tuple[str, str]]:
    if isinstance(before, dict) and isinstance(after, dict):
        assert before.keys() == after.keys(), f"{pointer}: units change texts alone"
        for key, value in before.items():
            yield from _differences(value, after[key], f"{pointer}/{_escaped(key)}")
    elif isinstance(before, list) and isinstance(after, list):
        for place, (value, other) in enumerate(zip(before, after, strict=True)):
            yield from _differences(value, other, f"{pointer}/{place}")
    elif before != after:
        assert isinstance(before, str), f"{pointer}: units change texts alone"
        assert isinstance(after, str), f"{pointer}: units change texts alone"
        yield pointer, after


def with_texts(payload: Mapping[str, Any], texts: Mapping[str, str]) -> dict[str, Any]:
    """A record's JSON with the texts put in at their pointers; what they leave as it is is shared with `payload`.

    `KeyError` or `IndexError` where a pointer leads nowhere, as with texts of another record.
    """
    changed = dict(payload)
    own: dict[str, Any] = {"": changed}
    for pointer, text in texts.items():
        way, _, last = pointer.rpartition("/")
        _set(_own(own, way), last, text)
    return changed


def _own(own: dict[str, Any], pointer: str) -> Any:
    """The object or list at a pointer, copied from the payload the first time that something in it is set."""
    if pointer not in own:
        way, _, last = pointer.rpartition("/")
        holder = _own(own, way)
        found = holder[int(last)] if isinstance(holder, list) else holder[_unescaped(last)]
        own[pointer] = list(found) if isinstance(found, list) else dict(found)
        _set(holder, last, own[pointer])
    return own[pointer]


def _set(holder: Any, key: str, value: object) -> None:
    if isinstance(holder, list):
        holder[int(key)] = value
    elif _unescaped(key) in holder:
        holder[_unescaped(key)] = value
    else:
        raise KeyError(key)


def _escaped(key: str) -> str:
    return key.replace("~", "~0").replace("/", "~1")


def _unescaped(key: str) -> str:
    return key.replace("~1", "/").replace("~0", "~")
