"""What holds for every sheet, on both papers and with both ways to read the time of day."""

import re
from dataclasses import replace

import numpy as np
import pytest

from cookout.core.planning.record import PlanRecord
from cookout.core.planning.wording import HourStyle
from cookout.sheets import Paper, Printing
from tests.samples import sample_record, sample_record_without_plan
from tests.sheets.printed import (
    A4,
    LETTER,
    SAMPLE_LISTS,
    SHEETS,
    TIMED,
    Sheet,
    codes_on,
    drawn,
    pages_of,
    squeezed,
    text_of,
)

HOSTILE = '#panic("x") $y^2$ *bold* _it_ ]#[ \\ `raw` "q" <lab> @ref // no /* c */ = h \x00\x1b[31m {{ z }} %'
ADDRESS = "https://cookout.example/events/5f0c7c1e-9a57-4b8b-8a44-0123456789ab/paper/"
SECRET = "https://cookout.example/h/a-long-and-unguessable-token-0123456789"
every_sheet = pytest.mark.parametrize("sheet", SHEETS.values(), ids=SHEETS)
timed_sheet = pytest.mark.parametrize("sheet", TIMED.values(), ids=TIMED)


def made(sheet: Sheet, record: PlanRecord | None = None, **printing: object) -> bytes:
    return sheet(record or sample_record(), Printing(**printing), SAMPLE_LISTS)  # type: ignore[arg-type]


@every_sheet
@pytest.mark.parametrize("hours", ["12", "24"])
@pytest.mark.parametrize(("paper", "size"), [("a4", A4), ("letter", LETTER)])
def test_pages_have_exactly_the_size_of_the_paper(
    sheet: Sheet, paper: Paper, size: tuple[float, float], hours: HourStyle
) -> None:
    for page in pages_of(made(sheet, paper=paper, hours=hours)):
        sides = sorted((float(page.mediabox.width), float(page.mediabox.height)))
        assert sides == pytest.approx(sorted(size), abs=0.01)


@every_sheet
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_code_on_the_printed_page_opens_its_live_page(sheet: Sheet, paper: Paper) -> None:
    first = drawn(made(sheet, paper=paper, address=ADDRESS, revision=3), dpi=150, last=1)[0]
    assert codes_on(first) == [ADDRESS]


@every_sheet
def test_a_code_is_still_read_from_a_coarse_print(sheet: Sheet) -> None:
    first = drawn(made(sheet, address=SECRET, revision=3), dpi=100, last=1)[0]
    assert codes_on(first) == [SECRET]


@every_sheet
def test_the_address_is_printed_in_letters_too_and_only_where_there_is_one(sheet: Sheet) -> None:
    assert squeezed(ADDRESS) in text_of(made(sheet, address=ADDRESS))
    assert squeezed("cookout.example") not in text_of(made(sheet))


@every_sheet
def test_every_page_names_event_day_revision_and_where_it_was_printed_from(sheet: Sheet) -> None:
    for page in pages_of(made(sheet, revision=12, address=ADDRESS)):
        text = squeezed(page.extract_text())
        assert squeezed("Supper by the old boathouse, Saturday, 19 June 2027") in text
        assert squeezed("revision 12, printed from cookout.example") in text


@every_sheet
def test_the_place_of_printing_may_have_a_name_of_its_own(sheet: Sheet) -> None:
    text = text_of(made(sheet, revision=12, address=ADDRESS, printed_from="the crew's tent"))
    assert squeezed("revision 12, printed from the crew's tent") in text


@pytest.mark.parametrize("name", [name for name in SHEETS if name != "call sheets"])
def test_every_page_has_its_number_and_how_many_there_are(name: str) -> None:
    pages = pages_of(made(SHEETS[name]))
    for number, page in enumerate(pages, start=1):
        assert squeezed(f"page {number} of {len(pages)}") in squeezed(page.extract_text())


@every_sheet
def test_nothing_is_said_in_colour(sheet: Sheet) -> None:
    for picture in drawn(made(sheet, address=ADDRESS), dpi=40, colour=True):
        assert np.array_equal(picture[..., 0], picture[..., 1])
        assert np.array_equal(picture[..., 1], picture[..., 2])


@every_sheet
def test_nothing_is_printed_over_the_edge(sheet: Sheet) -> None:
    """Printers leave about a quarter of an inch blank; common practice, no source."""
    for picture in drawn(made(sheet, address=ADDRESS), dpi=72):
        edge = 18
        inner = picture[edge:-edge, edge:-edge]
        assert (picture < 200).sum() == (inner < 200).sum()


@every_sheet
def test_the_same_plan_gives_the_same_bytes(sheet: Sheet) -> None:
    assert made(sheet, address=ADDRESS, revision=3) == made(sheet, address=ADDRESS, revision=3)


@timed_sheet
def test_with_twelve_hours_no_time_is_left_in_twenty_four(sheet: Sheet) -> None:
    record = replace(sample_record(), bakes=(), tasks=sample_record().tasks * 5)  # too many tasks for a drawing
    text = " ".join(page.extract_text() for page in pages_of(made(sheet, record, hours="12")))
    times = re.findall(r"(?<![\d:.])\d{1,2}:\d\d(?:\s?[ap]m)?", text)
    assert all(time.endswith("m") for time in times), times
    assert "4:20" not in text or "pm" in text


@pytest.mark.parametrize("name", [name for name in SHEETS if name not in {"wall sheet", "table cards"}])
def test_an_address_can_be_clicked_where_a_sheet_is_read_on_a_screen(name: str) -> None:
    links = [
        note.get_object()["/A"]["/URI"]
        for page in pages_of(made(SHEETS[name], address=ADDRESS))
        for note in page.get("/Annots", ())
    ]
    assert set(links) == {ADDRESS}


@every_sheet
def test_all_fonts_are_inside_the_file(sheet: Sheet) -> None:
    found = [font for page in pages_of(made(sheet)) for font in _descriptors(page)]
    assert found
    assert all({"/FontFile", "/FontFile2", "/FontFile3"} & set(font) for font in found)


def _descriptors(page: dict[str, object]) -> list[dict[str, object]]:
    fonts = page["/Resources"]["/Font"].values()  # type: ignore[index]
    inner = [font.get_object()["/DescendantFonts"][0].get_object() for font in fonts]
    return [font["/FontDescriptor"].get_object() for font in inner]


@timed_sheet
def test_hostile_words_are_printed_and_never_obeyed(sheet: Sheet) -> None:
    record = sample_record()
    tasks = tuple(
        replace(t, name=HOSTILE, detail=HOSTILE, caution=HOSTILE, helpers=("runa",), hands_on=True)
        for t in record.tasks
    )
    hostile = replace(
        record,
        event_name=HOSTILE,
        place=HOSTILE,
        tasks=tasks,
        helpers=tuple(replace(helper, name=HOSTILE) for helper in record.helpers),
        bakes=tuple(replace(bake, dish_name=HOSTILE, unit=HOSTILE) for bake in record.bakes),
        slots=tuple(replace(slot, name=HOSTILE) for slot in record.slots),
        dishes=dict.fromkeys(record.dishes, HOSTILE),
    )
    text = text_of(made(sheet, hostile, printed_from=HOSTILE))
    assert squeezed('#panic("x") $y^2$ *bold* _it_ ]#[') in text
    assert squeezed("`raw`") in text


@timed_sheet
def test_an_event_without_a_plan_gets_a_sheet_that_says_why(sheet: Sheet) -> None:
    text = text_of(made(sheet, sample_record_without_plan()))
    assert squeezed("Nobody with the fire skill is there from 15:50 to 16:30") in text
    assert squeezed("Way out: Have someone with the fire skill there") in text


@timed_sheet
def test_cautions_stand_on_every_sheet_of_work_and_leave_the_last_word_to_local_codes(sheet: Sheet) -> None:
    text = text_of(made(sheet))
    for caution in ("Carbon monoxide", "Burns", "Your local fire code decides", "Your local food code decides"):
        assert squeezed(caution) in text


@every_sheet
def test_words_come_in_the_readers_language(sheet: Sheet) -> None:
    """Every fixed sentence is asked for by its English; here each comes back in capitals."""
    english, shouted = (
        text_of(made(sheet, revision=4)),
        text_of(
            made(
                sheet,
                revision=4,
                gettext=_shout,
                ngettext=lambda one, many, number: _shout(one if number == 1 else many),
            )
        ),
    )
    assert squeezed("REVISION 4") in shouted
    assert squeezed("PAGE 1 OF") in shouted
    assert "revision4" in english


def _shout(message: str) -> str:
    """Capitals everywhere but in the names of what is filled in."""
    return "".join(part if part.startswith("{") else part.upper() for part in re.split(r"(\{\w+\})", message))
