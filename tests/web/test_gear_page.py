"""The gear's page: counters, details, fuel, kits."""

import pytest
from django.test import Client
from django.urls import reverse

from cookout.core.eventfile.kitfile import read_kit
from cookout.core.planning.event import Gear, GearKind
from cookout.services.making import Blank, make_blank
from cookout.store.mapping import event_of
from cookout.store.models import Edit, Event, Kit
from tests.store.cast import Cast, example_text
from tests.web.filling import form_of
from tests.web.form_pages import FormPage, core

PAGE = FormPage("event-gear")
place, opened = PAGE.place, PAGE.opened


def gear(cast: Cast, gear_id: str) -> Gear:
    return next(each for each in core(cast).gear if each.id == gear_id)


def test_a_usual_piece_is_added_by_one_click_and_counted_up_by_the_next(owner: Client, cast: Cast) -> None:
    assert "oven-14" not in [each.id for each in core(cast).gear]
    for _click in range(3):
        owner.post(place(cast), {"do": "usual", "what": "oven-14"})
    added = gear(cast, "oven-14")
    assert (added.count, added.inches, added.kind) == (3, 14, GearKind.OVEN)
    owner.post(place(cast), {"do": "fewer", "thing": "oven-14"})
    assert gear(cast, "oven-14").count == 2


def test_one_fewer_than_one_takes_it_out_with_a_way_back(owner: Client, cast: Cast) -> None:
    owner.post(place(cast), {"do": "usual", "what": "skillet"})
    owner.post(place(cast), {"do": "fewer", "thing": "skillet"})
    assert "skillet" not in [each.id for each in core(cast).gear]
    edit = Edit.objects.first()
    assert edit is not None
    owner.post(reverse("event-undo", args=[cast.event.public_id, edit.pk]))
    assert gear(cast, "skillet").count == 1


@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize("example", ["supper", "demonstration", "festival"])
def test_every_form_saved_as_it_stands_changes_nothing_whatever_the_units(
    owner: Client, cast: Cast, example: str, units: str
) -> None:
    Event.objects.filter(pk=cast.event.pk).update(document=example_text(example))
    cast.owner.units = units
    cast.owner.save()
    before = core(cast)
    page = opened(owner, cast)
    for each in before.gear:
        assert owner.post(place(cast), form_of(page, "gear", each.id).filled("gear")).status_code == 302
    assert owner.post(place(cast), form_of(page, "fuel").filled("fuel")).status_code == 302
    assert core(cast) == before
    assert not Edit.objects.exists()


def test_sizes_are_typed_in_either_unit_and_a_wrong_one_is_told_by_the_field(owner: Client, cast: Cast) -> None:
    owner.post(place(cast), {"do": "usual", "what": "oven-14"})
    form = form_of(opened(owner, cast), "gear", "oven-14")
    owner.post(place(cast), form.filled("gear", inches="30 cm", iron_kg="20 lb"))
    assert gear(cast, "oven-14").inches == 12
    assert gear(cast, "oven-14").iron_kg == pytest.approx(9.0718, abs=1e-3)  # NIST SP 811: 1 lb is 0.45359237 kg
    form = form_of(opened(owner, cast), "gear", "oven-14")
    wrong = owner.post(place(cast), form.filled("gear", inches="twelve", name="The big one"))
    assert wrong.status_code == 422
    page = wrong.content.decode()
    assert "is not a length; write a number and its unit" in page
    assert "twelve" in page
    assert "The big one" in page
    assert gear(cast, "oven-14").inches == 12


def test_gear_of_ones_own_is_counted_and_gets_an_id(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "other")
    owner.post(place(cast), form.filled("other", name="Windscreen", count="4"))
    added = gear(cast, "windscreen")
    assert (added.kind, added.count) == (GearKind.OTHER, 4)


def test_a_kit_is_saved_once_and_used_in_another_event(owner: Client, cast: Cast) -> None:
    owner.post(place(cast), {"do": "keep", "name": "Trailer"})
    kit = Kit.objects.get(owner=cast.owner)
    there = core(cast)
    assert read_kit(kit.document, "kit.toml") == (there.gear, there.fuel)
    day = there.origin.date()
    other = make_blank(owner_id=cast.owner.pk, blank=Blank("Breakfast", day, "Larkmead", "America/Denver", "us"))
    owner.post(reverse("event-gear", args=[other.public_id]), {"do": "kit", "kit": str(kit.public_id)})
    other.refresh_from_db()
    assert (event_of(other).gear, event_of(other).fuel) == (there.gear, there.fuel)


def test_a_kit_of_somebody_else_cannot_be_used(owner: Client, planner: Client, cast: Cast) -> None:
    owner.post(place(cast), {"do": "keep", "name": "Trailer"})
    before = core(cast)
    answer = planner.post(place(cast), {"do": "kit", "kit": str(Kit.objects.get().public_id)}, follow=True)
    assert "There is no such kit." in answer.content.decode()
    assert core(cast) == before


def test_whoever_may_only_look_changes_nothing(viewer: Client, cast: Cast) -> None:
    before = core(cast)
    for do in ("usual", "more", "fewer", "gear", "fuel", "kit", "keep", "other", "gear-out"):
        sent = {"do": do, "what": "oven-14", "thing": before.gear[0].id}
        assert viewer.post(place(cast), sent).status_code == 403
    assert core(cast) == before


def test_what_the_menu_wants_and_is_not_there_is_said_with_a_button_that_adds_it(owner: Client, cast: Cast) -> None:
    for each in [gear for gear in core(cast).gear if gear.kind is GearKind.CHIMNEY]:
        owner.post(place(cast), {"do": "gear-out", "thing": each.id})
    assert "There is no chimney" in opened(owner, cast).content.decode()
    owner.post(place(cast), {"do": "usual", "what": "chimney"})
    assert "There is no chimney" not in opened(owner, cast).content.decode()
