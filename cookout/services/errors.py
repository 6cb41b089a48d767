"""Errors of the use cases.

    CookoutError (core)
      ServiceError
        NoSuchThingError       what was asked for is not there (any more)
        EventChangedError      somebody saved the event in the meantime
        AlreadyPlanningError   the event has a run under way
        StaleOfferError      a way out that no longer belongs to the event as it is

Every message says the remedy.
"""

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
            "This event was saved elsewhere after you opened it. Compare with what is stored now, "
            "then save again to replace it with your text."
        )


class AlreadyPlanningError(ServiceError):
    """The event has a run under way."""

    def __init__(self) -> None:
        super().__init__("This event is being planned already. Wait for that run, or stop it, then plan again.")


class StaleOfferError(ServiceError):
    """A way out that no longer belongs to the event as it is."""

    def __init__(self) -> None:
        super().__init__("The event has changed since this way out was tried. Plan it again to see what is true now.")
