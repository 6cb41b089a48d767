"""Each kind of fault is told with its place and its remedy, and all of a file's faults are told together."""

import pytest

from cookout.core.eventfile import read_event
from tests.core.eventfile.files import SOUND, faults_of, only_fault, with_change


def test_the_file_that_the_faults_are_put_into_has_none() -> None:
    assert read_event(SOUND, "picnic.toml").id == "picnic"


# (what is written, what is written instead, where, part of what is wrong, part of the remedy)
FAULTS = {
    "unknown key, nearest name": (
        'name = "Mill pond"',
        'name = "Mill pond"\nelevatoin = "1,200 ft"',
        "place.elevatoin",
        "There is no such key.",
        'Did you mean "elevation"?',
    ),
    "unknown table": ("[[servings]]", "[wether]\n[[servings]]", "wether", "There is no such key.", '"weather"'),
    "unknown key in a list": (
        "minutes = 10\n",
        "minuts = 10\nminutes = 10\n",
        "demo_slots[2].minuts",
        "no such",
        '"minutes"',
    ),
    "missing key": ("minutes = [40, 50, 60]\n", "", "recipes.bread.steps[2].minutes", "missing", "[20, 25, 30]"),
    "missing table": ('[place]\nname = "Mill pond"\n', "", "place", "The table is missing.", "name"),
    "missing name": ('name = "Ada"\n', "", "crew[1].name", "missing", "Write name"),
    "missing windows": ('windows = ["15:00-19:00"]\n', "", "crew[1].windows", "missing", "14:00-19:30"),
    "missing keeps": ("keeps = { air = 300 }\n", "", "recipes.bread.keeps", "missing", "hot, cold, air"),
    "missing bake": ("bake = {", 'kind = "bake"\n#', "recipes.bread.steps[3].bake", "missing", "look_in_from"),
    "empty text": ('name = "Ben"', 'name = " "', "crew[2].name", "It is empty.", "Write name"),
    "number for text": ('name = "Ben"', "name = 7", "crew[2].name", "a whole number, not text", "Write name"),
    "text for number": ("people = 6", 'people = "six"', "servings[1].people", 'the text "six"', "people = 10"),
    "fraction for whole number": (
        "serves = 6",
        "serves = 6.5",
        "recipes.bread.serves",
        "a number, not a whole",
        "serves",
    ),
    "true for number": ("people = 6", "people = true", "servings[1].people", "true or false", "people = 10"),
    "number for true": ('kind = "oven"', 'kind = "oven"\ndeep = 1', "gear[1].deep", "not true or false", "deep = true"),
    "table for list": (
        'windows = ["15:00-19:00"]',
        "windows = {}",
        "crew[1].windows",
        "a table, not a list",
        "windows = [...]",
    ),
    "list for table": ("keeps = { air = 300 }", "keeps = [300]", "recipes.bread.keeps", "a list", "hot, cold, air"),
    "recipe without steps": ("[recipes.bread]", "[recipes.rye]", "recipes.rye.steps", "missing", "recipes.ID.steps"),
    "no step at all": (
        "[recipes.bread]",
        "[recipes.rye]\nsteps = []\n[recipes.bread]",
        "recipes.rye.steps",
        "empty",
        "one step",
    ),
    "recipe that is text": (
        "[recipes.bread]",
        "[recipes]\nrye = 'dark'\n[recipes.bread]",
        "recipes.rye",
        "the text",
        "a table",
    ),
    "recipe with a bad id": (
        "[recipes.bread]",
        '[recipes."rye bread"]\n[recipes.bread]',
        'recipes."rye bread"',
        "no id",
        "letters",
    ),
    "live step that is text": (
        "live = [{",
        'live = ["mix", {',
        "demo_slots[1].live[1]",
        'the text "mix"',
        "dish, step",
    ),
    "not a word": ('skills = ["fire"]', 'skills = ["fire", 3]', "crew[1].skills[2]", "a whole number", "words"),
    "word twice": ('skills = ["fire"]', 'skills = ["a", "a"]', "crew[1].skills[2]", "stands twice", "Leave one"),
    "out of range": ("people = 6", "people = 0", "servings[1].people", "out of range", "from 1 to"),
    "humidity in percent": (
        "[[servings]]",
        "[weather]\nhumidity = 45\n[[servings]]",
        "weather.humidity",
        "range",
        "0 to 1",
    ),
    "not a number": ("[[servings]]", "[weather]\nhumidity = nan\n[[servings]]", "weather.humidity", "range", "0 to 1"),
    "unknown word": ('kind = "rest"', 'kind = "rets"', "recipes.bread.steps[2].kind", '"rets"', '"rest"'),
    "unknown food": (
        'food = "bread_and_cake"',
        'food = "pie"',
        "recipes.bread.food",
        '"pie"',
        "Known here: bread_and_cake",
    ),
    "temperature without scale": (
        '"400 F"',
        '"400"',
        "recipes.bread.steps[3].bake.temperature",
        "cannot be read",
        '"350 F"',
    ),
    "temperature too hot": (
        '"400 F"',
        '"4000 F"',
        "recipes.bread.steps[3].bake.temperature",
        "out of range",
        "Check number",
    ),
    "number for temperature": ('"400 F"', "400", "recipes.bread.steps[3].bake.temperature", "whole number", '"350 F"'),
    "oven of no size": ('size = "12 in"', 'size = "12 ft"', "gear[1].size", "out of range", '"12 in"'),
    "key of other gear": ("coals = 60", 'coals = 60\nsize = "12 in"', "gear[2].size", '"oven" only', "mend the kind"),
    "bad id": ('id = "ben"', 'id = "ben jr."', "crew[2].id", '"ben jr." is no id', "letters, digits"),
    "time zone": ("America/New_York", "America/New_Yrok", "event.timezone", "no IANA time zone", "America/New_York"),
    "date": ('"2027-06-12"', '"2027-06-31"', "event.date", "no date", "2027-06-12"),
    "date of another kind": ('"2027-06-12"', "12", "event.date", "not a date", "2027-06-12"),
    "time": ('at = "18:00"', 'at = "6 pm"', "servings[1].at", "not a local time", '"18:00"'),
    "time with an offset": (
        'at = "18:00"',
        "at = 2027-06-12T18:00:00Z",
        "servings[1].at",
        "not a local time",
        '"18:00"',
    ),
    "time of day that is none": ('at = "18:00"', 'at = "18:75"', "servings[1].at", "no time 18:75", "0 to 24"),
    "time with seconds": ('at = "18:00"', "at = 18:00:30", "servings[1].at", "seconds", "whole minutes"),
    "time far away": ('at = "18:00"', 'at = "2028-06-12 18:00"', "servings[1].at", "14 days", "event.date"),
    "time shown once": ('at = "18:00"', 'at = "18:00 again"', "servings[1].at", "only once", 'Leave out "again"'),
    "window": ('"2027-06-11 18:00-20:00"', '"all day"', "crew[2].windows[1]", "not a window", "14:00-19:30"),
    "window reversed": ('"15:00-19:00"', '"19:00-15:00"', "crew[1].windows[1]", "ends before it starts", "Swap"),
    "windows overlap": ('"2027-06-11 18:00-20:00"', '"14:00-16:00"', "crew[2].windows", "overlap", "Join them"),
    "no window": ('windows = ["15:00-19:00"]', "windows = []", "crew[1].windows", "empty", "14:00-19:30"),
    "minutes fall": ("[40, 50, 60]", "[60, 50, 40]", "recipes.bread.steps[2].minutes", "do not rise", "from 1 to"),
    "two minutes": (
        "[40, 50, 60]",
        "[40, 50]",
        "recipes.bread.steps[2].minutes",
        "not minutes",
        "[least, usual, most]",
    ),
    "minutes in words": ("[40, 50, 60]", '"an hour"', "recipes.bread.steps[2].minutes", "not minutes", "one number"),
    "look-in too late": (
        "look_in_from = 25",
        "look_in_from = 30",
        "recipes.bread.steps[3].bake.look_in_from",
        "30",
        "below 30",
    ),
    "most below least": (
        "least = 5, most = 20",
        "least = 5, most = 4",
        "recipes.bread.steps[3].after[1].most",
        "5",
        "larger",
    ),
    "wait of no kind": (
        '[{ step = "rise", least = 5, most = 20 }]',
        "[5]",
        "recipes.bread.steps[3].after[1]",
        "a whole number",
        "step",
    ),
    "bake of another kind": (
        "minutes = [30",
        'kind = "mix"\nminutes = [30',
        "recipes.bread.steps[3].kind",
        '"mix"',
        "Leave the kind",
    ),
    "held as it does not keep": (
        "keeps = {",
        'held = "hot"\nkeeps = {',
        "recipes.bread.held",
        "does not keep",
        "keeps.hot",
    ),
    "rests beyond its keeping": (
        "keeps = {",
        "rests_minutes = 301\nkeeps = {",
        "recipes.bread.rests_minutes",
        "300",
        "Lengthen",
    ),
    "no such recipe": ('recipe = "bread"', 'recipe = "braed"', "dishes[1].recipe", 'no recipe "braed"', '"bread"'),
    "no such dish listed": (
        'dishes = ["loaf"]',
        'dishes = ["loaf", "lof"]',
        "servings[1].dishes[2]",
        'no dish "lof"',
        '"loaf"',
    ),
    "serving of another list": (
        'id = "loaf"\n',
        'id = "loaf"\nserving = "tea"\n',
        "dishes[1].serving",
        "lists this dish",
        "one place",
    ),
    "no such serving named": (
        'id = "dough"\n',
        'id = "dough"\nserving = "diner"\n',
        "dishes[2].serving",
        '"diner"',
        '"dinner"',
    ),
    "no such presenter": ('presenter = "ben"', 'presenter = "bne"', "demo_slots[1].presenter", '"bne"', '"ben"'),
    "no such live dish": (
        'dish = "dough", step',
        'dish = "duogh", step',
        "demo_slots[1].live[1].dish",
        '"duogh"',
        '"dough"',
    ),
    "no such live step": ('step = "mix"', 'step = "mxi"', "demo_slots[1].live[1].step", '"mxi"', '"mix"'),
    "no such step to be ready": (
        'up_to = "bake"',
        'up_to = "bkae"',
        "demo_slots[1].ready_made[1].up_to",
        '"bkae"',
        '"bake"',
    ),
    "no such step to wait for": (
        'step = "rise"',
        'step = "rsie"',
        "recipes.bread.steps[3].after[1]",
        '"rsie"',
        '"rise"',
    ),
    "no such gear": ('kind = "bowl"', 'kind = "bolw"', "recipes.bread.steps[2].gear[1].kind", '"bolw"', '"bowl"'),
    "gear of bakes": ('kind = "bowl"', 'kind = "oven"', "recipes.bread.steps[2].gear[1].kind", '"oven"', "bake ="),
    "ready too late": (
        'by = "16:10"',
        'by = "16:31"',
        "demo_slots[1].ready_made[1].by",
        "over by then",
        "before the end",
    ),
    "slots overlap": (
        'starts = "16:30"',
        'starts = "16:29"',
        "demo_slots[2].starts",
        '"show" at the same time',
        "Move one",
    ),
    "shown twice": (
        'starts = "16:30"',
        'starts = "16:30"\nlive = [{ dish = "dough", step = "mix" }]',
        "demo_slots[2].live[1].step",
        "shown live before",
        "second dish",
    ),
    "talk with a step": (
        "live = [{",
        'live = [{ talk = "Salt", minutes = 3, step = "mix" }, {',
        "demo_slots[1].live[1].step",
        "A talk shows no dish and no step",
        "entry of its own",
    ),
    "talk that is a tasting too": (
        "live = [{",
        'live = [{ talk = "Salt", minutes = 3, taste = "Crust" }, {',
        "demo_slots[1].live[1].taste",
        "A talk shows no dish",
        "entry of its own",
    ),
    "talk of no length": (
        "live = [{",
        'live = [{ talk = "Salt" }, {',
        "demo_slots[1].live[1].minutes",
        "missing",
        "minutes = ",
    ),
    "talk about nothing": (
        "live = [{",
        'live = [{ talk = "", minutes = 3 }, {',
        "demo_slots[1].live[1].talk",
        "empty",
        "talk = ",
    ),
    "tasting of no time": (
        "live = [{",
        'live = [{ taste = "Crust", minutes = 0 }, {',
        "demo_slots[1].live[1].minutes",
        "out of range",
        "from 1",
    ),
    "tasting with a step": (
        "live = [{",
        'live = [{ taste = "Crust", minutes = 3, dish = "loaf", step = "mix" }, {',
        "demo_slots[1].live[1].step",
        "A tasting shows no step",
        "entry of its own",
    ),
    "no such dish to taste": (
        "live = [{",
        'live = [{ taste = "Crust", minutes = 3, dish = "laof" }, {',
        "demo_slots[1].live[1].dish",
        '"laof"',
        '"loaf"',
    ),
    "tasted before it is done": (
        "live = [{",
        'live = [{ taste = "Crust", minutes = 3, dish = "dough" }, {',
        "demo_slots[1].live[1].taste",
        "before it is done",
        "behind the step",
    ),
    "live step with minutes": (
        'step = "mix" }]',
        'step = "mix", minutes = 4 }]',
        "demo_slots[1].live[1].minutes",
        "as long as its recipe says",
        "Leave it out",
    ),
    "no such helper pinned": ('helpers = ["ben"]', 'helpers = ["bne"]', "pins[2].helpers[1]", '"bne"', '"ben"'),
    "pinned to no time": ('at = "17:05"', 'at = "five"', "pins[1].at", "not a local time", '"18:00"'),
    "pinned to nothing": ('helpers = ["ben"]', "helpers = []", "pins[2]", "pins nothing", "Write at"),
    "pinned twice": ('task = "dough.b1.mix"', 'task = "loaf.b1.bake"', "pins[2].task", "pinned before", "into one pin"),
    "pin of no task": ('task = "dough.b1.mix"\n', "", "pins[2].task", "missing", "show-cake"),
    "same id": ('id = "ben"', 'id = "ada"', "crew[2].id", '"ada" is taken', "id of its own"),
    "same id of steps": ('id = "rise"', 'id = "mix"', "recipes.bread.steps[2].id", '"mix" is taken', "id of its own"),
    "neither served nor shown": (
        '[[demo_slots]]\nid = "show"',
        '[[dishes]]\nid = "idle"\nrecipe = "bread"\n\n[[demo_slots]]\nid = "show"',
        "dishes[3]",
        "neither served nor shown",
        "Name its serving",
    ),
    "circle of steps": (
        "minutes = 10\n\n[[recipes",
        'minutes = 10\nafter = ["bake"]\n\n[[recipes',
        "recipes.bread.steps[1].after",
        "mix -> bake -> rise -> mix",
        "Take one",
    ),
    "step after itself": (
        'after = [{ step = "rise", least = 5, most = 20 }]',
        'after = ["rise", "bake"]',
        "recipes.bread.steps[3].after",
        "bake -> bake",
        "Take one",
    ),
}

# These slips leave references without what they name, or keys without their table, and those are told as well.
WITH_OTHERS = (
    "no step at all",
    "recipe without steps",
    "recipe with a bad id",
    "bad id",
    "same id",
    "same id of steps",
)


@pytest.mark.parametrize("case", FAULTS)
def test_a_fault_is_told_with_its_place_and_its_remedy(case: str) -> None:
    old, new, where, what, remedy = FAULTS[case]
    faults = {fault.where: fault for fault in faults_of(with_change(old, new))}
    assert f"picnic.toml: {where}" in faults, list(faults)
    fault = faults[f"picnic.toml: {where}"]
    assert what in fault.what
    assert remedy in fault.remedy
    assert fault.what.endswith(".")
    assert fault.remedy.endswith((".", "?"))


@pytest.mark.parametrize("case", [case for case in FAULTS if case not in WITH_OTHERS])
def test_one_slip_is_told_as_one_fault(case: str) -> None:
    old, new, *_ = FAULTS[case]
    assert only_fault(with_change(old, new)).where.startswith("picnic.toml: ")


def test_a_name_too_long_for_a_list_of_events_is_a_fault_with_its_limit() -> None:
    fault = only_fault(with_change('name = "Picnic"', f'name = "{"x" * 201}"'))
    assert fault.where.endswith("event.name")
    assert "200" in fault.remedy
