"""The schema of an event file: every table and key, its meaning, its unit, and what holds where it is left out.

An event file is TOML. Keys marked "must" have no default. Faults name a key by its path, as
``supper.toml: recipes.peach-cobbler.steps[2].minutes``, where [2] is the second. Unless said otherwise:

- an *id* is letters, digits, ``-`` and ``_``, begins with a letter or digit, and is unique among its kind;
- a *time* is ``"18:00"`` on the event's date or ``"2027-05-02 08:00"`` on another, always in the event's time zone;
  TOML's own times and dates do as well. A time that the clocks skip is refused; one that they show twice is the first,
  and ``"01:30 again"`` is the second;
- a *window* is ``"14:00-19:30"``, or with dates ``"2027-05-02 08:00-12:00"`` and
  ``"2027-05-01 22:00 - 2027-05-02 02:00"``; ``24:00`` is the end of a day;
- *minutes* are whole minutes;
- a *quantity* is text with its unit: ``"350 F"`` or ``"180 C"``, ``"12 in"`` or ``"30 cm"``, ``"8 mph"``, ``"5 m/s"``,
  ``"20 km/h"`` or ``"10 kn"``, ``"1,200 ft"`` or ``"366 m"``.

[event]: the event itself (must)
    id              id (must)
    name            what people call it (must)
    timezone        IANA time zone, as "America/Denver" (must)
    date            its date, as "2027-06-12" (must); minutes are counted from the start of this day
    units           "us" or "metric": what is shown and printed; default "us"
    break_minutes   minutes of rest that end a stretch of hot work; default 10
    setup_minutes   minutes to set up tables, water and shovel before the first fire; default 20
    wind_limit      speed above which the organiser lights no fire; default none. No standard gives one
    fire_warning    the warning that the authorities issued, word for word; default none
    use_models      false where coal counts and minutes come from the chart and the recipes alone; default true
    altitude_advice  true where the plan shows what the elevation changes in the recipes; default false

[place]: where it is (must)
    name            what people call it (must)
    elevation       elevation above the sea; default "0 m"
    latitude        degrees, north positive; default unknown
    longitude       degrees, east positive; default unknown
    dry_grass       true where dry grass or leaves lie around the fire, false where not; default nobody looked
    clear           distance from the fire to the nearest thing that burns, as "15 ft"; default nobody looked
    water           true where water stands by the fire, in buckets or a hose that reaches; default nobody looked
    shovel          true where a shovel lies by the fire; default nobody looked
    metal_can       true where there is a metal can with a lid for the ash; default nobody looked
    enclosure       what stands around the fire: "open" (nothing), "open_shelter" (a roof, no walls), "tent", "cabin",
                    "vehicle" or "enclosed"; default nobody looked. No fire is lit but in the first two
    children        true where children will be there; default nobody said, or true with a minor in the crew

[weather]: what is expected; default calm and mild
    air             air temperature in the shade; default "21 C"
    wind            mean wind; default "0 m/s"
    gust            strongest gusts, no weaker than the wind; default the wind
    humidity        relative humidity, 0 to 1; default 0.5
    sunny           true where the ovens stand in the sun; default false
    hours           list of changes through the day; default none: the same all day

[[weather.hours]]: from a time on, until the next one, the weather is another
    from            time, each later than the one before (must)
    air             air temperature in the shade; default as before this time
    wind            mean wind; default as before this time
    gust            strongest gusts, no weaker than the wind; default as before this time, or the wind where it is given
    humidity        relative humidity, 0 to 1; default as before this time
    sunny           true where the ovens stand in the sun; default as before this time

[fuel]: fuel on hand; default briquettes, nobody counted
    kind            "briquettes" or "lump"; default "briquettes"
    coals           how many pieces; default unknown

[food_safety]: which rules food keeps to; default the guidance for homes. The numbers are those of the local code, where
it asks for more than the published one; a number that would allow more is refused
    code            "home" (USDA-FSIS guidance for homes and picnics) or "public" (FDA Food Code, for whoever
                    sells to or serves the public); default "home"
    marked          true where food out of heat and cold bears its times in writing; default false
    local_code      what the local code is called; default "local code"
    section         its section; default none
    hot             hot food is held at this or hotter; default as published, like every number below
    cold            cold food is held at this or colder
    out_minutes     longest that food stands out of heat and cold
    warm_minutes    the same in air above warm_air
    warm_air        air from which warm_minutes counts
    cold_out_minutes  longest out of the cold for food that stays cool; "public" only
    first_minutes   first stage of cooling; "public" only
    cooling_minutes  both stages of cooling; "public" only
    reheating       least centre of food that is reheated
    reheating_minutes  longest that reheating takes
    centres         table of least centres by kind of food

[food_safety.centres]: least temperature in the middle, by kind of food; default as published
    bread_and_cake  its least centre
    cream_icing     its least centre
    eggs            its least centre
    fish            its least centre
    whole_meat      its least centre
    ground_meat     its least centre
    poultry         its least centre
    stew_and_beans  its least centre
    cooked_vegetables  its least centre
    raw_vegetables  its least centre
    fruit           its least centre
    dairy           its least centre

[[gear]]: alike pieces of gear
    id              id (must)
    kind            "oven", "chimney", "table", "trivet", "rack", "cooler", "mixer", "bowl", "skillet" or "other" (must)
    name            what people call it; default its id
    count           how many; default 1
    size            ovens only (must): nominal diameter, to the inch
    deep            ovens only: true for the deep kind; default false
    coals           chimneys only (must): how many coals one lights at once
    spots           cooking tables only (must): how many ovens stand on one table
    spot_size       cooking tables only: the largest oven that stands on a spot without touching another; default any
    material        cooking tables only: what the top is made of; default unknown
    surface         cooking tables only: "metal", "ground" (earth or stone) or "grate", for the heat from below; default
                    "metal". Without a table ovens stand on the ground
    iron            ovens only: mass of the oven with its lid, as "20 lb" or "9 kg"; default as usual for its size
    height          trivets only: how high it raises an oven that stands on it, as "5 in"; default as its legs would
    ice             coolers only: false where it has no ice; default true
    places          coolers only: how many layers, cakes or bowls stand in one at once; default 6

[[crew]]: the helpers
    id              id (must)
    name            what people call them (must)
    skills          list of words of your own, as "baking"; "fire" is needed for fire tasks; default none
    windows         list of windows in which they are there; they do not overlap (must)
    adult           false for a minor; default true
    fire_allowed    true where the organiser lets this minor tend fire; default false
    hot_stretch_minutes  longest stretch of hot work before a break, minutes; default 60
    contact         how to reach them; default none

[[servings]]: food on the table
    id              id (must)
    name            what people call it; default its id
    at              time (must)
    early           minutes before that a dish may be there; default 10
    late            minutes after that are still accepted; default 10
    people          how many eat (must)
    dishes          list of dish ids; default none. A dish may name its serving instead, and stands in one at most

[[dishes]]: a recipe made for this event
    id              id (must)
    recipe          id of a recipe (must)
    serving         id of a serving; default the one that lists it; a dish without one is only shown, in a demo slot
    people          for how many; default all of the serving's people, or one batch where there is no serving
    swaps           list of ids of the recipe's swaps that are made for this dish; default none

[[demo_slots]]: time before an audience
    id              id (must)
    name            what it is called; default its id
    starts          time (must)
    minutes         how long, minutes (must)
    presenter       id of a helper (must)
    live            list of what the presenter shows, in its order: live steps, talks, tastings; default none
    ready_made      list of dishes that stand there ready; default none

[[demo_slots.live]]: a step shown live, or a talk, or a tasting
    dish            id of the dish of a step (must); of a tasting the dish that is done by then, default none
    step            id of a step of its recipe (must); not for a talk or a tasting
    talk            what is talked about, in place of dish and step
    taste           what is tasted, in place of a step
    minutes         how long a talk or a tasting lasts, minutes; a step lasts as its recipe says

[[demo_slots.ready_made]]: a dish that stands ready
    dish            id of a dish (must)
    by              time, no later than the end of the slot; default its start
    up_to           id of the last step that is done by then; default the whole dish

[[pins]]: a task of the plan that the planner fixed by hand; at least one of at, helpers and units is given
    task            id of the task, as "show-cake.b1.p1.bake"; at most one pin for each (must)
    at              time at which it starts; default whatever is best
    helpers         list of ids of helpers who do it, others make up its hands; default whoever is best
    units           list of pieces of gear as the plan names them, as "12-inch oven B"; default whichever are best

[recipes.ID]: a recipe for one batch; ID is its id
    name            what people call it (must)
    serves          how many one batch serves (must)
    pans            how many pans (layers, loaves) a batch is made in; default 1
    pan             what they are, as "9 in round"; default unknown
    food            "bread_and_cake", "cream_icing", "eggs", "fish", "whole_meat", "ground_meat", "poultry",
                    "stew_and_beans", "cooked_vegetables", "raw_vegetables", "fruit" or "dairy": for food safety (must)
    keeps           table of how long the finished dish keeps its quality (must)
    icing           "cream_cheese", "butter", "shortening", "whipped_cream", "chocolate_and_cream" or "sugar_glaze", for
                    warnings of warm air; default what the ingredients make, where a step ices
    held            "hot", "cold" or "air": how it waits for its serving; it must keep that way; default "air"
    rests_minutes   minutes it must stand before it is served; default 0
    best_within     minutes after which waiting costs freshness; default 0
    serve_minutes   minutes to serve it; default 5
    serve_hands     helpers to serve it; default 1
    allergens       list of words, as "milk", "eggs", "wheat"; default none
    ingredients     list of ingredients of one batch, each a table or a line as "1 1/2 cups flour, sifted"; default none
    swaps           list of swaps that a dish may choose; default none
    steps           list of steps, at least one (must)

[recipes.ID.keeps]: minutes that the dish keeps
    hot             kept hot; default not kept so
    cold            kept cold; default not kept so
    air             at air temperature; default not kept so

[[recipes.ID.ingredients]]: an ingredient
    name            what it is (must)
    amount          number of units; default to taste
    unit            as "cup", "lb" or "g"; default pieces
    note            as "softened"; default none

[[recipes.ID.swaps]]: this instead of that
    id              id, unique in the recipe (must)
    instead_of      name of an ingredient of the recipe (must)
    use             what takes its place (must)
    ratio           how much of it for one of the old; default 1
    unit            its unit, where it is another; default that of the old
    note            what to say of it; default what it takes the place of

[[recipes.ID.steps]]: a step
    id              id, unique in the recipe (must)
    name            what to do, in a few words (must)
    kind            "prepare", "mix", "rest", "bake", "cool", "ice" or "finish"; default "bake" where there is a bake,
                    "cool" where there is a cool, otherwise "prepare"
    scope           "pan" (once for each pan of each batch), "batch" or "dish" (once); default "batch"
    minutes         [least, usual, most] minutes, or one number for all three (must)
    hands           helpers for the whole step; 0 is unattended; default 0 to rest, bake and cool, otherwise 1
    skills          list of words that each of those helpers has; default none: anyone
    hot             true for work at the fire; default false
    gear            list of gear in use during the step, other than what a bake takes; default none
    after           list of steps that come first, as ids or tables; default the step written before it
    bake            table of the oven that it wants; default none
    cool            table of what it cools to, for steps of the kind "cool"; default none
    note            what to look for; default none

[[recipes.ID.steps.gear]]: gear in use
    kind            "trivet", "rack", "cooler", "mixer", "bowl", "skillet", "other", or the id of such gear (must)
    count           how many; default 1

[[recipes.ID.steps.after]]: a step that comes first
    step            id of a step of the same recipe (must)
    least           least minutes from its end to this start; default 0
    most            most minutes from its end to this start; default any

[recipes.ID.steps.bake]: the oven
    oven            nominal diameter, to the inch (must)
    method          "bake", "roast", "simmer" or "fry": how the coals are shared out; default "bake"
    temperature     temperature in the oven (must)
    look_in_from    minutes after which the first look-in may come, before the least minutes of the step (must)
    preheat_minutes  minutes that the oven heats up empty; default 0
    trivet          true where the pan stands on a trivet in the oven; default false
    stand           true where the oven stands on a trivet in place of its legs; default false
    pan             diameter of the round pan, or of the oven where food lies in it, as "9 in"; default unknown. With
                    pan, depth and load the heat model gives the minutes
    depth           depth of the food in it, as "1.25 in"; default unknown
    load            "cake", "carrot cake", "quick bread", "enriched dough", "lean bread", "cornbread", "cobbler",
                    "casserole", "potatoes", "beans", "stew", "fish", "roast", "poultry" or "ground meat": what it is,
                    for the heat model; default unknown
    start           its temperature as it goes in; default as usual for the load
    done            its temperature at the centre when done; default as usual for the load

[recipes.ID.steps.cool]: what a cooling step cools to; the heat model then gives its minutes
    to              temperature at the centre, as "80 F" to be iced (must)
    where           "pan", "rack" or "cooler": where it stands; default "rack"
    depth           its depth as baked; default the depth that went in
"""

from types import MappingProxyType

# The tables and keys that the reader takes. A test holds them against the text above.
KEYS = MappingProxyType(
    {
        "": (
            "event",
            "place",
            "weather",
            "fuel",
            "food_safety",
            "gear",
            "crew",
            "servings",
            "dishes",
            "demo_slots",
            "pins",
            "recipes",
        ),
        "event": (
            "id",
            "name",
            "timezone",
            "date",
            "units",
            "break_minutes",
            "setup_minutes",
            "wind_limit",
            "fire_warning",
            "use_models",
            "altitude_advice",
        ),
        "place": (
            "name",
            "elevation",
            "latitude",
            "longitude",
            "dry_grass",
            "clear",
            "water",
            "shovel",
            "metal_can",
            "enclosure",
            "children",
        ),
        "weather": ("air", "wind", "gust", "humidity", "sunny", "hours"),
        "weather.hours": ("from", "air", "wind", "gust", "humidity", "sunny"),
        "fuel": ("kind", "coals"),
        "food_safety": (
            "code",
            "marked",
            "local_code",
            "section",
            "hot",
            "cold",
            "out_minutes",
            "warm_minutes",
            "warm_air",
            "cold_out_minutes",
            "first_minutes",
            "cooling_minutes",
            "reheating",
            "reheating_minutes",
            "centres",
        ),
        "food_safety.centres": (
            "bread_and_cake",
            "cream_icing",
            "eggs",
            "fish",
            "whole_meat",
            "ground_meat",
            "poultry",
            "stew_and_beans",
            "cooked_vegetables",
            "raw_vegetables",
            "fruit",
            "dairy",
        ),
        "gear": (
            "id",
            "kind",
            "name",
            "count",
            "size",
            "deep",
            "coals",
            "spots",
            "spot_size",
            "material",
            "surface",
            "iron",
            "height",
            "ice",
            "places",
        ),
        "crew": ("id", "name", "skills", "windows", "adult", "fire_allowed", "hot_stretch_minutes", "contact"),
        "servings": ("id", "name", "at", "early", "late", "people", "dishes"),
        "dishes": ("id", "recipe", "serving", "people", "swaps"),
        "demo_slots": ("id", "name", "starts", "minutes", "presenter", "live", "ready_made"),
        "demo_slots.live": ("dish", "step", "talk", "taste", "minutes"),
        "demo_slots.ready_made": ("dish", "by", "up_to"),
        "pins": ("task", "at", "helpers", "units"),
        "recipes.ID": (
            "name",
            "serves",
            "pans",
            "pan",
            "food",
            "keeps",
            "icing",
            "held",
            "rests_minutes",
            "best_within",
            "serve_minutes",
            "serve_hands",
            "allergens",
            "ingredients",
            "swaps",
            "steps",
        ),
        "recipes.ID.keeps": ("hot", "cold", "air"),
        "recipes.ID.ingredients": ("name", "amount", "unit", "note"),
        "recipes.ID.swaps": ("id", "instead_of", "use", "ratio", "unit", "note"),
        "recipes.ID.steps": (
            "id",
            "name",
            "kind",
            "scope",
            "minutes",
            "hands",
            "skills",
            "hot",
            "gear",
            "after",
            "bake",
            "cool",
            "note",
        ),
        "recipes.ID.steps.gear": ("kind", "count"),
        "recipes.ID.steps.after": ("step", "least", "most"),
        "recipes.ID.steps.bake": (
            "oven",
            "method",
            "temperature",
            "look_in_from",
            "preheat_minutes",
            "trivet",
            "stand",
            "pan",
            "depth",
            "load",
            "start",
            "done",
        ),
        "recipes.ID.steps.cool": ("to", "where", "depth"),
    }
)
