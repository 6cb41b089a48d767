"""Reads a drawn timeline back: which tasks it links, where their shapes lie, and what is written where."""

import re
from dataclasses import dataclass
from urllib.parse import unquote
from xml.etree import ElementTree

from cookout.drawing.lettering import text_width
from cookout.drawing.style import TEXTS

SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Box:
    """A rectangle on the page, in pixels."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: "Box", slack: float = 0.6) -> bool:
        """Whether both share an area wider and higher than the slack."""
        return (
            min(self.right, other.right) - max(self.left, other.left) > slack
            and min(self.bottom, other.bottom) - max(self.top, other.top) > slack
        )

    def holds(self, other: "Box", slack: float = 0.6) -> bool:
        """Whether the other lies within."""
        return (
            self.left - slack <= other.left
            and self.top - slack <= other.top
            and other.right <= self.right + slack
            and other.bottom <= self.bottom + slack
        )


@dataclass(frozen=True)
class Drawn:
    """One task as drawn."""

    task: str
    address: str
    label: str
    is_sign: bool
    shape: Box
    texts: tuple[Box, ...]


def parse(svg: str) -> ElementTree.Element:
    """The drawing as XML; raises where it is not well formed."""
    return ElementTree.fromstring(svg)


def view_box(root: ElementTree.Element) -> Box:
    """The whole page of the drawing."""
    return Box(*(float(part) for part in root.attrib["viewBox"].split()))


def drawn_tasks(root: ElementTree.Element) -> list[Drawn]:
    """Every task link in the drawing."""
    return [_drawn(link) for link in task_links(root)]


def task_links(root: ElementTree.Element) -> list[ElementTree.Element]:
    """The links to tasks, as elements."""
    return [link for link in root.iter(f"{SVG}a") if link.attrib["href"].startswith("#task-")]


def tasks_in_rows(root: ElementTree.Element) -> list[Drawn]:
    """The task links but for those on the hills of the firings."""
    on_hills = {
        link for group in root.iter(f"{SVG}g") if group.get("class") == "firing" for link in group.iter(f"{SVG}a")
    }
    return [_drawn(link) for link in task_links(root) if link not in on_hills]


def by_class(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    """Every element of a class."""
    return [element for element in root.iter() if element.get("class") == name]


def texts(root: ElementTree.Element) -> list[str]:
    """What is written, in order; titles are not."""
    return [element.text or "" for element in root.iter(f"{SVG}text")]


def all_boxes(root: ElementTree.Element) -> list[Box]:
    """The boxes of all paths, rectangles and texts outside definitions and the key."""
    outside = {
        child
        for group in root.iter()
        if group.tag == f"{SVG}defs" or group.get("class") == "key"
        for child in group.iter()
    }
    shapes = [element for element in root.iter() if element not in outside]
    return [box for element in shapes if (box := _box(element)) is not None]


def _drawn(link: ElementTree.Element) -> Drawn:
    shapes = [box for element in link if element.tag != f"{SVG}text" and (box := _box(element)) is not None]
    return Drawn(
        unquote(link.attrib["href"].removeprefix("#task-")),
        link.attrib["href"],
        link.findtext(f"{SVG}title") or "",
        link.find(f"{SVG}rect") is not None,
        _around(shapes),
        tuple(box for text in link.iter(f"{SVG}text") if (box := _box(text)) is not None),
    )


def _box(element: ElementTree.Element) -> Box | None:
    if element.tag == f"{SVG}text":
        return _text_box(element)
    if element.tag == f"{SVG}rect":
        x, y = float(element.attrib["x"]), float(element.attrib["y"])
        return Box(x, y, x + float(element.attrib["width"]), y + float(element.attrib["height"]))
    if element.tag == f"{SVG}path":
        points = points_of(element.attrib["d"])
        return Box(
            *(min(part) for part in zip(*points, strict=True)), *(max(part) for part in zip(*points, strict=True))
        )
    return None


def points_of(data: str) -> list[tuple[float, float]]:
    """The corners of path data: moves to a place, and steps h, v, l from there."""
    x = y = 0.0
    points = []
    for command, rest in re.findall(r"([Mhvlz])([^Mhvlz]*)", data):
        numbers = [float(number) for number in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", rest)]
        if command == "M":
            x, y = numbers
        elif command == "h":
            x += numbers[0]
        elif command == "v":
            y += numbers[0]
        elif command == "l":
            x, y = x + numbers[0], y + numbers[1]
        points.append((x, y))
    return points


def _text_box(element: ElementTree.Element) -> Box:
    look = TEXTS[element.attrib["class"]]
    width = text_width(element.text or "", look.size, bold=look.bold)
    x, y = float(element.attrib["x"]), float(element.attrib["y"])
    left = x - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[look.anchor]
    return Box(left, y - look.size * 0.75, left + width, y + look.size * 0.2)


def _around(boxes: list[Box]) -> Box:
    return Box(
        min(box.left for box in boxes),
        min(box.top for box in boxes),
        max(box.right for box in boxes),
        max(box.bottom for box in boxes),
    )
