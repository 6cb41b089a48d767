"""Initials that tell helpers apart on a wall."""

from collections import Counter
from collections.abc import Iterable, Mapping

from cookout.core.planning.record import PlannedHelper


def initials_of(helpers: Iterable[PlannedHelper]) -> dict[str, str]:
    """By helper id: "WA" for Wren Adair, and as much more of the last name as it takes to tell two apart.

    What follows a comma ("Juniper Adair, 13") is no part of the name. Two of one name are numbered.
    """
    words = {helper.id: _words(helper.name) for helper in helpers}
    short = {helper: _short(parts, 1) for helper, parts in words.items()}
    for letters in range(2, 12):
        taken = Counter(short.values())
        short = {helper: _short(words[helper], letters) if taken[text] > 1 else text for helper, text in short.items()}
    return _numbered(short)


def _words(name: str) -> list[str]:
    return name.partition(",")[0].split() or ["?"]


def _short(words: list[str], letters: int) -> str:
    """The first letter of the first name and some of the last; of a single name one letter more."""
    if len(words) == 1:
        return _begun(words[0], letters + 1)
    return _begun(words[0], 1) + _begun(words[-1], letters)


def _begun(word: str, letters: int) -> str:
    return word[:1].upper() + word[1:letters]


def _numbered(short: Mapping[str, str]) -> dict[str, str]:
    counted, seen = Counter(short.values()), Counter[str]()
    found = {}
    for helper, text in short.items():
        seen[text] += 1
        found[helper] = f"{text}{seen[text]}" if counted[text] > 1 else text
    return found
