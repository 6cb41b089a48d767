"""How planning stands, in words."""

from dataclasses import dataclass

from django.utils.translation import gettext

from cookout.core.planning.record import PlanRecord
from cookout.core.planning.result import Status
from cookout.services import pictures
from cookout.store.selectors.events import Event
from cookout.store.selectors.plan import PlanRun, refusal_of
from cookout.web.reading.status import AIMS, HEADLINES, MEANINGS, Words, worth


@dataclass(frozen=True, slots=True)
class RunPanel:
    """A run for reading.

    `values` are (aim, minutes) of the best plan so far. `refusal` is why there is no plan; its ways out can be taken
    only while the event is as it was (`offers`).
    """

    run: PlanRun
    stage: str
    found: int
    seconds: float
    values: tuple[tuple[Words, str], ...]
    refusal: PlanRecord | None
    offers: bool
    headline: Words
    meaning: Words
    outline: str
    stands: bool

    @property
    def is_trial(self) -> bool:
        """Whether it is tried beside the plan, and not to be the plan at once."""
        return self.run.purpose == self.run.Purpose.TRIAL

    @property
    def is_stale(self) -> bool:
        """Whether it is a trial of an event that has changed since."""
        return self.is_trial and not self.stands

    @property
    def may_apply(self) -> bool:
        """Whether its ways out still belong to the event as it is."""
        return self.stands if self.is_trial else self.offers

    @property
    def waits(self) -> bool:
        """Whether it is a trial that found a plan and waits to be kept or dropped."""
        done = self.run.state == self.run.State.DONE and self.refusal is None
        return self.is_trial and done and self.run.settled_at is None

    @property
    def comes_first(self) -> bool:
        """Whether it matters more than the plan that stands there."""
        return (
            self.waits
            or self.run.is_active
            or self.run.state == self.run.State.FAILED
            or (self.refusal is not None and self.offers)
        )


def run_panel_of(run: PlanRun | None, event: Event) -> RunPanel | None:
    """The newest run for reading, or None where nothing was ever run."""
    if run is None:
        return None
    progress = run.progress
    refusal = refusal_of(run)
    status = Status.NONE_FOUND if refusal is None else refusal.status
    return RunPanel(
        run=run,
        stage=str(progress.get("stage", "")).replace("_", " "),
        found=int(progress.get("found", 0)),
        seconds=float(progress.get("seconds", 0.0)),
        values=tuple((_title(aim), worth(aim, int(value)) or "") for aim, value in progress.get("values", ())),
        refusal=refusal,
        offers=run.document == event.document,
        headline=HEADLINES[status],
        meaning=MEANINGS[status],
        outline=_outline(run) if run.is_active else "",
        stands=run.base_document == event.document and run.base_id == event.current_id,
    )


def _outline(run: PlanRun) -> str:
    return pictures.outline(stored=run.sketch, title=gettext("The best plan so far"), whole=gettext("everything"))


def _title(aim: str) -> Words:
    return AIMS[aim][0] if aim in AIMS else aim.replace("_", " ")
