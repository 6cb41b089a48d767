"""The QR code of a link."""

import re

import pytest
from playwright.sync_api import Browser

from cookout.services.qr import qr_svg

ADDRESS = "https://cookout.example/h/cdlXpLWGwKV4xVmgWlB_FUNDVSMj6UOCwgvbOnKiy5U/"

# The finder pattern that stands in three corners of every QR code (ISO/IEC 18004, 6.3.3; from memory): dark, light,
# dark, light, dark in the ratio 1:1:3:1:1 along its middle row.
FINDER = [1, 0, 1, 1, 1, 0, 1]


def test_the_code_needs_no_style_of_its_own() -> None:
    svg = qr_svg(ADDRESS)
    assert svg.startswith("<svg")
    assert "style" not in svg
    assert re.search(r"viewBox=\"0 0 (\d+) \1\"", svg)


@pytest.mark.browser
def test_the_code_is_drawn_with_its_finders_and_quiet_ground(browser: Browser) -> None:
    svg = qr_svg(ADDRESS)
    found = re.search(r"viewBox=\"0 0 (\d+) ", svg)
    assert found is not None
    modules = int(found.group(1))
    page = browser.new_page(viewport={"width": modules * 4, "height": modules * 4})
    page.set_content(f"<body style='margin:0;background:#fff'><div style='width:{modules * 4}px'>{svg}</div>")
    dark = page.evaluate(
        """async ([picture, modules]) => {
            const image = new Image();
            image.src = "data:image/svg+xml," + encodeURIComponent(picture);
            await image.decode();
            const canvas = document.createElement("canvas");
            canvas.width = canvas.height = modules;
            const pen = canvas.getContext("2d");
            pen.fillStyle = "#fff";
            pen.fillRect(0, 0, modules, modules);
            pen.drawImage(image, 0, 0, modules, modules);
            const rows = [];
            for (let y = 0; y < modules; y++)
                rows.push(Array.from({length: modules}, (_, x) => pen.getImageData(x, y, 1, 1).data[0] < 128 ? 1 : 0));
            return rows;
        }""",
        [svg, modules],
    )
    page.close()
    end = modules - 4
    assert dark[7][4:11] == FINDER
    assert dark[7][end - 7 : end] == FINDER
    assert dark[end - 4][4:11] == FINDER
    quiet = [*dark[:4], *dark[-4:], *(row[:4] for row in dark), *(row[-4:] for row in dark)]
    assert not any(any(row) for row in quiet)
