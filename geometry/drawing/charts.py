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
_PLACES = 30
"""How many places along a line are tried for its words."""
_GRID = 4
"""How finely lines are looked at across the page, in page units."""

Heights = dict[int, float]
"""The height of a line on the page at each place of the grid that it reaches."""


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
    lines = [_heights([bare.at(p) for p in series.points]) for series in chart.series]
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


def _beside(text: str, own: int, lines: Sequence[Heights], area: Box, taken: Sequence[Box]) -> Words:
    """The best free place along a line: near it, clear of the other lines, and inside the chart."""
    best: tuple[float, Box] | None = None
    for box in _candidates(text, lines[own], area):
        if any(box.meets(other) for other in taken):
            continue
        cost = _cost(box, own, lines)
        if best is None or cost < best[0]:
            best = cost, box
    return Words(text, best[1] if best else _free_corner(text, area, taken))


def _candidates(text: str, line: Heights, area: Box) -> Iterator[Box]:
    """Places above and below a line, all along it."""
    wide = text_width(text, TEXT)
    first, last = min(line), max(line)
    left, right = max(area.left, first - wide / 2), min(area.right, last + wide / 2)
    room = max(0.0, right - left - wide)
    for i in range(_PLACES + 1):
        x = max(area.left + 2, min(area.right - wide - 2, left + room * i / _PLACES))
        ys = _under(line, x, x + wide)
        for top in (min(ys) - _GAP - LINE + 2, max(ys) + _GAP) if ys else ():
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


def _cost(box: Box, own: int, lines: Sequence[Heights]) -> float:
    """How bad a place is: lines that run through it, and others that lie nearer than its own."""
    middle = (box.left + box.right) / 2
    cost = abs(middle - (min(lines[own]) + max(lines[own])) / 2) / 100
    distances = [_distance(box, line) for line in lines]
    for i, distance in enumerate(distances):
        cost += 100 if distance == 0 else 0
        if i != own:
            cost += 30 if distance <= distances[own] else 200 / (10 + distance)
    return cost + 2 * distances[own]


def _distance(box: Box, line: Heights) -> float:
    """Least height difference between a box and a line over the box's width; far where the line does not pass it."""
    return min((max(box.top - y, y - box.bottom, 0.0) for y in _under(line, box.left, box.right)), default=200.0)


def _under(line: Heights, left: float, right: float) -> list[float]:
    """The heights of a line over a stretch of the page."""
    return [y for x in range(_GRID * floor(left / _GRID), ceil(right) + 1, _GRID) if (y := line.get(x)) is not None]


def _heights(line: Sequence[Point]) -> Heights:
    """A line on a grid across the page, its ends included as far as the grid goes."""
    found: Heights = {}
    for (ax, ay), (bx, by) in pairwise(line):
        for x in range(_GRID * floor(ax / _GRID), _GRID * ceil(bx / _GRID) + 1, _GRID):
            share = min(1.0, max(0.0, (x - ax) / (bx - ax))) if bx > ax else 0.0
            found[x] = ay + (by - ay) * share
    return found
