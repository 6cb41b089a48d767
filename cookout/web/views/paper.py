"""Paper: everything that can be printed of a plan, and the printing itself."""

from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET, require_POST

from cookout.core.planning.record import PlannedHelper, PlanRecord
from cookout.services import paper
from cookout.services.paper import Source
from cookout.sheets import Printing
from cookout.store.selectors.events import Event
from cookout.store.selectors.revisions import Revision
from cookout.web import answers, preferences
from cookout.web.forms.paper import SizeForm, WallForm
from cookout.web.guards import edited_plan, planned_helper, seen_plan, signed_in
from cookout.web.reading.drawn import drawn_words
from cookout.web.reading.paper import SHEETS, called_helpers, sheet_groups

Plan = tuple[Event, Revision, PlanRecord]


@require_GET
@signed_in
def listed(request: HttpRequest, event: UUID) -> HttpResponse:
    """All sheets, with what each is for, on the paper that the reader wants."""
    plan = seen_plan(request, event)
    return _page(request, plan, WallForm(plan[2]))


@require_GET
@signed_in
def pdf(request: HttpRequest, event: UUID, kind: str) -> HttpResponse:
    """One sheet as PDF, on the paper that the address asks for."""
    shared, revision, record = plan = seen_plan(request, event)
    if kind not in SHEETS:
        raise Http404("no such sheet")
    part = WallForm(record, request.GET)
    if not part.is_valid():
        return _page(request, plan, part, status=400)
    source = Source(
        event=shared,
        revision=revision,
        record=record,
        units=preferences.current().units or record.units,
        addresses=_planners_pages(request, shared, record),
        start=part.cleaned_data["since"],
        hours=part.cleaned_data["hours"],
    )
    content = paper.print_sheet(
        kind=kind, source=source, printing=_printing(request, plan, _live(request, shared, kind))
    )
    return answers.pdf(content, name=f"{shared.key}-{kind}-{revision.number}.pdf")


@require_GET
@signed_in
def call_sheet(request: HttpRequest, event: UUID, helper: str) -> HttpResponse:
    """One helper's call sheet as PDF."""
    shared, revision, record = plan = seen_plan(request, event)
    found = planned_helper(record, helper)
    address = answers.address(request, "helper", event=shared.public_id, helper=found.id)
    content = paper.print_call_sheet(record=record, helper_id=found.id, printing=_printing(request, plan, address))
    return answers.pdf(content, name=f"{shared.key}-{found.id}-{revision.number}.pdf")


@require_POST
@signed_in
def linked(request: HttpRequest, event: UUID) -> HttpResponse:
    """All call sheets as PDF, each with the code of a link that is made for its helper now."""
    shared, revision, record = plan = edited_plan(request, event)
    tokens = paper.make_links(event_id=shared.pk, helper_ids=[helper.id for helper in called_helpers(record)])
    source = Source(
        event=shared,
        revision=revision,
        record=record,
        units=record.units,
        addresses={helper: answers.address(request, "call-sheet", token=token) for helper, token in tokens.items()},
    )
    printing = _printing(request, plan, _live(request, shared, "call-sheets"), size=SizeForm(request.POST))
    content = paper.print_sheet(kind="call-sheets", source=source, printing=printing)
    return answers.shown_once(answers.pdf(content, name=f"{shared.key}-call-sheets-{revision.number}.pdf"))


def helpers_own(
    request: HttpRequest, *, record: PlanRecord, helper: PlannedHelper, revision: Revision, token: str
) -> HttpResponse:
    """What a helper's own link prints: their call sheet, with the code of that link."""
    printing = paper.printing_for(
        record=record,
        paper=SizeForm(request.GET).chosen(preferences.current().paper or ""),
        hours=preferences.current().hours,
        address=answers.address(request, "call-sheet", token=token),
        revision=revision.number,
        drawing_words=drawn_words(),
    )
    content = paper.print_call_sheet(record=record, helper_id=helper.id, printing=printing)
    return answers.unlisted(answers.pdf(content, name=f"call-sheet-{helper.id}-{revision.number}.pdf"))


def _page(request: HttpRequest, plan: Plan, wall: WallForm, status: int = 200) -> HttpResponse:
    shared, revision, record = plan
    size = _size(record, SizeForm(request.GET))
    page = {
        "event": shared,
        "revision": revision,
        "record": record,
        "tab": "paper",
        "stale": shared.document != revision.document,
        "groups": sheet_groups(record),
        "helpers": called_helpers(record),
        "size": size,
        "sizes": SizeForm(initial={"size": size}),
        "wall": wall,
    }
    return render(request, "cookout/paper.html", page, status=status)


def _size(record: PlanRecord, form: SizeForm) -> str:
    return form.chosen(preferences.current().paper or paper.usual_paper(record))


def _printing(request: HttpRequest, plan: Plan, address: str, size: SizeForm | None = None) -> Printing:
    _shared, revision, record = plan
    return paper.printing_for(
        record=record,
        paper=_size(record, size or SizeForm(request.GET)),
        hours=preferences.current().hours,
        address=address,
        revision=revision.number,
        drawing_words=drawn_words(),
    )


def _live(request: HttpRequest, event: Event, kind: str) -> str:
    """The address of the page that shows on a screen what a sheet shows on paper."""
    sheet = SHEETS[kind]
    word = {"name": sheet.word} if sheet.word else {}
    return answers.address(request, sheet.view, event=event.public_id, **word)


def _planners_pages(request: HttpRequest, event: Event, record: PlanRecord) -> dict[str, str]:
    """For each helper the page on which planners see that helper's part."""
    return {
        helper.id: answers.address(request, "helper", event=event.public_id, helper=helper.id)
        for helper in record.helpers
    }
