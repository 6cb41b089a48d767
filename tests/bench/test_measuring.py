"""What the benchmarks print is what was measured: scores, medians, and the moment a plan was near its final value."""

import json
from pathlib import Path
from typing import Any

import pytest

from cookout.core.planning.problem import Aim
from cookout.core.planning.result import Level, Limits, Plan, Progress, Result, Status
from tests.bench import planning
from tests.bench.events import row
from tests.bench.one_event import Log
from tests.bench.outcome import Outcome
from tests.bench.published import Best, Instance, instances_in
from tests.bench.scores import Score, table
from tests.bench.theirs import theirs
from tests.outside.instances import read_instance

FOLDER = Path(__file__).parents[2] / "fixtures" / "instances"
NO_PLAN = Plan({})


def published(stem: str) -> Instance:
    (found,) = (instance for instance in instances_in(FOLDER) if instance.path.stem == stem)
    return found


def good_outcome(instance: Instance) -> Outcome:
    return theirs(read_instance(instance.path), Limits(seconds=20, workers=1))


def test_a_right_outcome_has_no_fault_and_no_gap() -> None:
    instance = published("j3018_10")
    score = Score.of(instance, "ours", good_outcome(instance))
    assert (score.faults, score.gap, score.settled) == ((), 0, True)


def test_a_plan_that_breaks_a_rule_or_tells_another_makespan_is_named() -> None:
    instance = published("j3018_10")
    starts = good_outcome(instance).starts
    assert starts is not None
    boast = Score.of(instance, "ours", Outcome(Status.BEST_FOUND, 1.0, 50, 40, starts))
    assert boast.faults == ("makespan is 49, not 50",)
    heap = Score.of(instance, "ours", Outcome(Status.BEST_FOUND, 1.0, 10, 10, dict.fromkeys(starts, 0)))
    assert any("resource 0 bears" in fault for fault in heap.faults)
    assert "10 is under the known bound 49" in heap.faults


def test_claims_that_what_is_known_refutes_are_named() -> None:
    possible, impossible = published("j3018_10"), published("psp74")
    denied = Score.of(possible, "ours", Outcome(Status.IMPOSSIBLE, 1.0))
    assert denied.faults == ("called impossible, and is not",)
    too_high = Score.of(possible, "ours", Outcome(Status.BEST_FOUND, 1.0, 52, 50))
    assert too_high.faults == ("bound 50 is over a known makespan 49",)
    unproved = Score.of(possible, "ours", Outcome(Status.PROVED_BEST, 1.0, 50, 48))
    assert unproved.faults == ("proved best with a bound under its makespan",)
    found = Score.of(impossible, "ours", Outcome(Status.BEST_FOUND, 1.0, 50, 48))
    assert found.faults == ("has a plan, and is known to be impossible",)


def test_the_table_gives_share_settled_mean_gap_and_both_ratios() -> None:
    def scored(engine: str, file: str, makespan: int, bound: int) -> Score:
        outcome = Outcome(Status.PROVED_BEST if makespan == bound else Status.BEST_FOUND, 2.0, makespan, bound)
        return Score(Instance(Path("j60") / file, "j60", Best(100, 100)), engine, outcome, ())

    scores = [
        scored("ours", "a.sm", 100, 100),
        scored("ours", "b.sm", 103, 100),
        scored("theirs", "a.sm", 102, 100),
        scored("theirs", "b.sm", 104, 100),
    ]
    rows = [line.split() for line in table(scores, "ours", "theirs").splitlines()]
    # gaps 0 and 3 against 2 and 4 per cent; spans 100/102 and 103/104, mean 0.9854
    assert rows[1] == ["j60", "ours", "2", "1", "(50%)", "2", "1.50", "0.50", "0.9854", "2.00", "0"]
    assert rows[2] == ["j60", "theirs", "2", "0", "(0%)", "2", "3.00", "2.00", "0"]


def test_the_planning_benchmark_writes_every_result(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "results.json"
    asked = ["--instances", str(FOLDER), "--sets", "j30", "--limit", "2", "--seconds", "10", "--out", str(out)]
    assert planning.main(asked) == 0
    results: list[dict[str, Any]] = json.loads(out.read_text(encoding="utf-8"))["results"]
    assert [(r["file"], r["engine"], r["status"], r["makespan"]) for r in results] == [
        ("j3018_10.sm", "ours", "proved_best", 49),
        ("j3018_10.sm", "pyjobshop", "proved_best", 49),
        ("j3047_5.sm", "ours", "proved_best", 47),
        ("j3047_5.sm", "pyjobshop", "proved_best", 47),
    ]
    assert "gap ratio" in capsys.readouterr().out


def test_the_planning_benchmark_refuses_a_folder_without_instances(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert planning.main(["--instances", str(tmp_path)]) == 2
    assert "no .sm or .sch files" in capsys.readouterr().err


def test_near_is_the_first_plan_whose_every_level_is_within_one_per_cent() -> None:
    log = Log()
    for lateness, crew_day in [(3, 202), (0, 205), (0, 202), (0, 200)]:
        values = ((Aim.LATENESS, lateness), (Aim.CREW_DAY, crew_day))
        log.note(Progress(0.0, "some", NO_PLAN, values))
    levels = (Level(Aim.LATENESS, 0, 0), Level(Aim.CREW_DAY, 200, 150))
    third = log.told[2][0]
    assert log.near_seconds(Result(Status.BEST_FOUND, NO_PLAN, levels, 1.0)) == third


def test_a_row_holds_medians_and_a_dash_for_what_most_repeats_never_reached() -> None:
    def run(first: float, proof: float | None, near: float | None) -> dict[str, Any]:
        times = {"expand_s": 0.1, "first_s": first, "near_s": near, "proof_s": proof, "total_s": 5.0, "peak_mib": 100.4}
        return {"event": "supper", "tasks": 20, "status": "best_found", "levels": [("lateness", 0, 0)], **times}

    cells = row([run(0.3, None, 1.0), run(0.1, 4.0, None), run(0.2, None, 2.0)])
    assert cells == (
        "supper", "20", "best_found", "0.100", "0.200", "2.000", "-", "5.000", "100", "lateness 0",
    )  # fmt: skip
