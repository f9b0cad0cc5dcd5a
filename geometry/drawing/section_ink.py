"""Ink and paper of the section: the look of each class where no style sheet says otherwise, and how numbers are written."""

from collections.abc import Mapping
from functools import lru_cache

from geometry.outline import Point

INK, PENCIL, CHALK = "#1d262d", "#5d6b75", "#fffdf7"
NYLON, NYLON_EDGE, STEEL, SHEET, CENTRE = "#e9dcc3", "#5b3d1e", "#dfe5e8", "#8fa1ad", "#8a4b2a"
THICK, THIN = "1.8", "0.7"
"""Visible edges and everything thin, in page units: the ratio 0.7 to 0.25 of a drawing."""
_LOOKS: Mapping[str, Mapping[str, str]] = {
    "car": {"fill": SHEET, "fill-opacity": "0.14"},
    "cut-steel": {"fill": STEEL},
    "hatch": {"stroke": PENCIL, "stroke-width": THIN},
    "cup-edge": {"fill": "none", "stroke": INK, "stroke-width": THICK},
    "hole-edge": {"fill": "none", "stroke": INK, "stroke-width": THIN},
    "jack": {"fill": "none", "stroke": PENCIL, "stroke-width": THIN},
    "lowered": {"fill": "none", "stroke": PENCIL, "stroke-width": THIN, "stroke-dasharray": "14 3 2 3 2 3"},
    "pad": {"fill": NYLON, "stroke": NYLON_EDGE, "stroke-width": THICK, "stroke-linejoin": "round"},
    "paint": {"fill": CHALK, "stroke": PENCIL, "stroke-width": "0.5"},
    "ground": {"fill": "none", "stroke": INK, "stroke-width": "2.4"},
    "centre": {"fill": "none", "stroke": CENTRE, "stroke-width": THIN, "stroke-dasharray": "18 3 2 3"},
    "break": {"fill": "none", "stroke": PENCIL, "stroke-width": THIN},
    "leader": {"fill": "none", "stroke": PENCIL, "stroke-width": THIN},
    "dot": {"fill": INK},
    "dimension": {"fill": "none", "stroke": INK, "stroke-width": "1.2"},
    "extension": {"fill": "none", "stroke": PENCIL, "stroke-width": THIN},
    "arrow": {"fill": INK},
    "trouble-hatch": {"stroke": INK, "stroke-width": "1.1"},
    "trouble-line": {"fill": "none", "stroke": INK, "stroke-width": "1.6"},
    "trouble-mark": {"fill": INK},
    "balloon-ring": {"fill": CHALK, "stroke": INK, "stroke-width": "1.2"},
}


@lru_cache(maxsize=16384)
def number(value: float) -> str:
    """A coordinate, no finer than a hundredth of a page unit; while one size is typed, most of the picture stays."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


@lru_cache(maxsize=256)
def attributes(look: str, **more: str) -> str:
    """Class and plain attributes of an element; ``more`` adds to its look or changes it."""
    given = {**_LOOKS[look], **{name.replace("_", "-"): value for name, value in more.items()}}
    return f'class="{look}"' + "".join(f' {name}="{value}"' for name, value in given.items())


@lru_cache(maxsize=16384)
def pair(point: Point) -> str:
    """A point as two coordinates; kept like the coordinates."""
    return f"{number(point[0])} {number(point[1])}"


def tip(at: Point, away: Point) -> str:
    """A closed arrow that touches ``at``, coming from ``away``."""
    dx, dy = away[0] - at[0], away[1] - at[1]
    length = (dx * dx + dy * dy) ** 0.5
    if length < 1e-6:
        return ""
    ux, uy = dx / length, dy / length
    size = min(9.0, max(3.0, length / 2))
    left = (at[0] + size * ux - size / 3 * uy, at[1] + size * uy + size / 3 * ux)
    right = (at[0] + size * ux + size / 3 * uy, at[1] + size * uy - size / 3 * ux)
    return f'<path d="M{pair(at)}L{pair(left)}L{pair(right)}Z" {attributes("arrow")}/>'
