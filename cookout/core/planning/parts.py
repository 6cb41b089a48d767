"""The parts of an event that people change one at a time, so that two of them changing different ones never clash.

A part is named by its kind and its id: ``("crew", "ivo")``, ``("place", "")``. Of the kinds in `LISTED` there are many,
each with an id of its own; of those in `SINGLE` there is one. `("order", KIND)` is the order in which the things of a
listed kind stand.
"""

from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from enum import Enum
from hashlib import sha256
from types import MappingProxyType
from typing import Any

from cookout.core.errors import ProblemError
from cookout.core.planning.event import Event

Part = tuple[str, str]

LISTED: Mapping[str, str] = MappingProxyType(
    {
        "gear": "gear",
        "crew": "crew",
        "servings": "servings",
        "dishes": "dishes",
        "slots": "slots",
        "recipes": "recipes",
        "pins": "pins",
    }
)
"""Kinds with many things, and the field of `Event` that holds them."""

SINGLE: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "heading": (
            "name",
            "timezone",
            "origin",
            "units",
            "break_minutes",
            "setup_minutes",
            "wind_limit_mps",
            "fire_warning",
            "switches",
        ),
        "place": ("place",),
        "weather": ("weather", "hours"),
        "fuel": ("fuel",),
        "food_rules": ("food_rules",),
    }
)
"""Kinds of which there is one, and the fields of `Event` that make it up; the value is a mapping of them."""

ORDER = "order"


class PartError(ProblemError):
    """A part of a kind that events do not have: a fault of the program."""


def read_part(event: Event, part: Part) -> Any:
    """The value of a part: a thing, a mapping of fields, a tuple of ids for an order; None where it is not there."""
    kind, name = part
    if kind in SINGLE:
        return {field: getattr(event, field) for field in SINGLE[kind]}
    if kind == ORDER:
        return tuple(id_of(thing) for thing in getattr(event, LISTED[name]))
    return next((thing for thing in things(event, kind) if id_of(thing) == name), None)


def write_part(event: Event, part: Part, value: Any) -> Event:
    """The event with one part set; None takes a listed thing away, and one that is not there is put at the end."""
    kind, name = part
    if kind in SINGLE:
        return replace(event, **value)
    if kind == ORDER:
        return _reordered(event, name, value)
    there = things(event, kind)
    if value is None:
        changed = tuple(thing for thing in there if id_of(thing) != name)
    elif any(id_of(thing) == name for thing in there):
        changed = tuple(value if id_of(thing) == name else thing for thing in there)
    else:
        changed = (*there, value)
    fields_changed: dict[str, Any] = {LISTED[kind]: changed}
    return replace(event, **fields_changed)


def restore_part(event: Event, part: Part, before: Event) -> Event:
    """The event with a part as it was in `before`; a thing that is not there any more comes back to its place."""
    kind, name = part
    restored = write_part(event, part, read_part(before, part))
    if kind not in LISTED or read_part(event, part) is not None or read_part(before, part) is None:
        return restored
    ahead = [id_of(thing) for thing in things(before, kind)]
    ahead = ahead[: ahead.index(name)]
    order = [id_of(thing) for thing in things(event, kind)]
    place = max((order.index(each) + 1 for each in ahead if each in order), default=0)
    return _reordered(restored, kind, [*order[:place], name, *order[place:]])


def things(event: Event, kind: str) -> tuple[Any, ...]:
    """Everything of a listed kind; `PartError` for a kind that there is not."""
    if kind not in LISTED:
        raise PartError(f"an event has no parts of the kind {kind!r}; use one of {', '.join([*LISTED, *SINGLE])}")
    return tuple(getattr(event, LISTED[kind]))


def id_of(thing: Any) -> str:
    """The id of a thing in a list; a pin has that of its task."""
    return str(getattr(thing, "id", None) or thing.task)


def fingerprint(event: Event, part: Part) -> str:
    """A short word that differs where the part differs; empty where it is not there."""
    value = read_part(event, part)
    return "" if value is None else sha256(repr(_plain(value)).encode()).hexdigest()[:16]


def changed_parts(before: Event, after: Event) -> tuple[Part, ...]:
    """The parts in which two versions of an event differ, orders left out."""
    found: list[Part] = [(kind, "") for kind in SINGLE if read_part(before, (kind, "")) != read_part(after, (kind, ""))]
    for kind in LISTED:
        ids = dict.fromkeys(id_of(thing) for event in (before, after) for thing in things(event, kind))
        found += [(kind, name) for name in ids if read_part(before, (kind, name)) != read_part(after, (kind, name))]
    return tuple(found)


def _reordered(event: Event, kind: str, ids: Sequence[str]) -> Event:
    """Things that the new order does not name keep their place behind the others."""
    rank = {name: place for place, name in enumerate(ids)}
    there = sorted(things(event, kind), key=lambda thing: rank.get(id_of(thing), len(rank)))
    fields_changed: dict[str, Any] = {LISTED[kind]: tuple(there)}
    return replace(event, **fields_changed)


def _plain(value: Any) -> Any:
    """The same as tuples, so that its print is the same however a set or mapping happens to be ordered."""
    if isinstance(value, Enum):
        return value.value
    if is_dataclass(value):
        return tuple((field.name, _plain(getattr(value, field.name))) for field in fields(value))
    if isinstance(value, Mapping):
        return tuple(sorted((str(key), _plain(each)) for key, each in value.items()))
    if isinstance(value, set | frozenset):
        return tuple(sorted(str(each) for each in value))
    if isinstance(value, tuple | list):
        return tuple(_plain(each) for each in value)
    return repr(value)
