"""The pictures of a route card as SVG: its shapes in true scale, its labels in a column beside them, each led to its place."""

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape
from itertools import pairwise
from math import cos, hypot, radians, sin

from markupsafe import Markup

from geometry.drawing.lettering import text_width_mm
from geometry.drawing.model import Arc, Box, Curve, Layer, Line, Point, Shape
from geometry.making.card import Label, Picture
from geometry.making.wording import Units

TEXT, LINE, MARGIN, GAP = 13.0, 19.0, 14.0, 14.0
"""Lettering, distance of two labels, border, and shape to label, in page units."""
WIDEST, TALLEST, CLOSEST = 230.0, 300.0, 1400.0
"""Room for the shapes; where labels stand closer than a line, the picture grows, but not beyond the last."""
_CAP_SHARE = 0.72
"""Height of capitals over the size of lettering."""
_LOOKS = {
    Layer.VISIBLE: ("shop-thick", "#1d262d", "2"),
    Layer.CENTRE: ("shop-centre", "#8a4b2a", "0.9"),
}
_OTHER = ("shop-thin", "#55636d", "0.9")
_NEAR = 3.0
"""A label this near to where it belongs needs no leader."""


@dataclass(frozen=True, slots=True)
class Placed:
    """One label with its place on the page."""

    words: str
    target: Point
    at: Point
    """Where its words begin, on their baseline."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Model mm to page units, y down."""

    scale: float
    left: float
    top: float

    def at(self, point: Point) -> Point:
        """A point of the model on the page."""
        return MARGIN + (point[0] - self.left) * self.scale, MARGIN + (self.top - point[1]) * self.scale


def picture_svg(picture: Picture, *, title: str, prefix: str, units: Units) -> Markup:
    """A picture that needs no style sheet; its title says what it shows."""
    box = picture.view.box
    frame = Frame(_scale(box, picture.labels), box.left, box.top)
    placed = place_labels(picture.labels, frame, units)
    right = max([frame.at((box.right, 0))[0], *(p.at[0] + words_width(p.words) for p in placed)])
    bottom = max([frame.at((0, box.bottom))[1], *(p.at[1] + LINE / 2 for p in placed)])
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="shop-picture" viewBox="0 0 {_n(right + MARGIN)} {_n(bottom + MARGIN)}"'
        f' width="{_n(right + MARGIN)}" height="{_n(bottom + MARGIN)}" role="img" aria-labelledby="{prefix}-title"'
        f' font-family="sans-serif" font-size="{_n(TEXT)}">',
        f'<title id="{prefix}-title">{escape(title)}</title>',
        *(_shape(shape, frame) for shape in picture.view.shapes),
        *(_label(p) for p in placed),
        "</svg>",
    ]
    return Markup("".join(parts))  # noqa: S704 - drawn by our own code, which escapes


def words_width(words: str) -> float:
    """Length of a label on the page."""
    return text_width_mm(words, TEXT * _CAP_SHARE)


def place_labels(labels: tuple[Label, ...], frame: Frame, units: Units) -> tuple[Placed, ...]:
    """The labels in one column right of all they point at, in the order of their heights, a line apart at least."""
    if not labels:
        return ()
    targets = sorted(((frame.at(label.at), label.words.shown(units)) for label in labels), key=lambda t: t[0][1])
    column = max(x for (x, _), _ in targets) + GAP
    levels = _apart([y for (_, y), _ in targets])
    return tuple(Placed(words, target, (column, level)) for (target, words), level in zip(targets, levels, strict=True))


def _apart(wanted: list[float]) -> list[float]:
    """Levels near the wanted ones, in their order and a line apart, none above the border."""
    groups = [[y, 1] for y in wanted]
    merged: list[list[float]] = []
    for middle, count in groups:
        merged.append([middle, count])
        while len(merged) > 1 and _foot(merged[-2]) + LINE > _head(merged[-1]):
            (m1, n1), (m2, n2) = merged[-2:]
            merged[-2:] = [[(m1 * n1 + m2 * n2) / (n1 + n2), n1 + n2]]
    levels = [_head(group) + LINE * k for group in merged for k in range(int(group[1]))]
    drop = max(0.0, MARGIN + TEXT - min(levels))
    return [level + drop for level in levels]


def _head(group: list[float]) -> float:
    return group[0] - LINE * (group[1] - 1) / 2


def _foot(group: list[float]) -> float:
    return group[0] + LINE * (group[1] - 1) / 2


def _scale(box: Box, labels: Iterable[Label]) -> float:
    """As large as the room allows; larger in height where rows of labels would else stand too close."""
    heights = sorted(label.at[1] for label in labels)
    steps = [b - a for a, b in pairwise(heights) if b - a > 1e-6]
    fits = min(WIDEST / box.width, TALLEST / box.height)
    wide = min(WIDEST / box.width, CLOSEST / box.height)
    return max(fits, min(wide, LINE / min(steps))) if steps else fits


def _shape(shape: Shape, frame: Frame) -> str:
    match shape:
        case Line(start, end, layer):
            return _path((start, end), layer, frame)
        case Arc(centre, radius, start_deg, end_deg, layer):
            ends = [
                (centre[0] + radius * cos(radians(a)), centre[1] + radius * sin(radians(a)))
                for a in (start_deg, end_deg)
            ]
            r, (a, b) = _n(radius * frame.scale), (frame.at(end) for end in ends)
            return _drawn(f"M{_pair(a)}A{r} {r} 0 {int(end_deg - start_deg > 180)} 0 {_pair(b)}", layer)
        case Curve(points, layer):
            return _path(points, layer, frame)
    raise TypeError(f"no way to draw {type(shape).__name__} in a picture of the card")


def _path(points: Iterable[Point], layer: Layer, frame: Frame) -> str:
    return _drawn("M" + "L".join(_pair(frame.at(point)) for point in points), layer)


def _drawn(d: str, layer: Layer) -> str:
    name, colour, width = _LOOKS.get(layer, _OTHER)
    dashes = ' stroke-dasharray="14 3 2 3"' if layer == Layer.CENTRE else ""
    return f'<path class="{name}" d="{d}" fill="none" stroke="{colour}" stroke-width="{width}"{dashes}/>'


def _label(placed: Placed) -> str:
    (x, y), (tx, ty) = placed.at, placed.target
    words = f'<text class="shop-words" x="{_n(x)}" y="{_n(y)}" fill="#1d262d">{escape(placed.words)}</text>'
    if hypot(x - GAP - tx, y - ty) <= _NEAR:
        return words
    d = f"M{_pair((tx, ty))}L{_pair((x - 4, y - TEXT * _CAP_SHARE / 2))}"
    return f'<path class="shop-leader" d="{d}" fill="none" stroke="#55636d" stroke-width="0.7"/>{words}'


def _pair(point: Point) -> str:
    return f"{_n(point[0])} {_n(point[1])}"


def _n(value: float) -> str:
    """A coordinate, no finer than a hundredth of a page unit."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
