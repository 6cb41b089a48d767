"""A feasible plan at once, by placing tasks one after another; the solver's first plan and hint."""

from cookout.core.planning.quick.passes import QuickPass, near_plan, quick_plan, tidied

__all__ = ["QuickPass", "near_plan", "quick_plan", "tidied"]
