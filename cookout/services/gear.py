"""The gear of an event: pieces of each kind, fuel on hand, and kits saved once and used again."""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from uuid import UUID

from django.db import transaction
from django.utils.translation import gettext as _
from django.utils.translation import gettext_noop

from cookout.core.eventfile.gear import MOST_PIECES
from cookout.core.eventfile.kitfile import read_kit
from cookout.core.eventfile.writing import write_kit
from cookout.core.planning.event import Gear, GearId, GearKind
from cookout.services.editing import Changed, save_parts
from cookout.services.errors import NoSuchThingError
from cookout.services.naming import id_for
from cookout.services.stored import read_stored, stored_part
from cookout.store.models import Edit, Kit

USUAL: Mapping[str, Gear] = MappingProxyType(
    {
        gear.id: gear
        for gear in (
            Gear(GearId("oven-8"), GearKind.OVEN, gettext_noop("8-inch oven"), inches=8),
            Gear(GearId("oven-10"), GearKind.OVEN, gettext_noop("10-inch oven"), inches=10),
            Gear(GearId("oven-12"), GearKind.OVEN, gettext_noop("12-inch oven"), inches=12),
            Gear(GearId("oven-12-deep"), GearKind.OVEN, gettext_noop("12-inch oven, deep"), inches=12, deep=True),
            Gear(GearId("oven-14"), GearKind.OVEN, gettext_noop("14-inch oven"), inches=14),
            Gear(GearId("chimney"), GearKind.CHIMNEY, gettext_noop("Chimney"), coals=80),
            Gear(GearId("table"), GearKind.TABLE, gettext_noop("Cooking table"), spots=3, spot_inches=14),
            Gear(GearId("trivet"), GearKind.TRIVET, gettext_noop("Trivet")),
            Gear(GearId("rack"), GearKind.RACK, gettext_noop("Cooling rack")),
            Gear(GearId("cooler"), GearKind.COOLER, gettext_noop("Cooler with ice")),
            Gear(GearId("mixer"), GearKind.MIXER, gettext_noop("Mixer")),
            Gear(GearId("bowl"), GearKind.BOWL, gettext_noop("Mixing bowl")),
            Gear(GearId("skillet"), GearKind.SKILLET, gettext_noop("Skillet")),
        )
    }
)
"""What most cookouts have, one click each; sizes and numbers are common practice, no source, and can be changed."""


@transaction.atomic
def add_usual(*, event_id: int, user_id: int | None, what: str) -> tuple[Edit | None, GearId]:
    """One more of a usual piece of gear: counted up where the event has it, else added."""
    if what not in USUAL:
        raise NoSuchThingError(_("There is no such gear to add. Choose one of the buttons."))
    usual = USUAL[what]
    there = next((gear for gear in read_stored(event_id).gear if gear.id == usual.id), None)
    if there is not None:
        return count_gear(event_id=event_id, user_id=user_id, gear_id=there.id, by=1), there.id
    added = replace(usual, name=_(usual.name))
    words = _("%(gear)s added") % {"gear": added.name}
    changes = [Changed(("gear", usual.id), added, was="")]
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words), usual.id


@transaction.atomic
def add_other(*, event_id: int, user_id: int | None, name: str, count: int) -> tuple[Edit | None, GearId]:
    """Gear of another kind, which is only counted."""
    event = read_stored(event_id)
    gear_id = GearId(id_for(name, {gear.id for gear in event.gear} | set(GearKind), "gear"))
    words = _("%(gear)s added") % {"gear": name}
    changes = [Changed(("gear", gear_id), Gear(gear_id, GearKind.OTHER, name, count), was="")]
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words), gear_id


@transaction.atomic
def count_gear(*, event_id: int, user_id: int | None, gear_id: str, by: int) -> Edit | None:
    """So many more (fewer: negative) of the gear; below one it is taken out."""
    gear: Gear = stored_part(read_stored(event_id), ("gear", gear_id))
    count = min(gear.count + by, MOST_PIECES)
    if count < 1:
        return remove_gear(event_id=event_id, user_id=user_id, gear_id=gear_id)
    words = _("%(gear)s: %(count)d") % {"gear": gear.name, "count": count}
    changes = [Changed(("gear", gear.id), replace(gear, count=count))]
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)


@transaction.atomic
def remove_gear(*, event_id: int, user_id: int | None, gear_id: str) -> Edit | None:
    """Take gear out; `EventFileError` where a recipe asks for it by name."""
    gear: Gear = stored_part(read_stored(event_id), ("gear", gear_id))
    words = _("%(gear)s taken out") % {"gear": gear.name}
    return save_parts(event_id=event_id, user_id=user_id, changes=[Changed(("gear", gear.id), None)], words=words)


@transaction.atomic
def use_kit(*, event_id: int, user_id: int, kit: UUID) -> Edit | None:
    """Put a kit's gear and fuel into the event; gear of the same id becomes as the kit has it."""
    found = Kit.objects.filter(owner_id=user_id, public_id=kit).first()
    if found is None:
        raise NoSuchThingError(_("There is no such kit. Choose one from the list."))
    gear, fuel = read_kit(found.document, "kit.toml")
    changes = [Changed(("gear", each.id), each) for each in gear]
    changes.append(Changed(("fuel", ""), {"fuel": fuel}))
    words = _("Kit used: %(kit)s") % {"kit": found.name}
    return save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)


@transaction.atomic
def save_kit(*, event_id: int, user_id: int, name: str) -> Kit:
    """Keep the event's gear and fuel as a kit; one of the same name becomes as this event has it."""
    event = read_stored(event_id)
    if not event.gear:
        raise NoSuchThingError(_("There is no gear here to keep yet. Add some first."))
    document = write_kit(event.gear, event.fuel, event.units)
    kit, _made = Kit.objects.update_or_create(owner_id=user_id, name=name, defaults={"document": document})
    return kit
