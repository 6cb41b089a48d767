"""Solving: a quick pass, then CP-SAT over the whole problem, or for large ones over parts of the plan in turn."""

from cookout.core.planning.solver.solve import solve

__all__ = ["solve"]
