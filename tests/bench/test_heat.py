"""The bench of bake times runs, and both solvers meet."""

from random import Random

import pytest

from cookout.core.fire.baking import BAKE, run_bakes, steps_for
from tests.bench.heat import elsewhere, made_up, main


def test_the_bench_prints_its_three_lines(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--bakes", "3", "--compare", "1", "--repeat", "1"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split()[0] for line in lines] == ["one", "3", "solve_ivp"]


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_general_integrator_on_the_same_equations_ends_at_the_same_time(seed: int) -> None:
    case = made_up(Random(seed))
    ours = float(run_bakes([case], BAKE, steps_for(case)).seconds[0])
    assert elsewhere(case, "LSODA").done_s == pytest.approx(ours, rel=0.01)
