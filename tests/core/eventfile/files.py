"""A small event file that has no fault, and ways to put one into it."""

from pathlib import Path

import pytest

from cookout.core.errors import EventFileError, Fault
from cookout.core.eventfile import read_event

FIXTURES = Path(__file__).parents[3] / "fixtures" / "events"
FIXTURE_NAMES = ("supper", "demonstration", "festival")

SOUND = """
[event]
id = "picnic"
name = "Picnic"
timezone = "America/New_York"
date = "2027-06-12"

[place]
name = "Mill pond"

[[gear]]
id = "oven"
kind = "oven"
size = "12 in"

[[gear]]
id = "chimney"
kind = "chimney"
coals = 60

[[gear]]
id = "table"
kind = "table"
spots = 2

[[crew]]
id = "ada"
name = "Ada"
skills = ["fire"]
windows = ["15:00-19:00"]

[[crew]]
id = "ben"
name = "Ben"
windows = ["2027-06-11 18:00-20:00", "15:00-19:00"]

[[servings]]
id = "dinner"
at = "18:00"
people = 6
dishes = ["loaf"]

[[servings]]
id = "tea"
at = "16:50"
people = 2

[[dishes]]
id = "loaf"
recipe = "bread"

[[dishes]]
id = "dough"
recipe = "bread"

[[demo_slots]]
id = "show"
starts = "16:00"
minutes = 30
presenter = "ben"
live = [{ dish = "dough", step = "mix" }]
ready_made = [{ dish = "loaf", by = "16:10", up_to = "bake" }]

[[demo_slots]]
id = "encore"
starts = "16:30"
minutes = 10
presenter = "ben"

[[pins]]
task = "loaf.b1.bake"
at = "17:05"
units = ["Iron, the old one"]

[[pins]]
task = "dough.b1.mix"
helpers = ["ben"]

[recipes.bread]
name = "Bread"
serves = 6
food = "bread_and_cake"
keeps = { air = 300 }

[[recipes.bread.steps]]
id = "mix"
name = "Mix"
kind = "mix"
minutes = 10

[[recipes.bread.steps]]
id = "rise"
name = "Rise"
kind = "rest"
minutes = [40, 50, 60]
gear = [{ kind = "bowl" }]

[[recipes.bread.steps]]
id = "bake"
name = "Bake"
minutes = [30, 35, 40]
after = [{ step = "rise", least = 5, most = 20 }]
bake = { oven = "12 in", temperature = "400 F", look_in_from = 25 }
"""


def fixture_text(name: str) -> str:
    """The text of one of the events that come with the program."""
    return (FIXTURES / f"{name}.toml").read_text(encoding="utf-8")


def with_change(old: str, new: str, text: str = SOUND) -> str:
    """The sound file with one place changed."""
    assert text.count(old) >= 1, f"{old!r} is not in the file"
    return text.replace(old, new, 1)


def faults_of(text: str, file: str = "picnic.toml") -> tuple[Fault, ...]:
    """Every fault of a file that has some."""
    with pytest.raises(EventFileError) as told:
        read_event(text, file)
    return told.value.faults


def only_fault(text: str) -> Fault:
    """The fault of a file that has exactly one."""
    faults = faults_of(text)
    assert len(faults) == 1, "\n".join(map(str, faults))
    return faults[0]
