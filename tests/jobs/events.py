"""The family supper of the fixtures, as it is and changed."""

import tomllib
from pathlib import Path
from typing import Any

import tomli_w

ROOT = Path(__file__).resolve().parents[2]
SUPPER = ROOT / "fixtures" / "events" / "supper.toml"


def supper() -> dict[str, Any]:
    """The supper's tables."""
    return tomllib.loads(SUPPER.read_text(encoding="utf-8"))


def written(tables: dict[str, Any], folder: Path, name: str = "changed.toml") -> Path:
    """The tables as a file in the folder."""
    path = folder / name
    path.write_text(tomli_w.dumps(tables), encoding="utf-8")
    return path


def nobody_for_the_fire() -> dict[str, Any]:
    """The supper, with everyone who may tend a fire there only when the food should be on the table."""
    tables = supper()
    for helper in tables["crew"]:
        if "fire" in helper["skills"]:
            helper["windows"] = ["17:50-19:30"]
    return tables


def with_three_faults() -> dict[str, Any]:
    """The supper with a gear kind, a time and a recipe that are wrong."""
    tables = supper()
    tables["gear"][0]["kind"] = "stove"
    tables["servings"][0]["at"] = "half past six"
    tables["dishes"][0]["recipe"] = "nothing-like-it"
    return tables
