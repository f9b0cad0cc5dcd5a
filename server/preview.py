"""Pictures of a saved design for others to see first: a preview of 1200 × 630, and a code for a camera."""

import json
import re
from dataclasses import replace
from datetime import date
from pathlib import Path

import segno
import typst
from markupsafe import Markup

from geometry.drawing.isometric_svg import isometric_svg
from geometry.drawing.lettering import FONT_DIRECTORY, FONT_FAMILY
from geometry.drawing.measures import measures
from geometry.drawing.table import WORDS
from server.saved_views import FIVE
from server.store.designs import Revision
from server.working_out import facts_of, pad_of

WIDTH, HEIGHT = 1200, 630
_TEMPLATE = Path(__file__).parent / "preview.typ"
_DOTS_PER_POINT_PPI = 72
"""At 72 dots per inch a point is a dot."""
_LONGEST_TITLE = 60
_LINE, _THIN = re.compile(r'stroke-width="[^"]*"'), 'stroke-width="0.35"'
"""Lines keep their width on a page whatever its scale; a picture of its own has to name it in its own millimetres."""


def preview_png(revision: Revision) -> bytes:
    """The pad beside the sizes that decide, as chat programs show it under a link."""
    facts = facts_of(revision)
    found = measures(pad_of(revision.design), replace(facts, critical=()))
    day = date.fromisoformat(facts.date)
    data = {
        "width": WIDTH,
        "height": HEIGHT,
        "font": FONT_FAMILY,
        "title": (revision.design["title"] or "Lifting pad")[:_LONGEST_TITLE],
        "line": f"Lifting pad, revision {revision.letters}, {facts.material}",
        "verdict": revision.design["verdict"],
        "sizes": [[WORDS[name].partition(":")[0], found[name].words] for name in FIVE],
        "picture": _LINE.sub(_THIN, isometric_svg(pad_of(revision.design), title="", description="")),
        "date": [day.year, day.month, day.day],
    }
    return typst.compile(
        _TEMPLATE,
        format="png",
        ppi=_DOTS_PER_POINT_PPI,
        sys_inputs={"sheet": json.dumps(data)},
        font_paths=[FONT_DIRECTORY],
        ignore_system_fonts=True,
    )


def code_picture(address: str) -> Markup:
    """An address as a square code (ISO/IEC 18004), in attributes alone: the content policy refuses styles."""
    code = segno.make_qr(address, error="m")
    picture = code.svg_inline(border=4, dark="#000", light="#fff", svgclass=None, lineclass=None, omitsize=True)
    return Markup(picture)  # noqa: S704  made of numbers by the library; the address is in its squares, not in its text
