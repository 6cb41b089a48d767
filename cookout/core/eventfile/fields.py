"""Reading the keys of one TOML table: each with its type and range, each fault noted, and reading always goes on.

Every method gives a value of its type. Where the file has a faulty one it gives a stand-in that only serves to go on
looking for more faults; `FaultList.raise_if_any` sees to it that no stand-in leaves the reader.
"""

import math
import re
from collections.abc import Callable
from datetime import date, datetime, time
from enum import StrEnum
from typing import TypeVar

from cookout.core.errors import QuantityError
from cookout.core.eventfile.faults import FaultList, Path, did_you_mean, quoted
from cookout.core.eventfile.schema import KEYS

Choice = TypeVar("Choice", bound=StrEnum)

LONGEST_TEXT = 2000
MOST_ENTRIES = 1000
MOST_WHOLE = 1_000_000
DAY_MINUTES = 24 * 60

_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,59}")


class Fields:
    """The keys of a table; `table` is its name in `schema.KEYS`, `path` where it stands."""

    def __init__(self, table: str, value: object, path: Path, faults: FaultList) -> None:
        self.path = path
        self._faults = faults
        self._table = table
        self._readable = isinstance(value, dict)
        self._data: dict[str, object] = value if isinstance(value, dict) else {}
        if not self._readable:
            self.fault("", f"Here stands {described(value)}.", f"Write a table with the keys {', '.join(KEYS[table])}.")
        self._refuse_unknown_keys()

    def _refuse_unknown_keys(self) -> None:
        for key in self._data:
            if key not in KEYS[self._table]:
                self.fault(key, "There is no such key.", did_you_mean(key, KEYS[self._table]))

    def fault(self, key: str, what: str, remedy: str) -> None:
        """Note a fault of a key, or (key empty) of the whole table."""
        self._faults.add((*self.path, key) if key else self.path, what, remedy)

    def fault_in(self, key: str, position: int, what: str, remedy: str) -> None:
        """Note a fault of one entry of a list."""
        self._faults.add((*self.path, key, position), what, remedy)

    def sound(self, *keys: str) -> bool:
        """Whether none of these keys has a fault so far: only then do their values say anything together."""
        return not any(self._faults.has_within((*self.path, key)) for key in keys)

    def has(self, key: str) -> bool:
        """Whether the file gives this key."""
        return key in self._data

    def value(self, key: str, example: str = "") -> object | None:
        """The raw value, None where there is none; with an `example` the key is one that must be there."""
        found = self._data.get(key)
        if found is None and example and self._readable:
            self.fault(key, "It is missing.", f"Write {key} = {example}.")
        return found

    def text(self, key: str, default: str | None = None, example: str = '"..."', longest: int = LONGEST_TEXT) -> str:
        """A text on one line of at most so many letters; without a default it must be there and not be empty."""
        found = self.value(key, example if default is None else "")
        if found is None:
            return default or ""
        if not isinstance(found, str):
            self._wrong_type(key, found, "text", f"{key} = {example}")
            return default or ""
        text = found.strip()
        if not text and default is None:
            self.fault(key, "It is empty.", f"Write {key} = {example}.")
        if len(text) > longest:
            self.fault(key, f"It has {len(text)} letters.", f"Shorten it to {longest} at most.")
        if any(not sign.isprintable() for sign in text):
            self.fault(key, "It has line breaks or signs that cannot be printed.", "Write it on one line.")
        return text

    def id(self, key: str = "id") -> str:
        """An id that must be there; empty where it is faulty."""
        text = self.text(key, example='"a-short-id"')
        return text if text and is_id(text, self.path, key, self._faults) else ""

    def reference(self, key: str, *, must: bool = True) -> str:
        """An id that something else bears; whether it does is checked later. Empty where it is faulty or missing."""
        return self.text(key, None if must else "", example='"an-id"')

    def whole(self, key: str, default: int | None = None, *, least: int = 0, most: int = MOST_WHOLE) -> int:
        """A whole number from least to most; without a default it must be there."""
        found = self.value(key, str(max(least, 10)) if default is None else "")
        if found is None:
            return least if default is None else default
        if isinstance(found, bool) or not isinstance(found, int):
            self._wrong_type(key, found, "a whole number", f"{key} = {max(least, 10)}")
            return least
        if not least <= found <= most:
            self.fault(key, "The number is out of range.", f"Write a whole number from {least} to {most}.")
            return least
        return found

    def maybe_whole(self, key: str, *, least: int = 0, most: int = MOST_WHOLE) -> int | None:
        """A whole number, or None where the file gives none."""
        return self.whole(key, least, least=least, most=most) if self.has(key) else None

    def number(self, key: str, default: float = 0.0, *, least: float, most: float) -> float:
        """A number from least to most."""
        found = self.value(key)
        if found is None:
            return default
        if isinstance(found, bool) or not isinstance(found, int | float):
            self._wrong_type(key, found, "a number", f"{key} = {least:g}")
            return default
        if not least <= found <= most or math.isnan(found):
            self.fault(key, "The number is out of range.", f"Write a number from {least:g} to {most:g}.")
            return default
        return float(found)

    def maybe_number(self, key: str, *, least: float, most: float) -> float | None:
        """A number, or None where the file gives none."""
        return self.number(key, least=least, most=most) if self.has(key) else None

    def flag(self, key: str, *, default: bool) -> bool:
        """True or false."""
        found = self.value(key)
        if found is None or isinstance(found, bool):
            return default if found is None else found
        self._wrong_type(key, found, "true or false", f"{key} = true")
        return default

    def choice(self, key: str, kinds: type[Choice], default: Choice | None = None) -> Choice | None:
        """One word of an enum; None where it is faulty, or missing without a default."""
        known = [kind.value for kind in kinds]
        found = self.value(key, quoted(known[0]) if default is None else "")
        if found is None:
            return default
        if not isinstance(found, str):
            self._wrong_type(key, found, "text", f"{key} = {quoted(known[0])}")
            return None
        if found not in known:
            self.fault(key, f"{quoted(found)} is not known here.", did_you_mean(found, known))
            return None
        return kinds(found)

    def quantity(self, key: str, parse: Callable[[str], float], example: str, *, least: float, most: float) -> float:
        """A quantity with its unit, that must be there, between least and most in the program's own unit."""
        found = self.value(key, example)
        if found is None:
            return least
        if not isinstance(found, str):
            self._wrong_type(key, found, "text with a number and its unit", f"{key} = {example}")
            return least
        try:
            measured = parse(found)
        except QuantityError as error:
            self.fault(key, "The quantity cannot be read.", str(error))
            return least
        if not least <= measured <= most:
            self.fault(key, f"{quoted(found)} is out of range.", f"Check number and unit, as in {key} = {example}.")
            return least
        return measured

    def words(self, key: str) -> tuple[str, ...]:
        """A list of words, none where the file gives none; a word that stands twice is a fault."""
        return tuple(self.placed_words(key))

    def placed_words(self, key: str) -> dict[str, int]:
        """The words of a list in their order, each with its position in the file's list."""
        words: dict[str, int] = {}
        for position, entry in enumerate(self.entries(key)):
            path = (*self.path, key, position)
            if not isinstance(entry, str) or not entry.strip() or not entry.isprintable():
                self._faults.add(path, f"Here stands {described(entry)}.", f'Write words, as {key} = ["one", "two"].')
            elif entry.strip() in words:
                self._faults.add(path, f"{quoted(entry)} stands twice.", "Leave one of them out.")
            else:
                words[entry.strip()] = position
        return words

    def entries(self, key: str) -> list[object]:
        """The entries of a list, none where the file gives none."""
        found = self.value(key)
        if found is None:
            return []
        if not isinstance(found, list):
            self._wrong_type(key, found, "a list", f"{key} = [...]")
            return []
        if len(found) > MOST_ENTRIES:
            self.fault(key, f"The list has {len(found)} entries.", f"Write {MOST_ENTRIES} at most.")
        return found[:MOST_ENTRIES]

    def table(self, key: str, table: str) -> "Fields | None":
        """The table under a key, None where there is none."""
        return Fields(table, self._data[key], (*self.path, key), self._faults) if self.has(key) else None

    def must_table(self, key: str, table: str) -> "Fields":
        """The table under a key, where it must be; a missing one has no keys and tells of none that are missing."""
        if self._readable and not self.has(key):
            keys = ", ".join(KEYS[table])
            self.fault(key, "The table is missing.", f"Write a table {key} with the keys it needs of: {keys}.")
        return self.table(key, table) or Fields(table, None, (*self.path, key), FaultList("", {}))

    def tables(self, key: str, table: str) -> list["Fields"]:
        """The tables of a list."""
        return [self.entry_table(key, position, entry, table) for position, entry in enumerate(self.entries(key))]

    def entry_table(self, key: str, position: int, entry: object, table: str) -> "Fields":
        """One entry of a list, read as a table."""
        return Fields(table, entry, (*self.path, key, position), self._faults)

    def _wrong_type(self, key: str, found: object, wanted: str, example: str) -> None:
        self.fault(key, f"Here stands {described(found)}, not {wanted}.", f"Write {example}.")


def is_id(text: str, path: Path, key: str, faults: FaultList) -> bool:
    """Whether a text may be an id; notes a fault where it may not."""
    if _ID.fullmatch(text):
        return True
    faults.add(
        (*path, key),
        f"{quoted(text)} is no id.",
        "Write letters, digits, - and _ only, beginning with a letter or digit, 60 at most.",
    )
    return False


def described(value: object) -> str:
    """What sort of TOML value it is, in words."""
    if isinstance(value, str):
        return f"the text {quoted(value)}"
    if isinstance(value, bool):
        return "true or false"
    for kind, words in _SORTS:
        if isinstance(value, kind):
            return words
    return "something else"


_SORTS: tuple[tuple[type, str], ...] = (
    (int, "a whole number"),
    (float, "a number"),
    (datetime, "a date and time"),
    (date, "a date"),
    (time, "a time"),
    (list, "a list"),
    (dict, "a table"),
)
