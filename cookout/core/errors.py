"""Errors that a user can cause.

    CookoutError
      EventFileError      an event file that cannot be used; carries every fault found
      ProblemError        a scheduling problem that contradicts itself (a bug or a bad instance file)
      QuantityError       a quantity that cannot be read
      RecipeTextError     a text that no recipe can be read from (`kitchen.linked_data`)
      LimitError          a local food limit that would allow more than the published one (`safety.local`)
      ChangeError         a change that does not fit the event (`planning.changes`)
      UnsoundPlanError    a plan that the check refused (`planning.pipeline`)

Every message says what is wrong, where, and what to do about it.
"""

from dataclasses import dataclass


class CookoutError(Exception):
    """Base of all errors with a remedy for the person who caused them."""


class QuantityError(CookoutError):
    """A quantity that cannot be read, such as "350 degrees" with no scale."""


class ProblemError(CookoutError):
    """A scheduling problem whose parts do not fit one another."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong in an event file.

    `where` names file and field (``supper.toml: dishes[2].recipe``), `what` says what is wrong,
    `remedy` what to write instead.
    """

    where: str
    what: str
    remedy: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what} {self.remedy}"


class EventFileError(CookoutError):
    """An event file that cannot be used; `faults` has every one that was found, in file order."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        self.faults = faults
        super().__init__("\n".join(str(fault) for fault in faults))
