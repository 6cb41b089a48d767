"""Makespan plans bred from one another: orders are crossed, generated forward, and justified there and back.

After the hybrid genetic algorithm of Valls, Ballestin and Quintanilla (2008), with a plain two-point crossover.
"""

from bisect import insort
from collections.abc import Callable
from dataclasses import dataclass, field
from random import Random

from cookout.core.planning.network import StartWindow
from cookout.core.planning.problem import Problem, TaskId
from cookout.core.planning.quick.frame import Frame, frame
from cookout.core.planning.quick.generate import Generation, Picks
from cookout.core.planning.result import Plan


@dataclass(frozen=True, slots=True)
class Params:
    """Set by trial on the PSPLIB J120 sample.

    `population`: plans kept (10 to 100). `noise_minutes`: disorder of the first orders. `mutation`: share of tasks
    of a child that change rank, `mutation_ranks` by how much. `patience`: children without a shorter plan after which
    the population has grown too alike and is bred anew.
    """

    population: int = 30
    noise_minutes: tuple[float, ...] = (5.0, 10.0, 20.0, 40.0)
    mutation: float = 0.05
    mutation_ranks: float = 6.0
    patience: int = 1000


@dataclass(order=True, frozen=True, slots=True)
class Bred:
    """A plan of the population: its length, its starts, and its picks."""

    length: int
    start: tuple[int, ...]
    picks: tuple[Picks, ...] = field(compare=False)


class Evolution:
    """Breeds plans for a makespan problem; deterministic for a seed as long as it is asked for as many children."""

    def __init__(self, problem: Problem, windows: dict[TaskId, StartWindow], *, seed: int = 1) -> None:
        ahead = frame(problem, mirrored=False, windows=windows)
        back = frame(problem, mirrored=True, windows=windows)
        assert ahead is not None
        assert back is not None
        self.ahead, self.back = ahead, back
        self.params = Params()
        self.chance = Random(seed)
        self.population: list[Bred] = []
        self.shortest: Bred | None = None
        self.since_shorter = 0

    def best(self) -> Plan | None:
        """The shortest plan so far."""
        if self.shortest is None:
            return None
        return self.ahead.plan(list(self.shortest.start), list(self.shortest.picks))

    def run(self, stop: Callable[[], bool], *, floor: int, children: int) -> None:
        """Breed up to `children` plans, until stopped or until a plan is as short as `floor`."""
        for number in range(children):
            if stop() or (self.shortest is not None and self.shortest.length <= floor):
                return
            young = len(self.population) < self.params.population
            bred = self.generate(self.first_rank(plain=number == 0) if young else self.child_rank())
            if bred is not None:
                self.admit(bred)
            if self.since_shorter > self.params.patience:
                self.population, self.since_shorter = [], 0

    def first_rank(self, *, plain: bool = False) -> list[float]:
        """An order by latest start, disordered unless it is to be plain."""
        noise = 0.0 if plain else self.chance.choice(self.params.noise_minutes)
        return [latest + (self.chance.gauss(0, noise) if noise else 0.0) for latest in self.ahead.latest]

    def child_rank(self) -> list[float]:
        """The order of two parents crossed: one's, with a middle stretch in the order of the other."""
        better, worse = sorted(self.chance.sample(range(len(self.population)), 2))
        mother, father = self.order(better), self.order(worse)
        count = len(mother)
        first = self.chance.randrange(count)
        middle = self.chance.randint(count // 4, 3 * count // 4)
        child = dict.fromkeys(father[:first])
        child |= dict.fromkeys([task for task in mother if task not in child][:middle])
        child |= dict.fromkeys(task for task in father if task not in child)
        rank = [0.0] * count
        for position, task in enumerate(child):
            rank[task] = float(position)
        return self.mutated(rank) if self.chance.random() < 0.5 else rank

    def order(self, which: int) -> list[int]:
        """The tasks of a plan by start."""
        start = self.population[which].start
        return sorted(range(len(start)), key=lambda task: (start[task], task))

    def mutated(self, rank: list[float]) -> list[float]:
        """The same ranks with a few moved."""
        share, by = self.params.mutation, self.params.mutation_ranks
        return [r + self.chance.gauss(0, by) if self.chance.random() < share else r for r in rank]

    def generate(self, rank: list[float]) -> Bred | None:
        """A plan in this order, justified to the right and to the left again; the better of the two."""
        forward = self.pass_over(self.ahead, rank)
        if forward is None:
            return None
        ends = [float(self.ahead.length - s - m) for s, m in zip(forward.start, self.ahead.minutes, strict=True)]
        backward = self.pass_over(self.back, ends)
        if backward is None:
            return forward
        again = self.pass_over(
            self.ahead, [float(self.back.to_problem_start(i, s)) for i, s in enumerate(backward.start)]
        )
        return forward if again is None else min(forward, again)

    def pass_over(self, packed: Frame, rank: list[float]) -> Bred | None:
        """One generation."""
        generation = Generation(packed, rank)
        if not generation.run():
            return None
        ends = (s + m for s, m in zip(generation.start, packed.minutes, strict=True))
        return Bred(max(ends, default=0), tuple(generation.start), tuple(generation.picks))

    def admit(self, bred: Bred) -> None:
        """Take a plan into the population in place of the longest, unless it is there already."""
        self.since_shorter += 1
        if self.shortest is None or bred.length < self.shortest.length:
            self.shortest, self.since_shorter = bred, 0
        if any(bred.start == other.start for other in self.population):
            return
        if len(self.population) < self.params.population:
            insort(self.population, bred)
        elif bred.length <= self.population[-1].length:
            self.population.pop()
            insort(self.population, bred)
