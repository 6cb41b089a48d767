"""Ingredient lines: a corpus of what people write, and lines that must become questions."""

import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cookout.core.kitchen.ingredients import (
    LONGEST_LINE,
    Parsed,
    Question,
    parse_line,
    parse_lines,
    to_ingredient,
    write_line,
)
from cookout.core.kitchen.measures import Amount
from cookout.core.kitchen.rounding import write_amount

CORPUS = tomllib.loads((Path(__file__).parent / "ingredient_lines.toml").read_text(encoding="utf-8"))
SURE = [entry for entry in CORPUS["sure"] if not entry.get("unclear")]
UNCLEAR = CORPUS["unclear"] + [entry["line"] for entry in CORPUS["sure"] if entry.get("unclear")]
LEAST_SHARE = 0.97


def differences(entry: dict[str, Any], parsed: Parsed) -> list[str]:
    """The fields of a reading that are not as the corpus has them."""
    wanted: dict[str, Any] = {"unit": entry.get("unit", ""), "ingredient": entry["ingredient"]}
    found: dict[str, Any] = {"unit": parsed.unit, "ingredient": parsed.ingredient}
    if "note" in entry:
        wanted["note"], found["note"] = entry["note"], parsed.note
    if "each" in entry:
        number, unit = entry["each"].split()
        wanted["each"], found["each"] = Amount(float(number), unit), parsed.each
    for key in ("least", "most"):
        number = None if entry.get("to_taste") else entry.get(key, entry.get("amount"))
        wanted[key], found[key] = number if number is None else pytest.approx(number, abs=1e-5), getattr(parsed, key)
    return [f"{key}: {found[key]!r}" for key in wanted if found[key] != wanted[key]]


def test_nearly_every_line_of_the_corpus_is_read_right_and_none_is_read_wrong(
    record_property: Any, capsys: pytest.CaptureFixture[str]
) -> None:
    readings = [(entry, parse_line(entry["line"])) for entry in SURE]
    asked = [entry["line"] for entry, reading in readings if isinstance(reading, Question)]
    wrong = [
        f"{entry['line']!r} -> {found}"
        for entry, reading in readings
        if isinstance(reading, Parsed) and (found := differences(entry, reading))
    ]
    right = len(SURE) - len(asked) - len(wrong)
    record_property("lines", len(SURE))
    record_property("read_right", right)
    with capsys.disabled():
        print(f"\n{len(SURE)} lines: {right} read right, {len(asked)} asked about, {len(wrong)} wrong {asked}")
    assert wrong == []
    assert len(SURE) >= 150
    assert right / len(SURE) >= LEAST_SHARE


@pytest.mark.parametrize("line", UNCLEAR)
def test_a_line_with_two_readings_is_asked_about(line: str) -> None:
    reading = parse_line(line)
    assert isinstance(reading, Question), reading
    assert reading.ask


def test_a_question_says_what_is_unclear_and_what_to_write() -> None:
    question = parse_line("1,5 l milk")
    assert isinstance(question, Question)
    assert question.unclear == "1,5"
    assert "1.5" in question.ask


def test_a_measure_given_twice_is_kept_beside_the_first() -> None:
    parsed = parse_line("4 oz. cheese (about 1 cup)")
    assert isinstance(parsed, Parsed)
    assert parsed.also == (Amount(1.0, "cup"),)


def test_an_ingredient_of_a_recipe_keeps_range_and_size_in_its_note() -> None:
    ranged, canned, salt = parse_lines("2-3 Tbsp milk, warm\n\n2 (14 oz) cans tomatoes\nsalt to taste")
    assert isinstance(ranged, Parsed)
    assert isinstance(canned, Parsed)
    assert isinstance(salt, Parsed)
    assert to_ingredient(ranged).amount == 2.5
    assert to_ingredient(ranged).note == "warm, 2 to 3 Tbsp as written"
    assert to_ingredient(canned).note == "14 oz each"
    assert to_ingredient(salt).amount is None


def test_a_line_longer_than_any_ingredient_is_asked_about() -> None:
    assert isinstance(parse_line("1 cup " + "sugar " * LONGEST_LINE), Question)


@settings(deadline=None)
@given(st.text(max_size=80) | st.text("0123456789 ./,-½¼()xcuptsoz", max_size=40))
def test_any_text_is_read_or_asked_about(text: str) -> None:
    reading = parse_line(text)
    if isinstance(reading, Parsed) and reading.amount is not None:
        assert reading.amount.number > 0


NUMBERS = st.builds(
    lambda whole, part: whole + part, st.integers(0, 40), st.sampled_from([0.0, 0.25, 1 / 3, 0.5, 2 / 3, 0.75, 0.125])
).filter(lambda number: number > 0)
UNITS = st.sampled_from(["", "tsp", "Tbsp", "cup", "oz", "lb", "g", "kg", "mL", "L", "can", "bunch", "slice", "qt"])
NAMES = st.sampled_from(["flour", "brown sugar", "beef", "tomatoes", "olive oil", "rye bread"])
NOTES = st.sampled_from(["", "chopped", "peeled, diced", "at room temperature"])
SIZES_OF_ONE = st.none() | st.builds(Amount, st.sampled_from([6.0, 14.5, 400.0]), st.sampled_from(["oz", "g"]))


@settings(deadline=None)
@given(NUMBERS, NUMBERS, UNITS, NAMES, NOTES, SIZES_OF_ONE)
def test_what_is_written_is_read_back_the_same(
    low: float, high: float, unit: str, name: str, note: str, each: Amount | None
) -> None:
    least, most = min(low, high), max(low, high)
    size = each if unit == "can" else None
    written = write_line(Parsed("", name, least, most, unit, note, size))
    read = parse_line(written)
    assert isinstance(read, Parsed), (written, read)
    assert (read.unit, read.ingredient, read.note, read.each) == (unit, name, note, size), written
    assert read.least == pytest.approx(least, abs=1e-5)
    assert read.most == pytest.approx(most, abs=1e-5)


@settings(deadline=None)
@given(st.floats(0.001, 9000), st.sampled_from(["g", "kg", "mL", "L", "cup", "tsp", "lb"]))
def test_any_amount_written_is_read_back_within_its_last_digit(number: float, unit: str) -> None:
    read = parse_line(f"{write_amount(Amount(number, unit))} beef")
    assert isinstance(read, Parsed), read
    assert read.least == pytest.approx(number, abs=2e-6)
