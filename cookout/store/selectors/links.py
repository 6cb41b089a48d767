"""Links as pages and feeds read them."""

from django.db.models import QuerySet

from cookout.store.models import Link

__all__ = ["Link", "find_link", "list_open_links"]


def find_link(*, token_hash: str) -> Link | None:
    """The open link of that hash with its event and the head of the current revision, in one look-up; else None."""
    return (
        Link.objects.select_related("event", "event__current")
        .defer(
            "event__document",
            "event__current__payload",
            "event__current__document",
            "event__current__stamps",
            "event__current__texts",
        )
        .filter(token_hash=token_hash, revoked_at__isnull=True, event__deleted_at__isnull=True)
        .first()
    )


def list_open_links(*, event_id: int) -> QuerySet[Link]:
    """An event's links that are not revoked."""
    return Link.objects.filter(event_id=event_id, revoked_at__isnull=True)
