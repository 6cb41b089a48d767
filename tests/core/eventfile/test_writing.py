"""An event that is written reads back as the same event."""

from dataclasses import replace
from datetime import date
from zoneinfo import ZoneInfo

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cookout.core.eventfile import read_event, write_event
from cookout.core.eventfile.clock import Clock
from cookout.core.fire.iron import Surface
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import (
    After,
    Bake,
    BakeMethod,
    Cool,
    CoolPlace,
    FoodKind,
    GearUse,
    IcingKind,
    Ingredient,
    Keeps,
    Load,
    LoadKind,
    Minutes,
    Recipe,
    RecipeId,
    Scope,
    Skill,
    Step,
    StepId,
    StepKind,
)
from cookout.core.kitchen.replacement import Swap, SwapId
from cookout.core.planning.event import (
    DemoSlot,
    Dish,
    DishId,
    Event,
    Fuel,
    Gear,
    GearId,
    GearKind,
    Helper,
    HelperId,
    LiveStep,
    Pin,
    Place,
    ReadyMade,
    Serving,
    ServingId,
    SlotId,
    Switches,
    Talk,
    Taste,
    WeatherFrom,
    Window,
)
from cookout.core.planning.foodrules import FoodCode, FoodRules
from cookout.core.safety.local import LocalNumbers
from cookout.core.safety.site import Enclosure
from tests.core.eventfile.files import FIXTURE_NAMES, SOUND, fixture_text

ZONES = ("America/New_York", "Europe/Berlin", "Australia/Lord_Howe", "Asia/Kolkata", "Africa/Cairo")
TEXTS = st.text(st.characters(exclude_categories=["C", "Z"]), max_size=12)
NAMES = st.text(st.characters(exclude_categories=["C", "Z"]), min_size=1, max_size=12)
SKILLS = st.frozensets(st.sampled_from(["fire", "baking", "knife"]).map(Skill))
WAITS = st.tuples(st.integers(0, 30), st.none() | st.integers(30, 90))


@pytest.mark.parametrize("name", FIXTURE_NAMES)
def test_the_events_that_come_with_the_program_read_back_equal(name: str) -> None:
    event = read_event(fixture_text(name), f"{name}.toml")
    assert read_event(write_event(event), "again.toml") == event


def test_defaults_are_left_out_and_quantities_stay_in_the_units_of_the_person() -> None:
    text = write_event(read_event(SOUND, "picnic.toml"))
    assert 'temperature = "400 F"' in text
    assert "break_minutes" not in text
    assert "[weather]" not in text
    assert '"2027-06-11 18:00-20:00"' in text


def test_a_metric_event_is_written_in_metric_units() -> None:
    event = replace(read_event(SOUND, "picnic.toml"), units="metric", weather=Weather(air_c=17.0, wind_mps=3.0))
    text = write_event(event)
    assert 'air = "17 C"' in text
    assert 'wind = "3 m/s"' in text


def loads() -> st.SearchStrategy[Load]:
    """What may stand in an oven."""
    food = st.none() | st.floats(-20, 100)
    return st.builds(Load, st.sampled_from(LoadKind), st.floats(0.05, 0.5), st.floats(0.01, 0.2), food, food)


def weathers() -> st.SearchStrategy[Weather]:
    """Any weather to cook in."""
    return st.builds(Weather, st.floats(-20, 45), st.floats(0, 30), st.floats(0, 40), st.floats(0, 1), st.booleans())


def hours() -> st.SearchStrategy[tuple[WeatherFrom, ...]]:
    """Up to three changes of weather, in their order."""
    starts = st.lists(st.integers(-600, 2000), max_size=3, unique=True).map(sorted)
    return starts.flatmap(lambda some: st.tuples(*(st.builds(WeatherFrom, st.just(at), weathers()) for at in some)))


def food_rules() -> st.SearchStrategy[FoodRules]:
    """Published rules, or local numbers that are stricter."""
    minutes = st.none() | st.integers(10, 60)
    numbers = st.builds(
        LocalNumbers,
        hot_c=st.none() | st.floats(61, 90),
        cold_c=st.none() | st.floats(0, 4),
        out_minutes=minutes,
        reheating_c=st.none() | st.floats(75, 90),
        centres_c=st.just(()) | st.floats(75, 90).map(lambda centre_c: (("poultry", centre_c),)),
    )
    return st.builds(FoodRules, st.sampled_from(FoodCode), st.booleans(), TEXTS, TEXTS, numbers)


def cools() -> st.SearchStrategy[Cool]:
    """What a step may cool to."""
    return st.builds(Cool, st.floats(0, 90), st.sampled_from(CoolPlace), st.none() | st.floats(0.01, 0.2))


def bakes() -> st.SearchStrategy[Bake]:
    """Bakes that look in before minute 20, which every step's least minutes reach."""
    return st.builds(
        Bake,
        oven_inches=st.integers(5, 22),
        method=st.sampled_from(BakeMethod),
        temperature_c=st.floats(60, 300),
        look_in_from=st.integers(0, 19),
        preheat_minutes=st.integers(0, 20),
        trivet=st.booleans(),
        load=st.none() | loads(),
        stand=st.booleans(),
    )


@st.composite
def steps(draw: st.DrawFn, number: int) -> Step:
    """The step of that number in its recipe; it may wait for any before it."""
    kind = draw(st.sampled_from(StepKind))
    least = draw(st.integers(20, 40))
    before = draw(st.lists(st.integers(0, number - 1), unique=True, max_size=2)) if number else []
    return Step(
        id=StepId(f"s{number}"),
        name=draw(NAMES),
        kind=kind,
        scope=draw(st.sampled_from(Scope)),
        minutes=Minutes(least, least + draw(st.integers(0, 9)), least + draw(st.integers(9, 20))),
        hands=draw(st.integers(0, 3)),
        skills=draw(SKILLS),
        gear=tuple(
            draw(st.lists(st.builds(GearUse, st.sampled_from(["bowl", "rack"]), st.integers(1, 3)), max_size=2))
        ),
        after=tuple(After(StepId(f"s{place}"), *draw(WAITS)) for place in before),
        bake=draw(bakes()) if kind is StepKind.BAKE else None,
        hot=draw(st.booleans()),
        note=draw(TEXTS),
        cool=draw(st.none() | cools()) if kind is StepKind.COOL else None,
    )


@st.composite
def recipes(draw: st.DrawFn, number: int) -> Recipe:
    """A recipe with one to four steps."""
    kept = draw(st.integers(60, 300))
    return Recipe(
        id=RecipeId(f"r{number}"),
        name=draw(NAMES),
        serves=draw(st.integers(1, 40)),
        steps=tuple(draw(steps(place)) for place in range(draw(st.integers(1, 4)))),
        food=draw(st.sampled_from(FoodKind)),
        keeps=Keeps(hot=kept, cold=kept, air=draw(st.none() | st.integers(60, 300))),
        pans=draw(st.integers(1, 4)),
        pan=draw(TEXTS),
        ingredients=(
            Ingredient("apples", 3.0),
            *draw(st.lists(st.builds(Ingredient, NAMES, st.none() | st.floats(0, 1e4), TEXTS, TEXTS), max_size=2)),
        ),
        rests_minutes=draw(st.integers(0, 60)),
        best_within=draw(st.integers(0, 60)),
        serve_minutes=draw(st.integers(1, 10)),
        serve_hands=draw(st.integers(0, 3)),
        held=draw(st.sampled_from(["hot", "cold"])),
        allergens=tuple(draw(st.lists(st.sampled_from(["milk", "eggs", "wheat"]), unique=True))),
        swaps=draw(st.just(()) | st.just((Swap(SwapId("other"), "apples", "pears", 0.5, "g"),))),
        icing=draw(st.none() | st.sampled_from(IcingKind)),
    )


GEAR = st.one_of(
    st.builds(
        Gear,
        st.just(GearId("oven")),
        st.just(GearKind.OVEN),
        NAMES,
        st.integers(1, 9),
        st.integers(5, 22),
        iron_kg=st.none() | st.floats(1, 60),
    ),
    st.builds(
        Gear, st.just(GearId("foot")), st.just(GearKind.TRIVET), NAMES, height_m=st.none() | st.floats(0.01, 0.3)
    ),
    st.builds(
        Gear, st.just(GearId("cold")), st.just(GearKind.COOLER), NAMES, ice=st.booleans(), places=st.integers(1, 9)
    ),
    st.builds(Gear, st.just(GearId("lit")), st.just(GearKind.CHIMNEY), NAMES, coals=st.integers(1, 200)),
    st.builds(
        Gear,
        st.just(GearId("top")),
        st.just(GearKind.TABLE),
        NAMES,
        spots=st.integers(1, 9),
        spot_inches=st.none() | st.integers(5, 22),
        material=TEXTS,
        surface=st.sampled_from(Surface),
    ),
)


@st.composite
def helpers(draw: st.DrawFn, number: int) -> Helper:
    """A helper with one or two windows that do not overlap."""
    edges = sorted(draw(st.lists(st.integers(-1000, 3000), min_size=4, max_size=4, unique=True)))
    windows = (Window(edges[0], edges[1]), Window(edges[2], edges[3]))
    return Helper(
        id=HelperId(f"h{number}"),
        name=draw(NAMES),
        skills=draw(SKILLS),
        windows=windows[: draw(st.integers(1, 2))],
        adult=draw(st.booleans()),
        fire_allowed=draw(st.booleans()),
        hot_stretch_minutes=draw(st.integers(1, 120)),
        contact=draw(TEXTS),
    )


def talks() -> st.SearchStrategy[Talk | Taste]:
    """Talks, and tastings of the main dish or of anything."""
    minutes = st.integers(1, 90)
    return st.builds(Talk, NAMES, minutes) | st.builds(Taste, NAMES, minutes, st.none() | st.just(DishId("main")))


def pins() -> st.SearchStrategy[tuple[Pin, ...]]:
    """Pins of different tasks that pin something."""
    drawn = st.builds(
        Pin,
        st.sampled_from(["main.b1.bake", "coals.main.b1.bake.lay.light", "set_up"]),
        st.none() | st.integers(-500, 3000),
        st.sampled_from([(), (HelperId("h0"),)]),
        st.lists(NAMES, max_size=2, unique=True).map(tuple),
    )
    some = st.lists(drawn.filter(lambda pin: pin != Pin(pin.task)), max_size=2, unique_by=lambda pin: pin.task)
    return some.map(tuple)


@st.composite
def events(draw: st.DrawFn) -> Event:
    """An event without faults, in any of some time zones and on any day of three years."""
    zone = draw(st.sampled_from(ZONES))
    menu = tuple(draw(recipes(number)) for number in range(2))
    starts = draw(st.integers(0, 1400))
    minutes = draw(st.integers(1, 60))
    shown, step = Dish(DishId("shown"), menu[1].id), menu[1].steps[0].id
    return Event(
        id="drawn",
        name=draw(NAMES),
        place=Place(
            draw(NAMES),
            draw(st.floats(-400, 5000)),
            draw(st.none() | st.floats(-90, 90)),
            dry_grass=draw(st.none() | st.booleans()),
            clear_m=draw(st.none() | st.floats(0, 900)),
            water=draw(st.none() | st.booleans()),
            shovel=draw(st.none() | st.booleans()),
            metal_can=draw(st.none() | st.booleans()),
            enclosure=draw(st.none() | st.sampled_from(Enclosure)),
            children=draw(st.none() | st.booleans()),
        ),
        timezone=zone,
        origin=Clock(ZoneInfo(zone), draw(st.dates(date(2026, 1, 1), date(2028, 12, 31)))).origin,
        weather=draw(weathers()),
        hours=draw(hours()),
        food_rules=draw(food_rules()),
        switches=draw(st.builds(Switches, st.booleans(), st.booleans())),
        servings=(Serving(ServingId("meal"), draw(NAMES), draw(st.integers(0, 2000)), 8, draw(st.integers(0, 30)), 5),),
        dishes=(Dish(DishId("main"), menu[0].id, ServingId("meal"), draw(st.none() | st.integers(1, 9))), shown),
        slots=(
            DemoSlot(
                SlotId("slot"),
                draw(NAMES),
                starts,
                minutes,
                HelperId("h0"),
                (*draw(st.lists(talks(), max_size=2)), LiveStep(shown.id, step), *draw(st.lists(talks(), max_size=2))),
                (
                    ReadyMade(
                        DishId("main"),
                        starts + draw(st.integers(-60, minutes)),
                        draw(st.none() | st.just(menu[0].steps[0].id)),
                    ),
                ),
            ),
        ),
        gear=tuple(draw(st.lists(GEAR, max_size=3, unique_by=lambda gear: gear.id))),
        fuel=draw(st.builds(Fuel, st.sampled_from(["briquettes", "lump"]), st.none() | st.integers(0, 900))),
        crew=tuple(draw(helpers(number)) for number in range(draw(st.integers(1, 3)))),
        recipes=menu,
        break_minutes=draw(st.integers(0, 30)),
        setup_minutes=draw(st.integers(1, 60)),
        wind_limit_mps=draw(st.none() | st.floats(0, 40)),
        fire_warning=draw(TEXTS),
        units=draw(st.sampled_from(["us", "metric"])),
        pins=draw(pins()),
    )


@settings(deadline=None, max_examples=50, suppress_health_check=[HealthCheck.too_slow])
@given(events())
def test_any_event_without_faults_reads_back_equal(event: Event) -> None:
    assert read_event(write_event(event), "drawn.toml") == event
