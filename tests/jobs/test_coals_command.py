"""`manage.py coals` answers with counts, pictures and times, or with what to write instead."""

import json
from typing import Any

import pytest
from django.core.management import execute_from_command_line

USUAL = ("--oven", "12in", "--target", "350F")


def run_coals(*arguments: str) -> int:
    """Run the command in this process; its exit code."""
    try:
        execute_from_command_line(["manage.py", "coals", *arguments])
    except SystemExit as ended:
        return int(ended.code or 0)
    return 0


def answered(capsys: pytest.CaptureFixture[str], *arguments: str) -> dict[str, Any]:
    """The JSON that the command prints, which is all that it prints."""
    assert run_coals(*USUAL, "--json", *arguments) == 0
    said = capsys.readouterr()
    assert said.err == ""
    answer: dict[str, Any] = json.loads(said.out)
    return answer


def test_the_usual_oven_is_told_with_its_pattern_top_up_and_curve(capsys: pytest.CaptureFixture[str]) -> None:
    assert run_coals(*USUAL, "--air", "70F") == 0
    said = capsys.readouterr().out
    assert "17 coals on the lid and 8 under for about 350 °F: 25 in all" in said
    assert said.count("●") == 25
    assert "30 min after laying: add 10 on the lid and 5 under, lit 5 min after the first are laid." in said
    assert "█" in said
    assert "60 min" in said
    assert "carbon monoxide" in said
    assert "no source" in said


def test_json_is_all_there_is_and_has_what_programs_want(capsys: pytest.CaptureFixture[str]) -> None:
    answer = answered(capsys)
    assert (answer["lid"], answer["under"]) == (17, 8)
    assert answer["least"] < 25 < answer["most"]
    assert answer["top_ups"] == [{"lit_minute": 5, "at_minute": 30, "lid": 10, "under": 5}]
    assert (len(answer["pattern"]["lid"]), len(answer["pattern"]["under"])) == (17, 8)
    assert answer["temperature_unit"] == "F"
    assert answer["above"]["least"] < answer["above"]["usual"] < answer["above"]["most"]
    assert answer["curve"][0] == {"minute": 0.0, "least": 69.8, "usual": 69.8, "most": 69.8}
    assert answer["curve"][-1]["minute"] == 60.0


def test_metric_units_are_shown_and_answered_where_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert answered(capsys, "--units", "metric")["temperature_unit"] == "C"
    assert run_coals("--oven", "30cm", "--target", "177C", "--units", "metric") == 0
    said = capsys.readouterr().out
    assert "177 °C" in said
    assert "°F" not in said


def test_the_day_and_the_place_change_the_answer(capsys: pytest.CaptureFixture[str]) -> None:
    usual = answered(capsys)
    windy = answered(capsys, "--wind", "15mph", "--gust", "25mph")
    assert windy["most"] - windy["least"] > usual["most"] - usual["least"]
    assert windy["top_ups"][0]["at_minute"] < usual["top_ups"][0]["at_minute"]
    assert windy["turn_every"] < usual["turn_every"]
    assert answered(capsys, "--surface", "metal")["under"] < usual["under"]
    assert answered(capsys, "--stand", "5in")["under"] > usual["under"]
    assert answered(capsys, "--elevation", "8,000ft")["most"] > usual["most"]
    assert answered(capsys, "--sun")["least"] <= usual["least"]
    assert answered(capsys, "--fuel", "lump")["lid"] < usual["lid"]
    assert answered(capsys, "--method", "fry")["lid"] == 0
    assert answered(capsys, "--deep")["most"] >= usual["most"]
    assert answered(capsys, "--minutes", "30")["top_ups"] == []
    assert answered(capsys, "--trivet", "--preheat", "0")["curve"] != usual["curve"]


@pytest.mark.parametrize(
    ("wrong", "remedy"),
    [
        (("--oven", "12"), "12 in"),
        (("--oven", "40in"), "5 to 24 in"),
        (("--target", "350"), "350 F"),
        (("--target", "900F"), "40 to 350 C"),
        (("--air", "warm"), "a number and its unit"),
        (("--air", "200F"), "-40 to 131 F"),
        (("--wind", "90mph"), "0 to 55 mph"),
        (("--wind", "10mph", "--gust", "5mph"), "at least as strong"),
        (("--elevation", "40000ft"), "19,600 ft"),
        (("--stand", "3ft"), "0 to 19 in"),
        (("--target", "110F", "--air", "100F"), "127 °F or more"),
        (("--minutes", "20", "--preheat", "30"), "give less"),
        (("--minutes", "5"), "from 10 to 600"),
        (("--surface", "sand"), "metal"),
    ],
)
def test_a_wrong_option_is_named_with_its_remedy(
    capsys: pytest.CaptureFixture[str], wrong: tuple[str, ...], remedy: str
) -> None:
    assert run_coals(*USUAL, *wrong) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert wrong[0] in said.err
    assert remedy in said.err


def test_oven_and_target_must_be_given(capsys: pytest.CaptureFixture[str]) -> None:
    assert run_coals("--oven", "12in") == 2
    assert "--target" in capsys.readouterr().err
