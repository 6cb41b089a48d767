"""`python manage.py plan FILE`: plan an event file without storing anything."""

import sys
from argparse import ArgumentParser
from pathlib import Path
from shutil import get_terminal_size
from typing import Any, NoReturn

from django.core.management.base import BaseCommand
from django.utils import timezone

from cookout.core.errors import CookoutError, EventFileError
from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Limits, Progress, Status, Watch
from cookout.jobs import words
from cookout.jobs.arguments import within
from cookout.jobs.papers import json_text, write_papers
from cookout.services.paper import usual_paper
from cookout.services.plan import plan_file
from cookout.sheets import terminal_timeline

# 2 is what a wrong command line ends with.
EXIT_FILE = 1
EXIT_IMPOSSIBLE = 3
EXIT_NONE_FOUND = 4
EXIT_FAULT = 5
LEAST_WIDTH = 60


class Command(BaseCommand):
    """Plans an event file; needs no database."""

    help = (
        "Plan an event file: print the status, the levels with their bounds, the servings and the timeline. "
        "Exit codes: 0 a plan; 1 a file cannot be read or written (every fault is told); 2 a wrong command line; "
        "3 no plan is possible (with what stands in the way and ways out); 4 none found in the time given; "
        "5 a fault of the program."
    )
    requires_system_checks = ()

    def add_arguments(self, parser: ArgumentParser) -> None:
        """File, limits, and what comes out."""
        usual = Limits()
        parser.add_argument("file", type=Path, help="an event file (TOML)")
        parser.add_argument("--json", action="store_true", help="print JSON and nothing else on standard output")
        parser.add_argument("--seconds", type=within(0.1, 86400, float), default=usual.seconds, help="time for solving")
        parser.add_argument("--workers", type=within(1, 64, int), default=usual.workers, help="threads for solving")
        parser.add_argument("--seed", type=within(0, 2**31 - 1, int), default=usual.seed, help="seed of all chance")
        parser.add_argument("--out", type=Path, metavar="DIR", help="write sheets (PDF), calendars and JSON there")
        parser.add_argument("--paper", choices=("a4", "letter"), help="of the sheets; else what goes with the units")

    def handle(self, *_args: Any, **options: Any) -> None:
        """Plan, tell, and end with the exit code that says how it went."""
        limits = Limits(seconds=options["seconds"], workers=options["workers"], seed=options["seed"])
        record = self._planned(options["file"], limits)
        if options["json"]:
            self.stdout.write(json_text(record), ending="")
        elif record.tasks:
            self._show(record)
        if not record.tasks:
            code = EXIT_IMPOSSIBLE if record.status is Status.IMPOSSIBLE else EXIT_NONE_FOUND
            self._end(code, words.refusal(record))
        if options["out"]:
            self._write_papers(record, options)

    def _planned(self, file: Path, limits: Limits) -> PlanRecord:
        try:
            text = file.read_text(encoding="utf-8")
        except (OSError, UnicodeDecodeError) as error:
            self._end(EXIT_FILE, f"{file} cannot be read: {error}. Name a TOML file in UTF-8.")
        try:
            return plan_file(text=text, file_name=file.name, limits=limits, watch=Watch(tell=self._tell)).record
        except EventFileError as error:
            self._end(EXIT_FILE, str(error))
        except CookoutError as error:
            self._end(EXIT_FAULT, str(error))

    def _tell(self, progress: Progress) -> None:
        if self.stderr.isatty():
            self.stderr.write(words.progress_line(progress), style_func=str)

    def _show(self, record: PlanRecord) -> None:
        parts = (
            terminal_timeline(record, max(LEAST_WIDTH, get_terminal_size().columns)),
            words.outcome(record),
        )
        self.stdout.write("\n\n".join(part.strip("\n") for part in parts if part))

    def _write_papers(self, record: PlanRecord, options: dict[str, Any]) -> None:
        paper = options["paper"] or usual_paper(record)
        try:
            written = write_papers(record, options["out"], paper=paper, stamp=timezone.now())
        except OSError as error:
            self._end(EXIT_FILE, f"{options['out']} cannot be written to: {error}. Name another folder.")
        if not options["json"]:
            names = ", ".join(path.name for path in written)
            self.stdout.write(f"\nWritten to {options['out']}: {names}.")

    def _end(self, code: int, why: str) -> NoReturn:
        self.stderr.write(why)
        sys.exit(code)
