"""The words that kitchens use for measures, pieces, sizes and preparation, with their usual spellings."""

import re

# Spelling as written, without its full stop, to the unit; tried before lower case, since T and t differ.
EXACT_UNITS = {"T": "Tbsp", "t": "tsp", "C": "cup", "c": "cup", "L": "L", "l": "L", "G": "g", "#": "lb"}
UNIT_SPELLINGS = {
    "tsp": ("teaspoon", "teaspoons", "tea spoon", "tea spoons", "tsp", "tsps", "teasp", "ts"),
    "Tbsp": (
        "tablespoon",
        "tablespoons",
        "table spoon",
        "table spoons",
        "tbsp",
        "tbsps",
        "tbs",
        "tbl",
        "tb",
        "tblsp",
        "tbls",
    ),
    "fl oz": ("fluid ounce", "fluid ounces", "fl oz", "floz", "fl ounce", "fl ounces", "fluid oz"),
    "cup": ("cup", "cups"),
    "pt": ("pint", "pints", "pt", "pts"),
    "qt": ("quart", "quarts", "qt", "qts"),
    "gal": ("gallon", "gallons", "gal", "gals"),
    "mL": ("ml", "mls", "millilitre", "millilitres", "milliliter", "milliliters", "cc"),
    "cL": ("cl", "centilitre", "centilitres", "centiliter", "centiliters"),
    "dL": ("dl", "decilitre", "decilitres", "deciliter", "deciliters"),
    "L": ("litre", "litres", "liter", "liters", "ltr", "ltrs"),
    "oz": ("ounce", "ounces", "oz", "ozs"),
    "lb": ("pound", "pounds", "lb", "lbs"),
    "g": ("gram", "grams", "gramme", "grammes", "g", "gm", "gms"),
    "kg": ("kilogram", "kilograms", "kilo", "kilos", "kg", "kgs"),
    "dash": ("dash", "dashes"),
    "pinch": ("pinch", "pinches"),
    "inch": ("inch", "inches", '"', "in"),
    "cm": ("cm", "centimetre", "centimetres", "centimeter", "centimeters"),
}
# Short for two different things: asked about, never guessed.
UNCLEAR_UNITS = {
    "gr": "grams or grains", "grs": "grams or grains", "m": "a measure nobody named", "p": "pinch or pint",
    "dessertspoon": "2 or 3 tsp", "dessertspoons": "2 or 3 tsp", "gill": "4 or 5 fl oz", "gills": "4 or 5 fl oz",
    "wineglass": "2 fl oz or a whole glass", "shot": "1 or 1 1/2 fl oz", "shots": "1 or 1 1/2 fl oz",
}  # fmt: skip

CONTAINERS = {
    "can": ("can", "cans", "tin", "tins"),
    "jar": ("jar", "jars"),
    "bottle": ("bottle", "bottles"),
    "package": ("package", "packages", "pkg", "pkgs", "pkt", "packet", "packets", "pack", "packs"),
    "envelope": ("envelope", "envelopes", "sachet", "sachets"),
    "box": ("box", "boxes"),
    "bag": ("bag", "bags"),
    "carton": ("carton", "cartons"),
    "container": ("container", "containers", "tub", "tubs"),
    "block": ("block", "blocks"),
    "brick": ("brick", "bricks"),
    "bar": ("bar", "bars"),
    "tube": ("tube", "tubes"),
    "loaf": ("loaf", "loaves"),
}
PIECES = {
    "clove": ("clove", "cloves"),
    "head": ("head", "heads"),
    "bunch": ("bunch", "bunches"),
    "sprig": ("sprig", "sprigs"),
    "stalk": ("stalk", "stalks"),
    "rib": ("rib", "ribs"),
    "slice": ("slice", "slices"),
    "strip": ("strip", "strips"),
    "ear": ("ear", "ears"),
    "leaf": ("leaf", "leaves"),
    "piece": ("piece", "pieces", "knob", "knobs"),
    "chunk": ("chunk", "chunks"),
    "sheet": ("sheet", "sheets"),
    "rack": ("rack", "racks"),
    "fillet": ("fillet", "fillets", "filet", "filets"),
    "stick": ("stick", "sticks"),
    "cube": ("cube", "cubes"),
    "wedge": ("wedge", "wedges"),
    "handful": ("handful", "handfuls"),
    "splash": ("splash", "splashes"),
    "drizzle": ("drizzle", "drizzles"),
    "drop": ("drop", "drops"),
    "scoop": ("scoop", "scoops"),
}
# Named without a number ("pinch of salt") these are one.
ONE_WITHOUT_NUMBER = {"dash", "pinch", "handful", "splash", "drizzle", "bunch", "head", "piece", "stick"}
# "2 garlic cloves": the piece counted is the last word of the name.
PIECES_BEHIND = {"garlic": "clove", "celery": "stalk", "bread": "slice", "bacon": "slice"}
STICKS_OF_FAT = {"butter", "margarine", "shortening", "baking margarine"}

SIZES = (
    "extra-large", "extra large", "large", "medium-large", "medium", "small", "jumbo", "big", "thumb-sized",
    "thumb-size", "walnut-sized", "bite-sized", "bite-size",
)  # fmt: skip
# How a measure is filled, or how sure of it the writer is.
FILLED = (
    "firmly packed", "lightly packed", "loosely packed", "tightly packed", "packed", "heaping", "heaped", "rounded",
    "level", "scant", "generous",
)  # fmt: skip
ABOUT = ("about", "approximately", "approx.", "approx", "around", "roughly", "circa", "ca.", "ca", "at least", "~", "≈")
UNKNOWN_COUNTS = ("a few", "few", "several", "a couple of", "a couple", "couple of", "a number of", "many")
NO_AMOUNT = ("a little bit of", "a bit of", "a little", "some", "a lot of", "plenty of", "lots of", "enough")

# Words that say how a food is kept or cut and leave its name and weight to the spoonful alone, or nearly.
PREPARED = frozenset(
    (
        "boneless", "chilled", "chopped", "coarsely", "cold", "cool", "cooled", "crumbled", "cubed", "cut", "diced",
        "drained", "finely", "firm", "fresh", "freshly", "good", "halved", "juicy", "lean", "lukewarm", "melted",
        "minced", "organic", "peeled", "plump", "ripe", "roughly", "room-temperature", "salted", "skinless", "sliced",
        "soft", "softened", "thin", "thinly", "tender", "toasted", "trimmed", "uncooked", "unsalted", "warm",
        "washed", "young", "bone-in", "skin-on", "unpeeled", "seedless", "pitted", "sharp",
        "unsweetened", "beaten", "lightly", "well", "very", "packed", "mild", "crisp", "semi-soft",
    )
)  # fmt: skip

_BREAKS = re.compile(r"[^\w%'’-]+")


def counted(unit: str, number: float) -> str:
    """The unit as it is written behind a number: "2 cups", "1 can", "3 tsp"."""
    spellings = {**CONTAINERS, **PIECES, **{word: UNIT_SPELLINGS[word] for word in ("cup", "dash", "pinch")}}.get(unit)
    return spellings[1] if spellings and number > 1 else unit


def plain_name(text: str) -> str:
    """An ingredient's name in lower case, its last word in the singular, with single spaces."""
    return singular(" ".join(_BREAKS.sub(" ", text.lower().replace("’", "'")).split()))


def singular(name: str) -> str:
    """The name with its last word in the singular: "eggs" is "egg", "tomatoes" "tomato", "molasses" stays."""
    if name.endswith(("ss", "us", "oats", "molasses", "hummus", "peas")):
        return name
    for ending, instead in (("ies", "y"), ("oes", "o"), ("ches", "ch"), ("shes", "sh"), ("leaves", "leaf"), ("s", "")):
        if name.endswith(ending) and len(name) > len(ending) + 2:
            return name.removesuffix(ending) + instead
    return name
