"""Which words of an ingredient tell which of the nine major allergens. Data only; `allergens` reads it.

The nine: FALCPA 2004 (milk, eggs, fish, crustacean shellfish, tree nuts, peanuts, wheat, soybeans) and the FASTER Act
of 2021 (sesame). The words under each were written by us from general knowledge and held against what two state
departments of agriculture print (Minnesota, Nebraska; read in copies); they are no complete list, and a label comes
before them. Words are in the singular; longer phrases win over shorter ones, so that "peanut butter" holds no milk.
"""

from enum import StrEnum


class Allergen(StrEnum):
    """The nine major allergens of United States law, by the names that the law gives them."""

    MILK = "milk"
    EGGS = "eggs"
    FISH = "fish"
    CRUSTACEANS = "crustacean shellfish"
    TREE_NUTS = "tree nuts"
    PEANUTS = "peanuts"
    WHEAT = "wheat"
    SOYBEANS = "soybeans"
    SESAME = "sesame"


CONTAINS: dict[Allergen, str] = {
    Allergen.MILK: """
        milk; dairy; butter; buttermilk; ghee; butterfat; cream; creme; creme fraiche; half and half;
        whipping cream; sour cream; clotted cream; cheese; cream cheese; cottage cheese; fresh cheese; hard cheese;
        cheddar; mozzarella; parmesan; feta; brie; ricotta; mascarpone; gouda; gruyere; provolone; monterey jack;
        blue cheese; goat cheese; paneer; quark; queso; cheese curd; yogurt; yoghurt; kefir; whey; casein;
        caseinate; lactose; lactalbumin; curd; custard; condensed milk; evaporated milk; milk powder; powdered milk;
        dulce de leche; milk chocolate; white chocolate; ice cream; gelato; toffee; fudge; butterscotch;
        malted milk; lemon curd; alfredo; bechamel; hazelnut spread; custard powder; pudding; tzatziki
        """,
    Allergen.EGGS: """
        egg; egg white; egg yolk; yolk; egg powder; egg wash; egg noodle; albumin; albumen; mayonnaise; mayo; aioli;
        meringue; meringue powder; custard; eggnog; lemon curd; hollandaise; bearnaise; ovalbumin; lysozyme;
        brioche; challah; ladyfinger
        """,
    Allergen.FISH: """
        fish; fish sauce; fish stock; anchovy; anchovy paste; bass; bluefish; carp; catfish; cod; flounder; grouper;
        haddock; halibut; herring; mackerel; mahi mahi; perch; pike; pollock; salmon; sardine; snapper; sole; sprat;
        swordfish; tilapia; trout; tuna; walleye; whitefish; eel; caviar; fish roe; surimi; imitation crab;
        isinglass; fish gelatin; worcestershire; worcestershire sauce; caesar dressing; bonito; dashi
        """,
    Allergen.CRUSTACEANS: """
        crab; crabmeat; crayfish; crawfish; krill; langoustine; lobster; prawn; scampi; shrimp; shrimp paste;
        shellfish; crab boil; shrimp stock
        """,
    Allergen.TREE_NUTS: """
        tree nut; nut; mixed nut; almond; almond flour; almond meal; almond milk; almond butter; almond extract;
        brazil nut; butternut; cashew; cashew milk; cashew butter; chestnut; filbert; hazelnut; hazelnut spread;
        hickory nut; macadamia; macadamia nut; pecan; pine nut; pinon; pignoli; pistachio; walnut; walnut oil;
        nut butter; marzipan; almond paste; frangipane; praline; nougat; gianduja; amaretti; nut flour; nut milk
        """,
    Allergen.PEANUTS: "peanut; peanut butter; peanut oil; peanut flour; groundnut; goober; beer nut; satay sauce",
    Allergen.WHEAT: """
        wheat; flour; whole wheat flour; bread flour; cake flour; pastry flour; self rising flour;
        self raising flour; graham flour; graham cracker; bread; breadcrumb; bread crumb; panko; brioche; challah;
        bun; bagel; baguette; ciabatta; crouton; pita; naan; flour tortilla; cracker; cookie; shortbread; biscuit;
        biscuit mix; baking mix; cake mix; pancake mix; brownie mix; muffin mix; pie crust; pastry; puff pastry;
        filo; phyllo; pizza dough; dough; pasta; spaghetti; macaroni; penne; lasagna; lasagne; fettuccine; linguine;
        rotini; orzo; ravioli; tortellini; noodle; egg noodle; ramen; udon; couscous; bulgur; semolina; durum;
        farina; farro; spelt; kamut; einkorn; emmer; freekeh; wheat germ; wheat bran; wheat berry; triticale;
        seitan; gluten; vital wheat gluten; matzo; matzoh; soy sauce; teriyaki; teriyaki sauce; hoisin;
        hoisin sauce; roux; ladyfinger; pretzel; wafer; wonton wrapper
        """,
    Allergen.SOYBEANS: """
        soy; soya; soybean; soy bean; soy sauce; soy milk; soy flour; soy lecithin; soybean oil; tofu; bean curd;
        tempeh; edamame; miso; natto; tamari; textured vegetable protein; tvp; teriyaki; teriyaki sauce; hoisin;
        hoisin sauce; soy protein; okara; yuba
        """,
    Allergen.SESAME: """
        sesame; sesame seed; sesame oil; tahini; benne; benne seed; gingelly; gingelly oil; halva; hummus; za atar;
        zaatar; gomasio; everything bagel seasoning; furikake
        """,
}

# What may hold it, by maker or recipe: the label decides.
MAY_BE: dict[Allergen, str] = {
    Allergen.MILK: """
        chocolate; chocolate chip; dark chocolate; margarine; vegan butter; plant butter; bread; breadcrumb;
        bread crumb; panko; bun; biscuit; biscuit mix; baking mix; cake mix; pancake mix; brownie mix; muffin mix;
        pie crust; pastry; puff pastry; cracker; cookie; graham cracker; shortbread; caramel; sausage;
        smoked sausage; hot dog; ham; luncheon meat; meatball; pesto; ranch dressing; caesar dressing;
        mashed potato; granola; nougat; praline; naan; brioche; challah; ladyfinger; sprinkle; frosting; icing;
        pizza dough; ravioli; tortellini; whipped topping
        """,
    Allergen.EGGS: """
        pasta; spaghetti; macaroni; penne; lasagna; lasagne; fettuccine; linguine; rotini; orzo; noodle; ramen;
        ravioli; tortellini; bread; bun; biscuit; baking mix; cake mix; pancake mix; brownie mix; muffin mix;
        cookie; surimi; imitation crab; marshmallow; marzipan; nougat; ice cream; gelato; meatball; tartar sauce;
        ranch dressing; caesar dressing; coleslaw dressing; pastry; puff pastry; sausage; frosting; icing; pudding;
        wonton wrapper
        """,
    Allergen.FISH: "barbecue sauce; steak sauce; kimchi; tapenade; bloody mary mix; curry paste; oyster sauce",
    Allergen.CRUSTACEANS: "surimi; imitation crab; kimchi; curry paste; fish sauce; fish stock",
    Allergen.TREE_NUTS: """
        coconut; coconut milk; coconut oil; coconut flour; coconut cream; coconut sugar; cream of coconut;
        chocolate; dark chocolate; chocolate chip; granola; muesli; trail mix; pesto; cookie; vegan butter;
        plant butter; plant milk; sprinkle; mortadella; caramel; baklava
        """,
    Allergen.PEANUTS: """
        oil; frying oil; chocolate; granola; trail mix; mixed nut; cookie; chili paste; mole; mole sauce; marzipan;
        nut butter; praline; tree nut; nut
        """,
    Allergen.WHEAT: """
        oat; rolled oat; oatmeal; oat flour; oat bran; granola; muesli; tortilla; starch; modified starch; sausage;
        smoked sausage; meatball; hot dog; surimi; imitation crab; gravy; tamari; miso; worcestershire;
        worcestershire sauce; beer; malt; oyster sauce; rye bread; corn bread; cornbread; soba; buckwheat noodle;
        stuffing; barbecue sauce; custard powder; pudding; cornbread mix; rye flour
        """,
    Allergen.SOYBEANS: """
        oil; vegetable oil; frying oil; cooking spray; shortening; vegetable shortening; lecithin; margarine;
        vegan butter; plant butter; plant milk; mayonnaise; mayo; chocolate; chocolate chip; dark chocolate;
        white chocolate; milk chocolate; hazelnut spread; bread; breadcrumb; bread crumb; panko; bun; cracker;
        graham cracker; cookie; baking mix; cake mix; biscuit mix; brownie mix; muffin mix; sausage; smoked sausage;
        hot dog; meatball; ham; surimi; worcestershire; worcestershire sauce; oyster sauce; barbecue sauce;
        sprinkle; frosting; icing; whipped topping; vegetable protein; curry paste
        """,
    Allergen.SESAME: """
        bread; bun; bagel; breadcrumb; bread crumb; panko; cracker; granola; trail mix; hoisin; hoisin sauce;
        teriyaki sauce; falafel; oil; satay sauce; furikake; pretzel
        """,
}

# Made of many things: whatever else it is, what is in it is not known until its label is read.
COMPOSITE = """
    stock; broth; seed; spice; ranch dressing; caesar dressing; coleslaw dressing; tartar sauce; bloody mary mix;
    falafel; oyster sauce; everything bagel seasoning; furikake; cornbread; corn bread; rye bread; mortadella;
    baklava; satay sauce; salad dressing; soy free; milk free; wheat free; sesame free; bouillon; bouillon cube;
    soup; cream soup; sauce; dressing; marinade; seasoning; seasoning mix; rub; mix; spice mix; curry paste;
    curry powder; gravy; sausage; smoked sausage; hot dog; meatball; luncheon meat; stuffing; pesto; salsa; ketchup;
    barbecue sauce; steak sauce; chili paste; mole; mole sauce; granola; muesli; trail mix; sprinkle; frosting;
    icing; filling; topping; whipped topping; cake mix; baking mix; biscuit mix; pancake mix; brownie mix;
    muffin mix; cornbread mix; candy; gluten free flour; gluten free; dairy free; egg free; nut free; vegan;
    vegan butter; vegan cheese; vegan egg; plant butter; plant milk; plant based; substitute; egg substitute;
    egg replacer; alternative; imitation; imitation crab; surimi; flavoring; flavouring; natural flavor;
    vegetable protein; kimchi; tapenade; chutney; relish; crust; coating; batter; chip; snack; cereal;
    protein powder; powder; protein
    """

# Known to hold none of the nine in itself.
PLAIN = """
    water; ice; salt; sea salt; kosher salt; pepper; peppercorn; sugar; cane sugar; powdered sugar; icing sugar;
    confectioner sugar; maple sugar; honey; molasses; maple syrup; syrup; corn syrup; agave; agave syrup; treacle;
    baking powder; baking soda; soda; bicarbonate of soda; cream of tartar; yeast; active dry yeast; instant yeast;
    cornstarch; corn starch; corn flour; cornflour; cornmeal; masa; masa harina; polenta; grit; hominy; popcorn;
    tapioca; tapioca flour; tapioca starch; arrowroot; potato starch; potato flour; rice flour; chickpea flour;
    buckwheat; buckwheat flour; millet; quinoa; amaranth; sorghum; teff; corn tortilla; rice; wild rice;
    rice noodle; rice paper; rice vinegar; vinegar; cider vinegar; wine vinegar; balsamic vinegar; wine; cider;
    brandy; rum; whiskey; bourbon; coffee; tea; cocoa; cocoa powder; cocoa butter; vanilla; vanilla extract;
    vanilla bean; lemon extract; orange extract; food coloring; gelatin; pectin; xanthan gum; guar gum; olive oil;
    canola oil; rapeseed oil; sunflower oil; safflower oil; corn oil; avocado oil; lard; tallow; suet; bacon fat;
    bacon drippings; dripping; beef; stewing beef; steak; brisket; chuck; sirloin; roast; veal; pork; pork shoulder;
    pork loin; bacon; ham hock; lamb; mutton; goat; venison; bison; rabbit; chicken; hen; turkey; duck; goose;
    poultry; quail; liver; ham; acorn squash; butternut squash; butternut pumpkin; buttercup squash; squash;
    pumpkin; zucchini; courgette; eggplant; aubergine; cucumber; melon; watermelon; cantaloupe; tomato;
    tomato paste; tomato puree; tomato sauce; passata; tomatillo; chile; chili; chilli; chile pepper; chili powder;
    jalapeno; poblano; bell pepper; sweet pepper; potato; sweet potato; yam; cassava; carrot; parsnip; beet;
    beetroot; turnip; rutabaga; radish; horseradish; celeriac; celery; fennel; onion; shallot; leek; garlic;
    garlic powder; onion powder; scallion; spring onion; green onion; chive; cabbage; sauerkraut; kale; chard;
    collard; spinach; lettuce; butter lettuce; arugula; rocket; green; broccoli; cauliflower; brussel sprout;
    kohlrabi; asparagus; artichoke; okra; mushroom; oyster mushroom; corn; creamed corn; sweetcorn; pea; snap pea;
    chickpea; garbanzo; garbanzo bean; lentil; bean; black bean; white bean; kidney bean; pinto bean; navy bean;
    butter bean; lima bean; green bean; cannellini bean; great northern bean; sprout; bean sprout; olive; caper;
    pickle; dill pickle; avocado; apple; applesauce; apple butter; apple juice; pear; quince; peach; nectarine;
    plum; prune; apricot; cherry; berry; strawberry; raspberry; blueberry; blackberry; cranberry; currant;
    gooseberry; elderberry; grape; raisin; sultana; date; fig; banana; plantain; pineapple; mango; papaya; kiwi;
    rhubarb; pomegranate; lemon; lemon juice; lemon zest; lime; lime juice; orange; orange juice; orange zest;
    grapefruit; zest; juice; jam; jelly; preserve; marmalade; basil; parsley; cilantro; coriander; dill; mint;
    thyme; rosemary; sage; oregano; marjoram; tarragon; bay leaf; bay; cinnamon; nutmeg; mace; clove; allspice;
    ginger; cardamom; cumin; caraway; turmeric; paprika; smoked paprika; cayenne; saffron; anise; star anise;
    fennel seed; poppy seed; mustard seed; mustard powder; mustard; mixed spice; pumpkin pie spice; apple pie spice;
    five spice; juniper; sumac; lavender; sunflower seed; pumpkin seed; flax; flaxseed; chia; chia seed;
    water chestnut; lemongrass; tamarind; shea butter; nutritional yeast; seaweed; nori; coconut aminos; club soda;
    soda water; cola; lemonade; root beer; clam; mussel; oyster; scallop; squid; barley; pearl barley; rye; lupin;
    malt vinegar; coconut; coconut milk; coconut oil; coconut flour; coconut cream; coconut sugar; cream of coconut;
    oat; rolled oat; oatmeal; oat flour; oat bran; oat milk; rice milk; rye flour; tortilla; starch;
    modified starch; oil; vegetable oil; frying oil; cooking spray; shortening; vegetable shortening; lecithin;
    margarine; chocolate; dark chocolate; chocolate chip; caramel; marshmallow; beer; malt; soba; meat; vegetable;
    fruit; herb; free range; fat free; sugar free; salt free; salad green; mixed green
    """

# Not among the nine, and named all the same, since people ask for them (other countries' lists; from memory).
OTHERS: dict[str, str] = {
    "mustard": "mustard; mustard seed; mustard powder",
    "celery": "celery; celeriac; celery seed; celery salt",
    "barley": "barley; pearl barley; malt; malt vinegar; beer",
    "rye": "rye; rye flour; rye bread",
    "oats": "oat; rolled oat; oatmeal; oat flour; oat bran; oat milk; granola; muesli",
    "lupin": "lupin; lupin flour",
    "molluscs": "clam; mussel; oyster; scallop; squid; octopus; snail; oyster sauce",
    "coconut": "coconut; coconut milk; coconut oil; coconut flour; coconut cream; coconut sugar; cream of coconut",
}

# Say how it is cut, kept, counted or coloured, and nothing of what it is.
IGNORED = """
    a active aged all an and any as at baby bag baking bar big bite black bleached boiled bone boneless box braised
    breast broken brown bulb bunch butterflied can canned case chilled chopped chunk cleaned clove coarse coarsely
    cold cooked cooking cracked crisp crumbled crushed cube cubed cup cured cut dark dash deep diced double drained
    dried drop drumstick dry ear extra farm fat fillet fine finely firm flake flaked fluid for fresh freshly from
    frozen full garden gold good grain gram granulated grass grated green ground half halved handful hard head heavy
    heirloom hot house hulled in instant italian jar jumbo kept kg kilogram knob large lb leaf lean leave leg light
    long low lukewarm medium melted middle mild mince minced ml new of on or organic other ounce oz pack packed
    packet peeled piece pinch pint pitted plain plus pound pressed pure purple purpose quart quartered quick range
    raw red reduced regular rib rinsed ripe roasted rolled room round russet salted shank sharp shelled short
    shoulder shredded sifted sized skin skinless skinned slice sliced small smoked soaked soft softened sour splash
    sprig stalk steamed stem stewing stick stone stoned strip stripe strong style summer sweet sweetened tablespoon
    tail taste tbsp teaspoon temperature tender tenderloin thawed the thick thigh thin tin to toasted torn trimmed
    tsp unbleached uncooked unsalted unsweetened until very virgin warm wash washed white whole wild wing winter
    with yellow young your yukon
    """
