"""The drawing as a DXF document: real dimensions, hatches, layers; model space in true size at the main scale."""

import random
from collections.abc import Iterator
from contextlib import contextmanager
from io import StringIO
from math import cos, dist, radians, sin

import numpy as np
from ezdxf import options  # type: ignore[attr-defined]
from ezdxf.document import Drawing as Document
from ezdxf.enums import TextEntityAlignment
from ezdxf.filemanagement import new
from ezdxf.layouts.base import BaseLayout

from geometry.drawing.dxf_tables import DIMENSION_STYLE, LEAST_DASHED_MM, TEXT_STYLE, make_tables
from geometry.drawing.hatching import hatching_through
from geometry.drawing.lettering import use_shipped_font
from geometry.drawing.model import Arc, Area, Arrow, Curve, Dimension, Drawing, Fill, Layer, Line, Point, Shape, Text
from geometry.drawing.style import STYLE

_DXF_VERSION = "R2010"
_ALIGNMENT = {
    "left": TextEntityAlignment.LEFT,
    "centre": TextEntityAlignment.CENTER,
    "right": TextEntityAlignment.RIGHT,
}
_PLAIN = {
    "⌀": "%%c",
    "±": "%%p",
    "°": "%%d",
    "×": "x",
    "–": "-",
    "…": "...",
    "µ": "u",
    "“": '"',
    "”": '"',
    "’": "'",
    "−": "-",
    "◆": "*",
    "\u00a0": " ",
}
"""Spelling that every reader of DXF files understands; its own codes for the signs of drawing."""


def to_dxf(drawing: Drawing) -> str:
    """The drawing as the text of a DXF file, the same bytes for the same drawing."""
    with repeatable():
        document = document_of(drawing, plain=True)
        _sort_classes(document)
        stream = StringIO()
        document.write(stream)
    return stream.getvalue()


def _sort_classes(document: Document) -> None:
    """The library lists its required classes in the order of a set, which changes from process to process."""
    section = document.classes
    section.add_required_classes(document.dxfversion)
    for key in sorted(section.classes):
        section.classes[key] = section.classes.pop(key)


@contextmanager
def repeatable() -> Iterator[None]:
    """No clock, no running number and no chance in what the library writes."""
    state, fixed = random.getstate(), options.write_fixed_meta_data_for_testing
    random.seed(0)
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        random.setstate(state)
        options.write_fixed_meta_data_for_testing = fixed


def document_of(drawing: Drawing, *, plain: bool = False, lettering: bool = True) -> Document:
    """The drawing in the library's terms; ``plain`` spells for other readers, without ``lettering`` no text is drawn."""
    use_shipped_font()
    document = new(_DXF_VERSION, units=4)
    make_tables(document, drawing)
    pen = _Pen(document.modelspace(), 1 / drawing.scale.factor, plain=plain, lettering=lettering)
    for placed in drawing.views:
        for shape in placed.view.shapes:
            pen.at(placed.at, placed.scale.factor).shape(shape)
    for shape in drawing.shapes:
        pen.shape(shape)
    for text in drawing.texts:
        pen.text(text)
    for dimension in drawing.dimensions:
        _dimension(document, pen, dimension)
    return document


_ASKEW_MM = 0.01
"""On paper; so far a curve may be off its own points."""
_TWO_DASHES_MM = 5.0
"""A hidden line shorter than this on paper has two dashes, else three, as far as the line type does not show that many."""


def _needed(points: tuple[Point, ...], off: float) -> list[Point]:
    """The points of a curve without those that lie on it anyway (Ramer, Douglas and Peucker).

    The steps of a picture are whole hundredths of a millimetre, each from the last: many small ones would lead astray.
    """
    if len(points) <= 2:
        return list(points)
    along, (first, last) = np.array(points), (points[0], points[-1])
    run = np.subtract(last, first)
    length = float(np.hypot(*run))
    aside = along - first
    away = np.abs(aside @ (-run[1], run[0])) / length if length else np.hypot(*aside.T)
    most = int(away.argmax())
    if away[most] <= off:
        return [first, last]
    return [*_needed(points[: most + 1], off)[:-1], *_needed(points[most:], off)]


class _Pen:
    """Draws shapes of the drawing into a layout of the document."""

    def __init__(self, layout: BaseLayout, grown: float, *, plain: bool, lettering: bool) -> None:
        self.layout, self.grown, self.plain, self.lettering = layout, grown, plain, lettering
        self.origin: Point = (0, 0)
        self.factor = 1.0

    def at(self, origin: Point, factor: float) -> "_Pen":
        """The same pen for a view in model mm."""
        pen = _Pen(self.layout, self.grown, plain=self.plain, lettering=self.lettering)
        pen.origin, pen.factor = origin, factor
        return pen

    def into(self, layout: BaseLayout) -> "_Pen":
        """The same pen on another layout."""
        return _Pen(layout, self.grown, plain=self.plain, lettering=self.lettering)

    def point(self, point: Point) -> Point:
        """A point of the drawing in the document."""
        return (
            (self.origin[0] + point[0] * self.factor) * self.grown,
            (self.origin[1] + point[1] * self.factor) * self.grown,
        )

    def size(self, length: float) -> float:
        """A length of the drawing in the document."""
        return length * self.factor * self.grown

    def spelled(self, words: str) -> str:
        """The words as the document carries them."""
        return "".join(_PLAIN.get(c, c) for c in words) if self.plain else words

    def shape(self, shape: Shape) -> None:
        """Draw a shape."""
        match shape:
            case Line(start, end, layer):
                length = dist(start, end) * self.factor
                if layer is Layer.HIDDEN and length < LEAST_DASHED_MM:
                    self._dashes(start, end, length)
                else:
                    self.layout.add_line(self.point(start), self.point(end), dxfattribs={"layer": layer})
            case Arc(centre, radius, start_deg, end_deg, layer):
                on = {"layer": layer}
                if end_deg - start_deg >= 360:
                    self.layout.add_circle(self.point(centre), self.size(radius), dxfattribs=on)
                else:
                    self.layout.add_arc(self.point(centre), self.size(radius), start_deg, end_deg, dxfattribs=on)
            case Curve(points, layer):
                self.layout.add_lwpolyline(
                    [self.point(p) for p in _needed(points, _ASKEW_MM / self.factor)], dxfattribs={"layer": layer}
                )
            case Arrow():
                self._arrow(shape)
            case Fill():
                self._fill(shape)
            case Area():
                self._hatch(shape)

    def _dashes(self, start: Point, end: Point, length: float) -> None:
        """A hidden line hardly longer than a dash: drawn as one line type it would look like a visible edge."""
        count = 2 if length < _TWO_DASHES_MM else 3
        gap = min(STYLE.dash_gap_mm, length / 6) / length
        dash = (1 - (count - 1) * gap) / count
        for i in range(count):
            ends = (i * (dash + gap), i * (dash + gap) + dash)
            a, b = (self.point((start[0] + (end[0] - start[0]) * t, start[1] + (end[1] - start[1]) * t)) for t in ends)
            self.layout.add_line(a, b, dxfattribs={"layer": Layer.HIDDEN, "linetype": "CONTINUOUS"})

    def _arrow(self, arrow: Arrow) -> None:
        tip, layer = arrow.tip, arrow.layer
        c, s = cos(radians(arrow.direction_deg)), sin(radians(arrow.direction_deg))
        back, half = STYLE.arrow_mm, arrow.width_mm / 2
        x, y = tip[0] - back * c, tip[1] - back * s
        corners = (tip, (x - half * s, y + half * c), (x + half * s, y - half * c))
        points = [self.point(corner) for corner in corners]
        self.layout.add_solid([*points, points[-1]], dxfattribs={"layer": layer})

    def _fill(self, fill: Fill) -> None:
        hatch = self.layout.add_hatch(color=256, dxfattribs={"layer": fill.layer})
        hatch.set_solid_fill(color=256)
        for box in fill.boxes:
            corners = ((box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top))
            hatch.paths.add_polyline_path([self.point(corner) for corner in corners], is_closed=True)

    def _hatch(self, area: Area) -> None:
        hatch = self.layout.add_hatch(color=256, dxfattribs={"layer": Layer.HATCH})
        # The lines are in the file; a reader that looks only at the name has 45° lines under this one, √2 apart at scale 1.
        scale = STYLE.hatch_step_mm * self.grown / 2**0.5
        corners = [self.point(point) for point in area.points]
        through = hatching_through([(x / self.grown, y / self.grown) for x, y in corners], area.bulges)
        begin = tuple(value * self.grown / scale for value in through)
        hatch.set_pattern_fill("ANSI31", scale=scale, definition=[[45, begin, (-1, 1), []]])
        vertices = [(*corner, bulge) for corner, bulge in zip(corners, area.bulges, strict=True)]
        hatch.paths.add_polyline_path(vertices, is_closed=True)

    def text(self, text: Text) -> None:
        """Write one line."""
        if not self.lettering:
            return
        attributes = {"layer": text.layer, "style": TEXT_STYLE, "rotation": 90 if text.turned else 0}
        entity = self.layout.add_text(
            self.spelled(text.words), height=text.height_mm * self.grown, dxfattribs=attributes
        )
        entity.set_placement(self.point(text.at), align=_ALIGNMENT[text.anchor])


def _dimension(document: Document, pen: _Pen, dimension: Dimension) -> None:
    """A dimension entity with its picture in a block of its own; a note on a leader is lines and text."""
    if dimension.kind == "note":
        _picture(pen, dimension)
        return
    block = document.blocks.new_anonymous_block("D")
    _picture(pen.into(block), dimension)
    box = dimension.text.box
    middle = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
    measured = dimension.measure
    attributes = {
        "layer": Layer.DIMENSION,
        "geometry": block.name,
        "dimstyle": DIMENSION_STYLE,
        "text_midpoint": pen.point(middle),
        "text": pen.spelled(_words(dimension, pen)),
        "actual_measurement": measured.nominal_mm,
        "defpoint": pen.point(_on_line(dimension)),
    }
    if dimension.kind == "radius":
        attributes |= {
            "dimtype": 4 | 32 | 128,
            "defpoint": pen.point(dimension.start),
            "defpoint4": pen.point(dimension.end),
        }
    else:
        attributes |= {
            "dimtype": 32 | 128,
            "angle": 90 if dimension.kind == "up" else 0,
            "defpoint2": pen.point(dimension.start),
            "defpoint3": pen.point(dimension.end),
        }
    pen.layout.new_entity("DIMENSION", attributes)


def _words(dimension: Dimension, pen: _Pen) -> str:
    """In true size the reader's own measurement stands in the words (``<>``), so that it follows the geometry."""
    measure = dimension.measure
    true_size = abs(dimension.scale.factor * pen.grown - 1) < 1e-9
    number = f"{measure.nominal_mm:.3f}".rstrip("0").rstrip(".")
    written = f"{measure.prefix}{number}{measure.suffix}"
    return f"{measure.prefix}<>{measure.suffix}" if true_size and written == measure.words else measure.words


def _on_line(dimension: Dimension) -> Point:
    """The point of the dimension line across from the second measured point."""
    if dimension.kind == "up":
        return dimension.line_at[0], dimension.end[1]
    return dimension.end[0], dimension.line_at[1]


def _picture(pen: _Pen, dimension: Dimension) -> None:
    for line in dimension.lines:
        pen.shape(line)
    for arrow in dimension.arrows:
        pen.shape(arrow)
    pen.text(dimension.text)
