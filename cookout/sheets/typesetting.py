"""PDF through the typesetter, from a template of this folder and data that can hold any words.

The data travel as one JSON string, so no word in them is ever read as markup. The same data give the same bytes: the
fonts are those inside the typesetter, and the time stamp is the event's own.
"""

import json
import unicodedata
from collections.abc import Mapping, Sequence
from datetime import datetime
from importlib.resources import files
from io import BytesIO

import segno
import typst

from cookout.sheets.printing import Paper

Data = Mapping[str, object]

PAPERS: dict[Paper, str] = {"a4": "a4", "letter": "us-letter"}
# Letters up to here (Latin, Greek, Cyrillic) and general punctuation are in the typesetter's own fonts.
_LAST_OWN_LETTER, _PUNCTUATION = 0x052F, range(0x2000, 0x2C00)


def typeset(template: str, data: Data, *, paper: Paper, stamp: datetime) -> bytes:
    """The PDF of a template (``run_sheet``) on paper of that size, stamped with an aware time.

    Where the words hold letters that the typesetter's own fonts lack, fonts of the machine may help out.
    """
    source = "\n".join(_template(name) for name in ("common", template))
    words = json.dumps(_clean({**data, "paper": PAPERS[paper]}), ensure_ascii=False, sort_keys=True)
    return typst.compile(
        source.encode(),
        format="pdf",
        sys_inputs={"data": words},
        ignore_system_fonts=not _needs_more_fonts(words),
        timestamp=int(stamp.timestamp()),
    )


def qr_picture(address: str) -> str:
    """The address as a QR code (ISO/IEC 18004, error level M, four modules of quiet ground), as SVG."""
    drawn = BytesIO()
    segno.make(address, error="m", micro=False).save(drawn, kind="svg", border=4, scale=4, xmldecl=False)
    return drawn.getvalue().decode()


def _template(name: str) -> str:
    return files("cookout.sheets").joinpath("templates", f"{name}.typ").read_text(encoding="utf-8")


def _clean(value: object) -> object:
    """The same data with control characters, which no printer can show, as spaces."""
    if isinstance(value, str):
        return "".join(" " if unicodedata.category(letter) in {"Cc", "Cs"} else letter for letter in value)
    if isinstance(value, Mapping):
        return {key: _clean(inner) for key, inner in value.items()}
    if isinstance(value, Sequence):
        return [_clean(inner) for inner in value]
    return value


def _needs_more_fonts(words: str) -> bool:
    return any(ord(letter) > _LAST_OWN_LETTER and ord(letter) not in _PUNCTUATION for letter in words)
