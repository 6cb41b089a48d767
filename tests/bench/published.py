"""Published instances in a folder, with the best that is known of each."""

import csv
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path

SUFFIXES = (".sm", ".sch")


@dataclass(frozen=True, slots=True)
class Best:
    """What is known of an instance: bound and makespan in its own unit of time, None where unknown."""

    lower: int | None = None
    makespan: int | None = None
    impossible: bool = False


@dataclass(frozen=True, slots=True)
class Instance:
    """A file of a set; the set is named for the folder the file is in."""

    path: Path
    set: str
    best: Best


def instances_in(folder: Path, sets: Collection[str] = (), limit: int | None = None) -> Iterator[Instance]:
    """Instances under `folder`, set by set, the first `limit` of each; all sets where none is named.

    What is known is read from `best_known.csv` there, if it exists (columns file, best_known_lower,
    best_known_makespan, impossible).
    """
    known = _known(folder / "best_known.csv")
    taken: dict[str, int] = {}
    paths = (path for path in folder.rglob("*") if path.suffix in SUFFIXES)
    for path in sorted(paths, key=lambda path: (path.suffix != ".sm", _set_order(path), path.name)):
        name = path.parent.name
        taken[name] = taken.get(name, 0) + 1
        if (not sets or name in sets) and (limit is None or taken[name] <= limit):
            yield Instance(path, name, known.get(path.relative_to(folder).as_posix(), Best()))


def _set_order(path: Path) -> tuple[int, str]:
    """Smaller instances first, by the number in the set's name: j30, j60, j120."""
    digits = "".join(letter for letter in path.parent.name if letter.isdigit())
    return int(digits or 0), path.parent.name


def _known(table: Path) -> dict[str, Best]:
    if not table.exists():
        return {}
    with table.open(newline="", encoding="utf-8") as lines:
        return {
            row["file"]: Best(
                _whole(row["best_known_lower"]), _whole(row["best_known_makespan"]), row["impossible"] == "yes"
            )
            for row in csv.DictReader(lines)
        }


def _whole(text: str) -> int | None:
    return int(text) if text else None
