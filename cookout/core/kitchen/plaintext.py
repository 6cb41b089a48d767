"""A recipe written as plain text read into a draft: a title, lines of ingredients, steps.

What parts a text is told by its headings ("Ingredients", "Method") where it has them; else by the look of its lines:
an ingredient begins with an amount or is short and no sentence, a step is numbered or a sentence. Whatever is read
wrongly stands in the draft for a person to see and mend; nothing of it counts before that.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from cookout.core.kitchen.drafts import DraftRecipe, DraftStep, draft_step, minutes_told
from cookout.core.kitchen.ingredients import Parsed, parse_line
from cookout.core.kitchen.linked_data import RecipeTextError

LONGEST_TEXT = 40_000
MOST_LINES = 200
LONGEST_NAME = 200
LONGEST_STEP = 2000
SHORT_LINE = 70
"""Letters up to which a line that is no sentence may be an ingredient without an amount."""

_EATERS = r"(?:servings?|people|persons?|portions?|guests?|helpings?)"
_SERVES = re.compile(
    r"^(?:yields?|makes|serves|feeds|servings|portions)\b\s*:?\s*(?:about\s+)?(?P<number>\d{1,4})?"
    r"(?:\s*(?:-|–|to)\s*\d{1,4})?(?P<unit>.*)$",
    re.IGNORECASE,
)
_FOR_PEOPLE = re.compile(rf"^(?:for\s+)?(?P<number>\d{{1,4}})\s+{_EATERS}\s*\.?$", re.IGNORECASE)
_TIME = re.compile(
    r"^(?P<what>prep(?:aration)?|cook(?:ing)?|bak(?:e|ing)|total|active|ready in)\b(?:\s+time\s*:?|\s*:|(?<=in))"
    r"\s*(?P<time>\d.*)$",
    re.IGNORECASE,
)
_INGREDIENTS = re.compile(
    r"^(?:the\s+)?(?:ingredients?|you(?:'ll|\s+will)?\s+need|what you need)\b.{0,30}$", re.IGNORECASE
)
_STEPS = re.compile(
    r"^(?:the\s+)?(?:method|directions?|instructions?|steps?|preparation|procedure|how to make.*|what to do|to make)"
    r"\s*[:.]?$",
    re.IGNORECASE,
)
_END = re.compile(
    r"^(?:(?:recipe|cook'?s?)\s+)?(?:notes?|tips?|nutrition.*|comments?|reviews?|tags?|source|storage|equipment)"
    r"(?:\s*\(\d+\))?\s*:?$",
    re.IGNORECASE,
)
_NUMBERED = re.compile(r"^(?:step\s*)?(?P<number>\d{1,2})\s*(?:[.):]|-(?=\s))\s*(?P<text>\S.*)?$", re.IGNORECASE)
_STEP_HEAD = re.compile(r"^step\s*\d{1,2}\s*[.:]?$", re.IGNORECASE)
_BULLET = re.compile(r"^(?:[•●▪◦☐□*·]|-(?=\s)|\[[ xX]?\])\s*")
_AMOUNT_FIRST = re.compile(
    r"^(?:about\s+)?(?:\d|[¼½¾⅓⅔⅛⅜⅝⅞]|(?:an?|one|two|three|four|half)\s+(?!few\b)\w+)", re.IGNORECASE
)
_SENTENCE = re.compile(r"[.!;]\s*$|[a-z)]\.\s+[A-Z]")


@dataclass(slots=True)
class _Parts:
    """What was told apart so far."""

    name: str = ""
    serves: int | None = None
    yields: str = ""
    times: dict[str, int] = field(default_factory=dict)
    ingredients: list[str] = field(default_factory=list)
    steps: list[tuple[str, str]] = field(default_factory=list)
    section: str = ""


def draft_from_text(text: str) -> DraftRecipe:
    """The draft of a recipe written as plain text; `RecipeTextError` where no ingredient and no step is found."""
    if len(text) > LONGEST_TEXT:
        raise RecipeTextError(f"The text has more than {LONGEST_TEXT:,} characters; give the recipe alone.")
    parts = _Parts()
    _read(parts, [_plain(line) for line in text.splitlines()])
    if not parts.ingredients and not parts.steps:
        remedy = "write a title, the ingredients one a line, and the steps one a line or numbered"
        raise RecipeTextError(f"No recipe was found in the text; {remedy}.")
    return DraftRecipe(
        name=parts.name[:LONGEST_NAME],
        serves=parts.serves,
        yields=parts.yields[:LONGEST_NAME],
        ingredients=tuple(parse_line(line) for line in parts.ingredients[:MOST_LINES]),
        steps=tuple(_steps(parts)),
        prepare_minutes=parts.times.get("prepare"),
        cook_minutes=parts.times.get("cook"),
        total_minutes=parts.times.get("total"),
        cut=tuple(
            f"{what}: only the first {MOST_LINES} were read"
            for what, found in (("ingredients", parts.ingredients), ("steps", parts.steps))
            if len(found) > MOST_LINES
        ),
    )


def _plain(line: str) -> str:
    """A line without marks of lists and headings, with single spaces."""
    line = "".join(sign if sign.isprintable() else " " for sign in line)
    line = re.sub(r"^#{1,6}\s+|\*\*|__", "", line.strip())
    return " ".join(line.split())


def _steps(parts: _Parts) -> Iterator[DraftStep]:
    for text, section in parts.steps[:MOST_LINES]:
        yield draft_step(text[:LONGEST_STEP], section)


def _read(parts: _Parts, lines: list[str]) -> None:
    """Go through the lines; with headings by them, else by their looks."""
    headed = any(_INGREDIENTS.match(line) for line in lines) or any(_STEPS.match(line) for line in lines)
    part, after_gap = "head", True
    for line in lines:
        if not line:
            after_gap = True
            continue
        if _INGREDIENTS.match(line):
            part, parts.section = "ingredients", ""
        elif _STEPS.match(line):
            part, parts.section = "steps", ""
        elif part == "steps" and _END.match(line):
            return
        elif part == "steps" or not _head_line(parts, line):
            part = part if headed and part != "head" else _part_by_looks(parts, line, part, headed=headed)
            _take(parts, line, part, after_gap=after_gap)
        after_gap = False


def _head_line(parts: _Parts, line: str) -> bool:
    """Whether the line only says how many it serves or how long it takes; that is then noted."""
    if time := _TIME.match(line):
        minutes = minutes_told(time["time"])
        word = time["what"].lower()
        what = "total" if word in ("total", "ready in") else "cook" if word.startswith(("cook", "bak")) else "prepare"
        if minutes:
            parts.times[what] = minutes
        return True
    if len(line) > SHORT_LINE or _NUMBERED.match(line):
        return False
    if people := _FOR_PEOPLE.match(line):
        parts.serves, parts.yields = int(people["number"]) or None, line
        return True
    made = _SERVES.match(line)
    if made is None:
        return False
    parts.yields = line
    told = made["unit"].strip(" .").lower()
    counts_people = line.lower().startswith(("serves", "feeds", "servings", "portions"))
    if made["number"] and int(made["number"]) and (re.fullmatch(_EATERS, told) or (counts_people and not told)):
        parts.serves = int(made["number"])
    return True


def _part_by_looks(parts: _Parts, line: str, part: str, *, headed: bool) -> str:
    """Which part the line belongs to where no heading says it."""
    if headed:
        return "head"
    if _looks_like_step(line, part):
        return "steps"
    if part == "steps" and not (_AMOUNT_FIRST.match(_BULLET.sub("", line)) and len(line) <= SHORT_LINE):
        return "steps"
    if not parts.name and not parts.ingredients:
        return "head"
    return "ingredients" if _looks_like_ingredient(line) else "head"


def _looks_like_step(line: str, part: str) -> bool:
    numbered = _NUMBERED.match(line)
    if numbered and numbered["text"]:
        # "1. flour" is no step, "1) Mix flour and milk" is; "1.5 cups" is neither numbered nor a step.
        return len(numbered["text"].split()) > 2 and not re.match(r"\d", numbered["text"])
    if part == "steps" and numbered:
        return True
    return len(line) > SHORT_LINE or (bool(_SENTENCE.search(line)) and not _AMOUNT_FIRST.match(line))


def _looks_like_ingredient(line: str) -> bool:
    line = _BULLET.sub("", line)
    return bool(_AMOUNT_FIRST.match(line)) or (len(line) <= SHORT_LINE and isinstance(parse_line(line), Parsed))


def _take(parts: _Parts, line: str, part: str, *, after_gap: bool) -> None:
    if part == "head":
        if not parts.name:
            parts.name = line.rstrip(":")
    elif part == "ingredients":
        line = _BULLET.sub("", line)
        if not line.endswith(":"):
            parts.ingredients.append(line)
    else:
        _take_step(parts, line, after_gap=after_gap)


def _take_step(parts: _Parts, line: str, *, after_gap: bool) -> None:
    """A new step, the rest of the last one, or a heading over the next."""
    if _STEP_HEAD.match(line):
        return
    numbered, bulleted = _NUMBERED.match(line), _BULLET.match(line)
    text = numbered["text"] or "" if numbered else _BULLET.sub("", line)
    if not text:
        return
    if text.endswith(":") and len(text) <= SHORT_LINE:
        parts.section = text.rstrip(":")
    elif parts.steps and not (numbered or bulleted or after_gap) and not _ended(parts.steps[-1][0]):
        earlier, section = parts.steps[-1]
        parts.steps[-1] = (f"{earlier} {text}", section)
    else:
        parts.steps.append((text, parts.section))


def _ended(text: str) -> bool:
    """Whether a step ends in a full stop, so that an unnumbered line behind it begins another."""
    return text.rstrip().endswith((".", "!", ")", ":"))
