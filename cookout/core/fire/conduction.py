"""Transient conduction with known answers: series for simple bodies, and the lumped body.

Everything is dimensionless unless a name says otherwise. Bi = h L / k and Fo = a t / L2 with L the half-thickness of a
plane wall or the radius of a cylinder or sphere, h the film coefficient [W/m2 K], k the conductivity [W/m K] and a the
diffusivity [m2/s]; theta = (T - T_around) / (T_start - T_around), 1 at the start and 0 at the end.

Sources:
[1] Incropera, DeWitt, Bergman, Lavine: Fundamentals of Heat and Mass Transfer, 6th edition (2007), sections 5.1 and
    5.5 to 5.8 (equations from memory; values held against tables computed by root finding, see the tests).
"""

from enum import StrEnum
from functools import lru_cache
from math import exp, log, pi

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros

Array = NDArray[np.float64]


class Shape(StrEnum):
    """A body heated evenly over its whole surface."""

    WALL = "wall"
    CYLINDER = "cylinder"
    SPHERE = "sphere"


@lru_cache(maxsize=256)
def roots(shape: Shape, bi: float, count: int) -> tuple[float, ...]:
    """The first `count` positive roots z of the body's characteristic equation [1].

    wall: z tan z = Bi; cylinder: z J1(z) = Bi J0(z); sphere: 1 - z cot z = Bi. Valid for Bi > 0; `ValueError` else.
    Example: ``roots(Shape.WALL, 1.0, 1)`` is (0.8603,).
    """
    if bi <= 0:
        raise ValueError(f"Bi must be above 0, not {bi}")
    return tuple(float(brentq(_equation, low, high, (shape, bi), xtol=1e-13)) for low, high in _brackets(shape, count))


def _equation(z: float, shape: Shape, bi: float) -> float:
    if shape is Shape.WALL:
        return float(z * np.sin(z) - bi * np.cos(z))
    if shape is Shape.CYLINDER:
        return float(z * j1(z) - bi * j0(z))
    return float((1 - bi) * np.sin(z) - z * np.cos(z))


def _brackets(shape: Shape, count: int) -> list[tuple[float, float]]:
    """Where each root lies, one in each; the lower end of the first is moved off the trivial root of the sphere."""
    if shape is Shape.CYLINDER:
        lows, highs = [0.0, *jn_zeros(1, count)[:-1]], list(jn_zeros(0, count))
        return [(float(low), float(high)) for low, high in zip(lows, highs, strict=True)]
    width = pi / 2 if shape is Shape.WALL else pi
    return [(max(n * pi, 1e-6), n * pi + width) for n in range(count)]


def coefficients(shape: Shape, zeta: Array) -> Array:
    """The weight of each root's term in the series [1]; wall at Bi = 1: 1.1191 for the first."""
    if shape is Shape.WALL:
        return np.asarray(4 * np.sin(zeta) / (2 * zeta + np.sin(2 * zeta)))
    if shape is Shape.CYLINDER:
        return np.asarray(2 * j1(zeta) / (zeta * (j0(zeta) ** 2 + j1(zeta) ** 2)))
    return np.asarray(4 * (np.sin(zeta) - zeta * np.cos(zeta)) / (2 * zeta - np.sin(2 * zeta)))


def first_term(shape: Shape, bi: float) -> tuple[float, float]:
    """(zeta, C) of the first term, as textbooks tabulate them; wall at Bi = 1: (0.8603, 1.1191) [1]."""
    zeta = np.array(roots(shape, bi, 1))
    return float(zeta[0]), float(coefficients(shape, zeta)[0])


def first_term_theta(shape: Shape, bi: float, fo: float) -> float:
    """Theta at the centre by one term; within 2 % for Fo above 0.2 [1], and too high below (wall: 1.08 at 0.05)."""
    zeta, weight = first_term(shape, bi)
    return weight * exp(-(zeta**2) * fo)


def series_theta(shape: Shape, bi: float, fo: float, place: float = 0.0, terms: int = 40) -> float:
    """Theta by the full series at `place`, 0 the centre and 1 the surface [1].

    Valid for Fo from about 0.001 with 40 terms. Example: wall, Bi = 1, Fo = 0.5, centre: 0.77253.
    """
    zeta = np.array(roots(shape, bi, terms))
    parts = coefficients(shape, zeta) * np.exp(-(zeta**2) * fo) * _mode(shape, zeta * place)
    return float(parts.sum())


def _mode(shape: Shape, angle: Array) -> Array:
    if shape is Shape.WALL:
        return np.cos(angle)
    if shape is Shape.CYLINDER:
        return np.asarray(j0(angle))
    return np.sinc(angle / pi)


def short_cylinder_theta(bi: tuple[float, float], fo: tuple[float, float], terms: int = 40) -> float:
    """Theta at the centre of a cylinder of finite length: the wall's theta times the long cylinder's [1].

    Both pairs are (wall, cylinder): over the half-length and over the radius. Example: Bi = (1, 1), Fo = (0.5, 0.5):
    0.77253 x 0.54866 = 0.42386.
    """
    wall = series_theta(Shape.WALL, bi[0], fo[0], terms=terms)
    return wall * series_theta(Shape.CYLINDER, bi[1], fo[1], terms=terms)


def lumped_seconds(tau_s: float, start_c: float, around_c: float, end_c: float) -> float:
    """Seconds for a body with one temperature to go from `start_c` to `end_c` in surroundings of `around_c` [1].

    `tau_s` is mass x heat capacity / (h x area) [s]. Valid for Bi below 0.1; `ValueError` for an end that it never
    meets. Example: tau 1 s, 25 to 199 degrees Celsius in 200: 5.16 s.
    """
    share = (end_c - around_c) / (start_c - around_c) if start_c != around_c else 0.0
    if not 0 < share <= 1:
        raise ValueError(f"a body at {start_c} °C in {around_c} °C never comes to {end_c} °C")
    return -tau_s * log(share)


def lumped_diameter_m(tau_s: float, film_w_m2k: float, density_kg_m3: float, heat_j_kgk: float) -> float:
    """Diameter [m] of the sphere whose lumped time constant is `tau_s`: D = 6 h tau / (density x heat capacity) [1].

    Example: h 400, tau 1 s, 8500 kg/m3, 400 J/kg K: 0.000706 m.
    """
    return 6 * film_w_m2k * tau_s / (density_kg_m3 * heat_j_kgk)
