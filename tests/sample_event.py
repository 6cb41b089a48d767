"""A small event with everything in it: a stew, an iced cake of two layers shown live, and its twin made ready."""

from datetime import datetime
from zoneinfo import ZoneInfo

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import (
    FIRE_SKILL,
    After,
    Bake,
    BakeMethod,
    FoodKind,
    GearUse,
    Keeps,
    Minutes,
    Recipe,
    RecipeId,
    Scope,
    Skill,
    Step,
    StepId,
    StepKind,
)
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
    Place,
    ReadyMade,
    Serving,
    ServingId,
    SlotId,
    Window,
)

BAKING = Skill("baking")
CAKE, TWIN, STEW = DishId("cake"), DishId("twin"), DishId("stew")
SUPPER, SHOW = ServingId("supper"), SlotId("show")
MARET, OSKAR, LIV, PIP = HelperId("maret"), HelperId("oskar"), HelperId("liv"), HelperId("pip")


def sample_event() -> Event:
    """Supper at 600 and a show from 330 to 370, minutes from 08:00."""
    return Event(
        id="orchard",
        name="Orchard supper",
        place=Place("Lower orchard, Hollin Farm", 120.0),
        timezone="Europe/Lisbon",
        origin=datetime(2027, 6, 19, 8, tzinfo=ZoneInfo("Europe/Lisbon")),
        weather=Weather(air_c=22.0, wind_mps=2.0),
        servings=(Serving(SUPPER, "Supper", 600, 8),),
        dishes=(
            Dish(CAKE, RecipeId("layer-cake"), SUPPER),
            Dish(TWIN, RecipeId("layer-cake")),
            Dish(STEW, RecipeId("stew"), SUPPER),
        ),
        slots=(
            DemoSlot(
                SHOW,
                "A cake from the bowl",
                330,
                40,
                LIV,
                (LiveStep(CAKE, StepId("sift")), LiveStep(CAKE, StepId("mix"))),
                (ReadyMade(TWIN, 330, StepId("cool")),),
            ),
        ),
        gear=_gear(),
        fuel=Fuel(),
        crew=_crew(),
        recipes=(_layer_cake(), _stew()),
    )


def _gear() -> tuple[Gear, ...]:
    return (
        Gear(GearId("oven10"), GearKind.OVEN, "10-inch oven", 2, inches=10),
        Gear(GearId("oven12"), GearKind.OVEN, "12-inch oven", 1, inches=12, deep=True),
        Gear(GearId("chimney"), GearKind.CHIMNEY, "chimney", 1, coals=60),
        Gear(GearId("table"), GearKind.TABLE, "cooking table", 1, spots=3, spot_inches=14, material="steel"),
        Gear(GearId("bowl"), GearKind.BOWL, "bowl", 1),
        Gear(GearId("rack"), GearKind.RACK, "rack", 2),
    )


def _crew() -> tuple[Helper, ...]:
    fire, day = frozenset({FIRE_SKILL, BAKING}), (Window(0, 700),)
    return (
        Helper(MARET, "Maret", fire, day),
        Helper(OSKAR, "Oskar", fire, (Window(0, 400), Window(420, 700))),
        Helper(LIV, "Liv", frozenset({BAKING}), day),
        Helper(PIP, "Pip", frozenset({BAKING, FIRE_SKILL}), day, adult=False, hot_stretch_minutes=30),
    )


def _layer_cake() -> Recipe:
    step = StepId
    return Recipe(
        RecipeId("layer-cake"),
        "Iced layer cake",
        8,
        (
            Step(step("sift"), "Sift", StepKind.PREPARE, Scope.DISH, Minutes(4, 5, 8), gear=(GearUse("bowl"),)),
            Step(
                step("mix"), "Mix", StepKind.MIX, Scope.DISH, Minutes(8, 10, 15), skills=frozenset({BAKING}),
                gear=(GearUse("bowl"),), after=(After(step("sift"), 0, 30),),
            ),
            Step(
                step("bake"), "Bake", StepKind.BAKE, Scope.PAN, Minutes(28, 32, 40), skills=frozenset({BAKING}),
                after=(After(step("mix"), 0, 60),), bake=Bake(10, BakeMethod.BAKE, 175.0, 20, preheat_minutes=10),
            ),
            Step(
                step("cool"), "Cool", StepKind.COOL, Scope.PAN, Minutes(30, 40, 90), hands=0,
                gear=(GearUse("rack"),), after=(After(step("bake"), 0, 10),),
            ),
            Step(
                step("ice"), "Ice", StepKind.ICE, Scope.DISH, Minutes(10, 15, 25), hands=2, skills=frozenset({BAKING}),
                after=(After(step("cool"), 5, 100),),
            ),
        ),
        FoodKind.CREAM_ICING,
        Keeps(air=120),
        pans=2,
        best_within=20,
    )  # fmt: skip


def _stew() -> Recipe:
    step = StepId
    return Recipe(
        RecipeId("stew"),
        "Bean stew",
        8,
        (
            Step(step("chop"), "Chop", StepKind.PREPARE, Scope.DISH, Minutes(10, 15, 20), gear=(GearUse("bowl"),)),
            Step(
                step("simmer"), "Simmer", StepKind.BAKE, Scope.BATCH, Minutes(70, 80, 100),
                after=(After(step("chop"), 0, 60),), bake=Bake(12, BakeMethod.SIMMER, 160.0, 50),
            ),
        ),
        FoodKind.STEW_AND_BEANS,
        Keeps(air=90),
        rests_minutes=5,
    )  # fmt: skip
