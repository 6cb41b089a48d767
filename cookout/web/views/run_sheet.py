"""The run sheet: every task in order of time."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from cookout.web.guards import seen_plan, signed_in
from cookout.web.reading.figures import check_rows, food_rows
from cookout.web.reading.plan import plan_words


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """The run sheet as a page that prints well."""
    owned, revision, record = seen_plan(request, event)
    page = {
        "event": owned,
        "revision": revision,
        "record": record,
        "tab": "run-sheet",
        "foods": food_rows(record),
        "checks": check_rows(record),
        **plan_words(record),
    }
    return render(request, "cookout/run_sheet.html", page)
