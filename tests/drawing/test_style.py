"""Looks as classes: the pages' stylesheet holds them, and no drawing uses one that is not there."""

import re
from pathlib import Path

from django.contrib.staticfiles import finders

from cookout.drawing import Scheme, fire_svg, timeline_svg
from cookout.drawing.style import SHAPES, TEXTS, page_rules
from tests.drawing.made_up import made_up_record, moment

WITHOUT_LOOK = {"drawn", "row", "key", "axis", "firing", "go", "burnt"}


def test_the_stylesheet_of_the_pages_holds_just_these_looks() -> None:
    found = finders.find("cookout/drawing.css")
    assert isinstance(found, str)
    comment, _, rules = Path(found).read_text(encoding="utf-8").partition("\n")
    assert comment.startswith("/*")
    assert rules == page_rules()


def test_every_class_that_is_drawn_has_a_look() -> None:
    record = made_up_record(60)
    drawings = [
        timeline_svg(record, by=by, width=900, zoom=zoom, now=moment(300))
        for by in ("dish", "gear")
        for zoom in ("day", "hour")
    ]
    used = {name for svg in drawings for name in re.findall(r'class="([^"]+)"', svg)}
    assert used - WITHOUT_LOOK <= {*SHAPES, *TEXTS}


def test_a_drawing_for_paper_carries_its_own_looks() -> None:
    for svg in (
        fire_svg(made_up_record(60), width=640),
        timeline_svg(made_up_record(60), by="dish", width=900, scheme=Scheme.GREY),
    ):
        style = re.search("<style>(.*?)</style>", svg, re.DOTALL)
        assert style
        used = set(re.findall(r'class="([^"]+)"', svg)) - WITHOUT_LOOK
        assert used
        assert all(f".drawn .{name}{{" in style[1] for name in used)
