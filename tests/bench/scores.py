"""Outcomes judged against what is known, and summed up set by set."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import fmean
from typing import Any

from cookout.core.planning.result import Limits, Status
from tests.bench.outcome import SETTLED, Outcome
from tests.bench.published import Best, Instance
from tests.outside.reading import faults_of, makespan_of

HEADINGS = ("set", "engine", "count", "settled", "plans", "gap %", "gap ratio", "span ratio", "seconds", "wrong")


@dataclass(frozen=True, slots=True)
class Score:
    """An engine's outcome on an instance; `faults` are rules its plan breaks and claims that what is known refutes."""

    instance: Instance
    engine: str
    outcome: Outcome
    faults: tuple[str, ...]

    @classmethod
    def of(cls, instance: Instance, engine: str, outcome: Outcome) -> "Score":
        """Judge an outcome."""
        return cls(instance, engine, outcome, (*_broken_rules(instance, outcome), *_false_claims(instance, outcome)))

    @property
    def settled(self) -> bool:
        """Whether it was proved best or shown impossible."""
        return self.outcome.status in SETTLED

    @property
    def gap(self) -> float | None:
        """Per cent above the best known makespan; None where either is missing."""
        makespan, best = self.outcome.makespan, self.instance.best.makespan
        return None if makespan is None or best is None else 100 * (makespan - best) / best

    def line(self) -> str:
        """One line for the terminal."""
        outcome, best = self.outcome, self.instance.best
        known = "impossible" if best.impossible else f"best known {_dash(best.makespan)}"
        return (
            f"{self.instance.set:13} {self.instance.path.name:14} {self.engine:9} {outcome.status:12}"
            f" {_dash(outcome.bound):>5} ..{_dash(outcome.makespan):>5} {outcome.seconds:7.2f} s  ({known})"
        )


def table(scores: Sequence[Score], ours: str, theirs: str) -> str:
    """A row for each set and engine, and for sets with lags also all of them together.

    `gap ratio` is our mean gap over theirs, `span ratio` the mean of our makespans over theirs where both have one.
    """
    rows: list[tuple[str, ...]] = [HEADINGS]
    for name, chosen in _groups(scores):
        by_engine = {engine: [s for s in chosen if s.engine == engine] for engine in (ours, theirs)}
        for engine, own in by_engine.items():
            if own:
                ratios = _ratios(own, by_engine[theirs]) if engine == ours else ("", "")
                rows.append(_row(name, engine, own, ratios))
    widths = [max(len(row[column]) for row in rows) for column in range(len(HEADINGS))]
    return "\n".join("  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)) for row in rows)


def as_json(scores: Iterable[Score], limits: Limits) -> dict[str, Any]:
    """Everything that was measured, less the plans themselves."""
    return {
        "limits": {"seconds": limits.seconds, "workers": limits.workers, "seed": limits.seed},
        "results": [
            {
                "set": score.instance.set,
                "file": score.instance.path.name,
                "engine": score.engine,
                "status": score.outcome.status.value,
                "makespan": score.outcome.makespan,
                "bound": score.outcome.bound,
                "best_known_makespan": score.instance.best.makespan,
                "known_impossible": score.instance.best.impossible,
                "seconds": round(score.outcome.seconds, 3),
                "faults": list(score.faults),
            }
            for score in scores
        ],
    }


def _broken_rules(instance: Instance, outcome: Outcome) -> list[str]:
    if outcome.starts is None:
        return []
    broken = faults_of(instance.path, outcome.starts)
    true_makespan = makespan_of(instance.path, outcome.starts)
    if true_makespan != outcome.makespan:
        broken.append(f"makespan is {true_makespan}, not {outcome.makespan}")
    return broken


def _false_claims(instance: Instance, outcome: Outcome) -> list[str]:
    """Claims against what others know; a plan for an instance known to be impossible is one as well."""
    best: Best = instance.best
    claims = {
        f"{outcome.makespan} is under the known bound {best.lower}": _less(outcome.makespan, best.lower),
        f"bound {outcome.bound} is over a known makespan {best.makespan}": _less(best.makespan, outcome.bound),
        "proved best with a bound under its makespan": outcome.status is Status.PROVED_BEST
        and _less(outcome.bound, outcome.makespan),
        "called impossible, and is not": outcome.status is Status.IMPOSSIBLE and best.makespan is not None,
        "has a plan, and is known to be impossible": outcome.makespan is not None and best.impossible,
    }
    return [claim for claim, made in claims.items() if made]


def _groups(scores: Sequence[Score]) -> list[tuple[str, list[Score]]]:
    """Scores by set, in the order they came; those with lags once more as one."""
    names = dict.fromkeys(score.instance.set for score in scores)
    groups = [(name, [s for s in scores if s.instance.set == name]) for name in names]
    with_lags = [s for s in scores if s.instance.path.suffix == ".sch"]
    return [*groups, ("all with lags", with_lags)] if with_lags else groups


def _row(name: str, engine: str, scores: Sequence[Score], ratios: tuple[str, str]) -> tuple[str, ...]:
    gaps = [score.gap for score in scores if score.gap is not None]
    settled = sum(score.settled for score in scores)
    return (
        name,
        engine,
        str(len(scores)),
        f"{settled} ({settled / len(scores):.0%})",
        str(sum(score.outcome.makespan is not None for score in scores)),
        f"{fmean(gaps):.2f}" if gaps else "-",
        *ratios,
        f"{fmean(score.outcome.seconds for score in scores):.2f}",
        str(sum(bool(score.faults) for score in scores)),
    )


def _ratios(ours: Sequence[Score], theirs: Sequence[Score]) -> tuple[str, str]:
    """Of mean gaps and of makespans, over the instances for which both have a plan."""
    others = {score.instance.path: score for score in theirs}
    pairs = [(s, others[s.instance.path]) for s in ours if s.instance.path in others]
    spans = [a.outcome.makespan / b.outcome.makespan for a, b in pairs if a.outcome.makespan and b.outcome.makespan]
    gaps = [(a.gap, b.gap) for a, b in pairs if a.gap is not None and b.gap is not None]
    mine, yours = sum(gap for gap, _ in gaps), sum(gap for _, gap in gaps)
    gap_ratio = f"{mine / yours:.2f}" if yours else ("same" if mine == yours and gaps else "-")
    return gap_ratio, f"{fmean(spans):.4f}" if spans else "-"


def _less(first: int | None, second: int | None) -> bool:
    return first is not None and second is not None and first < second


def _dash(number: int | None) -> str:
    return "-" if number is None else str(number)
