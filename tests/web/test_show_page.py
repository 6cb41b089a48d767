"""The page of demos: slots, running orders, what stands ready."""

import pytest
from django.test import Client
from django.urls import reverse

from cookout.core.planning.event import DemoSlot, LiveStep, ReadyMade, Talk, Taste
from cookout.services.show import minutes_of
from cookout.store.models import Edit, Event
from tests.store.cast import Cast, example_text
from tests.web.filling import Answered, form_of
from tests.web.form_pages import FormPage, core


@pytest.fixture(autouse=True)
def demonstration(cast: Cast) -> None:
    """The cast's event is the demonstration."""
    Event.objects.filter(pk=cast.event.pk).update(document=example_text("demonstration"))


PAGE = FormPage("event-show")
place, opened = PAGE.place, PAGE.opened


def slot(cast: Cast) -> DemoSlot:
    return core(cast).slots[0]


def press(client: Client, cast: Cast, do: str, **typed: str) -> Answered:
    form = form_of(opened(client, cast), "slot-out", "show")
    answer: Answered = client.post(place(cast), form.filled(do, **typed))
    return answer


def test_a_slot_saved_as_it_stands_changes_nothing(owner: Client, cast: Cast) -> None:
    before = core(cast)
    assert press(owner, cast, "slot").status_code == 302
    assert core(cast) == before
    assert not Edit.objects.exists()


def test_the_running_order_is_changed_by_buttons_and_what_is_typed_beside_is_saved_too(
    owner: Client, cast: Cast
) -> None:
    first, second, *rest = slot(cast).live
    press(owner, cast, "down:0", minutes_1="5")
    assert isinstance(second, Talk)
    assert slot(cast).live == (Talk(second.text, 5), first, *rest)
    press(owner, cast, "out:0")
    assert slot(cast).live == (first, *rest)


def test_talks_tastings_and_steps_are_added(owner: Client, cast: Cast) -> None:
    press(owner, cast, "talk", new_text="Where the ash goes", new_minutes="3")
    assert slot(cast).live[-1] == Talk("Where the ash goes", 3)
    press(owner, cast, "taste", new_text="A spoon of chili", new_minutes="4", new_dish="chili")
    assert slot(cast).live[-1] == Taste("A spoon of chili", 4, core(cast).dish("chili").id)  # type: ignore[arg-type]
    press(owner, cast, "live", new_step="slaw|shred")
    assert isinstance(slot(cast).live[-1], LiveStep)


def test_a_dish_made_only_for_the_demo_comes_and_goes_with_it(owner: Client, cast: Cast) -> None:
    before = {dish.id for dish in core(cast).dishes}
    press(owner, cast, "ready", new_ready="new:apple-slaw|")
    made = core(cast).dishes[-1]
    assert made.id not in before
    assert (made.recipe, made.serving) == ("apple-slaw", None)
    ready = slot(cast).ready_made[-1]
    assert ready == ReadyMade(made.id, slot(cast).starts_at)
    press(owner, cast, f"unready:{len(slot(cast).ready_made) - 1}")
    assert {dish.id for dish in core(cast).dishes} == before


def test_what_is_missing_is_said_by_the_field(owner: Client, cast: Cast) -> None:
    answer = press(owner, cast, "talk", new_text="Why iron", new_minutes="")
    page = answer.content.decode()
    assert answer.status_code == 422
    assert "Say for how many minutes." in page
    assert "Why iron" in page


def test_a_tasting_before_its_step_is_told_in_words(owner: Client, cast: Cast) -> None:
    press(owner, cast, "taste", new_text="Already?", new_minutes="2", new_dish="show-cake")
    last = len(slot(cast).live) - 1
    press(owner, cast, f"up:{last}")
    answer = press(owner, cast, f"up:{last - 1}")
    assert answer.status_code == 422
    assert "is tasted before it is done" in answer.content.decode()


def test_minutes_of_a_live_step_count_each_time_that_it_is_done(cast: Cast) -> None:
    """By hand: raw-batch is for 12 of a recipe that serves 12, one batch; mixing it is 12 minutes."""
    event = core(cast)
    assert minutes_of(event, slot(cast).live[0]) == 12
    assert minutes_of(event, Talk("x", 4)) == 4


def test_a_demo_taken_out_takes_its_own_dishes_along_and_comes_back(owner: Client, cast: Cast) -> None:
    before = core(cast)
    owner.post(place(cast), {"do": "slot-out", "thing": "show"})
    assert core(cast).slots == ()
    assert "raw-batch" not in [dish.id for dish in core(cast).dishes]
    owner.post(reverse("event-undo", args=[cast.event.public_id, Edit.objects.get().pk]))
    assert core(cast).slots == before.slots
    assert core(cast).dishes == before.dishes


def test_a_new_demo_is_added(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "slot", "")
    sent = form.filled("slot", name="Coals for beginners", starts_at_1="15:30", minutes="20", presenter="ivo")
    assert owner.post(place(cast), sent).status_code == 302
    added = core(cast).slots[-1]
    assert (added.id, added.starts_at, added.minutes, added.presenter) == ("coals-for-beginners", 930, 20, "ivo")


def test_a_presenter_cannot_be_taken_out_of_the_crew_unasked(owner: Client, cast: Cast) -> None:
    crew = reverse("event-crew", args=[cast.event.public_id])
    answer = owner.post(crew, {"do": "helper-out", "thing": "odette"}, follow=True)
    assert "Give it another presenter on the demo page first." in answer.content.decode()
    assert "odette" in [helper.id for helper in core(cast).crew]


def test_a_dish_that_is_shown_cannot_be_taken_off_unasked(owner: Client, cast: Cast) -> None:
    menu = reverse("event-menu", args=[cast.event.public_id])
    answer = owner.post(menu, {"do": "dish-out", "thing": "show-cake"}, follow=True)
    assert "Take it out there first." in answer.content.decode()


def test_whoever_may_only_look_changes_nothing(viewer: Client, cast: Cast) -> None:
    before = core(cast)
    for do in ("slot", "talk", "up:0", "out:0", "slot-out"):
        assert viewer.post(place(cast), {"do": do, "thing": "show"}).status_code == 403
    assert core(cast) == before
