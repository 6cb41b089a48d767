"""The air at a height above the sea: its pressure, the density that goes with it, and where water boils in it.

Sources:
[1] NOAA, NASA, USAF: U.S. Standard Atmosphere, 1976. Washington 1976, equation 33a and table 4 (constants from memory;
    the results agree with the reference table computed with an independent library).
[2] IAPWS R7-97(2012): Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam, region 4,
    equation 31 and table 34.
"""

from math import sqrt

SEA_LEVEL_PA = 101_325.0
SEA_LEVEL_K = 288.15
LAPSE_K_M = 0.0065
GRAVITY = 9.80665
AIR_GAS_CONSTANT = 287.05287  # J/(kg K), of dry air
EARTH_RADIUS_M = 6_356_766.0
ZERO_C_IN_K = 273.15

# The troposphere of [1]; the standard table begins 5 km below the sea.
LOWEST_M, HIGHEST_M = -5000.0, 11_000.0

# Table 34 of [2], n1 to n10.
_N = (
    0.0,
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
)


def pressure_pa(elevation_m: float) -> float:
    """Standard air pressure, in pascals, at `elevation_m` metres above the sea.

    Valid from -5,000 to 11,000 m; `ValueError` outside. Weather moves the true pressure by about 3 in 100, which is
    1 degree Celsius of boiling point. Worked example: 1,524 m (5,000 ft) gives 84,311 Pa. Source: [1].
    """
    if not LOWEST_M <= elevation_m <= HIGHEST_M:
        raise ValueError(f"elevation must lie from {LOWEST_M:g} to {HIGHEST_M:g} m, not {elevation_m:g}")
    geopotential = EARTH_RADIUS_M * elevation_m / (EARTH_RADIUS_M + elevation_m)
    ratio = 1 - LAPSE_K_M * geopotential / SEA_LEVEL_K
    return float(SEA_LEVEL_PA * ratio ** (GRAVITY / (AIR_GAS_CONSTANT * LAPSE_K_M)))


def boiling_at_pressure_c(pressure: float) -> float:
    """The temperature, in degrees Celsius, at which water boils under `pressure` pascals.

    Valid from 611.213 Pa to 22.064 MPa; `ValueError` outside. Worked example of [2], table 36: 0.1 MPa, 372.7559 K.
    """
    if not 611.213 <= pressure <= 22.064e6:
        raise ValueError(f"pressure must lie from 611.213 Pa to 22.064 MPa, not {pressure:g} Pa")
    beta: float = (pressure / 1e6) ** 0.25
    e = beta * beta + _N[3] * beta + _N[6]
    f = _N[1] * beta * beta + _N[4] * beta + _N[7]
    g = _N[2] * beta * beta + _N[5] * beta + _N[8]
    d = 2 * g / (-f - sqrt(f * f - 4 * e * g))
    kelvin: float = (_N[10] + d - sqrt((_N[10] + d) ** 2 - 4 * (_N[9] + _N[10] * d))) / 2
    return kelvin - ZERO_C_IN_K


def boiling_c(elevation_m: float) -> float:
    """The temperature, in degrees Celsius, at which water boils at `elevation_m` metres above the sea.

    Range as for `pressure_pa`. Worked example: at 1,524 m (5,000 ft) 94.90 degrees Celsius. Sources: [1] and [2].
    """
    return boiling_at_pressure_c(pressure_pa(elevation_m))


def vapour_pressure_pa(celsius: float) -> float:
    """The pressure, in pascals, of water vapour over water at `celsius` degrees Celsius.

    Valid from 0 to 373.946 degrees; `ValueError` outside. Worked example of [2], table 35: 500 K gives 2.63890 MPa.
    """
    if not 0 <= celsius <= 373.946:
        raise ValueError(f"temperature must lie from 0 to 373.946 degrees Celsius, not {celsius:g}")
    kelvin = celsius + ZERO_C_IN_K
    theta = kelvin + _N[9] / (kelvin - _N[10])
    a = theta * theta + _N[1] * theta + _N[2]
    b = _N[3] * theta * theta + _N[4] * theta + _N[5]
    c = _N[6] * theta * theta + _N[7] * theta + _N[8]
    return float(1e6 * (2 * c / (-b + sqrt(b * b - 4 * a * c))) ** 4)


def air_density(celsius: float, elevation_m: float = 0.0) -> float:
    """Density of dry air, in kg/m3, at `celsius` degrees Celsius and the standard pressure of that elevation.

    An ideal gas; good to 1 in 1,000 from -50 to 1,000 degrees Celsius at these pressures (damp air is lighter by up to
    2 in 100). Worked example: 15 degrees at the sea, 1.225 kg/m3. Source: [1].
    """
    if celsius <= -ZERO_C_IN_K:
        raise ValueError(f"temperature must lie above absolute zero, not {celsius:g} degrees Celsius")
    return pressure_pa(elevation_m) / (AIR_GAS_CONSTANT * (celsius + ZERO_C_IN_K))
