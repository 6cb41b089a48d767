"""A second reading of a plan for a published instance: nothing of ours but the starts is used.

The file is parsed by the `psplib` package, so that a fault in our own reader shows as well.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import psplib  # type: ignore[import-untyped]

from cookout.core.planning.problem import TaskId

FORMATS = {".sm": ("psplib", 1), ".sch": ("rcpsp_max", 0)}


def makespan_of(path: Path, starts: Mapping[TaskId, int]) -> int:
    """The minute at which the last activity ends, by the durations in the file; the project begins at minute 0."""
    project, at = _parsed(path, starts)
    return max(start + _minutes(activity) for start, activity in zip(at, project.activities, strict=True))


def faults_of(path: Path, starts: Mapping[TaskId, int]) -> list[str]:
    """What a plan does against the rules of the instance in the file; empty for a good plan."""
    project, at = _parsed(path, starts)
    early = [f"activity {i} starts at {start}" for i, start in enumerate(at) if start < 0]
    return early + _broken_waits(project, at) + _overloads(project, at)


def _parsed(path: Path, starts: Mapping[TaskId, int]) -> tuple[Any, list[int]]:
    """The project, and each of its activities' start in the order of the file."""
    name, first = FORMATS[path.suffix]
    project = psplib.parse(path, instance_format=name)
    return project, [starts[TaskId(f"activity-{first + i}")] for i in range(len(project.activities))]


def _broken_waits(project: Any, at: list[int]) -> list[str]:
    broken = []
    for i, activity in enumerate(project.activities):
        lags = activity.delays if activity.delays is not None else [_minutes(activity)] * len(activity.successors)
        for j, lag in zip(activity.successors, lags, strict=True):
            if at[j] < at[i] + lag:
                broken.append(f"activity {j} starts {at[j] - at[i]} after {i}, not {lag} or more")
    return broken


def _overloads(project: Any, at: list[int]) -> list[str]:
    """Loads can only rise where an activity starts, so those moments are enough."""
    over = []
    for number, resource in enumerate(project.resources):
        demands = [activity.modes[0].demands[number] for activity in project.activities]
        spans = [(start, start + _minutes(a)) for start, a in zip(at, project.activities, strict=True)]
        for moment in sorted(set(at)):
            load = sum(d for d, (start, end) in zip(demands, spans, strict=True) if start <= moment < end)
            if load > resource.capacity:
                over.append(f"resource {number} bears {load} of {resource.capacity} at {moment}")
    return over


def _minutes(activity: Any) -> int:
    return int(activity.modes[0].duration)
