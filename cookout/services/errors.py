"""Errors of the use cases.

    CookoutError (core)
      ServiceError
        NoSuchThingError       what was asked for is not there (any more)
        EventChangedError      somebody saved the event in the meantime
        AlreadyPlanningError   the event has a run under way
        StaleOfferError        a way out that no longer belongs to the event as it is
        StaleTrialError        a trial of an event that is no longer as it was
        PartChangedError       somebody changed the same part of the event in the meantime
        AddressTakenError      another account has that e-mail address
        InvitationError        an invitation that cannot be made or taken
        UndoTooLateError       what is to be taken back was changed again since
        InUseError             something that another part of the event still needs
        RecipeChangedError     another version of the recipe was saved in the meantime
        TooMuchError           more than can be kept

Every message says the remedy.
"""

from typing import Any

from django.utils.translation import gettext as _

from cookout.core.errors import CookoutError


class ServiceError(CookoutError):
    """Base of the errors of the use cases."""


class NoSuchThingError(ServiceError):
    """What was asked for is not there, or not there any more."""


class EventChangedError(ServiceError):
    """The event was saved by somebody else since this text was opened; `stored` is what stands there now."""

    def __init__(self, stored: str, version: int) -> None:
        self.stored = stored
        self.version = version
        super().__init__(
            _(
                "This event was saved elsewhere after you opened it. Compare with what is stored now, "
                "then save again to replace it with your text."
            )
        )


class AlreadyPlanningError(ServiceError):
    """The event has a run under way."""

    def __init__(self) -> None:
        super().__init__(_("This event is being planned already. Wait for that run, or stop it, then plan again."))


class StaleOfferError(ServiceError):
    """A way out that no longer belongs to the event as it is."""

    def __init__(self) -> None:
        super().__init__(
            _("The event has changed since this way out was tried. Plan it again to see what is true now.")
        )


class StaleTrialError(ServiceError):
    """A trial of an event that, or whose plan, is no longer what it was held against."""

    def __init__(self) -> None:
        super().__init__(
            _("The event or its plan has changed since this was tried. Try it again to see what is now true.")
        )


class PartChangedError(ServiceError):
    """A part of the event was changed by somebody else since it was opened; `value` is what stands there now."""

    def __init__(self, part: tuple[str, str], value: Any, fingerprint: str) -> None:
        self.part = part
        self.value = value
        self.fingerprint = fingerprint
        super().__init__(
            _(
                "Somebody else changed this after you opened it. What you typed is still here: compare it with what is "
                "stored now, then save again to replace that."
            )
        )


class UndoTooLateError(ServiceError):
    """What is to be taken back was changed again since."""

    def __init__(self, words: str) -> None:
        super().__init__(
            _("“%(words)s” cannot be taken back any more: the same part was changed again since.") % {"words": words}
        )


class InUseError(ServiceError):
    """Something that is to be taken out and that another part of the event still needs; the message says which."""


class AddressTakenError(ServiceError):
    """Another account has that e-mail address."""

    def __init__(self) -> None:
        super().__init__(_("That address cannot be used. If it is yours, sign in with it, or ask for a new password."))


class InvitationError(ServiceError):
    """An invitation that cannot be made or taken, with the reason and what to do."""


class RecipeChangedError(ServiceError):
    """Another version of the recipe was saved since this one was opened; `number` is the current one."""

    def __init__(self, number: int) -> None:
        self.number = number
        super().__init__(
            _(
                "Another version of this recipe was saved after you opened it. What you typed is still here: look at "
                "that version, then save again to put yours on top of it."
            )
        )


class TooMuchError(ServiceError):
    """More than can be kept; the message says how much can."""
