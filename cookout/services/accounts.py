"""Accounts: made, confirmed by mail, changed, closed; and the way in that the demo prints."""

from dataclasses import dataclass

from django.conf import settings
from django.contrib.auth.hashers import make_password
from django.contrib.auth.tokens import default_token_generator
from django.core import signing
from django.db import IntegrityError, transaction
from django.utils.crypto import salted_hmac
from django.utils.encoding import force_bytes
from django.utils.http import urlsafe_base64_encode

from cookout.services import mail
from cookout.services.errors import AddressTakenError
from cookout.store.models import User
from cookout.store.selectors import accounts

DEMO_SALT = "cookout.demo-entry"
DEMO_SECONDS = 7 * 24 * 3600
CONFIRM_SALT = "cookout.confirm-address"
CONFIRM_SECONDS = 3 * 24 * 3600


@dataclass(frozen=True, slots=True)
class Choices:
    """What somebody chose for themselves; see `store.models.User`."""

    name: str
    units: str
    hours: str
    paper: str
    language: str


def create_user(*, email: str, password: str | None = None) -> User:
    """A new planner; without a password only the demo's way in opens. `AddressTakenError` where there is one."""
    try:
        with transaction.atomic():
            return User.objects.create_user(email, password)
    except IntegrityError as error:
        raise AddressTakenError from error


def get_or_create_user(*, email: str) -> User:
    """The planner with that address, made without a password where there is none yet."""
    return accounts.get_user_by_email(email=email) or create_user(email=email)


def sign_up(*, email: str, password: str, confirmed: bool, address: str) -> User | None:
    """A new account that can be used at once where the address is `confirmed` or no mail can be sent.

    Else a mail goes out with a link to confirm it, and None comes back; the same where the address has an account,
    whose owner then gets a mail that says so: nobody learns from a page who has one. Whoever signs up again before
    the address is confirmed gets another mail, and the password typed last. `address` is a pattern with ``WORD`` in
    place of the signed word. Without mail an address that is taken is an `AddressTakenError`.
    """
    if confirmed or not mail.can_send():
        return create_user(email=email, password=password)
    user = _waiting_account(email=email.lower(), password=password)
    if not user.is_active and user.last_login is None:
        _ask_to_confirm(user, email=user.email, address=address)
    elif user.is_active:
        mail.send(to=user.email, template="cookout/mail/known.txt", values={"email": user.email})
    return None


def find_confirmation(*, word: str) -> tuple[User, str] | None:
    """Whose address a signed word confirms, and which; None where it is false, too old, or was used already."""
    try:
        user_id, email, state = signing.loads(word, salt=CONFIRM_SALT, max_age=CONFIRM_SECONDS)
    except (signing.BadSignature, ValueError, TypeError):
        return None
    user = User.objects.filter(pk=user_id).first()
    if user is None or state != _state(user):
        return None
    return user, email


def confirm_address(*, word: str) -> User | None:
    """Open the account, or change its address, as a signed word says; once, and None where it serves no more."""
    found = find_confirmation(word=word)
    if found is None:
        return None
    user, email = found
    user.email, user.is_active = email, True
    try:
        with transaction.atomic():
            user.save(update_fields=["email", "is_active"])
    except IntegrityError:  # another account took the address in the meantime
        return None
    return user


def change_address(*, user_id: int, email: str, address: str) -> bool:
    """Change the address of an account; whether that was done at once, or waits for a link that was mailed to it.

    The address so far is told of it, so that nobody loses an account unawares. Raises `AddressTakenError` where no
    mail can be sent and another account has it.
    """
    email = email.lower()
    if mail.can_send():
        user = User.objects.get(pk=user_id)
        mail.send(to=user.email, template="cookout/mail/moving.txt", values={"email": email})
        _ask_to_confirm(user, email=email, address=address)
        return False
    try:
        with transaction.atomic():
            User.objects.filter(pk=user_id).update(email=email)
    except IntegrityError as error:
        raise AddressTakenError from error
    return True


def save_choices(*, user_id: int, choices: Choices) -> None:
    """Put down what somebody chose for themselves."""
    User.objects.filter(pk=user_id).update(
        name=choices.name.strip(),
        units=choices.units,
        hours=choices.hours,
        paper=choices.paper,
        language=choices.language,
    )


def save_language(*, user_id: int, language: str) -> None:
    """Put down another language for somebody's pages."""
    User.objects.filter(pk=user_id).update(language=language)


@transaction.atomic
def put_hint_away(*, user_id: int, hint: str) -> None:
    """Do not show a first-run hint to somebody again."""
    user = User.objects.select_for_update().get(pk=user_id)
    if hint not in user.hints_seen:
        user.hints_seen = [*user.hints_seen, hint][-100:]
        user.save(update_fields=["hints_seen"])


def show_hints_again(*, user_id: int) -> None:
    """Show somebody every first-run hint again."""
    User.objects.filter(pk=user_id).update(hints_seen=[])


@transaction.atomic
def close_account(*, user_id: int) -> None:
    """Remove an account with everything that it owns, for good; what others share with it stays theirs."""
    User.objects.filter(pk=user_id).delete()


def make_password_entry(*, user_id: int) -> tuple[str, str]:
    """The two words of a link by which somebody may choose a password, once and within a day.

    An account that still waits for its address to be confirmed is open from now on: whoever hands on the link vouches.
    """
    user = User.objects.get(pk=user_id)
    if not user.is_active and user.last_login is None:
        user.is_active = True
        user.save(update_fields=["is_active"])
    return urlsafe_base64_encode(force_bytes(user.pk)), default_token_generator.make_token(user)


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


@transaction.atomic
def _waiting_account(*, email: str, password: str) -> User:
    """The account of that address: one that waits to be confirmed, made where there is none, with this password.

    One that is open, or was closed after it had been in use, comes back as it is. Its password is not touched, but one
    is hashed all the same: else the time that the answer takes would tell who has an account.
    """
    user = User.objects.select_for_update().filter(email=email).first()
    if user is None:
        try:
            with transaction.atomic():
                return User.objects.create_user(email, password, is_active=False)
        except IntegrityError:  # somebody else did, just now
            user = User.objects.select_for_update().get(email=email)
    hashed = make_password(password)
    if not user.is_active and user.last_login is None:
        user.password = hashed
        user.save(update_fields=["password"])
    return user


def _ask_to_confirm(user: User, *, email: str, address: str) -> None:
    word = signing.dumps([user.pk, email, _state(user)], salt=CONFIRM_SALT)
    mail.send(to=email, template="cookout/mail/confirm.txt", values={"link": address.replace("WORD", word)})


def _state(user: User) -> str:
    """A mark of the account as it stands; a word that was signed for another state of it serves no more."""
    standing = f"{user.email} {user.password} {user.is_active} {user.last_login is None}"
    return salted_hmac(CONFIRM_SALT, standing, algorithm="sha256").hexdigest()[:32]
