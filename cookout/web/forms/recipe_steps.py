"""One step of a recipe, typed."""

import re
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.steps import MOST_HANDS, MOST_MINUTES, UNATTENDED, usual_kind
from cookout.core.eventfile.writing_recipes import Table
from cookout.core.kitchen.recipe import BakeMethod, CoolPlace, Scope, StepKind
from cookout.web.forms.recipe_words import GEAR, KINDS, LOADS, METHODS, PLACES, SCOPES, choices
from cookout.web.forms.recipes import allergens_of as listed
from cookout.web.forms.recipes import whole, words

OVENS = (5, 6, 8, 9, 10, 12, 14, 15, 16, 18, 20, 22)
BEFORE, NOTHING = "before", ""
MOST_WAITS = 20
_MORE, _LOAD = ("skills", "scope", "hot"), ("load", "pan", "depth", "start", "done", "stand")


def _texts(label: Any, example: str = "", hint: Any = "") -> forms.CharField:
    return words(label, 40, hint, placeholder=example)


class StepForm(forms.Form):
    """What is done, how long, by how many, with what, after what; and the heat where it goes over coals."""

    id = forms.CharField(required=False, max_length=60, widget=forms.HiddenInput)
    gear_order = forms.CharField(required=False, max_length=200, widget=forms.HiddenInput)
    name = words(_("What is done"))
    kind = forms.ChoiceField(label=_("Sort of work"), choices=choices(KINDS), required=False)
    least = whole(_("Least min"), MOST_MINUTES, least=1)
    usual = whole(_("Usual"), MOST_MINUTES, least=1)
    most = whole(_("Most"), MOST_MINUTES, least=1)
    hands = whole(_("Helpers"), MOST_HANDS, _("0 where nobody is needed"))
    skills = words(
        _("Skills they need"), 200, _("With commas between; empty where anybody can."), placeholder=_("baking")
    )
    scope = forms.ChoiceField(label=_("How often"), choices=choices(SCOPES), required=False)
    hot = forms.BooleanField(label=_("Work at the fire"), required=False)
    note = forms.CharField(
        label=_("What to look for"), required=False, max_length=2000, widget=forms.Textarea(attrs={"rows": 2})
    )
    oven = forms.ChoiceField(label=_("Oven"), required=False)
    temperature = _texts(_("How hot"), "350 F")
    method = forms.ChoiceField(label=_("Way of heating"), choices=choices(METHODS), required=False)
    look_in_from = whole(_("First look-in after, minutes"), MOST_MINUTES)
    preheat_minutes = whole(_("Oven heats up empty, minutes"), 24 * 60)
    trivet = forms.BooleanField(label=_("Its pan stands on a trivet"), required=False)
    stand = forms.BooleanField(label=_("The oven stands on a trivet"), required=False)
    load = forms.ChoiceField(label=_("What bakes"), choices=choices(LOADS, nothing=_("not said")), required=False)
    pan = _texts(_("Pan across"), "9 in", _("The oven itself where food lies in it."))
    depth = _texts(_("Food is deep"), "1.25 in")
    start = _texts(_("As cold as"), "40 F", _("as it goes in; empty: as usual"))
    done = _texts(_("Middle is done at"), "165 F", _("empty: as usual"))
    cool_to = _texts(_("Cools to"), "84 F", _("In the middle; its minutes are then reckoned."))
    cool_where = forms.ChoiceField(label=_("Where it stands"), choices=choices(PLACES), required=False)
    cool_depth = _texts(_("Deep as baked"), "1.5 in")

    def __init__(self, place: int, data: Any = None, *, initial: Any = None, before: list[tuple[str, str]]) -> None:
        super().__init__(data, initial=initial, prefix=f"step-{place}", label_suffix="")
        self.place = place
        self._offer_ovens(data, initial or {})
        self._offer_gear()
        self.waits = self._offer_waits(data, initial or {}, before)

    def _offer_ovens(self, data: Any, initial: dict[str, Any]) -> None:
        typed = str(self._typed(data, initial, "oven") or "")
        sizes = sorted({*OVENS, *([int(typed)] if re.fullmatch(r"\d{1,2}", typed) else [])})
        shown = [
            (str(size), _("%(size)d inches (%(cm)d cm)") % {"size": size, "cm": round(size * 2.54)}) for size in sizes
        ]
        self.fields["oven"].choices = [("", _("choose one")), *shown]  # type: ignore[attr-defined]

    def _offer_gear(self) -> None:
        """A count for each kind; the order in which a stored step names them stays."""
        for kind, label in GEAR.items():
            self.fields[f"gear_{kind}"] = whole(label, 50)

    def _offer_waits(self, data: Any, initial: dict[str, Any], before: list[tuple[str, str]]) -> range:
        """Numbers of the steps that it waits for: as many rows as are used, and one more."""
        used = [number for number in range(MOST_WAITS) if self._typed(data, initial, f"after_{number}")]
        rows = range(min(max([0, *used]) + 2, MOST_WAITS))
        for number in rows:
            first = [(BEFORE, _("the step before")), (NOTHING, _("nothing"))] if number == 0 else [("", "–")]
            self.fields[f"after_{number}"] = forms.ChoiceField(
                label=_("Comes after") if number == 0 else _("and after"), choices=[*first, *before], required=False
            )
            self.fields[f"after_least_{number}"] = whole(_("at least, minutes"), MOST_MINUTES)
            self.fields[f"after_most_{number}"] = whole(_("at most, minutes"), MOST_MINUTES)
        return rows

    def _typed(self, data: Any, initial: dict[str, Any], key: str) -> Any:
        return data.get(self.add_prefix(key)) if data is not None else initial.get(key)

    @property
    def minutes_fields(self) -> list[forms.BoundField]:
        """Least, usual and most."""
        return [self[key] for key in ("least", "usual", "most")]

    @property
    def gear_fields(self) -> list[forms.BoundField]:
        """The counts of gear."""
        return [self[f"gear_{kind}"] for kind in GEAR]

    @property
    def wait_rows(self) -> list[tuple[forms.BoundField, forms.BoundField, forms.BoundField]]:
        """What it waits for, with least and most minutes."""
        keys = ("after", "after_least", "after_most")
        return [tuple(self[f"{key}_{number}"] for key in keys) for number in self.waits]  # type: ignore[misc]

    @property
    def more_words(self) -> str:
        """What is typed in the fields for waits, skills and gear, which are folded away."""
        gear = [
            f"{label}: {self[f'gear_{kind}'].value()}" for kind, label in GEAR.items() if self[f"gear_{kind}"].value()
        ]
        scope = self["scope"].value()
        often = [str(SCOPES[Scope(scope)])] if scope in (Scope.PAN, Scope.DISH) else []
        return "; ".join([*self._waits_words(), *listed(str(self["skills"].value() or "")), *often, *gear])

    def _waits_words(self) -> list[str]:
        found = []
        for after, least, most in self.wait_rows:
            chosen = dict(after.field.choices).get(after.value(), "") if after.value() else ""  # type: ignore[attr-defined]
            spans = [_("at least %(m)s min") % {"m": least.value()}] if least.value() else []
            spans += [_("at most %(m)s min") % {"m": most.value()}] if most.value() else []
            if chosen and (spans or after.value() != BEFORE):
                found.append(", ".join([_("after %(step)s") % {"step": chosen}, *spans]))
        return found if found or self["after_0"].value() else [str(_("waits for nothing"))]

    @property
    def load_words(self) -> str:
        """What stands in the oven, which is folded away."""
        load = self["load"].value()
        kind = str(dict(LOADS).get(load, "")) if load else ""
        return ", ".join(each for each in (kind, self["pan"].value(), self["depth"].value()) if each)

    @property
    def more_is_wrong(self) -> bool:
        """Whether something in the fields for waits, skills and gear is to be mended."""
        return any(key in self.errors for key in self.fields if key.startswith(("gear_", "after_")) or key in _MORE)

    @property
    def load_is_wrong(self) -> bool:
        """Whether something about what stands in the oven is to be mended."""
        return any(key in self.errors for key in _LOAD)

    def clean(self) -> dict[str, Any]:
        """Minutes rise, and a bake's own fields are no half."""
        given = super().clean() or {}
        spans = [given.get(key) for key in ("least", "usual", "most")]
        told = [span for span in spans if span is not None]
        if told and given.get("usual") is None and "usual" not in self.errors:
            self.add_error("usual", forms.ValidationError(_("Say how long it usually takes.")))
        if told != sorted(told):
            self.add_error("usual", forms.ValidationError(_("Least, usual and most rise, or are the same.")))
        return given

    def table(self, previous: str) -> Table:
        """What was typed, as keys of a step in a recipe file; `previous` is the id of the step before."""
        given = self.cleaned_data
        kind = given.get("kind") or StepKind.PREPARE.value
        values: Table = {
            "id": given.get("id") or f"step-{self.place + 1}",
            "name": given.get("name") or None,
            "kind": kind,
            "scope": given.get("scope") or None,
            "minutes": _minutes(given),
            "hands": given.get("hands"),
            "skills": listed(given.get("skills") or ""),
            "hot": True if given.get("hot") else None,
            "note": " ".join(str(given.get("note") or "").split()) or None,
            "gear": self._gear(given),
            "after": self._after(given, previous),
            "bake": _bake(given) if kind == StepKind.BAKE else None,
            "cool": _cool(given) if kind == StepKind.COOL else None,
        }
        return {key: value for key, value in values.items() if value is not None}

    def _gear(self, given: dict[str, Any]) -> list[Table]:
        before = [kind for kind in str(given.get("gear_order") or "").split() if kind in GEAR]
        kinds = dict.fromkeys([*before, *GEAR])
        return [{"kind": kind, "count": given[f"gear_{kind}"]} for kind in kinds if given.get(f"gear_{kind}")]

    def _after(self, given: dict[str, Any], previous: str) -> list[Table]:
        found: list[Table] = []
        for number in self.waits:
            chosen = given.get(f"after_{number}") or ""
            name = previous if chosen == BEFORE else chosen
            if name and name not in {entry["step"] for entry in found}:
                entry: Table = {"step": name}
                least, most = given.get(f"after_least_{number}"), given.get(f"after_most_{number}")
                entry |= {key: value for key, value in (("least", least), ("most", most)) if value is not None}
                found.append(entry)
        return found


def _minutes(given: dict[str, Any]) -> list[int] | None:
    usual = given.get("usual")
    if usual is None:
        return None
    least, most = (usual if given.get(key) is None else given[key] for key in ("least", "most"))
    return [least, usual, most]


def _bake(given: dict[str, Any]) -> Table:
    values: Table = {key: given.get(key) for key in ("temperature", "method", "load", "pan", "depth", "start", "done")}
    values["oven"] = f"{given['oven']} in" if given.get("oven") else None
    values |= {key: given.get(key) for key in ("look_in_from", "preheat_minutes")}
    values |= {key: True for key in ("trivet", "stand") if given.get(key)}
    return {key: value for key, value in values.items() if value not in (None, "")}


def _cool(given: dict[str, Any]) -> Table | None:
    if not (given.get("cool_to") or given.get("cool_depth")):
        return None
    values = {"to": given.get("cool_to"), "where": given.get("cool_where"), "depth": given.get("cool_depth")}
    return {key: value for key, value in values.items() if value}


def step_values(table: Table, previous: str | None) -> dict[str, Any]:
    """What the fields show of a step's table; what the file leaves out is shown as it then is."""
    bake, cool = (_table(table.get(key)) for key in ("bake", "cool"))
    kind = str(table.get("kind") or usual_kind(bakes="bake" in table, cools="cool" in table).value)
    shown: dict[str, Any] = {key: table.get(key) for key in ("id", "name", "note", "hot")}
    shown |= {"kind": kind, "scope": table.get("scope") or Scope.BATCH.value}
    shown["hands"] = table.get("hands", 0 if StepKind(kind) in UNATTENDED else 1)
    skills = table.get("skills")
    shown["skills"] = ", ".join(map(str, skills)) if isinstance(skills, list) else ""
    shown |= _minutes_shown(table.get("minutes"))
    shown |= {key: value for key, value in bake.items() if key != "oven"}
    shown["oven"] = str(bake.get("oven", "")).partition(" ")[0]
    shown["method"] = bake.get("method", BakeMethod.BAKE.value)
    shown |= {f"cool_{key}": value for key, value in cool.items()}
    shown.setdefault("cool_where", CoolPlace.RACK.value)
    uses = _tables(table.get("gear"))
    shown["gear_order"] = " ".join(str(use["kind"]) for use in uses)
    for use in uses:
        count = use.get("count", 1)
        shown[f"gear_{use['kind']}"] = shown.get(f"gear_{use['kind']}", 0) + count
    return shown | _after_shown(table.get("after"), previous)


def _minutes_shown(minutes: object) -> dict[str, Any]:
    if isinstance(minutes, list) and len(minutes) == 3:
        return dict(zip(("least", "usual", "most"), minutes, strict=True))
    return {"least": minutes, "usual": minutes, "most": minutes} if isinstance(minutes, int) else {}


def _after_shown(after: object, previous: str | None) -> dict[str, Any]:
    if not isinstance(after, list):
        return {"after_0": BEFORE}
    shown: dict[str, Any] = {"after_0": NOTHING}
    entries = [entry if isinstance(entry, dict) else {"step": entry} for entry in after]
    for number, entry in enumerate(entries[:MOST_WAITS]):
        alone = len(entries) == 1 and entry.get("step") == previous
        shown[f"after_{number}"] = BEFORE if alone else entry.get("step")
        shown[f"after_least_{number}"] = entry.get("least")
        shown[f"after_most_{number}"] = entry.get("most")
    return shown


def _table(value: object) -> Table:
    return value if isinstance(value, dict) else {}


def _tables(value: object) -> list[Table]:
    return [entry for entry in value if isinstance(entry, dict)] if isinstance(value, list) else []
