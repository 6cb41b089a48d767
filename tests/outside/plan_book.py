"""What ``plan --json`` printed, as a stranger's program sees it, and whether it is whole. Standard library only."""

from collections.abc import Iterator
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

Item = dict[str, Any]

STATUSES = ("proved_best", "best_found", "none_found", "impossible")
LEVELS = ["lateness", "freshness", "crew_day", "fair_shares"]
TIMES = {
    "servings": ("due_at", "earliest_at", "latest_at", "ready_at"),
    "slots": ("starts_at", "ends_at"),
    "tasks": ("starts_at", "ends_at"),
    "helpers": ("called_at", "free_at"),
    "firings": ("lit_at", "ready_from", "ready_until"),
    "bakes": ("laid_at", "in_at", "out_at"),
}


def minute(text: str) -> int:
    """Minutes since 1970 of a time with its offset."""
    seconds, rest = divmod(datetime.fromisoformat(text).timestamp(), 60)
    assert rest == 0, f"{text} is no whole minute"
    return int(seconds)


class Book:
    """The plan with its tasks by id and their minutes."""

    def __init__(self, data: Item) -> None:
        self.data = data
        self.tasks: dict[str, Item] = {task["id"]: task for task in data["tasks"]}
        self.helpers: dict[str, Item] = {helper["id"]: helper for helper in data["helpers"]}
        self.gear: dict[str, Item] = {gear["id"]: gear for gear in data["gear"]}

    def span(self, task: str) -> tuple[int, int]:
        """Start and end."""
        return minute(self.tasks[task]["starts_at"]), minute(self.tasks[task]["ends_at"])

    def of(self, helper: str) -> list[str]:
        """What a helper does, by time."""
        return sorted((each for each, task in self.tasks.items() if helper in task["helpers"]), key=self.span)


def status(data: Item) -> Iterator[str]:
    """Status, levels and tasks go together."""
    word, levels = data["status"], data["levels"]
    if word not in STATUSES:
        yield f"status {word} is none of {', '.join(STATUSES)}"
    for level in levels:
        if level["value"] < level["bound"]:
            yield f"level {level['name']} has value {level['value']} below its bound {level['bound']}"
    if word == "proved_best" and any(level["value"] != level["bound"] for level in levels):
        yield "status is proved_best, but a level is above its bound"
    if (word in STATUSES[:2]) != bool(data["tasks"]):
        yield f"status is {word} with {len(data['tasks'])} tasks"
    if data["tasks"] and [level["name"] for level in levels] != LEVELS:
        yield f"levels are {[level['name'] for level in levels]}, not {LEVELS}"
    if word == "impossible" and not data["obstacles"]:
        yield "an impossible event gives no reason"


def offsets(data: Item) -> Iterator[str]:
    """Every time bears the offset that its zone has at that instant."""
    zone = ZoneInfo(data["timezone"])
    for where, text in _all_times(data):
        moment = datetime.fromisoformat(text)
        if moment.utcoffset() is None:
            yield f"{where} {text} has no offset"
        elif moment.astimezone(zone).utcoffset() != moment.utcoffset():
            yield f"{where} {text} has not the offset of {zone.key}"


def _all_times(data: Item) -> Iterator[tuple[str, str]]:
    for part, keys in TIMES.items():
        for item in data[part]:
            for key in keys:
                if item[key] is not None:
                    yield f"{part} {item.get('id', '')} {key}", item[key]
    for helper in data["helpers"]:
        for window in helper["windows"]:
            yield f"window of {helper['id']}", window["from"]
            yield f"window of {helper['id']}", window["until"]
    for slot in data["slots"]:
        for ready in slot["ready_made"]:
            yield f"ready-made of {slot['id']}", ready["by"]


def references(book: Book) -> Iterator[str]:
    """Whatever is named is there, once."""
    data = book.data
    for part in ("tasks", "helpers", "gear", "firings", "slots"):
        ids = [item["id"] for item in data[part]]
        yield from (f"{part}: {each} is there twice" for each in sorted({i for i in ids if ids.count(i) > 1}))
    named = [link[end] for link in data["links"] for end in ("from", "to")]
    named += [task for firing in data["firings"] for task in (*firing["feeds"], firing["lit_by"])]
    named += [task for slot in data["slots"] for task in (*slot["live"], *(r["up_to"] for r in slot["ready_made"]))]
    named += [task for bake in data["bakes"] for task in (bake["task"], *(each["task"] for each in bake["top_ups"]))]
    yield from (f"no task {each}" for each in sorted(set(named) - book.tasks.keys()))
    for name, task in book.tasks.items():
        yield from (f"{name}: no helper {each}" for each in task["helpers"] if each not in book.helpers)
        yield from (f"{name}: no gear {each}" for each in task["gear"] if each not in book.gear)
        if task["dish"] and task["dish"] not in data["dishes"]:
            yield f"{name}: no dish {task['dish']}"
