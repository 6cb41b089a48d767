"""Making events: from blank, from an event or a template on another day, from a worked example."""

from dataclasses import dataclass
from datetime import date, time
from functools import cache
from pathlib import Path
from zoneinfo import ZoneInfo

from django.conf import settings
from django.db import transaction
from django.utils.translation import gettext as _

from cookout.core.eventfile import read_event, write_event
from cookout.core.eventfile.clock import Clock
from cookout.core.fire.weather import Weather
from cookout.core.planning.event import Event, Fuel, Place, Serving, ServingId
from cookout.core.planning.moving import moved_to
from cookout.services.errors import NoSuchThingError
from cookout.services.events import create_event
from cookout.services.naming import id_for
from cookout.store.models import Event as Row
from cookout.store.models import EventRecipe, Template

SUPPER_AT = time(18)


@dataclass(frozen=True, slots=True)
class Blank:
    """What a new event begins with; without `people` it has no serving yet."""

    name: str
    day: date
    place: str
    timezone: str
    units: str
    at: time | None = None
    people: int | None = None


@dataclass(frozen=True, slots=True)
class Example:
    """A worked example that comes with the program."""

    key: str
    name: str
    place: str
    dishes: int
    helpers: int


def make_blank(*, owner_id: int, blank: Blank) -> Row:
    """A new event with nothing in it but what `blank` says; `EventFileError` where that cannot be."""
    clock = Clock(ZoneInfo(blank.timezone), blank.day)
    servings: tuple[Serving, ...] = ()
    if blank.people is not None:
        at = clock.minute(blank.at or SUPPER_AT)
        servings = (Serving(ServingId("serving"), _("Supper"), at, blank.people),)
    event = Event(
        id=_free_key(owner_id, blank.name),
        name=blank.name,
        place=Place(blank.place),
        timezone=blank.timezone,
        origin=clock.origin,
        weather=Weather(),
        servings=servings,
        dishes=(),
        slots=(),
        gear=(),
        fuel=Fuel(),
        crew=(),
        recipes=(),
        units=blank.units,
    )
    return create_event(owner_id=owner_id, document=write_event(event))


@transaction.atomic
def copy_event(*, owner_id: int, event: Row, day: date, name: str) -> Row:
    """A copy of an event that the user may see, on another day, as an event of their own."""
    made = _moved_copy(owner_id, event.document, day, name)
    known = EventRecipe.objects.filter(event_id=event.pk, version__recipe__owner_id=owner_id)
    EventRecipe.objects.bulk_create(
        EventRecipe(event=made, recipe_key=each.recipe_key, version_id=each.version_id) for each in known
    )
    return made


def make_from_template(*, owner_id: int, template: Template, day: date, name: str) -> Row:
    """A new event from a template of the user's own."""
    return _moved_copy(owner_id, template.document, day, name)


def copy_example(*, owner_id: int, key: str) -> Row:
    """A worked example as an event of the user's own, to be changed at will."""
    path = _example_files().get(key)
    if path is None:
        raise NoSuchThingError(_("There is no such example. Choose one from the list."))
    event = read_event(path.read_text(encoding="utf-8"), path.name)
    day = event.origin.astimezone(ZoneInfo(event.timezone)).date()
    copied = moved_to(event, day, id=_free_key(owner_id, event.id), name=event.name)
    return create_event(owner_id=owner_id, document=write_event(copied), is_example=True)


def save_template(*, owner_id: int, event: Row, name: str) -> Template:
    """Keep an event as a template of the user's own; one of the same name becomes as this event is now."""
    read_event(event.document, event.file_name)
    template, _made = Template.objects.update_or_create(
        owner_id=owner_id, name=name, defaults={"document": event.document}
    )
    return template


@cache
def list_examples() -> tuple[Example, ...]:
    """The worked examples, the smallest first."""
    events = [read_event(path.read_text(encoding="utf-8"), path.name) for path in _example_files().values()]
    found = [
        Example(key, event.name, event.place.name, len(event.dishes), len(event.crew))
        for key, event in zip(_example_files(), events, strict=True)
    ]
    return tuple(sorted(found, key=lambda example: example.dishes))


def _example_files() -> dict[str, Path]:
    return {path.stem: path for path in sorted(Path(settings.COOKOUT_EXAMPLES).glob("*.toml"))}


def _moved_copy(owner_id: int, document: str, day: date, name: str) -> Row:
    event = read_event(document, "event.toml")
    chosen = name or event.name
    copied = moved_to(event, day, id=_free_key(owner_id, chosen), name=chosen)
    return create_event(owner_id=owner_id, document=write_event(copied))


def _free_key(owner_id: int, name: str) -> str:
    """An id that no event of the owner has, those thrown away included: they may come back."""
    return id_for(name, set(Row.objects.filter(owner_id=owner_id).values_list("key", flat=True)), "event")
