"""Temperatures, lengths, speeds and elevations, read and shown.

Factors: NIST SP 811 (2008), Appendix B.8: inch 2.54 E-02 m, foot 3.048 E-01 m, mile an hour 4.4704 E-01 m/s,
kilometre an hour 2.777 778 E-01 m/s, knot 5.144 444 E-01 m/s.
"""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core import quantities
from cookout.core.errors import QuantityError

UNITS = st.sampled_from(["us", "metric"])


@pytest.mark.parametrize(
    ("text", "celsius"),
    [
        ("32 F", 0.0),
        ("212 °F", 100.0),
        ("-40F", -40.0),
        ("350 F", 176.6667),
        ("180 C", 180.0),
        (" 22.5 °c ", 22.5),
    ],
)
def test_a_temperature_is_read_in_celsius(text: str, celsius: float) -> None:
    assert quantities.parse_temperature(text) == pytest.approx(celsius, abs=1e-4)


@pytest.mark.parametrize(
    ("text", "metres"),
    [("12 in", 0.3048), ('12"', 0.3048), ("30 cm", 0.3), ("300mm", 0.3), ("1 ft", 0.3048), ("0.5 m", 0.5)],
)
def test_a_length_is_read_in_metres(text: str, metres: float) -> None:
    assert quantities.parse_length(text) == pytest.approx(metres, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "inches"),
    [("12 in", 12), ("30 cm", 12), ("20 cm", 8), ("25 cm", 10), ("35 cm", 14), ("40 cm", 16)],
)
def test_metric_names_of_ovens_mean_the_same_whole_inches(text: str, inches: int) -> None:
    assert quantities.parse_inches(text) == inches


@pytest.mark.parametrize(
    ("text", "metres_a_second"),
    [("1 mph", 0.44704), ("10 mph", 4.4704), ("5 m/s", 5.0), ("18 km/h", 5.0), ("1 kn", 0.5144444), ("0 mph", 0.0)],
)
def test_a_speed_is_read_in_metres_a_second(text: str, metres_a_second: float) -> None:
    assert quantities.parse_speed(text) == pytest.approx(metres_a_second, rel=1e-6)


@pytest.mark.parametrize(
    ("text", "metres"),
    [("1,200 ft", 365.76), ("1200 ft", 365.76), ("366 m", 366.0), ("-10 m", -10.0), ("1,234,567 ft", 376296.0216)],
)
def test_an_elevation_is_read_in_metres(text: str, metres: float) -> None:
    assert quantities.parse_elevation(text) == pytest.approx(metres, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "remedy"),
    [
        ("350", "write a number and its unit"),
        ("350 degrees", "write F or C"),
        ("hot", "write a number and its unit"),
        ("", "write a number and its unit"),
        ("1,5 C", "write a number and its unit"),
        ("-300 C", "check the number"),
        ("9" * 400 + " C", "write a number and its unit"),
    ],
)
def test_a_temperature_that_cannot_be_read_says_what_to_write(text: str, remedy: str) -> None:
    with pytest.raises(QuantityError, match=remedy):
        quantities.parse_temperature(text)


def test_a_length_with_the_unit_of_something_else_lists_the_units_of_lengths() -> None:
    with pytest.raises(QuantityError, match="use in, inch") as told:
        quantities.parse_length("12 mph")
    assert '"12 in" or "30 cm"' in str(told.value)


@pytest.mark.parametrize(("parse", "text"), [(quantities.parse_length, "-1 m"), (quantities.parse_speed, "-1 m/s")])
def test_below_zero_is_refused_where_nothing_can_be(parse: Callable[[str], float], text: str) -> None:
    with pytest.raises(QuantityError, match="without the minus sign"):
        parse(text)


def test_values_are_shown_in_the_units_of_the_person() -> None:
    assert quantities.show_temperature(176.6667, "us") == "350 °F"
    assert quantities.show_temperature(176.6667, "metric") == "177 °C"
    assert quantities.show_temperature(-0.2, "metric") == "0 °C"
    assert quantities.show_inches(12, "us") == "12 in"
    assert quantities.show_inches(12, "metric") == "30 cm"
    assert quantities.show_speed(3.6, "us") == "8 mph"
    assert quantities.show_speed(3.6, "metric") == "3.6 m/s"
    assert quantities.show_elevation(365.76, "us") == "1,200 ft"
    assert quantities.show_elevation(365.76, "metric") == "366 m"


@given(st.floats(-60, 500), UNITS)
def test_a_written_temperature_reads_back_exactly(celsius: float, units: str) -> None:
    assert quantities.parse_temperature(quantities.write_temperature(celsius, units)) == celsius


@given(st.floats(0, 150), UNITS)
def test_a_written_speed_reads_back_exactly(speed: float, units: str) -> None:
    assert quantities.parse_speed(quantities.write_speed(speed, units)) == speed


@given(st.floats(-500, 9000), UNITS)
def test_a_written_elevation_reads_back_exactly(metres: float, units: str) -> None:
    assert quantities.parse_elevation(quantities.write_elevation(metres, units)) == metres


@given(st.integers(-60, 600))
def test_whole_degrees_fahrenheit_are_written_as_they_were_read(fahrenheit: int) -> None:
    text = f"{fahrenheit} F"
    assert quantities.write_temperature(quantities.parse_temperature(text), "us") == text


@given(st.text(max_size=80))
def test_any_text_is_read_or_refused_with_a_remedy(text: str) -> None:
    for parse in (
        quantities.parse_temperature,
        quantities.parse_length,
        quantities.parse_speed,
        quantities.parse_elevation,
    ):
        assert isinstance(read_or_told(parse, text), float) or str(read_or_told(parse, text)).endswith(".")


def read_or_told(parse: Callable[[str], float], text: str) -> float | str:
    """The value, or what is told about the text."""
    try:
        return parse(text)
    except QuantityError as error:
        return str(error)
