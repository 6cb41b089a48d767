"""Ingredient lines as people write them, read into amount, unit, ingredient and note, or into a question.

A line that can be read in two ways is never guessed at: `parse_line` gives a `Question` with what is unclear and what
to write instead. Spoons, cups, pints, quarts and gallons are US customary (see `measures`). The grammar is our own:
the general parsers on the registry are statistical, answer every line with some number, and load a model at run
time.
"""

import re
from dataclasses import dataclass

from cookout.core.errors import QuantityError
from cookout.core.kitchen.amounts import Head, add_to, read_head, read_measure
from cookout.core.kitchen.measures import STICK, Amount, Kind, convert, kind_of
from cookout.core.kitchen.numbers import Reader, UnclearError, plain_signs
from cookout.core.kitchen.recipe import Ingredient
from cookout.core.kitchen.rounding import write_amount
from cookout.core.kitchen.words import (
    FILLED,
    NO_AMOUNT,
    PIECES_BEHIND,
    PREPARED,
    SIZES,
    STICKS_OF_FAT,
    UNKNOWN_COUNTS,
    plain_name,
)

LONGEST_LINE = 300
SAME_WITHIN = 0.12
"""Share by which two amounts of one kind on a line may differ and still be the same ("1 lb (450 g)")."""
ABOUT_SAME_WITHIN = 0.5
"""The same between volume and weight, which differ by how a cup is filled."""


@dataclass(frozen=True, slots=True)
class Question:
    """A line that is not sure: what is unclear in it, and what to write instead."""

    line: str
    unclear: str
    ask: str


@dataclass(frozen=True, slots=True)
class Parsed:
    """A line that is sure: `least` to `most` of `unit` (empty: pieces; None: no amount, to taste) of an ingredient.

    `each` is the size of one piece ("2 cans of 14 oz"), `also` the same amount in other measures as the line gives it.
    """

    line: str
    ingredient: str
    least: float | None = None
    most: float | None = None
    unit: str = ""
    note: str = ""
    each: Amount | None = None
    also: tuple[Amount, ...] = ()

    @property
    def amount(self) -> Amount | None:
        """The amount, the middle of a range; None where the line has none."""
        if self.least is None or self.most is None:
            return None
        return Amount((self.least + self.most) / 2, self.unit)


def parse_line(text: str) -> Parsed | Question:
    """One line of an ingredient list.

    "1½ c. flour, sifted" is 1.5 cup of flour with the note "sifted"; "2-3 Tbsp milk" runs from 2 to 3; "1 (14 oz) can
    tomatoes" is one can of 14 oz each; "1,5 l milk" is a `Question`.
    """
    line = text.strip()
    try:
        return _parsed(line)
    except (UnclearError, QuantityError) as error:
        unclear, ask = (error.unclear, error.ask) if isinstance(error, UnclearError) else ("amount", str(error))
        return Question(line[:LONGEST_LINE], unclear, ask)


def parse_lines(text: str) -> tuple[Parsed | Question, ...]:
    """Every line that is not empty, in order."""
    return tuple(parse_line(line) for line in text.splitlines() if line.strip())


def to_ingredient(parsed: Parsed) -> Ingredient:
    """The ingredient of a recipe; range and size of a piece go into the note, as written."""
    notes = [parsed.note] if parsed.note else []
    if parsed.least is not None and parsed.most is not None and parsed.least != parsed.most:
        low, high = write_amount(Amount(parsed.least)), write_amount(Amount(parsed.most, parsed.unit))
        notes.append(f"{low} to {high} as written")
    if parsed.each:
        notes.append(f"{write_amount(parsed.each)} each")
    number = parsed.amount.number if parsed.amount else None
    return Ingredient(parsed.ingredient, number, parsed.unit, ", ".join(notes))


def write_line(parsed: Parsed) -> str:
    """A line that `parse_line` reads as the same: ``2 can (14 oz each) tomatoes, drained``."""
    parts = []
    if parsed.least is not None and parsed.most is not None:
        span = "" if parsed.least == parsed.most else f"{write_amount(Amount(parsed.least))} to "
        parts.append(span + write_amount(Amount(parsed.most, parsed.unit)))
    parts += [f"({write_amount(parsed.each)} each)"] if parsed.each else []
    parts += [f"({write_amount(amount)})" for amount in parsed.also]
    line = " ".join([*parts, parsed.ingredient])
    return f"{line}, {parsed.note}" if parsed.note else line


_BULLET = re.compile(r"^(?:[•●▪◦☐□*·]|\[[ xX]?\]|-(?!\s*\d+\s*-))\s*")
_OPTIONAL = re.compile(r"^\(?optional\)?\s*:?\s*|\s*\(optional\)", re.IGNORECASE)
_PART_OF = re.compile(
    r"^(?:the\s+)?(?P<part>(?:(?:finely|freshly)\s+)?(?:(?:grated|squeezed|strained)\s+)?(?:juice|zest|rind|peel)"
    r"(?:\s*(?:and|&)\s*(?:juice|zest|rind|peel))?)\s+(?:of|from)\s+(?P<rest>.+)$",
    re.IGNORECASE,
)
_UNKNOWN = re.compile(rf"^(?:{'|'.join(UNKNOWN_COUNTS)})\b", re.IGNORECASE)
_NONE = re.compile(rf"^(?P<how>{'|'.join(NO_AMOUNT)})\s+(?P<rest>.+)$", re.IGNORECASE)
_HALF_AND_HALF = re.compile(r"^half(?:-|\s)(?:and|&)(?:-|\s)half\b", re.IGNORECASE)
_PAREN = re.compile(r"\(([^()]*)\)")
_SEPARATOR = re.compile(r"\s*(?:,(?!\d{3}\b)|;|:\s|\s-\s)\s*")
_TAIL = re.compile(
    r"\s+(?P<tail>(?:or\s+)?(?:to taste|as needed|as required|if desired|if needed|divided|optional)"
    r"|at room temperature|(?:or|plus)\s+(?:more|extra|additional|a\s+(?:little|bit|few))\b.*"
    r"|for\s+\w+ing\b.*|to\s+(?:serve|garnish|taste)\b.*"
    r"|or\s+(?=\d|half|one|two)\S.*|(?:preferably|such as|about|approximately)\b.*)$",
    re.IGNORECASE,
)
_FILLED = re.compile(rf"^(?:{'|'.join(sorted(FILLED, key=len, reverse=True))})\s+", re.IGNORECASE)
_SIZE = re.compile(rf"^(?:{'|'.join(sorted(SIZES, key=len, reverse=True))})\s+(?=\w)", re.IGNORECASE)
_OF = re.compile(r"^(?:of(?:\s+(?:an?|the))?|an?|the|:|-)\s+", re.IGNORECASE)
_NUMBERS_IN_NAMES = re.compile(
    r"\b\d+(?:\.\d+)?\s?%|\b00\b|\b\d{2}/\d{2}\b|\b\d+-(?=[a-z])|\b[a-z]+-?\d+\b|\b(?:type|no\.?|number|size|#)\s?\d+"
    r"|#\d+|\b\d+(?:up|x)\b|\b\d+\s?(?:°|º|deg(?:rees)?)?\s?[fc]\b",
    re.IGNORECASE,
)
_SHARE_FIRST = re.compile(
    r"^(?:half|halves|third|quarter|dozen|hundred|thousand)\b(?!(?:-|\s)(?:and|&)(?:-|\s)half)", re.IGNORECASE
)
_JOINT_FIRST = re.compile(r"(?:and|plus|or|minus|less|to|by|x|than)\s", re.IGNORECASE)
_MORE_OF_IT = re.compile(r"^(?:plus|and|\+|minus|less)\s+(?:[\d.]|an?\b|one\b|two\b)", re.IGNORECASE)
_MORE_BEHIND = re.compile(r"(?P<name>[^,(]+?)\s+(?:plus|\+)\s+(?P<more>[\d./ ]+\s*[a-z]+\.?)", re.IGNORECASE)
_SECOND = re.compile(r"\d[\d./ ]*[a-z]", re.IGNORECASE)
_FOR_LATER = re.compile(r"\b(?:for|more|extra|to\s+\w+|divided)\b", re.IGNORECASE)
_DIGIT = re.compile(r"\d")


def _parsed(line: str) -> Parsed:
    if not line or len(line) > LONGEST_LINE:
        raise UnclearError(line[:40], "Write one ingredient on the line.")
    text = _BULLET.sub("", plain_signs(line)).strip()
    if text.endswith(":"):
        raise UnclearError(text, "This is a heading, not an ingredient.")
    if not re.search(r"[^\W\d_]", text):
        raise UnclearError(text[:40], "Of what? Name the ingredient.")
    notes = ["optional"] if _OPTIONAL.search(text) else []
    text = _OPTIONAL.sub("", text).strip()
    if part := _PART_OF.match(text):
        return _part_of(line, part["part"].lower(), part["rest"], notes)
    return _from_head(line, text, notes)


def _part_of(line: str, part: str, rest: str, notes: list[str]) -> Parsed:
    reader = Reader(rest)
    head = read_head(reader)
    if head is None:
        raise UnclearError(rest[:40], f"The {part} of how many?")
    return _built(line, head, reader.rest, [*notes, f"{part} of"])


def _from_head(line: str, text: str, notes: list[str]) -> Parsed:
    if few := _UNKNOWN.match(text):
        raise UnclearError(few[0], "How many is that? Write a number.")
    if none := _NONE.match(text):
        return _built(line, None, none["rest"], [*notes, none["how"].lower()])
    if _HALF_AND_HALF.match(text):
        return _built(line, None, text, notes)
    reader = Reader(text)
    head = read_head(reader)
    if head is not None and (more := _MORE_BEHIND.fullmatch(reader.rest)) and add_to(head, more["more"]):
        return _built(line, head, more["name"], notes)
    if head is None and text.startswith("("):
        return _amount_in_paren(line, text, notes)
    if head is None and _DIGIT.search(text):
        return _amount_behind(line, text, notes)
    return _built(line, head, reader.rest, notes)


def _amount_in_paren(line: str, text: str, notes: list[str]) -> Parsed:
    paren = _PAREN.match(text)
    if paren is None:
        raise UnclearError(text[:40], "A bracket is not closed.")
    reader = Reader(f"{paren[1]} {text[paren.end() :].strip()}")
    head = read_head(reader)
    if head is None:
        raise UnclearError(paren[0], "Write the amount first.")
    return _built(line, head, reader.rest, notes)


def _amount_behind(line: str, text: str, notes: list[str]) -> Parsed:
    """Such as "flour: 2 cups" and "Butter, 100 g"; a name that has a number of its own has no amount."""
    for match in re.finditer(r"(?:[:,(]|\.{2,}|\s-|\sx|\s)\s*(?=[\d.])", text):
        reader = Reader(text[match.end() :].rstrip(" )") if "(" in match[0] else text[match.end() :])
        head = read_head(reader)
        # A number alone behind a blank is a part of the name: "flour type 405".
        told = head is not None and (head.unit or match[0].strip())
        if told and (not reader.rest or reader.rest[0] in ",;("):
            return _built(line, head, text[: match.start()] + " " + reader.rest, notes)
    return _built(line, None, text, notes)


def _built(line: str, head: Head | None, rest: str, notes: list[str]) -> Parsed:
    if head is not None and head.least <= 0:
        raise UnclearError("0", "How much is it? Leave the number out for an ingredient to taste.")
    if head is not None and head.unit and rest.startswith((",", ";")):
        raise UnclearError(line[:40], "Of what? Name the ingredient behind the amount.")
    rest = _same_behind(head, rest) if head is not None else rest
    name, behind = _name_and_notes(rest)
    notes = [*notes, *(head.notes if head else ()), *behind]
    name, head = _pieces_named(name, head)
    _check_name(name, [note for note in behind if f"({note})" not in rest])
    if head is None:
        return Parsed(line, name, note=", ".join(notes))
    _check_same(head, name)
    return Parsed(line, name, head.least, head.most, head.unit, ", ".join(notes), head.each, head.also)


def _same_behind(head: Head, rest: str) -> str:
    """What is left of the line once the same amount in another measure is taken out: "4 oz cheese (about 1 cup)"."""
    for match in _PAREN.finditer(rest):
        size = read_measure(match[1])
        each = read_measure(re.sub(r"\beach\b", "", match[1])) if "each" in match[1] and head.each is None else None
        if each is not None or (size is not None and not head.also and size.kind is not Kind.COUNT):
            head.each = each or head.each
            head.also = (size,) if size and not each else head.also
            return rest[: match.start()] + rest[match.end() :]
    return rest


def _name_and_notes(rest: str) -> tuple[str, list[str]]:
    notes = [match[1].strip() for match in _PAREN.finditer(rest) if not match[1].strip().isdigit()]
    parts = _SEPARATOR.split(" ".join(_PAREN.sub(" ", rest).split()).replace(" ,", ",").strip(" ,;."))
    while len(parts) > 1 and all(word in PREPARED for word in parts[0].lower().split()):
        parts[:2] = [", ".join(part for part in parts[:2] if part)]
    name, before = parts[0], []
    for pattern in (_OF, _FILLED, _SIZE, _OF):
        if match := pattern.match(name):
            before += [match[0].strip().lower()] if pattern is not _OF else []
            name = name[match.end() :]
    if tail := _TAIL.search(name):
        parts[1:1] = [tail["tail"]]
        name = name[: tail.start()]
    return name.strip(" ,;.:"), [*before, *(part.strip() for part in parts[1:] if part.strip()), *filter(None, notes)]


def _pieces_named(name: str, head: Head | None) -> tuple[str, Head | None]:
    """The name and head with what is counted told apart: "2 garlic cloves", "2 sticks cinnamon"."""
    if head is None:
        return name, None
    words = plain_name(name).split()
    if head.unit == STICK and " ".join(word for word in words if word not in PREPARED) not in STICKS_OF_FAT:
        if not name:
            raise UnclearError("stick", "A stick of what?")
        head.unit = ""
        return f"{name} sticks" if head.most > 1 else f"{name} stick", head
    if len(words) == 2 and PIECES_BEHIND.get(words[0]) == words[1] and not head.unit:
        head.unit = words[1]
        return name.split(maxsplit=1)[0], head
    return name, head


def _check_name(name: str, notes: list[str]) -> None:
    if not re.search(r"[^\W\d_]{2}", name) or not re.match(r"[\w#'\"]", name):
        raise UnclearError(name or "ingredient", "Of what? Name the ingredient.")
    if re.match(r"each\b", name, re.IGNORECASE) or (" and " in name and re.search(r"\beach\b", " ".join(notes))):
        raise UnclearError("each", "Write each ingredient on a line of its own.")
    if all(word in PREPARED or word == "dried" for word in name.lower().split()):
        raise UnclearError(name, "Of what? Name the ingredient behind its description.")
    if _JOINT_FIRST.match(name):
        raise UnclearError(name, "Is this a second amount, or another ingredient? Write one of each on the line.")
    left = _NUMBERS_IN_NAMES.sub("", name)
    if _DIGIT.search(left) or _SHARE_FIRST.match(name):
        raise UnclearError(name, "There is more than one number; write each ingredient on a line of its own.")
    for note in notes:
        if _SECOND.match(_NUMBERS_IN_NAMES.sub("", note)) and "each" not in note and "°" not in note:
            raise UnclearError(note, "There is more than one number; write each ingredient on a line of its own.")
        if _MORE_OF_IT.match(note) and not _FOR_LATER.search(note):
            raise UnclearError(note, "Is this to be added to the amount? Write the sum first.")


def _check_same(head: Head, name: str) -> None:
    for other in head.also:
        low, high = head.least, head.most
        try:
            number = convert(other, head.unit, name).number
        except QuantityError:
            continue
        within = SAME_WITHIN if kind_of(head.unit) is kind_of(other.unit) else ABOUT_SAME_WITHIN
        if not low * (1 - within) <= number <= high * (1 + within):
            raise UnclearError(write_amount(other), "The amounts on this line do not agree; which one holds?")
