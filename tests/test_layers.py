"""The layout holds: who may import whom, and what stands at the top level."""

import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PYPROJECT = ROOT / "pyproject.toml"
CONTRACT = "[[tool.importlinter.contracts]]"
TOP_LEVEL = {"manage.py", "pyproject.toml", "README.md", "DEVELOPERS.md", "cookout", "config", "tests", "fixtures"}

LOOKS_IN_MODULES = """
import importlib, pkgutil, sys
import cookout.core

def failed(name):
    raise ImportError(name)

names = [found.name for found in pkgutil.walk_packages(cookout.core.__path__, "cookout.core.", onerror=failed)]
for name in names:
    importlib.import_module(name)
print(len(names))
tops = {name.split(".")[0] for name in sys.modules}
print(*sorted({"django", "celery", "redis", "icalendar", "typst", "config"} & tops))
print(*sorted({name for name in sys.modules if name.startswith("cookout.") and not name.startswith("cookout.core")}))
"""

BREACHES = {
    "core asks the framework": ("core/errors.py", "import django", "core knows no framework"),
    "core asks the queue": ("core/quantities.py", "import celery", "core knows no framework"),
    "core reaches up": ("core/kitchen/recipe.py", "import cookout.core.planning.event", "core has floors"),
    "kitchen asks the fire": ("core/kitchen/recipe.py", "import cookout.core.fire.weather", "core has floors"),
    "a page knows the solver's library": ("web/urls.py", "import ortools", "one folder knows the solver's library"),
    "the check asks the solver": (
        "core/planning/check/__init__.py",
        "import cookout.core.planning.solver",
        "the check reads the rules by itself",
    ),
    "a page asks a job": ("web/urls.py", "import cookout.jobs.tasks", "the house has floors"),
    "a job fetches rows by hand": (
        "jobs/tasks.py",
        "import cookout.store.models",
        "pages and jobs leave rows to the services",
    ),
    "a service sends to the queue": ("services/plan.py", "import celery", "only jobs know the queue"),
    "the store writes calendars": ("store/mapping.py", "import cookout.feeds", "the store shows nothing"),
    "a feed asks the framework": ("feeds/text.py", "import django", "what shows a plan knows no framework"),
    "a service reads the configuration": ("services/plan.py", "import config", "nothing reaches for the configuration"),
}


def lint_imports(folder: Path) -> subprocess.CompletedProcess[str]:
    """Run import-linter on the packages that lie in the folder."""
    program = "import sys; sys.path.insert(0, '.'); from importlinter.cli import lint_imports_command as run; run()"
    command = [sys.executable, "-c", program, "--no-cache"]
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the packages to break rules in."""
    shutil.copy(PYPROJECT, tmp_path)
    for name in ("cookout", "config"):
        shutil.copytree(
            ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__", "static", "templates")
        )
    return tmp_path


def test_every_layer_contract_is_kept() -> None:
    done = lint_imports(ROOT)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize(("file", "line", "contract"), BREACHES.values(), ids=BREACHES)
def test_a_breach_of_the_layers_is_noticed(copy: Path, file: str, line: str, contract: str) -> None:
    broken = copy / "cookout" / file
    broken.write_text(f"{broken.read_text(encoding='utf-8')}\n{line}\n", encoding="utf-8")
    done = lint_imports(copy)
    assert done.returncode == 1, done.stdout + done.stderr
    assert f"{contract} BROKEN" in done.stdout


def test_each_contract_says_its_reason() -> None:
    text = PYPROJECT.read_text(encoding="utf-8")
    lines = text.splitlines()
    heads = [at for at, line in enumerate(lines) if line == CONTRACT]
    assert [lines[at + 1] for at in heads if not lines[at - 1].startswith("# ")] == []
    assert len(heads) == len(tomllib.loads(text)["tool"]["importlinter"]["contracts"])


def test_all_of_core_is_imported_without_any_framework() -> None:
    done = subprocess.run(
        [sys.executable, "-c", LOOKS_IN_MODULES], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    count, frameworks, others = done.stdout.split("\n")[:3]
    assert int(count) > 30
    assert (frameworks, others) == ("", "")


def test_nothing_else_stands_at_the_top_level() -> None:
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert found == TOP_LEVEL
