"""The stranger's program: silent on the sample and on a plan really made, and it notices each rule broken in turn."""

import ast
import copy
import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from cookout.core.eventfile import read_event
from cookout.core.planning.pipeline import plan_event
from cookout.core.planning.recordjson import to_json
from cookout.core.planning.result import Limits
from tests.outside import plan_book, plan_checker
from tests.outside.plan_checker import faults
from tests.sample_event import sample_event
from tests.samples import TRICKY_TASK, sample_record, sample_record_without_plan

Data = dict[str, Any]

EVENTS = Path(__file__).parents[2] / "fixtures" / "events"


@pytest.fixture
def data() -> Data:
    """The sample as a file would hold it."""
    read: Data = json.loads(json.dumps(to_json(sample_record())))
    return read


def task(data: Data, name: str) -> Data:
    found: Data = next(each for each in data["tasks"] if each["id"] == name)
    return found


def helper(data: Data, name: str) -> Data:
    found: Data = next(each for each in data["helpers"] if each["id"] == name)
    return found


def at(clock: str) -> str:
    return f"2027-06-19T{clock}:00-05:00"


def set_at(data: Data, name: str, start: str, end: str) -> None:
    task(data, name).update(starts_at=at(start), ends_at=at(end))


def test_the_sample_has_no_fault(data: Data) -> None:
    assert faults(data) == []


def test_an_impossible_event_with_its_reason_has_no_fault() -> None:
    assert faults(to_json(sample_record_without_plan())) == []


def test_a_plan_made_by_the_planner_has_no_fault() -> None:
    outcome = plan_event(sample_event(), Limits(seconds=4, workers=1, seed=1))
    assert outcome.record.tasks
    assert faults(json.loads(json.dumps(to_json(outcome.record)))) == []


@pytest.mark.parametrize(("name", "seconds"), [("supper", 2), ("demonstration", 5), ("festival", 5)])
def test_the_events_that_come_along_have_no_fault_either(name: str, seconds: float) -> None:
    event = read_event((EVENTS / f"{name}.toml").read_text(encoding="utf-8"), name)
    outcome = plan_event(event, Limits(seconds=seconds, workers=1, seed=1))
    assert outcome.record.tasks
    assert faults(json.loads(json.dumps(to_json(outcome.record)))) == []


def _too_good_a_bound(data: Data) -> None:
    data["levels"][1]["bound"] = 26


def _not_proved(data: Data) -> None:
    data["levels"][2]["bound"] -= 1


def _unknown_status(data: Data) -> None:
    data["status"] = "splendid"


def _impossible_with_tasks(data: Data) -> None:
    data["status"] = "impossible"


def _a_level_short(data: Data) -> None:
    data["levels"].pop()


def _winter_offset(data: Data) -> None:
    task(data, "drown")["ends_at"] = "2027-06-19T17:30:00-06:00"


def _no_offset(data: Data) -> None:
    data["helpers"][0]["windows"][0]["from"] = "2027-06-19T15:00:00"


def _nobody_known(data: Data) -> None:
    task(data, "drown")["helpers"] = ["ghost"]


def _link_to_nowhere(data: Data) -> None:
    data["links"][0]["to"] = "nowhere"


def _same_id_twice(data: Data) -> None:
    data["tasks"].append(copy.deepcopy(data["tasks"][0]))


def _ends_before_it_starts(data: Data) -> None:
    set_at(data, "crumble.cool", "18:25", "18:15")


def _wait_too_short(data: Data) -> None:
    set_at(data, "crumble.look_in", "17:54", "17:57")


def _wait_too_long(data: Data) -> None:
    set_at(data, "crumble.look_in", "18:03", "18:06")


def _finish_to_finish(data: Data) -> None:
    data["links"].append(
        {
            "from": "supper.beans",
            "to": "supper.crumble",
            "kind": "finish_to_finish",
            "least_minutes": 1,
            "most_minutes": 9,
        }
    )


def _start_to_finish(data: Data) -> None:
    data["links"].append(
        {"from": "supper.beans", "to": "drown", "kind": "start_to_finish", "least_minutes": 0, "most_minutes": 4}
    )


def _false_slack(data: Data) -> None:
    task(data, "crumble.look_in")["slack_minutes"] = 3


def _one_spot(data: Data) -> None:
    next(each for each in data["gear"] if each["id"] == "table")["count"] = 1


def _unnamed_piece(data: Data) -> None:
    task(data, "beans.lay")["units"] = ["12-inch oven A"]


def _same_spot(data: Data) -> None:
    task(data, "crumble.bake")["units"] = ["10-inch oven A", "cooking table, spot 1"]


def _same_oven(data: Data) -> None:
    data["bakes"][1]["unit"] = "12-inch oven A"


def _a_hand_short(data: Data) -> None:
    task(data, "set_up")["helpers"] = ["runa"]


def _hands_on_waiting(data: Data) -> None:
    task(data, "beans.bake")["hands_on"] = True


def _no_skill(data: Data) -> None:
    helper(data, "tomasz")["skills"] = ["fire"]


def _gone(data: Data) -> None:
    helper(data, "ilse")["windows"][0]["until"] = at("18:29")


def _in_the_gap(data: Data) -> None:
    set_at(data, "beans.top_up", "16:58", "17:03")


def _two_places(data: Data) -> None:
    set_at(data, "crumble.turn", "17:22", "17:25")


def _child_at_the_fire(data: Data) -> None:
    task(data, "drown")["helpers"] = ["ilse"]


def _nobody_at_the_fire(data: Data) -> None:
    task(data, "drown").update(helpers=[], hands=0, hands_on=False)


def _no_break(data: Data) -> None:
    data["break_minutes"] = 18


def _not_ashed_over(data: Data) -> None:
    data["firings"][0]["ready_from"] = at("16:16")


def _faded(data: Data) -> None:
    data["firings"][1]["ready_until"] = at("17:14")


def _lit_by_another(data: Data) -> None:
    data["firings"][0]["lit_by"] = "set_up"


def _unfed(data: Data) -> None:
    data["firings"][0]["feeds"] = []


def _fed_the_wrong_task(data: Data) -> None:
    data["firings"][0]["feeds"].append("crumble.cool")


def _chimneys_short(data: Data) -> None:
    data["firings"][1].update(chimneys=2)


def _overfilled(data: Data) -> None:
    next(each for each in data["gear"] if each["id"] == "chimney")["coals"] = 32


def _coals_short(data: Data) -> None:
    data["firings"][1]["coals"] = 32


def _outside_its_band(data: Data) -> None:
    data["bakes"][0]["most_coals"] = 24


def _fire_first(data: Data) -> None:
    set_at(data, "set_up", "15:31", "15:51")


def _drowned_early(data: Data) -> None:
    set_at(data, "drown", "18:14", "18:29")


def _never_drowned(data: Data) -> None:
    task(data, "drown")["kind"] = "finish"


def _miscounted_lateness(data: Data) -> None:
    data["servings"][0]["late_minutes"] = 3


def _served_too_late(data: Data) -> None:
    data["servings"][0]["latest_at"] = at("18:29")


def _served_by_no_task(data: Data) -> None:
    set_at(data, "supper.beans", "18:24", "18:29")


def _late_by_the_levels(data: Data) -> None:
    data["levels"][0].update(value=2, bound=2)


def _outside_the_slot(data: Data) -> None:
    data["slots"][0]["ends_at"] = at("17:14")


def _out_of_order(data: Data) -> None:
    data["slots"][0]["live"].reverse()


def _another_presenter(data: Data) -> None:
    data["slots"][0]["presenter"] = "tomasz"


def _not_ready(data: Data) -> None:
    data["slots"][0]["ready_made"][0]["by"] = at("16:44")


def _presenter_elsewhere(data: Data) -> None:
    task(data, TRICKY_TASK)["live_in"] = ""


def _called_late(data: Data) -> None:
    helper(data, "runa")["called_at"] = at("15:45")


def _worked_more(data: Data) -> None:
    helper(data, "runa")["work_minutes"] = 72


def _unfair(data: Data) -> None:
    data["levels"][3].update(value=28, bound=28)


@pytest.mark.parametrize(
    ("spoil", "fault"),
    [
        (_too_good_a_bound, "level freshness has value 25 below its bound 26"),
        (_not_proved, "status is proved_best, but a level is above its bound"),
        (_unknown_status, "status splendid is none of"),
        (_impossible_with_tasks, "status is impossible with 24 tasks"),
        (_a_level_short, "levels are ['lateness', 'freshness', 'crew_day'], not"),
        (_winter_offset, "tasks drown ends_at 2027-06-19T17:30:00-06:00 has not the offset of America/Chicago"),
        (_no_offset, "window of runa 2027-06-19T15:00:00 has no offset"),
        (_nobody_known, "drown: no helper ghost"),
        (_link_to_nowhere, "no task nowhere"),
        (_same_id_twice, "tasks: set_up is there twice"),
        (_ends_before_it_starts, "crumble.cool ends before it starts"),
        (_wait_too_short, "crumble.look_in comes 29 min after crumble.bake (start_to_start), least is 30"),
        (_wait_too_long, "crumble.look_in comes 38 min after crumble.bake (start_to_start), most is 37"),
        (_finish_to_finish, "supper.crumble comes 0 min after supper.beans (finish_to_finish), least is 1"),
        (_start_to_finish, "drown comes 5 min after supper.beans (start_to_finish), most is 4"),
        (_false_slack, "crumble.look_in has no slack of 3 min"),
        (_one_spot, "2 of table in use at 22:15 UTC, there are 1"),
        (_unnamed_piece, "beans.lay counts 2 pieces and names 1"),
        (_same_spot, "cooking table, spot 1 is at beans.bake and crumble.bake at once, 22:25 UTC"),
        (_same_oven, "12-inch oven A is at beans.bake and crumble.bake at once, 22:15 UTC"),
        (_a_hand_short, "set_up wants 2 hands and has ['runa']"),
        (_hands_on_waiting, "beans.bake says hands_on True with 0 hands"),
        (_no_skill, "tomasz lacks knife for beans.chop"),
        (_gone, "ilse is not there for supper.crumble"),
        (_in_the_gap, "tomasz is not there for beans.top_up"),
        (_two_places, "runa is at crumble.load and crumble.turn at once, 22:22 UTC"),
        (_child_at_the_fire, "ilse may not do the fire task drown"),
        (_nobody_at_the_fire, "nobody is at the fire task drown"),
        (_no_break, "runa works at the fire for 75 min from 22:15 UTC without a break"),
        (_not_ashed_over, "beans.lay takes coals of fire1 while they are not good"),
        (_faded, "crumble.lay takes coals of fire2 while they are not good"),
        (_lit_by_another, "fire1 is not lit as it says"),
        (_unfed, "no coals are lit for beans.lay"),
        (_fed_the_wrong_task, "fire1 feeds crumble.cool, which takes no coals"),
        (_chimneys_short, "2 of chimneys in use at 21:25 UTC, there are 1"),
        (_overfilled, "fire2 has 33 coals in 1 chimneys of 32"),
        (_coals_short, "fire2 has 32 coals, 33 are taken"),
        (_outside_its_band, "beans.bake has coals outside its own band"),
        (_fire_first, "coals are lit before the set-up is done"),
        (_drowned_early, "the coals are not drowned after the last food is out"),
        (_never_drowned, "the coals are not drowned after the last food is out"),
        (_miscounted_lateness, "beans for supper is 0 min late and says 3"),
        (_served_too_late, "beans for supper is outside its tolerance"),
        (_served_by_no_task, "no task puts beans for supper on the table at that minute"),
        (_late_by_the_levels, "lateness is 2 by the levels and 0 by the servings"),
        (_outside_the_slot, "crumble.layer is not shown within crumb-show"),
        (_out_of_order, "live tasks of crumb-show are out of order"),
        (_another_presenter, "crumble.rub is not shown by tomasz"),
        (_not_ready, "crumble.slice is not done when crumb-show wants it"),
        (_presenter_elsewhere, "ilse does crumble.rub while presenting crumb-show"),
        (_called_late, "runa is called or free at another time than the tasks say"),
        (_worked_more, "runa works other minutes than it says"),
        (_unfair, "fair_shares is 28 by the levels and 29 by the work"),
    ],
)
def test_each_broken_rule_is_noticed(data: Data, spoil: Callable[[Data], None], fault: str) -> None:
    spoil(data)
    assert [found for found in faults(data) if found.startswith(fault)], faults(data)


def test_an_impossible_event_without_a_reason_is_noticed() -> None:
    silent = to_json(sample_record_without_plan()) | {"obstacles": []}
    assert faults(silent) == ["an impossible event gives no reason"]


def test_the_program_knows_nothing_of_the_planner() -> None:
    for module in (plan_checker, plan_book):
        tree = ast.parse(Path(str(module.__file__)).read_text(encoding="utf-8"))
        named = {node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
        named |= {name.name for node in ast.walk(tree) if isinstance(node, ast.Import) for name in node.names}
        strangers = {name for name in named if name.split(".")[0] not in sys.stdlib_module_names}
        assert strangers <= {"tests.outside.plan_book"}


def test_it_runs_as_a_program_and_tells_by_its_exit_code(data: Data, tmp_path: Path) -> None:
    sound, broken = tmp_path / "sound.json", tmp_path / "broken.json"
    sound.write_text(json.dumps(data), encoding="utf-8")
    _coals_short(data)
    broken.write_text(json.dumps(data), encoding="utf-8")
    assert _run(sound) == (0, "no fault found\n")
    assert _run(broken) == (1, f"{broken}: fire2 has 32 coals, 33 are taken\n")


def _run(path: Path) -> tuple[int, str]:
    command = [sys.executable, "-m", "tests.outside.plan_checker", str(path)]
    ended = subprocess.run(command, capture_output=True, text=True, check=False)
    assert ended.stderr == ""
    return ended.returncode, ended.stdout
