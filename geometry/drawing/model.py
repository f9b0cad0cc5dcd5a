"""The drawing as data: shapes of a view in model mm, what is placed on the sheet in paper mm, both with y up."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from geometry.drawing.facts import SheetFacts
from geometry.drawing.lettering import text_width_mm
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE

Point = tuple[float, float]


class Layer(StrEnum):
    """What a line means; each is a layer of the DXF file and a group of the SVG picture."""

    VISIBLE = "VISIBLE"
    HIDDEN = "HIDDEN"
    CENTRE = "CENTRE"
    CUT = "CUT"
    """Ends of the cutting plane."""
    HATCH = "HATCH"
    DIMENSION = "DIMENSION"
    """Sizes, each with its own tolerance where it has one."""
    TOLERANCE = "TOLERANCE"
    """Tolerance frames, datums and surface textures, with their leaders."""
    THIN = "THIN"
    NOTE = "NOTE"
    FRAME = "FRAME"
    CAUTION = "CAUTION"


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    layer: Layer


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle, anticlockwise from ``start_deg`` to ``end_deg``; 0 to 360 is the whole."""

    centre: Point
    radius_mm: float
    start_deg: float
    end_deg: float
    layer: Layer


@dataclass(frozen=True, slots=True)
class Curve:
    """A curve that is no circle, as points close enough together."""

    points: tuple[Point, ...]
    layer: Layer


@dataclass(frozen=True, slots=True)
class Area:
    """A closed region to hatch; a bulge is the tangent of a quarter of the turn to the next point, 0 for a straight edge."""

    points: tuple[Point, ...]
    bulges: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Arrow:
    """A filled arrow head, its tip at a point, pointing towards ``direction_deg``."""

    tip: Point
    direction_deg: float
    layer: Layer
    width_mm: float = STYLE.arrow_width_mm


@dataclass(frozen=True, slots=True)
class Fill:
    """Filled upright rectangles, such as the dark parts of a square code."""

    boxes: tuple["Box", ...]
    layer: Layer


Shape = Line | Arc | Curve | Area | Arrow | Fill
Anchor = Literal["left", "centre", "right"]


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Extent to the right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Extent upwards."""
        return self.top - self.bottom

    def grown(self, by: float) -> "Box":
        """The rectangle with a border all round."""
        return Box(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def moved(self, by: Point) -> "Box":
        """The rectangle elsewhere."""
        return Box(self.left + by[0], self.bottom + by[1], self.right + by[0], self.top + by[1])

    def meets(self, other: "Box") -> bool:
        """Whether the two share any area."""
        return (
            self.left < other.right and other.left < self.right and self.bottom < other.top and other.bottom < self.top
        )


TEXT_BELOW, TEXT_ABOVE = 0.30, 1.08
TEXT_BOX = TEXT_BELOW + TEXT_ABOVE
"""Of their nominal height letters reach so far below and above the baseline."""


@dataclass(frozen=True, slots=True)
class Text:
    """One line of words; ``at`` is on the baseline, ``turned`` reads upwards (from the right of the sheet)."""

    at: Point
    words: str
    height_mm: float
    anchor: Anchor = "left"
    turned: bool = False
    layer: Layer = Layer.NOTE

    @property
    def width_mm(self) -> float:
        """Length of the words."""
        return text_width_mm(self.words, self.height_mm)

    @property
    def start(self) -> Point:
        """Where the baseline begins."""
        back = {"left": 0.0, "centre": 0.5, "right": 1.0}[self.anchor] * self.width_mm
        return (self.at[0], self.at[1] - back) if self.turned else (self.at[0] - back, self.at[1])

    @property
    def box(self) -> Box:
        """The rectangle that the letters may touch, descenders included."""
        x, y = self.at
        width = text_width_mm(self.words, self.height_mm)
        below, above = TEXT_BELOW * self.height_mm, TEXT_ABOVE * self.height_mm
        back = 0.0 if self.anchor == "left" else width / 2 if self.anchor == "centre" else width
        if self.turned:
            return Box(x - above, y - back, x + below, y - back + width)
        return Box(x - back, y - below, x - back + width, y + above)

    def moved(self, by: Point) -> "Text":
        """The same text elsewhere."""
        at = (self.at[0] + by[0], self.at[1] + by[1])
        return Text(at, self.words, self.height_mm, self.anchor, self.turned, self.layer)


@dataclass(frozen=True, slots=True)
class View:
    """One picture of the pad, in model mm."""

    name: str
    shapes: tuple[Shape, ...]
    box: Box
    """What the part itself covers."""


@dataclass(frozen=True, slots=True)
class PlacedView:
    """A view on the sheet: its origin on paper and its scale."""

    view: View
    at: Point
    scale: Scale

    def on_paper(self, point: Point) -> Point:
        """Model point to paper point."""
        return self.at[0] + point[0] * self.scale.factor, self.at[1] + point[1] * self.scale.factor


Kind = Literal["across", "up", "radius", "note"]


@dataclass(frozen=True, slots=True)
class Measure:
    """One dimension of the part: what it is called and what is written."""

    name: str
    """Its name in the pad, such as ``seat_diameter_mm``."""
    words: str
    """What stands on the sheet, such as ``⌀67.2``."""
    prefix: str
    suffix: str
    """What stands before and after the number in house units; a reader of the DXF file forms the words anew from these."""
    nominal_mm: float
    lower_mm: float
    upper_mm: float
    """Limits of size, by the general tolerance or the one written beside the number."""
    tolerance: str
    """Where the limits come from."""
    auxiliary: bool = False
    exact: bool = False
    """Theoretically exact, in a frame (ISO 1101): its tolerance is that of a position."""


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measure placed on the sheet, in paper mm: its lines, arrows and words, and the points it measures between."""

    measure: Measure
    kind: Kind
    scale: Scale
    start: Point
    end: Point
    """Measured points; for a radius the centre and a point of the arc."""
    line_at: Point
    """A point of the dimension line."""
    lines: tuple[Line, ...]
    arrows: tuple[Arrow, ...]
    text: Text

    @property
    def words_box(self) -> Box:
        """The rectangle that its words may touch; of an exact size with the frame about them."""
        return self.text.box.grown(STYLE.frame_gap_mm) if self.measure.exact else self.text.box

    def moved(self, by: Point) -> "Dimension":
        """The same dimension elsewhere."""
        return Dimension(
            self.measure,
            self.kind,
            self.scale,
            _moved(self.start, by),
            _moved(self.end, by),
            _moved(self.line_at, by),
            tuple(Line(_moved(line.start, by), _moved(line.end, by), line.layer) for line in self.lines),
            tuple(Arrow(_moved(arrow.tip, by), arrow.direction_deg, arrow.layer) for arrow in self.arrows),
            self.text.moved(by),
        )


@dataclass(frozen=True, slots=True)
class Drawing:
    """One sheet: views, dimensions, frame, title block and notes."""

    facts: SheetFacts
    width_mm: float
    height_mm: float
    frame: Box
    scale: Scale
    views: tuple[PlacedView, ...]
    dimensions: tuple[Dimension, ...]
    shapes: tuple[Shape, ...]
    """Frame, title block, symbols: paper mm."""
    texts: tuple[Text, ...]


def shifted(shape: Shape, by: Point) -> Shape:
    """The shape elsewhere."""
    match shape:
        case Line(start, end, layer):
            return Line(_moved(start, by), _moved(end, by), layer)
        case Arc(centre, radius, start_deg, end_deg, layer):
            return Arc(_moved(centre, by), radius, start_deg, end_deg, layer)
        case Curve(points, layer):
            return Curve(tuple(_moved(point, by) for point in points), layer)
        case Arrow(tip, direction_deg, layer, width):
            return Arrow(_moved(tip, by), direction_deg, layer, width)
        case Fill(boxes, layer):
            return Fill(tuple(box.moved(by) for box in boxes), layer)
    return Area(tuple(_moved(point, by) for point in shape.points), shape.bulges)


def _moved(point: Point, by: Point) -> Point:
    return point[0] + by[0], point[1] + by[1]
