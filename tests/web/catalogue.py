"""The catalogue of texts: gathers what pages say, keeps the translations in step, and compiles them.

`python -m tests.web.catalogue` after texts were changed: new ones come in untranslated, unused ones go, and the
compiled form is written anew. No gettext programs are needed.
"""

import re
from collections.abc import Iterator, Sequence
from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_python
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po
from django.utils.translation.template import templatize

ROOT = Path(__file__).resolve().parents[2]
LOCALE = ROOT / "cookout" / "web" / "locale"
SECOND = "es"
TEMPLATES = (".html", ".txt")
WHERE = (("services", "*.py"), ("sheets", "*.py"), ("web", "*.py"), ("web", "*.html"), ("web", "*.txt"))
KEYWORDS = dict.fromkeys(
    (
        "_",
        "gettext",
        "gettext_lazy",
        "gettext_noop",
        "ngettext",
        "ngettext_lazy",
        "pgettext",
        "pgettext_lazy",
        "npgettext",
    )
)
SINGULAR_AND_PLURAL = ("ngettext", "ngettext_lazy", "npgettext")
COUNTED = re.compile(r'counted:"([^",]+),([^",]+)"')

Message = str | tuple[str, str]


def catalogue() -> Catalog:
    """Everything that pages, forms and services say, with where it stands."""
    found = Catalog(domain="django", charset="utf-8")
    for path in sorted(path for folder, pattern in WHERE for path in (ROOT / "cookout" / folder).rglob(pattern)):
        for message, context in _messages(path):
            found.add(message, locations=[(path.relative_to(ROOT).as_posix(), 0)], context=context)
    return found


def translated(language: str = SECOND) -> Catalog:
    """The stored translations of a language."""
    with _po(language).open("rb") as file:
        return read_po(file, locale=language, domain="django")


def compiled(language: str = SECOND) -> bytes:
    """What the stored translations compile to."""
    out = BytesIO()
    write_mo(out, translated(language))
    return out.getvalue()


def stored(language: str = SECOND) -> bytes:
    """The compiled translations as they are stored."""
    return _po(language).with_suffix(".mo").read_bytes()


def keep_in_step(language: str = SECOND) -> None:
    """Bring the stored translations up to date with the texts, and compile them."""
    path = _po(language)
    path.parent.mkdir(parents=True, exist_ok=True)
    known = translated(language) if path.exists() else Catalog(locale=language, domain="django", charset="utf-8")
    known.update(catalogue(), no_fuzzy_matching=True)
    known.obsolete.clear()
    with path.open("wb") as file:
        write_po(file, known, width=118, omit_header=False, sort_output=True, ignore_obsolete=True)
    path.with_suffix(".mo").write_bytes(compiled(language))


def _po(language: str) -> Path:
    return LOCALE / language / "LC_MESSAGES" / "django.po"


def _messages(path: Path) -> Iterator[tuple[Message, str | None]]:
    text = path.read_text(encoding="utf-8")
    if path.suffix in TEMPLATES:
        yield from (((one, many), None) for one, many in COUNTED.findall(text))
        text = templatize(text, origin=str(path))
    source = BytesIO(text.encode())
    for _line, function, message, _comments in extract_python(source, KEYWORDS, (), {"encoding": "utf-8"}):
        yield from _message(str(function), message)


def _message(function: str, message: str | Sequence[str] | None) -> Iterator[tuple[Message, str | None]]:
    parts = [part for part in ((message,) if isinstance(message, str) else message or ()) if part]
    context = parts.pop(0) if function.lstrip("n").startswith("pgettext") and parts else None
    if not parts:
        return
    yield ((parts[0], parts[1]) if function in SINGULAR_AND_PLURAL and len(parts) > 1 else parts[0]), context


if __name__ == "__main__":
    keep_in_step()
    missing = [message.id for message in translated() if message.id and not message.string]
    print(f"{len(translated())} texts, {len(missing)} without a translation into {SECOND}")
