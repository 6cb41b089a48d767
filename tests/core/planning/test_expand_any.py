"""Whatever the event, expansion gives a sound problem."""

from dataclasses import replace

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from cookout.core.fire.weather import Weather
from cookout.core.kitchen.recipe import (
    After,
    Bake,
    BakeMethod,
    FoodKind,
    GearUse,
    Keeps,
    Minutes,
    Recipe,
    RecipeId,
    Scope,
    Skill,
    Step,
    StepId,
    StepKind,
)
from cookout.core.planning.event import (
    Dish,
    DishId,
    Event,
    Fuel,
    GearKind,
    Helper,
    HelperId,
    ReadyMade,
    ServingId,
    Window,
)
from cookout.core.planning.expand import expand
from cookout.core.planning.expanded import FIRE_KINDS, Expanded, TaskKind
from cookout.core.planning.network import arcs_of
from cookout.core.planning.refusals import refusals
from tests.core.planning.build import event, gear, serving, slot

SKILLS = st.frozensets(st.sampled_from([Skill("fire"), Skill("baker"), Skill("knife")]))
MINUTES = st.tuples(st.integers(1, 40), st.integers(0, 20), st.integers(0, 20)).map(
    lambda m: Minutes(m[0], m[0] + m[1], m[0] + m[1] + m[2])
)
BAKES = st.builds(
    Bake,
    st.sampled_from([8, 10, 12, 14]),
    st.sampled_from(BakeMethod),
    st.floats(100, 260),
    st.integers(0, 60),
    st.integers(0, 45),
    st.booleans(),
)
USES = st.lists(st.builds(GearUse, st.sampled_from(["mixer", "bowl", "cooler"]), st.integers(1, 4)), max_size=2)


@st.composite
def recipes(draw: st.DrawFn, name: str) -> Recipe:
    """A chain of steps, each after the one before, so that the recipe never contradicts itself."""
    steps: list[Step] = []
    for number in range(draw(st.integers(1, 5))):
        oven = draw(st.none() | BAKES)
        least = draw(st.integers(0, 30))
        most = draw(st.none() | st.integers(least, 90))
        steps.append(
            Step(
                StepId(f"step{number}"),
                f"Step {number}",
                StepKind.BAKE if oven else draw(st.sampled_from(StepKind)),
                draw(st.sampled_from(Scope)),
                draw(MINUTES),
                draw(st.integers(0, 2)),
                draw(SKILLS),
                tuple(draw(USES)),
                (After(steps[-1].id, least, most),) if steps else (),
                oven,
                draw(st.booleans()),
            )
        )
    keeps = Keeps(*(draw(st.none() | st.integers(1, 200)) for _ in range(3)))
    return Recipe(
        RecipeId(name),
        name,
        draw(st.integers(1, 20)),
        tuple(steps),
        draw(st.sampled_from(FoodKind)),
        keeps,
        pans=draw(st.integers(1, 3)),
        rests_minutes=draw(st.integers(0, 200)),
        best_within=draw(st.integers(0, 60)),
        held=draw(st.sampled_from(["air", "hot", "cold"])),
    )


@st.composite
def helpers(draw: st.DrawFn, name: str) -> Helper:
    windows = draw(st.lists(st.tuples(st.integers(-60, 600), st.integers(0, 500)), max_size=3))
    return Helper(
        HelperId(name),
        name,
        draw(SKILLS),
        tuple(Window(start, start + length) for start, length in windows),
        draw(st.booleans()),
        draw(st.booleans()),
        draw(st.integers(1, 90)),
    )


@st.composite
def events(draw: st.DrawFn) -> Event:
    menu = [draw(recipes(f"r{number}")) for number in range(draw(st.integers(1, 3)))]
    dishes = [
        Dish(
            DishId(f"d{number}"),
            made.id,
            draw(st.sampled_from([ServingId("s"), ServingId("t"), None])),
            draw(st.none() | st.integers(1, 40)),
        )
        for number, made in enumerate(menu)
    ]
    live = [(d.id, step.id) for d, r in zip(dishes, menu, strict=True) for step in r.steps if draw(st.booleans())]
    ready = [
        ReadyMade(d.id, 240, draw(st.none() | st.sampled_from([step.id for step in r.steps])))
        for d, r in zip(dishes, menu, strict=True)
        if draw(st.booleans())
    ]
    kit = [gear(f"{kind}-{size}", kind, draw(st.integers(0, 3)), inches=size, coals=size * 3, spots=size // 4,
                spot_inches=size)
           for kind in GearKind for size in (10, 14) if draw(st.booleans())]  # fmt: skip
    return event(
        tuple(menu),
        tuple(dishes),
        servings=(serving("s", 360, 12), serving("t", 500, 9)),
        slots=(slot(live=tuple(live), ready=tuple(ready), presenter="h0"),) if draw(st.booleans()) else (),
        kit=tuple(kit),
        crew=tuple(draw(helpers(f"h{number}")) for number in range(draw(st.integers(1, 4)))),
        weather=Weather(draw(st.floats(-10, 40)), draw(st.floats(0, 15))),
        fuel=Fuel(draw(st.sampled_from(["briquettes", "lump"])), draw(st.none() | st.integers(0, 300))),
        setup_minutes=draw(st.integers(0, 30)),
    )


@settings(max_examples=80, deadline=None)
@given(events(), st.booleans())
def test_every_event_becomes_a_problem_whose_parts_fit_one_another(made_up: Event, share: bool) -> None:
    # The problem itself refuses double ids and links to nothing.
    assume(not refusals(made_up))
    made = expand(made_up, share_firings=share)
    assert made.info.keys() == made.problem.task_by_id.keys()
    assert all(task_id == about.id for task_id, about in made.info.items())
    assert all(task.minutes > 0 for task in made.problem.tasks)
    assert all(link.most is None or (link.least or 0) <= link.most for link in made.problem.links)
    assert made.problem.opens < made.problem.closes


@settings(max_examples=80, deadline=None)
@given(events(), st.booleans())
def test_every_lot_of_coals_is_lit_and_every_helper_asked_may_do_the_work(made_up: Event, share: bool) -> None:
    made = expand(made_up, share_firings=share)
    coals = [about.id for about in made.info.values() if about.kind in (TaskKind.LAY_COALS, TaskKind.TOP_UP)]
    assert {task for firing in made.firings for task in firing.feeds} == set(coals)
    for task in made.problem.tasks:
        about = made.info[task.id]
        asked = {made.problem.resource_by_id[option].helper for need in task.needs for option in need.options}
        for helper in (h for h in made_up.crew if h.id in asked):
            assert about.skills <= helper.skills
            assert about.kind not in FIRE_KINDS or helper.may_tend_fire
            assert not about.hot or helper.adult or helper.fire_allowed


@settings(max_examples=80, deadline=None)
@given(events(), st.booleans())
def test_the_waits_never_contradict_one_another(made_up: Event, share: bool) -> None:
    # Chains of steps alone: what slots ask for may well be impossible. Two firings for one oven are so by intent.
    assume(not refusals(made_up))
    made = expand(replace(made_up, slots=()), share_firings=share)
    assert not contradiction(made)


def contradiction(made: Expanded) -> bool:
    """Whether some circle of waits takes more time than none at all."""
    tasks = made.problem.task_by_id
    arcs = [arc for link in made.problem.links for arc in arcs_of(link, tasks[link.before], tasks[link.after])]
    starts = dict.fromkeys(tasks, 0)
    for _ in range(len(tasks) + 1):
        moved = False
        for arc in arcs:
            if starts[arc.tail] + arc.minutes > starts[arc.head]:
                starts[arc.head] = starts[arc.tail] + arc.minutes
                moved = True
        if not moved:
            return False
    return True


@settings(max_examples=30, deadline=None)
@given(events())
def test_the_same_event_gives_the_same_problem(made_up: Event) -> None:
    assert expand(made_up) == expand(made_up)
