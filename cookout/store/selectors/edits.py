"""Changes of events as pages read them."""

from django.db.models import QuerySet

from cookout.store.models import Edit

__all__ = ["Edit", "get_edit", "list_edits"]

LISTED = 60


def get_edit(*, event_id: int, edit_id: int) -> Edit | None:
    """One change of an event, its texts unread; None where there is none."""
    return Edit.objects.filter(event_id=event_id, pk=edit_id).defer("before", "after").first()


def list_edits(*, event_id: int) -> QuerySet[Edit]:
    """The newest changes of an event with whoever made them, their texts unread."""
    return Edit.objects.filter(event_id=event_id).select_related("by").defer("before", "after")[:LISTED]
