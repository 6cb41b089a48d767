"""The menu's page: servings and dishes made, ordered, changed, taken off."""

from django.test import Client
from django.urls import reverse

from cookout.store.models import Edit
from tests.store.cast import Cast
from tests.web.filling import form_of
from tests.web.form_pages import FormPage, core

PAGE = FormPage("event-menu")
place, opened = PAGE.place, PAGE.opened


def order(cast: Cast) -> list[str]:
    return [dish.id for dish in core(cast).dishes]


def test_a_serving_is_added_by_day_and_time(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "serving", "")
    answer = owner.post(
        place(cast), form.filled("serving", name="Late bread", at_0="2027-06-13", at_1="00:30", people="9")
    )
    assert answer.status_code == 302
    added = core(cast).servings[-1]
    assert (added.id, added.at, added.people, added.early, added.late) == ("late-bread", 24 * 60 + 30, 9, 10, 10)


def test_every_form_saved_as_it_stands_changes_nothing(owner: Client, cast: Cast) -> None:
    before = core(cast)
    for serving in before.servings:
        owner.post(place(cast), form_of(opened(owner, cast), "serving", serving.id).filled("serving"))
    for dish in before.dishes:
        owner.post(place(cast), form_of(opened(owner, cast), "dish", dish.id).filled("dish"))
    assert core(cast) == before
    assert not Edit.objects.exists()


def test_a_time_far_from_the_event_is_told_by_the_field(owner: Client, cast: Cast) -> None:
    form = form_of(opened(owner, cast), "serving", "")
    sent = form.filled("serving", name="Next year", at_0="2028-06-12", at_1="18:00", people="4")
    answer = owner.post(place(cast), sent)
    page = answer.content.decode()
    assert answer.status_code == 422
    assert "more than 14 days from the event" in page
    assert "Next year" in page
    assert "2028-06-12" in page


def test_a_dish_is_put_on_changed_and_taken_off_with_a_way_back(owner: Client, cast: Cast) -> None:
    before = core(cast)
    serving, recipe = before.servings[0].id, before.recipes[0].id
    owner.post(place(cast), {"do": "dish-in", "serving": serving, "recipe": recipe})
    added = core(cast).dishes[-1]
    assert (added.recipe, added.serving, added.people) == (recipe, serving, None)
    form = form_of(opened(owner, cast), "dish", added.id)
    owner.post(place(cast), form.filled("dish", people="5"))
    assert core(cast).dish(added.id).people == 5
    owner.post(place(cast), {"do": "dish-out", "thing": added.id})
    assert core(cast) == before
    owner.post(reverse("event-undo", args=[cast.event.public_id, Edit.objects.first().pk]))  # type: ignore[union-attr]
    assert core(cast).dish(added.id).people == 5


def test_dishes_are_ordered_by_buttons_and_by_dropping(owner: Client, cast: Cast) -> None:
    first, second, third = order(cast)
    owner.post(place(cast), {"do": "down", "thing": first})
    assert order(cast) == [second, first, third]
    owner.post(place(cast), {"do": "up", "thing": first})
    assert order(cast) == [first, second, third]
    serving = core(cast).servings[0].id
    owner.post(place(cast), {"do": "place", "dish": third, "serving": serving, "before": first})
    assert order(cast) == [third, first, second]


def test_a_dish_at_the_end_of_its_list_stays_there(owner: Client, cast: Cast) -> None:
    there = order(cast)
    owner.post(place(cast), {"do": "up", "thing": there[0]})
    owner.post(place(cast), {"do": "down", "thing": there[-1]})
    assert order(cast) == there


def test_a_serving_taken_off_takes_its_dishes_along_and_both_come_back(owner: Client, cast: Cast) -> None:
    before = core(cast)
    owner.post(place(cast), {"do": "serving-out", "thing": before.servings[0].id})
    assert (core(cast).servings, core(cast).dishes) == ((), ())
    owner.post(reverse("event-undo", args=[cast.event.public_id, Edit.objects.get().pk]))
    assert core(cast) == before


def test_without_a_recipe_chosen_the_page_says_so(owner: Client, cast: Cast) -> None:
    serving = core(cast).servings[0].id
    answer = owner.post(place(cast), {"do": "dish-in", "serving": serving, "recipe": ""}, follow=True)
    assert "Choose a recipe from the list, then add it." in answer.content.decode()


def test_things_that_are_not_there_any_more_are_told_and_nothing_breaks(owner: Client, cast: Cast) -> None:
    for do in ("dish-out", "serving-out", "up", "dish"):
        answer = owner.post(place(cast), {"do": do, "thing": "gone"}, follow=True)
        assert "It is not there any more" in answer.content.decode()


def test_whoever_may_only_look_changes_nothing(viewer: Client, cast: Cast) -> None:
    before = core(cast)
    for do in ("serving", "dish-in", "dish-out", "up", "place"):
        assert viewer.post(place(cast), {"do": do, "thing": before.dishes[0].id}).status_code == 403
    assert core(cast) == before


def test_a_recipe_to_start_with_goes_on_a_serving_at_once_and_is_then_listed_but_once(
    owner: Client, cast: Cast
) -> None:
    serving = core(cast).servings[0].id
    page = opened(owner, cast).content.decode()
    name = page.partition('value="starter:')[2].partition('"')[0]
    assert name
    assert (
        owner.post(place(cast), {"do": "dish-in", "serving": serving, "recipe": f"starter:{name}"}).status_code == 302
    )
    added = core(cast).dishes[-1]
    assert added.serving == serving
    after = opened(owner, cast).content.decode()
    assert f"starter:{name}" not in after
    assert after.count(f">{core(cast).recipe(added.recipe).name}</option>") == page.count(
        'value="starter:' + name + '"'
    )
