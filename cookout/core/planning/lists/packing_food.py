"""What keeps food cold, hot and clean, and what it is served with.

A food thermometer is what every set of rules takes for granted; two boards, soap and running water are common practice
and stand in every food code, whose sections were not read for this: from memory.
"""

from cookout.core.kitchen.recipe import FoodKind
from cookout.core.planning.event import Event, GearKind
from cookout.core.planning.lists.aisles import AisleKind, aisle_of
from cookout.core.planning.lists.foods import food_of
from cookout.core.planning.lists.items import Item
from cookout.core.planning.lists.measuring import Kept, kept_how
from cookout.core.planning.lists.portions import Portion, portions
from cookout.core.planning.record import PlanRecord
from cookout.core.quantities import show_temperature
from cookout.core.safety.rules import Standing

_PRACTICE = Standing.PRACTICE.value
_MEMORY = Standing.MEMORY.value

_RAW = frozenset({FoodKind.FISH, FoodKind.WHOLE_MEAT, FoodKind.GROUND_MEAT, FoodKind.POULTRY})


def cold_items(event: Event, record: PlanRecord, units: str) -> tuple[Item, ...]:
    """Thermometers always; ice where anything is held cold or bought cold; labels where times are written on food."""
    code = event.food_rules.limits
    hot, cold = show_temperature(code.hot_c, units), show_temperature(code.cold_c, units)
    items = [Item("cold.thermometer", "Food thermometer", 1, "for the middle of all that is cooked", _MEMORY)]
    if _is_cold(event, record):
        items.append(
            Item("cold.ice", "Ice or frozen packs", None, f"enough that all stays {cold} or colder", code.name)
        )
        items.append(Item("cold.dial", "Thermometer for the cooler", 1, f"it should say {cold} or less", code.name))
        if not any(gear.kind is GearKind.COOLER and gear.ice for gear in event.gear):
            items.append(Item("cold.cooler", "Cooler", 1, "the event names none, and has food that stays cold"))
    if any(portion.recipe.held == "hot" for portion in portions(event)):
        items.append(Item("cold.wraps", "Towels or an insulated box", None, f"what is held hot stays {hot}", code.name))
    if event.food_rules.marked:
        items.append(
            Item("cold.labels", "Labels and a waterproof pen", None, "each dish out bears its times", code.name)
        )
    return tuple(items)


def _is_cold(event: Event, record: PlanRecord) -> bool:
    held = any("cold" in each.held for each in record.safety)
    return held or any(kept_how(one) is Kept.COLD for each in portions(event) for one in each.recipe.ingredients)


def clean_items(event: Event) -> tuple[Item, ...]:
    """Hand washing for all, a second board and tongs where there is raw meat or fish."""
    made = portions(event)
    items = [
        Item("clean.tap", "Water can with a tap, and a bucket under it", 1, "for hands; running water", _MEMORY),
        Item("clean.soap", "Soap and paper towels", None, "before work, and after raw meat, fish or egg", _MEMORY),
        Item("clean.knives", "Knives in a guard", None, "", _PRACTICE),
        Item("clean.towels", "Clean kitchen towels", None, "", _PRACTICE),
        Item("clean.tubs", "Two wash tubs, dish soap and clean water", None, "wash, rinse, dry in the air", _MEMORY),
        Item("clean.bags", "Bin bags", None, "never for ash", _PRACTICE),
    ]
    if raw := _raw_names(made):
        items.insert(2, Item("clean.boards", "Cutting boards", 2, f"one for raw {raw} alone", _MEMORY))
        items.insert(3, Item("clean.raw_tongs", "Second pair of tongs", 1, f"for raw {raw} alone", _PRACTICE))
    else:
        items.insert(2, Item("clean.boards", "Cutting board", 1, "", _PRACTICE))
    return tuple(items)


def _raw_names(made: tuple[Portion, ...]) -> str:
    """What the event has of raw meat, fish and eggs, in words; empty where it has none."""
    meat = any(portion.recipe.food in _RAW for portion in made) or any(
        aisle_of(food_of(one.name), one.unit) is AisleKind.MEAT for each in made for one in each.recipe.ingredients
    )
    eggs = any(_is_egg(food_of(one.name)) for each in made for one in each.recipe.ingredients)
    return {(True, True): "meat, fish and egg", (True, False): "meat and fish", (False, True): "egg"}.get(
        (meat, eggs), ""
    )


def _is_egg(food: str) -> bool:
    """Whether it is eggs, whites or yolks; egg noodles and eggplants are none."""
    return "egg" in food.split() and aisle_of(food) is AisleKind.DAIRY


def table_items(event: Event, made: tuple[Portion, ...]) -> tuple[Item, ...]:
    """A spoon for each dish, and plates for as many as eat, serving after serving."""
    served = [portion for portion in made if portion.is_eaten]
    if not served:
        return ()
    plates = sum(serving.people for serving in event.servings)
    return (
        Item(
            "table.spoons",
            "Serving spoons or tongs",
            len(served),
            "one for each dish, and never for another",
            _PRACTICE,
        ),
        Item(
            "table.plates", "Plates, forks and cups", plates, "all servings together; fewer if they are washed between"
        ),
        Item("table.napkins", "Napkins", None, "", _PRACTICE),
        Item("table.card", "Allergen card", 1, "where everybody sees it before they take anything"),
        Item("table.pads", "Trivets or boards for hot ovens on the table", None, "", _PRACTICE),
        Item(
            "table.boxes",
            "Shallow boxes with lids, for what is left",
            None,
            "shallow, so that it cools fast",
            _PRACTICE,
        ),
    )
