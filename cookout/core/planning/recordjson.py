"""A plan record as JSON and back: what ``plan --json`` prints and a revision stores.

`JSON_DOC` describes every key; a test holds it against the keys really produced. The form is stable: keys may be added,
never renamed or given another meaning without a new `FORMAT`. Times are ISO 8601 with the offset that holds at that
instant in the event's time zone, so a reader needs no zone data.
"""

from collections.abc import Mapping
from dataclasses import MISSING, fields, is_dataclass
from datetime import datetime
from enum import StrEnum
from functools import cache
from types import UnionType
from typing import Any, get_args, get_origin, get_type_hints
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedBake, PlannedHelper, PlannedLink, PlannedSlot, PlanRecord

FORMAT = 1

JSON_DOC = """\
| key | holds | meaning |
|---|---|---|
| `format` | number | 1; another number where a key changed its meaning |
| `event_id` | text | the event |
| `event_name` | text | its name |
| `place` | text | where it is |
| `timezone` | text | IANA name of the event's time zone |
| `weather` | text | the weather planned for, in words |
| `units` | text | `us` or `metric`: the units used in texts |
| `status` | text | `proved_best`, `best_found`, `none_found` or `impossible` |
| `seconds` | number | wall-clock seconds that solving took |
| `levels[].name` | text | `lateness`, `freshness`, `crew_day`, `fair_shares`, from first to last importance; \
`changes` behind them where the plan was made near to an earlier one |
| `levels[].value` | minutes | what the plan costs on this level; less is better. `changes` count 1 for a task at \
another minute and 2 for one in other hands |
| `levels[].bound` | minutes | no plan beats this while the levels before keep their values |
| `servings[].serving` | id | the serving |
| `servings[].serving_name` | text | its name |
| `servings[].dish` | id | the dish on the table |
| `servings[].dish_name` | text | its name |
| `servings[].due_at` | time | wanted on the table |
| `servings[].earliest_at` | time | on the table no earlier than this |
| `servings[].latest_at` | time | on the table no later than this |
| `servings[].ready_at` | time | on the table by the plan |
| `servings[].late_minutes` | minutes | from `due_at` to `ready_at`, 0 where it is in time |
| `servings[].people` | number | people it is for |
| `slots[].id` | id | a demo slot |
| `slots[].name` | text | its name |
| `slots[].starts_at` | time | start |
| `slots[].ends_at` | time | end |
| `slots[].presenter` | helper id | who presents, and does nothing else in the slot |
| `slots[].live[]` | task id | tasks shown live, talks and tastings, in their order |
| `slots[].ready_made[].dish` | dish id | what stands ready |
| `slots[].ready_made[].up_to` | task id | the last task that must be done to it |
| `slots[].ready_made[].by` | time | by when |
| `dishes.*` | text | names of dishes by id |
| `tasks[].id` | id | a step with a time |
| `tasks[].dish` | dish id | its dish; empty for tasks of the whole event |
| `tasks[].name` | text | what to do |
| `tasks[].kind` | text | `set_up`, `prepare`, `mix`, `rest`, `light`, `ash_over`, `lay_coals`, `preheat`, `load`, \
`bake`, `turn`, `look_in`, `top_up`, `take_out`, `cool`, `ice`, `finish`, `serve`, `drown`, `talk` or `taste`; \
`light`, `lay_coals`, `top_up` and `drown` are fire tasks |
| `tasks[].starts_at` | time | start |
| `tasks[].ends_at` | time | end |
| `tasks[].helpers[]` | helper id | who does it |
| `tasks[].gear.*` | number | pieces of gear in use from start to end, by gear id |
| `tasks[].hands_on` | yes or no | no: it is waiting, and nobody is needed |
| `tasks[].slack_minutes` | minutes | how much later it may start with all else where it stands |
| `tasks[].held_by[].direction` | text | `earlier` or `later` |
| `tasks[].held_by[].by` | id | what holds it that way, or empty |
| `tasks[].held_by[].text` | text | the same as a sentence |
| `tasks[].units[]` | text | the very pieces of gear |
| `tasks[].needs[]` | skill | skills that each of its helpers has |
| `tasks[].hands` | number | how many helpers it takes |
| `tasks[].hot` | yes or no | work at the fire, counted for breaks |
| `tasks[].detail` | text | one line for whoever does it, or empty |
| `tasks[].caution` | text | the usual caution, or empty |
| `tasks[].live_in` | slot id | the demo slot it is shown in, or empty |
| `tasks[].pinned[]` | text | what of it is pinned by hand: `time`, `helpers`, `units` |
| `links[].from` | task id | the task waited for |
| `links[].to` | task id | the task that waits |
| `links[].kind` | text | `start_to_start`, `finish_to_start`, `start_to_finish` or `finish_to_finish` |
| `links[].least_minutes` | minutes | least wait from the named end of `from` to the named end of `to` |
| `links[].most_minutes` | minutes or null | most wait; null: any |
| `links[].why` | text | the reason in words, or empty |
| `helpers[].id` | id | one of the crew |
| `helpers[].name` | text | name |
| `helpers[].skills[]` | skill | what they can do |
| `helpers[].windows[].from` | time | there from |
| `helpers[].windows[].until` | time | there until |
| `helpers[].adult` | yes or no | fire tasks go to adults only |
| `helpers[].fire_allowed` | yes or no | or to those the organiser names |
| `helpers[].hot_stretch_minutes` | minutes | longest stretch of hot work before a break |
| `helpers[].called_at` | time or null | must be there |
| `helpers[].free_at` | time or null | may go |
| `helpers[].work_minutes` | minutes | hands-on work in all |
| `gear[].id` | id | gear of the event |
| `gear[].kind` | text | `oven`, `chimney`, `table`, `trivet`, `rack`, `cooler`, `mixer`, `bowl`, `skillet` or `other` |
| `gear[].name` | text | name |
| `gear[].count` | number | how many there are; for a cooking table its spots, for a cooler its places |
| `gear[].inches` | number or null | nominal diameter of an oven |
| `gear[].coals` | number or null | coals that a chimney lights at once |
| `firings[].id` | id | coals lit together |
| `firings[].lit_at` | time | lit |
| `firings[].ready_from` | time | ashed over, fit for use |
| `firings[].ready_until` | time | fading |
| `firings[].coals` | number | how many |
| `firings[].feeds[]` | task id | the tasks they are for |
| `firings[].lit_by` | task id | the task that lights them |
| `firings[].chimneys` | number | chimneys they fill |
| `bakes[].task` | task id | one oven over coals |
| `bakes[].dish` | dish id | what is in it |
| `bakes[].dish_name` | text | its name |
| `bakes[].unit` | text | the very oven |
| `bakes[].inches` | number | its nominal diameter |
| `bakes[].lid` | number | coals to lay on the lid |
| `bakes[].under` | number | coals to lay under it |
| `bakes[].least_coals` | number | band of the count in all: least |
| `bakes[].most_coals` | number | band of the count in all: most |
| `bakes[].temperature` | text | oven temperature in the event's units |
| `bakes[].laid_at` | time | laying coals begins |
| `bakes[].in_at` | time | food is in, its loading done; coals are laid next where nothing was preheated |
| `bakes[].out_at` | time | food comes out |
| `bakes[].top_ups[].task` | task id | fresh coals on the way |
| `bakes[].top_ups[].coals` | number | how many |
| `bakes[].weather` | text | the weather that its coals and minutes are reckoned for |
| `bakes[].least_minutes` | minutes | over the coals: least |
| `bakes[].usual_minutes` | minutes | over the coals: usual, as planned |
| `bakes[].most_minutes` | minutes | over the coals: most |
| `bakes[].modelled` | yes or no | the minutes are the heat model's; no: the recipe's own |
| `bakes[].pattern` | text | where the coals go |
| `bakes[].troubles[]` | text | what to do where a look-in shows something amiss |
| `warnings[].about` | text | something to mind |
| `warnings[].text` | text | what |
| `warnings[].remedy` | text | what to do about it |
| `obstacles[]` | text | what stands in the way of an impossible event |
| `ways_out[].text` | text | a change that was tried and gives a plan |
| `ways_out[].change.*` | text or number | the same, to be applied by program |
| `break_minutes` | minutes | a pause this long between hot tasks is a break |
| `fuel.kind` | text | `briquettes` or `lump`; `fuel` is null without a plan |
| `fuel.coals` | number | coals to bring, those to spare among them |
| `fuel.laid` | number | laid at first, all bakes together |
| `fuel.added` | number | added later as top-ups |
| `fuel.spare` | number | to spare |
| `fuel.kilograms` | number | mass of all of them |
| `fuel.mass` | text | the same in the event's units |
| `fuel.chimney_loads` | number | chimneys filled in all |
| `safety[].dish` | dish id | a dish as food safety sees it |
| `safety[].dish_name` | text | its name |
| `safety[].centre` | text | how hot its middle must get, with the rule; empty where no rule asks |
| `safety[].held` | text | how it is held until it is served, in the event's units |
| `safety[].out_minutes` | minutes or null | longest stretch between cold and hot; null: not served, or no limit |
| `safety[].most_out_minutes` | minutes or null | what the rules allow |
| `safety[].rules` | text | the set of rules |
| `allergens[].dish` | dish id | a dish |
| `allergens[].dish_name` | text | its name |
| `allergens[].contains[]` | text | allergens that it contains |
| `allergens[].may_be[]` | text | allergens that may be in it |
| `allergens[].not_known[]` | text | allergens of which nothing is known |
| `allergens[].unknown_ingredients[]` | text | ingredients that are not known |
| `allergens[].text` | text | all of it in words |
| `allergens[].others[]` | text | allergens beyond the nine that it contains |
| `checklist[].id` | text | a line of the checklist of the place |
| `checklist[].stage` | text | `before`, `set_up`, `fire` or `after` |
| `checklist[].state` | text | `to do`, `not known`, `warning` or `no fire` |
| `checklist[].text` | text | what |
| `checklist[].source` | text | who says so |
| `advice[].dish` | dish id | what the elevation changes in a dish; empty list where the event does not ask |
| `advice[].dish_name` | text | its name |
| `advice[].text` | text | what to change |
| `advice[].source` | text | who says so |
"""

RENAMED: dict[tuple[type, str], str] = {(PlannedLink, "before"): "from", (PlannedLink, "after"): "to"}
"""Fields whose key differs from their name."""

PARTS: dict[tuple[type, str], tuple[str, ...]] = {
    (PlannedHelper, "windows"): ("from", "until"),
    (PlannedSlot, "ready_made"): ("dish", "up_to", "by"),
    (PlannedBake, "top_ups"): ("task", "coals"),
}
"""Fields that hold tuples, and the keys of the objects which these become."""


def to_json(record: PlanRecord) -> dict[str, Any]:
    """The record as plain JSON values; `ValueError` where a datetime has no time zone."""
    return {"format": FORMAT, **_encoded_fields(record)}


def from_json(data: Mapping[str, Any]) -> PlanRecord:
    """The record that `to_json` made `data` of, its datetimes in the event's zone.

    Unknown keys are passed over, and a record of an earlier program may lack those that came later; `ValueError` names
    the key that is missing or unreadable.
    """
    if data.get("format") != FORMAT:
        raise ValueError(f"format: this program reads {FORMAT}, not {data.get('format')!r}; plan the event anew")
    record = _Reader(_zone(data.get("timezone"))).read_object(PlanRecord, data, "")
    assert isinstance(record, PlanRecord)
    return record


def _zone(name: object) -> ZoneInfo:
    try:
        return ZoneInfo(str(name))
    except (KeyError, ValueError, OSError) as error:
        raise ValueError(f"timezone: {name!r} is no IANA time zone; write one such as Europe/Lisbon") from error


def _encoded_fields(value: Any) -> dict[str, Any]:
    cls = type(value)
    return {
        RENAMED.get((cls, field.name), field.name): _encoded(getattr(value, field.name), PARTS.get((cls, field.name)))
        for field in fields(value)
    }


def _encoded(value: Any, parts: tuple[str, ...] | None = None) -> Any:
    if isinstance(value, tuple):
        return [dict(zip(parts, map(_encoded, item), strict=True)) if parts else _encoded(item) for item in value]
    if isinstance(value, datetime):
        return _encoded_time(value)
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, dict):
        return dict(value)
    return _encoded_fields(value) if is_dataclass(value) else value


def _encoded_time(moment: datetime) -> str:
    if moment.utcoffset() is None:
        raise ValueError(f"{moment} has no time zone; give it the event's")
    return moment.isoformat()


class _Reader:
    """Reads values by the types of the record's fields; `path` names where in the JSON it stands."""

    def __init__(self, zone: ZoneInfo) -> None:
        self.zone = zone

    def read_object(self, cls: type, data: Any, path: str) -> Any:
        if not isinstance(data, Mapping):
            raise _unlike(path or "plan", "an object", data)
        read = {}
        later = {field.name for field in fields(cls) if field.default is not MISSING}
        for name, hint in _hints(cls).items():
            key = RENAMED.get((cls, name), name)
            where = f"{path}.{key}" if path else key
            if key not in data and name in later:
                continue
            if key not in data:
                raise ValueError(f"{where}: is missing")
            read[name] = self.read(hint, data[key], where, PARTS.get((cls, name)))
        return cls(**read)

    def read(self, hint: Any, data: Any, path: str, parts: tuple[str, ...] | None = None) -> Any:
        if isinstance(hint, UnionType):
            return self._read_either(hint, data, path)
        if get_origin(hint) is tuple:
            return self._read_list(get_args(hint)[0], data, path, parts)
        if get_origin(hint) is dict:
            return self._read_table(get_args(hint)[1], data, path)
        if is_dataclass(hint) and isinstance(hint, type):
            return self.read_object(hint, data, path)
        return self._read_plain(hint, data, path)

    def _read_either(self, hint: UnionType, data: Any, path: str) -> Any:
        kinds = get_args(hint)
        if data is None and type(None) in kinds:
            return None
        simple = [kind for kind in kinds if kind in (str, int) and type(data) is kind]
        rest = [kind for kind in kinds if kind is not type(None)]
        return self.read(simple[0] if simple else rest[0], data, path)

    def _read_list(self, hint: Any, data: Any, path: str, parts: tuple[str, ...] | None) -> tuple[Any, ...]:
        if not isinstance(data, list | tuple):
            raise _unlike(path, "a list", data)
        if parts is None:
            return tuple(self.read(hint, item, f"{path}[{place}]") for place, item in enumerate(data))
        return tuple(self._read_parts(hint, item, f"{path}[{place}]", parts) for place, item in enumerate(data))

    def _read_parts(self, hint: Any, data: Any, path: str, parts: tuple[str, ...]) -> tuple[Any, ...]:
        if not isinstance(data, Mapping) or not set(parts) <= data.keys():
            raise _unlike(path, f"an object with {', '.join(parts)}", data)
        kinds = get_args(hint)
        return tuple(self.read(kind, data[part], f"{path}.{part}") for kind, part in zip(kinds, parts, strict=True))

    def _read_table(self, hint: Any, data: Any, path: str) -> dict[str, Any]:
        if not isinstance(data, Mapping):
            raise _unlike(path, "an object", data)
        return {key: self.read(hint, value, f"{path}.{key}") for key, value in data.items()}

    def _read_plain(self, hint: Any, data: Any, path: str) -> Any:
        if hint is datetime:
            return self._read_time(data, path)
        if issubclass(hint, StrEnum):
            return self._read_choice(hint, data, path)
        if hint is float and type(data) is int:
            return float(data)
        if type(data) is not hint:
            raise _unlike(path, hint.__name__, data)
        return data

    def _read_choice(self, hint: type[StrEnum], data: Any, path: str) -> StrEnum:
        if data not in [choice.value for choice in hint]:
            raise _unlike(path, f"one of {', '.join(hint)}", data)
        return hint(data)

    def _read_time(self, data: Any, path: str) -> datetime:
        try:
            moment = datetime.fromisoformat(data)
        except (TypeError, ValueError) as error:
            raise ValueError(f"{path}: {data!r} is no ISO 8601 time") from error
        if moment.utcoffset() is None:
            raise ValueError(f"{path}: {data!r} lacks its offset from UTC")
        return moment.astimezone(self.zone)


def _unlike(path: str, wanted: str, data: Any) -> ValueError:
    return ValueError(f"{path}: {wanted} is wanted, not {data!r}")


@cache
def _hints(cls: type) -> dict[str, Any]:
    return get_type_hints(cls)
