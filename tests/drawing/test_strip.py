"""The strip of a recipe's time: blocks where the steps stand, told apart by shape."""

from xml.etree import ElementTree

from cookout.core.kitchen.course import course_of
from cookout.drawing.strip import HEIGHT, WIDTH, step_strip
from tests.core.kitchen.test_course import cake


def blocks(place: int) -> list[dict[str, str]]:
    """The rectangles of one step's strip."""
    course = course_of(cake())
    return [dict(rect.attrib) for rect in ElementTree.fromstring(step_strip(course.spans[place], course))]


def test_a_block_stands_where_its_step_does() -> None:
    (bake,) = [rect for rect in blocks(1) if rect["class"] == "strip-bake"]
    assert float(bake["x"]) == round(WIDTH * 10 / 97, 1)
    assert float(bake["width"]) == round(WIDTH * 30 / 97, 1)


def test_each_full_hour_has_a_line() -> None:
    (hour,) = [rect for rect in blocks(0) if rect["class"] == "strip-hour"]
    assert float(hour["x"]) == round(WIDTH * 60 / 97 - 0.5, 1)


def test_work_baking_and_waiting_differ_in_height() -> None:
    heights: dict[str, float] = {}
    for place in range(3):
        for rect in blocks(place):
            heights.setdefault(rect["class"], float(rect["height"]))
    assert heights["strip-bake"] == HEIGHT > heights["strip-work"] > heights["strip-wait"]


def test_the_picture_is_hidden_from_those_who_hear_the_page_since_the_words_say_the_same() -> None:
    course = course_of(cake())
    assert 'aria-hidden="true"' in step_strip(course.spans[0], course)
