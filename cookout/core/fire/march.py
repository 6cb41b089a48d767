"""Heat and moisture marched through many round bodies at once.

A body is a short cylinder on a grid of radius and height. Its state is heat, counted in kelvin of moist food ("heat
degrees"), so that boiling is a plateau of the temperature and no jump of the equations:

    temperature     T(q) = min(q, Tb) + max(0, q - Tb - W),  W = latent heat of the water / heat capacity
    conduction      c dq/dt = div(k(T) grad T) = div grad Theta(T), Theta the integral of k (Kirchhoff)
    faces           film (T_around - T) + emissivity sigma (T_around^4 - T^4) - L x vapour leaving
    vapour leaving  (vapour density at the surface - in the oven) / (1 / film of mass + dried depth / D)

Finite volumes with nodes on the faces keep heat to rounding: what enters is stored, or leaves with vapour. Time goes by
Runge-Kutta-Legendre steps of second order [1], explicit, yet stable over steps of a dozen plain ones and more.

Arrays have the bodies last: (height, radius, body). Units are SI, temperatures degrees Celsius.

Sources:
[1] Meyer, Balsara, Aslam: A stabilized Runge-Kutta-Legendre method for explicit super-time-stepping of parabolic and
    mixed equations, Journal of Computational Physics 257 (2014), from memory; order and stability are tested.
[2] Incropera, DeWitt, Bergman, Lavine: Fundamentals of Heat and Mass Transfer, 6th edition (2007), section 6.7 (heat
    and mass analogy), from memory.
"""

from functools import lru_cache

import numpy as np
from scipy.constants import sigma

from cookout.core.air import ZERO_C_IN_K
from cookout.core.fire.bodies import Array, Bodies, Grid, Places, grid

LATENT_J_KG = 2.26e6
VAPOUR_GAS_J_KGK = 461.5
# Clausius-Clapeyron from the local boiling point; within 1 % of steam tables from 50 to 100 degrees Celsius.
VAPOUR_SLOPE_K = 5060.0


@lru_cache(maxsize=16)
def _from_faces(heights: int, radii: int) -> Array:
    """What faces do to a state, as a matrix of state rows by face rows.

    Face rows: heat in at the face nodes (top, bottom, side), then heat leaving with vapour at the top nodes.
    """
    mesh, nodes = grid(heights, radii), heights * radii
    faces = 2 * radii + heights
    matrix = np.zeros((nodes + radii + 2, faces + radii))
    for face, node in enumerate(face_nodes(heights, radii)):
        matrix[node, face] += mesh.ends if face < 2 * radii else mesh.rim
    matrix[:radii, faces:] = -mesh.ends * np.eye(radii)
    matrix[nodes : nodes + radii, faces:] = np.eye(radii)
    matrix[-2, :faces] = _face_shares(mesh)
    matrix[-1, faces:] = mesh.weights.sum(axis=0)
    return matrix


def face_nodes(heights: int, radii: int) -> Places:
    """Flat places of the face nodes: top, bottom, side."""
    flat = np.arange(heights * radii).reshape(heights, radii)
    return np.concatenate((flat[0], flat[-1], flat[:, -1]))


def _face_shares(mesh: Grid) -> Array:
    """What one heat degree a second at each face node brings to the whole body's mean."""
    disc, strip = mesh.weights.sum(axis=0), 2 * mesh.weights.sum(axis=1)
    return np.concatenate((disc, disc, strip))


class Equations:
    """What many bodies gain in `seconds` (each its own) at the pace of the moment; a pace a second for ones.

    A state stacks, by row and all in heat degrees [K]: the nodes (heights x radii, top row first); for each ring of the
    top the heat that left with vapour, over the height; heat that came in by the faces, over the whole body; heat that
    left with vapour, over the whole body.
    """

    def __init__(self, bodies: Bodies, nodes: tuple[int, int], seconds: Array) -> None:
        self.bodies, self.nodes, self.count = bodies, nodes, nodes[0] * nodes[1]
        self.mesh, self.from_faces = grid(*nodes), _from_faces(*nodes)
        self.face_nodes = face_nodes(*nodes)
        self.breathes = bool(bodies.mass_film.any())
        self._scale_inside(seconds)
        self._scale_faces(seconds)
        self._scale_vapour(seconds)
        self.faces = np.zeros((self.from_faces.shape[1], bodies.count))

    def _scale_inside(self, seconds: Array) -> None:
        bodies = self.bodies
        self.over_height = seconds / (bodies.heat_j_m3k * bodies.height_m**2)
        self.over_radius = seconds / (bodies.heat_j_m3k * bodies.radius_m**2)
        self.boils_off = bodies.boil_c + bodies.plateau_k
        self.vapour_part = bodies.vapour / (3 * (bodies.boil_c - bodies.vapour_from_c) ** 2)

    def _scale_faces(self, seconds: Array) -> None:
        bodies = self.bodies
        end, rim = seconds / (bodies.heat_j_m3k * bodies.height_m), seconds / (bodies.heat_j_m3k * bodies.radius_m)
        self.films = self._by_face(bodies.film_top * end, bodies.film_bottom * end, bodies.film_side * rim)
        glows = self._by_face(bodies.glow_top * end, bodies.glow_bottom * end, bodies.glow_side * rim)
        self.glows = glows * sigma

    def _scale_vapour(self, seconds: Array) -> None:
        bodies = self.bodies
        self.boil_inverse = VAPOUR_SLOPE_K / (bodies.boil_c + ZERO_C_IN_K)
        pace = LATENT_J_KG * bodies.mass_film * seconds / (bodies.heat_j_m3k * bodies.height_m * VAPOUR_GAS_J_KGK)
        self.vapour_full, self.vapour_oven = pace * bodies.pressure_pa, pace * bodies.vapour_pa
        self.held_back = bodies.mass_film / bodies.dried * self.gone_kg_m2

    def _by_face(self, top: Array, bottom: Array, side: Array) -> Array:
        heights, radii = self.nodes
        parts = zip((top, bottom, side), (radii, radii, heights), strict=True)
        return np.concatenate([np.broadcast_to(part, (count, part.size)) for part, count in parts])

    @property
    def gone_kg_m2(self) -> Array:
        """Water [kg/m2] that one heat degree in a ring's row stands for."""
        return self.bodies.heat_j_m3k * self.bodies.height_m / LATENT_J_KG

    def start(self) -> Array:
        """The state of bodies evenly at their start temperature."""
        state = np.zeros((self.from_faces.shape[0], self.bodies.count))
        state[: self.count] = self.bodies.start_c
        state[self.count : -2] = self.bodies.crust_kg_m2 / self.gone_kg_m2
        return state

    def axis_c(self, state: Array) -> Array:
        """Temperatures along the axis, top first, (height, body)."""
        return self.temperature(state[: self.count : self.nodes[1]])

    @property
    def core(self) -> slice:
        """The places on the axis, as a slice of the heights, that lie in the middle half, where a probe is put."""
        quarter = (self.nodes[0] - 1) // 4
        return slice(quarter, self.nodes[0] - quarter)

    def temperature(self, heat: Array) -> Array:
        """Temperatures of heat degrees."""
        return np.asarray(np.minimum(heat, self.bodies.boil_c) + np.maximum(heat - self.boils_off, 0.0))

    def stored(self, state: Array) -> Array:
        """Mean heat degrees of each body, what boiled off within included."""
        return np.asarray(self.mesh.weights.ravel() @ state[: self.count])

    def loss_kg_m3(self, state: Array) -> Array:
        """Water gone from each body, over its volume [kg/m3]: by the top, and boiled off within."""
        boiled = np.clip(state[: self.count] - self.bodies.boil_c, 0.0, self.bodies.plateau_k)
        within = self.mesh.weights.ravel() @ boiled
        return np.asarray((within + state[-1]) * self.bodies.heat_j_m3k / LATENT_J_KG)

    def held(self, around: tuple[Array, Array, Array]) -> Array:
        """What faces would take in from surroundings of (top, bottom, side) degrees Celsius at absolute zero."""
        kelvin = self._by_face(*around) + ZERO_C_IN_K
        return np.asarray(kelvin * (self.films + self.glows * kelvin**3))

    def gain(self, state: Array, held: Array, out: Array) -> None:
        """Write into `out` what the bodies gain; `held` is that of their surroundings."""
        heat = state[: self.count]
        wet = np.minimum(heat, self.bodies.boil_c)
        dry = np.maximum(heat - self.boils_off, 0.0)
        theta = self._potential(wet, dry)
        wet += dry
        kelvin = wet[self.face_nodes] + ZERO_C_IN_K
        lost = kelvin * kelvin
        lost *= kelvin
        lost *= self.glows
        lost += self.films
        lost *= kelvin
        np.subtract(held, lost, out=self.faces[: len(kelvin)])
        if self.breathes:
            self._breathe(kelvin[: self.nodes[1]], state[self.count : -2], self.faces[len(kelvin) :])
        np.dot(self.from_faces, self.faces, out=out)
        self._conduct(theta, out[: self.count])

    def _conduct(self, theta: Array, heat: Array) -> None:
        """Add to `heat` what conduction brings, over the height and over the radius."""
        heights, radii = self.nodes
        upright = np.dot(self.mesh.across, theta.reshape(heights, -1)).reshape(theta.shape)
        upright *= self.over_height
        heat += upright
        around = np.matmul(self.mesh.rings, theta.reshape(heights, radii, -1)).reshape(theta.shape)
        around *= self.over_radius
        heat += around

    def _potential(self, wet: Array, dry: Array) -> Array:
        rise = np.maximum(wet - self.bodies.vapour_from_c, 0.0)
        theta = rise * rise
        theta *= rise
        theta *= self.vapour_part
        theta += wet * self.bodies.moist
        theta += dry * self.bodies.dry
        return theta

    def _breathe(self, kelvin: Array, gone: Array, out: Array) -> None:
        """Vapour from the top takes its latent heat along; a dried layer holds it back."""
        drive = np.exp(np.minimum(self.boil_inverse - VAPOUR_SLOPE_K / kelvin, 0.0))
        drive *= self.vapour_full
        drive -= self.vapour_oven
        np.maximum(drive, 0.0, out=drive)
        drive /= kelvin
        drive /= gone * self.held_back + 1.0
        out[...] = drive


def plain_step_s(bodies: Bodies, nodes: tuple[int, int], hottest_c: Array) -> Array:
    """The longest stable step [s] of the plain explicit method: 2 over a bound of the fastest rate (Gershgorin)."""
    mesh = grid(*nodes)
    most = np.maximum(bodies.moist + bodies.vapour, bodies.dry)
    glow = 4 * sigma * (hottest_c + ZERO_C_IN_K) ** 3
    boiling = bodies.boil_c + ZERO_C_IN_K
    # A top that comes near boiling has dried, which holds back more than half of what a fresh one would give.
    slope = bodies.pressure_pa * VAPOUR_SLOPE_K / (2 * VAPOUR_GAS_J_KGK * boiling**3)
    inside = np.abs(np.diag(mesh.across)).max() / bodies.height_m**2
    inside = inside + np.abs(np.diag(mesh.rings)).max() / bodies.radius_m**2
    top = bodies.film_top + glow * bodies.glow_top + LATENT_J_KG * bodies.mass_film * slope
    ends = np.maximum(top, bodies.film_bottom + glow * bodies.glow_bottom) * mesh.ends / bodies.height_m
    side = (bodies.film_side + glow * bodies.glow_side) * mesh.rim / bodies.radius_m
    return np.asarray(2 * bodies.heat_j_m3k / (2 * most * inside + ends + side))


def rough_s(bodies: Bodies, hottest_c: Array) -> Array:
    """A rough time [s] that heat takes into each body, films and conduction in a row; for the choice of steps only."""
    glow = 4 * sigma * (hottest_c / 2 + ZERO_C_IN_K) ** 3 * (bodies.glow_top + bodies.glow_bottom)
    drive = np.maximum(hottest_c - 20.0, 40.0) / 80.0
    ends = (bodies.film_top + bodies.film_bottom + glow) / bodies.height_m
    outer = bodies.heat_j_m3k / ((ends + 2 * bodies.film_side / bodies.radius_m) * drive)
    return np.asarray(outer + bodies.heat_j_m3k * bodies.height_m**2 / (8 * (bodies.moist + bodies.vapour)))


@lru_cache(maxsize=8)
def _stages(count: int) -> tuple[float, tuple[Array, ...]]:
    """The weight of the first stage's gain, and for each later stage those of its five parts [1].

    The parts: state at the start, gain at the start, gain now, and the last two states, which take turns: the older of
    them gives its place to the new one.
    """
    b = [1 / 3, 1 / 3, *((j * j + j - 2) / (2 * j * (j + 1)) for j in range(2, count + 1))]
    w = 4 / (count * count + count - 2)
    rows = []
    for j in range(2, count + 1):
        mu, nu = (2 * j - 1) / j * b[j] / b[j - 1], -(j - 1) / j * b[j] / b[j - 2]
        last_two = (nu, mu) if j % 2 == 0 else (mu, nu)
        rows.append(np.array((1 - mu - nu, -(1 - b[j - 1]) * mu * w, mu * w, *last_two)))
    return b[1] * w, tuple(rows)


def reach(stages: int) -> float:
    """How many plain stable steps one step of so many stages spans [1]: 7 stages reach 13.5."""
    return (stages * stages + stages - 2) / 4


def step(equations: Equations, state: Array, held: Array, stages: int) -> Array:
    """The state after the equations' own seconds, by one Runge-Kutta-Legendre step of second order [1]."""
    first_weight, rows = _stages(stages)
    parts = np.empty((5, *state.shape))
    flat = parts.reshape(5, -1)
    start, first, gain, older, newer = parts
    start[...] = older[...] = state
    equations.gain(state, held, first)
    np.add(first * first_weight, state, out=newer)
    for weights in rows:
        equations.gain(newer, held, gain)
        older[...] = np.dot(weights, flat).reshape(state.shape)
        older, newer = newer, older
    return np.array(newer)
