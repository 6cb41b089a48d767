"""Invented recipes with minutes drawn by chance: one function a kind of dish."""

from collections.abc import Callable
from random import Random

from cookout.core.kitchen.recipe import (
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

BAKING, ICING, KNIFE = Skill("baking"), Skill("icing"), Skill("knife")

MIX, BAKE, COOL, ICE = StepId("mix"), StepId("bake"), StepId("cool"), StepId("ice")
ICING_MIX, PREPARE, REST = StepId("mix-icing"), StepId("prepare"), StepId("rest")

RecipeKind = Callable[[str, int, Random], Recipe]


def layer_cake(name: str, serves: int, chance: Random) -> Recipe:
    """Layers baked apart, cooled, filled and iced."""
    steps = (
        _hands_on(MIX, StepKind.MIX, Scope.BATCH, _about(15, chance), BAKING, gear=("mixer", "bowl")),
        _bake(Scope.PAN, _about(35, chance), 10, 175, After(MIX, most=20)),
        _waiting(COOL, StepKind.COOL, Scope.PAN, _about(40, chance), After(BAKE, most=10), gear=("rack",)),
        _hands_on(ICING_MIX, StepKind.MIX, Scope.DISH, _about(10, chance), ICING, gear=("mixer",)),
        _hands_on(
            ICE,
            StepKind.ICE,
            Scope.DISH,
            _about(20, chance),
            ICING,
            after=(After(COOL, most=120), After(ICING_MIX, most=45)),
        ),
    )
    return _recipe(name, serves, steps, FoodKind.BREAD_AND_CAKE, pans=2, keeps=Keeps(air=180), best_within=30)


def loaf(name: str, serves: int, chance: Random) -> Recipe:
    """A risen loaf, baked and cooled."""
    steps = (
        _hands_on(MIX, StepKind.MIX, Scope.BATCH, _about(20, chance), BAKING, gear=("bowl",)),
        _waiting(REST, StepKind.REST, Scope.BATCH, _about(60, chance), After(MIX, most=5), gear=("bowl",)),
        _bake(Scope.BATCH, _about(45, chance), 12, 205, After(REST, most=20)),
        _waiting(COOL, StepKind.COOL, Scope.BATCH, _about(30, chance), After(BAKE, most=5), gear=("rack",)),
    )
    return _recipe(name, serves, steps, FoodKind.BREAD_AND_CAKE, keeps=Keeps(air=240), best_within=45)


def stew(name: str, serves: int, chance: Random) -> Recipe:
    """Cut up, and simmered for long."""
    steps = (
        _hands_on(PREPARE, StepKind.PREPARE, Scope.BATCH, _about(25, chance), KNIFE, gear=("bowl",)),
        _bake(Scope.BATCH, _about(70, chance), 12, 160, After(PREPARE, most=45), BakeMethod.SIMMER),
    )
    return _recipe(name, serves, steps, FoodKind.STEW_AND_BEANS, keeps=Keeps(hot=60), best_within=10, held="hot")


def cobbler(name: str, serves: int, chance: Random) -> Recipe:
    """Fruit under a topping, best warm."""
    steps = (
        _hands_on(PREPARE, StepKind.PREPARE, Scope.BATCH, _about(15, chance), KNIFE, gear=("bowl",)),
        _hands_on(MIX, StepKind.MIX, Scope.BATCH, _about(10, chance), BAKING, gear=("bowl",)),
        _bake(Scope.BATCH, _about(40, chance), 10, 185, After(PREPARE, most=60), more=(After(MIX, most=20),)),
        _waiting(REST, StepKind.REST, Scope.BATCH, _about(10, chance), After(BAKE, most=0)),
    )
    return _recipe(name, serves, steps, FoodKind.FRUIT, keeps=Keeps(hot=60, air=120), best_within=15)


def salad(name: str, serves: int, chance: Random) -> Recipe:
    """No fire at all: washed and cut, then dressed at the last."""
    steps = (
        _hands_on(PREPARE, StepKind.PREPARE, Scope.BATCH, _about(25, chance), KNIFE, gear=("bowl",)),
        _hands_on(
            StepId("dress"), StepKind.FINISH, Scope.DISH, _about(5, chance), KNIFE, after=(After(PREPARE, most=90),)
        ),
    )
    return _recipe(name, serves, steps, FoodKind.RAW_VEGETABLES, keeps=Keeps(cold=120, air=60), best_within=10)


KINDS: tuple[RecipeKind, ...] = (cobbler, layer_cake, salad, loaf, stew, loaf)


def _recipe(
    name: str,
    serves: int,
    steps: tuple[Step, ...],
    food: FoodKind,
    *,
    keeps: Keeps,
    best_within: int,
    pans: int = 1,
    held: str = "air",
) -> Recipe:
    return Recipe(
        RecipeId(name), name.replace("-", " "), serves, steps, food, keeps, pans, best_within=best_within, held=held
    )


def _about(usual: int, chance: Random) -> Minutes:
    """Up to a quarter more or less than usual, in steps of a minute."""
    drawn = usual + chance.randint(-usual // 4, usual // 4)
    return Minutes(least=max(1, drawn * 4 // 5), usual=drawn, most=drawn * 3 // 2)


def _hands_on(
    step: StepId,
    kind: StepKind,
    scope: Scope,
    minutes: Minutes,
    skill: Skill,
    *,
    gear: tuple[str, ...] = (),
    after: tuple[After, ...] = (),
) -> Step:
    uses = tuple(GearUse(piece) for piece in gear)
    return Step(step, step.replace("-", " "), kind, scope, minutes, 1, frozenset({skill}), uses, after)


def _waiting(
    step: StepId, kind: StepKind, scope: Scope, minutes: Minutes, after: After, *, gear: tuple[str, ...] = ()
) -> Step:
    uses = tuple(GearUse(piece) for piece in gear)
    return Step(step, str(step), kind, scope, minutes, hands=0, gear=uses, after=(after,))


def _bake(
    scope: Scope,
    minutes: Minutes,
    inches: int,
    temperature_c: float,
    after: After,
    method: BakeMethod = BakeMethod.BAKE,
    more: tuple[After, ...] = (),
) -> Step:
    bake = Bake(inches, method, temperature_c, look_in_from=max(1, minutes.least * 2 // 3))
    return Step(BAKE, "bake", StepKind.BAKE, scope, minutes, hands=0, after=(after, *more), bake=bake)
