"""A byte-level reading of a calendar that owes nothing to any calendar library.

The libraries that parse calendars pass over line ends, line lengths, bare commas and missing VALUE parameters, so those
are looked at here, by the grammar of RFC 5545 sections 3.1 to 3.6 and RFC 7986 section 5.
"""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import partial

LONGEST_LINE = 75
TEXT_PROPERTIES = frozenset({
    "SUMMARY", "DESCRIPTION", "LOCATION", "CATEGORIES", "NAME", "X-WR-CALNAME", "TZNAME", "TZID", "UID", "COLOR",
    "PRODID", "RELATED-TO",
})  # fmt: skip
LIST_PROPERTIES = frozenset({"CATEGORIES"})
MANY_ALLOWED = frozenset({"RELATED-TO", "CATEGORIES", "RDATE", "TZNAME"})
REQUIRED = {
    "VCALENDAR": ("PRODID", "VERSION"),
    "VEVENT": ("UID", "DTSTAMP", "DTSTART"),
    "VTODO": ("UID", "DTSTAMP"),
    "VALARM": ("ACTION", "TRIGGER", "DESCRIPTION"),
    "VTIMEZONE": ("TZID",),
    "STANDARD": ("DTSTART", "TZOFFSETFROM", "TZOFFSETTO"),
    "DAYLIGHT": ("DTSTART", "TZOFFSETFROM", "TZOFFSETTO"),
}
STATUSES = {
    "VEVENT": {"TENTATIVE", "CONFIRMED", "CANCELLED"},
    "VTODO": {"NEEDS-ACTION", "COMPLETED", "IN-PROCESS", "CANCELLED"},
}
VALUE_NEEDED = {"REFRESH-INTERVAL": "DURATION", "SOURCE": "URI"}
UTC_TIME, LOCAL_TIME = re.compile(r"\d{8}T\d{6}Z"), re.compile(r"\d{8}T\d{6}")
DURATION = re.compile(r"[+-]?P(\d+W|(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+S)?)?)(?<!P)(?<!T)")
OFFSET = re.compile(r"(?!-0000)[+-]\d{4}(\d{2})?")
FORMS = {
    "DTSTAMP": UTC_TIME,
    "LAST-MODIFIED": UTC_TIME,
    "SEQUENCE": re.compile(r"\d+"),
    "TRIGGER": DURATION,
    "REFRESH-INTERVAL": DURATION,
    "X-PUBLISHED-TTL": DURATION,
    "SOURCE": re.compile(r"[a-z]+://[!-~]+"),
    "TZOFFSETFROM": OFFSET,
    "TZOFFSETTO": OFFSET,
    "RDATE": re.compile(r"\d{8}T\d{6}(,\d{8}T\d{6})*"),
    "VERSION": re.compile(r"2\.0"),
    "TRANSP": re.compile(r"OPAQUE|TRANSPARENT"),
    "ACTION": re.compile(r"DISPLAY"),
    "COLOR": re.compile(r"[a-z]+"),
}
CONTENT_LINE = re.compile(r'([A-Za-z0-9-]+)((?:;[A-Za-z0-9-]+=(?:"[^"]*"|[^";:,]*)(?:,(?:"[^"]*"|[^";:,]*))*)*):(.*)')
BAD_ESCAPE = re.compile(r"\\(?![\\;,nN])")
BARE = re.compile(r"(?<!\\)(?:\\\\)*([;,])")


@dataclass
class Property:
    """One content line."""

    name: str
    params: dict[str, str]
    value: str


@dataclass
class Part:
    """A component with its properties and the components in it."""

    name: str
    properties: list[Property] = field(default_factory=list)
    parts: list["Part"] = field(default_factory=list)

    def all(self, name: str) -> list[Property]:
        return [found for found in self.properties if found.name == name]

    def value(self, name: str) -> str:
        """The value of a property that is there just once."""
        (found,) = self.all(name)
        return found.value

    def walk(self) -> Iterator["Part"]:
        yield self
        for part in self.parts:
            yield from part.walk()


def faults(data: bytes) -> list[str]:
    """Everything wrong with a calendar; empty for a good one."""
    found = [*_line_faults(data)]
    root = Part("(file)")
    found += _nest(data, root)
    if [part.name for part in root.parts] != ["VCALENDAR"]:
        return [*found, "the file is not one VCALENDAR"]
    for part in root.parts[0].walk():
        found += _part_faults(part)
    return [*found, *_whole_faults(root.parts[0])]


def read(data: bytes) -> Part:
    """The calendar's parts, with values as written."""
    root = Part("(file)")
    wrong = _nest(data, root)
    assert not wrong, wrong
    return root.parts[0]


def unfold(data: bytes) -> list[str]:
    """Content lines without their folds (RFC 5545 section 3.1)."""
    return data.replace(b"\r\n ", b"").replace(b"\r\n\t", b"").decode().split("\r\n")[:-1]


def unescape(value: str) -> str:
    r"""TEXT without its escapes, read from left to right (RFC 5545 section 3.3.11)."""
    return re.sub(r"\\(.)", lambda found: "\n" if found[1] in "nN" else found[1], value)


def _line_faults(data: bytes) -> Iterator[str]:
    if not data.endswith(b"\r\n"):
        yield "the file does not end with CRLF"
    for number, line in enumerate(data.split(b"\r\n"), start=1):
        if b"\r" in line or b"\n" in line:
            yield f"line {number} holds a bare CR or LF"
        if len(line) > LONGEST_LINE:
            yield f"line {number} has {len(line)} octets"
        if any((octet < 0x20 and octet not in b"\t\r\n") or octet == 0x7F for octet in line):
            yield f"line {number} holds a control character"
        try:
            line.decode()
        except UnicodeDecodeError:
            yield f"line {number} is cut within a character"


def _nest(data: bytes, root: Part) -> list[str]:
    wrong, open_parts = [], [root]
    for line in unfold(data):
        match = CONTENT_LINE.fullmatch(line)
        if match is None:
            wrong.append(f"no content line: {line!r}")
            continue
        name, params, value = match[1].upper(), _params(match[2]), match[3]
        if name == "BEGIN":
            part = Part(value)
            open_parts[-1].parts.append(part)
            open_parts.append(part)
        elif name == "END":
            if len(open_parts) == 1 or open_parts.pop().name != value:
                wrong.append(f"END:{value} closes nothing")
                break
        else:
            open_parts[-1].properties.append(Property(name, params, value))
    return wrong if len(open_parts) == 1 else [*wrong, f"{open_parts[-1].name} is never closed"]


def _params(text: str) -> dict[str, str]:
    pairs = re.findall(r';([A-Za-z0-9-]+)=("[^"]*"|[^";:,]*)', text)
    return {name.upper(): value.strip('"') for name, value in pairs}


def _part_faults(part: Part) -> Iterator[str]:
    say = partial("{}: {}".format, part.name)
    counts = Counter(found.name for found in part.properties)
    yield from (say(f"{name} is missing") for name in REQUIRED.get(part.name, ()) if not counts[name])
    yield from (say(f"{name} comes {n} times") for name, n in counts.items() if n > 1 and name not in MANY_ALLOWED)
    for found in part.properties:
        yield from map(say, _value_faults(found))
    for status in part.all("STATUS"):
        if status.value not in STATUSES.get(part.name, ()):
            yield say(f"STATUS:{status.value} is not allowed")
    ends = [*part.all("DTEND"), *part.all("DUE")]
    if ends and part.all("DTSTART") and _order(part.all("DTSTART")[0], ends[0]) != "rising":
        yield say(f"{ends[0].name} is not later than DTSTART or of another form")
    if part.name == "VTIMEZONE" and not part.parts:
        yield say("no STANDARD or DAYLIGHT in it")


def _order(start: Property, end: Property) -> str:
    if start.params != end.params or start.value.endswith("Z") != end.value.endswith("Z"):
        return "unlike"
    return "rising" if start.value < end.value else "not rising"


def _value_faults(found: Property) -> Iterator[str]:
    if found.name in TEXT_PROPERTIES:
        yield from _text_faults(found)
    form = FORMS.get(found.name)
    if form is not None and not form.fullmatch(found.value):
        yield f"{found.name} has the value {found.value!r}"
    needed = VALUE_NEEDED.get(found.name)
    if needed and found.params.get("VALUE") != needed:
        yield f"{found.name} lacks VALUE={needed}"
    if found.name in {"DTSTART", "DTEND", "DUE"}:
        is_utc, is_local = UTC_TIME.fullmatch(found.value), LOCAL_TIME.fullmatch(found.value)
        if not (is_utc or is_local) or (is_utc and "TZID" in found.params):
            yield f"{found.name} has the value {found.value!r} with {found.params}"


def _text_faults(found: Property) -> Iterator[str]:
    if BAD_ESCAPE.search(found.value.replace("\\\\", "")):
        yield f"{found.name} has an escape that does not exist"
    bare = {match[1] for match in BARE.finditer(found.value)}
    if bare - ({","} if found.name in LIST_PROPERTIES else set()):
        yield f"{found.name} has a bare comma or semicolon"


def _whole_faults(calendar: Part) -> Iterator[str]:
    uids = Counter(found.value for part in calendar.walk() for found in part.all("UID"))
    yield from (f"UID {uid} comes {n} times" for uid, n in uids.items() if n > 1)
    if not calendar.parts:
        yield "VCALENDAR has no component"
    zones = {part.value("TZID") for part in calendar.parts if part.name == "VTIMEZONE" and part.all("TZID")}
    named = {found.params["TZID"] for part in calendar.walk() for found in part.properties if "TZID" in found.params}
    yield from (f"TZID {zone} has no VTIMEZONE" for zone in sorted(named - zones))
    for part in calendar.parts:
        for found in part.all("DTSTART"):
            if "TZID" not in found.params and not found.value.endswith("Z"):
                yield f"{part.name}: DTSTART floats, with neither TZID nor UTC"
