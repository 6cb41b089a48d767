"""Bodies with properties that stay, whose cooling and warming textbooks know, and the samples of baking tests."""

import numpy as np

from cookout.core.fire.baking import BakeCase
from cookout.core.fire.bodies import Around, Bodies

HEAT = 3.0e6  # J/(m3 K)
CONDUCTIVITY = 0.5  # W/(m K)


def plain(*, height_m: float, radius_m: float, ends_w_m2k: float, side_w_m2k: float, start_c: float = 80.0) -> Bodies:
    """A dry body that conducts evenly, in convection alone."""

    def each(value: float) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
        return np.array([value])

    return Bodies(
        height_m=each(height_m),
        radius_m=each(radius_m),
        heat_j_m3k=each(HEAT),
        moist=each(CONDUCTIVITY),
        vapour=each(0.0),
        dry=each(CONDUCTIVITY),
        vapour_from_c=each(40.0),
        boil_c=each(1000.0),
        plateau_k=each(1.0),
        pressure_pa=each(101325.0),
        film_top=each(ends_w_m2k),
        film_bottom=each(ends_w_m2k),
        film_side=each(side_w_m2k),
        glow_top=each(0.0),
        glow_bottom=each(0.0),
        glow_side=each(0.0),
        mass_film=each(0.0),
        dried=each(1.0),
        vapour_pa=each(0.0),
        crust_kg_m2=each(0.0),
        start_c=each(start_c),
    )


def still(celsius: float, count: int = 1) -> Around:
    """Surroundings of one temperature."""
    same = np.full((count, 1), celsius)
    return Around(same, same, same)


HOUSE = (168.0, 177.0, 186.0)  # a house oven set to 350 °F, and how it swings
WINDY = (230.0, 280.0, 330.0)  # a windy table: the coals burn hot


def layer(heat: tuple[float, float, float] = HOUSE, depth_m: float = 1.25 * 0.0254) -> BakeCase:
    """A cake layer 9 inches wide and about 1.25 inches deep."""
    return BakeCase(food="cake", pan_diameter_m=9 * 0.0254, depth_m=depth_m, above_c=heat, below_c=heat)
