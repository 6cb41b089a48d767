"""What a safety check finds: what is wrong, what to do, and the rule that says so."""

from dataclasses import dataclass
from enum import StrEnum

from cookout.core.safety.rules import Rule, Standing


class Severity(StrEnum):
    """How much it matters: to know, to mind, or not to be done at all."""

    NOTE = "note"
    WARNING = "warning"
    REFUSED = "refused"

    @property
    def rank(self) -> int:
        """0 for a note, 2 for what is refused; nothing found counts as -1 (`rank_of`)."""
        return list(Severity).index(self)


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing found before the event.

    `about` is a dish or "site"; `rule` is what says so and `also` the other codes that, each by its own numbers, say
    the same; `minute` counts from the start of the path where there is one; `standing` tells how well a figure without
    a rule is founded.
    """

    about: str
    severity: Severity
    text: str
    remedy: str
    rule: Rule | None = None
    also: tuple[Rule, ...] = ()
    minute: float | None = None
    standing: Standing | None = None

    @property
    def said(self) -> str:
        """The text with the sections that say so, as it is shown to people."""
        cited = "; ".join(str(rule) for rule in self.rules)
        known = cited or (self.standing.value if self.standing else "")
        return f"{self.text} ({known})" if known else self.text

    @property
    def rules(self) -> tuple[Rule, ...]:
        """Every rule that is cited, the code in use first."""
        return (() if self.rule is None else (self.rule,)) + self.also


def rank_of(finding: Finding | None) -> int:
    """How bad it is, for comparing: -1 where nothing was found."""
    return -1 if finding is None else finding.severity.rank


def worst_first(findings: list[Finding]) -> tuple[Finding, ...]:
    """The findings, refused before warnings before notes; otherwise as they came."""
    return tuple(sorted(findings, key=lambda finding: -finding.severity.rank))


def show_minutes(minutes: float) -> str:
    """Minutes as people say them, never shorter than they are: ``45 min``, ``3 h``, ``2 h 30 min``."""
    whole = -int(-minutes // 1)
    hours, rest = divmod(whole, 60)
    if hours == 0:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"
