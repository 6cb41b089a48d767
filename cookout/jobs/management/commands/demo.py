"""`python manage.py demo`: load the example events, plan them, say where to look, and serve."""

import socket
import sys
from argparse import ArgumentParser
from dataclasses import replace
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand
from django.core.servers.basehttp import get_internal_wsgi_application, run

from cookout.core.planning.result import Limits, Progress
from cookout.jobs import words
from cookout.jobs.arguments import within
from cookout.services import accounts, events, plan
from cookout.services.errors import AlreadyPlanningError
from cookout.store.mapping import record_of, refusal_of
from cookout.store.selectors.events import Event, get_event
from cookout.store.selectors.plan import PlanRun, last_run

EXAMPLES = ("supper", "demonstration", "festival")
PLANNER = "planner@cookout.example"
HOST = "127.0.0.1"
SILENT_MINUTES = 0.1


class Command(BaseCommand):
    """Shows the service with three example events; a second run keeps what was changed in the first."""

    help = (
        "Load three example events, plan those that have no plan yet, print where to look, and serve. What was changed "
        "since the last time stays. Exit codes: 0 all events have a plan; 1 one has none, or the port is taken."
    )

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Whether to serve and where, and how long to plan."""
        parser.add_argument("--no-serve", action="store_true", help="end once the events are planned")
        parser.add_argument(
            "--port", type=within(0, 65535, int), default=8000, help="port to serve on, on this machine alone"
        )
        parser.add_argument("--seconds", type=within(0.1, 3000, float), help="time for planning each event")

    def handle(self, *_args: Any, **options: Any) -> None:
        """Load, plan, tell, serve."""
        port = None if options["no_serve"] else options["port"]
        if port is not None:
            self._refuse_taken(port)
        call_command("migrate", verbosity=0, interactive=False)
        plan.end_silent_runs(silent_minutes=SILENT_MINUTES)
        owner = accounts.get_or_create_user(email=PLANNER)
        usual = plan.usual_limits()
        limits = replace(usual, seconds=options["seconds"] or usual.seconds)
        planned = [self._ready(file, owner.pk, limits) for file in self._files()]
        if port is not None:
            self._serve(port, accounts.make_demo_entry(user_id=owner.pk))
        elif not all(planned):
            sys.exit(1)

    def _files(self) -> list[Path]:
        return [settings.COOKOUT_EXAMPLES / f"{name}.toml" for name in EXAMPLES]

    def _ready(self, file: Path, owner_id: int, limits: Limits) -> bool:
        """Whether the example stands there with a plan, made now where it had none."""
        document = file.read_text(encoding="utf-8")
        event, _ = events.load_example(owner_id=owner_id, document=document, file_name=file.name)
        event = get_event(event_id=event.pk)
        if event.current is not None:
            self.stdout.write(f"{event.name}: revision {event.current.number} is there already and stays.")
            return True
        self.stdout.write(f"{event.name}: planning, for {limits.seconds:g} s at most.")
        run = self._planned(event, limits)
        return run is not None and self._told(run)

    def _planned(self, event: Event, limits: Limits) -> PlanRun | None:
        """The run that was carried out; None where another process is at it. One left waiting is taken up."""
        waiting = last_run(event_id=event.pk)
        if waiting is None or waiting.state != PlanRun.State.QUEUED:
            try:
                waiting = plan.queue_planning(event_id=event.pk, limits=limits, announce=False)
            except AlreadyPlanningError:
                self.stdout.write("  Another process is planning it.")
                return None
        return plan.run_planning(run_id=waiting.pk, tell=self._tell)

    def _tell(self, progress: Progress) -> None:
        self.stdout.write(f"  {words.progress_line(progress)}")
        self.stdout.flush()

    def _told(self, run: PlanRun) -> bool:
        """Says how the run ended; whether it ended in a plan. Only a plan that passed the check becomes a revision."""
        refused = refusal_of(run)
        if run.revision is not None:
            self.stdout.write(words.indented(words.outcome(record_of(run.revision))))
            self.stdout.write(f"  Checked and kept as revision {run.revision.number}.")
        elif refused is not None:
            self.stderr.write(words.indented(words.refusal(refused)))
        else:
            self.stderr.write(f"  {run.trouble or 'The run was ended before it had a plan.'}")
        return run.revision is not None

    def _refuse_taken(self, port: int) -> None:
        with socket.socket() as probe:
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                probe.bind((HOST, port))
            except OSError as error:
                self.stderr.write(f"Port {port} cannot be served on: {error.strerror}. Give another with --port.")
                sys.exit(1)

    def _serve(self, port: int, entry: str) -> None:
        """Serve on this machine until interrupted."""
        settings.COOKOUT_DEMO = True

        def bound(found: str) -> None:
            self.stdout.write("\nOpen this to look around; it signs you in while the demo runs:")
            self.stdout.write(f"  http://localhost:{found}/demo/enter/{entry}/")
            self.stdout.write("Interrupt (Ctrl-C) to end.")
            self.stdout.flush()

        try:
            run(HOST, port, get_internal_wsgi_application(), threading=True, on_bind=bound)
        except KeyboardInterrupt:
            self.stdout.write("\nEnded.")
