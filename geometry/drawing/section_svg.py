"""The laid-out section as SVG: classes named for their meaning, plain attributes as fallback, no style anywhere."""

from collections.abc import Iterable, Mapping
from html import escape

from geometry.drawing.section_known import TITLES, element_id
from geometry.drawing.section_layout import (
    LABEL_GAP,
    LINE,
    RADIUS,
    SMALL,
    TEXT,
    Box,
    Frame,
    Page,
    Placed,
    label_line,
    value_words,
)
from geometry.drawing.section_pointers import Pointer, Span
from geometry.drawing.section_shapes import Shape
from geometry.outline import Arc, Point
from geometry.units import LengthUnit

PAPER, INK, PENCIL, CHALK = "#fbf8f0", "#1d262d", "#5d6b75", "#fffdf7"
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
        f' viewBox="0 0 {_n(page.width)} {_n(page.height)}" role="group" aria-labelledby="{prefix}-title"'
        f' font-family="sans-serif" font-size="{_n(TEXT)}">',
        f'<title id="{prefix}-title">{escape(title)}</title>',
        f"<defs>{_patterns(prefix)}{_window(page.window, prefix)}</defs>",
        f'<g class="figure"{cut} role="img" aria-labelledby="{prefix}-description">'
        f'<desc id="{prefix}-description">{escape(description)}</desc>',
        figure,
        "" if page.window else _sides(page),
        "".join(_band(p, page.frame, prefix) for p in page.placed),
        _span(lit_span, page.frame) if lit_span else "",
        "</g>",
        "".join(_balloon(p, p.pointer, units, typed, is_lit=p.pointer.field == lit) for p in page.placed if p.pointer),
        "".join(_trouble(p) for p in page.placed if p.spot),
        _notes(page),
        "</svg>",
    ]
    return "".join(parts)


def _n(value: float) -> str:
    """A coordinate, no finer than a hundredth of a page unit."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _attributes(look: str, **more: str) -> str:
    given = {**_LOOKS[look], **{name.replace("_", "-"): value for name, value in more.items()}}
    return f'class="{look}"' + "".join(f' {name}="{value}"' for name, value in given.items())


def _path(shape: Shape, frame: Frame) -> str:
    pieces = shape.outline
    if not pieces:
        return ""
    d = [f"M{_pair(frame.at(pieces[0].start))}"]
    for piece in pieces:
        end = _pair(frame.at(piece.end))
        if isinstance(piece, Arc):
            radius = _n(frame.scale * piece.radius_mm)
            d.append(f"A{radius} {radius} 0 0 {_sweep(piece)} {end}")
        else:
            d.append(f"L{end}")
    return "".join(d) + ("Z" if shape.is_closed else "")


def _sweep(arc: Arc) -> int:
    """1 where the arc runs clockwise on the page, that is clockwise with y up, too."""
    (ax, ay), (bx, by), (cx, cy) = arc.start, arc.end, arc.centre
    return 1 if (ax - cx) * (by - cy) - (ay - cy) * (bx - cx) < 0 else 0


def _pair(point: Point) -> str:
    return f"{_n(point[0])} {_n(point[1])}"


def _patterns(prefix: str) -> str:
    """Hatching at 45°, and the crossed hatching of trouble."""
    hatch = f'<path d="M0 0V8" {_attributes("hatch")}/>'
    cross = f'<path d="M0 0V5M0 0H5" {_attributes("trouble-hatch")}/>'
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
    size = f'width="{_n(box.right - box.left)}" height="{_n(box.bottom - box.top)}"'
    return f'<clipPath id="{prefix}-window"><rect x="{_n(box.left)}" y="{_n(box.top)}" {size}/></clipPath>'


def _shape(shape: Shape, frame: Frame, prefix: str) -> str:
    d = _path(shape, frame)
    if not d:
        return ""
    if shape.width_mm:
        return _sheet(shape, d, frame.scale * shape.width_mm)
    ghost = {"stroke_dasharray": "5 4", "opacity": "0.55"} if shape.is_ghost else {}
    if shape.kind == "pad" and shape.is_ghost:
        ghost = {"stroke_dasharray": "7 5", "fill_opacity": "0.35", "stroke_opacity": "0.7"}
    drawn = _with_class(f'<path d="{d}" {_attributes(shape.kind, **ghost)}/>', shape)
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
        f'<path class="{name}" d="{d}" fill="none" stroke="{colour}" stroke-width="{_n(thick)}"/>'
        for name, colour, thick in lines
        if thick > 0.2
    )
    return f"<g{opacity}>{drawn}</g>"


def _ground_hatch(shape: Shape, frame: Frame) -> str:
    """Short strokes under the ground line."""
    (left, y), (right, _) = frame.at(shape.outline[0].start), frame.at(shape.outline[-1].end)
    count = int((right - left) / 12)
    strokes = "".join(f"M{_n(left + 12 * i + 8)} {_n(y)}l-7 7" for i in range(count))
    return f'<path d="{strokes}" {_attributes("jack")}/>'


def _sides(page: Page) -> str:
    """Which side is which, beside the centre line."""
    words = ((-12, "end", "← outboard"), (12, "start", "inboard →"))
    return "".join(
        f'<text class="side" x="{_n(page.frame.x0 + dx)}" y="16" text-anchor="{anchor}" fill="{PENCIL}"'
        f' font-size="{_n(SMALL)}">{text}</text>'
        for dx, anchor, text in words
    )


def _band(placed: Placed, frame: Frame, prefix: str) -> str:
    """The textured stretch of a trouble spot."""
    if placed.band is None:
        return ""
    (left, bottom), (right, top) = frame.at(placed.band.low), frame.at(placed.band.high)
    width, height = max(right - left, 5.0), max(bottom - top, 5.0)
    x, y = (left + right - width) / 2, (top + bottom - height) / 2
    box = f'x="{_n(x)}" y="{_n(y)}" width="{_n(width)}" height="{_n(height)}"'
    lines = "".join(f"M{_pair(frame.at(a))}L{_pair(frame.at(b))}" for a, b in placed.band.levels)
    levels = f'<path d="{lines}" {_attributes("trouble-line")}/>' if lines else ""
    return f'<rect class="trouble" {box} fill="url(#{prefix}-cross)" stroke="{INK}" stroke-width="{THIN}"/>{levels}'


def _span(span: Span, frame: Frame) -> str:
    """A dimension line with its arrows and extension lines."""
    start, end = frame.at(span.start), frame.at(span.end)
    extensions = "".join(f"M{_pair(frame.at(a))}L{_pair(frame.at(b))}" for a, b in span.extensions)
    extended = f'<path d="{extensions}" {_attributes("extension")}/>' if extensions else ""
    line = f'<path d="M{_pair(start)}L{_pair(end)}" {_attributes("dimension")}/>'
    match span.arrows:
        case "outside":
            tips = "".join(_tip(frame.at(tip), frame.at(tail)) for tail, tip in span.extensions)
        case "radius":
            tips = _tip(end, start)
        case _:
            tips = _tip(start, end) + _tip(end, start)
    return f'<g class="lit-dimension">{extended}{line}{tips}</g>'


def _tip(at: Point, away: Point) -> str:
    """A closed arrow that touches ``at``, coming from ``away``."""
    dx, dy = away[0] - at[0], away[1] - at[1]
    length = (dx * dx + dy * dy) ** 0.5
    if length < 1e-6:
        return ""
    ux, uy = dx / length, dy / length
    size = min(9.0, max(3.0, length / 2))
    left = (at[0] + size * ux - size / 3 * uy, at[1] + size * uy + size / 3 * ux)
    right = (at[0] + size * ux + size / 3 * uy, at[1] + size * uy - size / 3 * ux)
    return f'<path d="M{_pair(at)}L{_pair(left)}L{_pair(right)}Z" {_attributes("arrow")}/>'


def _balloon(placed: Placed, pointer: Pointer, units: LengthUnit, typed: Mapping[str, str], *, is_lit: bool) -> str:
    """A numbered circle that links to its field."""
    key = element_id(pointer.field)
    name = f"{pointer.number} {TITLES[pointer.field]} {value_words(pointer, units, typed)}"
    (ax, ay), (x, y) = placed.leader[0], placed.centre
    state = " lit" if is_lit else ""
    missing = " missing" if pointer.value_mm is None else ""
    ring = {"fill": INK} if is_lit else {}
    if missing and not is_lit:
        ring["stroke_dasharray"] = "3 2.5"
    width = {"stroke": INK, "stroke_width": "1.6"} if is_lit else {}
    return (
        f'<a id="balloon-{key}" class="balloon{state}{missing}" data-field="{pointer.field}" href="#field-{key}"'
        f' aria-label="{escape(name)}">{_target(placed.target)}'
        f'<path d="M{_pair(placed.leader[0])}L{_pair(placed.leader[1])}" {_attributes("leader", **width)}/>'
        f'<circle cx="{_n(ax)}" cy="{_n(ay)}" r="2.4" {_attributes("dot")}/>'
        f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(RADIUS)}" {_attributes("balloon-ring", **ring)}/>'
        f'<text class="balloon-number" x="{_n(x)}" y="{_n(y + 5)}" text-anchor="middle" font-weight="600"'
        f' fill="{CHALK if is_lit else INK}">{pointer.number}</text>{_label(placed)}</a>'
    )


def _target(box: Box) -> str:
    """What a finger may hit."""
    size = f'width="{_n(box.right - box.left)}" height="{_n(box.bottom - box.top)}"'
    return f'<rect class="target" x="{_n(box.left)}" y="{_n(box.top)}" {size} fill="none" pointer-events="all"/>'


def _label(placed: Placed) -> str:
    """The label's lines beside the balloon, turned away from the picture."""
    step = label_line(placed.label)
    x = placed.centre[0] + (-1 if placed.is_left else 1) * (RADIUS + LABEL_GAP)
    anchor = "end" if placed.is_left else "start"
    first = placed.centre[1] - step * len(placed.label) / 2 + 0.72 * step
    is_missing = placed.pointer is not None and placed.pointer.value_mm is None
    lines = []
    for i, line in enumerate(placed.label):
        is_strong = line.role in {"balloon-value", "trouble-words"} and not is_missing
        size = TEXT if line.role.startswith("balloon") else SMALL
        weight = ' font-weight="600"' if is_strong else ""
        colour = PENCIL if is_missing or line.role == "balloon-label" else INK
        lines.append(
            f'<text class="{line.role}" x="{_n(x)}" y="{_n(first + i * step)}" text-anchor="{anchor}"'
            f' font-size="{_n(size)}"{weight} fill="{colour}">{escape(line.words)}</text>'
        )
    return "".join(lines)


def _trouble(placed: Placed) -> str:
    """An arrow to the trouble spot, a lettered mark, and a few words."""
    (x, y), r = placed.centre, RADIUS
    start, end = placed.leader
    diamond = f"M{_n(x)} {_n(y - r)}L{_n(x + r)} {_n(y)}L{_n(x)} {_n(y + r)}L{_n(x - r)} {_n(y)}Z"
    return (
        f'<g class="trouble" id="trouble-{placed.mark.lower()}">'
        f'<path d="M{_pair(start)}L{_pair(end)}" {_attributes("trouble-line")}/>{_tip(start, end)}'
        f'<path d="{diamond}" {_attributes("trouble-mark")}/>'
        f'<text class="trouble-letter" x="{_n(x)}" y="{_n(y + 5)}" text-anchor="middle" font-weight="600" fill="{CHALK}">'
        f"{placed.mark}</text>{_label(placed)}</g>"
    )


def _notes(page: Page) -> str:
    """The lines below the ground."""
    first = page.ground_y + 26
    return "".join(
        f'<text class="note" x="{_n(page.width / 2)}" y="{_n(first + LINE * i)}" text-anchor="middle" fill="{INK}">'
        f"{escape(words)}</text>"
        for i, words in enumerate(page.notes)
        if words
    )
