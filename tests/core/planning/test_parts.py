"""Parts of an event: read, written, told apart."""

from dataclasses import replace

import pytest

from cookout.core.planning.event import Pin
from cookout.core.planning.parts import (
    LISTED,
    SINGLE,
    PartError,
    changed_parts,
    fingerprint,
    id_of,
    read_part,
    restore_part,
    things,
    write_part,
)
from tests.sample_event import LIV, MARET, sample_event


def every_part() -> list[tuple[str, str]]:
    event = sample_event()
    listed = [(kind, id_of(thing)) for kind in LISTED for thing in things(event, kind)]
    return [*listed, *((kind, "") for kind in SINGLE), ("order", "dishes")]


@pytest.mark.parametrize("part", every_part(), ids="-".join)
def test_writing_what_was_read_changes_nothing(part: tuple[str, str]) -> None:
    event = sample_event()
    assert write_part(event, part, read_part(event, part)) == event


def test_a_changed_helper_is_the_one_part_that_differs() -> None:
    event = sample_event()
    changed = write_part(event, ("crew", LIV), replace(event.helper(LIV), name="Liv Aune"))
    assert changed_parts(event, changed) == (("crew", LIV),)
    assert fingerprint(changed, ("crew", LIV)) != fingerprint(event, ("crew", LIV))
    assert fingerprint(changed, ("crew", MARET)) == fingerprint(event, ("crew", MARET))


def test_none_takes_a_thing_away_and_a_new_one_comes_last() -> None:
    event = sample_event()
    liv = event.helper(LIV)
    without = write_part(event, ("crew", LIV), None)
    assert LIV not in [helper.id for helper in without.crew]
    assert fingerprint(without, ("crew", LIV)) == ""
    assert write_part(without, ("crew", LIV), liv).crew[-1] == liv


def test_a_new_order_keeps_what_it_does_not_name_behind() -> None:
    event = sample_event()
    ids = read_part(event, ("order", "dishes"))
    turned = write_part(event, ("order", "dishes"), (ids[-1], ids[0]))
    assert read_part(turned, ("order", "dishes")) == (ids[-1], ids[0], *ids[1:-1])


def test_a_fingerprint_does_not_depend_on_how_a_set_is_ordered() -> None:
    event = sample_event()
    helper = event.helper(MARET)
    same = replace(helper, skills=frozenset(sorted(helper.skills, reverse=True)))
    assert fingerprint(write_part(event, ("crew", MARET), same), ("crew", MARET)) == fingerprint(event, ("crew", MARET))


def test_a_pin_goes_by_the_task_that_it_pins() -> None:
    pin = Pin("stew.bake", 120)
    pinned = write_part(sample_event(), ("pins", "stew.bake"), pin)
    assert read_part(pinned, ("pins", "stew.bake")) == pin
    assert read_part(pinned, ("pins", "other")) is None


def test_a_kind_that_events_do_not_have_is_refused_by_name() -> None:
    with pytest.raises(PartError, match="chairs"):
        read_part(sample_event(), ("chairs", "1"))


def test_what_was_taken_out_comes_back_to_its_place_among_those_that_are_left() -> None:
    event = sample_event()
    first, second, *_rest = [str(helper.id) for helper in event.crew]
    without = write_part(write_part(event, ("crew", first), None), ("crew", second), None)
    assert restore_part(without, ("crew", second), event).crew[0].id == second
    whole = restore_part(restore_part(without, ("crew", second), event), ("crew", first), event)
    assert whole.crew == event.crew
