"""The gauges laid out in true size: on pages of paper with bars to check the print, or side by side for a cutter."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from geometry.cautions import ONE_LINE
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import NOT_FIT, PAPER_MM
from geometry.drawing.lettering import wrapped
from geometry.drawing.model import Anchor, Box, Layer, Line, Point, Text
from geometry.drawing.style import STYLE
from geometry.outline import Outline
from geometry.packet.gauge_shapes import Gauge, bounds, moved
from geometry.units import inch_to_mm

TITLE = "Gauge sheet, true size"
PRINT_WORDS = (
    "Print at 100 %, without “fit to page”. Measure the bars first, across and up: 100 mm and 4 in, each to half a"
    " millimetre. If one is off, throw the print away. Cut along the thick lines, from card or film. A gauge shows at a"
    " glance what is wrong; it measures nothing: for that there is the caliper."
)
_MARGIN_MM = 12.0
_BAR_ROOM_MM = 16.0
_GAP_MM = 8.0
_LEAST_LABEL_MM = 74.0
_BAR_MM, _BAR_IN = 100, 4
_TICK_MM, _LONG_TICK_MM = 2.0, 3.5
_LINE_MM = STYLE.line_step_mm


@dataclass(frozen=True, slots=True)
class GaugePage:
    """One page, or the whole sheet for a cutter: paper mm, y up."""

    width_mm: float
    height_mm: float
    cuts: tuple[Outline, ...]
    """Closed outlines to cut along."""
    scale: tuple[Line, ...]
    """The bars that tell whether the size is true."""
    texts: tuple[Text, ...]


@dataclass(frozen=True, slots=True)
class _Piece:
    """A gauge with its words below it, its lower left corner at the origin."""

    outline: Outline
    lines: tuple[str, ...]
    width: float
    height: float

    @classmethod
    def of(cls, gauge: Gauge, *, is_half: bool = False) -> "_Piece":
        outline = gauge.half if is_half else gauge.outline
        box = bounds(outline)
        width = max(box.width, _LEAST_LABEL_MM)
        use = f"Half of it; the other half is its mirror image. {gauge.use}" if is_half else gauge.use
        lines = tuple(
            line for part in (gauge.title, use) for line in wrapped(part, height_mm=STYLE.text_mm, width_mm=width)
        )
        words = len(lines) * _LINE_MM + 2.0
        placed = moved(outline, (-box.left + (width - box.width) / 2, -box.bottom + words))
        return cls(placed, lines, width, box.height + words)

    def texts(self, at: Point) -> tuple[Text, ...]:
        """The words at their places."""
        top = at[1] + len(self.lines) * _LINE_MM - STYLE.text_mm
        return tuple(
            Text((at[0], top - i * _LINE_MM), line, STYLE.text_mm, layer=Layer.NOTE)
            for i, line in enumerate(self.lines)
        )


def paper_pages(gauges: Sequence[Gauge], facts: SheetFacts) -> tuple[GaugePage, ...]:
    """The gauges on as many pages as they need; what is too wide is halved, what is still too large is named in words."""
    width, height = PAPER_MM[facts.paper]
    head = _head(facts, width, height, "")
    area = Box(_MARGIN_MM + _BAR_ROOM_MM, _MARGIN_MM + 26, width - _MARGIN_MM, min(t.box.bottom for t in head) - 5)
    pieces, too_large = [], []
    for gauge in gauges:
        piece = _Piece.of(gauge, is_half=gauge.can_be_halved and bounds(gauge.outline).width > area.width)
        if piece.width <= area.width and piece.height <= area.height:
            pieces.append(piece)
        else:
            too_large.append(gauge.title)
    sheets = _shelves(pieces, area)
    left_out = (
        f"Too large for this paper, so only in the files for a cutter: {'; '.join(too_large)}." if too_large else ""
    )
    return tuple(
        _page(facts, placed, number=i, of=len(sheets), left_out=left_out) for i, placed in enumerate(sheets, start=1)
    )


def cutter_sheet(gauges: Sequence[Gauge], facts: SheetFacts) -> GaugePage:
    """Every gauge whole and side by side, with no paper's edge to keep to."""
    pieces = [_Piece.of(gauge) for gauge in gauges]
    width = 2 * _MARGIN_MM + _BAR_ROOM_MM + sum(p.width for p in pieces) + _GAP_MM * (len(pieces) - 1)
    bottom = _MARGIN_MM + 26
    tallest = bottom + max(*(p.height for p in pieces), _BAR_MM)
    height = ceil(tallest + 60)
    head = _head(facts, width, height, "")
    placed, x = [], _MARGIN_MM + _BAR_ROOM_MM
    for piece in pieces:
        placed.append((piece, (x, bottom)))
        x += piece.width + _GAP_MM
    return _filled(width, height, placed, [*head, *_foot(width, 1, 1)])


@dataclass(slots=True)
class _Row:
    """One row of pieces on a page: what is still free of it, to the right."""

    page: int
    left: float
    top: float
    height: float


def _shelves(pieces: Sequence[_Piece], area: Box) -> list[list[tuple[_Piece, Point]]]:
    """Rows from the top, each as high as its first piece; a piece goes into the first row that has room, or begins another."""
    sheets: list[list[tuple[_Piece, Point]]] = []
    rows: list[_Row] = []
    for piece in pieces:
        row = next((r for r in rows if r.left + piece.width <= area.right and piece.height <= r.height), None)
        if row is None:
            row = _new_row(rows, len(sheets), piece.height, area)
            rows.append(row)
            sheets += [[]] if row.page == len(sheets) else []
        sheets[row.page].append((piece, (row.left, row.top - piece.height)))
        row.left += piece.width + _GAP_MM
    return sheets or [[]]


def _new_row(rows: Sequence[_Row], pages: int, height: float, area: Box) -> _Row:
    """A row below those of the first page that has room, or at the top of a new page."""
    for page in range(pages):
        below = min(row.top - row.height for row in rows if row.page == page) - _GAP_MM
        if below - height >= area.bottom:
            return _Row(page, area.left, below, height)
    return _Row(pages, area.left, area.top, height)


def _page(facts: SheetFacts, placed: list[tuple[_Piece, Point]], *, number: int, of: int, left_out: str) -> GaugePage:
    width, height = PAPER_MM[facts.paper]
    words = [*_head(facts, width, height, left_out if number == of else ""), *_foot(width, number, of)]
    return _filled(width, height, placed, words)


def _filled(width: float, height: float, placed: list[tuple[_Piece, Point]], words: list[Text]) -> GaugePage:
    lines, numbers = _bars()
    texts = [*words, *numbers, *(text for piece, at in placed for text in piece.texts(at))]
    cuts = tuple(moved(piece.outline, at) for piece, at in placed)
    return GaugePage(width, height, cuts, tuple(lines), tuple(texts))


def _head(facts: SheetFacts, width: float, height: float, left_out: str) -> list[Text]:
    """Title, the words of a part that is not fit to make, and what to do before cutting."""
    y = height - _MARGIN_MM - STYLE.large_mm
    title = f"{TITLE}: {facts.title}"
    found = [
        Text(
            (_MARGIN_MM, y),
            wrapped(title, height_mm=STYLE.large_mm, width_mm=width - 2 * _MARGIN_MM)[0],
            STYLE.large_mm,
        )
    ]
    room = width - 2 * _MARGIN_MM
    blocks = [
        f"Design {facts.design_id}, revision {facts.revision}, {facts.date}. Material: {facts.material}.",
        PRINT_WORDS,
    ]
    blocks += [left_out] if left_out else []
    y -= 1.0
    if not facts.fit_to_make:
        y -= STYLE.banner_mm + 1.5
        found.append(Text((_MARGIN_MM, y), NOT_FIT, STYLE.banner_mm, layer=Layer.CAUTION))
        y -= 1.5
        blocks.insert(0, facts.not_fit_words)
    for block in blocks:
        for line in wrapped(block, height_mm=STYLE.text_mm, width_mm=room):
            y -= _LINE_MM
            layer = Layer.CAUTION if block == facts.not_fit_words else Layer.NOTE
            found.append(Text((_MARGIN_MM, y), line, STYLE.text_mm, layer=layer))
    return found


def _foot(width: float, number: int, of: int) -> list[Text]:
    """The caution line and the page's number."""
    lines = wrapped(ONE_LINE, height_mm=STYLE.text_mm, width_mm=width - 2 * _MARGIN_MM)
    y = 7.0
    found = [
        Text((_MARGIN_MM, y + (len(lines) - 1 - i) * _LINE_MM), line, STYLE.text_mm, layer=Layer.CAUTION)
        for i, line in enumerate(lines)
    ]
    page = Text((width - _MARGIN_MM, y), f"page {number} of {of}", STYLE.text_mm, "right")
    return [*found, page]


def _bars() -> tuple[list[Line], list[Text]]:
    """A hundred millimetres and four inches, across along the bottom and up along the left edge."""
    lines, numbers = [], []
    for upright in (False, True):
        for base, step, count, labels in (
            (0.0, 10.0, _BAR_MM // 10, (0, 50, 100)),
            (9.0, inch_to_mm(0.5), 2 * _BAR_IN, (0, 2, 4)),
        ):
            unit = "mm" if step == 10 else "in"
            start = (_MARGIN_MM + _BAR_ROOM_MM, 20.0 + base) if not upright else (_MARGIN_MM + base + 3, 40.0)
            lines += _bar(start, step, count, upright=upright)
            for i in range(count + 1):
                value = i * 10 if unit == "mm" else i / 2
                if value in labels:
                    numbers.append(_number(start, i * step, f"{floor(value)} {unit}" if i else "0", upright=upright))
    return lines, numbers


def _bar(start: Point, step: float, count: int, *, upright: bool) -> list[Line]:
    def at(along: float, across: float) -> Point:
        return (start[0] - across, start[1] + along) if upright else (start[0] + along, start[1] + across)

    ticks = [
        Line(at(i * step, 0), at(i * step, _LONG_TICK_MM if i % (count // 2) == 0 else _TICK_MM), Layer.THIN)
        for i in range(count + 1)
    ]
    return [Line(at(0, 0), at(count * step, 0), Layer.THIN), *ticks]


def _number(start: Point, along: float, words: str, *, upright: bool) -> Text:
    side: Anchor = "centre"
    if upright:
        return Text((start[0] - _LONG_TICK_MM - 0.8, start[1] + along), words, STYLE.small_mm, side, turned=True)
    return Text((start[0] + along, start[1] + _LONG_TICK_MM + 0.6), words, STYLE.small_mm, side)
