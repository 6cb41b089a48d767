"""The recipes that come with the program, and an event with enough of everything for any one of them."""

from pathlib import Path

from cookout.core.eventfile.recipefile import read_recipe
from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import FIRE_SKILL, Recipe
from cookout.core.planning.event import Event, Fuel, Gear, GearKind
from tests.core.planning.build import dish, event, gear, helper, serving

FOLDER = Path(__file__).parents[2] / "fixtures" / "recipes"
NAMES = tuple(sorted(path.stem for path in FOLDER.glob("*.toml")))
SKILLS = (FIRE_SKILL, "baking", "icing", "knife")
DAY = (-240, 480)


def starter_text(name: str) -> str:
    """The text of one of them."""
    return (FOLDER / f"{name}.toml").read_text(encoding="utf-8")


def starter(name: str) -> Recipe:
    """One of them."""
    return read_recipe(starter_text(name), f"{name}.toml")


def well_equipped() -> tuple[Gear, ...]:
    """More gear than two batches of any recipe want."""
    return (
        gear("oven-12", GearKind.OVEN, 4, inches=12),
        gear("oven-10", GearKind.OVEN, 4, inches=10),
        gear("chimney", GearKind.CHIMNEY, 3, coals=80),
        gear("table", GearKind.TABLE, 2, spots=6, spot_inches=14),
        gear("trivet", GearKind.TRIVET, 6),
        gear("rack", GearKind.RACK, 6),
        gear("mixer", GearKind.MIXER, 2),
        gear("bowl", GearKind.BOWL, 8),
        gear("cooler", GearKind.COOLER, 2),
    )


def supper_of(recipe: Recipe, people: int) -> Event:
    """That recipe alone for so many at six o'clock of a mild day, with gear and hands enough."""
    crew = tuple(helper(name, *SKILLS, window=DAY) for name in ("ada", "ben", "cleo", "dov"))
    return event(
        (recipe,),
        (dish(recipe.id),),
        servings=(serving(people=people),),
        kit=well_equipped(),
        crew=crew,
        weather=Weather(air_c=21.0, wind_mps=2.0),
        fuel=Fuel(),
    )
