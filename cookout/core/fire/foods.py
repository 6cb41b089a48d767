"""How foods conduct and hold heat, and when they are done.

Standing of the numbers, in words beside each food: batter and crumb follow one paper on cake baking (Journal of Food
Science, 1973; from memory); other doughs, fillings and meats are from memory, of the size that Choi and Okos's
composition formulas (1986, from memory) give; centre temperatures for doneness were read in non-official kitchen
sources for baked goods and in USDA-FSIS leaflets (mirrors) for meat. `vapour_w_mk` is our own fit: it carries what
steam moves through pores toward the cold centre, and is set so that layers bake as common practice has it.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Food:
    """A food as heat sees it. Depths are as poured or laid in; conduction is reckoned over that depth.

    density_kg_m3       raw; 400 to 1150
    heat_j_kgk          heat capacity, raw; 2000 to 4200
    moist_w_mk          conductivity while cool and moist; 0.2 to 0.7, more where it stirs itself
    vapour_w_mk         added by vapour in pores at boiling, falling to 0 at `BakeParams.vapour_from_c`; 0 to 2
    dry_w_mk            conductivity of crust past boiling; 0.05 to 0.3
    water_share         water by mass that can boil off; 0.3 to 0.9
    done_c              centre temperature when done, degrees Celsius
    spread              uncertainty of conductivity as a share; heat capacity is taken at a third of it; 0.05 to 0.4
    crumb_*             the same properties once baked and risen, for cooling
    simmer_minutes      least, usual and most minutes kept at `done_c` until tender; 0 where reaching it is enough
    loses_water         steam leaves by the top; no where the food is covered or its steam runs back
    standing            where the numbers are from
    """

    name: str
    density_kg_m3: float
    heat_j_kgk: float
    moist_w_mk: float
    vapour_w_mk: float
    dry_w_mk: float
    water_share: float
    done_c: float
    crumb_density_kg_m3: float
    crumb_heat_j_kgk: float
    crumb_w_mk: float
    standing: str
    spread: float = 0.15
    simmer_minutes: tuple[float, float, float] = (0.0, 0.0, 0.0)
    loses_water: bool = True

    def depth_m(self, mass_kg: float, diameter_m: float) -> float:
        """Depth [m] of `mass_kg` in a round vessel; 3 kg of stew in 0.28 m stand 0.047 m deep."""
        return mass_kg / (self.density_kg_m3 * 0.7853981633974483 * diameter_m**2)


_CAKE = "Journal of Food Science 1973, from memory; vapour part fitted by us to common practice"
_DOUGH = "from memory; vapour part fitted by us to common practice"
_WET = "from memory; conduction raised for the slow stirring of a simmer, our own estimate"
_MEAT = "conduction from memory; centre temperature USDA-FSIS (mirror), read"

FOODS: dict[str, Food] = {
    food.name: food
    for food in (
        Food("cake", 690, 2950, 0.22, 1.2, 0.12, 0.41, 96.0, 300, 2800, 0.12, f"{_CAKE}; done 93 to 99 C, read"),
        Food("carrot cake", 800, 2950, 0.25, 1.2, 0.13, 0.42, 93.5, 420, 2800, 0.15, f"{_CAKE}; done 93 C, read"),
        Food("quick bread", 800, 2900, 0.25, 1.2, 0.13, 0.42, 94.0, 400, 2800, 0.15, f"{_DOUGH}; done 93 C, read"),
        Food("enriched dough", 420, 2800, 0.25, 1.0, 0.10, 0.38, 88.0, 260, 2600, 0.11, f"{_DOUGH}; 85 to 90 C, read"),
        Food("lean bread", 450, 2900, 0.27, 1.0, 0.10, 0.43, 95.5, 260, 2700, 0.11, f"{_DOUGH}; 93 to 98 C, read"),
        Food("cornbread", 850, 2900, 0.28, 1.2, 0.13, 0.45, 94.0, 480, 2800, 0.17, f"{_DOUGH}; done temperature too"),
        Food(
            "cobbler",
            950,
            3500,
            0.50,
            0.6,
            0.20,
            0.65,
            93.0,
            900,
            3400,
            0.45,
            f"{_WET}; done from memory",
            0.25,
            (3.0, 6.0, 12.0),
        ),
        Food(
            "casserole",
            1000,
            3400,
            0.50,
            0.3,
            0.25,
            0.65,
            74.0,
            1000,
            3400,
            0.45,
            "conduction from memory; centre 74 C as USDA-FSIS says for casseroles (mirror), read",
            0.25,
            (5.0, 10.0, 20.0),
        ),
        Food(
            "potatoes",
            900,
            3500,
            0.50,
            0.5,
            0.25,
            0.78,
            93.0,
            900,
            3500,
            0.50,
            f"{_WET}; done from memory",
            0.25,
            (5.0, 10.0, 15.0),
        ),
        Food(
            "beans",
            1050,
            3700,
            2.0,
            0.0,
            0.5,
            0.70,
            95.0,
            1050,
            3700,
            0.6,
            f"{_WET}; cooked beans, simmer from memory",
            0.3,
            (30.0, 45.0, 90.0),
            loses_water=False,
        ),
        Food(
            "stew",
            1030,
            3700,
            3.0,
            0.0,
            0.5,
            0.80,
            93.0,
            1030,
            3700,
            0.6,
            f"{_WET}; simmer: common practice, no source",
            0.3,
            (60.0, 90.0, 150.0),
            loses_water=False,
        ),
        Food("fish", 1050, 3600, 0.50, 0.0, 0.3, 0.75, 63.0, 1050, 3600, 0.5, _MEAT, 0.15),
        Food("roast", 1050, 3450, 0.47, 0.0, 0.2, 0.70, 63.0, 1050, 3400, 0.45, _MEAT, 0.15),
        Food("poultry", 1040, 3500, 0.48, 0.0, 0.2, 0.72, 74.0, 1040, 3400, 0.45, _MEAT, 0.2),
        Food("ground meat", 1000, 3300, 0.42, 0.0, 0.2, 0.62, 71.0, 1000, 3200, 0.4, _MEAT, 0.2),
    )
}
