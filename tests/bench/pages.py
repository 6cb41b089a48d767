"""How long the pages of the festival take at the server: `python -m tests.bench.pages`.

The baseline in the same run is reading the plan's record out of the database and nothing else, so that a slow machine
shows as one. Prints the median of seven for each page that takes nothing but the event.
"""

import os
import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROUNDS = 7
PLAN_SECONDS = 4.0
OFF = {"event-delete"}


def median_ms(work: Callable[[], object]) -> float:
    """The median of seven runs, after one that warms up."""
    work()
    taken = []
    for _ in range(ROUNDS):
        began = time.perf_counter()
        work()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken) * 1000


def main() -> None:
    """Set up a database of its own, plan the festival, fetch its pages."""
    import django

    django.setup()
    from django.conf import settings
    from django.core.management import call_command
    from django.test import Client
    from django.urls import reverse

    from cookout.core.planning.recordjson import from_json
    from cookout.core.planning.result import Limits
    from cookout.services import accounts, events, plan
    from cookout.store.models import Event, Revision
    from cookout.web.urls import urlpatterns

    settings.ALLOWED_HOSTS.append("testserver")
    call_command("migrate", verbosity=0)
    owner = accounts.create_user(email="owner@bench.example")
    file = Path(settings.COOKOUT_EXAMPLES) / "festival.toml"
    event = events.create_event(owner_id=owner.pk, document=file.read_text(encoding="utf-8"), file_name=file.name)
    limits = Limits(seconds=PLAN_SECONDS, workers=2, seed=1)
    plan.run_planning(run_id=plan.queue_planning(event_id=event.pk, limits=limits, announce=False).pk)
    event = Event.objects.get(pk=event.pk)
    base = median_ms(lambda: from_json(Revision.objects.get(event=event, number=1).payload))
    print(f"{'baseline: read the record':32s} {base:7.1f} ms")
    client = Client()
    client.force_login(owner)
    for pattern in urlpatterns:
        if list(pattern.pattern.converters) != ["event"] or str(pattern.name) in OFF:
            continue
        address = reverse(str(pattern.name), args=[event.public_id])
        answer = client.get(address)
        if answer.status_code == 200:
            taken = median_ms(lambda address=address: client.get(address))  # type: ignore[misc]
            size = len(answer.content) / 1000
            print(f"{pattern.name:32s} {taken:7.1f} ms  {taken / base:5.1f} times the baseline  {size:7.1f} kB")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory(prefix="cookout-bench-") as folder:
        os.environ.update(DJANGO_SETTINGS_MODULE="config.settings", COOKOUT_VAR_DIR=folder, COOKOUT_LOG_LEVEL="ERROR")
        main()
