"""Lists of the sample supper, worked out by hand; every key and amount is invented."""

from cookout.core.kitchen.measures import Amount
from cookout.core.planning.lists.aisles import AisleKind
from cookout.core.planning.lists.buying import Buy
from cookout.core.planning.lists.items import Group, Item
from cookout.core.planning.lists.leftovers import Advice, Afterwards, LeftDish, Leftovers
from cookout.core.planning.lists.measuring import Bag, DishMeasures, Kept, Measure
from cookout.core.planning.lists.shopping import Aisle, Line, Want
from cookout.core.planning.lists.table_card import Card, CardDish, CardServing
from tests.samples import at

CRUMBLE, BEANS = "Apple crumble à la Brandão", "Smoky bean pot"


def a_buy(text: str, also: str = "") -> Buy:
    return Buy(text=text, exact=Amount(1, ""), amount=Amount(1, ""), also=also)


def a_line(key: str, name: str, text: str, *wants: Want) -> Line:
    return Line(key, name, (a_buy(text),), wants)


def some_aisles() -> tuple[Aisle, ...]:
    onions = a_line(
        "onion", "onions", "5", Want("beans", BEANS, "onions", "", "3"), Want("crumble", CRUMBLE, "onion", "", "2")
    )
    sugar = Line("sugar", "sugar", (a_buy("1/4 cup", "2 oz"),), (Want("crumble", CRUMBLE, "sugar", "", "1/4 cup"),))
    cream = a_line("cream", "sour cream", "1 cup", Want("crumble", CRUMBLE, "sour cream", "cold", "1 cup"))
    return (Aisle(AisleKind.BAKING, (sugar,)), Aisle(AisleKind.PRODUCE, (onions,)), Aisle(AisleKind.DAIRY, (cream,)))


def some_groups() -> tuple[Group, ...]:
    tongs = Item(
        "tongs", "Long tongs", 2, "one for each pair of hands at the fire by 16:15", "common practice, no source"
    )
    return (Group("fire", "Fire and fuel", (tongs,), "Never in a car while it is warm."),)


def some_measures() -> tuple[DishMeasures, ...]:
    dry = Bag("crumble.dry", Kept.DRY, (Measure("flour", "sifted", "1 1/2 cups"),), part="topping")
    cold = Bag("crumble.cold", Kept.COLD, (Measure("butter", "", "6 Tbsp"),))
    return (DishMeasures("crumble", CRUMBLE, 3, (dry, cold)),)


def some_leftovers() -> Leftovers:
    away = Advice("Into shallow boxes, 40 °F or colder.", "USDA-FSIS")
    raw = Advice("Nobody tastes it.", "from memory")
    dishes = (
        LeftDish(
            dish="beans", name=BEANS, made=9, eating=8, spare=1, after=Afterwards.COOL, advice=(away,), by=at("20:05")
        ),
        LeftDish(
            dish="crumble",
            name=CRUMBLE,
            made=8,
            eating=8,
            spare=0,
            after=Afterwards.COOL,
            advice=(away,),
            by=at("20:30"),
        ),
        LeftDish(dish="raw", name="Raw batter", made=4, eating=None, spare=4, after=Afterwards.RAW, advice=(raw,)),
    )
    fire = (Item("drown", "Drown the coals", None, "twice", "fire-service advice"),)
    return Leftovers(dishes, fire, (Advice("Write on each box what is in it.", "common practice, no source"),))


def a_card() -> Card:
    beans = CardDish(
        "beans", BEANS, ("wheat",), ("soybeans",), ("sesame",), ("smoked sausage",), (), ("Runa",), (CRUMBLE,)
    )
    crumble = CardDish("crumble", CRUMBLE, (), (), (), (), (), (), ())
    return Card((CardServing("supper", "Supper", at("18:00"), (beans, crumble)),))
