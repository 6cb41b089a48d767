"""The allergens of a dish, from the names of its ingredients: it contains, it may be, not known, or none found.

Never a silent "none": one ingredient that the words do not know makes every other allergen of the dish not known, and
"none found" is a statement about our words, not about the food. Traces from other dishes, tools and hands are outside
all of this. The words stand in `allergen_words`.
"""

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from cookout.core.safety.allergen_words import COMPOSITE, CONTAINS, IGNORED, MAY_BE, OTHERS, PLAIN, Allergen

_LONGEST_PHRASE = 4
NOT_SAID = "No dish here is free of anything: traces pass from tools, hands and coals. Ask the cook; read the labels."
"""What stands under every list of allergens."""


class Presence(StrEnum):
    """What is known of one allergen in one dish."""

    CONTAINS = "contains"
    MAY_BE = "may be in it"
    NOT_KNOWN = "not known"
    NOT_FOUND = "none found"


@dataclass(frozen=True, slots=True)
class Told:
    """What one ingredient tells; `known` False where a part of it is in no table or is made of many things."""

    contains: frozenset[Allergen]
    may_be: frozenset[Allergen]
    others: frozenset[str]
    known: bool


@dataclass(frozen=True, slots=True)
class DishAllergens:
    """The allergens of a dish. `because` gives the ingredients that tell of each allergen found or possible.

    `unknown` are the ingredients that are not known, `undeclared` the allergens that the ingredients contain and the
    recipe's own list leaves out (empty where it has no list), `others` those beyond the nine.
    """

    contains: tuple[Allergen, ...]
    may_be: tuple[Allergen, ...]
    not_known: tuple[Allergen, ...]
    unknown: tuple[str, ...]
    others: tuple[str, ...]
    undeclared: tuple[Allergen, ...]
    because: tuple[tuple[Allergen, tuple[str, ...]], ...]

    def presence(self, allergen: Allergen) -> Presence:
        """What is known of this allergen."""
        if allergen in self.contains:
            return Presence.CONTAINS
        if allergen in self.may_be:
            return Presence.MAY_BE
        return Presence.NOT_KNOWN if allergen in self.not_known else Presence.NOT_FOUND

    @property
    def said(self) -> str:
        """One line for people; what is not known stands in it in capitals, and it never says "free of"."""
        parts = [
            _listed("Contains", self.contains),
            _listed("May hold", self.may_be),
            _listed("NOT KNOWN", self.not_known),
            _listed("Also", self.others),
        ]
        if self.unknown:
            parts.append(f"Not known what is in: {', '.join(self.unknown)}.")
        elif not self.contains and not self.may_be and not self.not_known:
            parts.append("None of the nine major allergens found in the names of its ingredients.")
        return " ".join([*(part for part in parts if part), "Ask the cook."])


def _listed(word: str, names: Iterable[str]) -> str:
    listed = ", ".join(str(name) for name in names)
    return f"{word}: {listed}." if listed else ""


def dish_allergens(ingredients: Iterable[str | tuple[str, str]], declared: Iterable[str] = ()) -> DishAllergens:
    """The allergens of a dish with these ingredients (names, or names with their notes) and its `declared` list.

    A dish with no ingredients listed is not known altogether. A note can add what may be in it ("brushed with butter")
    and takes nothing away. Example: ("flour", "butter", "house rub"): contains wheat and milk, all else not known.
    """
    pairs = [(item, "") if isinstance(item, str) else item for item in ingredients]
    told = [(name, _with_note(tell(name), note)) for name, note in pairs]
    listed = tuple(declared)
    said = [(word, _declared(word)) for word in listed]
    found = _because(told + said, "contains")
    possible = {allergen: names for allergen, names in _because(told, "may_be").items() if allergen not in found}
    unknown = tuple(dict.fromkeys(name for name, tells in told if not tells.known))
    blind = bool(unknown) or not told
    by_ingredients = _because(told, "contains")
    by_list = _because(said, "contains")
    return DishAllergens(
        contains=_in_order(found),
        may_be=_in_order(possible),
        not_known=tuple(a for a in Allergen if blind and a not in found and a not in possible),
        unknown=unknown if told else ("its ingredients are not listed",),
        others=tuple(sorted({other for _, tells in told + said for other in tells.others})),
        undeclared=tuple(a for a in Allergen if listed and a in by_ingredients and a not in by_list),
        because=tuple((a, names[a]) for names in (found, possible) for a in Allergen if a in names),
    )


def _in_order(found: dict[Allergen, tuple[str, ...]]) -> tuple[Allergen, ...]:
    return tuple(allergen for allergen in Allergen if allergen in found)


def _because(told: list[tuple[str, Told]], how: str) -> dict[Allergen, tuple[str, ...]]:
    found: dict[Allergen, tuple[str, ...]] = {}
    for name, tells in told:
        for allergen in tells.contains if how == "contains" else tells.may_be:
            found[allergen] = (*found.get(allergen, ()), name)
    return found


def _declared(word: str) -> Told:
    """A word of a recipe's own list; one that is none of the nine stands among the others as it was written."""
    tells = tell(word)
    others = tells.others if tells.contains or tells.others else frozenset({word})
    return Told(tells.contains, frozenset(), others, known=True)


def _with_note(told: Told, note: str) -> Told:
    """What a note adds; a note of unknown words ("kept on ice until used") adds nothing and makes nothing unknown."""
    if not note:
        return told
    noted = tell(note)
    may_be = (told.may_be | noted.contains | noted.may_be) - told.contains
    return Told(told.contains, may_be, told.others, told.known)


def tell(name: str) -> Told:
    """What an ingredient's name tells. Every word of it must be understood, or it is not known.

    Example: "unsalted butter, softened" contains milk; "house rub" is not known.
    """
    words = _words(name)
    contains: set[Allergen] = set()
    may_be: set[Allergen] = set()
    others: set[str] = set()
    known, place, understood = True, 0, False
    while place < len(words):
        phrase, length = _longest(words, place)
        if phrase is not None:
            contains |= phrase.contains
            may_be |= phrase.may_be
            others |= phrase.others
            known, understood = known and phrase.known, True
        elif words[place] not in _ignored():
            known = False
        place += length
    return Told(frozenset(contains), frozenset(may_be - contains), frozenset(others), known and understood)


def _longest(words: tuple[str, ...], place: int) -> tuple[Told | None, int]:
    """The longest phrase of the tables that begins at this word, and how many words it takes."""
    for length in range(min(_LONGEST_PHRASE, len(words) - place), 0, -1):
        found = _phrases().get(words[place : place + length])
        if found is not None:
            return found, length
    return None, 1


def _words(text: str) -> tuple[str, ...]:
    """The words in the singular, without accents and signs; single letters fall away."""
    return tuple(_singular(word) for word in re.findall(r"[a-z]{2,}", _latin(text).lower()))


def _latin(text: str) -> str:
    """Accents taken off; letters of another script become a word that no table knows, never nothing."""
    marks = (letter for letter in unicodedata.normalize("NFKD", text) if not unicodedata.combining(letter))
    return "".join(letter if letter.isascii() or not letter.isalpha() else " unreadable " for letter in marks)


def _singular(word: str) -> str:
    """A rough singular, the same for the tables as for what people write."""
    if len(word) <= 3 or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies") and len(word) > 4:
        return f"{word[:-3]}y"
    if word.endswith(("oes", "ches", "shes", "xes", "sses")):
        return word[:-2]
    return word.removesuffix("s")


@cache
def _ignored() -> frozenset[str]:
    """The words that say nothing of what it is, in the singular."""
    return frozenset(_words(IGNORED))


@cache
def _phrases() -> dict[tuple[str, ...], Told]:
    """Every phrase of the tables, put together from all the lists that it stands in."""
    lists: list[tuple[str, frozenset[Allergen], frozenset[Allergen], frozenset[str], bool]] = [
        *((text, frozenset({a}), frozenset(), frozenset(), True) for a, text in CONTAINS.items()),
        *((text, frozenset(), frozenset({a}), frozenset(), True) for a, text in MAY_BE.items()),
        *((text, frozenset(), frozenset(), frozenset({other}), True) for other, text in OTHERS.items()),
        (PLAIN, frozenset(), frozenset(), frozenset(), True),
        (COMPOSITE, frozenset(), frozenset(), frozenset(), False),
    ]
    phrases: dict[tuple[str, ...], Told] = {}
    for text, contains, may_be, others, known in lists:
        for phrase in filter(None, (_words(part) for part in text.split(";"))):
            old = phrases.get(phrase, Told(frozenset(), frozenset(), frozenset(), known=True))
            phrases[phrase] = Told(
                old.contains | contains, old.may_be | may_be, old.others | others, old.known and known
            )
    return phrases
