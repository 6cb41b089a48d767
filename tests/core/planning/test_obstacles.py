"""Impossible events: each says what stands in the way, and each way out that is offered works when it is applied."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from time import perf_counter

import pytest

from cookout.core.eventfile import read_event, write_event
from cookout.core.kitchen.recipe import FIRE_SKILL, GearUse
from cookout.core.planning.changes import ChangeError
from cookout.core.planning.check import check, check_event
from cookout.core.planning.event import Event, Gear, GearId, GearKind, ServingId, Window
from cookout.core.planning.pipeline import Outcome, plan_event
from cookout.core.planning.result import Limits, Status, Watch
from cookout.core.planning.trying import Trials
from cookout.core.planning.ways_out import apply_change

EVENTS = Path(__file__).parents[3] / "fixtures" / "events"
LIMITS = Limits(seconds=5.0, workers=2, seed=1)


def supper() -> Event:
    return read_event((EVENTS / "supper.toml").read_text(encoding="utf-8"), "supper.toml")


def test_where_a_day_goes_on_into_another_week_a_helper_for_all_of_it_is_no_way_out() -> None:
    """The supper thirteen days after its date, with nobody who may tend the fire."""
    days = 13 * 24 * 60
    event = supper()
    late = replace(
        event,
        servings=tuple(replace(serving, at=serving.at + days) for serving in event.servings),
        crew=tuple(
            replace(
                helper,
                skills=frozenset(),
                windows=tuple(Window(hours.start + days, hours.end + days) for hours in helper.windows),
            )
            for helper in event.crew
        ),
    )
    assert read_event(write_event(late), "late.toml") == late
    trials = Trials(late, perf_counter() + 10, LIMITS, Watch())
    assert trials.narrowed(FIRE_SKILL) is None


def too_few_ovens(event: Event) -> Event:
    """Both dishes in 12-inch ovens, of which there is one, and neither keeps long enough to wait for the other."""
    recipes = tuple(
        replace(
            recipe,
            keeps=replace(recipe.keeps, hot=min(recipe.keeps.hot or 20, 20), air=min(recipe.keeps.air or 20, 20)),
            steps=tuple(
                replace(s, bake=replace(s.bake, oven_inches=12)) if s.bake is not None else s for s in recipe.steps
            ),
        )
        for recipe in event.recipes
    )
    return replace(event, recipes=recipes, gear=tuple(g for g in event.gear if g.inches != 10))


def nobody_for_the_fire_in_time(event: Event) -> Event:
    """Whoever has the fire skill comes when the coals should long be lit."""
    late = (Window(event.servings[0].at - 30, event.servings[0].at + 90),)
    return replace(event, crew=tuple(replace(h, windows=late) if FIRE_SKILL in h.skills else h for h in event.crew))


def nobody_with_the_fire_skill(event: Event) -> Event:
    return replace(event, crew=tuple(replace(h, skills=h.skills - {FIRE_SKILL}) for h in event.crew))


def serving_before_the_crew_arrives(event: Event) -> Event:
    first = min(window.start for helper in event.crew for window in helper.windows)
    return replace(event, servings=tuple(replace(s, at=first - 60) for s in event.servings))


IMPOSSIBLE = [
    too_few_ovens,
    nobody_for_the_fire_in_time,
    nobody_with_the_fire_skill,
    serving_before_the_crew_arrives,
]


@pytest.fixture(params=IMPOSSIBLE, ids=lambda spoil: spoil.__name__)
def spoilt(request: pytest.FixtureRequest) -> Event:
    spoil: Callable[[Event], Event] = request.param
    return spoil(supper())


def test_each_says_what_stands_in_the_way_and_every_way_out_works_when_applied(spoilt: Event) -> None:
    outcome = plan_event(spoilt, LIMITS)
    assert outcome.record.status is Status.IMPOSSIBLE
    assert outcome.record.tasks == ()
    assert outcome.record.obstacles
    assert outcome.record.ways_out
    for way in outcome.record.ways_out:
        mended = plan_event(apply_change(spoilt, way.change), LIMITS)
        assert mended.record.tasks, way.text
        assert_sound(mended)


def assert_sound(outcome: Outcome) -> None:
    assert outcome.result.plan is not None
    assert check(outcome.expanded.problem, outcome.result.plan) == ()
    assert check_event(outcome.expanded, outcome.result.plan) == ()


def ways(event: Event) -> list[str]:
    return [way.text for way in plan_event(event, LIMITS).record.ways_out]


def test_too_few_ovens_offers_one_more_oven() -> None:
    assert any("12-inch" in text and "One more" in text for text in ways(too_few_ovens(supper())))


def test_nobody_for_the_fire_offers_someone_with_the_skill_for_a_stated_time() -> None:
    assert any("Someone with the fire skill from" in text for text in ways(nobody_with_the_fire_skill(supper())))


def test_a_serving_before_the_crew_arrives_offers_to_serve_later_or_to_come_earlier() -> None:
    texts = ways(serving_before_the_crew_arrives(supper()))
    assert any(text.startswith("Serve") for text in texts) or any("earlier" in text for text in texts)


def test_a_change_that_does_not_fit_is_refused_with_a_remedy() -> None:
    with pytest.raises(ChangeError, match="plan again"):
        apply_change(supper(), {"kind": "add_gear", "gear": "no-such-gear", "count": 1})


def test_two_entries_of_one_oven_are_as_good_as_one_entry_of_two() -> None:
    event = supper()
    ten = next(g for g in event.gear if g.inches == 10)
    apart = (
        replace(ten, id=GearId("mine"), name="Mine", inches=12),
        replace(ten, id=GearId("yours"), name="Yours", inches=12),
    )
    others = tuple(g for g in event.gear if g.kind is not GearKind.OVEN)
    outcome = plan_event(replace(too_few_ovens(event), gear=(*others, *apart)), LIMITS)
    assert outcome.record.tasks
    assert {bake.unit for bake in outcome.record.bakes} == {"Mine", "Yours"}


def test_missing_gear_is_named_and_not_told_as_missing_crew() -> None:
    event = supper()
    bare = replace(event, gear=tuple(g for g in event.gear if g.kind not in (GearKind.BOWL, GearKind.OVEN)))
    record = plan_event(bare, LIMITS).record
    said = " ".join(record.obstacles)
    assert "There is no bowl" in said
    assert "12-inch oven" in said
    assert "crew" not in said
    assert any(way.change["kind"] == "bring_missing" for way in record.ways_out)


def test_a_serving_without_dishes_beside_a_crew_that_comes_too_late_still_gets_an_answer() -> None:
    event = serving_before_the_crew_arrives(supper())
    idle = replace(event.servings[0], id=ServingId("later"), name="Later", at=event.servings[0].at + 300)
    record = plan_event(replace(event, servings=(*event.servings, idle)), LIMITS).record
    assert record.obstacles


def on_trivets(event: Event, trivets: int) -> Event:
    """Both bakes stand on a trivet and keep for 20 minutes, so that they want their trivets at the same time."""
    recipes = tuple(
        replace(
            recipe,
            keeps=replace(
                recipe.keeps, hot=20 if recipe.keeps.hot is not None else None, air=min(recipe.keeps.air or 20, 20)
            ),
            steps=tuple(replace(s, bake=replace(s.bake, trivet=True)) if s.bake else s for s in recipe.steps),
        )
        for recipe in event.recipes
    )
    own = (Gear(GearId("trivet"), GearKind.TRIVET, "Low trivet", trivets),) if trivets else ()
    return replace(event, recipes=recipes, gear=(*event.gear, *own))


def test_where_no_trivet_is_there_it_is_named_once_with_the_steps_that_want_it() -> None:
    record = plan_event(on_trivets(supper(), 0), LIMITS).record
    assert record.obstacles == (
        "There is no trivet (“Sausage and bean pot: Simmer the beans”, “Peach cobbler: Bake the cobbler”).",
    )
    assert "Bring 2 more: trivet." in [way.text for way in record.ways_out]


def test_where_one_trivet_more_would_do_that_is_a_way_out_and_the_trivet_is_what_is_short() -> None:
    record = plan_event(on_trivets(supper(), 1), LIMITS).record
    assert any("Too much wants “Low trivet”" in said and "there is only 1" in said for said in record.obstacles)
    assert "One more: Low trivet." in [way.text for way in record.ways_out]


@pytest.mark.parametrize(
    ("have", "said"), [(0, "There is no bowl, and 2 are wanted at once"), (1, "There is 1 bowl, and 2 are wanted")]
)
def test_too_few_bowls_for_one_step_are_counted(have: int, said: str) -> None:
    event = supper()
    two = GearUse("bowl", 2)
    recipes = tuple(
        replace(r, steps=tuple(replace(s, gear=(two,)) if s.gear else s for s in r.steps)) for r in event.recipes
    )
    gear = tuple(replace(g, count=have) if g.kind is GearKind.BOWL else g for g in event.gear)
    bowls = replace(event, recipes=recipes, gear=tuple(g for g in gear if g.count))
    record = plan_event(bowls, LIMITS).record
    assert [obstacle.startswith(said) for obstacle in record.obstacles] == [True]
    assert any(way.change["kind"] in ("add_gear", "buy_gear") for way in record.ways_out)


def test_without_a_chimney_a_chimney_is_what_is_missing() -> None:
    event = supper()
    cold = replace(event, gear=tuple(g for g in event.gear if g.kind is not GearKind.CHIMNEY))
    record = plan_event(cold, LIMITS).record
    assert any("There is no chimney" in said for said in record.obstacles)
    assert any(way.change.get("gear_kind") == "chimney" for way in record.ways_out)
