"""Small events for tests, made in a few words. People and places are invented; minute 0 is noon."""

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
    Talk,
    Taste,
    Window,
)

ORIGIN = datetime(2027, 6, 19, 12, tzinfo=ZoneInfo("America/Chicago"))
BAKER = Skill("baker")
F350 = (350 - 32) / 1.8


def minutes(usual: int, least: int | None = None, most: int | None = None) -> Minutes:
    """Minutes that are all the usual ones unless told otherwise."""
    return Minutes(least or usual, usual, most or usual)


def step(
    step_id: str,
    kind: StepKind = StepKind.MIX,
    usual: int = 10,
    *,
    scope: Scope = Scope.DISH,
    hands: int = 1,
    skills: tuple[str, ...] = (),
    gear: tuple[GearUse, ...] = (),
    after: tuple[After | str, ...] = (),
    bake: Bake | None = None,
    hot: bool = False,
    least: int | None = None,
) -> Step:
    """A step; `after` may name a step alone."""
    return Step(
        StepId(step_id),
        step_id.capitalize(),
        kind,
        scope,
        minutes(usual, least),
        hands,
        frozenset(Skill(skill) for skill in skills),
        gear,
        tuple(a if isinstance(a, After) else After(StepId(a)) for a in after),
        bake,
        hot,
    )


def after(step_id: str, least: int = 0, most: int | None = None) -> After:
    """A wait for a step."""
    return After(StepId(step_id), least, most)


def bake(
    inches: int = 12,
    method: BakeMethod = BakeMethod.BAKE,
    celsius: float = F350,
    look_in_from: int = 20,
    *,
    preheat: int = 0,
    trivet: bool = False,
) -> Bake:
    """The oven of a bake: 12 inches at 350 degrees Fahrenheit unless told otherwise."""
    return Bake(inches, method, celsius, look_in_from, preheat, trivet)


def bake_step(
    usual: int = 30,
    *,
    least: int | None = None,
    oven: Bake | None = None,
    scope: Scope = Scope.BATCH,
    after: tuple[After | str, ...] = ("mix",),
    gear: tuple[GearUse, ...] = (),
    hands: int = 1,
    skills: tuple[str, ...] = (),
) -> Step:
    """A step named ``bake``."""
    return step(
        "bake",
        StepKind.BAKE,
        usual,
        least=least if least is not None else max(1, usual - 5),
        scope=scope,
        bake=oven or bake(),
        after=after,
        gear=gear,
        hands=hands,
        skills=skills,
    )


def recipe(
    name: str = "bread",
    steps: tuple[Step, ...] | None = None,
    *,
    serves: int = 8,
    pans: int = 1,
    food: FoodKind = FoodKind.BREAD_AND_CAKE,
    keeps: Keeps | None = None,
    held: str = "air",
    rests: int = 0,
    best_within: int = 0,
    serve_hands: int = 1,
) -> Recipe:
    """A recipe; two steps, ``mix`` and ``bake``, unless told otherwise."""
    return Recipe(
        RecipeId(name),
        name.capitalize(),
        serves,
        steps if steps is not None else (step("mix"), bake_step()),
        food,
        keeps or Keeps(),
        pans=pans,
        held=held,
        rests_minutes=rests,
        best_within=best_within,
        serve_hands=serve_hands,
    )


def layer_cake(name: str = "cake") -> Recipe:
    """Two layers out of two pans, cooled 40 to 90 minutes, then iced together."""
    return recipe(
        name,
        (
            step("mix", StepKind.MIX, 15, scope=Scope.BATCH),
            bake_step(30, scope=Scope.PAN, after=(after("mix", 0, 20),)),
            step("cool", StepKind.COOL, 10, scope=Scope.PAN, hands=0, after=("bake",)),
            step("ice", StepKind.ICE, 15, scope=Scope.DISH, after=(after("cool", 40, 90),)),
        ),
        pans=2,
        food=FoodKind.CREAM_ICING,
        best_within=30,
    )


def dish(
    dish_id: str = "bread", recipe_id: str | None = None, serving: str | None = "s", people: int | None = None
) -> Dish:
    """A dish for serving ``s`` of the recipe of the same name."""
    return Dish(DishId(dish_id), RecipeId(recipe_id or dish_id), ServingId(serving) if serving else None, people)


def serving(serving_id: str = "s", at: int = 360, people: int = 8, early: int = 10, late: int = 10) -> Serving:
    """A serving at six o'clock."""
    return Serving(ServingId(serving_id), serving_id, at, people, early, late)


def gear(gear_id: str, kind: GearKind, count: int = 1, **sizes: int) -> Gear:
    """Gear with its sizes: `inches`, `coals`, `spots`, `spot_inches`."""
    return Gear(
        GearId(gear_id),
        kind,
        gear_id,
        count,
        inches=sizes.get("inches"),
        coals=sizes.get("coals"),
        spots=sizes.get("spots"),
        spot_inches=sizes.get("spot_inches"),
    )


def usual_gear() -> tuple[Gear, ...]:
    """Four 12-inch ovens, two chimneys of 60 coals, a table with four spots for up to 12 inches."""
    return (
        gear("oven12", GearKind.OVEN, 4, inches=12),
        gear("chimney", GearKind.CHIMNEY, 2, coals=60),
        gear("table", GearKind.TABLE, 1, spots=4, spot_inches=12),
    )


def helper(
    helper_id: str,
    *skills: str,
    window: tuple[int, int] = (0, 480),
    adult: bool = True,
    fire_allowed: bool = False,
    stretch: int = 60,
) -> Helper:
    """A helper from noon to eight unless told otherwise."""
    return Helper(
        HelperId(helper_id),
        helper_id.capitalize(),
        frozenset(Skill(skill) for skill in skills),
        (Window(*window),),
        adult,
        fire_allowed,
        stretch,
    )


def usual_crew() -> tuple[Helper, ...]:
    """Ines tends the fire and bakes, Olu bakes, Tam is fifteen and bakes."""
    return (
        helper("ines", FIRE_SKILL, BAKER),
        helper("olu", BAKER),
        helper("tam", FIRE_SKILL, BAKER, adult=False),
    )


def slot(
    slot_id: str = "demo",
    starts_at: int = 240,
    length: int = 60,
    presenter: str = "olu",
    live: tuple[tuple[str, str] | Talk | Taste, ...] = (),
    ready: tuple[ReadyMade, ...] = (),
) -> DemoSlot:
    """A demo slot at four o'clock."""
    shown = tuple(LiveStep(DishId(item[0]), StepId(item[1])) if isinstance(item, tuple) else item for item in live)
    return DemoSlot(SlotId(slot_id), slot_id, starts_at, length, HelperId(presenter), shown, ready)


def ready_made(dish_id: str, by: int = 240, up_to: str | None = None) -> ReadyMade:
    """A dish that stands ready by four o'clock."""
    return ReadyMade(DishId(dish_id), by, StepId(up_to) if up_to else None)


def event(
    recipes: tuple[Recipe, ...] | None = None,
    dishes: tuple[Dish, ...] | None = None,
    *,
    servings: tuple[Serving, ...] | None = None,
    slots: tuple[DemoSlot, ...] = (),
    kit: tuple[Gear, ...] | None = None,
    crew: tuple[Helper, ...] | None = None,
    weather: Weather | None = None,
    fuel: Fuel | None = None,
    setup_minutes: int = 20,
    wind_limit_mps: float | None = None,
    fire_warning: str = "",
) -> Event:
    """An event; one loaf for eight at six o'clock unless told otherwise."""
    made = recipes if recipes is not None else (recipe(),)
    return Event(
        "e",
        "Meadow supper",
        Place("Tarn meadow"),
        "America/Chicago",
        ORIGIN,
        weather or Weather(),
        servings if servings is not None else (serving(),),
        dishes if dishes is not None else tuple(dish(r.id) for r in made),
        slots,
        kit if kit is not None else usual_gear(),
        fuel or Fuel(),
        crew if crew is not None else usual_crew(),
        made,
        setup_minutes=setup_minutes,
        wind_limit_mps=wind_limit_mps,
        fire_warning=fire_warning,
    )
