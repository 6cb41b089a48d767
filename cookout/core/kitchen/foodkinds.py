"""Which kind of food a recipe makes, proposed from its ingredients, and how such food is usually held and kept.

The kind decides limits of food safety, so it is a proposal with its reason, and open where the names do not tell.
Minutes are about quality, our own figures of what is usual; limits of safety stand elsewhere and come on top.
"""

import re
from dataclasses import dataclass
from types import MappingProxyType

from cookout.core.kitchen.recipe import FoodKind, Keeps, StepKind

_POULTRY = r"\b(?:chickens?|turkeys?|ducks?|goose|quails?|hens?|pheasants?|poultry)\b(?!\s+(?:stock|broth|bouillon))"
_GROUND = (
    r"\b(?:(?:ground|minced)\s+(?:beef|pork|lamb|meat|veal|venison|bison|elk|chuck|round|sirloin)"
    r"|(?:beef|pork|lamb|veal)\s+mince|sausages?|(?:ham)?burgers?(?!\s+buns?)|bratwursts?|kielbasa|chorizo"
    r"|hot\s+dogs?(?!\s+buns?)|meatballs?|meat\s?loaf)\b"
)
_MEAT = (
    r"\b(?:beef|pork|lamb|veal|venison|mutton|goat|bison|elk|rabbit|roast|brisket|steaks?|ribs|ham|bacon|tenderloin"
    r"|sirloin|chuck|stew(?:ing)?\s+meat)\b(?!\s+cheese)"
    r"(?!\s+(?:stock|broth|bouillon|fat|drippings))"
)
_FISH = (
    r"\b(?:fish|trout|salmon|cod|catfish|halibut|haddock|tilapia|perch|walleye|bass|snapper|tuna|mackerel|herring"
    r"|shrimps?|prawns?|crabs?|lobsters?|crayfish|crawfish|clams?|mussels?|oysters?|scallops?|squid)\b"
    r"(?!\s+(?:sauce|stock|juice|mushrooms?|apples?|crackers?))"
)
_BEANS = r"\b(?:(?<!vanilla )(?<!green )beans?|lentils?|chickpeas?|split peas)\b"
_ICED_COLD = r"\b(?:cream cheese|mascarpone|whipping cream|heavy cream|double cream)\b"
_FLOUR = r"\b(?:flour|cornmeal|cake mix|biscuit mix|baking mix|dough|oats)\b"
_FRUIT = (
    r"\b(?:apples?|peach(?:es)?|pears?|plums?|(?:blue|black|rasp|straw|cran|goose)?berries|cherries|rhubarb|apricots?"
    r"|mangos?|mangoes|pineapple|melons?|nectarines?)\b"
)
_ROOTS = (
    r"\b(?:potato(?:es)?|carrots?|parsnips?|beets?|squash|pumpkin|onions?|peppers?|zucchini|courgettes?|cabbage|corn"
    r"|mushrooms?|eggplants?|broccoli|cauliflower|greens?|tomato(?:es)?|asparagus|turnips?|lettuce|cucumbers?|radish(?:es)?)\b"
)
_EGGS = r"\b(?P<number>\d+)\s+(?:large\s+|extra-large\s+|medium\s+)?eggs?\b"
_MILK = r"\b(?:cheese|cheddar|mozzarella|cream|milk|ricotta|yogurt)\b"
MANY_EGGS = 6


@dataclass(frozen=True, slots=True)
class Proposed:
    """A kind of food, and the words that tell it."""

    food: FoodKind
    why: str


@dataclass(frozen=True, slots=True)
class Usual:
    """How such food usually waits: `held` hot, cold or in the air, minutes it keeps, and a rest before it is served."""

    held: str
    keeps: Keeps
    rests_minutes: int = 0


USUAL = MappingProxyType(
    {
        FoodKind.BREAD_AND_CAKE: Usual("air", Keeps(air=240), 10),
        FoodKind.CREAM_ICING: Usual("cold", Keeps(cold=240, air=60)),
        FoodKind.EGGS: Usual("hot", Keeps(hot=45, air=20)),
        FoodKind.FISH: Usual("hot", Keeps(hot=30, air=15)),
        FoodKind.WHOLE_MEAT: Usual("hot", Keeps(hot=60, air=30), 10),
        FoodKind.GROUND_MEAT: Usual("hot", Keeps(hot=60, air=20)),
        FoodKind.POULTRY: Usual("hot", Keeps(hot=60, air=30), 5),
        FoodKind.STEW_AND_BEANS: Usual("hot", Keeps(hot=120, air=60)),
        FoodKind.COOKED_VEGETABLES: Usual("hot", Keeps(hot=60, air=45)),
        FoodKind.RAW_VEGETABLES: Usual("cold", Keeps(cold=180, air=60)),
        FoodKind.FRUIT: Usual("air", Keeps(air=120), 10),
        FoodKind.DAIRY: Usual("hot", Keeps(hot=60, air=30), 5),
    }
)


def propose_food(lines: tuple[str, ...], kinds: frozenset[StepKind], *, simmers: bool) -> Proposed | None:
    """The kind of food that ingredient `lines` make, cooked by steps of these `kinds`; None where they do not tell.

    The riskiest food named decides: chicken in a stew is poultry, with its higher centre temperature.
    """
    text = " | ".join(lines).lower()
    cooked = StepKind.BAKE in kinds
    for words, food in _RISKY:
        if found := re.search(words, text):
            return Proposed(food, f"“{found[0]}” is among the ingredients")
    if found := re.search(_MEAT, text):
        if not cooked:
            # Cold cuts in a salad, or a bake that was not read as one: a person says which.
            return None
        stewed = simmers or re.search(_BEANS, text)
        return Proposed(
            FoodKind.STEW_AND_BEANS if stewed else FoodKind.WHOLE_MEAT, f"“{found[0]}” is among the ingredients"
        )
    return _without_meat(text, kinds, cooked=cooked)


_RISKY = ((_POULTRY, FoodKind.POULTRY), (_GROUND, FoodKind.GROUND_MEAT), (_FISH, FoodKind.FISH))


def _without_meat(text: str, kinds: frozenset[StepKind], *, cooked: bool) -> Proposed | None:
    eggs = re.search(_EGGS, text)
    if StepKind.ICE in kinds and (found := re.search(_ICED_COLD, text)):
        return Proposed(FoodKind.CREAM_ICING, f"it is iced, and “{found[0]}” is among the ingredients")
    if cooked and eggs and int(eggs["number"]) >= MANY_EGGS and not re.search(_FLOUR, text):
        return Proposed(FoodKind.EGGS, f"there are {eggs['number']} eggs in it and no flour")
    for words, food, only_cooked in _PLAINER:
        found = re.search(words, text)
        if found and cooked is only_cooked:
            return Proposed(food, f"“{found[0]}” is among the ingredients")
    return None


# In this order, each with whether it is cooked: a cobbler holds flour too, and its fruit decides.
_PLAINER = (
    (_BEANS, FoodKind.STEW_AND_BEANS, True),
    (rf"(?:{_FRUIT})(?=.*\b(?:cornstarch|sugar)\b)(?!.*\beggs?\b)", FoodKind.FRUIT, True),
    (_FLOUR, FoodKind.BREAD_AND_CAKE, True),
    (_ROOTS, FoodKind.COOKED_VEGETABLES, True),
    (_MILK, FoodKind.DAIRY, True),
    (_ROOTS, FoodKind.RAW_VEGETABLES, False),
    (_FRUIT, FoodKind.FRUIT, False),
)
