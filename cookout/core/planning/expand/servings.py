"""Servings: each dish is put on the table at its time, fresh and safe."""

from cookout.core.kitchen.recipe import Recipe
from cookout.core.planning.event import DishId, Serving, ServingId
from cookout.core.planning.expand.copies import Made
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.hours import warmest_before
from cookout.core.planning.expand.waits import free_minutes, standing
from cookout.core.planning.expanded import TaskInfo, TaskKind
from cookout.core.planning.problem import Due, Freshness, TaskId
from cookout.core.safety.allergens import dish_allergens


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
        detail=allergens(draft.event.recipe_of(made.dish)),
    )
    task = draft.add(info, max(1, recipe.serve_minutes))
    draft.hold_within(task, serving.at - serving.early - draft.tasks[task].minutes, serving.at + serving.late)
    draft.dues.append(Due(task, serving.at))
    _let_stand(draft, made, task, warmest_before(draft.event, serving.at, serving.late))
    return task


def _let_stand(draft: Draft, made: Made, task: TaskId, air_c: float) -> None:
    stand = standing(made.recipe, air_c, draft.event.food_rules)
    for span in made.last():
        draft.link(span.exit, task, stand.least, stand.most, why=stand.why)
        draft.freshness.append(Freshness(span.exit, task, free=free_minutes(made.recipe)))


def allergens(recipe: Recipe) -> str:
    """What is known of the allergens, from the ingredients with their notes and the recipe's own list."""
    return dish_allergens(((each.name, each.note) for each in recipe.ingredients), recipe.allergens).said
