"""Runs published instances through our engine and beside it, on the same limits, through `pyjobshop`.

    python -m tests.bench.planning --instances DIR [--seconds 10] [--workers 2] [--seed 1] [--sets j30,j60]
                                   [--limit N] [--mirrored] [--only ours|pyjobshop] [--out FILE]

Prints a line for each instance as it is done and a table for each set at the end. Every plan is read a second time
against the file it came from; claims that what is known refutes are named, and end the run with status 1.
"""

import argparse
import json
import sys
from collections.abc import Sequence
from pathlib import Path

from cookout.core.planning.result import Limits
from tests.bench import ours
from tests.bench.outcome import Engine
from tests.bench.published import Instance, instances_in
from tests.bench.scores import Score, as_json, table
from tests.bench.theirs import theirs
from tests.outside.instances import read_instance

OURS, THEIRS = "ours", "pyjobshop"


def main(arguments: Sequence[str] | None = None) -> int:
    """The command; gives its exit status."""
    asked = _parser().parse_args(arguments)
    limits = Limits(seconds=asked.seconds, workers=asked.workers, seed=asked.seed)
    engines = _engines(asked.mirrored, asked.only)
    instances = list(instances_in(asked.instances, asked.sets, asked.limit))
    if not instances:
        print(f"no .sm or .sch files of those sets under {asked.instances}", file=sys.stderr)
        return 2
    scores: list[Score] = []
    for number, instance in enumerate(instances, start=1):
        for name, engine in engines.items():
            scores.append(_run(instance, name, engine, limits))
            print(f"{number:4}/{len(instances)} {scores[-1].line()}", flush=True)
    print(table(scores, OURS, THEIRS))
    if asked.out:
        asked.out.write_text(json.dumps(as_json(scores, limits), indent=1) + "\n", encoding="utf-8")
    wrong = [score for score in scores if score.faults]
    for score in wrong:
        print(f"WRONG {score.line()}: {'; '.join(score.faults)}")
    return 1 if wrong else 0


def _run(instance: Instance, name: str, engine: Engine, limits: Limits) -> Score:
    return Score.of(instance, name, engine(read_instance(instance.path), limits))


def _engines(backward: bool, only: str | None) -> dict[str, Engine]:
    engines: dict[str, Engine] = {OURS: ours.backward if backward else ours.forward, THEIRS: theirs}
    return engines if only is None else {only: engines[only]}


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m tests.bench.planning", description=__doc__.split("\n")[0])
    parser.add_argument("--instances", type=Path, required=True, help="folder with .sm and .sch files")
    parser.add_argument("--seconds", type=float, default=10.0, help="limit for each instance and engine")
    parser.add_argument("--workers", type=int, default=2, help="threads for each engine")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--sets", type=lambda text: tuple(text.split(",")), default=(), help="such as j30,ubo50")
    parser.add_argument("--limit", type=int, help="only the first so many of each set")
    parser.add_argument("--mirrored", action="store_true", help="our engine solves with time reversed")
    parser.add_argument("--only", choices=(OURS, THEIRS))
    parser.add_argument("--out", type=Path, help="write every result here as JSON")
    return parser


if __name__ == "__main__":
    sys.exit(main())
