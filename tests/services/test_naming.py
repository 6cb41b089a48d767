"""Ids made from names."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.eventfile.faults import FaultList
from cookout.core.eventfile.fields import is_id
from cookout.services.naming import id_for


@pytest.mark.parametrize(
    ("name", "taken", "expected"),
    [
        ("Ivo Sandoval", (), "ivo-sandoval"),
        ("Ivo Sandoval", ("ivo-sandoval",), "ivo-sandoval-2"),
        ("Ivo Sandoval", ("ivo-sandoval", "ivo-sandoval-2"), "ivo-sandoval-3"),
        ("Sørine Æble", (), "srine-ble"),
        ("木村", (), "helper"),
        ("木村", ("helper",), "helper-2"),
        ("-- __ --", (), "helper"),
    ],
)
def test_an_id_is_the_name_in_small_letters_numbered_where_it_is_taken(
    name: str, taken: tuple[str, ...], expected: str
) -> None:
    assert id_for(name, taken, "helper") == expected


@given(st.text(max_size=300), st.integers(0, 3))
def test_whatever_the_name_an_event_file_takes_the_id(name: str, often: int) -> None:
    taken: list[str] = []
    for _time in range(often + 1):
        found = id_for(name, taken, "thing")
        assert found not in taken
        assert is_id(found, (), "id", FaultList("event.toml", {}))
        taken.append(found)
