"""The drawing as a PDF page: its lines as a picture, all its words as real text in the shipped font."""

import json
from datetime import date
from pathlib import Path
from typing import Literal

import typst

from geometry.drawing.lettering import CAP_HEIGHT_PER_EM, FONT_DIRECTORY, FONT_FAMILY, in_shipped_font
from geometry.drawing.model import Drawing, Text
from geometry.drawing.svg import all_texts, to_svg

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
        "texts": [_placed(text, drawing) for text in all_texts(drawing)],
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


def _placed(text: Text, drawing: Drawing) -> dict[str, object]:
    """A text on the page: the sheet's y runs up, the page's down."""
    x, y = text.start
    return {
        "x": round(x, 4),
        "y": round(drawing.height_mm - y, 4),
        "size": round(text.height_mm / CAP_HEIGHT_PER_EM, 4),
        "turned": text.turned,
        "words": in_shipped_font(text.words),
    }
