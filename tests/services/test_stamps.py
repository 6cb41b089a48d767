"""Calendar stamps, as a revision keeps them."""

import json
from dataclasses import replace
from datetime import timedelta

import pytest

from cookout.core.planning.record import PlanRecord
from cookout.services.stamps import stamps_from_json, stamps_to_json
from cookout.store.models import Revision
from tests.samples import sample_record
from tests.store.cast import OWNER, a_user, an_event, plan_it

pytestmark = pytest.mark.django_db


def moved(record: PlanRecord, task_id: str, minutes: int) -> PlanRecord:
    shift = timedelta(minutes=minutes)
    tasks = tuple(
        replace(task, starts_at=task.starts_at + shift, ends_at=task.ends_at + shift) if task.id == task_id else task
        for task in record.tasks
    )
    return replace(record, tasks=tasks)


def three_revisions() -> list[Revision]:
    event = an_event(a_user(OWNER))
    second = moved(sample_record(), "beans.chop", 5)
    third = replace(second, tasks=tuple(task for task in second.tasks if task.id != "crumble.turn"))
    return [plan_it(event), plan_it(event, second), plan_it(event, third)]


def test_only_a_moved_task_rises_in_sequence() -> None:
    first, second, third = (stamps_from_json(revision.stamps) for revision in three_revisions())
    assert first.tasks["beans.chop"].sequence == 1
    assert second.tasks["beans.chop"].sequence == 2
    assert third.tasks["beans.chop"].sequence == 2
    assert {third.tasks[task].sequence for task in ("set_up", "drown")} == {1}


def test_a_task_taken_away_is_kept_as_cancelled() -> None:
    last = stamps_from_json(three_revisions()[-1].stamps)
    assert [(task.id, task.helpers, task.stamp.sequence) for task in last.cancelled] == [("crumble.turn", ("runa",), 3)]


def test_stamps_survive_json() -> None:
    stamps = stamps_from_json(three_revisions()[-1].stamps)
    assert stamps_from_json(json.loads(json.dumps(stamps_to_json(stamps)))) == stamps
