"""A plan of a small supper worked out by hand, for tests of whatever shows a plan.

Two dishes, two ovens, two firings, three helpers and a demo slot on one summer afternoon. Every rule holds in it;
people, place and recipes are invented. One task and one helper bear names that trip up careless writers of text.
"""

from dataclasses import replace
from datetime import date, datetime, time
from zoneinfo import ZoneInfo

from cookout.core.planning.record import (
    HeldBy,
    PlannedAdvice,
    PlannedAllergens,
    PlannedBake,
    PlannedCheck,
    PlannedFiring,
    PlannedFuel,
    PlannedGear,
    PlannedHelper,
    PlannedLevel,
    PlannedLink,
    PlannedSafety,
    PlannedServing,
    PlannedSlot,
    PlannedTask,
    PlanRecord,
    Warning,
    WayOut,
)
from cookout.core.planning.result import Status

ZONE_NAME = "America/Chicago"
DAY = date(2027, 6, 19)
TRICKY_TASK = "crumble.rub"
TRICKY_NAME = "Rub in “Ofélia’s” crumb; ¼ cup sugar, cinnamon & <nuts>\\zest – 100 % by hand 🍏"

SMOKE = "Open ground only, never in a tent, cabin or vehicle: burning coals give off carbon monoxide."
HOT_IRON = "Leather gloves and a lid lifter; keep children outside the 3-foot ring."
DROWN = (
    "Drown, stir, feel with the back of the hand, drown again; ash into a lidded metal can. Local fire code decides."
)
CHIMNEY = {"chimney": 1}
OVEN12, OVEN10, SPOT1, SPOT2 = "12-inch oven A", "10-inch oven A", "cooking table, spot 1", "cooking table, spot 2"


def at(clock: str) -> datetime:
    """The sample's day at ``HH:MM`` in its zone."""
    return datetime.combine(DAY, time.fromisoformat(clock), ZoneInfo(ZONE_NAME))


def sample_record() -> PlanRecord:
    """The supper's plan: 24 tasks from 15:30 to 18:30, proved best, both dishes on time."""
    return PlanRecord(
        event_id="porch-supper",
        event_name="Supper by the old boathouse",
        place="Boathouse meadow, Lake Ellery",
        timezone=ZONE_NAME,
        weather="72 °F, wind 7 mph with gusts to 11, half sun",
        units="us",
        status=Status.PROVED_BEST,
        seconds=0.31,
        levels=_levels(),
        servings=_servings(),
        slots=_slots(),
        dishes={"beans": "Smoky bean pot", "crumble": "Apple crumble à la Brandão"},
        tasks=_before_the_food() + _beans() + _crumble() + _end(),
        links=_links(),
        helpers=_helpers(),
        gear=_gear(),
        firings=_firings(),
        bakes=_bakes(),
        warnings=(
            Warning(
                "wind",
                "Gusts to 11 mph make the ovens heat unevenly.",
                "Turn them every 10 minutes and set a windbreak.",
            ),
        ),
        obstacles=(),
        ways_out=(),
        fuel=PlannedFuel("briquettes", 81, 51, 12, 18, 2.03, "4.5 lb", 3),
        safety=_safety(),
        allergens=_allergens(),
        checklist=(
            PlannedCheck("ground", "set_up", "warning", "Rake the dry grass to bare earth.", "forest-service tips"),
            PlannedCheck("drown", "after", "to do", "Drown the coals, stir, drown again.", "fire-service advice"),
        ),
        advice=(
            PlannedAdvice("crumble", "Apple crumble à la Brandão", "Water boils at 208 °F here.", "tables of steam"),
        ),
    )


def sample_record_without_plan() -> PlanRecord:
    """The same supper where nobody may tend the fire: no tasks, a reason and a way out."""
    return replace(
        sample_record(),
        status=Status.IMPOSSIBLE,
        levels=(),
        servings=(),
        slots=(),
        tasks=(),
        links=(),
        firings=(),
        bakes=(),
        obstacles=("Nobody with the fire skill is there from 15:50 to 16:30, when the first coals must be lit.",),
        ways_out=(
            WayOut(
                "Have someone with the fire skill there from 15:30 to 16:30.",
                {"kind": "add_window", "helper": "tomasz", "start": 930, "end": 990},
            ),
        ),
    )


def _before_the_food() -> tuple[PlannedTask, ...]:
    return (
        _task(
            "set_up", "", "Set up table, water and shovel", "set_up", "15:30", "15:50", ("runa", "tomasz"), slack=0,
            detail="Clear a 10-foot circle to bare ground; bucket of water and shovel within reach.",
            caution="Keep fires 10 feet from anything that burns; your local fire code decides.",
            held=(HeldBy("earlier", "tomasz", "can start no earlier: Tomasz comes at 15:30"),),
        ),
        _task(
            "fire1.light", "", "Light 25 coals", "light", "15:50", "15:55", ("runa",), {"chimney": 1},
            units=("chimney A",), needs=("fire",), hot=True, slack=0, caution=SMOKE,
            held=(
                HeldBy("earlier", "set_up", "can start no earlier: the set-up takes until 15:50"),
                HeldBy("later", "beans.lay", "can start no later: the coals must be ashed over at 16:15"),
            ),
        ),
        _task("fire1.ash", "", "Coals ash over", "ash_over", "15:55", "16:15", (), CHIMNEY, units=("chimney A",)),
        _task(
            "fire2.light", "", "Light 33 coals", "light", "16:25", "16:30", ("runa",), {"chimney": 1},
            units=("chimney A",), needs=("fire",), hot=True, slack=0, caution=SMOKE,
        ),
        _task("fire2.ash", "", "Coals ash over", "ash_over", "16:30", "16:50", (), CHIMNEY, units=("chimney A",)),
    )  # fmt: skip


def _beans() -> tuple[PlannedTask, ...]:
    held = {"oven12": 1, "table": 1}
    units = (OVEN12, SPOT1)
    return (
        _task(
            "beans.chop", "beans", "Chop onions and soak-water check", "prepare", "15:50", "16:10", ("tomasz",),
            {"bowl": 1}, needs=("knife",), slack=10,
        ),
        _task(
            "beans.lay", "beans", "Lay coals: 8 on the lid, 17 under", "lay_coals", "16:15", "16:20", ("runa",), held,
            units=units, needs=("fire",), hot=True, detail="8 on the lid, 17 under; 22 to 28 in all.", caution=HOT_IRON,
            held=(HeldBy("earlier", "fire1.ash", "can start no earlier: the coals are ashed over at 16:15"),),
        ),
        _task(
            "beans.load", "beans", "Put the pot together in the oven", "load", "16:20", "16:25", ("tomasz",), held,
            units=units, hot=True, caution=HOT_IRON,
        ),
        _task(
            "beans.bake", "beans", "Simmer", "bake", "16:25", "17:55", (), held, units=units,
            detail="12-inch oven A at 350 °F, 90 min.",
        ),
        _task(
            "beans.top_up", "beans", "Add 12 fresh coals", "top_up", "16:55", "17:00", ("tomasz",), needs=("fire",),
            hot=True, slack=15, detail="4 on the lid, 8 under.", caution=HOT_IRON,
        ),
        _task(
            "beans.out", "beans", "Take the oven off its coals", "take_out", "17:55", "18:00", ("tomasz",), held,
            units=units, hot=True, caution=HOT_IRON,
            held=(HeldBy("later", "beans.bake", "can start no later: the beans have simmered at 17:55"),),
        ),
    )  # fmt: skip


def _crumble() -> tuple[PlannedTask, ...]:
    held = {"oven10": 1, "table": 1}
    units = (OVEN10, SPOT2)
    return (
        _task(
            "crumble.slice", "crumble", "Slice apples", "prepare", "16:25", "16:45", ("tomasz",), {"bowl": 1},
            needs=("knife",), slack=5,
        ),
        _task(
            TRICKY_TASK, "crumble", TRICKY_NAME, "mix", "16:50", "17:05", ("ilse",), {"bowl": 1}, needs=("baking",),
            live_in="crumb-show", detail="Cold butter, quick fingers;\nstop at pea size.",
        ),
        _task(
            "crumble.layer", "crumble", "Layer apples and crumb", "prepare", "17:05", "17:15", ("ilse",),
            needs=("baking",), live_in="crumb-show", slack=5,
        ),
        _task(
            "crumble.lay", "crumble", "Lay coals: 14 on the lid, 7 under", "lay_coals", "17:15", "17:20", ("runa",),
            held, units=units, needs=("fire",), hot=True, detail="14 on the lid, 7 under; 18 to 24 in all.",
            caution=HOT_IRON,
        ),
        _task(
            "crumble.load", "crumble", "Put the pan in", "load", "17:20", "17:25", ("runa",), held, units=units,
            hot=True, caution=HOT_IRON,
        ),
        _task(
            "crumble.bake", "crumble", "Bake", "bake", "17:25", "18:10", (), held, units=units,
            detail="10-inch oven A at 350 °F, 45 min.",
        ),
        _task(
            "crumble.turn", "crumble", "Turn oven and lid", "turn", "17:40", "17:43", ("runa",), hot=True, slack=5,
            detail="Oven a quarter turn one way, lid a quarter turn the other.", caution=HOT_IRON,
        ),
        _task(
            "crumble.look_in", "crumble", "Look in", "look_in", "18:00", "18:03", ("runa",), needs=("baking",),
            hot=True, slack=2, detail="Golden, and bubbling at the rim.", caution=HOT_IRON,
        ),
        _task(
            "crumble.out", "crumble", "Take the pan out", "take_out", "18:10", "18:15", ("runa",), held, units=units,
            hot=True, caution=HOT_IRON,
        ),
        _task("crumble.cool", "crumble", "Stand before serving", "cool", "18:15", "18:25", (), {"rack": 1}),
    )  # fmt: skip


def _end() -> tuple[PlannedTask, ...]:
    return (
        _task(
            "supper.beans", "beans", "Serve the beans", "serve", "18:25", "18:30", ("tomasz",), slack=0,
            held=(HeldBy("later", "supper", "can start no later: supper is at 18:30"),),
        ),
        _task("supper.crumble", "crumble", "Serve the crumble", "serve", "18:25", "18:30", ("ilse",)),
        _task(
            "drown", "", "Drown and stir the coals", "drown", "18:15", "18:30", ("runa",), needs=("fire",), hot=True,
            slack=60, caution=DROWN,
        ),
    )  # fmt: skip


def _task(
    id: str, dish: str, name: str, kind: str, start: str, end: str, helpers: tuple[str, ...],
    gear: dict[str, int] | None = None, *, units: tuple[str, ...] = (), needs: tuple[str, ...] = (), hot: bool = False,
    slack: int = 0, held: tuple[HeldBy, ...] = (), detail: str = "", caution: str = "", live_in: str = "",
) -> PlannedTask:  # fmt: skip
    return PlannedTask(
        id=id, dish=dish, name=name, kind=kind, starts_at=at(start), ends_at=at(end), helpers=helpers,
        gear=dict(gear or {}), hands_on=bool(helpers), slack_minutes=slack, held_by=held, units=units, needs=needs,
        hands=len(helpers), hot=hot, detail=detail, caution=caution, live_in=live_in,
    )  # fmt: skip


def _links() -> tuple[PlannedLink, ...]:
    after, together, within, by = "finish_to_start", "start_to_start", "finish_to_finish", "start_to_finish"
    rows: tuple[tuple[str, str, str, int, int | None, str], ...] = (
        ("set_up", "fire1.light", after, 0, None, "water and shovel stand there before the first fire"),
        ("set_up", "fire2.light", after, 0, None, "water and shovel stand there before the first fire"),
        ("fire1.light", "fire1.ash", after, 0, 0, ""),
        ("fire2.light", "fire2.ash", after, 0, 0, ""),
        ("fire1.ash", "beans.lay", after, 0, 55, "the coals fade 60 min after they have ashed over"),
        ("fire2.ash", "beans.top_up", after, 0, 55, "the coals fade 60 min after they have ashed over"),
        ("fire2.ash", "crumble.lay", after, 0, 55, "the coals fade 60 min after they have ashed over"),
        ("beans.chop", "beans.load", after, 0, 60, "chopped onions dry out"),
        ("beans.lay", "beans.load", after, 0, 0, ""),
        ("beans.load", "beans.bake", after, 0, 0, ""),
        ("beans.bake", "beans.top_up", together, 30, 45, "half the coals again after 30 min"),
        ("beans.top_up", "beans.bake", within, 0, None, "inside the bake"),
        ("beans.bake", "beans.out", after, 0, 0, ""),
        ("beans.out", "supper.beans", after, 0, 120, "at most 2 h from the fire to the table"),
        ("beans.load", "supper.beans", by, 90, 240, "the whole pot within 4 h"),
        ("crumble.slice", TRICKY_TASK, after, 0, 45, "sliced apples brown"),
        (TRICKY_TASK, "crumble.layer", after, 0, 30, ""),
        ("crumble.layer", "crumble.load", after, 0, 30, ""),
        ("crumble.lay", "crumble.load", after, 0, 0, ""),
        ("crumble.load", "crumble.bake", after, 0, 0, ""),
        ("crumble.bake", "crumble.turn", together, 10, 20, "a quarter turn every 10 to 15 min"),
        ("crumble.bake", "crumble.look_in", together, 30, 37, "the first look-in stands before the least bake time"),
        ("crumble.look_in", "crumble.bake", within, 0, None, "inside the bake"),
        ("crumble.bake", "crumble.out", after, 0, 0, ""),
        ("crumble.out", "crumble.cool", after, 0, 0, ""),
        ("crumble.cool", "supper.crumble", after, 0, 60, "best warm"),
        ("beans.out", "drown", after, 0, None, "the coals are drowned after the last bake"),
        ("crumble.out", "drown", after, 0, None, "the coals are drowned after the last bake"),
    )
    return tuple(PlannedLink(*row) for row in rows)


def _servings() -> tuple[PlannedServing, ...]:
    names = {"beans": "Smoky bean pot", "crumble": "Apple crumble à la Brandão"}
    return tuple(
        PlannedServing("supper", "Supper", dish, name, at("18:30"), at("18:20"), at("18:40"), at("18:30"), 0, 8)
        for dish, name in names.items()
    )


def _slots() -> tuple[PlannedSlot, ...]:
    return (
        PlannedSlot(
            "crumb-show", "How a crumble goes together", at("16:50"), at("17:20"), "ilse",
            (TRICKY_TASK, "crumble.layer"), (("crumble", "crumble.slice", at("16:50")),),
        ),
    )  # fmt: skip


def _helpers() -> tuple[PlannedHelper, ...]:
    return (
        PlannedHelper(
            "runa", "Runa Velde", ("baking", "fire"), ((at("15:00"), at("20:30")),), True, False, 60,
            at("15:30"), at("18:30"), 71,
        ),
        PlannedHelper(
            "tomasz", "Tomasz Okoro-Lind", ("fire", "knife"),
            ((at("15:30"), at("17:00")), (at("17:15"), at("20:30"))), True, False, 60, at("15:30"), at("18:30"), 80,
        ),
        PlannedHelper(
            "ilse", "Ilse Brandão; „Illy“, the younger", ("baking",), ((at("16:00"), at("19:30")),), False, False, 30,
            at("16:50"), at("18:30"), 30,
        ),
    )  # fmt: skip


def _gear() -> tuple[PlannedGear, ...]:
    return (
        PlannedGear("oven12", "oven", "12-inch oven", 1, inches=12),
        PlannedGear("oven10", "oven", "10-inch oven", 1, inches=10),
        PlannedGear("chimney", "chimney", "chimney", 1, coals=50),
        PlannedGear("table", "table", "cooking table", 2),
        PlannedGear("bowl", "bowl", "mixing bowl", 2),
        PlannedGear("rack", "rack", "cooling rack", 1),
    )


def _firings() -> tuple[PlannedFiring, ...]:
    return (
        PlannedFiring("fire1", at("15:50"), at("16:15"), at("17:15"), 25, ("beans.lay",), "fire1.light", 1),
        PlannedFiring(
            "fire2", at("16:25"), at("16:50"), at("17:50"), 33, ("beans.top_up", "crumble.lay"), "fire2.light", 1
        ),
    )


def _bakes() -> tuple[PlannedBake, ...]:
    return (
        PlannedBake(
            "beans.bake", "beans", "Smoky bean pot", OVEN12, 12, 8, 17, 22, 28, "350 °F",
            at("16:15"), at("16:25"), at("17:55"), (("beans.top_up", 12),),
            "72 °F, wind 7 mph, shade", 70, 90, 120, True, "On the lid 6 at the rim and 2 at the centre; under 17.",
            ("It runs hot. Take 2 coals off the lid.",),
        ),
        PlannedBake(
            "crumble.bake", "crumble", "Apple crumble à la Brandão", OVEN10, 10, 14, 7, 18, 24, "350 °F",
            at("17:15"), at("17:25"), at("18:10"),
        ),
    )  # fmt: skip


def _safety() -> tuple[PlannedSafety, ...]:
    return (
        PlannedSafety(
            "beans", "Smoky bean pot", "Middle at least 165 °F (USDA-FSIS).", "held hot, 140 °F or hotter", 25, 120,
            "USDA-FSIS",
        ),
        PlannedSafety(
            "crumble", "Apple crumble à la Brandão", "", "stands at air temperature", None, None, "USDA-FSIS"
        ),
    )  # fmt: skip


def _allergens() -> tuple[PlannedAllergens, ...]:
    unknown = ("house rub",)
    return (
        PlannedAllergens(
            "beans", "Smoky bean pot", ("soybeans",), (), ("milk", "wheat"), unknown,
            "Contains: soybeans. NOT KNOWN: milk, wheat. Not known what is in: house rub. Ask the cook.",
        ),
        PlannedAllergens(
            "crumble", "Apple crumble à la Brandão", ("milk", "wheat"), ("tree nuts",), (), (),
            "Contains: milk, wheat. May hold: tree nuts. Ask the cook.",
        ),
    )  # fmt: skip


def _levels() -> tuple[PlannedLevel, ...]:
    return tuple(
        PlannedLevel(name, minutes, minutes)
        for name, minutes in (("lateness", 0), ("freshness", 25), ("crew_day", 371), ("fair_shares", 29))
    )
