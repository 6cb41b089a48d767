"""The timeline, the table beside it and the page of a task, as the server gives them."""

import re
from urllib.parse import unquote

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import translation

from cookout.core.planning.record import PlanRecord
from cookout.drawing.words import Words
from cookout.services import plan
from cookout.store.models import Event, PlanRun, User
from cookout.store.selectors.revisions import record_of
from cookout.web.reading.drawn import drawn_words
from tests.samples import sample_record
from tests.store.cast import Cast

TASKS = re.compile(r'href="[^"]*/tasks/([^"/]+)/"')


def page_of(client: Client, cast: Cast, name: str, query: str = "", **parts: str) -> str:
    """The text of a page of the cast's event."""
    answer = client.get(reverse(name, kwargs={"event": cast.event.public_id, **parts}) + query)
    assert answer.status_code == 200
    return answer.content.decode()


def linked_tasks(page: str) -> set[str]:
    """The ids of the tasks that a page leads to."""
    return {unquote(found) for found in TASKS.findall(page)}


def test_the_day_is_drawn_for_wide_and_narrow_screens_with_links_to_tasks(owner: Client, cast: Cast) -> None:
    page = page_of(owner, cast, "timeline")
    assert page.count("<svg") == 2
    assert 'class="drawing drawing-wide"' in page
    assert 'class="drawing drawing-tall"' in page
    assert linked_tasks(page) <= {task.id for task in sample_record().tasks}
    assert "crumble.slice" in linked_tasks(page)


@pytest.mark.parametrize("by", ["dish", "helper", "gear"])
@pytest.mark.parametrize("zoom", ["hour", "minute"])
@pytest.mark.parametrize("layout", ["wide", "narrow"])
def test_a_closer_look_is_drawn_once_for_the_layout_that_was_asked_for(
    owner: Client, cast: Cast, by: str, zoom: str, layout: str
) -> None:
    page = page_of(owner, cast, "timeline", f"?by={by}&zoom={zoom}&layout={layout}&at=2027-06-19T17:00")
    assert page.count("<svg") == 1
    assert f"drawing-one-{layout}" in page
    assert f'aria-label="Timeline of Supper by the old boathouse, by {by}"' in page


def test_earlier_and_later_lead_through_the_day_and_end_with_it(owner: Client, cast: Cast) -> None:
    page, seen = page_of(owner, cast, "timeline", "?by=dish&zoom=minute&layout=narrow"), 0
    assert 'id="narrow-earlier"' not in page
    while found := re.search(r'id="narrow-later" href="([^"#]+)', page):
        page, seen = page_of(owner, cast, "timeline", found[1].replace("&amp;", "&")), seen + 1
        assert 'id="narrow-earlier"' in page
        assert seen < 30
    assert seen > 4


@pytest.mark.parametrize(
    "query",
    ["?by=moon", "?zoom=far", "?at=yesterday&zoom=hour", "?layout=round&zoom=hour", "?at=2999-01-01T00:00&zoom=minute"],
)
def test_a_look_that_makes_no_sense_is_the_nearest_that_does(owner: Client, cast: Cast, query: str) -> None:
    assert "<svg" in page_of(owner, cast, "timeline", query)


def test_one_row_can_be_looked_at_alone(owner: Client, cast: Cast) -> None:
    page = page_of(owner, cast, "timeline", "?by=dish&only=crumble")
    assert "<b>Apple crumble à la Brandão</b>" in page
    assert "Smoky bean pot" not in page.split('id="timeline"')[1]
    assert "All rows" in page


def test_a_row_that_is_not_there_shows_that_there_is_nothing(owner: Client, cast: Cast) -> None:
    assert "Nothing to do" in page_of(owner, cast, "timeline", "?by=dish&only=<script>")


def test_times_are_said_in_the_readers_hours(owner: Client, cast: Cast) -> None:
    User.objects.filter(pk=cast.owner.pk).update(hours="12")
    page = page_of(owner, cast, "timeline", "?zoom=hour&layout=wide")
    drawing = page.split("<svg")[1]
    assert "6:30 pm" in drawing
    assert not re.search(r"\b1[3-9]:\d\d", drawing)


def test_the_overview_page_leads_to_the_timeline(owner: Client, cast: Cast) -> None:
    page = page_of(owner, cast, "event")
    assert reverse("timeline", args=[cast.event.public_id]) in page
    assert "crumble.slice" in linked_tasks(page)


def test_an_earlier_revision_leads_to_its_own_lines_and_not_to_the_pages_of_other_tasks(
    owner: Client, cast: Cast
) -> None:  # fmt: skip
    page = page_of(owner, cast, "revision", number="1")
    assert linked_tasks(page) == set()
    assert 'href="#task-crumble.slice"' in page


def test_the_table_has_every_task_once(owner: Client, cast: Cast) -> None:
    page = page_of(owner, cast, "tasks")
    assert linked_tasks(page) == {task.id for task in sample_record().tasks}
    assert "24 tasks" in page


def test_the_table_can_be_narrowed_to_a_dish_and_a_helper(owner: Client, cast: Cast) -> None:
    tasks = sample_record().tasks
    assert linked_tasks(page_of(owner, cast, "tasks", "?dish=crumble")) == {
        task.id for task in tasks if task.dish == "crumble"
    }
    both = page_of(owner, cast, "tasks", "?dish=crumble&helper=runa")
    assert linked_tasks(both) == {task.id for task in tasks if task.dish == "crumble" and "runa" in task.helpers}
    common = page_of(owner, cast, "tasks", "?dish=*")
    assert linked_tasks(common) == {task.id for task in tasks if not task.dish}
    assert "No task is both" in page_of(owner, cast, "tasks", "?dish=crumble&helper=nobody-of-that-name")


def test_a_task_says_who_when_why_and_what_is_tied_to_it(owner: Client, cast: Cast) -> None:
    record = sample_record()
    page = page_of(owner, cast, "task", task="beans.bake")
    task = next(task for task in record.tasks if task.id == "beans.bake")
    assert task.name in page
    assert task.units[0] in page
    for held in task.held_by:
        assert held.brief.split(" at ")[0].replace("“", "").split("”")[0][:20] in page
    ties = {link.before for link in record.links if link.after == task.id}
    ties |= {link.after for link in record.links if link.before == task.id}
    assert ties
    assert ties <= linked_tasks(page)


def test_a_task_with_hostile_words_is_shown_as_words(owner: Client, cast: Cast) -> None:
    page = page_of(owner, cast, "task", task="crumble.rub")
    assert "&lt;nuts&gt;" in page
    assert "<nuts>" not in page


def test_a_task_that_is_not_in_the_plan_is_not_found(owner: Client, cast: Cast) -> None:
    assert owner.get(reverse("task", args=[cast.event.public_id, "no.such.task"])).status_code == 404


def test_the_pages_own_script_gets_the_task_alone(owner: Client, cast: Cast) -> None:
    place = reverse("task", args=[cast.event.public_id, "crumble.slice"])
    part = owner.get(place, headers={"HX-Request": "true"})
    assert "<html" not in part.content.decode()
    assert 'id="task-title"' in part.content.decode()
    assert "HX-Request" in part.headers["Vary"]


def test_whoever_may_only_look_sees_the_task_and_no_form(viewer: Client, cast: Cast) -> None:
    page = page_of(viewer, cast, "task", task="crumble.slice")
    assert "Why it stands there" in page
    assert "Pin it by hand" not in page


def test_amounts_are_those_of_one_batch_of_the_dish_in_the_readers_units(db: None) -> None:
    from tests.store.cast import OWNER, a_user, an_event

    owner = a_user(OWNER)
    event = an_event(owner)
    _planned(event)
    User.objects.filter(pk=owner.pk).update(units="metric")
    client = Client()
    client.force_login(owner)
    record = record_of(Event.objects.select_related("current").get(pk=event.pk).current)  # type: ignore[arg-type]
    mixing = next(task for task in record.tasks if task.kind in {"mix", "prepare"} and task.dish)
    page = client.get(reverse("task", args=[event.public_id, mixing.id])).content.decode()
    assert "Amounts for one batch" in page
    assert re.search(r"<b>\d+ (g|mL)</b>", page)


def _planned(event: Event) -> PlanRecord:
    from cookout.core.planning.result import Limits

    run: PlanRun = plan.queue_planning(event_id=event.pk, limits=Limits(seconds=5, workers=2), announce=False)
    plan.run_planning(run_id=run.pk)
    event.refresh_from_db()
    assert event.current is not None
    return record_of(event.current)


def test_every_word_of_a_drawing_is_handed_to_translation(monkeypatch: pytest.MonkeyPatch) -> None:
    with translation.override("en"):
        assert drawn_words() == Words()
    monkeypatch.setattr("cookout.web.reading.drawn._", lambda text: f"¤{text}")
    marked = drawn_words()
    for name in Words.__dataclass_fields__:
        value = getattr(marked, name)
        assert all(each.startswith("¤") for each in (value if isinstance(value, tuple) else [value])), name
