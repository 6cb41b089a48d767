"""Who is at the other end of a request, for limiting attempts."""

from typing import Any

from django.conf import settings
from django.core.cache import cache
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render

HOUR = 3600
MOST_AN_HOUR = 20
FAR_TOO_OFTEN = 429


def address_of(request: HttpRequest) -> str:
    """The network address of the visitor; behind a proxy the one that the proxy itself put down, which is the last."""
    told = str(request.META.get("HTTP_X_FORWARDED_FOR", "")).split(",")[-1].strip()
    return told if settings.COOKOUT_BEHIND_PROXY and told else str(request.META.get("REMOTE_ADDR", ""))


def account_of(request: HttpRequest | None, credentials: dict[str, Any] | None = None) -> str:
    """The account that somebody tries to get into, in small letters as accounts are kept."""
    given = (credentials or {}).get("username") or (request.POST.get("username") if request is not None else "")
    return str(given or "").lower()


def comes_too_often(request: HttpRequest, what: str, *, most: int = MOST_AN_HOUR, seconds: int = HOUR) -> bool:
    """Count one more attempt of a visitor at something; whether it is one too many within that time."""
    key = f"attempts-{what}-{address_of(request)}"
    cache.add(key, 0, seconds)
    try:
        return cache.incr(key) > most
    except ValueError:  # it ran out between the two
        return False


def turned_away(request: HttpRequest) -> HttpResponse:
    """The answer to whoever comes too often: when to try again."""
    return render(request, "cookout/locked_out.html", {"an_hour": True}, status=FAR_TOO_OFTEN)
