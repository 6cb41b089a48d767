"""The marched equations: heat is kept, steps converge at second order, and an independent integrator agrees."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from cookout.core.fire.baking import BAKE, around_bakes, baked_bodies
from cookout.core.fire.bodies import Around, Array, grid
from cookout.core.fire.march import Equations, plain_step_s, reach, step
from cookout.core.fire.until import STEPS, Goal, after, until
from tests.core.fire.plain_bodies import HOUSE, WINDY, layer, plain, still

NODES = (STEPS.heights, STEPS.radii)


def baking(heat: tuple[float, float, float]) -> tuple[Equations, Array]:
    """The equations of a layer, with a pace a second, and what its oven gives."""
    case = layer(heat)
    equations = Equations(baked_bodies([case]), NODES, np.ones(1))
    return equations, equations.held(around_bakes([case], 1).at(np.zeros(1)))


def by_another_integrator(heat: tuple[float, float, float], seconds: float) -> Array:
    """The state after so many seconds, by an implicit method of high accuracy on the same equations."""
    equations, held = baking(heat)
    out = np.empty_like(equations.start())

    def pace(_: float, state: Array) -> Array:
        equations.gain(state[:, None], held, out)
        return out[:, 0].copy()

    start = equations.start()[:, 0]
    solved = solve_ivp(pace, (0.0, seconds), start, method="LSODA", rtol=1e-7, atol=1e-7)
    assert solved.success
    return np.asarray(solved.y[:, -1])


@pytest.mark.parametrize("heat", [HOUSE, WINDY])
def test_a_bake_agrees_with_an_independent_integrator_on_the_same_equations(heat: tuple[float, float, float]) -> None:
    case, seconds = layer(heat), 700.0
    other = by_another_integrator(heat, seconds)
    ours = after(baked_bodies([case]), around_bakes([case], 1), np.array([seconds]), STEPS)[:, 0]
    nodes = NODES[0] * NODES[1]
    assert ours[nodes:] == pytest.approx(other[nodes:], rel=0.01)
    assert ours[: nodes : NODES[1]][2:-2] == pytest.approx(other[: nodes : NODES[1]][2:-2], abs=0.5)


@pytest.mark.parametrize("heat", [HOUSE, WINDY])
def test_heat_in_is_heat_stored_and_heat_gone_with_vapour(heat: tuple[float, float, float]) -> None:
    case = layer(heat)
    bodies = baked_bodies([case])
    equations = Equations(bodies, NODES, np.ones(1))
    state = after(bodies, around_bakes([case], 1), np.array([900.0]), STEPS)
    stored = equations.stored(state) - case.start_c
    came_in, left = state[-2], state[-1]
    assert left[0] > 1
    assert stored + left == pytest.approx(came_in, rel=1e-9)


def test_heat_that_came_in_is_the_sum_over_the_faces_worked_by_hand() -> None:
    """A body of 20 °C put in air of 100 °C by film alone: h x (T_air - T) x area, at the first moment."""
    bodies = plain(height_m=0.05, radius_m=0.1, ends_w_m2k=12.0, side_w_m2k=7.0, start_c=20.0)
    equations = Equations(bodies, NODES, np.ones(1))
    gained = np.empty_like(equations.start())
    equations.gain(equations.start(), equations.held(still(100.0).at(np.zeros(1))), gained)
    watts = 80.0 * (12.0 * 2 * np.pi * 0.1**2 + 7.0 * 2 * np.pi * 0.1 * 0.05)
    body_j_k = 3.0e6 * np.pi * 0.1**2 * 0.05
    assert gained[-2, 0] == pytest.approx(watts / body_j_k, rel=1e-9)


def test_the_shares_of_volume_add_to_the_whole_and_conduction_makes_no_heat() -> None:
    mesh = grid(9, 5)
    assert mesh.weights.sum() == pytest.approx(1.0)
    potential = np.random.default_rng(3).normal(size=(9, 5))
    assert (mesh.weights * (mesh.across @ potential)).sum() == pytest.approx(0.0, abs=1e-9)
    assert (mesh.weights * (potential @ mesh.rings.T)).sum() == pytest.approx(0.0, abs=1e-9)


def test_the_rings_give_the_laplacian_of_a_parabola() -> None:
    """Of r squared it is 4 everywhere inside."""
    radii = np.linspace(0, 1, 9)
    assert (grid(3, 9).rings @ radii**2)[1:-1] == pytest.approx(4.0)


def test_halving_a_step_cuts_its_error_by_about_four() -> None:
    bodies = plain(height_m=0.05, radius_m=0.1, ends_w_m2k=40.0, side_w_m2k=40.0)
    held_for, ends = 1200.0, []
    for count in (24, 48, 384):
        equations = Equations(bodies, NODES, np.full(1, held_for / count))
        held, state = equations.held(still(20.0).at(np.zeros(1))), equations.start()
        for _ in range(count):
            state = step(equations, state, held, 7)
        ends.append(state[: NODES[0] * NODES[1]])
    coarse, fine = (float(np.abs(end - ends[-1]).max()) for end in ends[:2])
    assert 3.0 < coarse / fine < 6.0


@pytest.mark.parametrize("stages", [3, 4, 5, 7, 9])
def test_a_step_is_stable_to_the_end_of_its_reach(stages: int) -> None:
    bodies = plain(height_m=0.02, radius_m=0.1, ends_w_m2k=20.0, side_w_m2k=20.0)
    seconds = reach(stages) * plain_step_s(bodies, NODES, np.array([80.0]))
    equations = Equations(bodies, NODES, seconds)
    held, state = equations.held(still(20.0).at(np.zeros(1))), equations.start()
    state[0, 0] += 5.0
    for _ in range(400):
        state = step(equations, state, held, stages)
    assert equations.temperature(state[: NODES[0] * NODES[1]]) == pytest.approx(20.0, abs=0.5)


def test_surroundings_between_two_knots_lie_between_them_and_the_last_one_stays() -> None:
    curve = np.array([[0.0, 60.0, 120.0]])
    around = Around(curve, curve + 1, curve + 2)
    assert [float(each[0]) for each in around.at(np.array([90.0]))] == [90.0, 91.0, 92.0]
    assert float(around.at(np.array([9999.0]))[0][0]) == 120.0
    assert around.rests_s == 120.0


def test_what_never_comes_to_its_goal_is_given_up_long_before_the_end() -> None:
    bodies = plain(height_m=0.04, radius_m=0.1, ends_w_m2k=20.0, side_w_m2k=20.0, start_c=20.0)
    ended = until(bodies, still(80.0), Goal(np.array([90.0]), 1e6, warming=True))
    assert np.isinf(ended.seconds[0])
    assert len(ended.courses) < 1000


def test_bodies_marched_together_end_as_each_does_alone() -> None:
    cases = [layer(HOUSE), layer(WINDY), layer(HOUSE, 0.02)]
    goal = Goal(np.full(3, 90.0), 4 * 3600.0, warming=True)
    together = until(baked_bodies(cases), around_bakes(cases, 1), goal, replace(STEPS, together=2))
    for place, case in enumerate(cases):
        one = replace(goal, target_c=goal.target_c[:1])
        alone = until(baked_bodies([case], BAKE), around_bakes([case], 1), one)
        assert together.seconds[place] == pytest.approx(alone.seconds[0], rel=0.002)
