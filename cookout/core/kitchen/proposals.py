"""What planning needs of each step of a draft, proposed from its words, each proposal with where it comes from.

A proposal is shown to a person, who lets it stand or changes it. What the words do not tell is left open (None) and
asked; whatever is a usual figure of ours and no reading says so in its reason.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from cookout.core.kitchen.drafts import DraftRecipe, DraftStep, draft_step, oven_told, temperature_told
from cookout.core.kitchen.recipe import BakeMethod, StepKind

LONGEST_NAME = 60
LONGEST_NOTE = 2000
LOOK_IN_SHARE = 0.8
"""First look-in at this share of the least minutes of a bake; our own figure."""
BATTER_WAITS = 30
"""Minutes that a batter with a raising agent may wait for its oven; common practice, no source."""

_APART = frozenset({StepKind.BAKE, StepKind.REST, StepKind.COOL, StepKind.ICE})
_SENTENCES = re.compile(r"(?<=[.!])\s+(?=[A-Z])")
_NEEDLESS = re.compile(
    r"^(?:(?:pre-?heat|heat)\s+(?:the\s+|your\s+|an\s+)?(?:oven|grill)\b[^.]*\.?|(?:serve|enjoy)\b[^\d]{0,60})$",
    re.IGNORECASE,
)
_METHODS = (
    (BakeMethod.SIMMER, r"\b(?:simmer|boil|braise|stew|poach)"),
    (BakeMethod.FRY, r"\b(?:fry|sear|saut|brown\b(?!\s+(?:sugar|on)))"),
    (BakeMethod.ROAST, r"\broast"),
)
_CLAUSE_END = re.compile(r"[.;:!]|(?<=.{16}),\s|\s(?:until|for|at|on|in|about)\s+(?=\d|the\s|a\s)|\s\(")
_PANS = re.compile(
    r"\b(?P<count>two|three|four|[2-4])\s+(?:greased\s+|lined\s+|buttered\s+)?(?P<inches>\d{1,2})"
    r"(?:\s*|-)(?:inch|in\.?|\")(?:\s*|-)(?:round\s+)?(?:cake\s+|layer\s+)?(?:pans?|tins?|layers?)",
    re.IGNORECASE,
)
_COUNTS = {"two": 2, "three": 3, "four": 4}
_RAISED = re.compile(r"\b(?:baking powder|baking soda|self-?\s?rising|bicarbonate)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class ProposedStep:
    """A step as it could stand in a recipe; None and 0 are left open. `why` maps a field to where it comes from."""

    name: str
    note: str
    kind: StepKind | None = None
    minutes: tuple[int, int, int] | None = None
    scope: str = ""
    method: BakeMethod | None = None
    temperature_c: float | None = None
    oven_inches: int | None = None
    look_in_from: int | None = None
    most_wait: int | None = None
    why: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Proposals:
    """The steps proposed, the pans they are made in, and steps of the draft that planning has no use for."""

    steps: tuple[ProposedStep, ...]
    pans: int = 1
    pan: str = ""
    left_out: tuple[str, ...] = ()


def propose(draft: DraftRecipe) -> Proposals:
    """Steps for the planner out of the steps of a draft.

    "Mix for 5 minutes. Bake at 350 °F for 30 to 35 minutes." becomes two steps, the second a bake of 30, 32 and 35
    minutes at 176.7 °C with its first look-in from 24 minutes on.
    """
    parted = [part for step in draft.steps for part in _parted(step)]
    kept = [step for step in parted if not _needless(step)]
    whole = " ".join(step.text for step in draft.steps)
    count, pan = _pans(whole)
    steps = [_proposed(step, count) for step in kept]
    steps = _from_totals(draft, _raised(draft, steps))
    left_out = tuple(step.text for step in parted if _needless(step))
    return Proposals(tuple(_with_heat(whole, step) for step in steps), count, pan, left_out)


def _needless(step: DraftStep) -> bool:
    """Coals and serving are planned by themselves, so a step that does nothing else is none of the recipe's."""
    return bool(_NEEDLESS.match(step.text))


def _parted(step: DraftStep) -> Iterator[DraftStep]:
    """A step as its sentences part it: whatever bakes, rests, cools or is iced stands by itself."""
    sentences = _SENTENCES.split(step.text)
    if len(sentences) == 1 or step.minutes_are_given:
        yield step
        return
    group: list[str] = []
    kind: StepKind | None = None
    for sentence in sentences:
        found = draft_step(sentence).kind
        apart = found is not None and found is not kind and (found in _APART or kind in _APART)
        needless = bool(_NEEDLESS.match(sentence)) or bool(_NEEDLESS.match(" ".join(group)))
        if group and (apart or needless):
            yield draft_step(" ".join(group), step.section)
            group, kind = [], None
        group.append(sentence)
        kind = kind if found is None else found
    yield draft_step(" ".join(group), step.section)


def _proposed(step: DraftStep, pans: int) -> ProposedStep:
    """One step with whatever its own words tell."""
    why: dict[str, str] = {}
    minutes = None
    if step.minutes is not None and step.minutes[0] > 0:
        low, high = step.minutes
        minutes = (low, (low + high) // 2, high)
        why["minutes"] = "the source gives the time of this step" if step.minutes_are_given else "read in its words"
    scope = "pan" if pans > 1 and step.kind in (StepKind.BAKE, StepKind.COOL) else ""
    if scope:
        why["scope"] = f"it is made in {pans} pans"
    return ProposedStep(_name(step), step.text[:LONGEST_NOTE], step.kind, minutes, scope, why=why)


def _name(step: DraftStep) -> str:
    """The first clause, as a step is called: "Bake at 350 °F for 30 minutes" is "Bake"; cut between words."""
    text = step.text.strip()
    end = _CLAUSE_END.search(text)
    name = text[: end.start()] if end and end.start() > 2 else text
    if len(name) > LONGEST_NAME:
        name = name[:LONGEST_NAME].rsplit(" ", 1)[0]
    return (name[:1].upper() + name[1:]).strip(" .,;:") or "Step"


def _with_heat(whole: str, step: ProposedStep) -> ProposedStep:
    """A bake with its method, temperature, oven and first look-in; any other step as it is."""
    if step.kind is not StepKind.BAKE:
        return step
    why = dict(step.why)
    method = next((found for found, words in _METHODS if re.search(words, step.note, re.IGNORECASE)), BakeMethod.BAKE)
    temperature, oven = temperature_told(step.note), oven_told(step.note)
    for field_name, found in (("temperature", temperature), ("oven", oven)):
        if found is not None:
            why[field_name] = "read in its words"
    if temperature is None and (temperature := temperature_told(whole)) is not None:
        why["temperature"] = "the one temperature that the recipe names"
    if oven is None and (oven := oven_told(whole)) is not None:
        why["oven"] = "the one oven that the recipe names"
    look_in = None
    if step.minutes is not None and step.minutes[0] > 1:
        look_in = max(1, int(step.minutes[0] * LOOK_IN_SHARE))
        why["look_in_from"] = f"{LOOK_IN_SHARE:.0%} of the least minutes, our own figure"
    return replace(step, method=method, temperature_c=temperature, oven_inches=oven, look_in_from=look_in, why=why)


def _from_totals(draft: DraftRecipe, steps: list[ProposedStep]) -> list[ProposedStep]:
    """The source's time to prepare, or to cook, for the one step of that sort that has no minutes of its own."""
    for told, kinds, what in (
        (draft.prepare_minutes, (StepKind.PREPARE, StepKind.MIX), "prepare"),
        (draft.cook_minutes, (StepKind.BAKE,), "cook"),
    ):
        places = [place for place, step in enumerate(steps) if step.kind in kinds]
        if told and len(places) == 1 and steps[places[0]].minutes is None:
            step = steps[places[0]]
            why = step.why | {"minutes": f"the source's whole time to {what}"}
            steps[places[0]] = replace(step, minutes=(told, told, told), why=why)
    return steps


def _raised(draft: DraftRecipe, steps: list[ProposedStep]) -> list[ProposedStep]:
    """A most wait between mixing and baking, where a raising agent is among the ingredients."""
    if not any(_RAISED.search(line.line) for line in draft.ingredients):
        return steps
    for place in range(1, len(steps)):
        if steps[place].kind is StepKind.BAKE and steps[place - 1].kind is StepKind.MIX:
            why = steps[place].why | {"most_wait": "raised with powder or soda: usual practice, no source"}
            steps[place] = replace(steps[place], most_wait=BATTER_WAITS, why=why)
    return steps


def _pans(whole: str) -> tuple[int, str]:
    """How many pans and of which size, where the words say one thing of it."""
    found = {(match["count"].lower(), match["inches"]) for match in _PANS.finditer(whole)}
    if len(found) != 1:
        return 1, ""
    count, inches = found.pop()
    return _COUNTS.get(count) or int(count), f"{inches} in round"
