"""The amount at the head of an ingredient line: count, measure, range, sum, size of one piece."""

import re
from dataclasses import dataclass

from cookout.core.errors import QuantityError
from cookout.core.kitchen.measures import Amount, Kind, convert, kind_of
from cookout.core.kitchen.numbers import DOZEN, WORDS, Number, Reader, UnclearError, read_number
from cookout.core.kitchen.words import (
    ABOUT,
    CONTAINERS,
    EXACT_UNITS,
    FILLED,
    ONE_WITHOUT_NUMBER,
    PIECES,
    SIZES,
    UNCLEAR_UNITS,
    UNIT_SPELLINGS,
)


def _any_of(words: tuple[str, ...], flags: re.RegexFlag = re.IGNORECASE) -> re.Pattern[str]:
    longest_first = sorted(words, key=len, reverse=True)
    return re.compile(rf"(?:{'|'.join(map(re.escape, longest_first))})(?!\w|-[a-zA-Z])", flags)


def _spellings(table: dict[str, tuple[str, ...]]) -> dict[str, str]:
    return {spelling: word for word, spellings in table.items() for spelling in spellings}


_UNITS = _spellings(UNIT_SPELLINGS)
_THINGS = _spellings(CONTAINERS | PIECES)
_UNIT = re.compile(_any_of(tuple(_UNITS)).pattern + r"\.?", re.IGNORECASE)
_FLUID = re.compile(r"fl(?:uid)?\.?\s*(?:oz|ounces?)(?!\w)\.?", re.IGNORECASE)
_EXACT_UNIT = re.compile(rf"(?:{'|'.join(map(re.escape, EXACT_UNITS))})(?!\w|-[a-zA-Z])\.?")
_UNCLEAR_UNIT = _any_of(tuple(UNCLEAR_UNITS))
_THING = _any_of(tuple(_THINGS))
_THING_STOPPED = re.compile(_THING.pattern + r"\.?", re.IGNORECASE)
_RIB_CUTS = re.compile(r"ribs?[\s-]+(?:eye|roast)|strip\s+(?:steak|loin)|head\s+cheese|round\s+steak", re.IGNORECASE)
_ABOUT = re.compile(
    rf"(?:{'|'.join(re.escape(word) for word in sorted(ABOUT, key=len, reverse=True))})(?![a-z])\s*", re.IGNORECASE
)
_LOOKS = _any_of((*SIZES, *FILLED, "good"))
_CAN_SIZE = re.compile(r"(?:#|no\.?)\s?\d+(?=\s+(?:can|tin)s?\b)", re.IGNORECASE)
_NEXT_NUMBER = rf"\s*(?=[\d.]|(?:half|{'|'.join(word for word in WORDS if len(word) > 2)})\b)"
_TO = re.compile(rf"(?:-|to\b|or\b){_NEXT_NUMBER}", re.IGNORECASE)
_TIMES = re.compile(r"x\s*(?=[\d.])", re.IGNORECASE)
_TIMES_NAME = re.compile(r"x\s+(?=[a-z])", re.IGNORECASE)
_HYPHEN = re.compile(r"-\s?(?=[a-zA-Z\"])")
_PLUS = re.compile(r"(?:plus|\+|and|&)\s*(?=[\d.]|(?:half|one|two|three|a|an)\b)", re.IGNORECASE)
_MINUS = re.compile(r"(?:minus|less)\s*(?=[\d.]|(?:half|one|two|three|a|an)\b)", re.IGNORECASE)
_SLASH = re.compile(r"/\s*(?=\d)")
_PAREN = re.compile(r"\(([^()]*)\)")
_NOTHING = re.compile("")
# "1 lb 2 oz", but neither "1 lb 80/20 beef" nor "1 cup 2% milk"
_FINER = re.compile(r"\d+(?:\s\d/\d|/\d|\.\d+)?\s?[a-zA-Z]")
_OF = re.compile(r"of(?:\s+(?:an?|the))?\b", re.IGNORECASE)
_LENGTHS = ("inch", "cm")
_GLUED = re.compile(r"\d[a-z]", re.IGNORECASE)
_GROUPED = re.compile(r"[1-9]\d{0,2}([.,])\d{3}")


@dataclass(slots=True)
class Head:
    """The head of a line: from `least` to `most` of `unit`, each piece being `each`, or as other amounts `also`."""

    least: float
    most: float
    unit: str = ""
    each: Amount | None = None
    also: tuple[Amount, ...] = ()
    notes: tuple[str, ...] = ()


def read_head(reader: Reader) -> Head | None:
    """The amount where the reader stands; None where there is none, and the reader stays there."""
    start = reader.at
    about = reader.take(_ABOUT)
    looks = _looks(reader)
    span = _span(reader)
    if span is None:
        span = _one_without_number(reader)
    if span is None:
        reader.at = start
        return None
    head = _with_unit(reader, *span)
    head.notes = ((about[0].strip(),) if about else ()) + looks + head.notes
    _other_amounts(reader, head)
    return head


def read_measure(text: str) -> Amount | None:
    """A text that is one measure and nothing else (``14.5-ounce``, ``about 1 cup``), or None."""
    try:
        return _measure(Reader(text.strip()))
    except UnclearError:
        return None


def _measure(reader: Reader) -> Amount | None:
    reader.take(_ABOUT)
    number = read_number(reader)
    if number is None:
        return None
    reader.take(_HYPHEN)
    unit = _unit(reader)
    if unit is None:
        return None
    _sure_of(number, unit)
    amount = Amount(number.value, unit)
    more = read_number(reader)
    finer = _unit(reader) if more else None
    if more and finer:
        amount = _added(amount, Amount(more.value, finer), 1)
    return None if reader.rest or (more and not finer) else amount


def add_to(head: Head, text: str) -> bool:
    """Add to a head a measure of its own kind that stands behind the name ("1 cup flour plus 2 Tbsp"); False if not."""
    other = read_measure(text)
    kind = kind_of(head.unit)
    if other is None or other.kind is not kind or kind is Kind.COUNT or head.least != head.most:
        return False
    _combine(head, other, 1)
    return True


def _span(reader: Reader) -> tuple[Number, Number] | None:
    least = read_number(reader)
    if least is None:
        return None
    before = reader.at
    if reader.take(_TO):
        most = read_number(reader)
        if most is None:
            reader.at = before
            return least, least
        if most.value <= least.value:
            raise UnclearError(f"{least.text} to {most.text}", "A range rises: write the smaller number first.")
        return _both_in_dozens(least, most), most
    return least, least


def _both_in_dozens(least: Number, most: Number) -> Number:
    """The least of "1-2 dozen" is from one dozen."""
    dozens = "doz" in most.text.lower() and "doz" not in least.text.lower()
    return Number(least.value * DOZEN, least.text) if dozens else least


def _one_without_number(reader: Reader) -> tuple[Number, Number] | None:
    word = re.match(r"([a-z]+)\s+", reader.rest, re.IGNORECASE)
    name = word[1].lower() if word else ""
    if name not in _UNITS.keys() | _THINGS.keys() or (_UNITS.get(name) or _THINGS[name]) not in ONE_WITHOUT_NUMBER:
        return None
    return Number(1.0, ""), Number(1.0, "")


def _with_unit(reader: Reader, least: Number, most: Number) -> Head:
    if reader.text[reader.at : reader.at + 1] == " ":
        reader.take(_TIMES_NAME)
    if reader.take(_TIMES):
        return _many_of(reader, least, most)
    before = reader.at
    if reader.take(_HYPHEN):
        if unit := _unit(reader):
            return _hyphened(reader, least, most, unit)
        reader.at = before
    if re.match(r"[\d.]", reader.rest) or _paren_with_size(reader):
        return _many_of(reader, least, most)
    notes = _paren_note(reader) + _looks(reader)
    before = reader.at
    reader.take(_OF)
    unit = _unit(reader)
    if unit is None:
        reader.at = before
        return _counted(reader, least, most, notes)
    return _measured(reader, least, most, unit, notes)


def _many_of(reader: Reader, least: Number, most: Number) -> Head:
    """So many pieces of a size: "2 x 400 g tins", "1 14-oz can", "2 (14 oz) cans", "1 3-lb chicken"."""
    start = reader.at
    in_paren = reader.take(_PAREN)
    times = reader.text[:start].rstrip().lower().endswith("x")
    if in_paren:
        size, sure = read_measure(in_paren[1]), True
    else:
        number = read_number(reader)
        hyphen = reader.take(_HYPHEN)
        unit = _unit(reader) if number else None
        size = _sized(number, unit)
        sure = times or hyphen is not None
    if size is None:
        raise UnclearError(reader.text[:60], "Two numbers stand side by side: which one is the amount?")
    thing = _thing(reader, most.value)
    if thing is None and not sure:
        raise UnclearError(reader.text[:60], "Two numbers stand side by side: which one is the amount?")
    return _size_noted(Head(least.value, most.value, thing or "", size))


def _sized(number: Number | None, unit: str | None) -> Amount | None:
    if number is None or unit is None:
        return None
    _sure_of(number, unit)
    return Amount(number.value, unit)


def _size_noted(head: Head) -> Head:
    if head.each and head.each.unit in _LENGTHS:
        head.notes += (f"{head.each.number:g}-{head.each.unit}",)
        head.each = None
    return head


def _hyphened(reader: Reader, least: Number, most: Number, unit: str) -> Head:
    """One piece of a size: "8-oz package", "3-lb chicken", "2-inch piece"; a plain "1/2-cup" is that amount."""
    if " " in least.text:
        raise UnclearError(reader.text[:60], "Is the first number a count, or part of the size? Write the count first.")
    _one_of_it(reader)
    thing = _thing(reader, 1.0)
    if thing is None and kind_of(unit) is Kind.VOLUME:
        return _measured(reader, least, most, unit, ())
    if thing is None and re.match(r"[^,;(]*s\s*(?:[,;(]|$)", reader.rest):
        raise UnclearError(reader.text[:60], "How many of that size?")
    if least.value != most.value:
        return _measured(reader, least, most, unit, ())
    return _size_noted(Head(1.0, 1.0, thing or "", Amount(least.value, unit)))


def _one_of_it(reader: Reader) -> None:
    """Ask where a size stands before several containers or pieces and nobody says how many: "14 oz cans"."""
    thing = _THING.match(reader.rest)
    several = thing is not None and thing[0].lower().endswith("s") and thing[0].lower() != _THINGS[thing[0].lower()]
    if thing and several and reader.rest[thing.end() :].strip(" .")[:1] not in ("", ",", ";", "("):
        raise UnclearError(reader.text[:60], f"How many {thing[0].lower()}, and how large is each?")


def _counted(reader: Reader, least: Number, most: Number, notes: tuple[str, ...]) -> Head:
    _sure_of(least, "")
    _sure_of(most, "")
    thing = _thing(reader, most.value)
    if thing is None and _GLUED.match(reader.text, reader.at - 1):
        raise UnclearError(reader.text[:60], "Is a space missing behind the number?")
    return Head(least.value, most.value, thing or "", notes=notes)


def _measured(reader: Reader, least: Number, most: Number, unit: str, notes: tuple[str, ...]) -> Head:
    _sure_of(least, unit)
    _sure_of(most, unit)
    head = Head(least.value, most.value, unit, notes=notes)
    _one_of_it(reader)
    if unit in _LENGTHS and least.value == most.value and (piece := _thing(reader, 1.0)):
        return _size_noted(Head(1.0, 1.0, piece, Amount(least.value, unit)))
    if least.value == most.value:
        _sum_or_range(reader, head)
    before = reader.at
    thing = _thing(reader, 1.0) if not re.match(r"(?:of\b|\()", reader.rest) and unit not in _LENGTHS else None
    if thing is None or (thing not in CONTAINERS and reader.rest[:1] in ("", ",", ";", "(")):
        reader.at = before
        return head
    if least.value != most.value:
        raise UnclearError(reader.text[:60], f"How many ({thing}), and how large is each?")
    if thing in CONTAINERS:
        return Head(1.0, 1.0, thing, Amount(head.least, unit), notes=notes)
    raise UnclearError(reader.text[:60], f"Is the amount by {unit} or by {thing}?")


def _sum_or_range(reader: Reader, head: Head) -> None:
    """What may follow a measure: more of it, less of it, up to another measure, or its finer part ("1 lb 2 oz")."""
    before = reader.at
    for joint, sign in ((_PLUS, 1), (_MINUS, -1), (_TO, 0), (_NOTHING, 1)):
        reader.at = before
        other = _joined(reader, head.unit, joint)
        if other is not None:
            _combine(head, other, sign)
            return
    reader.at = before


def _joined(reader: Reader, unit: str, joint: re.Pattern[str]) -> Amount | None:
    if reader.take(joint) is None or (joint is _NOTHING and not _FINER.match(reader.rest)):
        return None
    number = read_number(reader)
    finer = _unit(reader) if number else None
    if number is None or finer is None or (joint is _NOTHING and kind_of(finer) is not kind_of(unit)):
        return None
    return Amount(number.value, finer)


def _combine(head: Head, other: Amount, sign: int) -> None:
    first = Amount(head.least, head.unit)
    if sign:
        head.least = head.most = _added(first, other, sign).number
        return
    try:
        head.most = convert(other, head.unit).number
    except QuantityError as error:
        raise UnclearError(f"{head.unit} to {other.unit}", "Write both ends of the range in one unit.") from error
    if head.most <= head.least:
        raise UnclearError(f"{head.unit} to {other.unit}", "A range rises: write the smaller amount first.")


def _added(first: Amount, other: Amount, sign: int) -> Amount:
    try:
        total = first.number + sign * convert(other, first.unit).number
    except QuantityError as error:
        raise UnclearError(
            f"{first.unit} and {other.unit}", "These cannot be added; write them on two lines."
        ) from error
    if total <= 0:
        raise UnclearError(f"less {other.unit}", "Nothing is left of it.")
    return Amount(total, first.unit)


def _other_amounts(reader: Reader, head: Head) -> None:
    """The same amount in another measure behind it: "225 g (8 oz)", "1 cup/240 ml", "1 can (14 oz)"."""
    while True:
        before = reader.at
        match = reader.take(_PAREN)
        text = match[1] if match else ""
        if match is None and reader.take(_SLASH):
            found = re.match(r"[\d./\s]+\s?[a-z.]+(?:\s+\d+\s*oz)?", reader.rest, re.IGNORECASE)
            text = found[0] if found else ""
            reader.at += len(reader.text) - reader.at - len(reader.rest) + len(text)
        size = read_measure(re.sub(r"\beach\b", "", text)) if text else None
        if size is None or size.unit in _LENGTHS:
            reader.at = before
            return
        if head.each is None and (head.unit in CONTAINERS or re.search(r"\beach\b", text)):
            head.each = size
        else:
            head.also += (size,)


def _paren_with_size(reader: Reader) -> bool:
    match = _PAREN.match(reader.rest)
    return match is not None and not _ABOUT.match(match[1]) and read_measure(match[1]) is not None


def _paren_note(reader: Reader) -> tuple[str, ...]:
    """A bracket between number and unit that is no measure: "6 (1/2-inch-thick) slices", "one (1) egg"."""
    match = _PAREN.match(reader.rest)
    if match is None or read_measure(match[1]) is not None:
        return ()
    reader.take(_PAREN)
    return () if match[1].strip().isdigit() else (match[1].strip(),)


def _looks(reader: Reader) -> tuple[str, ...]:
    found = []
    while match := reader.take(_LOOKS) or reader.take(_CAN_SIZE):
        found.append(match[0].lower())
    return tuple(found)


def _unit(reader: Reader) -> str | None:
    if reader.take(_FLUID):
        return "fl oz"
    if match := reader.take(_EXACT_UNIT):
        return EXACT_UNITS[match[0].rstrip(".")]
    if match := reader.take(_UNIT):
        return _UNITS[match[0].rstrip(".").lower()]
    if match := _UNCLEAR_UNIT.match(reader.rest):
        raise UnclearError(match[0], f"Is that {UNCLEAR_UNITS[match[0].lower()]}? Write the unit in full.")
    return None


def _thing(reader: Reader, count: float) -> str | None:
    """The container or piece that is counted; "2 rib steaks" counts steaks, since two ribs would be ribs."""
    match = None if _RIB_CUTS.match(reader.rest) else _THING.match(reader.rest)
    if match is None:
        return None
    thing = _THINGS[match[0].lower()]
    if count > 1 and thing not in CONTAINERS and match[0].lower() == thing:
        return None
    reader.take(_THING_STOPPED)
    return thing


def _sure_of(number: Number, unit: str) -> None:
    """Ask where three digits behind a point or comma may be thousands: "1,500 kg", "1.250 g"; "1,500 g" is sure."""
    grouped = _GROUPED.fullmatch(number.text)
    if grouped is None:
        return
    by_thousands = unit in ("g", "mL", "")
    if by_thousands != (grouped[1] == ","):
        raise UnclearError(number.text, "Do point or comma part thousands here? Write it without, as 1500 or 1.5.")
