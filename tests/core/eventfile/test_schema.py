"""The schema's text and the reader hold the same tables and keys."""

import re
import tomllib

import pytest

from cookout.core.eventfile import schema
from tests.core.eventfile.files import FIXTURE_NAMES, faults_of, fixture_text

HEADING = re.compile(r"^\[+([a-zA-Z_.]+)\]+: ")
KEY = re.compile(r"^    ([a-z_]+) {2,}\S")

# One way to reach each table: the text that opens it, at the end of an otherwise empty file.
OPENINGS = {
    "event": "[event]\n",
    "place": "[place]\n",
    "weather": "[weather]\n",
    "weather.hours": "[weather]\n[[weather.hours]]\n",
    "fuel": "[fuel]\n",
    "food_safety": "[food_safety]\n",
    "food_safety.centres": "[food_safety]\n[food_safety.centres]\n",
    "gear": "[[gear]]\n",
    "crew": "[[crew]]\n",
    "servings": "[[servings]]\n",
    "dishes": "[[dishes]]\n",
    "demo_slots": "[[demo_slots]]\n",
    "demo_slots.live": "[[demo_slots]]\n[[demo_slots.live]]\n",
    "demo_slots.ready_made": "[[demo_slots]]\n[[demo_slots.ready_made]]\n",
    "pins": "[[pins]]\n",
    "recipes.ID": "[recipes.x]\n",
    "recipes.ID.keeps": "[recipes.x.keeps]\n",
    "recipes.ID.ingredients": "[[recipes.x.ingredients]]\n",
    "recipes.ID.swaps": "[[recipes.x.swaps]]\n",
    "recipes.ID.steps": "[[recipes.x.steps]]\n",
    "recipes.ID.steps.gear": "[[recipes.x.steps]]\n[[recipes.x.steps.gear]]\n",
    "recipes.ID.steps.after": "[[recipes.x.steps]]\n[[recipes.x.steps.after]]\n",
    "recipes.ID.steps.bake": "[[recipes.x.steps]]\n[recipes.x.steps.bake]\n",
    "recipes.ID.steps.cool": "[[recipes.x.steps]]\n[recipes.x.steps.cool]\n",
}
OWNERS = {
    "size": "oven",
    "deep": "oven",
    "coals": "chimney",
    "spots": "table",
    "spot_size": "table",
    "material": "table",
    "surface": "table",
    "iron": "oven",
    "height": "trivet",
    "ice": "cooler",
    "places": "cooler",
}
KEYS = [(table, key) for table in OPENINGS for key in schema.KEYS[table]]


def documented() -> dict[str, list[str]]:
    """The keys of each table as the schema's text has them."""
    tables: dict[str, list[str]] = {}
    for line in (schema.__doc__ or "").splitlines():
        if heading := HEADING.match(line):
            keys = tables.setdefault(heading[1], [])
        elif key := KEY.match(line):
            keys.append(key[1])
    return tables


def must_keys(table: str) -> set[str]:
    """The keys of a table that the schema's text says must be there."""
    section = (schema.__doc__ or "").split(f"[{table}]")[1].split("\n\n")[0]
    entries = re.split(r"\n    (?=[a-z_]+ {2,})", section)[1:]
    return {entry.split()[0] for entry in entries if "(must" in entry}


def test_every_key_that_the_reader_takes_is_documented_and_no_other() -> None:
    assert documented() == {table: list(keys) for table, keys in schema.KEYS.items() if table}


def test_every_table_at_the_top_is_documented() -> None:
    assert set(schema.KEYS[""]) == {table.split(".")[0] for table in documented()}


def place_of(table: str) -> str:
    """Where the table of `OPENINGS` stands, as faults name it."""
    parts = table.split(".")
    heads = [".".join(parts[: length + 1]) for length in range(len(parts))]
    lists = [f"[[{head.replace('ID', 'x')}]]" in OPENINGS[table] for head in heads]
    return ".".join(part + "[1]" * is_list for part, is_list in zip(parts, lists, strict=True)).replace("ID", "x")


@pytest.mark.parametrize(("table", "key"), KEYS)
def test_the_reader_takes_every_documented_key_and_judges_its_value(table: str, key: str) -> None:
    # A date and time with an offset is the one value of TOML that no key takes.
    kind = f'kind = "{OWNERS[key]}"\n' if table == "gear" and key in OWNERS else ""
    faults = faults_of(f"{OPENINGS[table]}{kind}{key} = 2027-06-12T18:00:00Z\n")
    found = [fault for fault in faults if fault.where == f"picnic.toml: {place_of(table)}.{key}"]
    assert len(found) == 1
    assert found[0].what not in ("There is no such key.", "It is missing.")


@pytest.mark.parametrize("table", OPENINGS)
def test_just_the_keys_that_must_be_there_are_missed(table: str) -> None:
    place = f"picnic.toml: {place_of(table)}."
    missed = {fault.where for fault in faults_of(OPENINGS[table] + "x = 1") if "is missing" in fault.what}
    # Which of these a piece of gear must have hangs on its kind.
    must = {key for key in must_keys(table) if table != "gear" or key not in OWNERS}
    assert {where.removeprefix(place) for where in missed if where.startswith(place)} == must


def test_the_events_that_come_with_the_program_use_every_table() -> None:
    used = set()
    for name in FIXTURE_NAMES:
        used |= set(tomllib.loads(fixture_text(name)))
    # Pins come out of the work with a plan, so none come with an event.
    assert used == set(schema.KEYS[""]) - {"pins"}
