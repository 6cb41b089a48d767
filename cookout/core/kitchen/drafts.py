"""A recipe from elsewhere as a draft: what could be read, and the list of what a person still has to say."""

import re
from dataclasses import dataclass

from cookout.core.kitchen.ingredients import Parsed, Question
from cookout.core.kitchen.recipe import StepKind
from cookout.core.quantities import fahrenheit_to_celsius


@dataclass(frozen=True, slots=True)
class DraftStep:
    """A step as written; minutes (least, most), kind and oven temperature in Celsius where its words tell them.

    What the words tell is a proposal: the person confirms it. `minutes_are_given`: the source says them apart.
    """

    text: str
    section: str = ""
    minutes: tuple[int, int] | None = None
    kind: StepKind | None = None
    temperature_c: float | None = None
    minutes_are_given: bool = False


@dataclass(frozen=True, slots=True)
class DraftRecipe:
    """A recipe read from elsewhere. `serves` None: not told; `yields` is what the source says it makes."""

    name: str
    serves: int | None
    yields: str
    ingredients: tuple[Parsed | Question, ...]
    steps: tuple[DraftStep, ...]
    prepare_minutes: int | None = None
    cook_minutes: int | None = None
    total_minutes: int | None = None
    cut: tuple[str, ...] = ()

    @property
    def questions(self) -> tuple[Question, ...]:
        """The ingredient lines that are not sure."""
        return tuple(line for line in self.ingredients if isinstance(line, Question))

    @property
    def missing(self) -> tuple[str, ...]:
        """What the person has to add before it can be planned, in the order of a recipe."""
        wants = [
            ("name: what is it called?", not self.name),
            (f"serves: how many people does it serve ({self.yields or 'not told'})?", self.serves is None),
            ("food: which kind of food is it, for safe holding?", True),
            ("keeps: how long does it keep hot, cold or at air temperature?", True),
            ("ingredients: there are none", not self.ingredients),
            ("steps: there are none", not self.steps),
        ]
        lines = [f'ingredient "{one.line}": {one.unclear}: {one.ask}' for one in self.questions]
        steps = [want for number, step in enumerate(self.steps, 1) for want in _missing_in(number, step)]
        return (*(text for text, wanted in wants if wanted), *lines, *steps, *self.cut)


# The first that is met, from the last thing done in a step to the first: "mix and bake" bakes.
_KINDS = (
    (
        StepKind.ICE,
        r"\b(?:ice|icing|frost|frosting|glaze)\b(?=.*\b(?:cake|layers?|cookies|rolls|cupcakes|top|sides)\b)",
    ),
    (StepKind.COOL, r"\b(?:cool|chill|refrigerate)\b"),
    (StepKind.BAKE, r"\b(?:bake|roast|simmer|boil|fry|sear|grill|cook|braise|stew)\b"),
    (StepKind.REST, r"\b(?:rest|rise|proof|prove|marinate|soak|stand(?!\s+mixer))\b"),
    (StepKind.MIX, r"\b(?:mix|whisk|stir|beat|fold|combine|cream(?!\s+cheese)|knead|blend|whip)\b"),
    (StepKind.PREPARE, r"\b(?:chop|dice|peel|slice|grate|grease|line|cut|mince|measure|wash|trim|drain|season)\b"),
    (StepKind.FINISH, r"\b(?:serve|garnish|sprinkle|dust|plate)\b"),
)
_SPAN = re.compile(
    r"(?P<low>\d{1,3})\s*(?:(?:-|–|to|or)\s*(?P<high>\d{1,3})\s*)?(?P<unit>hours?|hrs?|h|minutes?|mins?)\b",
    re.IGNORECASE,
)
_DEGREES = re.compile(
    r"(?P<number>\d{2,3})\s*(?:(?:°|º|degrees?)\s*(?P<scale>[FC])?|(?P<bare>(?-i:[FC])))(?![a-z])", re.IGNORECASE
)
_OVEN_C = (90.0, 320.0)
_OVEN = re.compile(
    r"\b(?P<inches>[5-9]|1\d|2[0-4])(?:\s*|-)(?:inch(?:es)?|in\.?|\")(?:\s|-)+(?:deep\s+|cast[\s-]iron\s+|lidded\s+|iron\s+)*"
    r"(?:camp\s+|dutch\s+)?oven\b",
    re.IGNORECASE,
)


def draft_step(text: str, section: str = "", minutes: int | None = None) -> DraftStep:
    """A step with what its words tell: "Bake at 350 °F for 25 to 30 minutes" is a bake at 176.7 °C of 25 to 30 minutes.

    `minutes` is what the source says apart from its words, and comes first. A step that names several spans, or a
    temperature with no scale, tells nothing of it.
    """
    spans = {_minutes(match) for match in _SPAN.finditer(text)}
    told = (minutes, minutes) if minutes else spans.pop() if len(spans) == 1 else None
    kind = next((kind for kind, words in _KINDS if re.search(words, text, re.IGNORECASE)), None)
    heat = temperature_told(text) if kind is StepKind.BAKE else None
    return DraftStep(text, section, told, kind, heat, minutes_are_given=bool(minutes))


def minutes_told(text: str) -> int | None:
    """Minutes of a span in words, its parts added and of a range the most: "1 hr 20 min" is 80; None where none is."""
    return sum(_minutes(match)[1] for match in _SPAN.finditer(text)) or None


def _minutes(match: re.Match[str]) -> tuple[int, int]:
    factor = 60 if match["unit"].lower().startswith("h") else 1
    low = int(match["low"]) * factor
    return low, max(low, int(match["high"] or 0) * factor)


def temperature_told(text: str) -> float | None:
    """The one oven temperature that a text names, in degrees Celsius; None where it names none, or several."""
    found = {
        fahrenheit_to_celsius(float(match["number"])) if scale.lower() == "f" else float(match["number"])
        for match in _DEGREES.finditer(text)
        if (scale := match["scale"] or match["bare"])
    }
    # "350 °F (175 °C)" is one temperature said twice.
    fit = sorted(celsius for celsius in found if _OVEN_C[0] <= celsius <= _OVEN_C[1])
    return fit[-1] if fit and fit[-1] - fit[0] < 8 else None


def oven_told(text: str) -> int | None:
    """The nominal inches of the one lidded oven that a text names ("12-inch oven", "10 in. camp oven"), or None."""
    found = {int(match["inches"]) for match in _OVEN.finditer(text)}
    return found.pop() if len(found) == 1 else None


def _missing_in(number: int, step: DraftStep) -> list[str]:
    wants = [f"step {number}: how many minutes does it take?"] if step.minutes in (None, (0, 0)) else []
    if step.kind is None:
        wants.append(f"step {number}: what sort of work is it?")
    if step.kind is StepKind.BAKE and step.temperature_c is None:
        wants.append(f"step {number}: which oven, and how hot?")
    return wants
