"""The event's day: from when to when, and how warm it gets while food waits."""

from cookout.core.planning.event import Event

# No rule lets food out of heat and cold wait for longer than this, so no earlier air matters to it.
_LONGEST_WAIT_MINUTES = 360


def last_deadline(event: Event) -> int:
    """The last minute at which anything is served or shown; 0 where nothing is."""
    return max([s.at + s.late for s in event.servings] + [slot.ends_at for slot in event.slots], default=0)


def day(event: Event) -> tuple[int, int]:
    """The minutes in which everything lies: from the first helper's coming to the last deadline or helper's going."""
    windows = [window for helper in event.crew for window in helper.windows]
    opens = min((window.start for window in windows), default=0)
    closes = max([last_deadline(event), *(window.end for window in windows)])
    return opens, max(closes, opens + 1)


def warmest_before(event: Event, minute: int, late: int = 0) -> float:
    """The warmest air, in degrees Celsius, in which food may wait that is used at that minute or `late` after it."""
    return event.warmest_c(minute - _LONGEST_WAIT_MINUTES, minute + late)


def warmest_of_day(event: Event) -> float:
    """The warmest air of the whole day, in degrees Celsius."""
    return event.warmest_c(*day(event))
