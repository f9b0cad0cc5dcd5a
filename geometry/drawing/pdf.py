"""The drawing as a PDF page: its lines as a picture, all its words as real text in the shipped font."""

import json
from datetime import date
from pathlib import Path
from typing import Literal
from unicodedata import bidirectional

import typst

from geometry.drawing.lettering import CAP_HEIGHT_PER_EM, FONT_DIRECTORY, FONT_FAMILY, in_shipped_font
from geometry.drawing.model import Drawing, Text
from geometry.drawing.svg import all_texts, to_svg

_FROM_RIGHT = frozenset({"R", "AL"})
_TEMPLATE = Path(__file__).parent / "sheet.typ"


def to_pdf(drawing: Drawing) -> bytes:
    """One page in true size; searchable, fonts embedded, the same bytes for the same drawing."""
    return _compiled(drawing, "pdf")


def to_png(drawing: Drawing, *, dots_per_inch: float = 144) -> bytes:
    """The same page as a picture."""
    return _compiled(drawing, "png", ppi=dots_per_inch)


def _compiled(drawing: Drawing, form: Literal["pdf", "png"], *, ppi: float | None = None) -> bytes:
    """Data go in as JSON, never as source text; no font of the machine is looked at."""
    day = date.fromisoformat(drawing.facts.date)
    data = {
        "title": f"{drawing.facts.title}, part drawing {drawing.facts.design_id}",
        "author": drawing.facts.creator,
        "date": [day.year, day.month, day.day],
        "width": drawing.width_mm,
        "height": drawing.height_mm,
        "font": FONT_FAMILY,
        "picture": to_svg(drawing, lettering=False),
        "texts": [placed_text(text, drawing.height_mm) for text in all_texts(drawing)],
    }
    return typst.compile(
        _TEMPLATE,
        format=form,
        ppi=ppi,
        pdf_standards="ua-1" if form == "pdf" else None,
        sys_inputs={"sheet": json.dumps(data)},
        font_paths=[FONT_DIRECTORY],
        ignore_system_fonts=True,
    )


def placed_text(text: Text, page_height_mm: float) -> dict[str, object]:
    """A text with its place on a page whose y runs down, as the typesetter's templates take it."""
    x, y = text.start
    return {
        "x": round(x, 4),
        "y": round(page_height_mm - y, 4),
        "size": round(text.height_mm / CAP_HEIGHT_PER_EM, 4),
        "turned": text.turned,
        # The typesetter breaks down on words from right to left without kerning; all else is set as wide as it was measured.
        "kerning": any(bidirectional(character) in _FROM_RIGHT for character in text.words),
        "words": in_shipped_font(text.words),
    }
