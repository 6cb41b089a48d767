"""The wall sheet: large enough for three metres, and nobody's work left out."""

from dataclasses import replace
from datetime import timedelta
from math import atan, degrees

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookout.core.planning.record import PlannedHelper, PlanRecord
from cookout.sheets import Paper, Printing, wall_pdf
from cookout.sheets.initials import initials_of
from cookout.sheets.wall import wall_lines
from tests.drawing.made_up import made_up_record
from tests.samples import at, sample_record
from tests.sheets.printed import codes_on, drawn, pages_of, squeezed, text_of

LEAST_ANGLE, READING_ANGLE = 16, 10
"""Minutes of arc of a capital: ISO 9241-303 recommends at least 16 (from memory); 10 is twice the 5 of 20/20 sight."""
CAPITAL_OF_MONO, CAPITAL_OF_SERIF = 0.729, 0.649
"""Height of a capital as a share of the size of the face, measured on a page drawn at 720 dots an inch."""


def arc_minutes(points: float, capital: float, metres: float = 3) -> float:
    """Under what angle a capital of a face of that size is seen."""
    return degrees(atan(points * capital * 0.0254 / 72 / metres)) * 60


def sizes(pdf: bytes) -> dict[str, float]:
    """The size in points that each word of a PDF is set in."""
    found: dict[str, float] = {}

    def note(text: str, _around: object, matrix: list[float], _font: object, size: float) -> None:
        for word in text.split():
            found[word] = max(found.get(word, 0), size * abs(matrix[3]))

    for page in pages_of(pdf):
        page.extract_text(visitor_text=note)
    return found


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_times_initials_and_work_are_large_enough_for_three_metres(paper: Paper) -> None:
    set_in = sizes(wall_pdf(sample_record(), Printing(paper=paper)))
    assert arc_minutes(set_in["15:50"], CAPITAL_OF_MONO) >= LEAST_ANGLE
    assert arc_minutes(set_in[first_initials()[0]], CAPITAL_OF_MONO) >= LEAST_ANGLE
    assert arc_minutes(set_in["Light"], CAPITAL_OF_SERIF) >= READING_ANGLE


def first_initials() -> list[str]:
    return list(initials_of(sample_record().helpers).values())


def test_every_page_lies_across_and_carries_the_code() -> None:
    pdf = wall_pdf(made_up_record(60), Printing(address="https://cookout.example/events/7/"))
    assert all(page.mediabox.width > page.mediabox.height for page in pages_of(pdf))
    assert [codes_on(picture) for picture in drawn(pdf, dpi=150)] == [["https://cookout.example/events/7/"]] * len(
        pages_of(pdf)
    )


@pytest.mark.parametrize("record", [sample_record(), made_up_record(400)], ids=["24 tasks", "400 tasks"])
def test_all_hands_on_work_is_on_the_wall_with_everyone_who_does_it(record: PlanRecord) -> None:
    lines = list(wall_lines(record.tasks))
    on_it = [task.id for line in lines for task in line.tasks]
    assert sorted(on_it) == sorted(task.id for task in record.tasks if task.hands_on)
    for line in lines:
        assert all(timedelta(0) <= task.starts_at - line.at < timedelta(minutes=10) for task in line.tasks)


def test_lines_are_in_time_order_and_servings_stand_among_them() -> None:
    text = text_of(wall_pdf(sample_record()))
    places = [
        text.index(squeezed(words))
        for words in ("15:30", "15:50 Light 25 coals", "16:25 Light 33 coals", "Supper for 8")
    ]
    assert places == sorted(places)


def test_only_the_hours_asked_for_are_printed() -> None:
    text = text_of(wall_pdf(sample_record(), start=at("16:00"), hours=1))
    assert squeezed("16:25 Light 33 coals") in text
    assert squeezed("Light 25 coals") not in text
    assert squeezed("Supper for 8") not in text


def test_hours_without_work_are_told() -> None:
    assert squeezed("Nothing is planned for these hours.") in text_of(
        wall_pdf(sample_record(), start=at("22:00"), hours=2)
    )


def test_initials_are_explained_on_every_page() -> None:
    record = sample_record()
    for page in pages_of(wall_pdf(record)):
        text = squeezed(page.extract_text())
        assert all(
            squeezed(f"{short} {name.name}") in text
            for short, name in zip(first_initials(), record.helpers, strict=True)
        )


def helpers_named(*names: str) -> list[PlannedHelper]:
    some = sample_record().helpers[0]
    return [replace(some, id=f"h{place}", name=name) for place, name in enumerate(names)]


@pytest.mark.parametrize(
    ("names", "short"),
    [
        (("Wren Adair", "Tobias Adair"), ["WA", "TA"]),
        (("Juniper Adair, 13", "Pell Okafor"), ["JA", "PO"]),
        (("Hedda Marsh", "Hal Mason", "Hugo Mare"), ["HMars", "HMas", "HMare"]),
        (("Runa", "Rune"), ["Runa", "Rune"]),
        (("Ada Lund", "Ada Lund"), ["ALund1", "ALund2"]),
        (("火の番 さくら",), ["火さ"]),
        ((" ",), ["?"]),
    ],
)
def test_initials_are_as_short_as_tells_people_apart(names: tuple[str, ...], short: list[str]) -> None:
    assert list(initials_of(helpers_named(*names)).values()) == short


@given(st.lists(st.text(alphabet="ABab ,é", max_size=8), max_size=12))
def test_initials_always_differ(names: list[str]) -> None:
    found = initials_of(helpers_named(*names))
    assert len(set(found.values())) == len(names)
