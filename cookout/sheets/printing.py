"""How a sheet is printed: on which paper, with which hours and words, of which revision, and where its page is."""

from dataclasses import dataclass, field
from typing import Literal, Protocol
from urllib.parse import urlsplit

from cookout.core.planning.wording import HourStyle
from cookout.drawing.words import Words

Paper = Literal["a4", "letter"]


class Gettext(Protocol):
    """Gives a sentence in the reader's language."""

    def __call__(self, message: str, /) -> str:
        """The same sentence, in that language."""
        ...


class Ngettext(Protocol):
    """Gives a sentence that counts something in the reader's language."""

    def __call__(self, singular: str, plural: str, number: int, /) -> str:
        """The form that goes with the number."""
        ...


def gettext_noop(message: str) -> str:
    """Marks a sentence that is translated later, where it is printed."""
    return message


def as_written(message: str, /) -> str:
    """The English of the source."""
    return message


def one_or_many(singular: str, plural: str, number: int, /) -> str:
    """The English form for a number."""
    return singular if number == 1 else plural


@dataclass(frozen=True, slots=True, kw_only=True)
class Printing:
    """What the reader of a sheet chose, and what ties the sheet to its page.

    `address` is that of the live page, printed and drawn as a QR code. `revision` stands on every page with
    `printed_from`, which without being given is the host in the address. The two functions give the words in the
    language that `language` (a BCP 47 tag) names, `drawing_words` those in drawings.
    """

    paper: Paper = "a4"
    hours: HourStyle = "24"
    address: str | None = None
    revision: int | None = None
    printed_from: str = ""
    language: str = "en"
    gettext: Gettext = as_written
    ngettext: Ngettext = one_or_many
    drawing_words: Words = field(default_factory=Words)

    @property
    def origin(self) -> str:
        """Where the sheet was printed from, in short; empty where nobody said."""
        return self.printed_from or (urlsplit(self.address).netloc if self.address else "")

    @property
    def revision_words(self) -> str:
        """The revision and where it was printed from, or what of the two is known."""
        _ = self.gettext
        if self.revision is None:
            return _("printed from {place}").format(place=self.origin) if self.origin else ""
        if not self.origin:
            return _("revision {number}").format(number=self.revision)
        return _("revision {number}, printed from {place}").format(number=self.revision, place=self.origin)


USUAL = Printing()
"""A4, 24 hours, English, without page or revision."""
