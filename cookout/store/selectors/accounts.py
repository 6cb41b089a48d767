"""People as pages read them."""

from cookout.store.models import User

__all__ = ["User", "get_user", "get_user_by_email"]


def get_user(*, user_id: int) -> User | None:
    """The active user of that id, or None."""
    return User.objects.filter(pk=user_id, is_active=True).first()


def get_user_by_email(*, email: str) -> User | None:
    """The user of that address (any case), or None."""
    return User.objects.filter(email=email.lower()).first()
