"""Every rule of an event, reread from the event itself rather than from the problem made of it."""

from collections.abc import Callable, Iterator

from cookout.core.planning.check import cooking, crew, fire, pins, stage
from cookout.core.planning.check.breach import Breach
from cookout.core.planning.check.reading import Reading
from cookout.core.planning.expanded import Expanded
from cookout.core.planning.result import Plan

Rule = Callable[[Reading], Iterator[Breach]]

RULES: tuple[Rule, ...] = (
    crew.hands_and_skills,
    crew.within_windows,
    crew.nobody_in_two_places,
    crew.fire_only_by_those_allowed,
    crew.hot_iron_only_by_those_allowed,
    crew.breaks_taken,
    cooking.gear_counts,
    cooking.ovens_fit,
    cooking.enough_ovens_for_all,
    cooking.steps_in_order,
    cooking.bakes_long_enough,
    cooking.cooled_enough,
    cooking.look_ins_in_time,
    cooking.inside_the_bake,
    cooking.food_kept_safe,
    cooking.food_safe_on_the_way,
    fire.set_up_first,
    fire.no_fire_on_dry_grass,
    fire.drowned_last,
    fire.fed_while_usable,
    fire.coals_enough,
    fire.chimney_room,
    pins.pins_kept,
    pins.pieces_in_one_place,
    stage.served_in_time,
    stage.live_steps_in_slot,
    stage.tasted_when_done,
    stage.presenter_only_presents,
    stage.ready_made_by_then,
)


def check_event(expanded: Expanded, plan: Plan) -> tuple[Breach, ...]:
    """Every breach of the event's rules; where the plan is not whole, only what it lacks."""
    lacking = tuple(_lacking(expanded, plan))
    if lacking:
        return lacking
    reading = Reading(expanded, plan)
    return tuple(breach for rule in RULES for breach in rule(reading))


def _lacking(expanded: Expanded, plan: Plan) -> Iterator[Breach]:
    for task in expanded.problem.tasks:
        if task.id not in expanded.info:
            yield Breach("plan_whole", (task.id,), f"nobody knows what {task.id} is")
        elif task.id not in plan.placed:
            yield Breach("plan_whole", (task.id,), f"{expanded.info[task.id].name} has no time")
        elif len(plan.placed[task.id].picks) != len(task.needs):
            yield Breach("plan_whole", (task.id,), f"{expanded.info[task.id].name} lacks helpers or gear")
    for task_id in expanded.info.keys() - expanded.problem.task_by_id.keys():
        yield Breach("plan_whole", (task_id,), f"{expanded.info[task_id].name} was left out of the plan")
