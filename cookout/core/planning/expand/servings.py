"""Servings: each dish is put on the table at its time, fresh and safe."""

from cookout.core.planning.event import DishId, Serving, ServingId
from cookout.core.planning.expand.copies import Made
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.waits import free_minutes, standing
from cookout.core.planning.expanded import TaskInfo, TaskKind
from cookout.core.planning.problem import Due, Freshness, TaskId


def serve(draft: Draft, dishes: list[Made]) -> dict[tuple[ServingId, DishId], TaskId]:
    """Add the serve task of every dish that has a serving."""
    return {
        (made.dish.serving, made.dish.id): _serve_one(draft, made, draft.event.serving(made.dish.serving))
        for made in dishes
        if made.dish.serving is not None
    }


def _serve_one(draft: Draft, made: Made, serving: Serving) -> TaskId:
    recipe = made.recipe
    info = TaskInfo(
        TaskId(f"{made.dish.id}.{serving.id}.serve"),
        f"Serve {recipe.name}",
        TaskKind.SERVE,
        made.dish.id,
        hands=recipe.serve_hands,
        detail=_allergens(recipe.allergens),
    )
    task = draft.add(info, max(1, recipe.serve_minutes))
    draft.hold_within(task, serving.at - serving.early - draft.tasks[task].minutes, serving.at + serving.late)
    draft.dues.append(Due(task, serving.at))
    _let_stand(draft, made, task)
    return task


def _let_stand(draft: Draft, made: Made, task: TaskId) -> None:
    stand = standing(made.recipe, draft.event.weather.air_c)
    if stand.cut_short:
        draft.warn(
            made.dish.id,
            f"{made.recipe.name} should rest {made.recipe.rests_minutes} min and may stand only {stand.most} min.",
            "Shorten the rest, or hold it hot or cold.",
        )
    for span in made.last():
        draft.link(span.exit, task, stand.least, stand.most, why=stand.why)
        draft.freshness.append(Freshness(span.exit, task, free=free_minutes(made.recipe)))


def _allergens(allergens: tuple[str, ...]) -> str:
    return f"Contains {', '.join(allergens)}." if allergens else ""
