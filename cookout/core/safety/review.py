"""Everything that safety has to say before an event, from plain facts: planning fills them, this judges them.

Nothing here knows plans, recipes or events, so a wait or a path is given as what it is: minutes, air, how it is held.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from cookout.core.quantities import show_temperature
from cookout.core.safety.allergens import DishAllergens, dish_allergens
from cookout.core.safety.finding import Finding, Severity, worst_first
from cookout.core.safety.foodpath import FoodPath
from cookout.core.safety.icing import Icing, icing_holds
from cookout.core.safety.limits import HOME, is_warm_air, needs_control
from cookout.core.safety.pathcheck import PathReport, judge_path
from cookout.core.safety.rules import LimitSet
from cookout.core.safety.site import SiteFacts, SiteItem, checklist, site_findings
from cookout.core.safety.waits import judge_wait


@dataclass(frozen=True, slots=True)
class PlannedWait:
    """A wait of the plan: `minutes` held "hot", "cold" or at "air" of `air_c`; see `waits.judge_wait`."""

    minutes: float
    held: str
    air_c: float
    from_cold: bool = False
    holder_c: float | None = None


@dataclass(frozen=True, slots=True)
class IcedCake:
    """A cake that bears an icing in air of `air_c`; `cooler` where it waits on ice and is out for `minutes_out`."""

    icing: Icing
    air_c: float
    sunny: bool
    cooler: bool = False
    minutes_out: float = 0.0


@dataclass(frozen=True, slots=True)
class DishFacts:
    """A dish as safety sees it.

    `food` and `held` are the recipe's words; `ingredients` names, or names with notes; `declared` the recipe's own list
    of allergens; `marked` where its times are written on it (time as the control).
    """

    id: str
    name: str
    food: str
    ingredients: tuple[tuple[str, str], ...] = ()
    declared: tuple[str, ...] = ()
    waits: tuple[PlannedWait, ...] = ()
    path: FoodPath | None = None
    iced: IcedCake | None = None
    marked: bool = False


@dataclass(frozen=True, slots=True)
class ReviewFacts:
    """An event as safety sees it. `air_c` is the warmest air of the day in degrees Celsius."""

    dishes: tuple[DishFacts, ...]
    site: SiteFacts
    air_c: float
    code: LimitSet = HOME
    units: str = "us"


@dataclass(frozen=True, slots=True)
class Review:
    """All answers: findings worst first, the site's list, and by dish id the allergens and the judged path."""

    findings: tuple[Finding, ...]
    checklist: tuple[SiteItem, ...]
    allergens: dict[str, DishAllergens]
    paths: dict[str, PathReport]

    @property
    def refused(self) -> tuple[Finding, ...]:
        """What must not be done as it is planned."""
        return tuple(finding for finding in self.findings if finding.severity is Severity.REFUSED)


def review(facts: ReviewFacts) -> tuple[Finding, ...]:
    """Everything found, worst first; see `review_all` for the lists beside it."""
    return review_all(facts).findings


def review_all(facts: ReviewFacts) -> Review:
    """Judge every wait, path, icing and list of ingredients, and the site, by one code."""
    items = checklist(facts.site, units=facts.units)
    allergens = {dish.id: dish_allergens(dish.ingredients, dish.declared) for dish in facts.dishes}
    judged = {dish.id: judge_path(dish.path, facts.code, units=facts.units) for dish in facts.dishes if dish.path}
    findings = [*site_findings(items), *_warm_air(facts)]
    for dish in facts.dishes:
        findings += _dish_findings(dish, facts)
        findings += judged[dish.id].findings if dish.id in judged else ()
        findings += _allergen_findings(dish, allergens[dish.id])
    return Review(worst_first(list(dict.fromkeys(findings))), items, allergens, judged)


def _warm_air(facts: ReviewFacts) -> Iterator[Finding]:
    holding = facts.code.holding
    if not is_warm_air(facts.air_c, holding) or not any(needs_control(dish.food) for dish in facts.dishes):
        return
    limit, minutes = show_temperature(holding.warm_air_c or 0.0, facts.units), holding.minutes_out(facts.air_c)
    text = f"Above {limit} food may stand out only {minutes} min."
    yield Finding("heat", Severity.WARNING, text, "Keep food hot or on ice, and serve at once.", facts.code.out_rule)


def _dish_findings(dish: DishFacts, facts: ReviewFacts) -> Iterator[Finding]:
    for wait in dish.waits:
        found = judge_wait(
            dish.food,
            wait.held,
            wait.air_c,
            wait.minutes,
            code=facts.code,
            marked=dish.marked,
            from_cold=wait.from_cold,
            holder_c=wait.holder_c,
            name=dish.name,
            about=dish.id,
            units=facts.units,
        )
        if found is not None:
            yield found
    if dish.iced is not None:
        cake = dish.iced
        found = icing_holds(
            cake.icing,
            cake.air_c,
            sunny=cake.sunny,
            cooler=cake.cooler,
            minutes_out=cake.minutes_out,
            about=dish.id,
            units=facts.units,
        )
        if found is not None:
            yield found


def _allergen_findings(dish: DishFacts, found: DishAllergens) -> Iterator[Finding]:
    if found.undeclared:
        left_out = ", ".join(allergen.value for allergen in found.undeclared)
        text = f"{dish.name} contains {left_out}, which its list of allergens leaves out."
        yield Finding(dish.id, Severity.WARNING, text, "Add it to the list, or correct the ingredient.")
    if found.unknown:
        text = f"Allergens of {dish.name} are not known: {', '.join(found.unknown)}."
        yield Finding(dish.id, Severity.NOTE, text, "Read the label, and name the parts as ingredients.")
