"""Weather that changes by the hour: each bake is reckoned for its own, and a plan that moves is made again."""

from dataclasses import replace

import pytest

from cookout.core.fire.weather import Weather
from cookout.core.planning.check import check, check_event
from cookout.core.planning.earlier import Course
from cookout.core.planning.event import Event, WeatherFrom
from cookout.core.planning.expand import expand
from cookout.core.planning.pipeline import plan_event, settled, solve_either_way, with_late_weather
from cookout.core.planning.problem import TaskId
from cookout.core.planning.result import Limits, Watch
from tests.core.planning.build import event, serving

BAKE = TaskId("bread.b1.bake")
CALM, STORM = Weather(air_c=25), Weather(air_c=2, wind_mps=9, gust_mps=12)
LIMITS = Limits(seconds=4, workers=1, seed=1)


def turning_at(minute: int) -> Event:
    """A loaf for six o'clock (minute 360) on a day that turns cold and windy at that minute."""
    return replace(event(weather=CALM), hours=(WeatherFrom(minute, STORM),))


def test_the_weather_of_a_minute_is_that_of_the_last_change_before_it() -> None:
    day = replace(event(weather=CALM), hours=(WeatherFrom(100, STORM), WeatherFrom(200, CALM)))
    assert [day.weather_at(minute) for minute in (-5, 99, 100, 199, 200)] == [CALM, CALM, STORM, STORM, CALM]
    assert day.weather_between(50, 100) == (CALM, STORM)
    assert (day.warmest_c(100, 150), day.warmest_c(100, 200)) == (2, 25)


def test_a_bake_takes_the_coals_and_turns_of_its_hour() -> None:
    before, after = (expand(turning_at(minute)) for minute in (340, 200))
    assert before.weather_of[BAKE] == CALM
    assert after.weather_of[BAKE] == STORM
    assert after.bake_runs[0].lid + after.bake_runs[0].under > before.bake_runs[0].lid + before.bake_runs[0].under
    assert sum(".turn" in task for task in after.info) > sum(".turn" in task for task in before.info)


def test_what_an_earlier_plan_says_of_the_hour_comes_before_the_guess() -> None:
    day = turning_at(340)
    assert expand(day, expected={BAKE: 345}).weather_of[BAKE] == STORM
    assert expand(day, expected={BAKE: 339}).weather_of[BAKE] == CALM


@pytest.mark.parametrize("minute", [318, 322, 326, 330, 345])
def test_wherever_the_weather_turns_the_plan_is_reckoned_for_the_hour_it_falls_into(minute: int) -> None:
    expanded, result = solve_either_way(turning_at(minute), LIMITS, Watch())
    assert result.plan is not None
    assert expanded.weather_of[BAKE] == expanded.event.weather_at(result.plan.start(BAKE))
    assert all("another hour" not in warning.text for warning in expanded.warnings)
    assert (*check(expanded.problem, result.plan), *check_event(expanded, result.plan)) == ()


def test_quick_plans_settle_the_hours_before_the_solver_starts() -> None:
    # The guess is an hour before the serving, in the storm; the bread is in after it.
    day = replace(event(weather=STORM), hours=(WeatherFrom(310, CALM),))
    assert expand(day).weather_of[BAKE] == STORM
    made, found = settled(Course(day), 1, share=True)
    assert (made.weather_of[BAKE], found) == (CALM, True)


def test_a_bake_that_stays_reckoned_for_another_hour_is_told() -> None:
    day = turning_at(200)
    amiss = expand(day, expected={BAKE: 100})
    _, result = solve_either_way(day, LIMITS, Watch())
    told = with_late_weather(amiss, result).warnings
    assert told[-1].about == "weather"
    assert "Bake" in told[-1].text


def test_a_day_of_one_weather_is_solved_once() -> None:
    outcome = plan_event(event(servings=(serving(),)), LIMITS)
    assert outcome.record.weather.startswith("70 °F")
    assert ";" not in outcome.record.weather


def test_the_record_tells_what_changes_and_when() -> None:
    line = plan_event(turning_at(200), LIMITS).record.weather
    assert line == (
        "77 °F, wind 0 mph, humidity 50 %, shade; from 15:20 36 °F, wind 20 mph, gusts 27 mph, humidity 50 %, shade"
    )
