"""What a US cup of an ingredient weighs, row by row with its standing.

Sources:
  [1] USDA National Nutrient Database for Standard Reference, release 28 (2015), household measures. Rows by the
      teaspoon are taken times 48, the teaspoons in a cup.
A cup that is dipped rather than spooned holds more: common practice, no source, speaks of 10 to 20 % for flour.
"""

from dataclasses import dataclass
from functools import cache

from cookout.core.kitchen.words import PREPARED, plain_name, singular

TEASPOONS_IN_CUP = 48
SR28 = "USDA SR28"
WATER_NEAR_20_C = "density of water near 20 °C, 0.998 g/mL, from memory"


@dataclass(frozen=True, slots=True)
class Density:
    """Grams that one US cup (236.588 mL) of a food weighs; `pours` where it is measured as a liquid."""

    food: str
    grams_a_cup: float
    source: str
    pours: bool = False


@dataclass(frozen=True, slots=True)
class PieceMass:
    """Grams that one piece of a food weighs, out of its shell."""

    food: str
    grams: float
    source: str


# food, grams in a cup, other names
_SOLIDS: tuple[tuple[str, float, tuple[str, ...]], ...] = (
    ("all-purpose flour", 125, ("flour", "plain flour", "white flour", "wheat flour", "all purpose flour")),
    ("whole wheat flour", 120, ("whole-wheat flour", "wholemeal flour", "wholewheat flour")),
    ("bread flour", 137, ("strong flour", "strong white flour")),
    ("sugar", 200, ("granulated sugar", "white sugar", "caster sugar", "cane sugar")),
    ("brown sugar", 220, ("light brown sugar", "dark brown sugar", "packed brown sugar")),
    ("loose brown sugar", 145, ("unpacked brown sugar",)),
    ("powdered sugar", 120, ("icing sugar", "confectioners sugar", "confectioner's sugar", "confectioners' sugar")),
    ("sifted powdered sugar", 100, ("sifted icing sugar", "sifted confectioners' sugar")),
    ("cocoa", 86, ("cocoa powder", "unsweetened cocoa", "unsweetened cocoa powder")),
    ("cornstarch", 128, ("corn starch",)),
    ("oats", 81, ("rolled oats", "old-fashioned oats", "oatmeal")),
    ("cornmeal", 122, ("corn meal", "yellow cornmeal")),
    ("butter", 227, ("stick butter",)),
    ("shortening", 205, ("vegetable shortening",)),
    ("sour cream", 230, ()),
    ("cream cheese", 232, ()),
    ("grated carrot", 110, ("shredded carrot",)),
    ("mashed banana", 225, ("mashed ripe banana",)),
    ("canned pumpkin", 245, ("pumpkin puree", "pumpkin purée")),
    ("crushed pineapple", 195, ("crushed drained pineapple", "drained crushed pineapple")),
    ("applesauce", 244, ("apple sauce", "unsweetened applesauce")),
    ("raisins", 145, ()),
    ("pecans", 109, ("pecan halves",)),
    ("walnuts", 117, ()),
    ("coconut", 85, ("shredded coconut", "flaked coconut")),
    ("chocolate chips", 168, ("semisweet chocolate chips", "dark chocolate chips", "milk chocolate chips")),
)
_LIQUIDS: tuple[tuple[str, float, tuple[str, ...]], ...] = (
    ("oil", 218, ("vegetable oil", "canola oil", "cooking oil", "sunflower oil", "corn oil")),
    ("milk", 244, ("whole milk",)),
    ("buttermilk", 245, ()),
    ("heavy cream", 238, ("whipping cream", "heavy whipping cream")),
    ("honey", 339, ()),
    ("molasses", 337, ()),
    ("maple syrup", 315, ()),
)
_BY_THE_TEASPOON: tuple[tuple[str, float, tuple[str, ...]], ...] = (
    ("baking powder", 4.6, ()),
    ("baking soda", 4.6, ("bicarbonate of soda",)),
    ("salt", 6.0, ("table salt", "fine salt")),
    ("cinnamon", 2.6, ("ground cinnamon",)),
    ("active dry yeast", 4.0, ("dry yeast",)),
)
_POURED_BY_THE_TEASPOON: tuple[tuple[str, float, tuple[str, ...]], ...] = (
    ("vanilla", 4.2, ("vanilla extract", "pure vanilla extract")),
)
_LARGE_EGG = PieceMass("egg", 50.0, f"{SR28}, a large egg")


def density_of(ingredient: str) -> Density | None:
    """The density of an ingredient by its whole name, or None where none is known.

    Words of preparation ("chopped", "cold", "unsalted") are passed over, but only whole names are met: "peanut butter"
    is no butter and "coconut milk" no milk. "2 cups chopped pecans" weigh 2 x 109 g [1].
    """
    name = plain_name(ingredient)
    rows = _rows()
    return rows.get(name) or rows.get(" ".join(word for word in name.split() if word not in PREPARED))


def weighed_as(name: str, note: str) -> str:
    """The name by which an ingredient has a weight: "carrot", noted as "grated", is weighed as "grated carrot"."""
    if density_of(name) is None:
        for said in note.split(","):
            if density_of(f"{said} {name}"):
                return f"{said.strip()} {name}"
    return name


def piece_mass_of(ingredient: str) -> PieceMass | None:
    """What one piece of an ingredient weighs, or None where it is not known: a large egg is 50 g [1]."""
    words = [word for word in plain_name(ingredient).split() if word not in PREPARED]
    return _LARGE_EGG if words in (["egg"], ["large", "egg"], ["whole", "egg"]) else None


def every_density() -> tuple[Density, ...]:
    """All rows, each once, in the order of their names."""
    return tuple(sorted(set(_rows().values()), key=lambda row: row.food))


@cache
def _rows() -> dict[str, Density]:
    rows: dict[str, Density] = {}
    for table, times, pours in (
        (_SOLIDS, 1, False),
        (_LIQUIDS, 1, True),
        (_BY_THE_TEASPOON, TEASPOONS_IN_CUP, False),
        (_POURED_BY_THE_TEASPOON, TEASPOONS_IN_CUP, True),
    ):
        for food, grams, others in table:
            row = Density(food, grams * times, SR28, pours)
            rows |= {plain_name(name): row for name in (food, singular(food), *others)}
    water = Density("water", 0.998 * 236.5882365, WATER_NEAR_20_C, pours=True)
    return rows | {"water": water}
