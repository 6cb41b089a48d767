"""The few fields of an event that lists need, read out of its text at each save."""

from cookout.core.planning.event import Event
from cookout.core.planning.wording import moment


def read_out(event: Event) -> dict[str, object]:
    """The columns of the event's row that its text decides."""
    ahead = sorted(event.servings, key=lambda serving: serving.at)
    servings = [{"name": each.name, "at": moment(event, each.at).isoformat()} for each in ahead]
    return {"key": event.id, "name": event.name, "timezone": event.timezone, "servings": servings}
