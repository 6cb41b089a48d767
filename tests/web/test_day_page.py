"""The day's page: one form a part, quantities in the reader's units, times that move with the date."""

import pytest
from django.test import Client
from django.urls import reverse

from cookout.core.planning.wording import moment
from cookout.core.safety.site import Enclosure
from cookout.store.models import Edit, Event
from tests.store.cast import Cast, example_text
from tests.web.filling import form_of
from tests.web.form_pages import FormPage, core

FORMS = ("heading", "place", "weather", "fire", "food")


PAGE = FormPage("event-day")
place, opened = PAGE.place, PAGE.opened


@pytest.mark.parametrize("units", ["event", "us", "metric"])
@pytest.mark.parametrize("example", ["supper", "demonstration", "festival"])
def test_every_form_saved_as_it_stands_changes_nothing_whatever_the_units(
    owner: Client, cast: Cast, example: str, units: str
) -> None:
    Event.objects.filter(pk=cast.event.pk).update(document=example_text(example))
    cast.owner.units = units
    cast.owner.save()
    before = core(cast)
    page = opened(owner, cast)
    for do in FORMS:
        assert owner.post(place(cast), form_of(page, do).filled(do)).status_code == 302
    assert core(cast) == before
    assert not Edit.objects.exists()


def test_a_new_date_moves_every_time_along_and_undo_moves_them_back(owner: Client, cast: Cast) -> None:
    before = core(cast)
    form = form_of(opened(owner, cast), "heading")
    owner.post(place(cast), form.filled("heading", day="2027-07-04"))
    after = core(cast)
    assert [f"{moment(after, each.at):%Y-%m-%d %H:%M}" for each in after.servings] == ["2027-07-04 18:00"]
    assert after.crew == before.crew
    owner.post(reverse("event-undo", args=[cast.event.public_id, Edit.objects.get().pk]))
    assert core(cast) == before


def test_quantities_are_read_in_either_unit(owner: Client, cast: Cast) -> None:
    page = opened(owner, cast)
    owner.post(
        place(cast), form_of(page, "weather").filled("weather", air="22 C", wind="10 mph", gust="", humidity="40")
    )
    weather = core(cast).weather
    assert weather.air_c == 22.0
    assert weather.wind_mps == pytest.approx(4.4704)  # NIST SP 811: 1 mi is 1609.344 m
    assert weather.gust_mps == weather.wind_mps
    assert weather.humidity == 0.4


def test_a_change_of_the_weather_is_added_and_taken_out(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "weather")
    number = len(core(cast).hours) + 1
    row = {f"from_{number}_0": "2027-06-12", f"from_{number}_1": "17:00", f"wind_{number}": "5 m/s"}
    owner.post(place(cast), form.filled("weather", **row))
    added = core(cast).hours[-1]
    assert (added.start, added.weather.wind_mps, added.weather.air_c) == (17 * 60, 5.0, core(cast).weather.air_c)
    form = form_of(opened(owner, cast), "weather")
    names = ("from_{}_0", "from_{}_1", "air_{}", "wind_{}", "gust_{}", "humidity_{}")
    owner.post(place(cast), form.filled("weather", **{name.format(number): "" for name in names}))
    assert len(core(cast).hours) == number - 1


def test_what_is_wrong_is_said_by_the_field_and_stays_as_typed(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "weather")
    answer = owner.post(place(cast), form.filled("weather", air="seventy", wind="900 mph"))
    page = answer.content.decode()
    assert answer.status_code == 422
    assert "is not a temperature; write a number and its unit" in page
    assert "No wind is above 268 mph" in page
    assert 'value="seventy"' in page
    assert 'value="900 mph"' in page


def test_the_place_says_what_was_found_there(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "place")
    found = {"clear_m": "15 ft", "dry_grass": "no", "enclosure": "open", "water": "yes", "shovel": "yes"}
    owner.post(place(cast), form.filled("place", name="The lower meadow", **found))
    there = core(cast).place
    assert (there.name, there.dry_grass, there.water, there.shovel) == ("The lower meadow", False, True, True)
    assert there.enclosure is Enclosure.OPEN
    assert there.clear_m == pytest.approx(4.572)  # NIST SP 811: 1 ft is 0.3048 m


def test_a_local_number_that_would_allow_more_is_refused(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "food")
    answer = owner.post(place(cast), form.filled("food", local="County code", hot_c="100 F"))
    assert answer.status_code == 422
    assert "would allow more than the published" in answer.content.decode()
    stricter = owner.post(place(cast), form.filled("food", local="County code", hot_c="150 F"))
    assert stricter.status_code == 302
    assert core(cast).food_rules.numbers.hot_c == pytest.approx(65.556, abs=1e-3)


def test_a_zone_that_there_is_not_is_told(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "heading")
    answer = owner.post(place(cast), form.filled("heading", timezone="America/Nowhere"))
    assert answer.status_code == 422
    assert "There is no such time zone." in answer.content.decode()


def test_another_zone_keeps_the_times_by_the_clock(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "heading")
    owner.post(place(cast), form.filled("heading", timezone="Europe/Oslo"))
    after = core(cast)
    assert [f"{moment(after, each.at):%Y-%m-%d %H:%M}" for each in after.servings] == ["2027-06-12 18:00"]


def test_whoever_saves_second_is_told_what_is_stored_now(owner: Client, planner: Client, cast: Cast) -> None:
    hers, his = opened(owner, cast), opened(planner, cast)
    owner.post(place(cast), form_of(hers, "place").filled("place", name="Upper meadow"))
    clashed = planner.post(place(cast), form_of(his, "place").filled("place", name="Lower meadow"))
    assert clashed.status_code == 422
    assert "Upper meadow" in clashed.content.decode()
    assert "Lower meadow" in clashed.content.decode()
    assert core(cast).place.name == "Upper meadow"


@pytest.mark.parametrize("do", FORMS)
def test_whoever_may_only_look_changes_nothing(viewer: Client, cast: Cast, do: str) -> None:
    assert viewer.post(place(cast), {"do": do}).status_code == 403


def test_a_town_is_enough_where_it_names_one_zone(owner: Client, cast: Cast) -> None:
    for typed, zone in (("los angeles", "America/Los_Angeles"), ("OSLO", "Europe/Oslo")):
        form = form_of(opened(owner, cast), "heading")
        owner.post(place(cast), form.filled("heading", timezone=typed))
        assert core(cast).timezone == zone


@pytest.mark.parametrize(("units", "air"), [("us", pytest.approx(20.0)), ("metric", 68.0)])
def test_a_number_alone_is_read_in_the_units_that_the_page_shows(
    owner: Client, cast: Cast, units: str, air: float
) -> None:
    cast.owner.units = units
    cast.owner.save()
    form = form_of(opened(owner, cast), "weather")
    answer = owner.post(place(cast), form.filled("weather", air="68"))
    if units == "us":
        assert core(cast).weather.air_c == air
    else:
        assert "Air is between" in answer.content.decode()
    assert (
        "A number alone is in F." if units == "us" else "A number alone is in C."
    ) in answer.content.decode() + opened(owner, cast).content.decode()
