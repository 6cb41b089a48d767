"""From an event to a scheduling problem: dishes, gear, fire, crew and weather become tasks, links and needs."""

from cookout.core.planning.expand.whole import expand

__all__ = ["expand"]
