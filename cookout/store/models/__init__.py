"""Rows. Writing goes through `cookout.services`, reading through `cookout.store.selectors`."""

from cookout.store.models.events import Event
from cookout.store.models.links import Link
from cookout.store.models.revisions import Revision, RevisionFixedError
from cookout.store.models.runs import PlanRun
from cookout.store.models.users import User, Users

__all__ = ["Event", "Link", "PlanRun", "Revision", "RevisionFixedError", "User", "Users"]
