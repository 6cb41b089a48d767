"""The gear as its page shows it."""

from dataclasses import dataclass

from django.forms import Form
from django.utils.functional import Promise
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from cookout.core.planning.event import Event, Gear
from cookout.core.planning.gear_wanted import Wanted, missing_gear, say_missing
from cookout.core.quantities import show_inches
from cookout.services.gear import USUAL
from cookout.web import preferences
from cookout.web.forms.gear import KINDS, FuelForm, GearForm, OtherGearForm


@dataclass(frozen=True, slots=True)
class GearRow:
    """A kind of gear with what it is like in words."""

    gear: Gear
    detail: str
    form: GearForm


def gear_page(event: Event, sent: Form | None = None) -> dict[str, object]:
    """The names of the template; a form that was sent stands in its place, as it was typed."""
    units = preferences.current().units or event.units
    groups: list[tuple[str | Promise, list[GearRow]]] = []
    for kind, words in KINDS.items():
        rows = [_row(event, gear, units, sent) for gear in event.gear if gear.kind is kind]
        if rows:
            groups.append((words, rows))
    return {
        "groups": groups,
        "fuel": sent if isinstance(sent, FuelForm) else FuelForm(event, ("fuel", "")),
        "other": sent if isinstance(sent, OtherGearForm) else OtherGearForm(prefix="other", label_suffix=""),
        "wanted": [(say_missing(event, wanted), _usual_key(wanted)) for wanted in missing_gear(event)],
        "usual": [(key, _usual_name(gear, units)) for key, gear in USUAL.items()],
    }


def _row(event: Event, gear: Gear, units: str, sent: Form | None) -> GearRow:
    fresh = GearForm(event, ("gear", gear.id))
    form = sent if isinstance(sent, GearForm) and sent.prefix == fresh.prefix else fresh
    return GearRow(gear, " · ".join(_details(gear, units)), form)


def _details(gear: Gear, units: str) -> list[str]:
    found = []
    if gear.inches is not None:
        found.append(_("%(size)s across") % {"size": show_inches(gear.inches, units)})
    if gear.deep:
        found.append(_("deep"))
    if gear.coals is not None:
        found.append(ngettext("lights %(n)d coal", "lights %(n)d coals", gear.coals) % {"n": gear.coals})
    if gear.spots is not None:
        found.append(ngettext("%(n)d spot", "%(n)d spots", gear.spots) % {"n": gear.spots})
    if gear.spot_inches is not None:
        found.append(_("ovens up to %(size)s") % {"size": show_inches(gear.spot_inches, units)})
    return [*found, gear.material] if gear.material else found


def _usual_key(wanted: Wanted) -> str:
    """The button that adds what is wanted; empty where it is gear of somebody's own."""
    key = f"oven-{wanted.inches}" if wanted.inches else wanted.kind
    return key if key in USUAL else ""


def _usual_name(gear: Gear, units: str) -> str:
    """Ovens by their size in the reader's units, all else by its name."""
    if gear.inches is None:
        return _(gear.name)
    words = _("%(size)s oven, deep") if gear.deep else _("%(size)s oven")
    return words % {"size": show_inches(gear.inches, units)}
