"""The crew: helpers, and how they come from and go into the address book."""

from collections.abc import Sequence
from dataclasses import replace
from uuid import UUID

from django.db import transaction
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from cookout.core.kitchen.recipe import FIRE_SKILL, Skill
from cookout.core.planning.event import Event, Helper, HelperId, Window
from cookout.services.editing import Changed, save_parts
from cookout.services.errors import InUseError, NoSuchThingError
from cookout.services.naming import id_for
from cookout.services.stored import read_stored, stored_part
from cookout.store.models import Edit, Person

HOUR = 60
BEFORE_SERVING, AFTER_SERVING = 6 * HOUR, HOUR


def wanted_skills(event: Event) -> list[str]:
    """The skills that the event's recipes ask for, and tending fire."""
    asked = {skill for recipe in event.recipes for step in recipe.steps for skill in step.skills}
    return sorted({str(FIRE_SKILL), *map(str, asked)})


def proposed_hours(event: Event) -> Window:
    """Hours to begin with: from six hours before the first serving to an hour after the last of that day."""
    times = sorted(serving.at for serving in event.servings)
    if not times:
        return Window(10 * HOUR, 20 * HOUR)
    last = max(at for at in times if at < times[0] + 12 * HOUR)
    start = (times[0] - BEFORE_SERVING) // HOUR * HOUR
    return Window(start, -(-(last + AFTER_SERVING) // HOUR) * HOUR)


def helper_id_for(event: Event, name: str) -> HelperId:
    """An id for a new helper."""
    return HelperId(id_for(name, {helper.id for helper in event.crew}, "helper"))


@transaction.atomic
def remove_helper(*, event_id: int, user_id: int | None, helper_id: str) -> Edit | None:
    """Take a helper out of the crew, and out of what was pinned to them; `InUseError` for somebody who presents."""
    event = read_stored(event_id)
    helper: Helper = stored_part(event, ("crew", helper_id))
    slot = next((slot for slot in event.slots if slot.presenter == helper.id), None)
    if slot is not None:
        words = _("%(helper)s presents “%(slot)s”. Give it another presenter on the demo page first.")
        raise InUseError(words % {"helper": helper.name, "slot": slot.name})
    changes = [*_pins_without(event, helper.id), Changed(("crew", helper.id), None)]
    words = _("%(helper)s taken out of the crew") % {"helper": helper.name}
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)


@transaction.atomic
def add_people(*, event_id: int, user_id: int, people: Sequence[UUID], hours: Window) -> Edit | None:
    """Put people of the user's address book into the crew, all with those hours."""
    event = read_stored(event_id)
    taken = {str(helper.id) for helper in event.crew}
    changes = []
    for person in Person.objects.filter(owner_id=user_id, public_id__in=people):
        name = id_for(person.name, taken, "helper")
        taken.add(name)
        changes.append(Changed(("crew", name), _helper_of(person, HelperId(name), hours), was=""))
    count = len(changes)
    words = ngettext("%(count)d helper added", "%(count)d helpers added", count) % {"count": count}
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)


@transaction.atomic
def keep_person(*, event_id: int, user_id: int, helper_id: str) -> Person:
    """Keep a helper in the user's address book; somebody of the same name there is brought up to date."""
    helper: Helper = stored_part(read_stored(event_id), ("crew", helper_id))
    kept = {
        "contact": helper.contact,
        "skills": sorted(helper.skills),
        "adult": helper.adult,
        "fire_allowed": helper.fire_allowed,
        "hot_stretch_minutes": helper.hot_stretch_minutes,
    }
    if len(helper.name) > 120:
        raise NoSuchThingError(_("That name is too long for the address book. Shorten it to 120 letters."))
    found = Person.objects.filter(owner_id=user_id, name=helper.name).first()
    if found is None:
        return Person.objects.create(owner_id=user_id, name=helper.name, **kept)
    for field, value in kept.items():
        setattr(found, field, value)
    found.save()
    return found


def _helper_of(person: Person, helper_id: HelperId, hours: Window) -> Helper:
    return Helper(
        id=helper_id,
        name=person.name,
        skills=frozenset(map(Skill, person.skills)),
        windows=(hours,),
        adult=person.adult,
        fire_allowed=person.fire_allowed,
        hot_stretch_minutes=person.hot_stretch_minutes,
        contact=person.contact,
    )


def _pins_without(event: Event, helper_id: str) -> list[Changed]:
    """The pins that name the helper, without them; a pin of nothing else goes."""
    changes = []
    for pin in event.pins:
        if helper_id in pin.helpers:
            rest = tuple(each for each in pin.helpers if each != helper_id)
            kept = replace(pin, helpers=rest)
            changes.append(Changed(("pins", pin.task), kept if rest or pin.units or pin.at is not None else None))
    return changes
