"""A plan as a table for other programs: comma-separated values as RFC 4180 has them."""

import csv
from io import StringIO

from cookout.core.planning.record import PlannedTask, PlanRecord

COLUMNS = (
    "task",
    "name",
    "kind",
    "dish",
    "starts_at",
    "ends_at",
    "minutes",
    "helpers",
    "gear",
    "hands_on",
    "hot",
    "slack_minutes",
    "live_in",
    "detail",
    "caution",
)
# What a spreadsheet would take for a formula is marked as text, so that a name cannot run anything.
RISKY = ("=", "+", "-", "@", "\t", "\r")


def plan_csv(record: PlanRecord) -> str:
    """One line a task in order of time, after one with the names of the columns; times in ISO 8601 with offset."""
    out = StringIO()
    writer = csv.writer(out)
    writer.writerow(COLUMNS)
    people = {helper.id: helper.name for helper in record.helpers}
    for task in sorted(record.tasks, key=lambda each: (each.starts_at, each.ends_at, each.id)):
        writer.writerow([_safe(cell) for cell in _cells(record, task, people)])
    return out.getvalue()


def _cells(record: PlanRecord, task: PlannedTask, people: dict[str, str]) -> list[str]:
    minutes = (task.ends_at - task.starts_at).total_seconds() / 60
    return [
        task.id,
        task.name,
        task.kind,
        record.dishes.get(task.dish, ""),
        task.starts_at.isoformat(),
        task.ends_at.isoformat(),
        str(round(minutes)),
        "; ".join(people.get(each, each) for each in task.helpers),
        "; ".join(task.units),
        "yes" if task.hands_on else "no",
        "yes" if task.hot else "no",
        str(task.slack_minutes),
        task.live_in,
        task.detail,
        task.caution,
    ]


def _safe(cell: str) -> str:
    return f"'{cell}" if cell.startswith(RISKY) else cell
