"""Weather at the cooking place."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Weather:
    """Expected weather: air in degrees Celsius, wind and gust in m/s, relative humidity 0 to 1."""

    air_c: float = 21.0
    wind_mps: float = 0.0
    gust_mps: float = 0.0
    humidity: float = 0.5
    sunny: bool = False
