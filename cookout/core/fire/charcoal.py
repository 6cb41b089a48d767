"""How charcoal behaves in time and how often an oven over coals is tended.

Every number is a setting with its meaning, unit, range and standing. Most are common practice with no source; the
times from lighting follow one log of one lit chimney (half black at 15 min, ashed at 25, near full heat to 45, falling
by 55, weak by 65), which is weak evidence, so the window for use ends while the coals are still near full heat.
"""

from dataclasses import dataclass

from cookout.core.fire.weather import Weather

BRIQUETTES = "briquettes"
LUMP = "lump"


@dataclass(frozen=True, slots=True)
class FiringTimes:
    """Minutes of one firing.

    light_minutes      hands-on: fill, light, see that it catches; 3 to 6; common practice, no source
    ash_over_minutes   from lighting to ashed over white; 20 to 30 (a county extension educator), 25 in one log
    full_heat_minutes  from lighting to the end of near full heat; 40 to 50 (one log)
    top_up_minutes     between laying coals and fresh coals; 25 to 40; common practice, no source
    """

    light_minutes: int = 4
    ash_over_minutes: int = 25
    full_heat_minutes: int = 45
    top_up_minutes: int = 30

    @property
    def ashing_minutes(self) -> int:
        """Minutes of waiting between the lit chimney and ashed-over coals."""
        return self.ash_over_minutes - self.light_minutes

    @property
    def window_minutes(self) -> int:
        """Minutes after ashing over in which the coals are fit to be laid."""
        return self.full_heat_minutes - self.ash_over_minutes


# Lump lights and fades sooner by most accounts (common practice, no source; one kitchen test found the contrary).
_TIMES = {
    BRIQUETTES: FiringTimes(),
    LUMP: FiringTimes(ash_over_minutes=18, full_heat_minutes=34, top_up_minutes=25),
}


def firing_times(fuel_kind: str) -> FiringTimes:
    """The times of a firing of ``briquettes`` or ``lump``; other fuel is timed as briquettes, the slower."""
    return _TIMES.get(fuel_kind, _TIMES[BRIQUETTES])


@dataclass(frozen=True, slots=True)
class Tending:
    """Minutes of work at an oven over coals, and how often it is done. All common practice, no source.

    lay_minutes            laying the coals under and on the lid; 3 to 6
    load_minutes           putting the food in; 1 to 3
    take_out_minutes       taking the food out, lid and ash cleared first; 2 to 4
    turn_minutes           oven a quarter turn one way, lid the other; 1 to 3
    look_in_minutes        lid up, a doneness check, lid down; 1 to 2
    top_up_work_minutes    adding fresh coals; 2 to 5
    turn_every_minutes     between turns in calm air; 10 to 15
    turn_every_windy       between turns in wind; 6 to 10
    windy_mps              wind, in m/s, above which turns come oftener; 6.7 (15 miles an hour)
    turn_play_minutes      a turn may come so much earlier or later; 2 to 4
    top_up_share           fresh coals as a share of the count laid; 0.4 to 0.6
    top_up_play_minutes    a top-up may come so much earlier or later; 3 to 5
    top_up_least_left      no top-up when the food is out within so many minutes; 5 to 15
    share_minutes          bakes whose coals are wanted within so many minutes may share a firing; 5 to 15
    chimney_coals          coals in a chimney whose size nobody gave; 50 to 100
    drown_minutes          water on the coals, stirring, water again; 10 to 20
    drown_within_minutes   from the last food due to drowned coals; 30 to 90
    """

    lay_minutes: int = 4
    load_minutes: int = 2
    take_out_minutes: int = 2
    turn_minutes: int = 2
    look_in_minutes: int = 1
    top_up_work_minutes: int = 3
    turn_every_minutes: int = 12
    turn_every_windy: int = 8
    windy_mps: float = 6.7
    turn_play_minutes: int = 3
    top_up_share: float = 0.5
    top_up_play_minutes: int = 4
    top_up_least_left: int = 10
    share_minutes: int = 10
    chimney_coals: int = 60
    drown_minutes: int = 10
    drown_within_minutes: int = 60

    def turn_interval(self, weather: Weather) -> int:
        """Minutes between turns: oftener in wind, which heats one side more than the other."""
        return self.turn_every_windy if weather.wind_mps > self.windy_mps else self.turn_every_minutes


TENDING = Tending()
