"""One line of a list of things to bring or to do, and the groups that such lines stand in."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Item:
    """A thing with how many of it; `count` None where a number says nothing.

    `key` stays the same through re-planning. `detail` is one line on what it is for, `source` who says that it is
    wanted: a published text, "common practice, no source", "our own choice, no source"; empty for what the event itself
    names.
    """

    key: str
    name: str
    count: int | None = None
    detail: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Items that belong together; `caution` where work with them can hurt someone, else empty."""

    key: str
    title: str
    items: tuple[Item, ...]
    caution: str = ""
