"""An oven in balance: what comes in from the coals goes out to the air and into the food."""

from collections.abc import Callable

import numpy as np
import numpy.typing as npt

from cookout.core.air import ZERO_C_IN_K
from cookout.core.fire.network import BASE, FOOD, LID, WALL, Network

Array = npt.NDArray[np.float64]

_NUDGE_K = 0.5
_ROUNDS = 40
_CLOSE_W = 0.01
_WEIGHT = 10.0  # W for each kelvin, so that heat and temperature are numbers of a size


def shares_of_nodes(network: Network, lid_part: Array) -> Array:
    """How heat that the iron catches falls on lid, wall and base, (3, columns), where `lid_part` of it is the lid's."""
    wall = network.params.wall_share
    return np.stack([lid_part, wall * (1 - lid_part), (1 - wall) * (1 - lid_part)])


def settle(network: Network, heat: Array, food: Array) -> Array:
    """Node temperatures in kelvin (4, columns) at which `heat` (3, columns) keeps the balance with `food` drawn off.

    The food's row repeats the base's. Raises `ArithmeticError` where no balance is found.
    """
    columns = heat.shape[1]
    unknown = np.full((3, columns), network.stand.weather.air_c + ZERO_C_IN_K + 150.0)
    return _spread(_solve(lambda kelvin: _rest(network, kelvin, heat, food), unknown))


def heat_for(network: Network, target_c: float, lid_part: Array, food: Array) -> tuple[Array, Array]:
    """Heat in watts (columns,) that the iron must catch for food to meet `target_c` on the mean of above and below.

    `lid_part` (columns,) is the part of it that falls on the lid. Also gives the node temperatures (4, columns).
    """
    shares = shares_of_nodes(network, lid_part)

    def rest(unknown: Array) -> Array:
        balance = _rest(network, unknown[:3], shares * unknown[3] * _WEIGHT, food)
        above, below = network.felt(_spread(unknown[:3]), loaded=False)
        off: Array = ((above + below) / 2 - target_c)[None, :] * _WEIGHT
        return np.vstack([balance, off])

    columns = lid_part.shape[0]
    start = np.full((4, columns), target_c + ZERO_C_IN_K)
    start[3] = 0.35 * network.stand.oven.plate_m2 * max(10.0, target_c - network.stand.weather.air_c) * 20.0
    found = _solve(rest, start)
    return found[3] * _WEIGHT, _spread(found[:3])


def _rest(network: Network, kelvin: Array, heat: Array, food: Array) -> Array:
    balance: Array = network.flows(_spread(kelvin), heat - food, loaded=False).net[[LID, WALL, BASE]]
    return balance


def _spread(kelvin: Array) -> Array:
    """Three rows as four: the food is drawn off as heat, so its own temperature plays no part."""
    nodes = np.empty((FOOD + 1, kelvin.shape[1]))
    nodes[:3] = kelvin
    nodes[FOOD] = kelvin[BASE]
    return nodes


def _solve(rest: Callable[[Array], Array], unknown: Array) -> Array:
    """Newton's way with slopes by small nudges, all columns at once."""
    size = unknown.shape[0]
    for _ in range(_ROUNDS):
        here = rest(unknown)
        slopes = np.empty((unknown.shape[1], size, size))
        for row in range(size):
            nudged = unknown.copy()
            nudged[row] += _NUDGE_K
            slopes[:, :, row] = ((rest(nudged) - here) / _NUDGE_K).T
        step = np.linalg.solve(slopes, here.T[:, :, None])[:, :, 0].T
        unknown = unknown - np.clip(step, -200.0, 200.0)
        if float(np.abs(here).max()) < _CLOSE_W:
            return unknown
    raise ArithmeticError("the oven's heat balance was not found; the conditions lie outside of the model's range")
