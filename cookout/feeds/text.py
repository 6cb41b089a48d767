"""Text that people typed, made fit for a calendar.

`icalendar` writes a backslash followed by N as a line break and lets control characters through, so names are cleaned
here and escaped by a value type of our own.
"""

import re
import unicodedata
from collections.abc import Iterable
from urllib.parse import urlsplit

from icalendar import vCategory, vText

from cookout.feeds.errors import FeedError

# RFC 5545 section 3.1 forbids controls but for the tab; U+2028 and U+2029 (Zl, Zp) end lines for some readers.
_BANNED_CATEGORIES = frozenset({"Cc", "Cs", "Zl", "Zp"})
# Embeddings, overrides and isolates left open in one name would turn round the words that follow it.
_DIRECTION_MARKS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
_BYTE_ORDER_MARK = "\ufeff"
_LINE_ENDS = re.compile("\r\n|[\n\r\v\f\x85\u2028\u2029]")
_ESCAPES = str.maketrans({"\\": "\\\\", ";": "\\;", ",": "\\,", "\n": "\\n"})
_SCHEMES = frozenset({"http", "https", "webcal"})


def one_line(text: str) -> str:
    """The text on one line: no control characters, white space collapsed to single blanks."""
    spaced = _LINE_ENDS.sub(" ", text).replace("\t", " ")
    return " ".join("".join(c for c in spaced if _is_allowed(c)).split())


def lines_of(text: str) -> tuple[str, ...]:
    """The text's lines that are not blank, each as `one_line` gives it."""
    return tuple(line for raw in _LINE_ENDS.split(text) if (line := one_line(raw)))


def _is_allowed(character: str) -> bool:
    if character in _DIRECTION_MARKS or character == _BYTE_ORDER_MARK:
        return False
    return unicodedata.category(character) not in _BANNED_CATEGORIES


class PlainText(vText):
    """A TEXT value escaped exactly as RFC 5545 section 3.3.11 says."""

    __slots__ = ()

    def to_ical(self) -> bytes:
        """The escaped text in UTF-8."""
        return str(self).translate(_ESCAPES).encode()


def text_value(text: str) -> PlainText:
    """One line of text as a property's value."""
    return PlainText(one_line(text))


def lines_value(lines: Iterable[str]) -> PlainText:
    """Several texts as one value, one below the other; blank ones are left out."""
    return PlainText("\n".join(line for text in lines for line in lines_of(text)))


def category_value(words: Iterable[str]) -> vCategory:
    """Words as the value of CATEGORIES, in which only the commas between them stay bare."""
    value = vCategory([])
    value.cats = [text_value(word) for word in words]
    return value


def checked_address(address: str) -> str:
    """The feed's web address as given; `FeedError` where it is none, as it is written unescaped."""
    parts = urlsplit(address)
    # urlsplit itself drops line breaks and tabs, so the characters are looked at in the address as given.
    plain = address.isascii() and address.isprintable() and " " not in address
    if not plain or parts.scheme not in _SCHEMES or not parts.netloc:
        raise FeedError(f"{address!r} is no web address for a calendar; give one such as https://example.org/feed.ics")
    return address
