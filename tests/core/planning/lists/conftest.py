"""The shipped events, read once, and planned once where a list asks for a plan."""

from functools import cache
from pathlib import Path

import pytest

from cookout.core.eventfile import read_event
from cookout.core.planning.event import Event
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Limits

EVENTS = Path(__file__).parents[4] / "fixtures" / "events"


@cache
def shipped(name: str) -> Event:
    """The event of that name."""
    file = EVENTS / f"{name}.toml"
    return read_event(file.read_text(encoding="utf-8"), file.name)


@cache
def planned(name: str) -> PlanRecord:
    """Its plan, whichever is found soon."""
    return plan_event(shipped(name), Limits(seconds=3, workers=1)).record


@pytest.fixture
def supper() -> Event:
    """A family supper: a bean pot, a cobbler, a salad, each made once for eight."""
    return shipped("supper")


@pytest.fixture
def supper_plan() -> PlanRecord:
    """The plan of the supper."""
    return planned("supper")


@pytest.fixture
def demonstration() -> Event:
    """A baking demonstration with three cakes, one of them never baked."""
    return shipped("demonstration")


@pytest.fixture
def demonstration_plan() -> PlanRecord:
    """The plan of the demonstration."""
    return planned("demonstration")


@pytest.fixture
def festival() -> Event:
    """A harvest day for 30, 40 and 48, metric, under the food code."""
    return shipped("festival")
