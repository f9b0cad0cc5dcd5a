"""The laid-out section as SVG: classes named for their meaning, plain attributes as fallback, no style anywhere."""

from collections.abc import Iterable, Mapping
from html import escape

from geometry.drawing.section_balloons import balloon, notes, sides, trouble
from geometry.drawing.section_ink import INK, SHEET, THIN, attributes, number, pair, tip
from geometry.drawing.section_page import TEXT, Box, Frame, Page, Placed
from geometry.drawing.section_shape import Shape
from geometry.drawing.section_spans import Span
from geometry.outline import Arc
from geometry.units import LengthUnit


def svg_of(
    page: Page,
    shapes: Iterable[Shape],
    *,
    title: str,
    description: str,
    units: LengthUnit,
    typed: Mapping[str, str],
    lit: str | None,
    lit_span: Span | None,
    prefix: str,
) -> str:
    """The picture; its title and description tell the same in words."""
    figure = "".join(_shape(shape, page.frame, prefix) for shape in shapes)
    cut = f' clip-path="url(#{prefix}-window)"' if page.window else ""
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="section{" narrow" if page.is_narrow else ""}"'
        f' viewBox="0 0 {number(page.width)} {number(page.height)}" role="group" aria-labelledby="{prefix}-title"'
        f' font-family="sans-serif" font-size="{number(TEXT)}">',
        f'<title id="{prefix}-title">{escape(title)}</title>',
        f"<defs>{_patterns(prefix)}{_window(page.window, prefix)}</defs>",
        f'<g class="figure"{cut} role="img" aria-labelledby="{prefix}-description">'
        f'<desc id="{prefix}-description">{escape(description)}</desc>',
        figure,
        "" if page.window else sides(page),
        "".join(_band(p, page.frame, prefix) for p in page.placed),
        dimension_line(lit_span, page.frame) if lit_span else "",
        "</g>",
        "".join(balloon(p, p.pointer, units, typed, is_lit=p.pointer.field == lit) for p in page.placed if p.pointer),
        "".join(trouble(p) for p in page.placed if p.spot),
        notes(page),
        "</svg>",
    ]
    return "".join(parts)


def _path(shape: Shape, frame: Frame) -> str:
    pieces = shape.outline
    if not pieces:
        return ""
    d = [f"M{pair(frame.at(pieces[0].start))}"]
    for piece in pieces:
        end = pair(frame.at(piece.end))
        if isinstance(piece, Arc):
            radius = number(frame.scale * piece.radius_mm)
            d.append(f"A{radius} {radius} 0 0 {_sweep(piece)} {end}")
        else:
            d.append(f"L{end}")
    return "".join(d) + ("Z" if shape.is_closed else "")


def _sweep(arc: Arc) -> int:
    """1 where the arc runs clockwise on the page, that is clockwise with y up, too."""
    (ax, ay), (bx, by), (cx, cy) = arc.start, arc.end, arc.centre
    return 1 if (ax - cx) * (by - cy) - (ay - cy) * (bx - cx) < 0 else 0


def _patterns(prefix: str) -> str:
    """Hatching at 45°, and the crossed hatching of trouble."""
    hatch = f'<path d="M0 0V8" {attributes("hatch")}/>'
    cross = f'<path d="M0 0V5M0 0H5" {attributes("trouble-hatch")}/>'
    return (
        f'<pattern id="{prefix}-hatch" width="8" height="8" patternUnits="userSpaceOnUse"'
        f' patternTransform="rotate(45)">{hatch}</pattern>'
        f'<pattern id="{prefix}-cross" width="5" height="5" patternUnits="userSpaceOnUse"'
        f' patternTransform="rotate(45)">{cross}</pattern>'
    )


def _window(box: Box | None, prefix: str) -> str:
    """The window through which a detail is seen."""
    if box is None:
        return ""
    size = f'width="{number(box.right - box.left)}" height="{number(box.bottom - box.top)}"'
    return f'<clipPath id="{prefix}-window"><rect x="{number(box.left)}" y="{number(box.top)}" {size}/></clipPath>'


def _shape(shape: Shape, frame: Frame, prefix: str) -> str:
    d = _path(shape, frame)
    if not d:
        return ""
    if shape.width_mm:
        return _sheet(shape, d, frame.scale * shape.width_mm)
    ghost = {"stroke_dasharray": "5 4", "opacity": "0.55"} if shape.is_ghost else {}
    if shape.kind == "pad" and shape.is_ghost:
        ghost = {"stroke_dasharray": "7 5", "fill_opacity": "0.35", "stroke_opacity": "0.7"}
    drawn = _with_class(f'<path d="{d}" {attributes(shape.kind, **ghost)}/>', shape)
    if shape.kind == "cut-steel" and not shape.is_ghost:
        drawn += f'<path d="{d}" class="hatching" fill="url(#{prefix}-hatch)"/>'
    if shape.kind == "ground":
        drawn += _ground_hatch(shape, frame)
    return drawn


def _with_class(drawn: str, shape: Shape) -> str:
    return drawn.replace(f'class="{shape.kind}"', f'class="{shape.kind} ghost"', 1) if shape.is_ghost else drawn


def _sheet(shape: Shape, d: str, width: float) -> str:
    """A thin sheet: a dark line, and a lighter one in it as wide as is left."""
    faint, opacity = (" ghost", ' opacity="0.45"') if shape.is_ghost else ("", "")
    lines = [(f"{shape.kind}-edge{faint}", INK, max(width, 1.2)), (f"{shape.kind}{faint}", SHEET, width - 1.3)]
    drawn = "".join(
        f'<path class="{name}" d="{d}" fill="none" stroke="{colour}" stroke-width="{number(thick)}"/>'
        for name, colour, thick in lines
        if thick > 0.2
    )
    return f"<g{opacity}>{drawn}</g>"


def _ground_hatch(shape: Shape, frame: Frame) -> str:
    """Short strokes under the ground line."""
    (left, y), (right, _) = frame.at(shape.outline[0].start), frame.at(shape.outline[-1].end)
    count = int((right - left) / 12)
    strokes = "".join(f"M{number(left + 12 * i + 8)} {number(y)}l-7 7" for i in range(count))
    return f'<path d="{strokes}" {attributes("jack")}/>'


def _band(placed: Placed, frame: Frame, prefix: str) -> str:
    """The textured stretch of a trouble spot."""
    if placed.band is None:
        return ""
    (left, bottom), (right, top) = frame.at(placed.band.low), frame.at(placed.band.high)
    width, height = max(right - left, 5.0), max(bottom - top, 5.0)
    x, y = (left + right - width) / 2, (top + bottom - height) / 2
    box = f'x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(height)}"'
    lines = "".join(f"M{pair(frame.at(a))}L{pair(frame.at(b))}" for a, b in placed.band.levels)
    levels = f'<path d="{lines}" {attributes("trouble-line")}/>' if lines else ""
    return f'<rect class="trouble" {box} fill="url(#{prefix}-cross)" stroke="{INK}" stroke-width="{THIN}"/>{levels}'


def dimension_line(span: Span, frame: Frame) -> str:
    """A dimension line with its arrows and extension lines."""
    start, end = frame.at(span.start), frame.at(span.end)
    extensions = "".join(f"M{pair(frame.at(a))}L{pair(frame.at(b))}" for a, b in span.extensions)
    extended = f'<path d="{extensions}" {attributes("extension")}/>' if extensions else ""
    line = f'<path d="M{pair(start)}L{pair(end)}" {attributes("dimension")}/>'
    match span.arrows:
        case "outside":
            tips = "".join(tip(frame.at(head), frame.at(tail)) for tail, head in span.extensions)
        case "radius":
            tips = tip(end, start)
        case _:
            tips = tip(start, end) + tip(end, start)
    return f'<g class="lit-dimension">{extended}{line}{tips}</g>'
