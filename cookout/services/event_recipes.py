"""Recipes of the box in events: put in, followed when they move on, and kept from an event in the box."""

from dataclasses import dataclass, replace
from datetime import datetime

from django.db import transaction
from django.utils.translation import gettext as _

from cookout.core.kitchen.recipe import Recipe as CoreRecipe
from cookout.core.kitchen.recipe import RecipeId
from cookout.core.planning.event import DishId, Event, GearKind, ServingId
from cookout.services.editing import Changed, save_parts
from cookout.services.errors import NoSuchThingError
from cookout.services.menu import new_dish
from cookout.services.naming import id_for
from cookout.services.recipes import create_recipe
from cookout.services.starters import take_starter
from cookout.services.stored import read_stored, stored_part
from cookout.store.models import Edit, EventRecipe, Recipe, RecipeVersion
from cookout.store.models import Event as Row
from cookout.store.selectors.recipes import list_taken, list_versions, recipe_of


@dataclass(frozen=True, slots=True)
class MovedOn:
    """A recipe of an event that is another in the box by now; `number` and `made_at` are those of the new version.

    `taken` is the number of the version that the event has, None where it was changed in the event.
    """

    key: str
    name: str
    recipe: Recipe
    number: int
    made_at: datetime
    taken: int | None


@dataclass(frozen=True, slots=True)
class Lacking:
    """What an event has not got that a recipe asks for: skills nobody has, kinds of gear, oven sizes in inches."""

    skills: tuple[str, ...]
    gear: tuple[str, ...]
    ovens: tuple[int, ...]

    @property
    def nothing(self) -> bool:
        """Whether the event has it all."""
        return not (self.skills or self.gear or self.ovens)


@transaction.atomic
def add_recipe_to_event(
    *, event_id: int, user_id: int, recipe_id: int, serving_id: str = "", people: int | None = None
) -> tuple[Edit | None, DishId | None]:
    """Put the current version of a recipe of the user's box into an event, as a dish of a serving where one is named.

    An event that has the recipe already gets another dish of it, in the version that it has.
    """
    row = Recipe.objects.select_related("current").filter(pk=recipe_id, owner_id=user_id, deleted_at=None).first()
    if row is None or row.current is None:
        raise NoSuchThingError(_("This recipe is not in your box any more. Choose another one."))
    event = read_stored(event_id)
    recipe, changes = _placed(event_id, event, row)
    dish = None
    if serving_id:
        serving = stored_part(event, ("servings", serving_id))
        known = event if not changes else replace(event, recipes=(*event.recipes, recipe))
        dish = new_dish(known, recipe.id, ServingId(serving.id), people)
        changes.append(Changed(("dishes", dish.id), dish, was=""))
        words = _("%(dish)s put on %(serving)s") % {"dish": recipe.name, "serving": serving.name}
    else:
        words = _("%(recipe)s put into the event") % {"recipe": recipe.name}
    edit = save_parts(event_id=event_id, user_id=user_id, changes=changes, words=words)
    return edit, None if dish is None else dish.id


@transaction.atomic
def add_starter_to_event(
    *, event_id: int, user_id: int, name: str, units: str, serving_id: str, people: int | None = None
) -> tuple[Edit | None, DishId | None]:
    """Put a recipe that comes with the program into the user's box, and from there on a serving."""
    row = take_starter(owner_id=user_id, name=name, units=units)
    return add_recipe_to_event(
        event_id=event_id, user_id=user_id, recipe_id=row.pk, serving_id=serving_id, people=people
    )


def moved_on(*, event: Row, core: Event, user_id: int) -> tuple[MovedOn, ...]:
    """Recipes of the event that came out of the user's own box and are others there by now."""
    found = []
    for key, taken in list_taken(event=event, owner_id=user_id).items():
        recipe, current = taken.version.recipe, taken.version.recipe.current
        there = next((each for each in core.recipes if each.id == key), None)
        if there is None or current is None or _same(there, current):
            continue
        number = next((each.number for each in list_versions(recipe_id=recipe.pk)[:50] if _same(there, each)), None)
        found.append(MovedOn(key, there.name, recipe, current.number, current.made_at, number))
    return tuple(found)


@transaction.atomic
def take_new_version(*, event_id: int, user_id: int, key: str) -> Edit | None:
    """Put the current version of a recipe of the user's box in the place of the one that the event took."""
    row = Row.objects.filter(pk=event_id, deleted_at=None).first()
    taken = None if row is None else list_taken(event=row, owner_id=user_id).get(key)
    current = None if taken is None else taken.version.recipe.current
    if taken is None or current is None:
        raise NoSuchThingError(_("This recipe did not come out of your box, or it is gone from there."))
    stored_part(read_stored(event_id), ("recipes", key))
    recipe = replace(recipe_of(current), id=RecipeId(key))
    EventRecipe.objects.filter(pk=taken.pk).update(version=current)
    words = _("%(recipe)s: version %(number)d taken") % {"recipe": recipe.name, "number": current.number}
    return save_parts(event_id=event_id, user_id=user_id, changes=[Changed(("recipes", key), recipe)], words=words)


@transaction.atomic
def keep_in_box(*, event: Row, user_id: int, key: str, units: str) -> Recipe:
    """A copy of an event's recipe in the user's own box; the event remembers that it is the same."""
    core = read_stored(event.pk)
    recipe: CoreRecipe = stored_part(core, ("recipes", key))
    origin = _("out of the event %(event)s") % {"event": event.name}
    kept = create_recipe(owner_id=user_id, recipe=without_own_gear(core, recipe), units=units, origin=origin)
    if kept.current is not None and not EventRecipe.objects.filter(event=event, recipe_key=key).exists():
        EventRecipe.objects.create(event=event, recipe_key=key, version=kept.current)
    return kept


def without_own_gear(event: Event, recipe: CoreRecipe) -> CoreRecipe:
    """The recipe with gear of that very event named by its kind, so that it means the same elsewhere."""
    kinds = {str(gear.id): gear.kind.value for gear in event.gear}
    steps = tuple(
        replace(step, gear=tuple(replace(use, kind=kinds.get(use.kind, use.kind)) for use in step.gear))
        for step in recipe.steps
    )
    return replace(recipe, steps=steps)


def lacking(event: Event, recipe: CoreRecipe) -> Lacking:
    """What the event has not got that the recipe asks for."""
    skills = {str(skill) for step in recipe.steps for skill in step.skills}
    has_skills = {str(skill) for helper in event.crew for skill in helper.skills}
    wanted = {use.kind for step in recipe.steps for use in step.gear}
    wanted |= {"trivet" for step in recipe.steps if step.bake is not None and (step.bake.trivet or step.bake.stand)}
    has_gear = {gear.kind.value for gear in event.gear}
    ovens = {step.bake.oven_inches for step in recipe.steps if step.bake is not None}
    has_ovens = {gear.inches for gear in event.gear if gear.kind is GearKind.OVEN}
    return Lacking(
        tuple(sorted(skills - has_skills)), tuple(sorted(wanted - has_gear)), tuple(sorted(ovens - has_ovens))
    )


def _placed(event_id: int, event: Event, row: Recipe) -> tuple[CoreRecipe, list[Changed]]:
    """The recipe as the event has or gets it, and the change that puts it there."""
    assert row.current is not None
    taken = EventRecipe.objects.filter(event_id=event_id, version__recipe=row)
    for link in taken:
        there = next((each for each in event.recipes if each.id == link.recipe_key), None)
        if there is not None:
            return there, []
    key = id_for(row.name, {str(each.id) for each in event.recipes}, "recipe")
    recipe = replace(recipe_of(row.current), id=RecipeId(key))
    EventRecipe.objects.update_or_create(event_id=event_id, recipe_key=key, defaults={"version": row.current})
    return recipe, [Changed(("recipes", key), recipe, was="")]


def _same(there: CoreRecipe, version: RecipeVersion) -> bool:
    return replace(recipe_of(version), id=there.id) == there
