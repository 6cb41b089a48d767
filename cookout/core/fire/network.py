"""A lidded iron oven as a network of heat: lid, wall, base, the air inside, and the food.

Lid, wall, base and food store heat; the air inside stores next to none (10 J/K beside 1,500 of the lid), so its
temperature is at every moment the one at which what comes in goes out. Arrays have a column for each influence that is
told apart (`influences`); rows are lid, wall, base, food.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from cookout.core.air import ZERO_C_IN_K, pressure_pa
from cookout.core.fire.heat import STEFAN_BOLTZMANN, base_coefficient, lid_coefficient, wall_coefficient
from cookout.core.fire.influences import Columns
from cookout.core.fire.iron import IRON_HEAT, OvenBuild, Surface
from cookout.core.fire.weather import Weather
from cookout.core.quantities import METRES_IN_INCH

Array = npt.NDArray[np.float64]

LID, WALL, BASE, FOOD = range(4)
USUAL_WIDE_M = 12 * METRES_IN_INCH


@dataclass(frozen=True, slots=True)
class OvenParams:
    """Numbers of the network.

    `lid_catch`, `catch_power`, `usual_food_w_m2` and `food_power` are set so that the chart of common practice is met
    at its own conditions; the rest are textbook values or our own choices, from memory, no source.

    lid_catch        share of the heat of coals on the lid that the iron of a 12-inch oven gets; 0.15 to 0.4
    catch_power      coals lie near the rim, and the wider the oven, the less of their heat misses it: the share goes
                     with this power of the width; 0.6 to 1.2
    under_catch      the same under the oven, as a multiple of it: heat rises, so a coal below does about as much as two
                     on top, which is why 2:1 bakes evenly; 1.6 to 2.4
    usual_food_w_m2  heat that a usual load of food takes while it bakes, and what look-ins let out, W for each m2 of
                     the base of a 12-inch oven; 3000 to 8000
    food_power       wider ovens hold deeper loads: the former goes with this power of the width; 0 to 1
    wall_share       share of the lower coals' heat that rises along the wall; 0.1 to 0.4
    black            emissivity of black iron; 0.85 to 0.95
    inner_w_m2_k     convection inside, W/(m2 K); 4 to 10
    lid_contact_w_mk heat through the lid's seat, W/K for each metre of rim; 1 to 6
    base_open        share of the base that loses heat, the rest facing coals and warm ground; 0.3 to 0.7
    stands_m         legs of a usual oven, coal room under it, m; 0.035 to 0.05
    metal, grate     heat from below on a metal sheet (it radiates back) and on an open grate, beside bare ground;
                     1.05 to 1.35 and 0.7 to 1
    sun_w_m2         sunshine on a level surface, W/m2; 400 to 950
    pot_wind         wind at the oven as a share of the forecast (which is for 10 m up in the open); 0.3 to 0.8
    strip_s_m        share of a coal's caught heat that wind carries off, for each m/s at the coal; 0.02 to 0.08
    pan_w_m2_k       food straight on the iron: contact, W/(m2 K); 30 to 150
    wet_w_m2         heat that boiling from the food's top takes, W/m2, at the boiling point; 1000 to 4000
    """

    lid_catch: float = 0.2285
    catch_power: float = 1.05
    under_catch: float = 2.0
    usual_food_w_m2: float = 6800.0
    food_power: float = 0.9
    wall_share: float = 0.25
    black: float = 0.9
    inner_w_m2_k: float = 6.0
    lid_contact_w_mk: float = 2.5
    base_open: float = 0.5
    stands_m: float = 0.04
    metal: float = 1.2
    grate: float = 0.85
    sun_w_m2: float = 700.0
    pot_wind: float = 0.5
    strip_s_m: float = 0.045
    pan_w_m2_k: float = 60.0
    wet_w_m2: float = 2000.0

    def from_below(self, stand: "Stand") -> float:
        """Heat from the coals below on that surface and height, beside bare ground and the oven's own legs.

        The gap at the rim lets heat out: it is caught by area of base over area of base and gap.
        """
        on = {Surface.GROUND: 1.0, Surface.METAL: self.metal, Surface.GRATE: self.grate}[stand.surface]
        wide = stand.oven.wide_m
        legs, high = self.stands_m, self.stands_m if stand.stand_m is None else stand.stand_m
        return on * (wide + 4 * legs) / (wide + 4 * high)

    def catches(self, stand: "Stand", wind: "Array") -> tuple[Array, Array]:
        """Shares of the heat of coals on the lid and under it that the iron gets, in `wind` m/s at the coals."""
        wide = (stand.oven.wide_m / USUAL_WIDE_M) ** self.catch_power
        lid = self.lid_catch * wide / (1 + self.strip_s_m * wind)
        return lid, lid * self.under_catch * self.from_below(stand)


OVEN = OvenParams()


@dataclass(frozen=True, slots=True)
class Stand:
    """Where an oven stands: on what, `stand_m` above it (None: its own legs), in what weather and elevation."""

    oven: OvenBuild
    weather: Weather = Weather()  # noqa: RUF009 - frozen
    surface: Surface = Surface.GROUND
    elevation_m: float = 0.0
    stand_m: float | None = None


@dataclass(frozen=True, slots=True)
class FoodLoad:
    """What is in the oven: `kg` of heat capacity `joules_kg_k`, `wide_m` across, at `start_c`, on a `trivet` or not.

    `cover` is how many times the top's own area takes part (pans of several foods); `wet` 0 for food that gives off no
    steam, 1 for batter.
    """

    kg: float
    wide_m: float
    joules_kg_k: float = 3000.0
    start_c: float = 21.0
    trivet: bool = False
    wet: float = 1.0

    @property
    def m2(self) -> float:
        """Area of its top."""
        return float(np.pi * self.wide_m**2 / 4)


class Outside:
    """Heat lost to the outside, in watts, for lid, wall and base; tabulated every 4 K, since every step asks for it."""

    LOW_K, HIGH_K, STEP_K = 230.0, 1400.0, 4.0

    def __init__(self, stand: Stand, columns: Columns, params: OvenParams) -> None:
        kelvin = np.arange(self.LOW_K, self.HIGH_K + self.STEP_K, self.STEP_K)[:, None]
        air, oven, pressure = stand.weather.air_c + ZERO_C_IN_K, stand.oven, pressure_pa(stand.elevation_m)
        wind = columns.pot_wind_mps[None, :]
        shine = params.black * STEFAN_BOLTZMANN * (kelvin**4 - air**4)
        rise = kelvin - air
        by_plate, wide = oven.plate_m2, oven.wide_m
        lid = (lid_coefficient(kelvin, air, wide, wind, pressure) * rise + shine) * by_plate
        wall = (wall_coefficient(kelvin, air, wide, wind, pressure, oven.depth_m) * rise + shine) * oven.wall_m2
        base = (base_coefficient(kelvin, air, wide, wind, pressure) * rise + shine) * by_plate * params.base_open
        sun = params.black * params.sun_w_m2 * by_plate if stand.weather.sunny else 0.0
        self._table = np.stack([lid, wall, base]) * columns.loss
        self._table[LID] -= sun
        self._flat = np.arange(3)[:, None], np.arange(len(columns.loss))[None, :]

    def __call__(self, kelvin: Array) -> Array:
        """Losses (3, columns) at those temperatures; beyond the table's ends on along its last slope."""
        place = (kelvin - self.LOW_K) / self.STEP_K
        below = np.clip(place.astype(np.intp), 0, self._table.shape[1] - 2)
        row, column = self._flat
        here = self._table[row, below, column]
        lost: Array = here + (place - below) * (self._table[row, below + 1, column] - here)
        return lost


@dataclass(frozen=True, slots=True)
class Flows:
    """Heat in watts at one moment: `net` into each node (4, columns), `lost` outside, `used` by steam, (columns)."""

    net: Array
    lost: Array
    used: Array
    air_k: Array


class Network:
    """The network of one oven on its stand, for all columns at once."""

    def __init__(self, stand: Stand, columns: Columns, params: OvenParams = OVEN, food: FoodLoad | None = None) -> None:
        oven = stand.oven
        self.params, self.stand, self.food = params, stand, food
        self.outside = Outside(stand, columns, params)
        self.areas = np.array([oven.plate_m2, oven.wall_m2, oven.plate_m2])[:, None]
        self.seat = params.lid_contact_w_mk * np.pi * oven.wide_m
        self.joint = oven.wall_to_base_w_k
        stored = [IRON_HEAT * kg for kg in oven.masses_kg]
        self.stores = np.array([*stored, food.kg * food.joules_kg_k if food else 1.0])[:, None]
        self.boils_pa = pressure_pa(stand.elevation_m)
        self.across = self._shine_factors()

    def _shine_factors(self) -> tuple[float, float]:
        """Radiation factors times area: lid to base past the food, and the wall to the other two."""
        covered = min(1.0, self.food.m2 / self.stand.oven.plate_m2) if self.food else 0.0
        mean = self.params.black / (2 - self.params.black)
        open_plate = self.stand.oven.plate_m2 * (1 - covered)
        return 0.7 * mean * open_plate, 0.5 * mean * self.stand.oven.wall_m2

    def inner_air(self, kelvin: Array, *, loaded: bool) -> Array:
        """Temperature of the air inside, in kelvin: the mean of what it touches, each by its area."""
        total = (self.areas * kelvin[:3]).sum(axis=0)
        area: float = float(self.areas.sum())
        if loaded and self.food:
            total = total + 2 * self.food.m2 * kelvin[FOOD]
            area += 2 * self.food.m2
        air: Array = total / area
        return air

    def flows(self, kelvin: Array, heat: Array, *, loaded: bool) -> Flows:
        """All heat flows at node temperatures (4, columns) with `heat` (3, columns) coming in from the coals."""
        air = self.inner_air(kelvin, loaded=loaded)
        lost = self.outside(kelvin[:3])
        net = np.zeros_like(kelvin)
        net[:3] = heat - lost - self.params.inner_w_m2_k * self.areas * (kelvin[:3] - air)
        for first, second, flow in self._between(kelvin):
            net[first] -= flow
            net[second] += flow
        used = np.zeros_like(air)
        if loaded and self.food:
            used = self._feed(net, kelvin, air, self.food)
        return Flows(net, lost.sum(axis=0), used, air)

    def _between(self, kelvin: Array) -> tuple[tuple[int, int, Any], ...]:
        """Heat that goes from iron to iron: through it, and across by radiation."""
        fourth = STEFAN_BOLTZMANN * kelvin[:3] ** 4
        straight, aside = self.across
        return (
            (LID, WALL, self.seat * (kelvin[LID] - kelvin[WALL]) + aside * (fourth[LID] - fourth[WALL])),
            (WALL, BASE, self.joint * (kelvin[WALL] - kelvin[BASE]) + aside * (fourth[WALL] - fourth[BASE])),
            (LID, BASE, straight * (fourth[LID] - fourth[BASE])),
        )

    def _feed(self, net: Array, kelvin: Array, air: Array, food: FoodLoad) -> Array:
        """Adds the heat that the food takes to `net`; what leaves it as steam."""
        fourth = STEFAN_BOLTZMANN * self.params.black * kelvin**4
        from_air = self.params.inner_w_m2_k * food.m2 * (air - kelvin[FOOD])
        top = food.m2 * (fourth[LID] - fourth[FOOD])
        below = food.m2 * (fourth[BASE] - fourth[FOOD])
        if not food.trivet:
            below = below + food.m2 * self.params.pan_w_m2_k * (kelvin[BASE] - kelvin[FOOD])
        net[LID] -= top
        net[BASE] -= below
        used = food.wet * self.params.wet_w_m2 * food.m2 * self._wetness(kelvin[FOOD])
        net[FOOD] = 2 * from_air + top + below - used
        steam: Array = used
        return steam

    def _wetness(self, kelvin: Array) -> Array:
        """Pressure of water vapour over the food beside that of the air, 1 at the boiling point.

        Magnus formula, within 1 in 100 from 0 to 100 degrees Celsius. Source: Alduchov, Eskridge (1996), equation 21.
        """
        celsius = np.clip(kelvin - ZERO_C_IN_K, 0.0, 160.0)
        vapour: Array = 610.94 * np.exp(17.625 * celsius / (celsius + 243.04)) / self.boils_pa
        return vapour

    def felt(self, kelvin: Array, *, loaded: bool) -> tuple[Array, Array]:
        """Temperatures in degrees Celsius that food meets from above and from below: iron and air by what they give."""
        air = self.inner_air(kelvin, loaded=loaded)
        return self._felt(kelvin[LID], air), self._felt(kelvin[BASE], air)

    def _felt(self, iron: Array, air: Array) -> Array:
        shines = 4 * self.params.black * STEFAN_BOLTZMANN * ((iron + air) / 2) ** 3
        mixed: Array = (shines * iron + self.params.inner_w_m2_k * air) / (shines + self.params.inner_w_m2_k)
        return mixed - ZERO_C_IN_K

    def usual_food(self) -> Array:
        """Heat drawn from lid, wall and base, in watts (3, 1), by a usual load: half from above, half from below."""
        oven = self.stand.oven
        deeper = (oven.wide_m / USUAL_WIDE_M) ** self.params.food_power
        drawn = self.params.usual_food_w_m2 * oven.plate_m2 * deeper
        taken: Array = np.array([[0.4], [0.2], [0.4]]) * drawn
        return taken
