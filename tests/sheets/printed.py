"""Every sheet there is, and independent eyes for them: a reader of PDF, a program that draws it, a reader of codes."""

import shutil
import subprocess
from collections.abc import Callable
from dataclasses import dataclass
from io import BytesIO

import numpy as np
import pytest
import zxingcpp
from numpy.typing import NDArray
from pypdf import PageObject, PdfReader

from cookout.core.planning.lists.items import Group
from cookout.core.planning.lists.leftovers import Leftovers
from cookout.core.planning.lists.measuring import DishMeasures
from cookout.core.planning.lists.shopping import Aisle
from cookout.core.planning.lists.table_card import Card
from cookout.core.planning.record import PlanRecord
from cookout.sheets import (
    Printing,
    allergen_cards_pdf,
    allergen_sheet_pdf,
    call_sheet_pdf,
    call_sheets_pdf,
    coal_plan_pdf,
    leftovers_pdf,
    measuring_pdf,
    packing_pdf,
    run_sheet_pdf,
    running_order_pdf,
    shopping_pdf,
    wall_pdf,
)
from tests.sheets.made_lists import a_card, some_aisles, some_groups, some_leftovers, some_measures

A4, LETTER = (595.28, 841.89), (612.0, 792.0)  # ISO 216 and ANSI/ASME Y14.1, in points of 1/72 inch
Grey = NDArray[np.uint8]


@dataclass(frozen=True, slots=True)
class Lists:
    """What the lists of an event hold."""

    aisles: tuple[Aisle, ...]
    groups: tuple[Group, ...]
    measures: tuple[DishMeasures, ...]
    left: Leftovers
    card: Card


SAMPLE_LISTS = Lists(some_aisles(), some_groups(), some_measures(), some_leftovers(), a_card())
Sheet = Callable[[PlanRecord, Printing, Lists], bytes]

TIMED: dict[str, Sheet] = {
    "run sheet": lambda record, printing, _: run_sheet_pdf(record, printing),
    "one call sheet": lambda record, printing, _: call_sheet_pdf(record, record.helpers[0].id, printing),
    "call sheets": lambda record, printing, _: call_sheets_pdf(record, printing),
    "fire plan": lambda record, printing, _: coal_plan_pdf(record, printing),
    "running order": lambda record, printing, _: running_order_pdf(record, printing),
    "wall sheet": lambda record, printing, _: wall_pdf(record, printing),
}
"""Sheets that are made from a plan alone."""

LISTED: dict[str, Sheet] = {
    "shopping": lambda record, printing, lists: shopping_pdf(record, lists.aisles, printing),
    "packing": lambda record, printing, lists: packing_pdf(record, lists.groups, printing),
    "measuring": lambda record, printing, lists: measuring_pdf(record, lists.measures, printing),
    "leftovers": lambda record, printing, lists: leftovers_pdf(record, lists.left, printing),
    "allergens": lambda record, printing, lists: allergen_sheet_pdf(record, lists.card, printing),
    "table cards": lambda record, printing, lists: allergen_cards_pdf(record, lists.card, printing),
}
"""Sheets that print a list of an event."""

SHEETS = TIMED | LISTED


def pages_of(pdf: bytes) -> list[PageObject]:
    return list(PdfReader(BytesIO(pdf)).pages)


def squeezed(text: str) -> str:
    """Text without white space, hyphens and joiners, which a reader may add or drop at line ends."""
    return "".join(letter for letter in text if not letter.isspace() and letter not in "-\u00ad\u2010\u200b")


def text_of(pdf: bytes) -> str:
    """All text of a PDF, squeezed."""
    return squeezed("".join(page.extract_text() for page in pages_of(pdf)))


def drawn(pdf: bytes, *, dpi: int, colour: bool = False, last: int | None = None) -> list[Grey]:
    """Each page up to the `last` as poppler draws it: rows of grey, or of red, green and blue."""
    program = shutil.which("pdftoppm")
    if program is None:
        pytest.skip("nothing draws the pages: pdftoppm is not installed (Debian package: poppler-utils)")
    until = ["-l", str(last)] if last else []
    call = [program, "-r", str(dpi), *until, *([] if colour else ["-gray"]), "-"]
    data = subprocess.run(call, input=pdf, capture_output=True, check=True).stdout
    found = []
    while data:
        picture, data = _picture(data)
        found.append(picture)
    return found


def _picture(data: bytes) -> tuple[Grey, bytes]:
    """The first of the pictures in a row of binary PGM or PPM (netpbm), and what comes after it."""
    kind, size, _, rest = data.split(b"\n", 3)
    width, height = map(int, size.split())
    shape = (height, width) if kind == b"P5" else (height, width, 3)
    length = int(np.prod(shape))
    return np.frombuffer(rest[:length], dtype=np.uint8).reshape(shape), rest[length:]


def codes_on(picture: Grey) -> list[str]:
    """What the QR codes on a page say, read by a library that none of ours was made with."""
    return [code.text for code in zxingcpp.read_barcodes(np.ascontiguousarray(picture))]
