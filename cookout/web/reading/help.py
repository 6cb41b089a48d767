"""What the help pages tell: topics, words with the planner's own numbers in them, cautions with who says so."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from cookout.core.fire.charcoal import BRIQUETTES, LUMP, TENDING, firing_times
from cookout.core.planning.event import Event, Helper
from cookout.core.planning.result import Status
from cookout.core.quantities import show_elevation, show_speed, show_temperature
from cookout.core.safety.distances import ADVISED, BURNABLE, CHILD_RING, CLEARED
from cookout.core.safety.limits import HOME, USDA_FSIS, least_centre
from cookout.web import preferences
from cookout.web.reading.words_of_the_trade import GROUPS, Group, Word

Words = str | Promise
NO_BREAK = "\N{NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class Topic:
    """One help page, with what it is for."""

    name: str
    title: Words
    purpose: Words


TOPICS = (
    Topic(
        "first-event",
        _("A first event in ten steps"),
        _("From a blank page to a plan on paper, with what to look for at each step."),
    ),
    Topic(
        "planning",
        _("How planning works"),
        _("Why everything is planned backward, which rules always hold, and how good a plan is."),
    ),
    Topic("words", _("Words of the trade"), _("What the words on these pages mean, each with a sentence or two.")),
    Topic(
        "cautions",
        _("Cautions"),
        _("Fire, carbon monoxide, burns and food: what can hurt people, and what to do about it."),
    ),
)

FOODS: tuple[tuple[str, Words], ...] = (
    ("poultry", _("poultry")),
    ("ground_meat", _("ground meat")),
    ("whole_meat", _("whole cuts of meat")),
    ("fish", _("fish")),
    ("eggs", _("dishes with egg")),
    ("stew_and_beans", _("stews, beans, leftovers")),
)
"""Kinds of food with a least temperature in the middle, in the order in which help tells them."""

STANDINGS: dict[Status, Words] = {
    Status.PROVED_BEST: _("Every rule holds, and with these firings and kinds of oven no other plan does better."),
    Status.BEST_FOUND: _("Every rule holds. A better plan may exist, and you are told how much better at most."),
    Status.NONE_FOUND: _("The time was over before a plan was found. There may be one: try again, or ease the event."),
    Status.IMPOSSIBLE: _("No plan was found that keeps every rule. You are told what stands in the way."),
}
"""What each standing of a plan means, apart from any plan."""


@dataclass(frozen=True, slots=True)
class Centre:
    """How hot the middle of a food must get, with the minutes of rest behind it."""

    food: Words
    temperature: str
    rest_minutes: int


def topic_of(name: str) -> Topic | None:
    """The topic of that name; None where there is none."""
    return next((topic for topic in TOPICS if topic.name == name), None)


def facts() -> dict[str, object]:
    """The planner's numbers that help tells, quantities in the reader's units (in both where none are chosen)."""
    briquettes, lump = firing_times(BRIQUETTES), firing_times(LUMP)
    return {
        "ash": briquettes.ash_over_minutes,
        "ash_lump": lump.ash_over_minutes,
        "full": briquettes.full_heat_minutes,
        "full_lump": lump.full_heat_minutes,
        "top_up": briquettes.top_up_minutes,
        "top_up_lump": lump.top_up_minutes,
        "turn": TENDING.turn_every_minutes,
        "turn_windy": TENDING.turn_every_windy,
        "windy": _in_units(show_speed, TENDING.windy_mps),
        "hot_stretch": _default(Helper, "hot_stretch_minutes"),
        "break": _default(Event, "break_minutes"),
        "hot": _in_units(show_temperature, USDA_FSIS.hot_c),
        "cold": _in_units(show_temperature, USDA_FSIS.cold_c),
        "out": USDA_FSIS.out_minutes,
        "out_warm": USDA_FSIS.out_minutes_warm,
        "warm_air": "" if USDA_FSIS.warm_air_c is None else _in_units(show_temperature, USDA_FSIS.warm_air_c),
        "clear": _in_units(show_elevation, BURNABLE.metres),
        "better": _in_units(show_elevation, ADVISED.metres),
        "circle": _in_units(show_elevation, CLEARED.metres),
        "ring": _in_units(show_elevation, CHILD_RING.metres),
    }


def word_groups() -> list[tuple[Group, list[tuple[Word, str]]]]:
    """Every group with its words and their meanings, numbers filled in."""
    numbers = facts()
    return [(group, [(word, str(word.meaning) % numbers) for word in group.words]) for group in GROUPS]


def word_index() -> list[Word]:
    """All words by the alphabet of the reader's language."""
    return sorted((word for group in GROUPS for word in group.words), key=lambda word: str(word.name).casefold())


def centres() -> Iterator[Centre]:
    """How hot the middle of each food must get at home and on a picnic."""
    for food, words in FOODS:
        found = least_centre(food, HOME)
        if found is not None:
            yield Centre(words, _in_units(show_temperature, found.usual_c), round(found.rest_minutes))


def _in_units(show: Callable[[float, str], str], value: float) -> str:
    units = preferences.current().units
    said = show(value, units) if units else f"{show(value, 'us')} ({show(value, 'metric')})"
    return said.replace(" ", NO_BREAK)


def _default(kind: type, field: str) -> int:
    """What a field of an event is where nobody says anything."""
    found: int = kind.__dataclass_fields__[field].default  # type: ignore[attr-defined]
    return found
