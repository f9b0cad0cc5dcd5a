"""A small picture of lines, arcs and curves in model mm, for a sheet of paper."""

from collections.abc import Sequence
from html import escape
from math import cos, radians, sin

from geometry.drawing.lettering import FONT_FAMILY, text_width_mm
from geometry.drawing.model import Arc, Curve, Layer, Line, Point, Shape, View

_WIDEST_MM, _HIGHEST_MM = 90.0, 60.0
_LETTER_MM = 2.0
_MARGIN_MM = 4.0
_FONT_PER_CAP = 1.372


def shapes_svg(view: View, labels: Sequence[tuple[Point, str]]) -> tuple[str, float]:
    """The picture, and how wide it is to be printed; letters and lines are the same size in every picture."""
    box = view.box
    scale = min(_WIDEST_MM / max(box.width, 1e-6), _HIGHEST_MM / max(box.height, 1e-6))
    right = max([box.right * scale, *(x * scale + text_width_mm(words, _LETTER_MM) for (x, _), words in labels)])
    left, bottom, top = box.left * scale, box.bottom * scale, box.top * scale
    lows = [y * scale - _LETTER_MM for (_, y), _ in labels]
    highs = [y * scale + _LETTER_MM for (_, y), _ in labels]
    bottom, top = min([bottom, *lows]) - _MARGIN_MM, max([top, *highs]) + _MARGIN_MM
    left, right = left - _MARGIN_MM, right + _MARGIN_MM
    lines = "".join(_drawn(shape, scale) for shape in view.shapes)
    words = "".join(
        f'<text x="{x * scale:.2f}" y="{-y * scale:.2f}" font-family="{FONT_FAMILY}"'
        f' font-size="{_LETTER_MM * _FONT_PER_CAP:.2f}">{escape(said)}</text>'
        for (x, y), said in labels
    )
    width, height = right - left, top - bottom
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{left:.2f} {-top:.2f} {width:.2f} {height:.2f}"'
        f' width="{width:.2f}mm" height="{height:.2f}mm">{lines}{words}</svg>',
        width,
    )


def _drawn(shape: Shape, scale: float) -> str:
    match shape:
        case Line(start, end, layer):
            points: Sequence[Point] = (start, end)
        case Curve(points, layer):
            pass
        case Arc(centre, radius, start_deg, end_deg, layer):
            steps = max(2, round((end_deg - start_deg) / 3))
            turns = [radians(start_deg + (end_deg - start_deg) * i / steps) for i in range(steps + 1)]
            points = [(centre[0] + radius * cos(t), centre[1] + radius * sin(t)) for t in turns]
        case _:
            return ""
    d = "L".join(f"{x * scale:.3f} {-y * scale:.3f}" for x, y in points)
    thick = layer in {Layer.VISIBLE, Layer.CUT}
    dashes = {Layer.HIDDEN: ' stroke-dasharray="3 0.75"', Layer.CENTRE: ' stroke-dasharray="6 0.75 0.15 0.75"'}
    width = 0.5 if thick else 0.25
    return f'<path d="M{d}" fill="none" stroke="#000" stroke-width="{width}"{dashes.get(layer, "")}/>'
