"""A feasible plan at once, by placing tasks one after another; the solver's first plan and hint."""

from cookout.core.planning.quick.near import near_plan
from cookout.core.planning.quick.passes import QuickPass, quick_plan, tidied

__all__ = ["QuickPass", "near_plan", "quick_plan", "tidied"]
