"""One page of the section: what is placed where, in page units with y down."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from geometry.drawing.section_marks import Band, TroubleSpot
from geometry.drawing.section_pointers import Pointer
from geometry.outline import Point

NARROW = 640
"""Below this width there is no room for labels beside the balloons."""
RADIUS = 13.0
TEXT = 14.0
SMALL = 12.0
LINE = 17.0
SMALL_LINE = 14.0
LABEL_GAP = 8.0


@dataclass(frozen=True, slots=True)
class Frame:
    """From model mm, y up, to page units, y down."""

    scale: float
    x0: float
    y0: float

    def at(self, point: Point) -> Point:
        """A model point on the page."""
        return self.x0 + self.scale * point[0], self.y0 - self.scale * point[1]


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle of the page."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True, slots=True)
class Lettering:
    """One line of a label."""

    words: str
    role: Literal["balloon-label", "balloon-value", "trouble-words", "trouble-numbers"]


@dataclass(frozen=True, slots=True)
class Placed:
    """A balloon, or the lettered mark of a trouble, in its column."""

    mark: str
    centre: Point
    leader: tuple[Point, Point]
    """From what it points at to the balloon's edge."""
    label: tuple[Lettering, ...]
    label_box: Box
    target: Box
    """What a finger may hit: balloon and label together."""
    is_left: bool
    pointer: Pointer | None = None
    spot: TroubleSpot | None = None
    band: Band | None = None


@dataclass(frozen=True, slots=True)
class Page:
    """Everything placed."""

    width: float
    height: float
    frame: Frame
    placed: tuple[Placed, ...]
    ground_y: float
    notes: tuple[str, ...]
    """Lines below the ground."""
    is_narrow: bool
    window: Box | None = None
    """Where the figure is cut off, in a detail."""


@dataclass(frozen=True, slots=True)
class Room:
    """Where columns and figure stand for one width."""

    width: float
    height: float
    is_narrow: bool

    @property
    def label_width(self) -> float:
        """Room for a label beside each column."""
        return 0.0 if self.is_narrow else 190.0

    @property
    def column(self) -> float:
        """Middle of the left column's balloons."""
        return RADIUS + 4 if self.is_narrow else 4 + self.label_width + LABEL_GAP + RADIUS

    @property
    def side(self) -> float:
        """Left edge of the figure."""
        return self.column + RADIUS + (12 if self.is_narrow else 26)

    @property
    def top(self) -> float:
        """Where the strip above the figure ends."""
        return 26.0

    @property
    def ground(self) -> float:
        """Level of the ground line: the same for every input."""
        return self.height - 38


def label_line(label: Sequence[Lettering]) -> float:
    """Distance of a label's lines: those of a trouble stand closer, so that three fit beside its mark."""
    return LINE if label and label[0].role == "balloon-label" else SMALL_LINE
