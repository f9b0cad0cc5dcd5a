"""Everything that is drawn or set for paper, by name: the work of the drawing processes, and of no other.

What this room imports takes more memory than all the rest of the web, and the typesetter keeps up to a gigabyte of what it
has set: the web itself never loads it.
"""

import json
import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import typst

from geometry.design import Design, design_pad
from geometry.drawing.dxf import to_dxf
from geometry.drawing.facts import SheetFacts
from geometry.drawing.isometric_svg import isometric_svg
from geometry.drawing.lettering import FONT_DIRECTORY, FONT_FAMILY
from geometry.drawing.pdf import to_pdf, to_png
from geometry.drawing.sheet import draw
from geometry.drawing.svg import to_svg
from geometry.drawing.table import dimension_table
from geometry.measurements import Measurements
from geometry.packet import card_pdf, gauge_dxf, gauge_pdf, gauge_svg, packet_pdf
from geometry.pad import Pad
from geometry.standing import PartStanding
from server.drawn import DrawnSheet

_PNG_DOTS_PER_INCH = 200
_PREVIEW = Path(__file__).parent / "preview.typ"
_DOTS_PER_POINT_PPI = 72
"""At 72 dots per inch a point is a dot."""
_LINE, _THIN = re.compile(r'stroke-width="[^"]*"'), 'stroke-width="0.35"'
"""Lines keep their width on a page whatever its scale; a picture of its own has to name it in its own millimetres."""
_SHEETS: Mapping[str, Callable[[Design, SheetFacts], bytes | str]] = {
    "packet.pdf": packet_pdf,
    "card.pdf": card_pdf,
    "gauge.pdf": gauge_pdf,
    "gauge.svg": gauge_svg,
    "gauge.dxf": gauge_dxf,
}
_MARKED: Mapping[str, Callable[..., bytes]] = {"packet.pdf": packet_pdf, "card.pdf": card_pdf}
"""The sheets that carry the mark of a part that failed."""


def _drawings(pad: Pad, facts: SheetFacts, endings: tuple[str, ...]) -> dict[str, bytes]:
    """The drawing in several formats, laid out once."""
    drawing = draw(pad, facts)
    write: dict[str, Callable[[], bytes | str]] = {
        "svg": lambda: to_svg(drawing),
        "dxf": lambda: to_dxf(drawing),
        "pdf": lambda: to_pdf(drawing),
        "png": lambda: to_png(drawing, dots_per_inch=_PNG_DOTS_PER_INCH),
    }
    return {ending: _bytes(write[ending]()) for ending in endings}


def _drawn(pad: Pad, facts: SheetFacts) -> DrawnSheet:
    drawing = draw(pad, facts)
    return DrawnSheet(to_svg(drawing), drawing.scale.words, dimension_table(drawing))


def _sheet(name: str, measurements: Measurements, facts: SheetFacts, failed: PartStanding | None) -> bytes:
    """One sheet of a design, which is worked out anew: its rules are functions, and do not travel."""
    design = design_pad(measurements)
    return _MARKED[name](design, facts, failed=failed) if failed else _bytes(_SHEETS[name](design, facts))


def _preview(pad: Pad, data: dict[str, Any]) -> bytes:
    """A picture of dots of the preview's template; nothing of ``data`` is ever read as source."""
    picture = _LINE.sub(_THIN, isometric_svg(pad, title="", description=""))
    whole = data | {"font": FONT_FAMILY, "picture": picture}
    return typst.compile(
        _PREVIEW,
        format="png",
        ppi=_DOTS_PER_POINT_PPI,
        sys_inputs={"sheet": json.dumps(whole)},
        font_paths=[FONT_DIRECTORY],
        ignore_system_fonts=True,
    )


def _isometric(pad: Pad, title: str, description: str) -> str:
    return isometric_svg(pad, title=title, description=description)


def _bytes(content: bytes | str) -> bytes:
    return content if isinstance(content, bytes) else content.encode("utf-8")


WORK: Mapping[str, Callable[..., Any]] = {
    "drawings": _drawings,
    "drawn": _drawn,
    "sheet": _sheet,
    "preview": _preview,
    "isometric": _isometric,
}
"""Every kind of work by the name that crosses the line."""
