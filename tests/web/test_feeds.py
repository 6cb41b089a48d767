"""Calendars behind links: what a subscriber gets, and what asking again costs."""

from dataclasses import replace

import pytest
from django.test import Client
from django.urls import reverse
from icalendar import Calendar
from pytest_django import DjangoAssertNumQueries

from cookout.services import links
from cookout.store.models import Event
from tests.samples import sample_record
from tests.store.cast import Cast, plan_it


@pytest.fixture
def address(cast: Cast) -> str:
    return reverse("feed", args=[cast.helper_token])


def test_a_helper_gets_her_own_tasks(nobody: Client, address: str) -> None:
    answer = nobody.get(address)
    assert answer.headers["Content-Type"] == "text/calendar; charset=utf-8"
    own = [task for task in sample_record().tasks if "runa" in task.helpers]
    assert len(Calendar.from_ical(answer.content).walk("VEVENT")) == len(own)
    assert f"http://testserver{address}" in answer.content.decode().replace("\r\n ", "")


def test_the_event_calendar_has_every_task(nobody: Client, cast: Cast) -> None:
    answer = nobody.get(reverse("feed", args=[cast.event_token]))
    assert len(Calendar.from_ical(answer.content).walk("VEVENT")) == len(sample_record().tasks)


def test_tasks_come_as_to_dos_on_request(nobody: Client, address: str) -> None:
    plain, todos = nobody.get(address), nobody.get(address, {"as": "todos"})
    assert Calendar.from_ical(todos.content).walk("VTODO")
    assert plain.headers["ETag"] != todos.headers["ETag"]


def test_asking_again_gives_the_same_bytes(nobody: Client, address: str) -> None:
    assert nobody.get(address).content == nobody.get(address).content


def test_an_unchanged_calendar_costs_one_look_up_and_no_bytes(
    nobody: Client, address: str, django_assert_num_queries: DjangoAssertNumQueries
) -> None:
    first = nobody.get(address)
    for name, value in (
        ("If-None-Match", first.headers["ETag"]),
        ("If-Modified-Since", first.headers["Last-Modified"]),
    ):
        with django_assert_num_queries(1):
            again = nobody.get(address, headers={name: value})
        assert (again.status_code, again.content) == (304, b"")
        assert again.headers["ETag"] == first.headers["ETag"]


def test_a_new_plan_changes_the_etag(nobody: Client, address: str, cast: Cast) -> None:
    first = nobody.get(address)
    plan_it(cast.event, replace(sample_record(), place="Upper meadow"))
    again = nobody.get(address, headers={"If-None-Match": first.headers["ETag"]})
    assert again.status_code == 200
    assert b"Upper meadow" in again.content


def test_only_the_head_can_be_asked_for(nobody: Client, address: str) -> None:
    answer = nobody.head(address)
    assert (answer.status_code, answer.content) == (200, b"")
    assert answer.headers["ETag"] == nobody.get(address).headers["ETag"]


def test_calendars_are_not_for_search_engines_or_shared_caches(nobody: Client, address: str) -> None:
    headers = nobody.get(address).headers
    assert headers["X-Robots-Tag"] == "noindex, nofollow"
    assert headers["Referrer-Policy"] == "no-referrer"
    assert headers["Cache-Control"] == "private, no-cache"


def test_a_helper_who_left_the_plan_gets_her_tasks_as_cancelled_then_nothing(nobody: Client, cast: Cast) -> None:
    record = sample_record()
    tasks = tuple(replace(task, helpers=tuple(h for h in task.helpers if h != "ilse")) for task in record.tasks)
    without = replace(record, tasks=tasks, helpers=tuple(h for h in record.helpers if h.id != "ilse"))
    token = links.make_helper_link(event_id=cast.event.pk, helper_id="ilse").token
    plan_it(cast.event, without)
    events = Calendar.from_ical(nobody.get(reverse("feed", args=[token])).content).walk("VEVENT")
    assert {str(event["STATUS"]) for event in events} == {"CANCELLED"}
    unknown = links.make_helper_link(event_id=cast.event.pk, helper_id="never-there").token
    assert nobody.get(reverse("feed", args=[unknown])).status_code == 404


def test_an_event_without_a_plan_has_no_calendar(nobody: Client, cast: Cast, address: str) -> None:
    Event.objects.update(current=None)
    assert nobody.get(address).status_code == 404
