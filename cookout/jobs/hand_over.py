"""Hands a queued run to whoever carries it out: a worker where there is a broker, else a thread of this process."""

import logging
import threading
from typing import Any

from django.conf import settings
from django.db import connections

from cookout.jobs.tasks import carry_out_plan_run

logger = logging.getLogger(__name__)

THREAD_NAME = "plan-run-{}"

# Two runs at once on the same cores would both be slow and their bounds poor; the later one waits, shown as queued.
_one_at_a_time = threading.Lock()


def hand_over_run(run_id: int, **_signal: Any) -> None:
    """See to it that the run is carried out; returns at once."""
    if settings.COOKOUT_REDIS_URL:
        carry_out_plan_run.delay(run_id)
    else:
        threading.Thread(target=_carry_out_here, args=(run_id,), name=THREAD_NAME.format(run_id), daemon=True).start()


def _carry_out_here(run_id: int) -> None:
    """Run the task in this thread; what it could not end in its own row is logged, since nobody waits for it."""
    try:
        with _one_at_a_time:
            carry_out_plan_run.apply(args=(run_id,), throw=True)
    except Exception:
        logger.exception("planning run %s could not be carried out", run_id)
    finally:
        connections.close_all()
