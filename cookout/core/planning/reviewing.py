"""What safety says of a planned event: the plan's waits, icings and place told as plain facts, and its answers."""

from dataclasses import dataclass

from cookout.core.kitchen.recipe import FIRE_SKILL, Recipe, Step, StepKind
from cookout.core.planning.event import Dish, DishId, Event
from cookout.core.planning.expand.coolings import icing_on
from cookout.core.planning.expanded import Expanded, TaskKind
from cookout.core.planning.foodpaths import Stay, chain, food_path
from cookout.core.planning.problem import TaskId
from cookout.core.planning.result import Plan
from cookout.core.safety.foodpath import FoodPath
from cookout.core.safety.review import DishFacts, IcedCake, Review, ReviewFacts, review_all
from cookout.core.safety.site import SiteFacts


def review_of(expanded: Expanded, plan: Plan | None) -> Review:
    """Everything safety has to say; without a plan, what can be said of the event alone."""
    event = expanded.event
    reader = Reader(expanded, plan)
    facts = ReviewFacts(
        dishes=tuple(reader.dish(dish) for dish in event.dishes),
        site=reader.site(),
        air_c=event.warmest_c(expanded.problem.opens, expanded.problem.closes),
        code=event.food_rules.limits,
        units=event.units,
    )
    return review_all(facts)


@dataclass(frozen=True, slots=True)
class Reader:
    """Reads facts for safety out of a plan."""

    expanded: Expanded
    plan: Plan | None

    @property
    def event(self) -> Event:
        """The event that was planned."""
        return self.expanded.event

    def dish(self, dish: Dish) -> DishFacts:
        """A dish with its path and its icing."""
        recipe = self.event.recipe_of(dish)
        return DishFacts(
            dish.id,
            recipe.name,
            recipe.food.value,
            ingredients=tuple((each.name, each.note) for each in recipe.ingredients),
            declared=recipe.allergens,
            path=self.path(dish, recipe),
            iced=self.iced(dish, recipe),
            marked=self.event.food_rules.marked,
        )

    def path(self, dish: Dish, recipe: Recipe) -> FoodPath | None:
        """The way of the dish's food that waits longest; None where nobody eats it, or it is not planned."""
        eaten = self.last_eaten(dish.id)
        if self.plan is None or eaten is None:
            return None
        stays = tuple(stay for step in chain(recipe) if (stay := self.stay(dish.id, step)) is not None)
        return food_path(
            recipe, stays, self.plan.start(eaten), self.held(dish.id, recipe), self.event.warmest_c,
            self.event.food_rules.limits, marked=self.event.food_rules.marked, about=dish.id,
        )  # fmt: skip

    def last_eaten(self, dish: DishId) -> TaskId | None:
        """The last time that a dish is served or tasted; None where it is neither, or where there is no plan."""
        eaten = [task for (_, served), task in self.expanded.serves.items() if served == dish]
        eaten += [info.id for info in self.expanded.info.values() if (info.kind, info.dish) == (TaskKind.TASTE, dish)]
        return max(eaten, key=self.span, default=None) if self.plan is not None else None

    def stay(self, dish: DishId, step: Step) -> Stay | None:
        """The copy of a step that is over first, whose food waits longest."""
        spans = [self.cooked(task) if step.bake else self.span(task) for task in self.tasks_of(dish, step)]
        if not spans:
            return None
        start, end = min(spans, key=lambda span: span[1])
        return Stay(step, start, end)

    def tasks_of(self, dish: DishId, step: Step) -> list[TaskId]:
        """The tasks that are the step itself."""
        bakes = {run.bakes for run in self.expanded.bake_runs}
        kind = TaskKind(step.kind.value)
        return [
            info.id
            for info in self.expanded.info.values()
            if (info.dish, info.step) == (dish, step.id) and (info.id in bakes if step.bake else info.kind is kind)
        ]

    def span(self, task: TaskId) -> tuple[int, int]:
        """When a task of the plan starts and ends."""
        assert self.plan is not None
        return self.plan.start(task), self.plan.end(self.expanded.problem.task_by_id[task])

    def cooked(self, task: TaskId) -> tuple[int, int]:
        """From when food goes into the oven until it is out."""
        run = next(run for run in self.expanded.bake_runs if run.bakes == task)
        return self.span(run.loads)[0], self.span(run.takes_out)[1]

    def held(self, dish: DishId, recipe: Recipe) -> str:
        """How the finished dish is held."""
        return "cold" if dish in self.expanded.on_ice else recipe.held

    def iced(self, dish: Dish, recipe: Recipe) -> IcedCake | None:
        """The icing with the warmest air it stands in, from being put on until it is served."""
        icing = icing_on(recipe)
        step = next((step for step in recipe.steps if step.kind is StepKind.ICE), None)
        if icing is None or step is None or not self.tasks_of(dish.id, step):
            return None
        start, end, minutes = self._icing_time(dish, step)
        weathers = self.event.weather_between(start, end)
        warmest = max(weathers, key=lambda weather: (weather.air_c, weather.sunny))
        cold = self.held(dish.id, recipe) == "cold"
        return IcedCake(icing, warmest.air_c, warmest.sunny, cooler=cold, minutes_out=minutes)

    def _icing_time(self, dish: Dish, step: Step) -> tuple[int, int, int]:
        tasks = self.tasks_of(dish.id, step)
        if self.plan is None:
            at = self.event.serving(dish.serving).at if dish.serving is not None else self.expanded.problem.opens
            return at - step.minutes.usual, at, step.minutes.usual
        start, end = min(self.span(task) for task in tasks)
        serves = [task for (_, served), task in self.expanded.serves.items() if served == dish.id]
        return start, self.plan.start(serves[0]) if serves else end, end - start

    def site(self) -> SiteFacts:
        """The place, with the worst wind of the hours in which there is fire."""
        event = self.event
        weathers = event.weather_between(*self._fire_time())
        tenders = [helper for helper in event.crew if helper.may_tend_fire]
        return SiteFacts(
            has_fire=bool(self.expanded.firings),
            dry_grass=event.place.dry_grass,
            wind_mps=max(weather.wind_mps for weather in weathers),
            gust_mps=max(weather.gust_mps for weather in weathers),
            wind_limit_mps=event.wind_limit_mps,
            fire_warning=event.fire_warning,
            clear_m=event.place.clear_m,
            enclosure=event.place.enclosure,
            children=True if any(not helper.adult for helper in event.crew) else event.place.children,
            water=event.place.water,
            shovel=event.place.shovel,
            metal_can=event.place.metal_can,
            adults_at_fire=sum(helper.adult for helper in tenders),
            fire_minors=sum(FIRE_SKILL in helper.skills and not helper.adult for helper in tenders),
        )

    def _fire_time(self) -> tuple[int, int]:
        problem = self.expanded.problem
        lit = [firing.lights for firing in self.expanded.firings]
        if self.plan is None or not lit:
            return problem.opens, problem.closes
        out = [run.takes_out for run in self.expanded.bake_runs]
        return min(self.span(task)[0] for task in lit), max(self.span(task)[1] for task in out)
