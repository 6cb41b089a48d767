"""Plans the shipped events and made-up ones of growing size, and tells how long each stage takes.

    python -m tests.bench.events [--seconds 30] [--workers 2] [--seed 1] [--repeat 3] [--events NAME,NAME]
                                 [--sizes 50,150,500,1500] [--json FILE]

For each event: its tasks; seconds of expansion alone; seconds from handing over the event, expansion included, to the
first plan, to within 1 % of every level's final value, and to proof; each level's value and, where they do not meet,
its bound; peak memory of the process. Times and memory are
medians of the repeats, each of which runs in a process of its own; values are those of the last. Ends with status 1
where the independent check finds a breach in a plan, or a run fails.
"""

import argparse
import json
import subprocess
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from statistics import median
from typing import Any

FOLDER = Path(__file__).parents[2] / "fixtures" / "events"
HEADINGS = ("event", "tasks", "status", "expand", "first", "within 1 %", "proof", "total", "MiB", "levels")
GRACE_SECONDS = 120
NO_FINISH = "no finish"


def main(arguments: Sequence[str] | None = None) -> int:
    """The command; gives its exit status."""
    asked = _parser().parse_args(arguments)
    names = [*(str(FOLDER / f"{name}.toml") for name in asked.events), *map(str, asked.sizes)]
    runs: list[dict[str, Any]] = []
    bad = False
    print(line(HEADINGS), flush=True)
    for name in names:
        of_event = [_run(name, asked.seconds, asked.workers, asked.seed) for _ in range(asked.repeat)]
        runs += of_event
        print(line(row(of_event)), flush=True)
        for fault in sorted({fault for run in of_event for fault in run["faults"]}):
            bad = True
            print(f"  WRONG {fault}")
    if asked.json:
        asked.json.write_text(json.dumps(runs, indent=1) + "\n", encoding="utf-8")
    return 1 if bad else 0


def row(runs: Sequence[dict[str, Any]]) -> tuple[str, ...]:
    """The cells of an event from its repeats."""
    last = runs[-1]
    return (
        str(last["event"]),
        str(last["tasks"]),
        "/".join(dict.fromkeys(str(run["status"]) for run in runs)),
        *(_middle(runs, key) for key in ("expand_s", "first_s", "near_s", "proof_s", "total_s")),
        _middle(runs, "peak_mib", "{:.0f}".format),
        "  ".join(_level(*level) for level in last["levels"]),
    )


def line(cells: Sequence[str]) -> str:
    """Cells side by side at fixed widths, so that a line can be printed as soon as it is known."""
    widths = (22, 5, 12, 7, 7, 10, 7, 7, 5, 0)
    return "  ".join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True)).rstrip()


def _middle(runs: Sequence[dict[str, Any]], key: str, write: Callable[[float], str] = "{:.3f}".format) -> str:
    """The median of what was measured, a dash where fewer than half of the repeats came so far."""
    values = sorted(run[key] for run in runs if run[key] is not None)
    missing = len(runs) - len(values)
    return write(median([*values, *[float("inf")] * missing])) if len(values) > missing else "-"


def _level(name: str, value: int, bound: int) -> str:
    return f"{name} {value}" if value <= bound else f"{name} {value} (bound {bound})"


def _run(name: str, seconds: float, workers: int, seed: int) -> dict[str, Any]:
    """One repeat, in a process of its own; one that fails is a run with a fault."""
    command = [sys.executable, "-m", "tests.bench.one_event", name]
    command += ["--seconds", str(seconds), "--workers", str(workers), "--seed", str(seed)]
    ended = subprocess.run(command, capture_output=True, text=True, check=False, timeout=seconds + GRACE_SECONDS)
    if ended.returncode != 0:
        return _failed(name, ended.stderr.strip().splitlines()[-1] if ended.stderr.strip() else "no message")
    measured: dict[str, Any] = json.loads(ended.stdout)
    return measured


def _failed(name: str, why: str) -> dict[str, Any]:
    missing = dict.fromkeys(("expand_s", "first_s", "near_s", "proof_s", "total_s", "peak_mib"))
    event = Path(name).stem
    return {"event": event, "tasks": "-", "status": NO_FINISH, "levels": [], "faults": [f"{event}: {why}"], **missing}


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m tests.bench.events", description=__doc__.split("\n")[0])
    parser.add_argument("--seconds", type=float, default=30.0, help="limit for each solve")
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--repeat", type=int, default=3, help="times each event is planned")
    parser.add_argument("--events", type=_listed, default=["supper", "demonstration", "festival"])
    parser.add_argument("--sizes", type=_listed, default=["50", "150", "500", "1500"], help="tasks of made-up events")
    parser.add_argument("--json", type=Path, help="write every run here")
    return parser


def _listed(text: str) -> list[str]:
    return [word for word in text.split(",") if word]


if __name__ == "__main__":
    sys.exit(main())
