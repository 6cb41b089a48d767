"""The fire plan: firings, and the coals of each oven."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from cookout.services import sheets
from cookout.web import preferences
from cookout.web.guards import seen_plan, signed_in
from cookout.web.reading.drawn import drawn_words
from cookout.web.reading.fire import bake_rows, coals_in_all, firing_rows


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """Firings and coals as a page that prints well."""
    owned, revision, record = seen_plan(request, event)
    page: dict[str, object] = {
        "event": owned,
        "revision": revision,
        "record": record,
        "tab": "fire",
        "firings": firing_rows(record),
        "bakes": bake_rows(record),
        "coals": coals_in_all(record),
    }
    if record.bakes:
        hours = preferences.current().hours
        page["wide"], page["narrow"] = sheets.fire_drawings(record=record, hours=hours, words=drawn_words())
    return render(request, "cookout/fire.html", page)
