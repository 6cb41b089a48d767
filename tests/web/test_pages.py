"""What the pages say, and how many look-ups they cost."""

import json
from dataclasses import replace
from datetime import datetime

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone
from pytest_django import DjangoAssertNumQueries, Settings

from cookout.core.planning.record import PlannedLevel
from cookout.core.planning.recordjson import from_json, to_json
from cookout.core.planning.result import Status
from cookout.services import accounts
from cookout.store.models import Event, PlanRun
from tests.samples import at, sample_record, sample_record_without_plan
from tests.store.cast import HELPER, OWNER, Cast, plan_it


def text_of(client: Client, name: str, *arguments: object, **query: str) -> str:
    return client.get(reverse(name, args=arguments), query).content.decode()


@pytest.fixture
def page(cast: Cast) -> str:
    return reverse("event", args=[cast.event.public_id])


def a_run(event: Event, **fields: object) -> PlanRun:
    usual = {"document": event.document, "limit_seconds": 20, "limit_workers": 1, "limit_seed": 1}
    return PlanRun.objects.create(event=event, queued_at=timezone.now(), **{**usual, **fields})


def test_the_start_page_lists_next_serving_and_standing(owner: Client) -> None:
    page = text_of(owner, "start")
    assert "18:00" in page
    assert "Sat 12 June 2027" in page
    assert "proved best · revision 1" in page


def test_the_start_page_tells_of_the_worked_examples(owner: Client) -> None:
    assert "The worked examples are yours" not in text_of(owner, "start")
    Event.objects.update(is_example=True)
    assert "The worked examples are yours" in text_of(owner, "start")


def test_the_start_page_tells_what_is_being_planned(owner: Client, cast: Cast) -> None:
    a_run(cast.event)
    assert "being planned" in text_of(owner, "start")


@pytest.mark.parametrize(
    ("name", "most"),
    [("start", 5), ("event", 4), ("run-sheet", 3), ("fire", 3), ("helpers", 4), ("helper", 4), ("revisions", 4)],
)
def test_a_page_costs_few_look_ups(
    owner: Client, cast: Cast, name: str, most: int, django_assert_num_queries: DjangoAssertNumQueries
) -> None:
    known = {"start": [], "helper": [cast.event.public_id, HELPER]}
    address = reverse(name, args=known.get(name, [cast.event.public_id]))
    for _ in range(3):
        plan_it(cast.event)
    with django_assert_num_queries(most):  # session, user, event with its plan, and at most one more
        assert owner.get(address).status_code == 200


def test_a_helpers_page_costs_two_look_ups(
    nobody: Client, cast: Cast, django_assert_num_queries: DjangoAssertNumQueries
) -> None:
    with django_assert_num_queries(2):
        assert nobody.get(reverse("call-sheet", args=[cast.helper_token])).status_code == 200


def test_the_day_at_a_glance_is_drawn_for_wide_and_narrow_screens(owner: Client, page: str) -> None:
    answer = owner.get(page).content.decode()
    assert answer.count("<svg") == 2
    assert "The day at a glance" in answer


def test_names_are_letters_and_never_markup(owner: Client, page: str) -> None:
    answer = owner.get(page).content.decode()
    assert "<nuts>" not in answer
    assert "&lt;nuts&gt;" in answer


def test_a_proved_plan_says_so_for_each_aim(owner: Client, page: str) -> None:
    answer = owner.get(page).content.decode()
    assert "Every serving on time" in answer
    assert answer.count("Proved: no plan has less.") == 4
    assert "on time; up to 10 min late would still do" in answer  # ready 18:30, at most 18:40


def test_an_open_bound_is_explained(owner: Client, page: str, cast: Cast) -> None:
    levels = (PlannedLevel("lateness", 7, 2),)
    late = tuple(replace(serving, late_minutes=7) for serving in sample_record().servings)
    plan_it(cast.event, replace(sample_record(), status=Status.BEST_FOUND, levels=levels, servings=late))
    answer = owner.get(page).content.decode()
    assert "No plan can have less than 2 min, so at most 5 min could still be gained." in answer
    assert "14 min late in all" in answer
    assert "7 min late</strong>" in answer


def test_a_changed_event_file_makes_the_plan_old(owner: Client, page: str, cast: Cast) -> None:
    assert "was changed after this plan" not in owner.get(page).content.decode()
    Event.objects.update(document=cast.event.document + "# new\n")
    assert "was changed after this plan" in owner.get(page).content.decode()


def test_warnings_come_with_their_remedy(owner: Client, page: str) -> None:
    answer = owner.get(page).content.decode()
    assert "Gusts to 11 mph" in answer
    assert "Turn them every 10 minutes" in answer


def test_an_impossible_event_shows_obstacles_and_a_button_for_each_way_out(
    owner: Client, page: str, cast: Cast
) -> None:
    run = a_run(cast.event, state="done", record=to_json(sample_record_without_plan()))
    answer = owner.get(page).content.decode()
    assert "Cannot be done as it stands" in answer
    assert "Nobody with the fire skill is there from 15:50 to 16:30" in answer
    assert reverse("way-out", args=[cast.event.public_id, run.pk, 0]) in answer
    Event.objects.update(document=cast.event.document + "# new\n")
    assert "Cannot be done as it stands" not in owner.get(page).content.decode()


def test_a_run_under_way_shows_progress_and_can_be_stopped_or_cancelled(owner: Client, cast: Cast) -> None:
    progress = {"seconds": 1.5, "stage": "search", "found": 3, "values": [["lateness", 4]]}
    run = a_run(cast.event, state="running", progress=progress)
    address = reverse("run", args=[cast.event.public_id, run.pk])
    panel = owner.get(address, headers={"HX-Request": "true"})
    shown = panel.content.decode()
    assert 'hx-trigger="every 1s"' in shown
    assert "3 better plans so far" in shown
    assert "Late at the table" in shown
    assert "HX-Refresh" not in panel.headers
    assert owner.post(reverse("run-stop", args=[cast.event.public_id, run.pk])).status_code == 302
    run.refresh_from_db()
    assert run.wish == "stop"
    assert owner.post(reverse("run-cancel", args=[cast.event.public_id, run.pk])).status_code == 302
    run.refresh_from_db()
    assert run.wish == "cancel"


def test_a_run_that_is_over_makes_the_page_load_anew(owner: Client, cast: Cast) -> None:
    run = a_run(cast.event, state="failed", trouble="The chimney is too small. Get a larger one.")
    address = reverse("run", args=[cast.event.public_id, run.pk])
    assert owner.get(address, headers={"HX-Request": "true"}).headers["HX-Refresh"] == "true"
    assert "The chimney is too small. Get a larger one." in text_of(owner, "event", cast.event.public_id)


def test_an_event_without_a_plan_offers_to_make_one(owner: Client, page: str) -> None:
    Event.objects.update(current=None)
    answer = owner.get(page).content.decode()
    assert "Plan this event" in answer
    assert "<svg" not in answer


def test_asking_twice_for_a_plan_is_told_not_done(owner: Client, cast: Cast) -> None:
    a_run(cast.event)
    answer = owner.post(reverse("plan-start", args=[cast.event.public_id]), follow=True)
    assert "is being planned already" in answer.content.decode()
    assert PlanRun.objects.count() == 1


def test_the_run_sheet_has_every_task_in_order_with_what_holds_it(owner: Client, cast: Cast) -> None:
    page = text_of(owner, "run-sheet", cast.event.public_id)
    places = [page.index(f'id="task-{task.id}"') for task in sorted(sample_record().tasks, key=lambda t: t.starts_at)]
    starts = [page[place:].split("<time")[1].split(">")[1][:5] for place in places]
    assert starts == sorted(starts)
    assert "can start no later: supper is at 18:30" in page


def test_a_caution_is_written_out_once_and_pointed_to_afterwards(owner: Client, cast: Cast) -> None:
    page = text_of(owner, "run-sheet", cast.event.public_id)
    assert page.count("Leather gloves and a lid lifter; keep children outside the 3-foot ring.") == 1
    assert "as at 16:15" in page


def test_the_fire_page_has_firings_coals_and_cautions(owner: Client, cast: Cast) -> None:
    page = text_of(owner, "fire", cast.event.public_id)
    assert "2 firings, 58 coals." in page
    assert "14 coals on the lid, 7 under" in page
    assert "Top up 12 at 16:55." in page
    assert "carbon monoxide" in page


def test_the_fire_page_has_fuel_pattern_minutes_and_what_to_do_where_something_is_amiss(
    owner: Client, cast: Cast
) -> None:
    page = text_of(owner, "fire", cast.event.public_id)
    assert "Bring <b>81</b> coals (4.5 lb of briquettes)" in page
    assert "70 to 120 min over the coals, usually 90." in page
    assert "Reckoned for 72 °F, wind 7 mph, shade." in page
    assert "On the lid 6 at the rim" in page
    assert "It runs hot. Take 2 coals off the lid." in page


def test_the_run_sheet_has_the_figures_of_food_safety_the_allergens_and_the_place(owner: Client, cast: Cast) -> None:
    page = text_of(owner, "run-sheet", cast.event.public_id)
    assert "Middle at least 165 °F (USDA-FSIS)." in page
    assert "Out between cold and hot at most 25 min (120 min allowed)." in page
    assert "NOT KNOWN: milk, wheat." in page
    assert "Rake the dry grass to bare earth." in page
    assert "Water boils at 208 °F here." in page


def test_a_plan_of_an_earlier_program_knows_no_allergens_and_says_so(owner: Client, cast: Cast) -> None:
    plan_it(cast.event, replace(sample_record(), allergens=(), fuel=None, checklist=(), advice=()))
    assert "Allergens: NOT KNOWN. Ask the cook." in text_of(owner, "run-sheet", cast.event.public_id)


def test_the_crew_page_leads_to_each_call_sheet(owner: Client, cast: Cast) -> None:
    page = text_of(owner, "helpers", cast.event.public_id)
    for helper in sample_record().helpers:
        assert reverse("helper", args=[cast.event.public_id, helper.id]) in page


def test_a_call_sheet_has_the_helpers_own_tasks_alone(nobody: Client, cast: Cast) -> None:
    page = text_of(nobody, "call-sheet", cast.helper_token)
    for task in sample_record().tasks:
        assert (f'id="task-{task.id}"' in page) is (HELPER in task.helpers)
    assert f"/c/{cast.helper_token}.ics" in page
    assert "carbon monoxide" in page


@pytest.mark.parametrize(
    ("moment", "words"),
    [
        ("15:00", ["Next</span>", "Set up table"]),
        ("15:52", ["Now, until 15:55</span>", "Light 25 coals"]),
        ("23:00", ["All done. Thank you."]),
    ],
)
def test_a_call_sheet_begins_with_what_is_on_or_next(
    nobody: Client, cast: Cast, monkeypatch: pytest.MonkeyPatch, moment: str, words: list[str]
) -> None:
    def now() -> datetime:
        return at(moment)

    monkeypatch.setattr("cookout.web.views.share.timezone.now", now)
    head = text_of(nobody, "call-sheet", cast.helper_token).split("Everything in order")[0]
    for each in words:
        assert each in head


def test_pages_behind_links_keep_their_address_to_themselves(nobody: Client, cast: Cast) -> None:
    headers = nobody.get(reverse("call-sheet", args=[cast.helper_token])).headers
    assert headers["Referrer-Policy"] == "no-referrer"
    assert headers["X-Robots-Tag"] == "noindex, nofollow"


def test_a_new_link_is_shown_once_and_opens_the_call_sheet(owner: Client, nobody: Client, cast: Cast) -> None:
    made = owner.post(reverse("helper-link", args=[cast.event.public_id, HELPER]))
    assert made.headers["Cache-Control"] == "no-store"
    address = made.content.decode().split('id="page-address"')[1].split('value="')[1].split('"')[0]
    assert nobody.get(address).status_code == 200
    assert nobody.get(reverse("call-sheet", args=[cast.helper_token])).status_code == 404
    assert address not in text_of(owner, "helper", cast.event.public_id, HELPER)


def test_an_ended_link_opens_nothing(owner: Client, nobody: Client, cast: Cast) -> None:
    owner.post(reverse("helper-link-end", args=[cast.event.public_id, HELPER]))
    owner.post(reverse("calendar-link-end", args=[cast.event.public_id]))
    assert nobody.get(reverse("call-sheet", args=[cast.helper_token])).status_code == 404
    assert nobody.get(reverse("feed", args=[cast.event_token])).status_code == 404


@pytest.mark.parametrize("name", ["run-sheet-pdf", "fire-pdf", "helper-pdf"])
def test_sheets_come_as_pdf_on_the_paper_of_the_events_units(owner: Client, cast: Cast, name: str) -> None:
    arguments = [cast.event.public_id, HELPER] if name == "helper-pdf" else [cast.event.public_id]
    answer = owner.get(reverse(name, args=arguments))
    assert answer.headers["Content-Type"] == "application/pdf"
    assert answer.content.startswith(b"%PDF-")
    assert "supper-" in answer.headers["Content-Disposition"]


def test_the_plan_downloads_as_the_stored_json(owner: Client, cast: Cast) -> None:
    answer = owner.get(reverse("plan-json", args=[cast.event.public_id]))
    assert from_json(json.loads(answer.content)) == sample_record()
    assert answer.headers["Content-Disposition"] == 'attachment; filename="supper-1.json"'


def test_earlier_revisions_stay_readable_as_they_were(owner: Client, cast: Cast) -> None:
    plan_it(cast.event, replace(sample_record(), place="Upper meadow"))
    assert "Upper meadow" in text_of(owner, "revision", cast.event.public_id, 2)
    first = text_of(owner, "revision", cast.event.public_id, 1)
    assert "Boathouse meadow" in first
    assert "An earlier plan." in first
    assert owner.get(reverse("revision", args=[cast.event.public_id, 3])).status_code == 404


def test_a_helper_not_in_the_plan_has_no_page(owner: Client, cast: Cast) -> None:
    assert owner.get(reverse("helper", args=[cast.event.public_id, "never-there"])).status_code == 404


def test_signing_in_takes_the_address_in_any_case_and_goes_where_one_was_bound(client: Client, cast: Cast) -> None:
    cast.owner.set_password("two ovens and a trivet")
    cast.owner.save()
    bound = reverse("fire", args=[cast.event.public_id])
    typed = {"username": OWNER.upper(), "password": "two ovens and a trivet", "next": bound}
    assert client.post(reverse("sign-in"), typed).headers["Location"] == bound


def test_signing_in_never_leads_off_the_site(client: Client, cast: Cast) -> None:
    cast.owner.set_password("two ovens and a trivet")
    cast.owner.save()
    typed = {"username": OWNER, "password": "two ovens and a trivet", "next": "https://elsewhere.example/"}
    assert client.post(reverse("sign-in"), typed).headers["Location"] == "/"


def test_a_wrong_password_is_told_with_a_remedy(client: Client, cast: Cast) -> None:
    answer = client.post(reverse("sign-in"), {"username": OWNER, "password": "no"})
    assert "do not belong together" in answer.content.decode()


def test_the_demos_way_in_signs_in_while_the_demo_is_on(client: Client, cast: Cast, settings: Settings) -> None:
    entry = reverse("demo-enter", args=[accounts.make_demo_entry(user_id=cast.owner.pk)])
    assert client.get(entry).status_code == 404
    settings.COOKOUT_DEMO = True
    assert client.get(entry, follow=True).context["user"] == cast.owner


def test_nothing_on_a_page_needs_inline_script_or_style(owner: Client, cast: Cast, page: str) -> None:
    for address in (page, reverse("fire", args=[cast.event.public_id]), reverse("start")):
        answer = owner.get(address)
        assert "'unsafe" not in answer.headers["Content-Security-Policy"]
        shown = answer.content.decode()
        assert "<style" not in shown
        assert " style=" not in shown
        assert " onclick=" not in shown


def test_what_is_not_there_is_told_plainly(nobody: Client, db: None) -> None:
    answer = nobody.get("/no/such/page/")
    assert answer.status_code == 404
    assert "Nothing here" in answer.content.decode()
