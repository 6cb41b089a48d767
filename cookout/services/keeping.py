"""What a planner keeps for the next event: kits, people, templates. Deleting says how it can be had back."""

from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.db import IntegrityError, transaction
from django.utils.translation import gettext as _

from cookout.core.kitchen.recipe import Skill
from cookout.services.errors import InUseError, NoSuchThingError
from cookout.store.models import Kit, Person, Template

KINDS: dict[str, type[Kit] | type[Person] | type[Template]] = {"kit": Kit, "person": Person, "template": Template}
_FIELDS = {
    "kit": ("name", "document"),
    "person": ("name", "contact", "skills", "adult", "fire_allowed", "hot_stretch_minutes", "note"),
    "template": ("name", "document"),
}


@dataclass(frozen=True, slots=True)
class PersonFields:
    """Somebody in the address book."""

    name: str
    contact: str
    skills: frozenset[Skill]
    adult: bool
    fire_allowed: bool
    hot_stretch_minutes: int
    note: str


@dataclass(frozen=True, slots=True)
class Deleted:
    """A kit, person or template that was deleted, all of it, for the way back; plain enough to be kept as JSON."""

    kind: str
    id: str
    name: str
    fields: dict[str, Any]


def save_person(*, owner_id: int, person: UUID | None, fields: PersonFields) -> Person:
    """Write somebody into the address book, or change who is there."""
    row = Person(owner_id=owner_id) if person is None else _row("person", owner_id, person)
    for name in _FIELDS["person"]:
        value = getattr(fields, name)
        setattr(row, name, sorted(value) if name == "skills" else value)
    row.save()
    assert isinstance(row, Person)
    return row


def rename(*, owner_id: int, kind: str, thing: UUID, name: str) -> None:
    """Give a kit or a template another name; `InUseError` where another of the owner's has it."""
    row = _row(kind, owner_id, thing)
    row.name = name
    try:
        with transaction.atomic():
            row.save()
    except IntegrityError as error:
        raise InUseError(_("You have another one of that name. Give this one a name of its own.")) from error


def delete(*, owner_id: int, kind: str, thing: UUID) -> Deleted:
    """Delete a kit, a person or a template; what `bring_back` makes it again from."""
    row = _row(kind, owner_id, thing)
    fields = {field: getattr(row, field) for field in _FIELDS[kind]}
    deleted = Deleted(kind, str(row.public_id), row.name, fields)
    row.delete()
    return deleted


def bring_back(*, owner_id: int, deleted: Deleted) -> None:
    """Make again what was deleted; `InUseError` where another of that name has come meanwhile."""
    row = KINDS[deleted.kind](owner_id=owner_id, public_id=UUID(deleted.id), **deleted.fields)
    try:
        with transaction.atomic():
            row.save()
    except IntegrityError as error:
        words = _("It cannot be had back beside another one of that name. Rename that one first.")
        raise InUseError(words) from error


def _row(kind: str, owner_id: int, thing: UUID) -> Kit | Person | Template:
    found = KINDS[kind].objects.filter(owner_id=owner_id, public_id=thing).first() if kind in KINDS else None
    if found is None:
        raise NoSuchThingError(_("It is not there any more. Look at the page anew."))
    return found
