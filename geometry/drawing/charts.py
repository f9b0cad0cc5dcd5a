"""Line charts as data, laid out: every line carries its own words beside it, and no two words overlap."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor, log10

from geometry.drawing.section_lettering import text_width
from geometry.outline import Point

TEXT, LINE = 13.0, 17.0
LEFT, BOTTOM = 46.0, 42.0
"""Room for the numbers beside and below a chart."""
_RIGHT, _TOP = 12.0, 26.0
_GAP = 4.0
_PLACES = 40
"""How many places along a line are tried for its words."""


@dataclass(frozen=True, slots=True)
class Series:
    """One line of a chart with the words that stand beside it."""

    words: str
    points: tuple[Point, ...]
    """In units of the axes, rising in x."""
    dashes: str = ""
    """The pattern of the line; empty for a full one."""
    width: float = 1.4


@dataclass(frozen=True, slots=True)
class Marker:
    """A place on the x axis with its words above the chart."""

    words: str
    x: float


@dataclass(frozen=True, slots=True)
class Band:
    """A hatched stretch between two lines."""

    upper: tuple[Point, ...]
    lower: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Axis:
    """One axis with its words, and what it must hold."""

    words: str
    low: float
    high: float

    @property
    def ticks(self) -> tuple[float, ...]:
        """Round numbers inside, about five of them."""
        span = (self.high - self.low) or 1.0
        size = 10.0 ** floor(log10(span / 5))
        step = next(size * n for n in (1, 2, 5, 10) if size * n >= span / 6)
        first, last = ceil(self.low / step - 1e-9), floor(self.high / step + 1e-9)
        return tuple(round(n * step, 10) for n in range(first, last + 1))


@dataclass(frozen=True, slots=True)
class Chart:
    """What is drawn, apart from how."""

    title: str
    description: str
    x: Axis
    y: Axis
    series: tuple[Series, ...]
    markers: tuple[Marker, ...] = ()
    bands: tuple[Band, ...] = ()
    notes: tuple[str, ...] = ()
    """Lines below the chart."""


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle on the page, y down."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box") -> bool:
        """Whether two rectangles overlap."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )


@dataclass(frozen=True, slots=True)
class Words:
    """Words with their place."""

    text: str
    box: Box


@dataclass(frozen=True, slots=True)
class Laid:
    """A chart laid out on a page of some width."""

    chart: Chart
    width: float
    height: float
    area: Box
    beside: tuple[Words, ...]
    """The words beside the lines, in the order of the series."""
    above: tuple[Words, ...]
    """The words of the markers, in their order."""

    def at(self, point: Point) -> Point:
        """A point of the axes on the page."""
        x, y, area = self.chart.x, self.chart.y, self.area
        across = (point[0] - x.low) / ((x.high - x.low) or 1.0)
        up = (point[1] - y.low) / ((y.high - y.low) or 1.0)
        return area.left + across * (area.right - area.left), area.bottom - up * (area.bottom - area.top)


def lay_out(chart: Chart, *, width: float) -> Laid:
    """Find a place for everything; words never overlap other words."""
    top = _TOP + LINE * len(chart.markers)
    below = BOTTOM + LINE * len(chart.notes)
    height = top + max(200.0, 0.42 * width) + below
    area = Box(LEFT, top, width - _RIGHT, height - below)
    bare = Laid(chart, width, height, area, (), ())
    lines = [[bare.at(p) for p in series.points] for series in chart.series]
    above = tuple(_above(bare, chart.markers))
    # The longest words find the fewest places, so they choose first.
    order = sorted(range(len(lines)), key=lambda i: -text_width(chart.series[i].words, TEXT))
    placed: dict[int, Words] = {}
    for i in order:
        taken = [words.box for words in placed.values()]
        placed[i] = _beside(chart.series[i].words, i, lines, area, taken)
    return Laid(chart, width, height, area, tuple(placed[i] for i in range(len(lines))), above)


def _above(laid: Laid, markers: Sequence[Marker]) -> Iterator[Words]:
    """A row for each marker, the leftmost in the highest, so that its line passes no other's words."""
    order = sorted(range(len(markers)), key=lambda i: markers[i].x)
    for i, marker in enumerate(markers):
        row = order.index(i)
        x, _ = laid.at((marker.x, laid.chart.y.low))
        wide = text_width(marker.words, TEXT)
        left = x + _GAP if x + _GAP + wide <= laid.width else max(0.0, min(x - _GAP - wide, laid.width - wide))
        top = _TOP + LINE * row - 4
        yield Words(marker.words, Box(left, top, left + wide, top + LINE - 2))


def _beside(text: str, own: int, lines: Sequence[Sequence[Point]], area: Box, taken: Sequence[Box]) -> Words:
    """The best free place along a line: near it, clear of the other lines, and inside the chart."""
    best: tuple[float, Box] | None = None
    for box in _candidates(text, lines[own], area):
        if any(box.meets(other) for other in taken):
            continue
        cost = _cost(box, own, lines)
        if best is None or cost < best[0]:
            best = cost, box
    return Words(text, best[1] if best else _free_corner(text, area, taken))


def _candidates(text: str, line: Sequence[Point], area: Box) -> Iterator[Box]:
    wide = text_width(text, TEXT)
    left, right = max(area.left, line[0][0] - wide / 2), min(area.right, line[-1][0] + wide / 2)
    room = right - left - wide
    for i in range(_PLACES + 1):
        x = max(area.left + 2, min(area.right - wide - 2, left + max(0.0, room) * i / _PLACES))
        ys = [
            y
            for px in (x, x + wide / 4, x + wide / 2, x + 3 * wide / 4, x + wide)
            if (y := _y_at(line, px)) is not None
        ]
        if not ys:
            continue
        for top in (min(ys) - _GAP - LINE + 2, max(ys) + _GAP):
            if area.top <= top and top + LINE - 2 <= area.bottom - 1:
                yield Box(x, top, x + wide, top + LINE - 2)


def _free_corner(text: str, area: Box, taken: Sequence[Box]) -> Box:
    """A place of its own for words that found none along their line; rows inside the chart, then below it."""
    wide, top = text_width(text, TEXT), area.top + 2
    while True:
        box = Box(area.right - wide - 2, top, area.right - 2, top + LINE - 2)
        if not any(box.meets(other) for other in taken):
            return box
        top += 1.0


def _cost(box: Box, own: int, lines: Sequence[Sequence[Point]]) -> float:
    """How bad a place is: lines that run through it, and others that lie nearer than its own."""
    middle = (box.left + box.right) / 2
    cost = abs(middle - (lines[own][0][0] + lines[own][-1][0]) / 2) / 100
    own_distance = _distance(box, lines[own])
    for i, line in enumerate(lines):
        if _runs_through(line, box):
            cost += 100
        if i != own:
            cost += 30 if _distance(box, line) <= own_distance else 200 / (10 + _distance(box, line))
    return cost + 2 * own_distance


def _distance(box: Box, line: Sequence[Point]) -> float:
    """Least height difference between a box and a line over the box's width; far where the line does not pass it."""
    found = []
    for i in range(9):
        y = _y_at(line, box.left + (box.right - box.left) * i / 8)
        if y is not None:
            found.append(max(box.top - y, y - box.bottom, 0.0))
    return min(found, default=200.0)


def _runs_through(line: Sequence[Point], box: Box) -> bool:
    count = 16
    ys = (_y_at(line, box.left + (box.right - box.left) * i / count) for i in range(count + 1))
    return any(y is not None and box.top <= y <= box.bottom for y in ys)


def _y_at(line: Sequence[Point], x: float) -> float | None:
    """The height of a line at a place, None beyond its ends."""
    for (ax, ay), (bx, by) in pairwise(line):
        if ax <= x <= bx:
            return ay if bx == ax else ay + (by - ay) * (x - ax) / (bx - ax)
    return None
