"""Large made-up plans: dishes baked in lidded ovens, with helpers, ovens and chimneys never used twice at once.

No chance is in it: the same size gives the same record. It is a plan only in form; nobody claims that it is a good one.
"""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from cookout.core.planning.record import (
    PlannedBake,
    PlannedFiring,
    PlannedGear,
    PlannedHelper,
    PlannedLevel,
    PlannedLink,
    PlannedServing,
    PlannedSlot,
    PlannedTask,
    PlanRecord,
)
from cookout.core.planning.result import Status

ZONE_NAME = "Europe/Lisbon"
NOUNS = ("Quince cake", "Barley loaf", "Lentil pot", "Onion tart", "Pear crumble", "Corn bread", "Bean stew")
PLACES = ("from Alder Ford", "of the ferryman", "with thyme", "in the black pot", "for a crowd")
CREW = (
    "Anouk Brisa", "Piet Solheim", "Oyelaran Tam", "Greta Funes", "Ivo Marsh", "Lien Okafor",
    "Sable Arno", "Matteo Quill", "Dorit Vane", "Hamza Reed", "Wren Castell", "Yuki Lindqvist",
)  # fmt: skip
INGREDIENTS = ("apples", "flour", "onions", "the dough", "the filling", "butter")


def moment(minute: int) -> datetime:
    """The minute of the made-up day, in its zone."""
    start = datetime.combine(date(2027, 8, 14), time(6), ZoneInfo(ZONE_NAME)).astimezone(UTC)
    return (start + timedelta(minutes=minute)).astimezone(ZoneInfo(ZONE_NAME))


class _Maker:
    """Collects tasks while it keeps track of until when each helper and oven is taken."""

    def __init__(self, helpers: int, ovens: int) -> None:
        self.tasks: list[PlannedTask] = []
        self.links: list[PlannedLink] = []
        self.bakes: list[PlannedBake] = []
        self.firings: list[PlannedFiring] = []
        self.busy: dict[str, list[tuple[int, int]]] = {f"h{n}": [] for n in range(helpers)}
        self.busy |= {f"12-inch oven {n + 1}": [] for n in range(ovens)}
        self.busy |= {f"chimney {n + 1}": [] for n in range(ovens)}

    def take(self, sort: str, begins: int, ends: int) -> str:
        """The least used of a sort (a prefix of names) that is free from begins to ends."""
        free = [
            name
            for name, taken in self.busy.items()
            if name.startswith(sort) and all(end <= begins or ends <= start for start, end in taken)
        ]
        chosen = min(free, key=lambda name: sum(end - start for start, end in self.busy[name]))
        self.busy[chosen].append((begins, ends))
        return chosen

    def add(
        self, id: str, dish: str, name: str, kind: str, begins: int, minutes: int, *, hands: int = 0,
        hot: bool = False, gear: dict[str, int] | None = None, units: tuple[str, ...] = (), detail: str = "",
    ) -> str:  # fmt: skip
        """A task with as many free helpers as hands are asked for; gives its id."""
        helpers = tuple(self.take("h", begins, begins + minutes) for _ in range(hands))
        self.tasks.append(
            PlannedTask(
                id, dish, name, kind, moment(begins), moment(begins + minutes), helpers, dict(gear or {}), hands > 0, 5,
                (), units=units, hands=hands, hot=hot, detail=detail,
            )
        )  # fmt: skip
        return id


def made_up_record(tasks: int) -> PlanRecord:
    """A record of exactly so many tasks (at least 30), a dish for about every seventeen of them."""
    dishes = max(2, tasks // 17)
    maker = _Maker(helpers=12, ovens=max(3, dishes))
    names = {f"d{n}": f"{NOUNS[n % len(NOUNS)]} {PLACES[n // len(NOUNS) % len(PLACES)]}" for n in range(dishes)}
    maker.add("set_up", "", "Set up table, water and shovel", "set_up", 0, 20, hands=2)
    for number, dish in enumerate(names):
        _bake_dish(maker, dish, names[dish], 360 + 150 * (number % 3) + 11 * (number // 3))
    maker.add("drown", "", "Drown and stir the coals", "drown", 720, 20, hands=2, hot=True)
    _fill(maker, tasks, list(names))
    return _record(maker, names)


def _bake_dish(maker: _Maker, dish: str, name: str, served: int) -> None:
    """Backward from its serving: coals, bake with two turns and a look-in, cooling, icing."""
    oven, chimney = maker.take("12", served - 105, served - 30), maker.take("chimney", served - 135, served - 110)
    gear, units = {"oven12": 1}, (oven,)
    lit = maker.add(
        f"{dish}.light", "", "Light 27 coals", "light", served - 135, 5, hands=1, hot=True, gear={"chimney": 1},
        units=(chimney,),
    )  # fmt: skip
    ash = maker.add(
        f"{dish}.ash", "", "Coals ash over", "ash_over", served - 130, 20, gear={"chimney": 1}, units=(chimney,)
    )  # fmt: skip
    maker.links.append(PlannedLink(lit, ash, "finish_to_start", 0, 0))
    maker.add(f"{dish}.mix", dish, "Mix and fold the batter", "mix", served - 130, 20, hands=1)
    lay = maker.add(
        f"{dish}.lay",
        dish,
        "Lay coals: 18 on the lid, 9 under",
        "lay_coals",
        served - 105,
        5,
        hands=1,
        hot=True,
        gear=gear,
        units=units,
    )
    maker.add(
        f"{dish}.load", dish, "Put the pan in", "load", served - 100, 5, hands=1, hot=True, gear=gear, units=units
    )
    bake = maker.add(
        f"{dish}.bake", dish, "Bake", "bake", served - 95, 50, detail="375 °F, 50 min", gear=gear, units=units
    )
    for place, (kind, words, after) in enumerate(
        (("turn", "Turn oven and lid", 13), ("turn", "Turn oven and lid", 27), ("look_in", "Look in", 40))
    ):
        tick = maker.add(f"{dish}.t{place}", dish, words, kind, served - 95 + after, 2, hands=1, hot=True)
        maker.links.append(PlannedLink(bake, tick, "start_to_start", after - 3, after + 3))
    maker.add(
        f"{dish}.out", dish, "Take the pan out", "take_out", served - 45, 5, hands=1, hot=True, gear=gear, units=units
    )
    maker.add(f"{dish}.cool", dish, "Cool on the rack", "cool", served - 40, 20, gear={"rack": 1})
    maker.add(f"{dish}.ice", dish, "Spread the icing", "ice", served - 20, 10, hands=1)
    maker.add(f"{dish}.serve", dish, f"Serve {name.lower()}", "serve", served - 5, 5, hands=1)
    maker.bakes.append(
        PlannedBake(
            bake,
            dish,
            name,
            oven,
            12,
            18,
            9,
            24,
            30,
            "375 °F",
            moment(served - 105),
            moment(served - 95),
            moment(served - 45),
        )
    )
    maker.firings.append(
        PlannedFiring(
            f"fire.{dish}", moment(served - 135), moment(served - 110), moment(served - 50), 27, (lay,), lit, 1
        )
    )


def _fill(maker: _Maker, tasks: int, dishes: list[str]) -> None:
    """Preparing and resting until there are as many tasks as asked for."""
    number = 0
    while len(maker.tasks) < tasks:
        dish, begins = dishes[number % len(dishes)], 30 + 17 * (number * 7 % 40) // 5
        thing = INGREDIENTS[number % len(INGREDIENTS)]
        if number % 4 == 3:
            maker.add(f"more{number}", dish, f"Let {thing} rest", "rest", begins, 25)
        else:
            maker.add(f"more{number}", dish, f"Prepare {thing}", "prepare", begins, 8, hands=1)
        number += 1
    assert len(maker.tasks) == tasks


def _record(maker: _Maker, names: dict[str, str]) -> PlanRecord:
    tasks = tuple(sorted(maker.tasks, key=lambda task: (task.starts_at, task.id)))
    served = {task.dish: task.ends_at for task in tasks if task.kind == "serve"}
    return PlanRecord(
        event_id="made-up", event_name="Feast at the old weir", place="Weir meadow", timezone=ZONE_NAME,
        weather="18 °C, wind 3 m/s, shade", units="metric", status=Status.BEST_FOUND, seconds=2.5,
        levels=(PlannedLevel("lateness", 0, 0), PlannedLevel("freshness", 40, 12)),
        servings=tuple(_serving(dish, names[dish], served[dish]) for dish in names),
        slots=(PlannedSlot("show", "Bread before everyone", moment(210), moment(245), "h0", (), ()),),
        dishes=names, tasks=tasks, links=tuple(maker.links), helpers=_helpers(tasks),
        gear=(
            PlannedGear("oven12", "oven", "12-inch oven", len(names), inches=12),
            PlannedGear("chimney", "chimney", "chimney", len(names), coals=50),
            PlannedGear("rack", "rack", "cooling rack", 6),
        ),
        firings=tuple(maker.firings), bakes=tuple(maker.bakes), warnings=(), obstacles=(), ways_out=(),
    )  # fmt: skip


def _serving(dish: str, name: str, ready: datetime) -> PlannedServing:
    number = int(dish[1:]) % 3
    due = moment(360 + 150 * number + 45)
    meal = ("Noon table", "Afternoon table", "Evening table")[number]
    early, late = due - timedelta(minutes=60), due + timedelta(minutes=30)
    return PlannedServing(f"s{number}", meal, dish, name, due, early, late, ready, 0, 60)


def _helpers(tasks: tuple[PlannedTask, ...]) -> tuple[PlannedHelper, ...]:
    made = []
    for number, name in enumerate(CREW):
        own = [task for task in tasks if f"h{number}" in task.helpers]
        called, free = (min(t.starts_at for t in own), max(t.ends_at for t in own)) if own else (None, None)
        minutes = sum(int((t.ends_at - t.starts_at).total_seconds() // 60) for t in own)
        windows = ((moment(-30), moment(760)),)
        made.append(PlannedHelper(f"h{number}", name, ("fire",), windows, True, False, 60, called, free, minutes))
    return tuple(made)
