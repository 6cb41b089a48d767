"""A demo slot with its running order and what must stand ready."""

from collections.abc import Iterator
from typing import Any

from django import forms
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.fields import DAY_MINUTES
from cookout.core.eventfile.slots import LONGEST_SAID
from cookout.core.kitchen.recipe import StepId
from cookout.core.planning.event import (
    DemoSlot,
    Dish,
    DishId,
    HelperId,
    LiveStep,
    ReadyMade,
    Shown,
    SlotId,
    Talk,
    Taste,
)
from cookout.services.menu import dish_name, new_dish
from cookout.services.show import minutes_of
from cookout.web.forms.fields import MomentField
from cookout.web.forms.parts import PartForm

NEW = "new:"
"""Before the id of a recipe: a dish of it that is made only for the demo."""


class SlotForm(PartForm):
    """All of a slot in one form, so that every button saves what is typed. Items are known by their place."""

    do = "slot"
    table = "demo_slots"
    keys = {"starts": "starts_at"}  # noqa: RUF012

    name = forms.CharField(label=_("Name"), max_length=200, widget=forms.TextInput(attrs={"autocomplete": "off"}))
    starts_at = MomentField(label=_("Begins"))
    minutes = forms.IntegerField(label=_("Minutes"), min_value=1, max_value=DAY_MINUTES)
    presenter = forms.ChoiceField(label=_("Presenter"))
    new_step = forms.ChoiceField(label=_("A step done live"), required=False)
    new_text = forms.CharField(label=_("What about"), max_length=LONGEST_SAID, required=False)
    new_minutes = forms.IntegerField(label=_("Minutes"), min_value=1, max_value=DAY_MINUTES, required=False)
    new_dish = forms.ChoiceField(label=_("Tasted, for a tasting"), required=False)
    new_ready = forms.ChoiceField(label=_("Stands ready"), required=False)

    def fill(self) -> None:
        """The crew, the dishes and their steps, and a row for each thing that is there."""
        fields: dict[str, Any] = self.fields
        slot = self.slot_before
        fields["minutes"].widget.attrs["data-slot"] = True
        fields["presenter"].choices = [(helper.id, helper.name) for helper in self.event.crew]
        fields["new_dish"].choices = [("", _("no dish of its own")), *self._dishes()]
        fields["new_step"].choices = [("", _("choose a step")), *self._steps(whole=False)]
        fields["new_ready"].choices = [("", _("choose a dish")), *self._steps(whole=True)]
        for place, item in enumerate(slot.live if slot else ()):
            if not isinstance(item, LiveStep):
                fields[f"text_{place}"] = forms.CharField(label=_("What about"), max_length=LONGEST_SAID)
                minutes = forms.IntegerField(label=_("Minutes"), min_value=1, max_value=DAY_MINUTES)
                minutes.widget.attrs["data-adds"] = True
                fields[f"minutes_{place}"] = minutes
        for place, ready in enumerate(slot.ready_made if slot else ()):
            fields[f"up_to_{place}"] = forms.ChoiceField(
                label=_("Done up to"), choices=[("", _("wholly done")), *self._steps_of(ready.dish)], required=False
            )
            fields[f"by_{place}"] = MomentField(label=_("By"))

    def shown(self, value: DemoSlot | None) -> dict[str, Any]:
        """A new slot is proposed for two in the afternoon."""
        fields: dict[str, Any] = self.fields
        if value is None:
            return {"starts_at": fields["starts_at"].hold(self.event, 14 * 60), "minutes": 45}
        found: dict[str, Any] = {
            "name": value.name,
            "starts_at": fields["starts_at"].hold(self.event, value.starts_at),
            "minutes": value.minutes,
            "presenter": value.presenter,
        }
        for place, item in enumerate(value.live):
            if not isinstance(item, LiveStep) and f"text_{place}" in fields:
                found |= {f"text_{place}": item.text, f"minutes_{place}": item.minutes}
        for place, ready in enumerate(value.ready_made):
            if f"by_{place}" in fields:
                found[f"up_to_{place}"] = ready.up_to or ""
                found[f"by_{place}"] = fields[f"by_{place}"].hold(self.event, ready.by)
        return found

    @property
    def slot_before(self) -> DemoSlot | None:
        """The slot as it stands; None for a new one."""
        return next((slot for slot in self.event.slots if slot.id == self.part[1]), None)

    def slot(self, slot_id: SlotId) -> DemoSlot:
        """What was typed, in the running order as it stands."""
        given, before = self.cleaned_data, self.slot_before
        return DemoSlot(
            id=slot_id,
            name=given["name"],
            starts_at=given["starts_at"],
            minutes=given["minutes"],
            presenter=HelperId(given["presenter"]),
            live=tuple(self._item(place, item) for place, item in enumerate(before.live)) if before else (),
            ready_made=tuple(self._ready(place, each) for place, each in enumerate(before.ready_made))
            if before
            else (),
        )

    def added(self, what: str) -> tuple[Shown | ReadyMade, list[Dish]] | None:
        """What is to be added (live, talk, taste, ready), with a dish that is made for it; None with a fault."""
        given = self.cleaned_data
        if what in ("talk", "taste"):
            return self._said(what)
        name = "new_step" if what == "live" else "new_ready"
        if not given[name]:
            self.add_error(name, _("Choose from the list what to add."))
            return None
        chosen, _bar, step = given[name].partition("|")
        dish, made = self._dish(chosen)
        if what == "live":
            return LiveStep(dish, StepId(step)), made
        return ReadyMade(dish, given["starts_at"], StepId(step) if step else None), made

    def rows(self) -> Iterator[dict[str, Any]]:
        """What is shown, in its order, for the template."""
        slot = self.slot_before
        for place, item in enumerate(slot.live if slot else ()):
            row = {"place": place, "minutes": minutes_of(self.event, item), "kind": _kind(item)}
            if isinstance(item, LiveStep):
                row["name"] = self._step_name(item.dish, item.step)
            else:
                row |= {"name": item.text, "text": self[f"text_{place}"], "adds": self[f"minutes_{place}"]}
            if isinstance(item, LiveStep | Taste) and item.dish is not None:
                row["dish"] = dish_name(self.event, self.event.dish(item.dish))
            yield row

    def ready_rows(self) -> Iterator[dict[str, Any]]:
        """What must stand ready, for the template."""
        slot = self.slot_before
        for place, ready in enumerate(slot.ready_made if slot else ()):
            name = dish_name(self.event, self.event.dish(ready.dish))
            yield {"place": place, "dish": name, "up_to": self[f"up_to_{place}"], "by": self[f"by_{place}"]}

    @property
    def minutes_shown(self) -> int:
        """The minutes of all that is shown."""
        return sum(row["minutes"] for row in self.rows())

    def _item(self, place: int, item: Shown) -> Shown:
        if isinstance(item, LiveStep):
            return item
        text, minutes = self.cleaned_data[f"text_{place}"], self.cleaned_data[f"minutes_{place}"]
        return Talk(text, minutes) if isinstance(item, Talk) else Taste(text, minutes, item.dish)

    def _ready(self, place: int, ready: ReadyMade) -> ReadyMade:
        up_to = self.cleaned_data[f"up_to_{place}"]
        return ReadyMade(ready.dish, self.cleaned_data[f"by_{place}"], StepId(up_to) if up_to else None)

    def _said(self, what: str) -> tuple[Shown, list[Dish]] | None:
        given = self.cleaned_data
        if not given["new_text"]:
            self.add_error("new_text", _("Say in a few words what it is about."))
        if not given["new_minutes"]:
            self.add_error("new_minutes", _("Say for how many minutes."))
        if self.errors:
            return None
        if what == "talk":
            return Talk(given["new_text"], given["new_minutes"]), []
        dish = DishId(given["new_dish"]) if given["new_dish"] else None
        return Taste(given["new_text"], given["new_minutes"], dish), []

    def _dish(self, chosen: str) -> tuple[DishId, list[Dish]]:
        """A dish of the menu, or one that is made only for the demo."""
        if not chosen.startswith(NEW):
            return DishId(chosen), []
        made = new_dish(self.event, chosen.removeprefix(NEW), None)
        return made.id, [made]

    def _dishes(self) -> list[tuple[str, str]]:
        return [(dish.id, dish_name(self.event, dish)) for dish in self.event.dishes]

    def _steps(self, *, whole: bool) -> list[Any]:
        """Every step of every dish, and of every recipe for a dish made only for this, in groups."""
        groups = []
        sources = [(dish.id, dish_name(self.event, dish), dish.recipe) for dish in self.event.dishes]
        only = gettext("%(recipe)s, made only for this demo")
        sources += [(NEW + each.id, only % {"recipe": each.name}, each.id) for each in self.event.recipes]  # type: ignore[misc]
        for key, name, recipe in sources:
            steps = [(f"{key}|{step.id}", f"{name}: {step.name}") for step in self.event.recipe(recipe).steps]
            all_done = [(f"{key}|", gettext("%(dish)s: wholly done") % {"dish": name})] if whole else []
            groups.append((name, [*all_done, *steps]))
        return groups

    def _steps_of(self, dish: DishId) -> list[tuple[str, str]]:
        return [(step.id, step.name) for step in self.event.recipe(self.event.dish(dish).recipe).steps]

    def _step_name(self, dish: DishId, step: StepId) -> str:
        return dict(self._steps_of(dish)).get(step, step)


def _kind(item: Shown) -> str:
    return {LiveStep: "live", Talk: "talk", Taste: "taste"}[type(item)]
