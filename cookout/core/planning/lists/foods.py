"""Which ingredients are one thing to buy: by name, whatever the number of the noun and the cook's work on it.

Two foods that are not surely the same stay two: sunflower oil is no "oil", unsalted butter no "butter", and a can of
tomatoes is bought elsewhere than tomatoes.
"""

import re

from cookout.core.kitchen.recipe import Ingredient
from cookout.core.kitchen.words import plain_name, singular

# What the cook does to it, which the shop does not: common practice, no source.
_COOKS_WORK = frozenset(
    (
        "beaten", "chilled", "chopped", "coarsely", "cold", "cool", "cooled", "crumbled", "cubed", "cut", "diced",
        "drained", "finely", "freshly", "good", "grated", "halved", "juicy", "large", "lightly", "lukewarm", "medium",
        "melted", "minced", "packed", "peeled", "plump", "ripe", "roughly", "room-temperature", "sliced", "small",
        "soft", "softened", "thinly", "torn", "trimmed", "warm", "washed",
    )
)  # fmt: skip

# Other names of the very same food, to the name that stands on the list; common practice, no source.
_SAME_FOOD = {
    other: name
    for name, others in {
        "all-purpose flour": ("flour", "plain flour", "white flour", "all purpose flour"),
        "whole wheat flour": ("whole-wheat flour", "wholemeal flour", "wholewheat flour"),
        "bread flour": ("strong flour", "strong white flour"),
        "sugar": ("granulated sugar", "white sugar"),
        "powdered sugar": ("icing sugar", "confectioners sugar", "confectioner's sugar", "confectioners' sugar"),
        "baking soda": ("bicarbonate of soda",),
        "cornstarch": ("corn starch",),
        "cornmeal": ("corn meal",),
        "salt": ("table salt", "fine salt"),
        "cinnamon": ("ground cinnamon",),
        "active dry yeast": ("dry yeast",),
        "milk": ("whole milk",),
        "vanilla": ("vanilla extract", "pure vanilla extract"),
        "rolled oats": ("old-fashioned oats", "oats"),
        "scallion": ("green onion", "spring onion"),
        "zucchini": ("courgette",),
        "eggplant": ("aubergine",),
        "beet": ("beetroot",),
        "bell pepper": ("sweet pepper",),
        "chickpea": ("garbanzo bean", "garbanzo"),
        "applesauce": ("apple sauce",),
    }.items()
    for other in others
}

_EACH = re.compile(r"(?:^|,\s*)(?P<size>\d[^,]*?) each\b")


def one_of(word: str) -> str:
    """A word in the singular, peas among them."""
    return word.removesuffix("s") if word.endswith("peas") else singular(word)


def food_of(name: str) -> str:
    """The name that an ingredient is bought by: "2 onions, chopped" and "diced onion" are both "onion"."""
    words = plain_name(name).split()
    words = [*words[:-1], *(one_of(word) for word in words[-1:])]
    bought = " ".join(word for word in words if word not in _COOKS_WORK) or " ".join(words)
    return _SAME_FOOD.get(bought, bought)


def food_key(ingredient: Ingredient) -> str:
    """A word for what is bought that stays the same however much of it there is: ``onion``, ``tomato--can``."""
    food = re.sub(r"[^\w]+", "-", food_of(ingredient.name)).strip("-") or "food"
    return f"{food}--{ingredient.unit}" if ingredient.unit in ("can", "jar") else food


def size_of_each(note: str) -> str:
    """The size of one piece as the note tells it ("14 oz each"); empty where it does not."""
    told = _EACH.search(note)
    return told["size"].strip() if told else ""
