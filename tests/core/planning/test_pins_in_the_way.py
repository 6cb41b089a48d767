"""Pins that cannot be kept: the answer names the pin and the rule, and taking out what it offers gives a plan.

Times are worked by hand: in the sample event minute 0 is 08:00, Oskar has a break from 14:40 to 15:00, the show goes
from 13:30 to 14:10, and supper is at 18:00.
"""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from cookout.core.eventfile import read_event
from cookout.core.planning.event import Event, HelperId, Pin, Window
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Limits, Status
from cookout.core.planning.trying import feasible
from cookout.core.planning.ways_out import apply_change
from tests.sample_event import LIV, MARET, OSKAR, PIP, sample_event

LIMITS = Limits(seconds=4.0, workers=2, seed=1)
DEMONSTRATION = Path(__file__).parents[3] / "fixtures" / "events" / "demonstration.toml"


def refused(*pins: Pin, to: Event | None = None) -> PlanRecord:
    """The record of an event with pins that cannot be kept; each way out that it offers is tried."""
    event = replace(to or sample_event(), pins=pins)
    record = plan_event(event, LIMITS).record
    assert record.status is Status.IMPOSSIBLE
    assert record.tasks == ()
    for way in record.ways_out:
        assert feasible(apply_change(event, way.change), LIMITS), way.text
    return record


def said(*pins: Pin, to: Event | None = None) -> str:
    return " ".join(refused(*pins, to=to).obstacles)


# (pin, what is said of it)
ALONE = {
    "skill": (
        Pin("drown", helpers=(LIV,)),
        r"Pinned: “Drown the coals”, by Liv\. Liv lacks the fire skill\.",
    ),
    "minor at the fire": (
        Pin("drown", helpers=(PIP,)),
        r"Pip is a minor whom nobody has allowed to tend the fire\.",
    ),
    "minor at hot iron": (
        Pin("cake.b1.p1.bake.out", helpers=(PIP,)),
        r"Pip is a minor whom nobody has allowed to handle hot iron\.",
    ),
    "too many hands": (
        Pin("drown", helpers=(MARET, OSKAR)),
        r"It takes one helper, and 2 are pinned to it\.",
    ),
    "waiting": (
        Pin("cake.b1.p1.cool", helpers=(LIV,)),
        r"Nobody is needed for it: it is waiting\.",
    ),
    "not there": (
        Pin("stew.chop", at=405, helpers=(OSKAR,)),
        r"“Chop, Bean stew” at 14:45, by Oskar\. Oskar is there from 08:00 to 14:40 and from 15:00 to 19:40\.",
    ),
    "presents": (
        Pin("stew.chop", at=340, helpers=(LIV,)),
        r"Liv presents A cake from the bowl then, and does nothing else\.",
    ),
    "shown by another": (
        Pin("cake.mix", helpers=(MARET,)),
        r"It is shown live by Liv\.",
    ),
    "size of oven": (
        Pin("stew.b1.simmer", units=("10-inch oven A",)),
        r"It wants an oven of 12 inches, and “10-inch oven A” is one of 10\.",
    ),
    "no use": (
        Pin("stew.b1.simmer", units=("chimney",)),
        r"It has no use for “chimney”\.",
    ),
    "no gear": (
        Pin("stew.chop", units=("12-inch oven",)),
        r"It takes no oven, chimney or spot of a table, and so not “12-inch oven”\.",
    ),
    "two ovens": (
        Pin("cake.b1.p1.bake", units=("10-inch oven A", "10-inch oven B")),
        r"It cannot be in “10-inch oven A” and “10-inch oven B” at once\.",
    ),
    "too early for what comes before": (
        Pin("cake.ice", at=340),
        # It keeps for 2 h, is served from 17:45 on (10 min before 18:00, 5 of them to serve).
        r"at 13:40\. “Serve .+” must start within 2 h of it; for that .+: no earlier than 15:45\.",
    ),
    "too late for what comes after": (
        Pin("stew.b1.simmer", at=560),
        r"at 17:20\. “Serve Bean stew” hangs on it; .+ 18:10 \(Supper at 18:00, .+: no later than 16:\d\d\.",
    ),
    "out of the slot": (
        Pin("cake.mix", at=375),
        r"at 14:15\. For it the latest time is 14:10 \(A cake from the bowl\): no later than 14:00\.",
    ),
}


@pytest.mark.parametrize("case", ALONE)
def test_a_pin_that_breaks_a_rule_by_itself_is_named_with_the_rule(case: str) -> None:
    pin, words = ALONE[case]
    record = refused(pin)
    assert len(record.obstacles) == 1
    assert record.obstacles[0].startswith("Pinned: “")
    assert re.search(words, record.obstacles[0]), record.obstacles
    assert any(way.change == {"kind": "unpin", "task": pin.task} for way in record.ways_out)


def test_of_several_pins_only_the_one_in_the_way_is_named() -> None:
    record = refused(Pin("set_up", helpers=(MARET,)), Pin("drown", helpers=(LIV,)), Pin("cake.b1.p1.bake"))
    assert len(record.obstacles) == 1
    assert [way.change["task"] for way in record.ways_out] == ["drown"]


def test_every_pin_that_breaks_a_rule_is_named_and_all_are_taken_out_together() -> None:
    record = refused(Pin("drown", helpers=(LIV,)), Pin("stew.chop", units=("chimney",)))
    assert len(record.obstacles) == 2
    assert {way.change["task"] for way in record.ways_out} == {"stew.chop, drown"}


def test_one_helper_pinned_to_two_things_at_once_is_said_of_both_pins() -> None:
    record = refused(Pin("stew.chop", at=480, helpers=(OSKAR,)), Pin("cake.ice", at=490, helpers=(OSKAR,)))
    assert record.obstacles[0].endswith("Oskar cannot be at both at once.")
    assert "“Chop, Bean stew” at 16:00, by Oskar; “Ice, " in record.obstacles[0]
    assert {way.change["task"] for way in record.ways_out} >= {"stew.chop", "cake.ice"}


def test_one_oven_pinned_to_two_bakes_at_once_is_said_of_both_pins() -> None:
    both = (Pin("cake.b1.p1.bake", units=("10-inch oven A",)), Pin("cake.b1.p2.bake", units=("10-inch oven A",)))
    # The two layers may be baked one after the other, but not both at half past two.
    at = tuple(replace(pin, at=390) for pin in both)
    assert "“10-inch oven A” is not free for both." in said(*at)


def test_two_ovens_pinned_to_one_bake_are_said_of_both_pins() -> None:
    pins = (
        Pin("cake.b1.p1.bake", units=("10-inch oven A",)),
        Pin("cake.b1.p1.bake.out", units=("10-inch oven B",)),
    )
    assert "It cannot be in “10-inch oven A” and “10-inch oven B” at once." in said(*pins)


def test_pinned_times_that_wait_for_one_another_are_named_together() -> None:
    record = refused(Pin("stew.chop", at=420), Pin("stew.b1.simmer", at=425))
    assert "Either can be kept, but not both." in record.obstacles[0]


def test_whoever_comes_too_late_for_what_they_are_pinned_to_may_come_earlier() -> None:
    event = sample_event()
    crew = tuple(replace(h, windows=(Window(230, 700),)) if h.id == OSKAR else h for h in event.crew)
    record = refused(Pin("set_up", helpers=(OSKAR,)), to=replace(event, crew=crew))
    assert "and Oskar is there from 11:50 to 19:40." in record.obstacles[0]
    assert any("Oskar comes at" in way.text for way in record.ways_out)


def test_an_event_that_has_no_plan_without_its_pins_either_gets_the_answer_of_one_without() -> None:
    event = sample_event()
    nobody = tuple(replace(helper, skills=helper.skills - {"fire"}) for helper in event.crew)
    record = plan_event(replace(event, crew=nobody, pins=(Pin("set_up", helpers=(LIV,)),)), LIMITS).record
    assert record.status is Status.IMPOSSIBLE
    assert any("has the fire skill" in said for said in record.obstacles)
    assert not any("Pinned" in said for said in record.obstacles)


def test_in_the_demonstration_the_first_bake_of_the_day_is_held_by_the_first_who_comes() -> None:
    # Setting up takes 20 min from Ivo's and Maren's coming at 10:30, coals 25 min to ash over, laying them 4 min.
    event = read_event(DEMONSTRATION.read_text(encoding="utf-8"), "demonstration.toml")
    words = said(Pin("show-cake.b1.p1.bake", at=11 * 60), to=event)
    assert "Ivo Sandoval or Maren Quill would be the first there, at 10:30" in words
    assert words.endswith("at least 49 min must pass: no earlier than 11:19.")


def test_a_helper_pinned_beyond_their_coming_is_named() -> None:
    event = read_event(DEMONSTRATION.read_text(encoding="utf-8"), "demonstration.toml")
    words = said(Pin("set_up", helpers=(HelperId("pell"),)), to=event)
    assert "It must start from 10:30 to 11:25, and Pell Okafor is there from 11:30 to 16:00." in words
