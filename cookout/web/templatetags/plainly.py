"""Filters that print core values as people say them, in the reader's own hours and language.

Times are printed in the zone they carry, the event's own.
"""

from datetime import datetime

from django import template
from django.utils.formats import date_format
from django.utils.translation import gettext, ngettext

from cookout.core.planning.wording import clock_text, in_hours
from cookout.store.selectors.events import Event
from cookout.web import navigation, preferences

register = template.Library()


@register.filter
def clock(moment: datetime) -> str:
    """Hour and minute, such as 16:05 or 4:05 pm."""
    return clock_text(moment, preferences.current().hours)


@register.filter
def said(text: object) -> str:
    """A text of a plan, with the times of day in it as the reader is used to."""
    return in_hours(str(text), preferences.current().hours)


@register.filter
def day(moment: datetime) -> str:
    """The day, such as Sat 19 June 2027."""
    return date_format(moment, gettext("D j F Y"))


@register.filter
def iso(moment: datetime) -> str:
    """The moment for machines."""
    return moment.isoformat()


@register.filter
def span(minutes: float) -> str:
    """A length of time, such as 1 h 25 min; nothing is left out but noughts."""
    whole = round(minutes)
    hours, rest = divmod(abs(whole), 60)
    days, hours = divmod(hours, 24) if hours >= 48 else (0, hours)
    parts = [
        ngettext("%(count)d day", "%(count)d days", days) % {"count": days} if days else "",
        f"{hours} h" if hours else "",
        f"{rest} min" if rest and not days else "",
    ]
    return " ".join(part for part in parts if part) or "0 min"


@register.filter
def counted(number: int, forms: str) -> str:
    """A number with its noun: ``counted:"coal,coals"``."""
    one, many = forms.split(",")
    return f"{number} {ngettext(one, many, number)}"


@register.inclusion_tag("cookout/parts/stations.html")
def stations(event: Event, tab: str) -> dict[str, object]:
    """The way through an event's pages."""
    return {"groups": navigation.stations(event, tab)}
