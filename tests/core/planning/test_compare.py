"""Two plans side by side: what differs, and what is said of it. Minutes are worked by hand from the sample record."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from cookout.core.eventfile import read_event
from cookout.core.planning.compare import compare
from cookout.core.planning.comparison import ChangeKind, FuelChange, LevelChange, TaskChange
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.record import PlannedHelper, PlannedServing, PlannedTask, PlanRecord, Warning
from cookout.core.planning.result import Limits
from cookout.core.planning.ways_out import apply_change
from tests.samples import at, sample_record, sample_record_without_plan

EVENTS = Path(__file__).parents[3] / "fixtures" / "events"


def with_tasks(record: PlanRecord, change: Callable[[PlannedTask], PlannedTask], *ids: str) -> PlanRecord:
    return replace(record, tasks=tuple(change(task) if task.id in ids else task for task in record.tasks))


def with_helper(record: PlanRecord, helper: str, change: Callable[[PlannedHelper], PlannedHelper]) -> PlanRecord:
    return replace(record, helpers=tuple(change(each) if each.id == helper else each for each in record.helpers))


def with_servings(record: PlanRecord, change: Callable[[PlannedServing], PlannedServing]) -> PlanRecord:
    return replace(record, servings=tuple(map(change, record.servings)))


def sooner(task: PlannedTask, minutes: int = 10) -> PlannedTask:
    by = timedelta(minutes=minutes)
    return replace(task, starts_at=task.starts_at - by, ends_at=task.ends_at - by)


def changed(record: PlanRecord, task: str) -> TaskChange:
    (found,) = (each for each in compare(sample_record(), record).tasks if each.task == task)
    return found


def test_a_plan_beside_itself_says_that_nothing_changes() -> None:
    found = compare(sample_record(), sample_record())
    assert found.unchanged
    assert (found.tasks, found.helpers, found.servings) == ((), (), ())
    assert found.sentences == ("Nothing changes.", "Everything is still on time.")
    assert LevelChange("freshness", 25, 25) in found.levels


def test_a_moved_task_is_told_with_both_times_and_its_dish() -> None:
    found = changed(with_tasks(sample_record(), sooner, "beans.chop"), "beans.chop")
    assert found.kind is ChangeKind.MOVED
    assert found.before is not None
    assert found.after is not None
    assert (found.before.starts_at, found.after.starts_at) == (at("15:50"), at("15:40"))
    assert found.dish_name == "Smoky bean pot"


@pytest.mark.parametrize(
    ("change", "kind"),
    [
        (sooner, ChangeKind.MOVED),
        (lambda task: replace(task, helpers=("runa",)), ChangeKind.HANDED_OVER),
        (lambda task: replace(sooner(task), helpers=("runa",)), ChangeKind.MOVED_AND_HANDED_OVER),
        (lambda task: replace(task, units=("12-inch oven B", "cooking table, spot 1")), ChangeKind.OTHER_GEAR),
        (lambda task: replace(task, detail="Mind the rim."), ChangeKind.OTHER_WORK),
        (lambda task: replace(task, ends_at=task.ends_at + timedelta(minutes=5)), ChangeKind.OTHER_WORK),
    ],
)
def test_every_kind_of_change_is_told_apart(change: Callable[[PlannedTask], PlannedTask], kind: ChangeKind) -> None:
    assert changed(with_tasks(sample_record(), change, "beans.load"), "beans.load").kind is kind


def test_the_order_of_helpers_and_pieces_is_no_change() -> None:
    turned = with_tasks(
        sample_record(),
        lambda task: replace(task, helpers=task.helpers[::-1], units=task.units[::-1]),
        "set_up",
        "beans.bake",
    )
    assert compare(sample_record(), turned).unchanged


def test_tasks_that_come_and_go_are_told_in_the_order_of_the_day() -> None:
    record = sample_record()
    new = replace(record.tasks[0], id="wash", name="Wash up", starts_at=at("18:40"), ends_at=at("18:50"))
    after = replace(record, tasks=(*(task for task in record.tasks if task.id != "crumble.turn"), new))
    found = compare(record, after)
    assert [(each.task, each.kind) for each in found.tasks] == [
        ("crumble.turn", ChangeKind.REMOVED),
        ("wash", ChangeKind.ADDED),
    ]
    assert found.tasks[1].before is None
    assert found.sentences[-2:] == ("1 task is new.", "1 task falls away.")


def test_who_is_called_sooner_is_said_with_time_and_difference() -> None:
    after = with_helper(sample_record(), "ilse", lambda each: replace(each, called_at=at("16:35"), free_at=at("18:20")))
    found = compare(sample_record(), after)
    (ilse,) = found.helpers
    assert (ilse.called_before, ilse.called_after, ilse.tasks_changed) == (at("16:50"), at("16:35"), 0)
    assert f"{ilse.name} is called at 16:35, 15 min earlier, and free at 18:20, 10 min earlier." in found.sentences


def test_who_is_no_longer_needed_and_who_is_now_needed_is_said() -> None:
    idle = with_helper(sample_record(), "ilse", lambda each: replace(each, called_at=None, free_at=None))
    assert any("is not needed any more." in said for said in compare(sample_record(), idle).sentences)
    needed = compare(idle, sample_record()).sentences
    assert any(said.endswith("is needed from 16:50 to 18:30.") for said in needed)


def test_moves_and_handovers_are_counted_by_who_gives_and_who_takes() -> None:
    handed = with_tasks(
        sample_record(), lambda task: replace(sooner(task), helpers=("ilse",)), "beans.load", "beans.top_up"
    )
    found = compare(sample_record(), handed)
    assert (
        "2 of 24 tasks move, all 10 min earlier; Ilse Brandão; „Illy“, the younger gets 2 of Tomasz Okoro-Lind's."
        in (found.sentences)
    )
    assert {each.helper: each.tasks_changed for each in found.helpers} == {"tomasz": 2, "ilse": 2}


def test_one_helper_fewer_at_a_task_is_told_as_spared() -> None:
    alone = with_tasks(sample_record(), lambda task: replace(task, helpers=("runa",)), "set_up")
    assert "Tomasz Okoro-Lind is spared 1 task." in compare(sample_record(), alone).sentences
    assert "Tomasz Okoro-Lind joins in 1 task." in compare(alone, sample_record()).sentences


def test_lateness_comes_first_and_says_what_was_before() -> None:
    def delay(served: PlannedServing) -> PlannedServing:
        late = 5 if served.dish == "beans" else 0
        return replace(served, ready_at=served.ready_at + timedelta(minutes=late), late_minutes=late)

    late = with_servings(sample_record(), delay)
    assert compare(sample_record(), late).sentences[0] == "Smoky bean pot is 5 min late at Supper, on time before."
    assert compare(late, late).sentences[1] == "Smoky bean pot is 5 min late at Supper, as before."
    assert compare(late, sample_record()).sentences[0] == "Smoky bean pot is on time at Supper now."
    (served,) = compare(sample_record(), late).servings
    assert served.after is not None
    assert (served.dish, served.after.late_minutes) == ("beans", 5)


def test_where_a_late_dish_is_taken_out_the_rest_is_on_time_but_not_still() -> None:
    record = sample_record()
    first = record.servings[0]
    late = with_servings(
        record, lambda served: replace(served, late_minutes=10 if served.dish == first.dish else served.late_minutes)
    )
    fewer = replace(record, servings=tuple(served for served in record.servings if served.dish != first.dish))
    said = compare(late, fewer).sentences
    assert "Everything is on time." in said
    assert f"{first.dish_name} is no longer served at {first.serving_name}." in said


def test_a_serving_at_another_time_for_more_people_is_said_once_for_the_time() -> None:
    def later(served: PlannedServing) -> PlannedServing:
        by = timedelta(minutes=30)
        return replace(served, due_at=served.due_at + by, ready_at=served.ready_at + by, people=served.people + 20)

    said = compare(sample_record(), with_servings(sample_record(), later)).sentences
    assert said[:3] == (
        "Everything is still on time.",
        "Supper is at 19:00, 30 min later.",
        "Smoky bean pot is for 28 people, 20 more.",
    )


def test_a_new_caution_is_said_but_a_late_dish_not_twice() -> None:
    record = sample_record()
    windy = Warning("wind", "Wind of 20 mph is over the limit.", "Light no fire.")
    late = Warning("beans", "Smoky bean pot is on the table 5 min after Supper is due.", "Serve later.")
    after = replace(
        record,
        warnings=(*record.warnings, windy, late),
        servings=tuple(replace(each, late_minutes=5) if each.dish == "beans" else each for each in record.servings),
    )
    found = compare(record, after)
    assert found.new_warnings == (windy, late)
    assert [said for said in found.sentences if said.startswith("New to mind")] == [f"New to mind: {windy.text}"]
    assert compare(after, record).gone_warnings == (windy, late)


def test_coals_and_freshness_are_said_as_differences() -> None:
    record = sample_record()
    assert record.fuel is not None
    after = replace(
        record,
        fuel=replace(record.fuel, coals=99),
        levels=tuple(replace(each, value=5) if each.name == "freshness" else each for each in record.levels),
    )
    found = compare(record, after)
    assert found.fuel == FuelChange(81, 99)
    assert found.sentences[-2:] == ("18 more coals.", "Finished food waits 20 min less in all.")


def test_without_a_plan_afterwards_the_obstacles_are_said() -> None:
    found = compare(sample_record(), sample_record_without_plan())
    assert found.sentences[0] == "There is no plan for this."
    assert found.sentences[1].startswith("Nobody with the fire skill")
    assert {each.kind for each in found.tasks} == {ChangeKind.REMOVED}


def test_a_plan_where_there_was_none_says_so() -> None:
    said = compare(sample_record_without_plan(), sample_record()).sentences
    assert said[:2] == ("There was no plan before, and now there is one.", "Everything is on time.")
    assert compare(sample_record_without_plan(), sample_record_without_plan()).sentences[0] == (
        "There is no plan, before or after."
    )


def test_two_real_plans_differ_by_what_their_records_say() -> None:
    event = read_event((EVENTS / "supper.toml").read_text(encoding="utf-8"), "supper.toml")
    limits = Limits(seconds=5.0, workers=2, seed=1)
    before = plan_event(event, limits).record
    serving = event.servings[0]
    later = apply_change(event, {"kind": "move_serving", "serving": serving.id, "minutes": 15})
    after = plan_event(later, limits).record
    found = compare(before, after)
    assert f"{serving.name} is at {serving.at // 60}:{serving.at % 60 + 15:02}, 15 min later." in found.sentences
    old, new = ({task.id: task for task in record.tasks} for record in (before, after))
    moved = {task for task in old if old[task].starts_at != new[task].starts_at}
    assert {each.task for each in found.tasks if "moved" in each.kind} == moved
    assert len(found.servings) == len(event.dishes)
