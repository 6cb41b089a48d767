"""What README.md and DEVELOPERS.md say is what the code does."""

import re
from argparse import ArgumentParser
from importlib import import_module
from pathlib import Path

import pytest

from cookout.core.planning.recordjson import JSON_DOC
from cookout.jobs.management.commands import plan

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
COMMANDS = sorted(path.stem for path in (ROOT / "cookout/jobs/management/commands").glob("[!_]*.py"))
SET_UP = "python3 -m venv .venv && . .venv/bin/activate && pip install --quiet --constraint config/constraints.txt"


def options(command: str) -> set[str]:
    """The long options that the command adds to Django's own."""
    parser = ArgumentParser()
    import_module(f"cookout.jobs.management.commands.{command}").Command().add_arguments(parser)
    return set(re.findall(r"--[a-z][a-z-]+", parser.format_help())) - {"--help"}


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_and_each_of_its_options_is_in_the_readme(command: str) -> None:
    assert f"python manage.py {command}" in README
    assert {option for option in options(command) if f"`{option}`" not in README} == set()


def test_there_are_commands_to_look_for() -> None:
    assert COMMANDS == ["coals", "demo", "make_account", "plan"]
    assert {"--json", "--seconds", "--workers", "--seed", "--out"} < options("plan")


def test_the_readme_has_one_line_that_runs_and_one_that_tests() -> None:
    lines = [line for line in README.splitlines() if line.startswith("python3 -m venv")]
    assert lines == [
        f"{SET_UP} --editable . && python manage.py demo",
        f"{SET_UP} --editable '.[dev]' && python -m pytest",
    ]


def test_the_checks_take_the_test_line_from_the_readme() -> None:
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    found = re.search(r"grep -E '(\^python3.*?)' README\.md", script)
    assert found
    assert [line for line in README.splitlines() if re.search(found[1], line)] == [
        f"{SET_UP} --editable '.[dev]' && python -m pytest"
    ]


def test_the_readme_has_every_key_of_the_json() -> None:
    assert JSON_DOC in README


def test_every_exit_code_of_plan_is_in_the_readme() -> None:
    sentence = re.search(r"It ends with 0 for a plan.*?\.\n", README, re.DOTALL)
    assert sentence
    codes = {value for name, value in vars(plan).items() if name.startswith("EXIT_")}
    assert {int(number) for number in re.findall(r"\b\d\b", sentence[0])} == codes | {0, 2}


def test_every_runtime_dependency_has_its_reason() -> None:
    pyproject = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    listed = re.search(r"^dependencies = \[(.*?)^\]", pyproject, re.DOTALL | re.MULTILINE)
    assert listed
    names = re.findall(r'^    "([a-z][a-z0-9-]*)', listed[1], re.MULTILINE)
    table = re.search(r"\| runtime \| why \|\n(.*?)\n\n", DEVELOPERS, re.DOTALL)
    assert table
    assert len(names) > 10
    assert [name for name in names if not re.search(rf"^\|[^|]*\b{name}\b[^|]*\|", table[1], re.MULTILINE)] == []


def test_every_dependency_is_pinned() -> None:
    pins = (ROOT / "config" / "constraints.txt").read_text(encoding="utf-8").splitlines()
    assert pins[0].startswith("# ")
    assert [pin for pin in pins[1:] if not re.fullmatch(r"[A-Za-z0-9._-]+==[A-Za-z0-9.]+", pin)] == []
    pyproject = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    wanted = set(re.findall(r'^    "([a-z][a-z0-9-]+)[^"]*[<>]', pyproject, re.MULTILINE))
    assert len(wanted) > 20
    pinned = {pin.split("==")[0].lower().replace("_", "-") for pin in pins[1:]}
    assert wanted - pinned == set()


def test_decisions_are_numbered_in_their_order() -> None:
    numbers = [int(number) for number in re.findall(r"^### (\d+)\. ", DEVELOPERS, re.MULTILINE)]
    assert numbers == list(range(1, len(numbers) + 1))
    records = re.split(r"^### \d+\. .*$", DEVELOPERS.split("## Decisions")[1], flags=re.MULTILINE)[1:]
    assert [record.strip()[:60] for record in records if "Rejected:" not in record] == []
