"""Two people tick at the same moment, each with a connection of their own.

`python -m tests.services.ticking_at_once` does it in the database that the environment names, which is migrated, and
prints what is stored afterwards; a test runs it against PostgreSQL.
"""

import json
import os
import sys
import threading
from collections.abc import Callable

LINES = 40


def at_once(*jobs: Callable[[], None]) -> None:
    """Run the jobs in threads that start together; the first error of any of them is raised."""
    start, errors = threading.Barrier(len(jobs)), list[BaseException]()

    def run(job: Callable[[], None]) -> None:
        from django.db import connection

        try:
            start.wait(timeout=20)
            job()
        except BaseException as error:
            errors.append(error)
        finally:
            connection.close()

    threads = [threading.Thread(target=run, args=(job,)) for job in jobs]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(timeout=60)
    if errors:
        raise errors[0]


def tick_many(event_id: int, first: int, second: int) -> None:
    """One ticks every even line and line 0 as on hand, the other every odd line and line 0 as done."""
    from cookout.services.lists import set_tick

    def job(user_id: int, lines: range, state: str) -> Callable[[], None]:
        def tick() -> None:
            for line in (*lines, 0):
                set_tick(event_id=event_id, user_id=user_id, list_name="shopping", key=f"line-{line}", state=state)

        return tick

    at_once(job(first, range(2, LINES, 2), "on_hand"), job(second, range(1, LINES, 2), "done"))


def main() -> None:
    """Make two people and an event, let them tick, print the states by line."""
    import django

    django.setup()
    from cookout.store.models import Tick
    from tests.store.cast import OWNER, STRANGER, a_user, an_event

    owner, other = a_user(OWNER), a_user(STRANGER)
    event = an_event(owner)
    tick_many(event.pk, owner.pk, other.pk)
    json.dump(dict(Tick.objects.filter(event=event).values_list("key", "state")), sys.stdout)


if __name__ == "__main__":
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "config.settings")
    main()
