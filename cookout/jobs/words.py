"""What the commands say in the terminal."""

from collections.abc import Iterator

from cookout.core.planning.record import PlannedLevel, PlanRecord
from cookout.core.planning.result import Progress, Status

STATUS_WORDS = {
    Status.PROVED_BEST: "the best plan there is, proved at every level",
    Status.BEST_FOUND: "the best plan found in the time given",
    Status.NONE_FOUND: "no plan found in the time given",
    Status.IMPOSSIBLE: "no plan is possible",
}

LEVEL_WORDS = {
    "lateness": "late at the table",
    "freshness": "food waiting beyond its best",
    "crew_day": "crew: first call to the end, and idle",
    "fair_shares": "work above an even share",
    "changes": "changed from the plan before",
}

SHORT_WORDS = {
    "lateness": "late",
    "freshness": "waiting food",
    "crew_day": "crew's day",
    "fair_shares": "above an even share",
    "changes": "changed",
}


def progress_line(progress: Progress) -> str:
    """A better plan in one line: when it was found, and what it costs on each level in minutes."""
    values = ", ".join(f"{SHORT_WORDS.get(aim.value, aim.value)} {value}" for aim, value in progress.values)
    return f"{progress.seconds:6.1f} s  {values}"


def outcome(record: PlanRecord) -> str:
    """Status, and the levels with their bounds."""
    return "\n".join((_status_line(record), *map(_level_line, record.levels)))


def indented(text: str) -> str:
    """The text with each line set in."""
    return "\n".join(f"  {line}" for line in text.splitlines())


def refusal(record: PlanRecord) -> str:
    """What stands in the way of a plan, and which ways out were tried and work."""
    lines = [f"{record.event_name}: {STATUS_WORDS[record.status]}."]
    if record.obstacles:
        lines += ["What stands in the way:", *_listed(record.obstacles)]
    if record.ways_out:
        lines += ["Ways out, each tried and found to give a plan:", *_listed(way.text for way in record.ways_out)]
    if record.status is Status.NONE_FOUND:
        lines.append("Give more time with --seconds, or ask less of the event.")
    return "\n".join(lines)


def _status_line(record: PlanRecord) -> str:
    return f"{STATUS_WORDS[record.status].capitalize()}, after {record.seconds:.1f} s:"


def _level_line(level: PlannedLevel) -> str:
    proof = "proved least" if level.value <= level.bound else f"at least {level.bound} min in any plan"
    return f"  {LEVEL_WORDS.get(level.name, level.name):<40}{level.value:>7} min  ({proof})"


def _listed(sentences: Iterator[str] | tuple[str, ...]) -> Iterator[str]:
    return (f"  - {sentence}" for sentence in sentences)
