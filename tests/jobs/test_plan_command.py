"""`manage.py plan` tells all that there is to tell, and its exit code says how it went."""

import json
import os
import re
import subprocess
import sys
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
import vobject
from django.core.management import execute_from_command_line
from pypdf import PdfReader

from cookout.core.planning import pipeline
from cookout.core.planning.check import Breach
from cookout.core.planning.problem import TaskId
from cookout.core.planning.result import Status
from cookout.jobs.management.commands import plan as command
from tests.jobs import events
from tests.samples import sample_record_without_plan

LEVELS = ["lateness", "freshness", "crew_day", "fair_shares"]


def run_plan(*arguments: object) -> int:
    """Run the command in this process; its exit code."""
    try:
        execute_from_command_line(["manage.py", "plan", *(str(argument) for argument in arguments)])
    except SystemExit as ended:
        return int(ended.code or 0)
    return 0


def run_apart(folder: Path, *arguments: object) -> subprocess.CompletedProcess[str]:
    """Run the command in a process of its own, which keeps its things in the folder."""
    command = [sys.executable, "manage.py", "plan", *(str(argument) for argument in arguments)]
    variables = os.environ | {"COOKOUT_VAR_DIR": str(folder)}
    return subprocess.run(command, cwd=events.ROOT, env=variables, capture_output=True, text=True, check=False)


def without_seconds(printed: str) -> Any:
    """A printed plan but for how long it took."""
    return {key: value for key, value in json.loads(printed).items() if key != "seconds"}


def test_a_plan_is_told_with_status_levels_servings_and_timeline(capsys: pytest.CaptureFixture[str]) -> None:
    assert run_plan(events.SUPPER, "--seconds", 20) == 0
    said = capsys.readouterr()
    assert "The best plan there is, proved at every level" in said.out
    assert said.out.count("proved least") == len(LEVELS)
    assert "18:00 Supper for 8" in said.out
    for dish in ("Sausage and bean pot", "Peach cobbler", "Cucumber salad"):
        assert re.search(rf"{dish}: ready 1[78]:\d\d, on time", said.out)
    assert re.search(r"16:\d\d-16:\d\d Set up the fire place ", said.out)
    assert said.err == ""


def test_json_is_all_there_is_on_standard_output_and_no_database_is_made(tmp_path: Path) -> None:
    done = run_apart(tmp_path, events.SUPPER, "--json", "--seconds", 20)
    assert done.returncode == 0
    plan = json.loads(done.stdout)
    assert plan["status"] == "proved_best"
    assert [level["name"] for level in plan["levels"]] == LEVELS
    assert all(datetime.fromisoformat(task["starts_at"]).utcoffset() is not None for task in plan["tasks"])
    assert done.stderr == ""
    assert list(tmp_path.iterdir()) == []


def test_the_same_seed_with_one_worker_gives_the_same_plan(capsys: pytest.CaptureFixture[str]) -> None:
    printed = []
    for _ in range(2):
        assert run_plan(events.SUPPER, "--json", "--workers", 1, "--seed", 7, "--seconds", 30) == 0
        printed.append(without_seconds(capsys.readouterr().out))
    assert printed[0] == printed[1]


def test_every_fault_of_a_file_is_told_at_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run_plan(events.written(events.with_three_faults(), tmp_path), "--json") == 1
    said = capsys.readouterr()
    assert said.out == ""
    lines = said.err.strip().splitlines()
    assert len(lines) == 3
    assert all(line.startswith("changed.toml: ") for line in lines)
    assert all(word in said.err for word in ('gear[1].kind: "stove"', "servings[1].at: ", "nothing-like-it"))


@pytest.mark.parametrize("content", [None, b"\xff\xfe\x00", b"[event\n"], ids=["missing", "not UTF-8", "not TOML"])
def test_a_file_that_cannot_be_read_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], content: bytes | None
) -> None:
    path = tmp_path / "party.toml"
    if content is not None:
        path.write_bytes(content)
    assert run_plan(path) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert "party.toml" in said.err
    assert "Traceback" not in said.err


def test_an_impossible_event_tells_what_stands_in_the_way_and_ways_out_that_work(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run_plan(events.written(events.nobody_for_the_fire(), tmp_path), "--json", "--seconds", 5) == 3
    said = capsys.readouterr()
    plan = json.loads(said.out)
    assert plan["status"] == "impossible"
    assert plan["tasks"] == []
    assert plan["obstacles"]
    assert plan["ways_out"]
    for told in [*plan["obstacles"], *(way["text"] for way in plan["ways_out"])]:
        assert told in said.err


@pytest.mark.parametrize(
    "wrong",
    [
        ["--seconds", "0"],
        ["--seconds", "soon"],
        ["--workers", "0"],
        ["--workers", "1.5"],
        ["--seed", "-1"],
        ["--paper", "a3"],
        ["--fast"],
    ],
)
def test_a_wrong_command_line_ends_with_its_own_code(capsys: pytest.CaptureFixture[str], wrong: list[str]) -> None:
    assert run_plan(events.SUPPER, *wrong) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert wrong[0] in said.err


def test_a_folder_gets_sheets_calendars_and_the_plan(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = tmp_path / "papers" / "supper"
    assert run_plan(events.SUPPER, "--json", "--seconds", 20, "--out", folder) == 0
    printed = capsys.readouterr().out
    helpers = ("wren", "tobias", "juniper")
    sheets = {"run-sheet.pdf", "coal-plan.pdf", "wall.pdf", *(f"call-sheet-{name}.pdf" for name in helpers)}
    calendars = {"calendar.ics", *(f"calendar-{name}.ics" for name in helpers)}
    assert {path.name for path in folder.iterdir()} == {"plan.json", *sheets, *calendars}
    assert (folder / "plan.json").read_text(encoding="utf-8") == printed
    assert "Tobias Adair" in PdfReader(folder / "call-sheet-tobias.pdf").pages[0].extract_text()
    whole = vobject.readOne((folder / "calendar.ics").read_text(encoding="utf-8"))
    own = vobject.readOne((folder / "calendar-tobias.ics").read_text(encoding="utf-8"))
    tobias = [task for task in json.loads(printed)["tasks"] if "tobias" in task["helpers"]]
    assert len(own.vevent_list) == len(tobias) < len(whole.vevent_list) == len(json.loads(printed)["tasks"])


@pytest.mark.parametrize(("paper", "width"), [(None, 612), ("letter", 612), ("a4", 595)])
def test_sheets_go_with_the_units_or_the_paper_asked_for(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], paper: str | None, width: int
) -> None:
    asked = ["--paper", paper] if paper else []
    assert run_plan(events.SUPPER, "--seconds", 2, "--out", tmp_path, *asked) == 0
    assert f"Written to {tmp_path}: plan.json, run-sheet.pdf," in capsys.readouterr().out
    assert round(float(PdfReader(tmp_path / "run-sheet.pdf").pages[0].mediabox.width)) == width


def test_a_folder_that_cannot_be_written_to_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    taken = tmp_path / "taken"
    taken.write_text("a file stands here")
    assert run_plan(events.SUPPER, "--seconds", 2, "--out", taken) == 1
    assert "taken" in capsys.readouterr().err


def test_a_search_that_ends_without_an_answer_has_a_code_of_its_own(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """No event of ours takes the planner that long, so its answer is put in its place."""

    record = replace(sample_record_without_plan(), status=Status.NONE_FOUND, obstacles=(), ways_out=())
    monkeypatch.setattr(command, "plan_file", lambda **_: SimpleNamespace(record=record))
    assert run_plan(events.SUPPER, "--json") == 4
    said = capsys.readouterr()
    assert json.loads(said.out)["status"] == "none_found"
    assert "Give more time with --seconds" in said.err


def test_a_plan_that_its_check_refuses_is_not_shown(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    breach = Breach("gear", (TaskId("bake"),), "Two loaves are in one oven.")
    monkeypatch.setattr(pipeline, "check", lambda *_: (breach,))
    assert run_plan(events.SUPPER, "--seconds", 2) == 5
    said = capsys.readouterr()
    assert said.out == ""
    assert "Two loaves are in one oven." in said.err
