"""The readers of published instances, against the text of the files and against two libraries that read them too."""

from pathlib import Path

import psplib  # type: ignore[import-untyped]
import pytest

from cookout.core.errors import ProblemError
from cookout.core.planning.problem import Aim, Link, LinkKind, Need, Problem, Resource, ResourceId, Task, TaskId
from cookout.core.planning.result import Limits, Placed, Plan, Status
from tests.bench.published import Best, Instance, instances_in
from tests.bench.theirs import theirs
from tests.outside.instances import mirrored, plan_turned_back, read_instance, read_sch, read_sm
from tests.outside.reading import faults_of, makespan_of

FOLDER = Path(__file__).parents[2] / "fixtures" / "instances"
PLAIN = FOLDER / "j30" / "j3018_10.sm"
LAGGED = FOLDER / "ubo50" / "psp12.sch"
IMPOSSIBLE = FOLDER / "ubo50-unsat" / "psp74.sch"
LIMITS = Limits(seconds=20, workers=1)


def activity(number: int) -> TaskId:
    return TaskId(f"activity-{number}")


def need(resource: int, amount: int) -> Need:
    return Need((ResourceId(f"resource-{resource}"),), amount)


def test_a_plain_file_gives_what_stands_in_its_text() -> None:
    problem = read_sm(PLAIN)
    # "2 1 9 0 4 0 0", "10 1 3 0 0 10 0" and "15 1 6 10 0 0 0" under REQUESTS/DURATIONS
    assert problem.task_by_id[activity(2)] == Task(activity(2), 9, (need(2, 4),))
    assert problem.task_by_id[activity(10)] == Task(activity(10), 3, (need(3, 10),))
    assert problem.task_by_id[activity(15)] == Task(activity(15), 6, (need(1, 10),))
    # "9 1 3 10 12 21" under PRECEDENCE RELATIONS
    after_nine = [link for link in problem.links if link.before == activity(9)]
    assert after_nine == [Link(activity(9), activity(number)) for number in (10, 12, 21)]
    assert [resource.capacity for resource in problem.resources] == [10, 10, 15, 14]
    assert (len(problem.tasks), len(problem.links), problem.closes) == (32, 58, 157)
    assert problem.aims == (Aim.MAKESPAN,)


def test_a_file_with_lags_gives_what_stands_in_its_text() -> None:
    problem = read_sch(LAGGED)
    # "9 1 2 47 42 [0] [-56]" among the arcs: 47 no sooner than 9, and 9 at most 56 after 42
    after_nine = [link for link in problem.links if link.before == activity(9)]
    assert after_nine == [
        Link(activity(9), activity(47), LinkKind.START_TO_START, least=0),
        Link(activity(9), activity(42), LinkKind.START_TO_START, least=-56),
    ]
    # "30 1 4 0 0 0 2 0" among the requests, "14 16 21 19 16" at the end
    assert problem.task_by_id[activity(30)] == Task(activity(30), 4, (need(4, 2),))
    assert [resource.capacity for resource in problem.resources] == [14, 16, 21, 19, 16]
    assert len(problem.tasks) == 52


def test_the_horizon_of_a_file_with_lags_is_the_longest_of_duration_and_lags_summed(tmp_path: Path) -> None:
    path = tmp_path / "tiny.sch"
    path.write_text(
        "2 1 0 0\n0 1 2 1 2 [0] [0]\n1 1 2 2 3 [7] [3]\n2 1 2 3 1 [4] [-9]\n3 1 0\n"
        "0 1 0 0\n1 1 3 1\n2 1 4 1\n3 1 0 0\n1\n"
    )
    # by hand: 0 for the first, max(3, 7, 3) = 7, max(4, 4, -9) = 4, 0 for the last
    assert read_sch(path).closes == 11


@pytest.mark.parametrize("path", sorted(FOLDER.glob("*/*.s*")), ids=lambda path: path.stem)
def test_another_reader_finds_the_same_in_every_file(path: Path) -> None:
    problem = read_instance(path)
    lagged = path.suffix == ".sch"
    project = psplib.parse(path, instance_format="rcpsp_max" if lagged else "psplib")
    assert [task.minutes for task in problem.tasks] == [a.modes[0].duration for a in project.activities]
    assert [r.capacity for r in problem.resources] == [r.capacity for r in project.resources]
    demands = [[n.amount for n in task.needs] for task in problem.tasks]
    assert demands == [[amount for amount in a.modes[0].demands if amount] for a in project.activities]
    place = {task.id: number for number, task in enumerate(problem.tasks)}
    arcs = [(place[link.before], place[link.after], link.least) for link in problem.links]
    assert arcs == [
        (number, after, lag)
        for number, a in enumerate(project.activities)
        for after, lag in zip(a.successors, a.delays or [0] * len(a.successors), strict=True)
    ]


@pytest.mark.parametrize(
    "instance", [i for i in instances_in(FOLDER) if not i.best.impossible], ids=lambda instance: instance.path.stem
)
def test_another_solver_reaches_the_published_optimum_from_what_was_read(instance: Instance) -> None:
    outcome = theirs(read_instance(instance.path), LIMITS)
    assert (outcome.status, outcome.makespan) == (Status.PROVED_BEST, instance.best.makespan)
    assert outcome.starts is not None
    assert faults_of(instance.path, outcome.starts) == []
    assert makespan_of(instance.path, outcome.starts) == instance.best.makespan


def test_another_solver_shows_the_impossible_instance_to_be_so() -> None:
    assert theirs(read_instance(IMPOSSIBLE), LIMITS).status is Status.IMPOSSIBLE


@pytest.mark.parametrize("path", [PLAIN, LAGGED], ids=lambda path: path.suffix)
def test_a_mirrored_instance_has_the_same_optimum_and_its_plan_turned_back_holds(path: Path) -> None:
    problem = read_instance(path)
    outcome = theirs(mirrored(problem), LIMITS)
    assert outcome.status is Status.PROVED_BEST
    assert outcome.starts is not None
    plan = plan_turned_back(Plan({t: Placed(t, start) for t, start in outcome.starts.items()}), problem)
    starts = {task: placed.start for task, placed in plan.placed.items()}
    assert faults_of(path, starts) == []
    assert makespan_of(path, starts) == outcome.makespan == theirs(problem, LIMITS).makespan


def test_mirroring_turns_windows_and_every_kind_of_link_about_and_twice_gives_the_problem_back() -> None:
    mix, bake = TaskId("mix"), TaskId("bake")
    problem = Problem(
        tasks=(Task(mix, 10, earliest=5), Task(bake, 30, (need(1, 1),), latest=90)),
        links=tuple(Link(mix, bake, kind, least=2, most=8) for kind in LinkKind),
        resources=(Resource(ResourceId("resource-1"), opens=20, closes=80),),
        opens=0,
        closes=100,
    )
    turned = mirrored(problem)
    assert [(task.earliest, task.latest) for task in turned.tasks] == [(None, 95), (10, None)]
    assert [(resource.opens, resource.closes) for resource in turned.resources] == [(20, 80)]
    assert all((link.before, link.after) == (bake, mix) for link in turned.links)
    assert mirrored(turned) == problem


def test_only_problems_judged_by_makespan_alone_are_mirrored() -> None:
    with pytest.raises(ProblemError, match="makespan"):
        mirrored(Problem(tasks=(), aims=(Aim.LATENESS,)))


def test_a_second_reading_notices_a_broken_wait_an_overload_and_a_start_before_the_project() -> None:
    outcome = theirs(read_instance(LAGGED), LIMITS)
    assert outcome.starts is not None
    all_at_once = dict.fromkeys(outcome.starts, 0)
    faults = faults_of(LAGGED, all_at_once)
    assert any(fault.startswith("activity 7 starts 0 after 37") for fault in faults) is False  # lag -2 allows it
    assert "activity 35 starts 0 after 7, not 14 or more" in faults  # "7 1 2 35 8 [14] [13]"
    assert any(fault.startswith("resource 0 bears") for fault in faults)
    sooner = {task: start - 1 for task, start in outcome.starts.items()}
    assert "activity 0 starts at -1" in faults_of(LAGGED, sooner)


def test_files_of_other_problems_are_refused_with_a_remedy(tmp_path: Path) -> None:
    text = PLAIN.read_text()
    used_up = tmp_path / "used_up.sm"
    used_up.write_text(text.replace("nonrenewable              :  0", "nonrenewable              :  2"))
    with pytest.raises(ProblemError, match="renewable resources only"):
        read_instance(used_up)
    several = tmp_path / "several.sm"
    several.write_text(text.replace("  2      1     9       0", "  2      2     9       0"))
    with pytest.raises(ProblemError, match="single-mode"):
        read_instance(several)
    with pytest.raises(ProblemError, match=r"\.sm or a \.sch"):
        read_instance(tmp_path / "other.mm")


def test_activities_that_could_start_before_the_first_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "loose.sch"
    path.write_text("1 1 0 0\n0 1 1 2 [0]\n1 1 1 2 [3]\n2 1 0\n0 1 0 0\n1 1 3 1\n2 1 0 0\n1\n")
    with pytest.raises(ProblemError, match="activity-1"):
        read_sch(path)


def test_instances_come_set_by_set_with_what_is_known_of_them() -> None:
    found = list(instances_in(FOLDER))
    assert [i.set for i in found] == ["j30"] * 3 + ["ubo50"] * 3 + ["ubo50-unsat"]
    assert found[0].best == Best(lower=49, makespan=49)
    assert found[-1].best == Best(impossible=True)
    assert [i.path.name for i in instances_in(FOLDER, sets=("ubo50",), limit=2)] == ["psp12.sch", "psp27.sch"]
