"""The tables [[crew]]."""

from itertools import pairwise

from cookout.core.eventfile.clock import Clock, UnreadableTimeError
from cookout.core.eventfile.fields import DAY_MINUTES, Fields
from cookout.core.kitchen.recipe import Skill
from cookout.core.planning.event import Helper, HelperId, Window


def read_helper(fields: Fields, clock: Clock) -> Helper:
    """One helper."""
    return Helper(
        id=HelperId(fields.id()),
        name=fields.text("name"),
        skills=frozenset(Skill(word) for word in fields.words("skills")),
        windows=_read_windows(fields, clock),
        adult=fields.flag("adult", default=True),
        fire_allowed=fields.flag("fire_allowed", default=False),
        hot_stretch_minutes=fields.whole("hot_stretch_minutes", 60, least=1, most=DAY_MINUTES),
        contact=fields.text("contact", ""),
    )


def _read_windows(fields: Fields, clock: Clock) -> tuple[Window, ...]:
    found = fields.value("windows", '["14:00-19:30"]')
    entries = fields.entries("windows")
    if isinstance(found, list) and not entries:
        fields.fault("windows", "The list is empty.", 'Say when they are there, as windows = ["14:00-19:30"].')
    windows: list[Window] = []
    for position, entry in enumerate(entries):
        try:
            windows.append(clock.window(entry))
        except UnreadableTimeError as error:
            fields.fault_in("windows", position, error.what, error.remedy)
    _refuse_overlap(fields, windows)
    return tuple(windows)


def _refuse_overlap(fields: Fields, windows: list[Window]) -> None:
    for earlier, later in pairwise(sorted(windows, key=lambda window: window.start)):
        if later.start < earlier.end:
            fields.fault("windows", "Two windows overlap.", "Join them into one.")
