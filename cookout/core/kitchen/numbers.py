"""Numbers as people write them in a list of ingredients, and the question that stands for one that could be two."""

import html
import re
import unicodedata
from dataclasses import dataclass

WORDS = {
    "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "seven": 7.0, "eight": 8.0, "nine": 9.0,
    "ten": 10.0, "eleven": 11.0, "twelve": 12.0, "a": 1.0, "an": 1.0,
}  # fmt: skip
SHARES = {
    "half": 0.5, "halves": 0.5, "third": 1 / 3, "thirds": 1 / 3, "quarter": 0.25, "quarters": 0.25, "fourth": 0.25,
    "fourths": 0.25, "eighth": 0.125, "eighths": 0.125,
}  # fmt: skip
USUAL_DENOMINATORS = (2, 3, 4, 5, 6, 8, 16)
DOZEN = 12.0
LARGEST = 100_000.0

_NUMBER_WORD = "|".join(sorted(WORDS, key=len, reverse=True))
_SHARE_WORD = "|".join(sorted(SHARES, key=len, reverse=True))
_MIXED = re.compile(r"(\d{1,4})(?:\s+|-|\s+and\s+|\s*&\s*)(\d{1,2})/(\d{1,3})(?![\d/])", re.IGNORECASE)
_FRACTION = re.compile(r"(\d{1,4})\s?/\s?(\d{1,4})(?![\d/])")
_PLAIN = re.compile(r"(?:\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d*\.\d+|\d+)(?![\d,.]*\d|[eE]\d)")
_SPELT_SHARE = re.compile(
    rf"(?:(?P<times>{_NUMBER_WORD})[\s-]+)??"
    rf"(?P<share>{_SHARE_WORD})(?:\s+(?:of\s+)?an?\b|-(?=(?:cup|tea|table|tsp|tbsp|pound|lb|pint|quart|dozen|inch))|(?![\w-]))",
    re.IGNORECASE,
)
_SPELT_MIXED = re.compile(
    rf"(?P<whole>{_NUMBER_WORD}|\d+)\s+and\s+(?P<times>{_NUMBER_WORD})?[\s-]*(?P<share>{_SHARE_WORD})(?![\w-])",
    re.IGNORECASE,
)
_SPELT = re.compile(rf"(?:{_NUMBER_WORD})(?![\w])", re.IGNORECASE)
_DOZEN = re.compile(r"(?:dozen|doz\.?)(?!\w)(?:\s+of\b)?", re.IGNORECASE)
_ONE_SIGN = str.maketrans(
    {"⁄": "/", "–": "-", "—": "-", "‐": "-", "−": "-", "‑": "-", "×": "x", "’": "'", "”": '"', "“": '"', "″": '"'}
)
_ODD_FRACTION_SIGNS = re.compile(r"([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[/⁄]([₀₁₂₃₄₅₆₇₈₉]+)")


class UnclearError(Exception):
    """Part of a line that can be read in two ways, or in none; it becomes a question to the person."""

    def __init__(self, unclear: str, ask: str) -> None:
        self.unclear, self.ask = unclear, ask
        super().__init__(f"{unclear}: {ask}")


@dataclass(frozen=True, slots=True)
class Number:
    """A number and the text it was read from."""

    value: float
    text: str


class Reader:
    """A text and how far it has been read."""

    def __init__(self, text: str) -> None:
        self.text, self.at = text, 0

    @property
    def rest(self) -> str:
        """What is still to be read, without spaces before it."""
        return self.text[self.at :].lstrip()

    def take(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        """The pattern where the reader stands, behind spaces; taken only where it is met."""
        start = len(self.text) - len(self.rest)
        match = pattern.match(self.text, start)
        if match:
            self.at = match.end()
        return match


def plain_signs(text: str) -> str:
    """The line with its fraction signs as ``1/2``, one kind of dash and quote, and single spaces."""
    text = _ODD_FRACTION_SIGNS.sub(lambda match: f" {match[1]}/{match[2]} ", html.unescape(text))
    text = "".join(_spelt_out(sign) for sign in text)
    text = unicodedata.normalize("NFKC", text).translate(_ONE_SIGN)
    return " ".join(re.sub(r"(?<=[-(/]) (?=\d+/\d)", "", text).split())


def read_number(reader: Reader) -> Number | None:
    """The number where the reader stands, or None; `UnclearError` for one that may mean two things."""
    start = reader.at
    value = _mixed_words(reader)
    if value is None:
        value = _digits(reader)
    if value is None:
        value = _words(reader)
    if value is None:
        return None
    if reader.take(_DOZEN):
        value *= DOZEN
    if value > LARGEST:
        raise UnclearError(reader.text[start : reader.at].strip(), "That is more than any kitchen measures.")
    return Number(value, reader.text[start : reader.at].strip())


def _spelt_out(sign: str) -> str:
    parts = unicodedata.normalize("NFKC", sign)
    return f" {parts.replace('⁄', '/')} " if "⁄" in parts and len(sign) == 1 and len(parts) > 1 else sign


def _digits(reader: Reader) -> float | None:
    if match := reader.take(_MIXED):
        return int(match[1]) + _share(match[2], match[3], match[0])
    if match := reader.take(_FRACTION):
        return _share(match[1], match[2], match[0])
    if match := reader.take(_PLAIN):
        return float(match[0].replace(",", ""))
    if odd := re.match(r"\d[\d.,]*\d", reader.rest):
        raise UnclearError(odd[0], "A comma may part thousands or be a decimal point: write 1.5 or 1500.")
    return None


def _share(upper: str, lower: str, text: str) -> float:
    above, below = int(upper), int(lower)
    if below not in USUAL_DENOMINATORS or above == 0:
        raise UnclearError(text, "This is no usual fraction; write it as 1/2 or as 0.5.")
    if above >= below:
        raise UnclearError(text, "Is a space missing, as in 1 1/2? Write it with the space or as a decimal.")
    return above / below


def _mixed_words(reader: Reader) -> float | None:
    """Such as "two and a half"."""
    match = reader.take(_SPELT_MIXED)
    if match is None:
        return None
    return _word_value(match["whole"]) + _word_value(match["times"] or "one") * SHARES[match["share"].lower()]


def _words(reader: Reader) -> float | None:
    if match := reader.take(_SPELT_SHARE):
        return _word_value(match["times"] or "one") * SHARES[match["share"].lower()]
    if match := reader.take(_SPELT):
        return WORDS[match[0].lower()]
    return 1.0 if _DOZEN.match(reader.rest) else None


def _word_value(word: str) -> float:
    return WORDS.get(word.lower()) or float(word)
