"""The timeline: the plan drawn by dish, by helper or by gear, from the whole day to the minute."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.http import require_GET

from cookout.web.guards import seen_plan, signed_in
from cookout.web.reading.timeline import look_of, timeline_page


@require_GET
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """The current plan, looked at as the address says."""
    shared, revision, record = seen_plan(request, event)
    look = look_of(request.GET, record)
    page = {"event": shared, "revision": revision, "record": record, "tab": "timeline"}
    page |= timeline_page(record, look, event=shared.public_id, now=timezone.now())
    return render(request, "cookout/timeline.html", page)
