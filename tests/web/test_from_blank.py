"""From an empty account to a plan that passed its check, by the forms alone."""

from django.test import Client
from django.urls import reverse

from cookout.core.planning.recordjson import from_json
from cookout.core.planning.result import Limits
from cookout.services import plan, starters
from cookout.store.mapping import event_of
from cookout.store.models import Event
from tests.store.cast import Cast
from tests.web.filling import form_of

NEW = reverse("event-new")


def test_a_supper_is_made_and_planned_without_a_file(stranger: Client, cast: Cast) -> None:
    user_id = cast.stranger.pk
    recipes = [
        starters.take_starter(owner_id=user_id, name=each, units="us") for each in ("two-bean-chili", "camp-cornbread")
    ]
    blank = form_of(stranger.get(NEW), "blank")
    typed = {"name": "First supper", "day": "2027-08-01", "place": "By the ford", "timezone": "America/Denver"}
    stranger.post(NEW, blank.filled("blank", **typed, at="18:00", people="8"))
    event = Event.objects.get(owner=cast.stranger)

    def page(name: str) -> str:
        return reverse(name, args=[event.public_id])

    for recipe in recipes:
        stranger.post(page("event-menu"), {"do": "dish-in", "serving": "serving", "recipe": f"box:{recipe.public_id}"})
    for what in (
        "oven-12-deep",
        "oven-12",
        "oven-10",
        "chimney",
        "chimney",
        "table",
        "bowl",
        "skillet",
        "rack",
        "trivet",
    ):
        stranger.post(page("event-gear"), {"do": "usual", "what": what})
    for name in ("Asta Vik", "Bo Rask"):
        form = form_of(stranger.get(page("event-crew")), "helper", "")
        skills = sorted(
            {skill for recipe in event_of(_fresh(event)).recipes for step in recipe.steps for skill in step.skills}
        )
        stranger.post(page("event-crew"), form.filled("helper", name=name, skills=[*skills, "fire"]))
    made = event_of(_fresh(event))
    assert [len(part) for part in (made.servings, made.dishes, made.crew)] == [1, 2, 2]
    run = plan.run_planning(run_id=plan.queue_planning(event_id=event.pk, limits=Limits(10, 2, 1), announce=False).pk)
    assert run is not None
    assert run.revision is not None, run.record
    record = from_json(run.revision.payload)
    assert len(record.servings) == len(made.dishes)
    assert {task.dish for task in record.tasks if task.dish} == {dish.id for dish in made.dishes}
    assert stranger.get(page("event")).status_code == 200


def _fresh(event: Event) -> Event:
    event.refresh_from_db()
    return event
