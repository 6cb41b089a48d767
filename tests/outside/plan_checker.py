"""A stranger's program: checks a plan from what ``plan --json`` printed, and from nothing else.

It imports nothing of the planner and only the standard library. ``python -m tests.outside.plan_checker FILE.json``
prints one line a fault and ends with 1 where there is any. Times are taken as minutes of UTC, so a day on which clocks
change is like any other.
"""

import json
import sys
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path

from tests.outside.plan_book import Book, Item, minute, offsets, references, status

FIRE_KINDS = ("light", "lay_coals", "top_up", "drown")
OVER_COALS = ("light", "ash_over", "lay_coals", "preheat", "load", "bake", "turn", "look_in", "top_up", "take_out")
CARE_OF_OVENS = ("lay_coals", "top_up", "turn", "look_in")
NAMED_PIECES = ("oven", "chimney", "table")


Rule = Callable[[Book], Iterator[str]]


def faults(data: Item) -> list[str]:
    """Everything wrong with the plan, one sentence each; empty for a sound one."""
    found = [*status(data), *offsets(data)]
    if found or not data["tasks"]:
        return found
    book = Book(data)
    found = list(references(book))
    return found or [fault for rule in RULES for fault in rule(book)]


def lengths(book: Book) -> Iterator[str]:
    """Tasks do not end before they start, and slack is never below zero."""
    for name, task in book.tasks.items():
        start, end = book.span(name)
        if end < start:
            yield f"{name} ends before it starts"
        if task["slack_minutes"] < 0:
            yield f"{name} has slack below zero"


def links(book: Book) -> Iterator[str]:
    """Every wait lies between its least and its most."""
    for link in book.data["links"]:
        yield from _link(link, book.span(link["from"]), book.span(link["to"]))


def _link(link: Item, before: tuple[int, int], after: tuple[int, int]) -> Iterator[str]:
    first, last = link["kind"].split("_to_")
    wait = after[last == "finish"] - before[first == "finish"]
    told = f"{link['to']} comes {wait} min after {link['from']} ({link['kind']})"
    if wait < link["least_minutes"]:
        yield f"{told}, least is {link['least_minutes']}"
    if link["most_minutes"] is not None and wait > link["most_minutes"]:
        yield f"{told}, most is {link['most_minutes']}"


def slack(book: Book) -> Iterator[str]:
    """A task can really start so much later with all else where it stands, as far as waits go."""
    for link in book.data["links"]:
        before, after = book.span(link["from"]), book.span(link["to"])
        for name, moved in ((link["from"], 0), (link["to"], 1)):
            later = book.tasks[name]["slack_minutes"]
            spans = [before, after]
            spans[moved] = (spans[moved][0] + later, spans[moved][1] + later)
            if later > 0:
                yield from (f"{name} has no slack of {later} min: {fault}" for fault in _link(link, spans[0], spans[1]))


def gear_counts(book: Book) -> Iterator[str]:
    """At every minute no more pieces are in use than there are."""
    for gear in book.gear.values():
        uses = [(*book.span(name), task["gear"].get(gear["id"], 0)) for name, task in book.tasks.items()]
        yield from _over(uses, gear["count"], f"{gear['id']}")


def _over(uses: list[tuple[int, int, int]], room: int, name: str) -> Iterator[str]:
    for start in sorted({start for start, _, _ in uses}):
        taken = sum(amount for since, until, amount in uses if since <= start < until)
        if taken > room:
            yield f"{taken} of {name} in use at {_clock(start)}, there are {room}"
            return


def _clock(when: int) -> str:
    return f"{when // 60 % 24:02}:{when % 60:02} UTC"


def pieces(book: Book) -> Iterator[str]:
    """Named pieces are as many as counted, and each is at one task at a time, an oven all through its bake."""
    held: dict[str, list[tuple[int, int, str]]] = {}
    for name, task in book.tasks.items():
        counted = sum(amount for gear, amount in task["gear"].items() if book.gear[gear]["kind"] in NAMED_PIECES)
        if counted != len(task["units"]):
            yield f"{name} counts {counted} pieces and names {len(task['units'])}"
        for unit in task["units"]:
            held.setdefault(unit, []).append((*book.span(name), name))
    for unit, spans in held.items():
        yield from _clashes(unit, spans)
    ovens: dict[str, list[tuple[int, int, str]]] = {}
    for bake in book.data["bakes"]:
        span = (min(minute(bake["laid_at"]), minute(bake["in_at"])), minute(bake["out_at"]), bake["task"])
        ovens.setdefault(bake["unit"], []).append(span)
        if bake["unit"] not in book.tasks[bake["task"]]["units"]:
            yield f"{bake['task']} is not in {bake['unit']}"
    for unit, spans in ovens.items():
        yield from _clashes(unit, spans)


def _clashes(what: str, spans: list[tuple[int, int, str]]) -> Iterator[str]:
    spans = sorted(spans)
    for (_, until, first), (since, _, second) in pairwise(spans):
        if since < until:
            yield f"{what} is at {first} and {second} at once, {_clock(since)}"


def hands(book: Book) -> Iterator[str]:
    """As many different helpers as hands; hands-on means that there are any."""
    for name, task in book.tasks.items():
        if len(set(task["helpers"])) != len(task["helpers"]) or len(task["helpers"]) != task["hands"]:
            yield f"{name} wants {task['hands']} hands and has {task['helpers']}"
        if task["hands_on"] != (task["hands"] > 0):
            yield f"{name} says hands_on {task['hands_on']} with {task['hands']} hands"


def skills(book: Book) -> Iterator[str]:
    """Everyone has every skill that their task needs."""
    for name, task in book.tasks.items():
        for helper in task["helpers"]:
            missing = sorted(set(task["needs"]) - set(book.helpers[helper]["skills"]))
            if missing:
                yield f"{helper} lacks {', '.join(missing)} for {name}"


def windows(book: Book) -> Iterator[str]:
    """Everyone is there all through their tasks; windows that touch are one."""
    for helper in book.helpers.values():
        there: list[list[int]] = []
        for since, until in sorted((minute(each["from"]), minute(each["until"])) for each in helper["windows"]):
            if there and since <= there[-1][1]:
                there[-1][1] = max(there[-1][1], until)
            else:
                there.append([since, until])
        for name in book.of(helper["id"]):
            start, end = book.span(name)
            if not any(since <= start and end <= until for since, until in there):
                yield f"{helper['id']} is not there for {name}"


def one_place(book: Book) -> Iterator[str]:
    """Nobody is at two tasks at once."""
    for helper in book.helpers:
        yield from _clashes(helper, [(*book.span(name), name) for name in book.of(helper)])


def fire(book: Book) -> Iterator[str]:
    """Fire tasks have somebody with the fire skill who is adult or named for it, and nobody else."""
    for name, task in book.tasks.items():
        if task["kind"] not in FIRE_KINDS:
            continue
        if not task["helpers"]:
            yield f"nobody is at the fire task {name}"
        for helper in (book.helpers[each] for each in task["helpers"]):
            if "fire" not in helper["skills"] or not (helper["adult"] or helper["fire_allowed"]):
                yield f"{helper['id']} may not do the fire task {name}"


def breaks(book: Book) -> Iterator[str]:
    """No stretch of hot work is longer than the helper's own."""
    pause = book.data["break_minutes"]
    for helper in book.helpers.values():
        since, until = 0, -(10**9)
        for start, end in (book.span(name) for name in book.of(helper["id"]) if book.tasks[name]["hot"]):
            since, until = (since, max(until, end)) if start - until < pause else (start, end)
            if until - since > helper["hot_stretch_minutes"]:
                yield f"{helper['id']} works at the fire for {until - since} min from {_clock(since)} without a break"


def firings(book: Book) -> Iterator[str]:
    """Coals are lit by their task, laid while they are good, and every laying has coals lit for it."""
    fed: list[str] = []
    for firing in book.data["firings"]:
        fed += firing["feeds"]
        lit, ready, fading = (minute(firing[key]) for key in ("lit_at", "ready_from", "ready_until"))
        start, end = book.span(firing["lit_by"])
        if book.tasks[firing["lit_by"]]["kind"] != "light" or start != lit or end > ready or ready > fading:
            yield f"{firing['id']} is not lit as it says"
        for name in firing["feeds"]:
            if book.tasks[name]["kind"] not in ("lay_coals", "top_up"):
                yield f"{firing['id']} feeds {name}, which takes no coals"
            if not ready <= book.span(name)[0] <= fading:
                yield f"{name} takes coals of {firing['id']} while they are not good"
    for name, task in book.tasks.items():
        if task["kind"] in ("lay_coals", "top_up") and name not in fed:
            yield f"no coals are lit for {name}"


def chimneys(book: Book) -> Iterator[str]:
    """Chimneys are as many as are lit at once, and none is overfilled where its size is known."""
    owned = [gear for gear in book.gear.values() if gear["kind"] == "chimney"]
    uses = [(minute(f["lit_at"]), minute(f["ready_from"]), f["chimneys"]) for f in book.data["firings"]]
    yield from _over(uses, sum(gear["count"] for gear in owned), "chimneys")
    if any(gear["coals"] is None for gear in owned):
        return
    largest = max((gear["coals"] for gear in owned), default=0)
    for firing in book.data["firings"]:
        if firing["coals"] > firing["chimneys"] * largest:
            yield f"{firing['id']} has {firing['coals']} coals in {firing['chimneys']} chimneys of {largest}"


def coals(book: Book) -> Iterator[str]:
    """A firing gives no more coals than it has to those that it alone feeds."""
    wanted = {each["task"]: each["coals"] for bake in book.data["bakes"] for each in bake["top_ups"]}
    lays = {name: task for name, task in book.tasks.items() if task["kind"] == "lay_coals"}
    for bake in book.data["bakes"]:
        laid = [n for n, t in lays.items() if (t["dish"], t["starts_at"]) == (bake["dish"], bake["laid_at"])]
        if not laid:
            yield f"no coals are laid for {bake['task']}"
            continue
        del lays[laid[0]]
        wanted[laid[0]] = bake["lid"] + bake["under"]
        if not bake["least_coals"] <= bake["lid"] + bake["under"] <= bake["most_coals"]:
            yield f"{bake['task']} has coals outside its own band"
    feeders = [name for firing in book.data["firings"] for name in firing["feeds"]]
    for firing in book.data["firings"]:
        taken = sum(wanted.get(name, 0) for name in firing["feeds"] if feeders.count(name) == 1)
        if taken > firing["coals"]:
            yield f"{firing['id']} has {firing['coals']} coals, {taken} are taken"


def first_and_last(book: Book) -> Iterator[str]:
    """Set-up comes before anything is lit, drowning after all is off the coals."""
    spans = {kind: [] for kind in ("set_up", "light", "drown")}  # type: dict[str, list[tuple[int, int]]]
    over: list[int] = []
    for name, task in book.tasks.items():
        spans.setdefault(task["kind"], []).append(book.span(name))
        if task["kind"] in OVER_COALS:
            over.append(book.span(name)[1])
    if spans["light"] and any(end > min(spans["light"])[0] for _, end in spans["set_up"]):
        yield "coals are lit before the set-up is done"
    if over and (not spans["drown"] or max(spans["drown"])[0] < max(over)):
        yield "the coals are not drowned after the last food is out"


def servings(book: Book) -> Iterator[str]:
    """Dishes are on the table when a task serves them, within tolerance, and lateness is rightly reckoned."""
    total = 0
    for each in book.data["servings"]:
        due, first, last, ready = (minute(each[key]) for key in ("due_at", "earliest_at", "latest_at", "ready_at"))
        name, total = f"{each['dish']} for {each['serving']}", total + each["late_minutes"]
        if not first <= ready <= last:
            yield f"{name} is outside its tolerance"
        if each["late_minutes"] != max(0, ready - due):
            yield f"{name} is {max(0, ready - due)} min late and says {each['late_minutes']}"
        ends = [book.span(n)[1] for n, t in book.tasks.items() if (t["dish"], t["kind"]) == (each["dish"], "serve")]
        if ready not in ends:
            yield f"no task puts {name} on the table at that minute"
    told = book.data["levels"][0]["value"]
    if told != total:
        yield f"lateness is {told} by the levels and {total} by the servings"


def slots(book: Book) -> Iterator[str]:
    """Live tasks are in their slot, in order, by the presenter, who does nothing else; ready-mades are ready."""
    for slot in book.data["slots"]:
        opens, closes = minute(slot["starts_at"]), minute(slot["ends_at"])
        starts = [book.span(name)[0] for name in slot["live"]]
        if starts != sorted(starts):
            yield f"live tasks of {slot['id']} are out of order"
        for name in slot["live"]:
            task, (start, end) = book.tasks[name], book.span(name)
            if start < opens or end > closes or task["live_in"] != slot["id"]:
                yield f"{name} is not shown within {slot['id']}"
            if task["hands_on"] and slot["presenter"] not in task["helpers"] and task["kind"] not in CARE_OF_OVENS:
                yield f"{name} is not shown by {slot['presenter']}"
        for name in book.of(slot["presenter"]):
            start, end = book.span(name)
            if start < closes and end > opens and book.tasks[name]["live_in"] != slot["id"]:
                yield f"{slot['presenter']} does {name} while presenting {slot['id']}"
        for ready in slot["ready_made"]:
            if book.span(ready["up_to"])[1] > minute(ready["by"]):
                yield f"{ready['up_to']} is not done when {slot['id']} wants it"


def day(book: Book) -> Iterator[str]:
    """Call times, free times, minutes of work and fair shares follow from the tasks."""
    for helper in book.helpers.values():
        spans = [book.span(name) for name in book.of(helper["id"])]
        told = tuple(None if helper[key] is None else minute(helper[key]) for key in ("called_at", "free_at"))
        if told != ((min(spans)[0], max(end for _, end in spans)) if spans else (None, None)):
            yield f"{helper['id']} is called or free at another time than the tasks say"
        if helper["work_minutes"] != sum(end - start for start, end in spans):
            yield f"{helper['id']} works other minutes than it says"
    work = [helper["work_minutes"] for helper in book.helpers.values() if helper["windows"]]
    share = -(-sum(work) // len(work)) if work else 0
    unfair = sum(max(0, minutes - share) for minutes in work)
    if book.data["levels"][3]["value"] != unfair:
        yield f"fair_shares is {book.data['levels'][3]['value']} by the levels and {unfair} by the work"


RULES: tuple[Rule, ...] = (
    lengths,
    links,
    slack,
    gear_counts,
    pieces,
    hands,
    skills,
    windows,
    one_place,
    fire,
    breaks,
    firings,
    chimneys,
    coals,
    first_and_last,
    servings,
    slots,
    day,
)


def main(paths: list[str]) -> int:
    """Print every fault of every file; 1 where there is any."""
    found = [f"{path}: {fault}" for path in paths for fault in faults(json.loads(Path(path).read_text("utf-8")))]
    sys.stdout.write("".join(f"{fault}\n" for fault in found) or "no fault found\n")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
