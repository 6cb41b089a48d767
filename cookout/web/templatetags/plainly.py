"""Filters that print core values as people say them. Times are printed in the zone they carry, the event's own."""

from datetime import datetime

from django import template

register = template.Library()


@register.filter
def clock(moment: datetime) -> str:
    """Hour and minute, such as 16:05."""
    return f"{moment:%H:%M}"


@register.filter
def day(moment: datetime) -> str:
    """The day, such as Sat 19 June 2027."""
    return f"{moment:%a} {moment.day} {moment:%B %Y}"


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
    parts = [f"{days} days" if days else "", f"{hours} h" if hours else "", f"{rest} min" if rest and not days else ""]
    return " ".join(part for part in parts if part) or "0 min"


@register.filter
def counted(number: int, forms: str) -> str:
    """A number with its noun: ``counted:"coal,coals"``."""
    one, many = forms.split(",")
    return f"{number} {one if number == 1 else many}"
