"""Pictures of a saved design for others to see first: a preview of 1200 × 630, and a code for a camera."""

from dataclasses import replace
from datetime import date
from typing import Any

import segno
from markupsafe import Markup

from geometry.drawing.measures import measures
from geometry.drawing.table import words_of
from server.deciding import deciding_as_kept
from server.store.designs import Revision
from server.working_out import facts_of, pad_of

WIDTH, HEIGHT = 1200, 630
_LONGEST_TITLE = 60


def preview_data(revision: Revision) -> dict[str, Any]:
    """What stands beside the pad on the picture that chat programs show under a link: the sizes that decide."""
    facts = facts_of(revision)
    pad = pad_of(revision.design)
    found = measures(pad, replace(facts, critical=()))
    sizes = deciding_as_kept(revision.design, pad)
    day = date.fromisoformat(facts.date)
    return {
        "width": WIDTH,
        "height": HEIGHT,
        "title": (revision.design["title"] or "Lifting pad")[:_LONGEST_TITLE],
        "line": f"Lifting pad, revision {revision.letters}, {facts.material}",
        "verdict": revision.design["verdict"],
        "sizes": [[words_of(name, found).partition(":")[0], found[name].words] for name, _ in sizes],
        "date": [day.year, day.month, day.day],
    }


def code_picture(address: str) -> Markup:
    """An address as a square code (ISO/IEC 18004), in attributes alone: the content policy refuses styles."""
    code = segno.make_qr(address, error="m")
    picture = code.svg_inline(border=4, dark="#000", light="#fff", svgclass=None, lineclass=None, omitsize=True)
    return Markup(picture)  # noqa: S704  made of numbers by the library; the address is in its squares, not in its text
