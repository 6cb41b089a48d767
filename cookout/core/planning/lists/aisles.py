"""Where in a shop a food stands: by the words of its name. Common practice, no source; what is not known is "other"."""

from enum import StrEnum
from functools import cache

from cookout.core.kitchen.measures import TEASPOON
from cookout.core.kitchen.words import plain_name
from cookout.core.planning.lists.foods import one_of


class AisleKind(StrEnum):
    """Kinds of aisles, in the order in which a cart is well filled: heavy and dry first, cold last."""

    CANS = "cans"
    BAKING = "baking"
    GRAINS = "grains"
    OILS = "oils"
    SPICES = "spices"
    BREAD = "bread"
    DRINKS = "drinks"
    PRODUCE = "produce"
    DAIRY = "dairy"
    MEAT = "meat"
    OTHER = "other"

    @property
    def heading(self) -> str:
        """Its name for people."""
        return _TITLES[self]

    @property
    def cold(self) -> bool:
        """Whether what stands there goes from the shop into a cooler."""
        return self in (AisleKind.DAIRY, AisleKind.MEAT)


_TITLES = {
    AisleKind.CANS: "Cans and jars",
    AisleKind.BAKING: "Flour, sugar and baking",
    AisleKind.GRAINS: "Rice, pasta and dry beans",
    AisleKind.OILS: "Oil, vinegar and sauces",
    AisleKind.SPICES: "Salt and spices",
    AisleKind.BREAD: "Bread",
    AisleKind.DRINKS: "Water and drinks",
    AisleKind.PRODUCE: "Vegetables, fruit and herbs",
    AisleKind.DAIRY: "Milk, cheese and eggs",
    AisleKind.MEAT: "Meat and fish",
    AisleKind.OTHER: "Other",
}

_WORDS: dict[AisleKind, str] = {
    AisleKind.CANS: """
        stock; broth; bouillon; tomato paste; tomato puree; tomato sauce; passata; tomato juice; canned pumpkin;
        pumpkin puree; applesauce; coconut milk; coconut cream; condensed milk; evaporated milk; crushed pineapple;
        pineapple chunk; jam; jelly; preserve; marmalade; honey; molasses; maple syrup; corn syrup; agave syrup;
        syrup; peanut butter; almond butter; nut butter; tahini; pickle; olive; caper; sauerkraut; salsa; relish;
        chutney; apple butter; hominy; pie filling; sardine; canned tuna; creamed corn; roasted pepper;
        artichoke heart
        """,
    AisleKind.BAKING: """
        flour; sugar; baking powder; baking soda; yeast; cornstarch; corn starch; cornmeal; cocoa; cocoa powder;
        chocolate; chocolate chip; vanilla; almond extract; lemon extract; extract; vanilla bean; gelatin; pectin;
        cream of tartar; cake mix; baking mix; biscuit mix; pancake mix; muffin mix; brownie mix; cornbread mix;
        sprinkle; food coloring; marshmallow; raisin; sultana; currant; dried cranberry; dried apricot; date; prune;
        pecan; walnut; almond; hazelnut; cashew; pistachio; macadamia; pine nut; peanut; nut; coconut;
        coconut flake; shredded coconut; shortening; lard; powdered milk; milk powder; arrowroot; tapioca;
        meringue powder; almond meal; almond paste; marzipan; caramel; graham cracker; pie crust; bread crumb;
        breadcrumb; panko; sunflower seed; pumpkin seed; flaxseed; chia seed; masa; masa harina; buttermilk powder
        """,
    AisleKind.GRAINS: """
        rice; wild rice; pasta; spaghetti; macaroni; penne; noodle; egg noodle; lasagna; lasagne; orzo; couscous;
        bulgur; quinoa; barley; pearl barley; oats; oat; oatmeal; grit; polenta; lentil; split pea; bean;
        black bean; white bean; kidney bean; pinto bean; navy bean; lima bean; chickpea; farro; millet; granola;
        cereal; popcorn; semolina; butter bean; cannellini bean; great northern bean; soybean; cracker
        """,
    AisleKind.OILS: """
        oil; vinegar; soy sauce; worcestershire; worcestershire sauce; hot sauce; barbecue sauce; ketchup; mustard;
        mayonnaise; mayo; dressing; salad dressing; sauce; fish sauce; oyster sauce; marinade; cooking spray;
        tamari; horseradish sauce; gravy
        """,
    AisleKind.SPICES: """
        salt; pepper; black pepper; white pepper; peppercorn; cinnamon; cinnamon stick; nutmeg; mace; clove;
        allspice; ginger powder; ground ginger; dried ginger; cardamom; cumin; cumin seed; coriander seed;
        ground coriander; caraway; caraway seed; turmeric; paprika; smoked paprika; cayenne; chili powder;
        chile powder; chili flake; red pepper flake; pepper flake; saffron; star anise; anise; fennel seed;
        poppy seed; sesame seed; mustard seed; mustard powder; dry mustard; mixed spice; pumpkin pie spice;
        apple pie spice; five spice; curry powder; garlic powder; onion powder; garlic salt; celery salt;
        celery seed; dried oregano; oregano; dried thyme; dried basil; dried sage; dried rosemary; dried dill;
        marjoram; bay leaf; rub; seasoning; spice; sumac; juniper berry; dried parsley; spice mix; dry rub
        """,
    AisleKind.BREAD: """
        bread; sandwich bread; bun; roll; baguette; bagel; pita; naan; tortilla; corn tortilla; flour tortilla;
        english muffin; sponge finger; ladyfinger; crouton; brioche; rye bread; cornbread
        """,
    AisleKind.DRINKS: """
        water; ice; soda; club soda; soda water; cola; lemonade; root beer; coffee; tea; wine; beer; cider; juice;
        apple juice; orange juice; brandy; rum; bourbon; whiskey; drink
        """,
    AisleKind.PRODUCE: """
        onion; red onion; shallot; leek; garlic; garlic clove; scallion; chive; potato; sweet potato; yam; carrot;
        parsnip; beet; turnip; rutabaga; radish; horseradish; celeriac; celery; fennel; fennel bulb; cabbage; kale;
        chard; collard; spinach; lettuce; butter lettuce; arugula; rocket; green; salad green; mixed green;
        broccoli; cauliflower; brussels sprout; kohlrabi; asparagus; artichoke; okra; mushroom; corn; sweet corn;
        sweetcorn; pea; snap pea; snow pea; green bean; bean sprout; tomato; cherry tomato; tomatillo; bell pepper;
        sweet pepper; chile; chili; jalapeno; jalapeno pepper; poblano; poblano pepper; hot pepper; green pepper;
        red pepper; cucumber; zucchini; squash; butternut squash; winter squash; summer squash; acorn squash;
        pumpkin; eggplant; avocado; apple; pear; quince; peach; nectarine; plum; apricot; cherry; berry; strawberry;
        raspberry; blueberry; blackberry; cranberry; grape; melon; watermelon; cantaloupe; banana; plantain;
        pineapple; mango; papaya; kiwi; fig; rhubarb; pomegranate; lemon; lemon juice; lemon zest; lime; lime juice;
        lime zest; orange; orange zest; grapefruit; basil; parsley; cilantro; coriander; dill; mint; thyme;
        rosemary; sage; tarragon; fresh oregano; fresh marjoram; fresh bay leaf; ginger; lemongrass; herb; sprout;
        root; tofu
        """,
    AisleKind.DAIRY: """
        milk; buttermilk; butter; ghee; margarine; cream; heavy cream; whipping cream; sour cream; half and half;
        half-and-half; creme fraiche; cheese; cream cheese; cottage cheese; fresh cheese; hard cheese; cheddar;
        mozzarella; parmesan; feta; ricotta; mascarpone; gouda; provolone; yogurt; yoghurt; kefir; quark; custard;
        egg; egg white; egg yolk; whipped topping; oat milk; almond milk; soy milk; eggnog; cheese curd;
        goat cheese; blue cheese; pizza dough; puff pastry; pie dough; biscuit dough
        """,
    AisleKind.MEAT: """
        beef; stewing beef; ground beef; steak; brisket; chuck; sirloin; roast; veal; pork; ground pork;
        pork shoulder; bacon; ham; ham hock; sausage; smoked sausage; chorizo; salami; hot dog; lamb; mutton; goat;
        venison; bison; rabbit; chicken; chicken thigh; chicken breast; turkey; duck; goose; poultry; liver; meat;
        ground meat; meatball; fish; salmon; trout; cod; tuna; catfish; walleye; perch; halibut; haddock; mackerel;
        herring; tilapia; shrimp; prawn; crab; lobster; crayfish; crawfish; clam; mussel; oyster; scallop; squid;
        rib; short rib; pork rib; tenderloin; hen; bratwurst; burger; patty
        """,
}


# Herbs whose teaspoons are of dried leaves, unless the recipe says that they are fresh; common practice, no source.
_DRIED_BY_THE_SPOON = frozenset({"sage", "thyme", "rosemary", "oregano", "marjoram", "tarragon", "basil", "dill"})


def aisle_of(food: str, unit: str = "") -> AisleKind:
    """The aisle of a food by its name and how it is packed.

    The last word of a name that the tables know decides, the longest phrase first: "peanut butter" stands with cans and
    jars, "chicken stock" too, "ground pork" with the meat. What comes in a can or a jar stands there in any case.
    """
    if unit in ("can", "jar"):
        return AisleKind.CANS
    words = [one_of(word) for word in plain_name(food).split()]
    if unit == TEASPOON and "fresh" not in words and words[-1:] and words[-1] in _DRIED_BY_THE_SPOON:
        return AisleKind.SPICES
    for end in range(len(words), 0, -1):
        for start in range(end):
            kind = _phrases().get(" ".join(words[start:end]))
            if kind is not None:
                return kind
    return AisleKind.OTHER


@cache
def _phrases() -> dict[str, AisleKind]:
    return {
        " ".join(one_of(word) for word in phrase.split()): kind
        for kind, text in _WORDS.items()
        for phrase in (part.strip() for part in text.split(";"))
        if phrase
    }
