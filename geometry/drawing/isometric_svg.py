"""The isometric picture by itself as SVG, its visible body tinted: what a page shows before, or instead of, a turning model."""

from collections.abc import Iterable, Iterator
from html import escape
from math import cos, pi, sin, sqrt

from geometry.drawing.isometric import isometric_view
from geometry.drawing.isometric_tint import covered
from geometry.drawing.model import Curve, Line, Point
from geometry.outline import Arc, Segment
from geometry.pad import Pad
from geometry.profile import turned_outline

_MARGIN_MM = 2.0
_TURN_STEPS = 120
_ARC_STEPS = 12
_OVER_MM = 3.0
"""How far what is seen through the slot is taken beyond the body, where there is nothing to see."""


def isometric_svg(pad: Pad, *, title: str, description: str, name: str = "isometric") -> str:
    """The picture as an SVG element in model mm; ``name`` keeps its ids apart from those of other pictures on the page.

    Plain attributes are the fallback; a page gives its own colours to the classes ``iso-body``, ``iso-through``, ``iso-edge``.
    """
    view = isometric_view(pad)
    box = view.box
    width, height = box.right - box.left + 2 * _MARGIN_MM, box.top - box.bottom + 2 * _MARGIN_MM
    hulls, through = (body_hulls(pad), seen_through(pad)) if pad.is_plain else (covered(pad), ())
    body = "".join(_path(hull, closed=True) for hull in hulls)
    opening = _path(through, closed=True) if through else ""
    edges = "".join(_path(_stretch(shape), closed=False) for shape in view.shapes if isinstance(shape, Curve | Line))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="isometric" role="img" aria-labelledby="{name}-title {name}-words"'
        f' viewBox="{box.left - _MARGIN_MM:.2f} {-box.top - _MARGIN_MM:.2f} {width:.2f} {height:.2f}">'
        f'<title id="{name}-title">{escape(title)}</title><desc id="{name}-words">{escape(description)}</desc>'
        f'<path class="iso-body" fill="#e9dcc3" d="{body}"/>'
        f'<path class="iso-through" fill="#fbf8f0" d="{opening}"/>'
        f'<path class="iso-edge" fill="none" stroke="#5b3d1e" stroke-width="1.4" stroke-linecap="round"'
        f' stroke-linejoin="round" vector-effect="non-scaling-stroke" d="{edges}"/></svg>'
    )


def body_hulls(pad: Pad) -> Iterator[tuple[Point, ...]]:
    """What covers the paper: stem, seat and body, each turned and convex, as the hulls of their circles."""
    profile = [point for piece in turned_outline(pad) for point in _points(piece)]
    levels = ((-pad.stem_length_mm, 0.0), (0.0, pad.seat_length_mm), (pad.seat_length_mm, pad.top_height_mm))
    widest = (pad.stem_diameter_mm, pad.seat_diameter_mm, pad.body_diameter_mm)
    for (low, high), diameter in zip(levels, widest, strict=True):
        if high > low:
            part = {(r, z) for r, z in profile if low <= z <= high and 2 * r <= diameter}
            yield _hull(point for r, z in part for point in _circle(r, z))


def seen_through(pad: Pad) -> tuple[Point, ...]:
    """Where one looks into the slot's near mouth and out of its far end, past the near wall."""
    half, mouth, top = pad.slot_width_mm / 2, pad.slot_mouth_chamfer_mm, pad.top_height_mm
    reach = half + mouth
    xs = [-reach + 2 * reach * i / _TURN_STEPS for i in range(_TURN_STEPS + 1)]
    # A sight line rises as fast as it crosses the slot: it clears the near wall where it starts this high.
    lower = [(x, max(_floor_at(pad, x), top - (reach - x))) for x in xs]
    far = [_on_paper((x, _end_at(pad, x, z), z)) for x, z in lower]
    beyond = [_on_paper((x, _end_at(pad, x, top) + pad.edge_chamfer_mm + _OVER_MM, top)) for x in reversed(xs)]
    return (*far, *beyond)


def _floor_at(pad: Pad, x: float) -> float:
    """Level of the slot's profile at a distance from its middle."""
    half, corner = pad.slot_width_mm / 2, pad.slot_corner_radius_mm
    if abs(x) >= half:
        return pad.top_height_mm - pad.slot_mouth_chamfer_mm + abs(x) - half
    inside = max(0.0, abs(x) - (half - corner))
    return pad.web_mm + corner - sqrt(max(0.0, corner**2 - inside**2))


def _end_at(pad: Pad, x: float, z: float) -> float:
    """How far along the slot the body reaches at a place of its profile."""
    radius = pad.body_diameter_mm / 2 - max(0.0, pad.edge_chamfer_mm - (pad.top_height_mm - z))
    return sqrt(max(0.0, radius**2 - x**2))


def _on_paper(point: tuple[float, float, float]) -> Point:
    """Seen along (1, −1, 1), as :mod:`geometry.drawing.isometric` sees."""
    x, y, z = point
    return (x + y) / sqrt(2), (2 * z - x + y) / sqrt(6)


def _circle(radius: float, z: float) -> Iterator[Point]:
    for step in range(_TURN_STEPS):
        turn = 2 * pi * step / _TURN_STEPS
        yield _on_paper((radius * cos(turn), radius * sin(turn), z))


def _points(piece: Segment) -> Iterator[Point]:
    """Points along one piece of the turned profile, its end included."""
    if isinstance(piece, Arc):
        (cx, cz), radius = piece.centre, piece.radius_mm
        for step in range(_ARC_STEPS + 1):
            turn = pi / 2 * step / _ARC_STEPS
            # The seat's corner runs from its lowest point outwards and up.
            yield cx + radius * sin(turn), cz - radius * cos(turn)
    else:
        yield piece.start
        yield piece.end


def _hull(points: Iterable[Point]) -> tuple[Point, ...]:
    """The convex hull, anticlockwise (Andrew's monotone chain)."""
    ordered = sorted(set(points))
    return (*_chain(ordered), *_chain(ordered[::-1]))


def _chain(ordered: list[Point]) -> list[Point]:
    chain: list[Point] = []
    for point in ordered:
        while len(chain) > 1 and _turns_right(chain[-2], chain[-1], point):
            chain.pop()
        chain.append(point)
    return chain[:-1]


def _turns_right(a: Point, b: Point, c: Point) -> bool:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) <= 0


def _stretch(shape: Curve | Line) -> tuple[Point, ...]:
    return shape.points if isinstance(shape, Curve) else (shape.start, shape.end)


def _path(points: Iterable[Point], *, closed: bool) -> str:
    """A path through the points, its y turned down."""
    steps = "L".join(f"{x:.2f} {-y:.2f}" for x, y in points)
    return f"M{steps}{'Z' if closed else ''}"
