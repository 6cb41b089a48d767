"""The crew as its page shows it."""

from dataclasses import dataclass
from datetime import datetime

from django.forms import Form

from cookout.core.planning.event import Event, Helper
from cookout.core.planning.wording import moment
from cookout.services.crew import wanted_skills
from cookout.web.forms.crew import HelperForm


@dataclass(frozen=True, slots=True)
class HelperRow:
    """A helper with their hours as moments."""

    helper: Helper
    hours: list[tuple[datetime, datetime]]
    skills: list[str]
    form: HelperForm


def crew_page(event: Event, sent: Form | None = None) -> dict[str, object]:
    """The names of the template; a form that was sent stands in its place, as it was typed."""
    had = {str(skill) for helper in event.crew for skill in helper.skills}
    return {
        "helpers": [_row(event, helper, sent) for helper in event.crew],
        "new_helper": _form(event, "", sent),
        "missing": [skill for skill in wanted_skills(event) if skill not in had] if event.recipes else [],
    }


def _row(event: Event, helper: Helper, sent: Form | None) -> HelperRow:
    hours = [(moment(event, window.start), moment(event, window.end)) for window in helper.windows]
    return HelperRow(helper, hours, sorted(helper.skills), _form(event, helper.id, sent))


def _form(event: Event, name: str, sent: Form | None) -> HelperForm:
    """The form that was sent for this helper; one for somebody taken out meanwhile stands where new ones are made."""
    if isinstance(sent, HelperForm) and (sent.thing == name or (not name and sent.is_new)):
        return sent
    return HelperForm(event, ("crew", name))
