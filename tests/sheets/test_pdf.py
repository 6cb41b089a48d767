"""The printed sheets, opened by an independent reader of PDF."""

from collections.abc import Callable
from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from cookout.core.planning.record import PlanRecord
from cookout.sheets import Paper, call_sheet_pdf, coal_plan_pdf, run_sheet_pdf
from tests.drawing.made_up import made_up_record
from tests.samples import TRICKY_NAME, sample_record, sample_record_without_plan

A4, LETTER = (595.28, 841.89), (612.0, 792.0)  # ISO 216 and ANSI/ASME Y14.1, in points of 1/72 inch
HOSTILE = '#panic("x") $y^2$ *bold* _it_ ]#[ \\ `raw` "q" <lab> @ref // no /* c */ = h \x00\x1b[31m {{ z }} %'
ADDRESS = "https://cookout.example/h/a-long-and-unguessable-token-0123456789"


def a_call_sheet(
    record: PlanRecord, *, paper: Paper = "a4", address: str | None = None, revision: int | None = None
) -> bytes:
    """The call sheet of the record's first helper."""
    return call_sheet_pdf(record, record.helpers[0].id, paper=paper, address=address, revision=revision)


Sheet = Callable[..., bytes]
every_sheet = pytest.mark.parametrize("sheet", [run_sheet_pdf, coal_plan_pdf, a_call_sheet])


def squeezed(text: str) -> str:
    """Text without white space, hyphens and joiners, which a reader may add or drop at line ends."""
    return "".join(letter for letter in text if not letter.isspace() and letter not in "-\u00ad\u2010\u200b")


def text_of(pdf: bytes) -> str:
    """All text of a PDF, squeezed."""
    return squeezed("".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages))


@every_sheet
@pytest.mark.parametrize(("paper", "size"), [("a4", A4), ("letter", LETTER)])
def test_pages_have_the_size_of_the_paper(sheet: Sheet, paper: Paper, size: tuple[float, float]) -> None:
    for page in PdfReader(BytesIO(sheet(sample_record(), paper=paper))).pages:
        sides = sorted((float(page.mediabox.width), float(page.mediabox.height)))
        assert sides == pytest.approx(sorted(size), abs=0.5)


@every_sheet
def test_every_page_names_event_revision_and_page_number(sheet: Sheet) -> None:
    reader = PdfReader(BytesIO(sheet(sample_record(), revision=12)))
    for number, page in enumerate(reader.pages, start=1):
        text = squeezed(page.extract_text())
        assert squeezed(f"page {number} of {len(reader.pages)}") in text
        assert squeezed("revision 12") in text
        assert squeezed("Supper by the old boathouse") in text


@every_sheet
def test_cautions_are_on_every_sheet_and_leave_the_last_word_to_local_codes(sheet: Sheet) -> None:
    text = text_of(sheet(sample_record()))
    for caution in ("Carbon monoxide", "Burns", "Your local fire code decides", "Your local food code decides"):
        assert squeezed(caution) in text


@every_sheet
def test_the_same_record_gives_the_same_bytes(sheet: Sheet) -> None:
    assert sheet(sample_record(), address=ADDRESS, revision=3) == sheet(sample_record(), address=ADDRESS, revision=3)


@every_sheet
def test_an_address_is_printed_and_drawn_as_a_code(sheet: Sheet) -> None:
    with_address, without = sheet(sample_record(), address=ADDRESS), sheet(sample_record())
    assert squeezed(ADDRESS) in text_of(with_address)
    assert squeezed(ADDRESS) not in text_of(without)
    links = [
        note.get_object()["/A"]["/URI"]
        for page in PdfReader(BytesIO(with_address)).pages
        for note in page.get("/Annots", ())
    ]
    assert links == [ADDRESS]


@every_sheet
def test_all_fonts_are_inside_the_file(sheet: Sheet) -> None:
    found = [font for page in PdfReader(BytesIO(sheet(made_up_record(60)))).pages for font in _descriptors(page)]
    assert found
    assert all({"/FontFile", "/FontFile2", "/FontFile3"} & set(font) for font in found)


def _descriptors(page: dict[str, object]) -> list[dict[str, object]]:
    fonts = page["/Resources"]["/Font"].values()  # type: ignore[index]
    inner = [font.get_object()["/DescendantFonts"][0].get_object() for font in fonts]
    return [font["/FontDescriptor"].get_object() for font in inner]


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


def test_a_small_run_sheet_ends_in_a_drawing_and_a_large_one_does_not() -> None:
    small, large = (PdfReader(BytesIO(run_sheet_pdf(record))) for record in (sample_record(), made_up_record(400)))
    assert small.pages[-1].mediabox.width > small.pages[-1].mediabox.height
    assert large.pages[-1].mediabox.width < large.pages[-1].mediabox.height


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


def test_a_helper_whom_the_record_does_not_know_is_an_error() -> None:
    with pytest.raises(KeyError, match="nobody"):
        call_sheet_pdf(sample_record(), "nobody")


def test_the_coal_plan_has_firings_ovens_top_ups_and_the_total() -> None:
    text = text_of(coal_plan_pdf(sample_record()))
    for words in (
        "58 coals in 2 firings",  # 25 + 33
        "46 laid at first, 12 added later",  # 8 + 17 + 14 + 7
        "8 on the lid, 17 under",
        "25 in all; 22 to 28 by the day",
        "add 12 fresh coals",
        "16:15 to 17:15",
        "about 350 °F",
    ):
        assert squeezed(words) in text


@every_sheet
def test_hostile_words_are_printed_and_never_obeyed(sheet: Sheet) -> None:
    record = sample_record()
    tasks = tuple(
        replace(t, name=HOSTILE, detail=HOSTILE, caution=HOSTILE, helpers=("runa",), hands_on=True)
        for t in record.tasks
    )
    helpers = tuple(replace(helper, name=HOSTILE) for helper in record.helpers)
    bakes = tuple(replace(bake, dish_name=HOSTILE, unit=HOSTILE) for bake in record.bakes)
    hostile = replace(record, event_name=HOSTILE, place=HOSTILE, tasks=tasks, helpers=helpers, bakes=bakes)
    text = text_of(sheet(hostile))
    assert squeezed('#panic("x") $y^2$ *bold* _it_ ]#[') in text
    assert squeezed("`raw`") in text


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
    reader = PdfReader(BytesIO(run_sheet_pdf(replace(record, helpers=helpers))))
    assert len(reader.pages) >= 3


@every_sheet
def test_an_event_without_a_plan_gets_a_sheet_that_says_why(sheet: Sheet) -> None:
    text = text_of(sheet(sample_record_without_plan()))
    assert squeezed("Nobody with the fire skill is there from 15:50 to 16:30") in text
    assert squeezed("Way out: Have someone with the fire skill there") in text


@pytest.mark.parametrize("tasks", [60, 400])
def test_no_page_of_a_large_plan_is_left_nearly_blank(tasks: int) -> None:
    record = made_up_record(tasks)
    for pdf in (run_sheet_pdf(record), coal_plan_pdf(record), call_sheet_pdf(record, "h0")):
        assert all(len(page.extract_text()) > 120 for page in PdfReader(BytesIO(pdf)).pages)
