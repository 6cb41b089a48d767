"""The checklist of the place: each line from the event's facts, what is not known is asked, local codes first."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.planning.expanded import FIRE_KINDS, TaskKind
from cookout.core.quantities import METRES_IN_FOOT
from cookout.core.safety.cautions import LOCAL_FIRST, caution_for, done_at
from cookout.core.safety.finding import Severity
from cookout.core.safety.limits import FOOD_CODE
from cookout.core.safety.site import Enclosure, SiteFacts, SiteItem, Stage, State, checklist, site_findings

GOOD = SiteFacts(
    dry_grass=False,
    wind_mps=3,
    gust_mps=5,
    wind_limit_mps=8,
    clear_m=20 * METRES_IN_FOOT,
    enclosure=Enclosure.OPEN,
    children=False,
    water=True,
    shovel=True,
    metal_can=True,
    adults_at_fire=2,
)


def item(facts: SiteFacts, name: str, units: str = "us") -> SiteItem:
    return next(found for found in checklist(facts, units=units) if found.id == name)


def test_a_good_place_has_only_things_to_do_and_local_codes_come_first() -> None:
    items = checklist(GOOD)
    assert {found.state for found in items} == {State.DO}
    assert LOCAL_FIRST in items[0].text
    assert site_findings(items) == ()
    assert all(found.source for found in items)


def test_what_nobody_said_is_asked_and_never_taken_for_good() -> None:
    items = {found.id: found for found in checklist(SiteFacts())}
    asked = {name for name, found in items.items() if found.state is State.ASK}
    assert asked == {
        "wind",
        "carbon_monoxide",
        "distance",
        "ground",
        "water",
        "shovel",
        "adults",
        "children",
        "metal_can",
    }


def test_a_recorded_fire_warning_stops_the_fire_and_none_is_computed() -> None:
    stopped = item(replace(GOOD, fire_warning="Red flag until 20:00"), "fire_warning")
    assert (stopped.state, "Red flag until 20:00" in stopped.text) == (State.STOP, True)
    windy_and_dry = replace(GOOD, dry_grass=True, wind_mps=7.9, gust_mps=7.9)
    assert item(windy_and_dry, "fire_warning").state is State.DO


@pytest.mark.parametrize(("gust", "state"), [(8.0, State.DO), (8.1, State.STOP)])
def test_wind_and_gust_are_held_against_the_organisers_own_limit(gust: float, state: State) -> None:
    assert item(replace(GOOD, gust_mps=gust), "wind").state is state


# 10 ft: a state fire code; 15 ft: an insurer; 25 ft for open fires. All read in copies.
@pytest.mark.parametrize(
    ("feet", "open_fire", "state"),
    [
        (9.9, False, State.STOP),
        (10, False, State.WARNING),
        (14.9, False, State.WARNING),
        (15, False, State.DO),
        (24.9, True, State.STOP),
        (25, True, State.DO),
    ],
)
def test_distance_is_ten_feet_better_fifteen_and_twenty_five_for_open_fires(
    feet: float, open_fire: bool, state: State
) -> None:
    assert item(replace(GOOD, clear_m=feet * METRES_IN_FOOT, open_fire=open_fire), "distance").state is state


def test_a_distance_that_rounds_to_what_is_wanted_is_still_told_to_be_short() -> None:
    near = replace(GOOD, clear_m=9.7 * METRES_IN_FOOT)
    assert item(near, "distance").text.startswith("A little less than 10 ft to the nearest thing that burns; 10 ft")
    assert item(near, "distance", "metric").text.startswith("A little less than 3 m to the nearest")
    assert item(replace(near, clear_m=2.0), "distance").text.startswith("Only 7 ft to the nearest")


@pytest.mark.parametrize("place", [Enclosure.TENT, Enclosure.CABIN, Enclosure.VEHICLE, Enclosure.ENCLOSED])
def test_no_fire_is_lit_where_carbon_monoxide_gathers(place: Enclosure) -> None:
    found = item(replace(GOOD, enclosure=place), "carbon_monoxide")
    assert (found.state, "carbon monoxide" in found.text) == (State.STOP, True)


def test_under_an_open_roof_carbon_monoxide_is_warned_of() -> None:
    found = item(replace(GOOD, enclosure=Enclosure.OPEN_SHELTER), "carbon_monoxide")
    assert (found.state, "every side open" in found.text) == (State.WARNING, True)


def test_dry_grass_takes_time_to_rake_and_wet() -> None:
    dry = replace(GOOD, dry_grass=True)
    tasks = {found.id: found.minutes for found in checklist(dry) if found.is_task and found.stage is Stage.SET_UP}
    assert (tasks["ground"], tasks["soak"]) == (15, 5)
    assert "bare earth in a circle of 10 ft" in item(dry, "ground").text
    assert "3 m" in item(dry, "ground", "metric").text


def test_water_and_shovel_are_there_or_there_is_no_fire() -> None:
    assert item(replace(GOOD, water=False), "water").state is State.STOP
    assert item(replace(GOOD, shovel=False), "shovel").state is State.STOP


def test_adults_stay_at_the_fire() -> None:
    assert item(replace(GOOD, adults_at_fire=0), "adults").state is State.STOP
    assert item(replace(GOOD, fire_minors=1), "adults").state is State.WARNING


def test_children_have_a_ring_of_three_feet_and_it_takes_time_to_mark() -> None:
    ring = item(replace(GOOD, children=True), "children")
    assert (ring.is_task, "3 ft" in ring.text) == (True, True)
    assert "children" not in {found.id for found in checklist(GOOD)}


def test_ash_is_drowned_or_cold_for_two_days_in_a_metal_can() -> None:
    assert "48 hours" in item(GOOD, "drown").text
    assert item(replace(GOOD, metal_can=False), "metal_can").state is State.WARNING


def test_without_a_fire_only_local_codes_are_left() -> None:
    assert [found.id for found in checklist(SiteFacts(has_fire=False))] == ["local_codes"]


def test_findings_carry_how_bad_it_is() -> None:
    found = site_findings(checklist(replace(GOOD, water=False, dry_grass=True, shovel=None)))
    assert {finding.severity for finding in found} == {Severity.REFUSED, Severity.WARNING, Severity.NOTE}
    assert all(finding.remedy == LOCAL_FIRST for finding in found)


RANK = {State.DO: 0, State.ASK: 1, State.WARNING: 2, State.STOP: 3}


@given(
    wind=st.floats(0, 20),
    more=st.floats(0, 10),
    clear=st.floats(0, 15),
    nearer=st.floats(0, 5),
    open_fire=st.booleans(),
    limit=st.floats(0, 20),
)
def test_more_wind_or_less_distance_is_never_judged_safer(
    wind: float, more: float, clear: float, nearer: float, open_fire: bool, limit: float
) -> None:
    calm = replace(GOOD, gust_mps=wind, clear_m=clear, open_fire=open_fire, wind_limit_mps=limit)
    worse = replace(calm, gust_mps=wind + more, clear_m=max(0.0, clear - nearer))
    for name in ("wind", "distance"):
        assert RANK[item(calm, name).state] <= RANK[item(worse, name).state]


def test_every_kind_of_hot_work_has_its_caution_in_the_users_units() -> None:
    for kind in FIRE_KINDS:
        caution = caution_for(kind.value)
        assert caution is not None, kind
        assert caution.hot
    light, metric = caution_for("light"), caution_for("light", "metric")
    assert light is not None
    assert metric is not None
    assert all(word in light.text for word in ("carbon monoxide", "3 ft", "10 ft", LOCAL_FIRST))
    assert "ft" not in metric.text
    assert caution_for("rest") is None
    assert {kind.value for kind in TaskKind} - {"rest", "finish", "talk"} == {
        kind.value for kind in TaskKind if caution_for(kind.value)
    }


def test_how_hot_the_middle_must_be_is_told_with_its_section() -> None:
    assert done_at("poultry") == "Middle at least 165 °F (USDA-FSIS safe minimum internal temperatures)."
    assert (
        done_at("ground_meat", "metric", FOOD_CODE) == "Middle at least 68 °C for 17 s (FDA Food Code 3-401.11(A)(2))."
    )
    assert "3 min of rest" in done_at("whole_meat")
    assert done_at("bread_and_cake") == ""
