"""A plan in outline, for showing the best so far while planning goes on: rows of bars, no words but the rows' names."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Bar:
    """From `start` to `end`, in minutes from the event's origin; `kind` is "work", "heat" (over coals) or "wait"."""

    start: int
    end: int
    kind: str


@dataclass(frozen=True, slots=True)
class OutlineRow:
    """One dish (or the whole event, `name` empty) with its bars in order of time; bars that touch are one."""

    name: str
    bars: tuple[Bar, ...]
