"""Accounts, and the way in that the demo prints."""

from django.conf import settings
from django.core import signing

from cookout.store.models import User
from cookout.store.selectors import accounts

DEMO_SALT = "cookout.demo-entry"
DEMO_SECONDS = 7 * 24 * 3600


def create_user(*, email: str, password: str | None = None) -> User:
    """A new planner; without a password only the demo's way in opens."""
    return User.objects.create_user(email, password)


def get_or_create_user(*, email: str) -> User:
    """The planner with that address, made without a password where there is none yet."""
    return accounts.get_user_by_email(email=email) or create_user(email=email)


def make_demo_entry(*, user_id: int) -> str:
    """A signed word that signs in that user for a week, at ``/demo/enter/<word>/``, while the demo is on."""
    return signing.dumps(user_id, salt=DEMO_SALT)


def demo_sign_in(*, signed: str) -> User | None:
    """The user whom the signed word lets in; None where it is false or too old, or the demo is off."""
    if not settings.COOKOUT_DEMO:
        return None
    try:
        user_id = signing.loads(signed, salt=DEMO_SALT, max_age=DEMO_SECONDS)
    except signing.BadSignature:
        return None
    return accounts.get_user(user_id=int(user_id))
