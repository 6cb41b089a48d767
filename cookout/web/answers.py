"""Answers that several pages give."""

import json
from datetime import datetime

from django.conf import settings
from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.utils.http import http_date, url_has_allowed_host_and_scheme

PRIVATE = "private, no-cache"
NEVER_STORE = "no-store"


def attachment(content: bytes | str, *, kind: str, name: str) -> HttpResponse:
    """A file to be saved under `name`."""
    response = HttpResponse(content, content_type=kind)
    response.headers["Content-Disposition"] = f'attachment; filename="{_plain(name)}"'
    response.headers["Cache-Control"] = PRIVATE
    return response


def pdf(content: bytes, *, name: str) -> HttpResponse:
    """A sheet that the browser shows, to be saved under `name`."""
    response = HttpResponse(content, content_type="application/pdf")
    response.headers["Content-Disposition"] = f'inline; filename="{_plain(name)}"'
    response.headers["Cache-Control"] = PRIVATE
    return response


def unlisted(response: HttpResponse, *, has_forms: bool = False) -> HttpResponse:
    """A page behind an unguessable link: not for search engines, caches, or the sites that it links to.

    One that `has_forms` tells where they came from to this service alone: it takes no form from nowhere.
    """
    response.headers["Referrer-Policy"] = "same-origin" if has_forms else "no-referrer"
    response.headers["X-Robots-Tag"] = "noindex, nofollow"
    response.headers["Cache-Control"] = PRIVATE
    return response


def shown_once(response: HttpResponse) -> HttpResponse:
    """A page with a secret that is shown this once: nothing keeps a copy, the browser neither."""
    response.headers["Cache-Control"] = NEVER_STORE
    return response


def marked(response: HttpResponse, *, etag: str, changed_at: datetime) -> HttpResponse:
    """The same with its ETag and the time of its last change."""
    response.headers["ETag"] = etag
    response.headers["Last-Modified"] = http_date(changed_at.timestamp())
    return response


def address(request: HttpRequest, view: str, **arguments: object) -> str:
    """The whole address of a page: at the public address where one is set, else at the host that was asked."""
    path = reverse(view, kwargs=arguments)
    return f"{settings.BASE_URL}{path}" if settings.BASE_URL_IS_SET else request.build_absolute_uri(path)


def told(request: HttpRequest, words: str, *, undo: str = "") -> None:
    """Say on the next page what was done; with the address of its undo, which takes a POST."""
    messages.success(request, words, extra_tags=undo)


def refused(request: HttpRequest, words: str) -> None:
    """Say on the next page why something was not done."""
    messages.error(request, words)


def own_place(request: HttpRequest, place: str) -> str:
    """An address within the service to go back to; the start page where it is another's."""
    inside = url_has_allowed_host_and_scheme(place, {request.get_host()}, require_https=request.is_secure())
    return place if inside else reverse("start")


def json_text(payload: dict[str, object]) -> str:
    """JSON for people and programs to read, one key a line."""
    return json.dumps(payload, ensure_ascii=False, indent=1) + "\n"


def _plain(name: str) -> str:
    return "".join(letter if letter.isascii() and (letter.isalnum() or letter in "-_.") else "-" for letter in name)
