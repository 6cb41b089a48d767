"""Forms of a page filled in as a browser would: every field as it stands, then what somebody types."""

from dataclasses import dataclass, field
from html.parser import HTMLParser
from typing import Protocol


class Answered(Protocol):
    """What came back, as the test client gives it."""

    @property
    def content(self) -> bytes: ...

    @property
    def status_code(self) -> int: ...


Values = dict[str, str | list[str]]


@dataclass
class Form:
    """A form of a page: its fields as they stand, what its buttons called `do` are worth, and where it goes."""

    action: str
    fields: Values = field(default_factory=dict)
    buttons: list[str] = field(default_factory=list)

    def filled(self, do: str = "", **typed: str | list[str]) -> Values:
        """What is sent by the button `do` after typing; a field is named by the end of its name."""
        values: Values = {**self.fields, **({"do": do} if do else {})}
        for name, text in typed.items():
            values[self.name_of(name)] = text
        return values

    def name_of(self, end: str) -> str:
        """The whole name of the field whose name ends so; `KeyError` where there is none, or more than one."""
        found = [name for name in self.fields if name == end or name.endswith(f"-{end}")]
        if len(found) != 1:
            raise KeyError(f"{end}: {found or sorted(self.fields)}")
        return found[0]


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.forms: list[Form] = []
        self.open = False
        self.select: tuple[str, list[str], str | None] | None = None
        self.area: str | None = None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {key: value or "" for key, value in attrs}
        name = given.get("name", "")
        if tag == "form":
            self.forms.append(Form(given.get("action", "")))
            self.open = True
        elif not self.open:
            return
        elif tag == "button" and name == "do":
            self.forms[-1].buttons.append(given.get("value", ""))
        elif tag == "input" and name:
            self._input(given, name)
        elif tag == "select":
            self.select = (name, [], None)
        elif tag == "option" and self.select is not None:
            self._option(given)
        elif tag == "textarea":
            self.area = name
            self.forms[-1].fields[name] = ""

    def _input(self, given: dict[str, str], name: str) -> None:
        fields = self.forms[-1].fields
        if given.get("type") in ("checkbox", "radio"):
            if name not in fields:
                fields[name] = []
            if "checked" in given:
                chosen = fields[name]
                fields[name] = [*chosen, given.get("value", "on")] if isinstance(chosen, list) else chosen
        else:
            fields[name] = given.get("value", "")

    def _option(self, given: dict[str, str]) -> None:
        assert self.select is not None
        name, chosen, first = self.select
        value = given.get("value", "")
        self.select = (name, [*chosen, value] if "selected" in given else chosen, value if first is None else first)

    def handle_endtag(self, tag: str) -> None:
        if tag == "form":
            self.open = False
        elif tag == "select" and self.select is not None:
            name, chosen, first = self.select
            self.forms[-1].fields[name] = chosen[-1] if chosen else first or ""
            self.select = None
        elif tag == "textarea":
            self.area = None

    def handle_data(self, data: str) -> None:
        if self.area is not None:
            # The line break right behind the tag is none of the text.
            self.forms[-1].fields[self.area] = data.removeprefix("\n")


def forms_of(answer: Answered) -> list[Form]:
    """The forms of a page, in order."""
    reader = _Reader()
    reader.feed(answer.content.decode())
    return reader.forms


def form_of(answer: Answered, do: str, thing: str | None = None) -> Form:
    """The one form of a page with a button `do`, and (where it is given) about that thing."""
    found = [
        form
        for form in forms_of(answer)
        if do in form.buttons and (thing is None or form.fields.get("thing", "") == thing)
    ]
    assert len(found) == 1, f"{len(found)} forms do {do!r} to {thing!r}"
    return found[0]
