"""A plan as the rest of the world sees it: what pages, feeds, sheets and `plan --json` show, and a revision stores.

Nothing downstream computes a time; it reads this record. `to_json` and `from_json` are inverse, and the JSON is stable
and documented in README.md. All datetimes are aware, in the event's time zone.
"""

from dataclasses import dataclass
from datetime import datetime

from cookout.core.planning.result import Status

BEHIND = "; behind that, "
"""What parts the nearest reason from the chain of reasons behind it."""


@dataclass(frozen=True, slots=True)
class HeldBy:
    """Why a task can start no `direction` ("earlier" or "later"): a sentence, and what holds it (`by`, an id or "")."""

    direction: str
    by: str
    text: str

    @property
    def brief(self) -> str:
        """The nearest reason alone, without the chain behind it: enough for whoever does the task."""
        return self.text.split(BEHIND)[0]


@dataclass(frozen=True, slots=True)
class PlannedTask:
    """A step with a time.

    `dish` is empty for tasks of the whole event. `helpers` are helper ids; `gear` counts by gear id; `units` names the
    very pieces ("12-inch oven B"), as many as `gear` counts of ovens, chimneys and table spots. `slack_minutes` it may
    start later with all else where it stands. `detail` is one line for whoever does it (coals, what to look for),
    `caution` the usual caution or "". `live_in` names the demo slot in which it is shown, or "".
    `needs` are the skills asked for. `hot` is work at the fire; `hands_on` False is waiting. `pinned` says what of it
    was pinned by hand: "time", "helpers", "units".
    """

    id: str
    dish: str
    name: str
    kind: str
    starts_at: datetime
    ends_at: datetime
    helpers: tuple[str, ...]
    gear: dict[str, int]
    hands_on: bool
    slack_minutes: int
    held_by: tuple[HeldBy, ...]
    units: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    hands: int = 0
    hot: bool = False
    detail: str = ""
    caution: str = ""
    live_in: str = ""
    pinned: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PlannedLink:
    """A wait between two tasks; `kind` says between which ends, `most_minutes` None is any."""

    before: str
    after: str
    kind: str
    least_minutes: int
    most_minutes: int | None
    why: str = ""


@dataclass(frozen=True, slots=True)
class PlannedServing:
    """A dish on the table: wanted at `due_at`, there at `ready_at`; allowed from `earliest_at` to `latest_at`."""

    serving: str
    serving_name: str
    dish: str
    dish_name: str
    due_at: datetime
    earliest_at: datetime
    latest_at: datetime
    ready_at: datetime
    late_minutes: int
    people: int


@dataclass(frozen=True, slots=True)
class PlannedSlot:
    """A demo slot with its live tasks in order and what must stand ready (dish, up to which task, by when)."""

    id: str
    name: str
    starts_at: datetime
    ends_at: datetime
    presenter: str
    live: tuple[str, ...]
    ready_made: tuple[tuple[str, str, datetime], ...]


@dataclass(frozen=True, slots=True)
class PlannedHelper:
    """One of the crew; `windows` are (from, until). `called_at` and `free_at` None where the plan needs them not."""

    id: str
    name: str
    skills: tuple[str, ...]
    windows: tuple[tuple[datetime, datetime], ...]
    adult: bool
    fire_allowed: bool
    hot_stretch_minutes: int
    called_at: datetime | None
    free_at: datetime | None
    work_minutes: int


@dataclass(frozen=True, slots=True)
class PlannedGear:
    """Gear of the event, `inches` and `coals` as there. For a table `count` is its spots, for a cooler its places."""

    id: str
    kind: str
    name: str
    count: int
    inches: int | None = None
    coals: int | None = None


@dataclass(frozen=True, slots=True)
class PlannedFiring:
    """Coals lit together: lit at, usable from and until, how many, and the ids of the tasks that they feed.

    `lit_by` is the task that lights them; `chimneys` how many they fill.
    """

    id: str
    lit_at: datetime
    ready_from: datetime
    ready_until: datetime
    coals: int
    feeds: tuple[str, ...]
    lit_by: str
    chimneys: int


@dataclass(frozen=True, slots=True)
class PlannedBake:
    """One oven over coals: its tasks, and the coals to lay. `top_ups` are (task id, coals).

    The minutes over the coals are the heat model's for `weather` where `modelled`, else the recipe's. `pattern` says
    where the coals go, `troubles` what to do where a look-in shows something amiss.
    """

    task: str
    dish: str
    dish_name: str
    unit: str
    inches: int
    lid: int
    under: int
    least_coals: int
    most_coals: int
    temperature: str
    laid_at: datetime
    in_at: datetime
    out_at: datetime
    top_ups: tuple[tuple[str, int], ...] = ()
    weather: str = ""
    least_minutes: int = 0
    usual_minutes: int = 0
    most_minutes: int = 0
    modelled: bool = False
    pattern: str = ""
    troubles: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PlannedFuel:
    """The fuel to bring: coals `laid` at first, `added` later and to `spare`, their mass, and chimneys filled."""

    kind: str
    coals: int
    laid: int
    added: int
    spare: int
    kilograms: float
    mass: str
    chimney_loads: int


@dataclass(frozen=True, slots=True)
class PlannedSafety:
    """A dish as food safety sees it: how hot its middle must get, how long it is out of heat and cold, how it is held.

    `out_minutes` is the longest that it stands between cold and hot, `most_out_minutes` what is allowed; None where
    nothing is known or nothing limits it. `rules` names the set of rules.
    """

    dish: str
    dish_name: str
    centre: str
    held: str
    out_minutes: int | None
    most_out_minutes: int | None
    rules: str


@dataclass(frozen=True, slots=True)
class PlannedAllergens:
    """What is known of a dish's allergens; `text` says it in words, and never that there are none.

    `others` are those beyond the nine.
    """

    dish: str
    dish_name: str
    contains: tuple[str, ...]
    may_be: tuple[str, ...]
    not_known: tuple[str, ...]
    unknown_ingredients: tuple[str, ...]
    text: str
    others: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PlannedCheck:
    """A line of the checklist of the place: at which `stage` of the day, how it stands (`state`), and who says so."""

    id: str
    stage: str
    state: str
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class PlannedAdvice:
    """What the elevation changes in a dish, with its source; applied only by the cook."""

    dish: str
    dish_name: str
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class PlannedLevel:
    """One aim of the plan (`lateness`, `freshness`, `crew_day`, `fair_shares`): its value and its bound, in minutes.

    `changes` is there where a plan was made near to an earlier one: 1 for a task at another minute, 2 for other hands.
    """

    name: str
    value: int
    bound: int


@dataclass(frozen=True, slots=True)
class Warning:
    """Something to mind: what it is `about`, the text, and the remedy."""

    about: str
    text: str
    remedy: str


@dataclass(frozen=True, slots=True)
class WayOut:
    """A change that was tried and does give a plan. `change` is how it is applied, see `planning.ways_out`."""

    text: str
    change: dict[str, str | int]


@dataclass(frozen=True, slots=True)
class PlanRecord:
    """A whole plan, or (tasks empty) why there is none. `obstacles` are sentences for an impossible event."""

    event_id: str
    event_name: str
    place: str
    timezone: str
    weather: str
    units: str
    status: Status
    seconds: float
    levels: tuple[PlannedLevel, ...]
    servings: tuple[PlannedServing, ...]
    slots: tuple[PlannedSlot, ...]
    dishes: dict[str, str]
    tasks: tuple[PlannedTask, ...]
    links: tuple[PlannedLink, ...]
    helpers: tuple[PlannedHelper, ...]
    gear: tuple[PlannedGear, ...]
    firings: tuple[PlannedFiring, ...]
    bakes: tuple[PlannedBake, ...]
    warnings: tuple[Warning, ...]
    obstacles: tuple[str, ...]
    ways_out: tuple[WayOut, ...]
    break_minutes: int = 10
    fuel: PlannedFuel | None = None
    safety: tuple[PlannedSafety, ...] = ()
    allergens: tuple[PlannedAllergens, ...] = ()
    checklist: tuple[PlannedCheck, ...] = ()
    advice: tuple[PlannedAdvice, ...] = ()

    def people_at(self, serving: str) -> int:
        """For how many a serving is: as many as its most wanted dish, for a dish may be for a few of them."""
        return max((dish.people for dish in self.servings if dish.serving == serving), default=0)
