"""Kits, people and templates as pages read them. Whoever asks for those of somebody else gets None."""

from uuid import UUID

from django.db.models import QuerySet

from cookout.store.models import Kit, Person, Template

__all__ = [
    "Kit",
    "Person",
    "Template",
    "get_kit",
    "get_person",
    "get_template",
    "list_kits",
    "list_people",
    "list_templates",
]


def list_kits(*, owner_id: int) -> QuerySet[Kit]:
    """Somebody's kits by name."""
    return Kit.objects.filter(owner_id=owner_id)


def list_people(*, owner_id: int) -> QuerySet[Person]:
    """Somebody's address book by name."""
    return Person.objects.filter(owner_id=owner_id)


def list_templates(*, owner_id: int) -> QuerySet[Template]:
    """Somebody's templates by name, their documents unread."""
    return Template.objects.filter(owner_id=owner_id).defer("document")


def get_kit(*, owner_id: int, public_id: UUID) -> Kit | None:
    """One of somebody's kits."""
    return Kit.objects.filter(owner_id=owner_id, public_id=public_id).first()


def get_person(*, owner_id: int, public_id: UUID) -> Person | None:
    """One of somebody's people."""
    return Person.objects.filter(owner_id=owner_id, public_id=public_id).first()


def get_template(*, owner_id: int, public_id: UUID) -> Template | None:
    """One of somebody's templates."""
    return Template.objects.filter(owner_id=owner_id, public_id=public_id).first()
