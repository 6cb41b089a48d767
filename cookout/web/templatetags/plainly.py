"""Filters that print core values as people say them, in the reader's own hours and language.

Times are printed in the zone they carry, the event's own.
"""

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from django import template
from django.utils import timezone
from django.utils.formats import date_format
from django.utils.timesince import timesince
from django.utils.translation import gettext, ngettext

from cookout.core.planning.first_steps import first_steps
from cookout.core.planning.wording import clock_text, in_hours
from cookout.store.selectors.events import Event, event_of
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
def moment(at: datetime, zone: str) -> str:
    """Day and time in that time zone, such as Sat 12 June 2027 18:05: ``moment:event.timezone``."""
    there = at.astimezone(ZoneInfo(zone))
    return f"{day(there)} {clock(there)}"


@register.filter
def ago(at: datetime) -> str:
    """How long it is since then: "just now" within the first minute."""
    if timezone.now() - at < timedelta(minutes=1):
        return gettext("just now")
    return gettext("%(length)s ago") % {"length": timesince(at)}


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


@register.inclusion_tag("cookout/parts/making_bar.html", takes_context=True)
def making_bar(context: template.Context, event: Event) -> dict[str, object]:
    """What is still missing for a plan, and the button that plans."""
    token = context.get("csrf_token")
    return {"event": event, "steps": first_steps(event_of(event)), "csrf_token": token}
