"""Collecting what is wrong in an event file, so that all of it is told at once."""

import re
from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from itertools import islice

from cookout.core.errors import EventFileError, Fault

Path = tuple[str | int, ...]

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_LONGEST_SHOWN = 60
_MOST_COMPARED = 600


class FaultList:
    """The faults of one file. A path is keys and list positions from 0; a fault's `where` counts lists from 1."""

    def __init__(self, file: str, data: Mapping[str, object]) -> None:
        self._file = file
        self._data = data
        self._found: list[tuple[Path, str, str]] = []
        self._tainted: set[Path] = set()

    def add(self, path: Path, what: str, remedy: str) -> None:
        """Note a fault: two sentences, what is wrong and what to write instead."""
        self._found.append((path, what, remedy))
        self._tainted.update(path[:length] for length in range(len(path) + 1))

    def has_within(self, path: Path) -> bool:
        """Whether a fault is noted at this path or below it."""
        return path in self._tainted

    def raise_if_any(self) -> None:
        """Raise `EventFileError` with every fault, in the order of the file."""
        if self._found:
            found = sorted(self._found, key=lambda fault: self._place(fault[0]))
            raise EventFileError(tuple(Fault(self._where(path), what, remedy) for path, what, remedy in found))

    def _where(self, path: Path) -> str:
        return f"{self._file}: {path_text(path)}" if path else self._file

    def _place(self, path: Path) -> tuple[int, ...]:
        """How far down the file a path lies; a missing key lies at the end of its table."""
        places: list[int] = []
        node: object = self._data
        for key in path:
            if isinstance(node, dict):
                keys = list(node)
                places.append(keys.index(key) if key in node else len(keys))
                node = node.get(key)
            elif isinstance(node, list) and isinstance(key, int):
                places.append(key)
                node = node[key] if key < len(node) else None
        return tuple(places)


def path_text(path: Path) -> str:
    """A path as people read it: ``recipes.peach-cobbler.steps[2].minutes``, lists counted from 1."""
    text = ""
    for key in path:
        if isinstance(key, int):
            text += f"[{key + 1}]"
        else:
            text += ("." if text else "") + (key if _BARE_KEY.fullmatch(key) else quoted(key))
    return text


def quoted(text: str) -> str:
    """A text in quotation marks, on one line and cut where it is long."""
    line = "".join(sign if sign.isprintable() else " " for sign in text)
    return f'"{line}"' if len(line) <= _LONGEST_SHOWN else f'"{line[:_LONGEST_SHOWN]}..."'


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A remedy for a word that is not known: the nearest one, or all of them."""
    choices = list(islice(known, _MOST_COMPARED))
    lowered = {choice.lower(): choice for choice in choices}
    nearest = get_close_matches(word.lower()[:_LONGEST_SHOWN], lowered, n=1, cutoff=0.6)
    if nearest:
        return f"Did you mean {quoted(lowered[nearest[0]])}?"
    if not choices:
        return "The file has none yet; add it or leave this out."
    return f"Known here: {', '.join(choices[:12])}{' ...' if len(choices) > 12 else ''}."
