"""Whatever a file holds, reading gives an event or an `EventFileError`, and nothing else."""

import copy
import tomllib
from typing import Any

import pytest
import tomli_w
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cookout.core.errors import EventFileError, Fault
from cookout.core.eventfile import read_event, schema
from tests.core.eventfile.files import FIXTURE_NAMES, SOUND, fixture_text

Node = Any

KEYS = sorted({key for keys in schema.KEYS.values() for key in keys})
SCALARS = st.one_of(
    st.booleans(),
    st.integers(-(10**20), 10**20),
    st.floats(),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=20),
    st.datetimes(),
    st.dates(),
    st.times(),
    st.sampled_from(
        ["18:00", "24:00", "9999-12-31 23:59", "0001-01-01 00:00-00:01", "350 F", "1e9 F", "12 in", "Etc", ""]
    ),
)
VALUES = st.recursive(
    SCALARS,
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(st.sampled_from(KEYS), inner, max_size=4)),
    max_leaves=8,
)
PARSED = [tomllib.loads(text) for text in (SOUND, *map(fixture_text, FIXTURE_NAMES))]


def faults_or_none(text: str) -> tuple[Fault, ...] | None:
    """The faults of a text, None where it has none and is read."""
    try:
        read_event(text, "any.toml")
    except EventFileError as error:
        return error.faults
    return None


def read_or_refuse(text: str) -> None:
    """Read a text; a refusal has faults, each with its place and remedy."""
    faults = faults_or_none(text)
    assert faults is None or len(faults) > 0
    for fault in faults or ():
        assert fault.where.startswith("any.toml")
        assert fault.what
        assert fault.remedy
        assert "\n" not in fault.where + fault.remedy


@settings(deadline=None)
@given(st.text())
def test_any_text_is_read_or_refused(text: str) -> None:
    read_or_refuse(text)


@settings(deadline=None)
@given(st.dictionaries(st.sampled_from(schema.KEYS[""]), VALUES))
def test_any_tables_are_read_or_refused(data: dict[str, Node]) -> None:
    read_or_refuse(tomli_w.dumps(data))


@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.data())
def test_a_sound_file_with_any_value_anywhere_is_read_or_refused(data: st.DataObject) -> None:
    changed = copy.deepcopy(PARSED[0])
    for _ in range(data.draw(st.integers(1, 3))):
        _change_somewhere(data, changed)
    read_or_refuse(tomli_w.dumps(changed))


@settings(max_examples=60, deadline=None)
@given(st.data(), st.sampled_from(PARSED[1:]))
def test_our_own_events_with_any_value_anywhere_are_read_or_refused(
    data: st.DataObject, event: dict[str, Node]
) -> None:
    changed = copy.deepcopy(event)
    _change_somewhere(data, changed)
    read_or_refuse(tomli_w.dumps(changed))


@pytest.mark.timeout(20)
@pytest.mark.parametrize("table", ["dishes", "demo_slots", "gear", "crew", "servings", "pins"])
def test_a_file_of_endless_tables_is_refused_before_long(table: str) -> None:
    faults = faults_or_none(SOUND + f'[[{table}]]\nid = "x"\n' * 20_000)
    assert faults is not None
    assert any("entries" in fault.what and fault.where == f"any.toml: {table}" for fault in faults)


def _change_somewhere(data: st.DataObject, node: Node) -> None:
    """Go down to some place and take it out or put any value there."""
    while True:
        keys = list(node) if isinstance(node, dict) else list(range(len(node)))
        if not keys:
            return
        key = data.draw(st.sampled_from(keys))
        if not isinstance(node[key], dict | list) or data.draw(st.integers(0, 3)) == 0:
            break
        node = node[key]
    if data.draw(st.booleans()):
        del node[key]
    else:
        node[key] = data.draw(VALUES)
