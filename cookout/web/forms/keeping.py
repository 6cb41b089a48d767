"""The address book, and names of what is kept."""

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from cookout.core.kitchen.recipe import FIRE_SKILL
from cookout.services.keeping import PersonFields
from cookout.store.selectors.keeping import Person
from cookout.web.forms.crew import HOT_MINUTES, SkillsForm


class PersonForm(SkillsForm):
    """Somebody in the address book."""

    note = forms.CharField(
        label=_("Note"), max_length=300, required=False, widget=forms.TextInput(attrs={"autocomplete": "off"})
    )

    def __init__(self, person: Person | None, known: list[str], data: Any = None) -> None:
        prefix = "person-new" if person is None else f"person-{person.public_id}"
        super().__init__(data, prefix=prefix, label_suffix="")
        self.person = person
        self.offer([str(FIRE_SKILL), *known], frozenset(person.skills if person else ()))
        self.initial = {"adult": True, "hot_stretch_minutes": HOT_MINUTES}
        if person is not None:
            names = ("name", "contact", "skills", "adult", "fire_allowed", "hot_stretch_minutes", "note")
            self.initial = {name: getattr(person, name) for name in names}

    def person_fields(self) -> PersonFields:
        """What was typed."""
        given = self.cleaned_data
        return PersonFields(
            name=given["name"],
            contact=given["contact"],
            skills=self.all_skills,
            adult=given["adult"],
            fire_allowed=given["fire_allowed"],
            hot_stretch_minutes=given["hot_stretch_minutes"] or HOT_MINUTES,
            note=given["note"],
        )


class NameForm(forms.Form):
    """Another name for a kit or a template."""

    thing = forms.UUIDField()
    name = forms.CharField(max_length=120)
