"""Run sheet, call sheets and fire plan, opened by an independent reader of PDF."""

import re
from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from cookout.core.planning.record import PlanRecord
from cookout.sheets import Printing, call_sheet_pdf, call_sheets_pdf, coal_plan_pdf, run_sheet_pdf
from cookout.sheets.printing import USUAL
from tests.drawing.made_up import made_up_record
from tests.samples import TRICKY_NAME, sample_record
from tests.sheets.printed import codes_on, drawn, pages_of, squeezed, text_of


@pytest.mark.parametrize("record", [sample_record(), made_up_record(400)], ids=["24 tasks", "400 tasks"])
def test_the_run_sheet_has_every_task_with_its_times(record: PlanRecord) -> None:
    text = text_of(run_sheet_pdf(record))
    for task in record.tasks:
        assert squeezed(task.name.replace("🍏", "")) in text
        assert f"{task.starts_at:%H:%M}to{task.ends_at:%H:%M}" in text


def test_the_run_sheet_is_in_time_order() -> None:
    record = sample_record()
    text = text_of(run_sheet_pdf(record)).partition(squeezed("The whole day"))[2]
    times = [task.starts_at for task in record.tasks]
    places = [text.index(f"{moment:%H:%M}to") for moment in sorted(set(times))]
    assert places == sorted(places)


def test_the_run_sheet_has_servings_calls_and_demo_slots() -> None:
    text = text_of(run_sheet_pdf(sample_record()))
    for words in (
        "Supper for 8",
        "until 18:30, 71 min of work",
        "How a crumble goes together",
        "ready-made: Apple crumble",
    ):
        assert squeezed(words) in text


def test_a_caution_stands_in_full_where_it_comes_first_and_later_in_its_first_words() -> None:
    record = made_up_record(400)
    caution = "Hot iron: gloves and a lid lifter, always"
    tasks = tuple(replace(task, caution=caution) for task in record.tasks if task.hands_on)
    text = text_of(run_sheet_pdf(replace(record, tasks=tasks)))
    hours = {f"{task.starts_at:%d %H}" for task in tasks}
    assert text.count(squeezed(caution)) == len(hours)
    assert text.count(squeezed("Hot iron")) == len(tasks)


def test_a_small_run_sheet_ends_in_a_drawing_across_a_larger_in_one_upright_and_a_large_one_in_none() -> None:
    small, larger, large = (
        pages_of(run_sheet_pdf(r)) for r in (sample_record(), made_up_record(75), made_up_record(400))
    )
    assert small[-1].mediabox.width > small[-1].mediabox.height
    assert larger[-1].mediabox.width < larger[-1].mediabox.height
    coals = squeezed("lit, ashed over, fading")  # said by the drawing alone
    assert [coals in squeezed(pages[-1].extract_text()) for pages in (small, larger, large)] == [True, True, False]


def test_a_call_sheet_has_the_helpers_own_tasks_and_no_others() -> None:
    record = sample_record()
    text = text_of(call_sheet_pdf(record, "ilse"))
    assert squeezed(TRICKY_NAME.replace("🍏", "")) in text
    assert squeezed("Serve the crumble") in text
    assert squeezed("Slice apples") not in text
    assert "16:50" in text


def test_a_call_sheet_says_why_with_whom_and_when_one_is_free() -> None:
    text = text_of(call_sheet_pdf(sample_record(), "runa"))
    assert squeezed("with Tomasz Okoro-Lind") in text
    assert squeezed("can start no later: the coals must be ashed over at 16:15") in text
    assert squeezed("free for 20 min, until 16:15") in text


def test_a_call_sheet_for_a_reader_of_twelve_hours_says_all_times_so() -> None:
    text = text_of(call_sheet_pdf(sample_record(), "runa", Printing(hours="12")))
    assert squeezed("free for 20 min, until 4:15 pm") in text
    assert squeezed("ashed over at 4:15 pm") in text
    assert "16:15" not in text


def test_a_helper_whom_the_record_does_not_know_is_an_error() -> None:
    with pytest.raises(KeyError, match="nobody"):
        call_sheet_pdf(sample_record(), "nobody")


def helpers_by_page(pdf: bytes, record: PlanRecord) -> list[tuple[str, int, int]]:
    """For each page the helper whose call sheet begins there, else "", its number and how many there are."""
    found = []
    for page in pages_of(pdf):
        text = squeezed(page.extract_text())
        number = re.search(r"page(\d+)of(\d+)", text)
        assert number is not None
        places = {text.find(squeezed(helper.name)): helper.name for helper in record.helpers}
        first = min((place for place in places if place >= 0), default=-1)
        found.append((places.get(first, "") if "CALLSHEET" in text else "", int(number[1]), int(number[2])))
    return found


@pytest.mark.parametrize("record", [sample_record(), made_up_record(400)], ids=["3 helpers", "12 helpers"])
def test_all_call_sheets_come_in_the_order_of_the_calls_each_from_a_page_of_its_own(record: PlanRecord) -> None:
    called = sorted(
        (helper for helper in record.helpers if helper.called_at), key=lambda each: (each.called_at, each.name)
    )
    pages = helpers_by_page(call_sheets_pdf(record), record)
    assert [name for name, _, _ in pages if name] == [helper.name for helper in called]
    assert all((number == 1) == bool(name) for name, number, _ in pages)
    ends = [number == count for _, number, count in pages]
    assert ends == [*(number == 1 for _, number, _ in pages[1:]), True]


def test_each_of_all_call_sheets_carries_the_code_of_its_own_helper() -> None:
    record = sample_record()
    addresses = {
        helper.id: f"https://cookout.example/h/token-of-{helper.id}-0123456789abcdef" for helper in record.helpers
    }
    pdf = call_sheets_pdf(record, Printing(address="https://cookout.example/paper/"), addresses=addresses)
    codes = [code for picture in drawn(pdf, dpi=150) for code in codes_on(picture)]
    called = sorted((each.called_at, each.name, each.id) for each in record.helpers if each.called_at)
    assert codes == [addresses[helper] for _, _, helper in called]


def test_a_helper_without_an_address_gets_that_of_all() -> None:
    pdf = call_sheets_pdf(sample_record(), Printing(address="https://cookout.example/paper/"))
    codes = [code for picture in drawn(pdf, dpi=150) for code in codes_on(picture)]
    assert set(codes) == {"https://cookout.example/paper/"}


def test_the_fire_plan_has_firings_ovens_top_ups_and_the_total() -> None:
    text = text_of(coal_plan_pdf(sample_record()))
    for words in (
        "58 coals in 2 firings",  # 25 + 33
        "46 laid at first, 12 added later",  # 8 + 17 + 14 + 7
        "8 on the lid, 17 under",
        "25 in all; 22 to 28 by the day",
        "add 12 fresh coals",
        "16:15 to 17:15",
        "about 350 °F",
        "Bring 81 (18 to spare), 4.5 lb of briquettes; 3 chimney loads.",
        "Smoky bean pot: 12-inch oven A",
        "Smoky bean pot, top-up: 12-inch oven A",
    ):
        assert squeezed(words) in text


def test_the_fire_plan_draws_every_oven_of_a_large_day() -> None:
    """A drawing is parted where the day is long; every oven that bakes stands on some part."""
    record = made_up_record(400)
    across = [page for page in pages_of(coal_plan_pdf(record)) if page.mediabox.width > page.mediabox.height]
    assert len(across) > 1
    text = squeezed("".join(page.extract_text() for page in across))
    assert all(squeezed(bake.unit) in text for bake in record.bakes)


def test_ovens_that_are_laid_alike_are_told_together() -> None:
    record = sample_record()
    twin = replace(record.bakes[0], unit="12-inch oven Z", top_ups=())
    text = text_of(coal_plan_pdf(replace(record, bakes=(*record.bakes, twin))))
    assert text.count(squeezed("25 in all; 22 to 28 by the day")) == 1
    assert squeezed("12-inch oven Z: in at") in text


def test_a_word_longer_than_the_line_is_broken_not_run_off_the_page() -> None:
    record = sample_record()
    endless = replace(record, tasks=(replace(record.tasks[0], name="x" * 400),), links=(), firings=(), bakes=())
    placed: list[float] = []
    for page in PdfReader(BytesIO(run_sheet_pdf(endless))).pages[1:]:
        page.extract_text(visitor_text=lambda text, *_: placed.append(len(text) if set(text) == {"x"} else 0))
    assert sum(placed) == 400
    assert max(placed) < 90


def test_letters_outside_the_own_fonts_do_not_stop_a_sheet() -> None:
    record = sample_record()
    helpers = (replace(record.helpers[0], name="火の番 さくら"), *record.helpers[1:])
    assert len(pages_of(run_sheet_pdf(replace(record, helpers=helpers)))) >= 3


@pytest.mark.parametrize("tasks", [60, 400])
def test_no_page_of_a_large_plan_is_left_nearly_blank(tasks: int) -> None:
    record = made_up_record(tasks)
    for pdf in (run_sheet_pdf(record, USUAL), coal_plan_pdf(record), call_sheet_pdf(record, "h0")):
        assert all(len(page.extract_text()) > 120 for page in pages_of(pdf))
