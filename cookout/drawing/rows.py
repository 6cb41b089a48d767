"""What stands in the rows of a timeline: by dish, by helper, or by piece of gear."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Literal

from cookout.core.planning.record import PlannedGear, PlannedHelper, PlannedTask, PlanRecord
from cookout.drawing.looks import bakes_of_ticks, is_tick, kindling_of
from cookout.drawing.voice import Voice
from cookout.drawing.zoom import Zoom

By = Literal["dish", "helper", "gear"]
FEW = 80  # tasks up to which a drawing has room to write out even its shortest tasks
CHORES = frozenset({"load", "lay_coals", "take_out", "turn", "look_in", "top_up"})
"""Kinds of short work around an oven, which a look from afar does not name."""

EVERYONE = "*"
"""The key of the row that belongs to no dish; no dish can have it as its id."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A task in a row; `ticks` are the short tasks drawn upon it, `texts` what may be written by it, longest first."""

    task: PlannedTask
    texts: tuple[str, ...]
    ticks: tuple[PlannedTask, ...] = ()


@dataclass(frozen=True, slots=True)
class Row:
    """A labelled row; `key` is the id of its dish or helper or the name of its piece of gear.

    `present` are the stretches in which a helper is there, `group` the id of the gear that a piece is one of. Gear of
    which only the number in use is shown has its count as `capacity`, and how many each task uses in `uses`.
    """

    key: str
    label: str
    note: str
    marks: tuple[Mark, ...]
    present: tuple[tuple[datetime, datetime], ...] = field(default=())
    group: str = ""
    capacity: int = 0
    uses: tuple[tuple[datetime, datetime, int], ...] = field(default=())

    def is_called(self, key: str) -> bool:
        """Whether it is the row of that key, or one of that group."""
        return key in {self.key, self.group}


Texts = Callable[[PlannedTask], tuple[str, ...]]


def rows_of(
    record: PlanRecord, by: By, voice: Voice, zoom: Zoom = "hour", only: str = ""
) -> tuple[Row, ...]:  # fmt: skip
    """The rows, none empty, in the order in which they matter; only those of the key `only` where it is given."""
    maker = _Rows(record, voice, zoom, crowded=len(record.tasks) > FEW and not only)
    made = {"dish": maker.by_dish, "helper": maker.by_helper, "gear": maker.by_gear}[by]()
    return tuple(row for row in made if row.marks and (not only or row.is_called(only)))


def record_of_rows(record: PlanRecord, rows: Iterable[Row]) -> PlanRecord:
    """The record with those tasks alone that stand in the rows, and the firings that feed them."""
    tasks = tuple(task for row in rows for mark in row.marks for task in (mark.task, *mark.ticks))
    ids = {task.id for task in tasks}
    dishes = {task.dish for task in tasks}
    return replace(
        record,
        tasks=tasks,
        links=tuple(link for link in record.links if link.before in ids and link.after in ids),
        firings=tuple(firing for firing in record.firings if ids & set(firing.feeds)),
        servings=tuple(serving for serving in record.servings if serving.dish in dishes),
        slots=tuple(slot for slot in record.slots if ids & set(slot.live)),
    )


class _Rows:
    """Makes the rows of one record."""

    def __init__(self, record: PlanRecord, voice: Voice, zoom: Zoom, *, crowded: bool) -> None:
        self.record = record
        self.voice = voice
        self.zoom = zoom
        self.crowded = crowded
        self.bakes = bakes_of_ticks(record)
        self.on_lid: dict[str, list[PlannedTask]] = {}
        for task in record.tasks:
            if task.id in self.bakes:
                self.on_lid.setdefault(self.bakes[task.id], []).append(task)

    def marks(self, tasks: Iterable[PlannedTask], texts: Texts, whose: str = "") -> tuple[Mark, ...]:
        """The tasks as marks, with all the ticks of a bake upon it where the bake is among them.

        `whose` is the helper of the row, who need not be named at each task.
        """
        chosen = sorted(tasks, key=lambda task: (task.starts_at, task.ends_at))
        here = {task.id for task in chosen}
        return tuple(
            Mark(task, self.written(task, texts, whose), tuple(self.on_lid.get(task.id, ())))
            for task in chosen
            if self.bakes.get(task.id) not in here
        )

    def written(self, task: PlannedTask, texts: Texts, whose: str) -> tuple[str, ...]:
        """What may be written by a task: from near by also how long it takes and who does it."""
        found = texts(task)
        if self.is_afar or not found:
            return found
        if task.pinned:
            found = tuple(f"{text}, {self.voice.words.pinned}" for text in found)
        if self.zoom == "hour":
            return found
        lasting = f"{found[0]}, {self.voice.lasting(task)}"
        crew = self.voice.crew((helper for helper in task.helpers if helper != whose), self.record)
        return (f"{lasting}; {crew}", lasting, *found) if crew else (lasting, *found)

    @property
    def is_afar(self) -> bool:
        """Whether the day is looked at as a whole."""
        return self.zoom == "day"

    def by_dish(self) -> Iterator[Row]:
        """A row for what belongs to no dish, and one for each dish in the order of the table."""
        record, words = self.record, self.voice.words
        on_hills = {task.id for tasks in kindling_of(record).values() for task in tasks}
        common = [task for task in record.tasks if task.dish not in record.dishes and task.id not in on_hills]
        yield Row(EVERYONE, words.for_everyone, words.ground_and_fire, self.marks(common, self.name_only))
        for dish in self.dishes_in_order():
            tasks = [task for task in record.tasks if task.dish == dish]
            yield Row(dish, record.dishes[dish], self.readiness(dish), self.marks(tasks, self.name_only))

    def dishes_in_order(self) -> list[str]:
        """The dishes that have tasks: first what is on the table first."""
        starts: dict[str, datetime] = {}
        for task in self.record.tasks:
            starts[task.dish] = min(task.starts_at, starts.get(task.dish, task.starts_at))
        due = {serving.dish: serving.due_at for serving in reversed(self.record.servings)}
        return sorted(
            (dish for dish in self.record.dishes if dish in starts),
            key=lambda dish: (due.get(dish, starts[dish]), starts[dish]),
        )

    def readiness(self, dish: str) -> str:
        """When a dish is on the table, and how late."""
        served = [serving for serving in self.record.servings if serving.dish == dish]
        if not served:
            return self.voice.words.shown_not_served
        late = max(serving.late_minutes for serving in served)
        times = ", ".join(self.voice.clock(at) for at in sorted({serving.ready_at for serving in served}))
        if late:
            return self.voice.words.late_on_the_table.format(minutes=late, times=times)
        return self.voice.words.on_the_table.format(times=times)

    def by_helper(self) -> Iterator[Row]:
        """A row for each helper, first who is called first."""
        for helper in sorted(self.record.helpers, key=_call_order):
            tasks = [task for task in self.record.tasks if helper.id in task.helpers]
            marks = self.marks(tasks, self.name_then_dish, helper.id)
            yield Row(helper.id, helper.name, self.call_note(helper), marks, helper.windows)

    def call_note(self, helper: PlannedHelper) -> str:
        """From when to when a helper is needed."""
        if helper.called_at is None or helper.free_at is None:
            return self.voice.words.not_called
        return self.voice.stretch(helper.called_at, helper.free_at)

    def name_only(self, task: PlannedTask) -> tuple[str, ...]:
        """The task; from afar nothing for what shape and place say already."""
        if self.is_afar and (task.kind in CHORES or task.kind == "serve"):
            return ()
        return (self.short(task),)

    def short(self, task: PlannedTask) -> str:
        """The task's name; where tasks are many, of the chores around an oven only which it is, not of what."""
        is_crowded = self.zoom == "hour" and self.crowded and task.kind in CHORES
        return task.name.partition(":")[0] if is_crowded else task.name

    def name_then_dish(self, task: PlannedTask) -> tuple[str, ...]:
        """The task and its dish, from afar the dish alone; nothing for the shortest tasks where there are many."""
        if is_tick(task) and self.zoom == "hour" and self.crowded:
            return ()
        dish = self.record.dishes.get(task.dish, "")
        if self.is_afar:
            return (dish or task.name,)
        short = self.short(task)
        return (f"{short}, {dish}", short) if dish and dish.casefold() not in short.casefold() else (short,)

    def dish_then_name(self, task: PlannedTask) -> tuple[str, ...]:
        """For what waits or bakes its dish first, from afar nothing else, and nothing for the chores around it."""
        dish = self.record.dishes.get(task.dish, "")
        if self.is_afar:
            return () if task.kind in CHORES else (dish or task.name,)
        return (f"{dish}: {task.name}", dish) if dish and not task.hands_on else (self.short(task),)

    def by_gear(self) -> Iterator[Row]:
        """Each named piece has a row; gear that is only counted has one for all its pieces.

        From afar only ovens have a row each: of other gear it matters how many pieces are in use at a time.
        """
        record = self.record
        counted = {gear.id for gear in record.gear if self.is_afar and gear.kind != "oven" and gear.count > 1}
        units = {unit for task in record.tasks for unit in task.units}
        for unit in sorted(units, key=lambda unit: unit_order(unit, record)):
            kind = next((gear.id for gear in record.gear if _is_piece_of(unit, gear)), "")
            tasks = [task for task in record.tasks if unit in task.units]
            if kind not in counted:
                yield Row(unit, capital(unit), "", self.marks(tasks, self.dish_then_name), group=kind)
        for gear in record.gear:
            if gear.id in counted:
                yield self.load(gear)
            elif not any(_is_piece_of(unit, gear) for unit in units):
                yield self.counted(gear)

    def counted(self, gear: PlannedGear) -> Row:
        """All the tasks that use some of a kind of gear."""
        tasks = [task for task in self.record.tasks if gear.id in task.gear]
        note = self.voice.words.in_all.format(count=gear.count) if gear.count > 1 else ""
        return Row(gear.id, capital(gear.name), note, self.marks(tasks, self.dish_then_name))

    def load(self, gear: PlannedGear) -> Row:
        """How many of a kind of gear are in use."""
        tasks = [task for task in self.record.tasks if gear.id in task.gear]
        uses = tuple((task.starts_at, task.ends_at, task.gear[gear.id]) for task in tasks)
        note = self.voice.words.most_in_use.format(most=most_at_once(uses), count=gear.count)
        marks = self.marks(tasks, self.dish_then_name)
        return Row(gear.id, capital(gear.name), note, marks, capacity=gear.count, uses=uses)


def steps_of(uses: Iterable[tuple[datetime, datetime, int]]) -> list[tuple[datetime, int]]:
    """From when on how many are in use, in time order."""
    changes: dict[datetime, int] = {}
    for begins, ends, count in uses:
        changes[begins] = changes.get(begins, 0) + count
        changes[ends] = changes.get(ends, 0) - count
    total, steps = 0, []
    for at in sorted(changes):
        total += changes[at]
        steps.append((at, total))
    return steps


def most_at_once(uses: Iterable[tuple[datetime, datetime, int]]) -> int:
    """The most that are in use at a time."""
    return max((count for _, count in steps_of(uses)), default=0)


def _call_order(helper: PlannedHelper) -> tuple[bool, float, str]:
    return helper.called_at is None, helper.called_at.timestamp() if helper.called_at else 0.0, helper.name


def oven_rows(record: PlanRecord, voice: Voice) -> tuple[Row, ...]:
    """A row for each oven that bakes, with its bakes alone; on their lids only the top-ups."""
    tasks = {task.id: task for task in record.tasks}
    rows = []
    for unit in sorted({bake.unit for bake in record.bakes}, key=lambda unit: unit_order(unit, record)):
        marks = tuple(
            Mark(
                tasks[bake.task],
                (voice.words.bake.format(dish=bake.dish_name, lid=bake.lid, under=bake.under), bake.dish_name),
                tuple(tasks[top_up] for top_up, _ in bake.top_ups if top_up in tasks),
            )
            for bake in sorted(record.bakes, key=lambda bake: bake.in_at)
            if bake.unit == unit
        )
        rows.append(Row(unit, capital(unit), "", marks))
    return tuple(rows)


def _is_piece_of(unit: str, gear: PlannedGear) -> bool:
    return unit == gear.name or unit.startswith((f"{gear.name} ", f"{gear.name},"))


def unit_order(unit: str, record: PlanRecord) -> tuple[int, int, str]:
    """Named pieces stand in the order of the gear, and by their own names."""
    places = (place for place, gear in enumerate(record.gear) if _is_piece_of(unit, gear))
    return next(places, len(record.gear)), len(unit), unit


def capital(text: str) -> str:
    """The text with its first letter as a capital."""
    return text[:1].upper() + text[1:]
