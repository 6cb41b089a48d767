"""One plan in US and in metric units: the same words around quantities that agree to rounding."""

import json
import tomllib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from cookout.core.eventfile import read_event, write_event
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import FoodKind, Keeps
from cookout.core.planning.event import Event, Place, WeatherFrom
from cookout.core.planning.expand import expand
from cookout.core.planning.otherunits import in_units, other_units, texts_in, with_texts
from cookout.core.planning.pipeline import STOPPED, Outcome, outcome_of, plan_event
from cookout.core.planning.recordjson import from_json, to_json
from cookout.core.planning.result import Limits, Result, Status
from cookout.core.quantities import fahrenheit_to_celsius
from tests.core.planning.build import event, recipe
from tests.said_quantities import METRIC, US, said, without_quantities

EVENTS = Path(__file__).parents[3] / "fixtures" / "events"
LIMITS = Limits(seconds=2, workers=2, seed=1)


def event_of(name: str) -> Event:
    return read_event((EVENTS / f"{name}.toml").read_text(encoding="utf-8"), f"{name}.toml")


def leaves(value: Any, pointer: str = "") -> Iterator[tuple[str, Any]]:
    """Every plain value of a JSON with its pointer."""
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else None
    if items is None:
        yield pointer, value
        return
    for key, inner in items:
        yield from leaves(inner, f"{pointer}/{key}")


def in_both(outcome: Outcome) -> list[tuple[str, Any, Any]]:
    """Every plain value of the record beside what it is in the other units, with its pointer."""
    payload = to_json(outcome.record)
    other = with_texts(payload, outcome.texts)
    return [(pointer, one, two) for (pointer, one), (_, two) in zip(leaves(payload), leaves(other), strict=True)]


@pytest.mark.parametrize("name", ["supper", "demonstration", "festival"])
def test_us_and_metric_agree_to_rounding_in_every_text_of_a_plan(name: str) -> None:
    outcome = plan_event(replace(event_of(name), fire_warning="", wind_limit_mps=8.94), LIMITS)
    assert outcome.record.tasks
    own, foreign = (US, METRIC) if outcome.record.units == "us" else (METRIC, US)
    compared = 0
    for pointer, one, two in in_both(outcome):
        if one == two or pointer == "/units":
            continue
        assert without_quantities(one) == without_quantities(two), pointer
        before, after = said(one), said(two)
        assert {each.unit for each in before} <= own, pointer
        assert {each.unit for each in after} <= foreign, pointer
        assert all(a.agrees_with(b) for a, b in zip(before, after, strict=True)), (one, two)
        compared += len(before)
    assert compared > 30


@pytest.mark.parametrize("name", ["supper", "demonstration", "festival"])
def test_what_reads_alike_in_both_units_says_no_quantity_but_in_the_planners_own_words(name: str) -> None:
    made = event_of(name)
    own_words = sorted({text for _, text in leaves(as_plain(made)) if isinstance(text, str) and text}, key=len)[::-1]
    for pointer, one, two in in_both(plan_event(made, LIMITS)):
        if isinstance(one, str) and one == two and not pointer.endswith("/source"):
            left = one
            for words in own_words:
                left = left.replace(words, "")
            assert said(left) == [], (pointer, one)


def as_plain(made: Event) -> Any:
    """What the planner wrote, as it stands in the event file."""
    return tomllib.loads(write_event(made))


def test_a_record_in_other_units_is_one_that_those_units_would_have_made() -> None:
    made = event_of("demonstration")
    # One worker and one seed make the same plan twice.
    us, metric = (plan_event(replace(made, units=units), replace(LIMITS, workers=1)) for units in ("us", "metric"))
    shown = from_json(with_texts(to_json(us.record), us.texts))
    assert replace(shown, seconds=0) == replace(metric.record, seconds=0)
    back = from_json(with_texts(to_json(metric.record), metric.texts))
    assert replace(back, seconds=0) == replace(us.record, seconds=0)


def test_texts_travel_as_json_and_change_nothing_in_the_record_they_are_put_into() -> None:
    outcome = plan_event(event_of("supper"), LIMITS)
    payload = to_json(outcome.record)
    before = json.dumps(payload)
    texts = json.loads(json.dumps(outcome.texts))
    other = with_texts(payload, texts)
    assert json.dumps(payload) == before
    assert other["fuel"]["mass"] != payload["fuel"]["mass"]
    assert other["links"] is payload["links"]
    assert with_texts(payload, {}) == payload


def test_a_pointer_that_leads_nowhere_is_an_error_and_signs_of_pointers_in_keys_are_read() -> None:
    payload = {"a/b": {"~c": ["x", "y"]}, "d": "z"}
    assert with_texts(payload, {"/a~1b/~0c/1": "new"}) == {"a/b": {"~c": ["x", "new"]}, "d": "z"}
    for pointer in ("/e", "/a~1b/f", "/a~1b/~0c/2"):
        with pytest.raises((KeyError, IndexError)):
            with_texts(payload, {pointer: "new"})


def test_there_is_nothing_to_change_in_the_units_of_the_event_itself() -> None:
    outcome = plan_event(event_of("supper"), LIMITS)
    assert texts_in(outcome.expanded, outcome.result, outcome.record, "us") == {}
    assert (other_units("us"), other_units("metric")) == ("metric", "us")


def test_food_that_is_refused_is_told_in_both_units() -> None:
    meal = recipe(food=FoodKind.POULTRY, rests=180, keeps=Keeps(air=240))
    outcome = plan_event(replace(event((meal,)), weather=Weather(air_c=fahrenheit_to_celsius(80))), LIMITS)
    assert outcome.record.tasks == ()
    assert any(unit.unit == "°F" for text in outcome.record.obstacles for unit in said(text))
    other = with_texts(to_json(outcome.record), outcome.texts)
    for one, two in zip(outcome.record.obstacles, other["obstacles"], strict=True):
        assert {each.unit for each in said(two)} == {"°C"}
        assert all(a.agrees_with(b) for a, b in zip(said(one), said(two), strict=True))


def test_without_a_plan_there_is_still_the_checklist_in_both_units() -> None:
    outcome = outcome_of(expand(event_of("festival")), Result(Status.NONE_FOUND, None, (), 0.0), obstacles=(STOPPED,))
    assert (outcome.record.tasks, outcome.record.obstacles) == ((), (STOPPED,))
    assert any(pointer.startswith("/checklist") for pointer in outcome.texts)


def test_two_airs_that_round_to_one_degree_in_other_units_stay_one_warning_in_both() -> None:
    # 89 and 90 °F are both 32 °C: one dish whose layers cool in either, and in both is too warm to cool to 86 °F.
    made = event_of("demonstration")
    airs = [Weather(air_c=fahrenheit_to_celsius(degrees)) for degrees in (89, 90)]
    warm = replace(made, weather=airs[0], hours=(WeatherFrom(13 * 60 + 5, airs[1]),))
    expected = {task: 780 + number for number, task in enumerate(expand(warm).info)}
    expanded = expand(warm, expected=expected)
    assert {expanded.weather_of[task].air_c for task in expanded.weather_of} == {weather.air_c for weather in airs}
    assert any("does not cool" in warning.text for warning in expanded.warnings)
    assert len(in_units(expanded, "metric").warnings) == len(expanded.warnings)


def test_what_the_height_changes_is_told_with_both_degrees_in_either_units() -> None:
    made = event_of("supper")
    high = replace(made, place=Place("Ridge", elevation_m=2500), switches=replace(made.switches, altitude_advice=True))
    outcome = plan_event(high, LIMITS)
    (boils, *_) = [each.text for each in outcome.record.advice if "boils at" in each.text]
    celsius, fahrenheit = said(boils)
    assert (celsius.unit, fahrenheit.unit, celsius.agrees_with(fahrenheit)) == ("°C", "°F", True)
    assert not any(pointer.startswith("/advice") for pointer in outcome.texts)
