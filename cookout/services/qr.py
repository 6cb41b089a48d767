"""QR codes as SVG, to bring a link from the planner's screen to a helper's phone."""

from io import BytesIO

import segno


def qr_svg(text: str) -> str:
    """A QR code as an `svg` element without inline styles; four modules of quiet ground around it (ISO/IEC 18004)."""
    out = BytesIO()
    segno.make(text, error="m", micro=False).save(
        out, kind="svg", xmldecl=False, svgclass="qr", lineclass=None, border=4, omitsize=True
    )
    return out.getvalue().decode()
