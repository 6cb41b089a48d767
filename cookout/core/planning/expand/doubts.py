"""What the organiser should mind before the day: fuel, and gear that is missing or does not fit."""

from cookout.core.planning.event import Event, GearKind
from cookout.core.planning.expand.bakes import BakeDraft
from cookout.core.planning.expand.draft import Draft
from cookout.core.planning.expand.gear import Kit
from cookout.core.planning.expanded import Firing


def note_all(draft: Draft, kit: Kit, bakes: list[BakeDraft], firings: list[Firing]) -> None:
    """Add every warning that the event calls for."""
    _note_cold(draft, kit)
    _note_fuel(draft, firings)
    if bakes:
        _note_gear(draft, kit, bakes)


def _note_cold(draft: Draft, kit: Kit) -> None:
    """What is to be held cold wants a cooler with ice."""
    if kit.cold_places().options:
        return
    recipes = {dish.recipe: draft.event.recipe(dish.recipe) for dish in draft.event.dishes}
    for recipe in recipes.values():
        if recipe.held == "cold":
            text = f"{recipe.name} is to be held cold, and there is no cooler with ice."
            draft.warn("cooler", text, "Bring one, or serve it as soon as it is made.")


def _note_fuel(draft: Draft, firings: list[Firing]) -> None:
    wanted, fuel = sum(firing.coals for firing in firings), draft.event.fuel
    if fuel.coals is not None and fuel.coals < wanted:
        text = f"The bakes want {wanted} coals and there are {fuel.coals}."
        draft.warn("fuel", text, f"Bring at least {wanted - fuel.coals} more, and some to spare.")


def _note_gear(draft: Draft, kit: Kit, bakes: list[BakeDraft]) -> None:
    if not kit.has_tables:
        draft.warn("table", "There is no cooking table; the ovens stand on the ground.", "Clear it to bare, dry earth.")
    if not kit.chimneys:
        draft.warn("chimney", "There is nothing to light coals in.", "Bring a chimney.")
    for inches in sorted({bake.run.inches for bake in bakes}):
        if not kit.ovens(inches).options:
            draft.warn("oven", f"There is no {inches}-inch oven.", f"Bring one{_other_ovens(draft.event)}.")
        if kit.has_tables and not kit.spots(inches).options:
            text = f"No spot on a cooking table takes a {inches}-inch oven."
            draft.warn("table", text, "Bring a table with wider spots, or take a smaller oven.")


def _other_ovens(event: Event) -> str:
    sizes = sorted({gear.inches for gear in event.gear if gear.kind is GearKind.OVEN and gear.inches})
    return f", or bake in one of {', '.join(str(size) for size in sizes)} inches" if sizes else ""
