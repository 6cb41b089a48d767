"""TEMPORARY: stands in for pages that are being written; each is replaced by its own view."""

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse

from cookout.web.guards import signed_in


@signed_in
def stub(_request: HttpRequest, **_arguments: Any) -> HttpResponse:
    """Not there yet."""
    raise Http404("not there yet")
