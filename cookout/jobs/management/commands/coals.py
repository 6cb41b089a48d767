"""`python manage.py coals`: how many coals an oven wants, where they lie, and what the oven then does."""

from argparse import ArgumentParser, ArgumentTypeError
from collections.abc import Callable
from typing import Any

from django.core.management.base import BaseCommand, CommandError

from cookout.core.errors import QuantityError
from cookout.core.fire.charcoal import BRIQUETTES, LUMP
from cookout.core.fire.chart import LID_SHARE
from cookout.core.fire.iron import LEAST_INCHES, MOST_INCHES, OvenBuild, Surface
from cookout.core.fire.oven import Stand
from cookout.core.fire.weather import Weather
from cookout.core.quantities import (
    METRES_IN_INCH,
    Units,
    parse_elevation,
    parse_length,
    parse_speed,
    parse_temperature,
    show_temperature,
)
from cookout.jobs import coal_words
from cookout.jobs.arguments import within
from cookout.services.fire import CoalQuestion, answer_coals

LEAST_ABOVE_AIR_K = 15.0
HOTTEST_C = 350.0


def quantity(parse: Callable[[str], float], least: float, most: float, range_words: str) -> Callable[[str], float]:
    """A reader of quantities with units for the command line; what cannot be read is told with its remedy."""

    def read(text: str) -> float:
        try:
            value = parse(text)
        except QuantityError as error:
            raise ArgumentTypeError(str(error)) from error
        if not least <= value <= most:
            raise ArgumentTypeError(f'"{text}" is out of range; give {range_words}.')
        return value

    return read


_OVEN = quantity(
    lambda text: parse_length(text) / METRES_IN_INCH, LEAST_INCHES - 0.1, MOST_INCHES + 0.1, "5 to 24 in (13 to 61 cm)"
)
_TARGET = quantity(parse_temperature, 40.0, HOTTEST_C, "104 to 662 F (40 to 350 C)")
_AIR = quantity(parse_temperature, -40.0, 55.0, "-40 to 131 F (-40 to 55 C)")
_SPEED = quantity(parse_speed, 0.0, 25.0, "0 to 55 mph (0 to 25 m/s); in more wind no fire belongs outdoors")
_ELEVATION = quantity(parse_elevation, -500.0, 6000.0, "-1,600 to 19,600 ft (-500 to 6,000 m)")
_STAND = quantity(parse_length, 0.0, 0.5, "0 to 19 in (0 to 50 cm)")


class Command(BaseCommand):
    """Answers a question about coals; needs no database."""

    help = (
        "How many coals an oven wants on its lid and under it, with the band by the day, where they lie, when fresh "
        "ones are due, and its temperature over time. Exit codes: 0 an answer; 2 a wrong command line."
    )
    requires_system_checks = ()

    def add_arguments(self, parser: ArgumentParser) -> None:
        """The oven, the day, and what comes out."""
        parser.add_argument("--oven", type=_OVEN, required=True, help='width, as in "12in" or "30cm"')
        parser.add_argument("--deep", action="store_true", help="a deep oven, not a shallow one")
        parser.add_argument("--target", type=_TARGET, required=True, help='temperature, as in "350F" or "180C"')
        parser.add_argument("--method", choices=sorted(LID_SHARE), default="bake", help="how the coals are shared out")
        parser.add_argument("--fuel", choices=(BRIQUETTES, LUMP), default=BRIQUETTES)
        parser.add_argument("--minutes", type=within(10, 600, int), default=60, help="from laying coals to food out")
        parser.add_argument("--preheat", type=within(0, 120, int), default=10, help="minutes before the food goes in")
        parser.add_argument("--trivet", action="store_true", help="the food stands on a trivet in the oven")
        parser.add_argument("--surface", choices=[each.value for each in Surface], default=Surface.GROUND.value)
        parser.add_argument("--stand", type=_STAND, help="height above the surface, where not on its own legs")
        self._add_day(parser)
        parser.add_argument("--units", choices=[each.value for each in Units], default=Units.US.value)
        parser.add_argument("--json", action="store_true", help="print JSON and nothing else on standard output")

    def _add_day(self, parser: ArgumentParser) -> None:
        parser.add_argument("--air", type=_AIR, default=Weather().air_c, help='air, as in "70F" (the default)')
        parser.add_argument("--wind", type=_SPEED, default=0.0, help='wind, as in "10mph" or "4m/s"; default calm')
        parser.add_argument("--gust", type=_SPEED, help="gusts; never less than the wind")
        parser.add_argument("--sun", action="store_true", help="full sun on the oven")
        parser.add_argument("--elevation", type=_ELEVATION, default=0.0, help='as in "5,000ft" or "1500m"')

    def handle(self, *_args: Any, **options: Any) -> None:
        """Answer."""
        question = _question(options)
        answer = answer_coals(question=question)
        if options["json"]:
            self.stdout.write(coal_words.json_text(answer, options["units"]), ending="")
        else:
            self.stdout.write(coal_words.text(question, answer, options["units"]))


def _question(options: dict[str, Any]) -> CoalQuestion:
    """What the options ask, or `CommandError` where two of them do not fit."""
    wind, gust = options["wind"], options["wind"] if options["gust"] is None else options["gust"]
    if gust < wind:
        raise CommandError("--gust is below --wind: give gusts at least as strong as the wind.", returncode=2)
    if options["target"] < options["air"] + LEAST_ABOVE_AIR_K:
        least = show_temperature(options["air"] + LEAST_ABOVE_AIR_K, options["units"])
        raise CommandError(f"--target is hardly above --air: coals are for {least} or more here.", returncode=2)
    if options["preheat"] > options["minutes"]:
        raise CommandError("--preheat is longer than --minutes, which it is a part of: give less.", returncode=2)
    weather = Weather(air_c=options["air"], wind_mps=wind, gust_mps=gust, sunny=options["sun"])
    oven = OvenBuild(min(max(options["oven"], LEAST_INCHES), MOST_INCHES), options["deep"])
    stand = Stand(oven, weather, Surface(options["surface"]), options["elevation"], options["stand"])
    return CoalQuestion(
        stand,
        options["target"],
        options["method"],
        options["fuel"],
        options["minutes"],
        options["preheat"],
        options["trivet"],
    )
