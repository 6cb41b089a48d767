"""Rows. Writing goes through `cookout.services`, reading through `cookout.store.selectors`."""

from cookout.store.models.edits import Edit
from cookout.store.models.events import Event
from cookout.store.models.keeping import Kit, Person, Template
from cookout.store.models.links import Link
from cookout.store.models.members import Invitation, Membership, Role
from cookout.store.models.recipes import EventRecipe, Recipe, RecipeVersion, RecipeVersionFixedError
from cookout.store.models.revisions import Revision, RevisionFixedError
from cookout.store.models.runs import PlanRun
from cookout.store.models.ticks import Tick
from cookout.store.models.users import User, Users

__all__ = [
    "Edit",
    "Event",
    "EventRecipe",
    "Invitation",
    "Kit",
    "Link",
    "Membership",
    "Person",
    "PlanRun",
    "Recipe",
    "RecipeVersion",
    "RecipeVersionFixedError",
    "Revision",
    "RevisionFixedError",
    "Role",
    "Template",
    "Tick",
    "User",
    "Users",
]
