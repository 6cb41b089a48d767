"""Every word that the drawings write, in English unless others are given, and the addresses that they lead to."""

from dataclasses import dataclass
from urllib.parse import quote


@dataclass(frozen=True, slots=True)
class Words:
    """The words of the drawings. Where a word has braces, they name what is filled in, as `str.format` does."""

    timeline_of: str = "Timeline of {event}, {by}"
    fire_of: str = "Fire and ovens of {event}"
    changes_of: str = "What changes in {event}, {by}"
    by_dish: str = "by dish"
    by_helper: str = "by helper"
    by_gear: str = "by gear"
    minutes: str = "{minutes} min"
    whole_hours: str = "{hours} h"
    hours_and_minutes: str = "{hours} h {minutes:02d} min"
    from_to: str = "{start} to {end}"
    day: str = "{weekday} {day}"
    weekdays: tuple[str, ...] = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
    now: str = "now {time}"
    tasks: str = "{count} tasks"
    more: str = "and {count} more"
    with_ticks: str = "turned, looked into or topped up {count} times"
    nobody_needed: str = "nobody needed"
    pinned: str = "pinned"
    folded: str = "{length} without a task here"
    for_everyone: str = "For everyone"
    ground_and_fire: str = "ground and fire"
    shown_not_served: str = "shown, not served"
    on_the_table: str = "on the table {times}"
    late_on_the_table: str = "{minutes} min late, {times}"
    not_called: str = "not called"
    most_in_use: str = "at most {most} of {count} in use"
    in_all: str = "{count} in all"
    serving: str = "{time} {serving} for {people}"
    late: str = "{minutes} min late"
    slot: str = "{time} {slot}"
    coals: str = "Coals"
    coals_note: str = "lit, ashed over, fading"
    coal_count: str = "{coals} coals"
    firing: str = "{coals} coals, {ready} to {until}"
    firing_in_full: str = "lit at {lit}: {firing} (ashed over until fading); chimneys: {chimneys}"
    bake: str = "{dish}: {lid} on the lid, {under} under"
    no_plan: str = "There is no plan yet."
    way_out: str = "Way out: {text}"
    nothing_here: str = "Nothing to do between {start} and {end}."
    key_hands: str = "hands-on"
    key_fire: str = "hands-on at the fire"
    key_wait: str = "waiting"
    key_oven: str = "oven on coals"
    key_turn: str = "turn"
    key_look_in: str = "look in"
    key_top_up: str = "top-up"
    key_on_lid: str = "turn, look in or top-up"
    key_in_use: str = "pieces in use"
    key_table: str = "on the table"
    key_live: str = "before the audience"
    key_firing: str = "coals lighting, ashed over, fading"
    key_serving: str = "serving"
    key_slot: str = "demo slot"
    key_now: str = "the day so far"
    key_pinned: str = "pinned by hand"
    key_before: str = "where it stood"
    key_after: str = "where it would stand"
    key_gone: str = "left out"
    key_same: str = "stays as it is"
    nothing_changes: str = "No task changes its time, its hands or its gear."
    later: str = "{length} later"
    earlier: str = "{length} earlier"
    nobody: str = "nobody"
    to_others: str = "to {names}"
    from_others: str = "from {names}"
    other_gear: str = "now {gear}"
    other_work: str = "changed"
    takes_longer: str = "{length} longer"
    takes_less: str = "{length} shorter"
    added: str = "new"
    removed: str = "left out"
    told_before: str = "before: {told}"
    told_after: str = "now: {told}"
    was_and_is: str = "{before} before, now {after}"

    def by(self, rows: str) -> str:
        """How the rows are called: "by dish"."""
        return {"dish": self.by_dish, "helper": self.by_helper, "gear": self.by_gear}[rows]


@dataclass(frozen=True, slots=True)
class Links:
    """Where a drawing leads: patterns of addresses, empty for none.

    `task` is the address of a task, with `{task}` for its id. `closer` is a closer look at a time, with `{at}` for the
    local time as 2027-09-18T08:15. `row` is one row alone, with `{row}` for its key.
    """

    task: str = "#task-{task}"
    closer: str = ""
    row: str = ""

    def to_task(self, task: str) -> str | None:
        """The address of a task."""
        return self._filled(self.task, "{task}", task)

    def to_time(self, at: str) -> str | None:
        """The address of a closer look."""
        return self._filled(self.closer, "{at}", at)

    def to_row(self, row: str) -> str | None:
        """The address of one row alone."""
        return self._filled(self.row, "{row}", row)

    @staticmethod
    def _filled(pattern: str, place: str, value: str) -> str | None:
        return pattern.replace(place, quote(value, safe="")) if pattern else None
