"""The sheet about the views: frame, notes and cautions, and the room that is left."""

from dataclasses import dataclass

from geometry.cautions import ONE_LINE
from geometry.drawing.facts import SheetFacts
from geometry.drawing.grid import grid_references
from geometry.drawing.lettering import wrapped
from geometry.drawing.meeting import rectangle
from geometry.drawing.model import Box, Layer, Line, Shape, Text
from geometry.drawing.style import STYLE

PAPER_MM = {"A4": (210.0, 297.0), "A3": (420.0, 297.0), "letter": (215.9, 279.4), "tabloid": (431.8, 279.4)}
"""ISO 216 A4 upright and A3 lying (ISO 5457); ANSI A (8.5 × 11 in) upright and ANSI B (17 × 11 in) lying."""
NOT_FIT = "NOT FIT TO MAKE"
_GRIDDED = frozenset({"A3"})
"""Grid references by ISO 5457; one part on one page of A4 needs none, and of ANSI B's zones we have no text."""
BLOCK_ROWS = 3
_CAUTION_BAR_MM = 2 * STYLE.line_step_mm + 1.8
_COLUMN_SHARES = (0.5, 0.54, 0.58, 0.62, 0.66, 0.7, 0.74, 0.46)
"""Of the foot, for the notes: that which makes the foot lowest."""
_FOOT_MM = 180.0
"""On a wide sheet title block and notes stand at its lower right (ISO 7200: 180 mm); on a narrow one they are as wide as that."""


@dataclass(slots=True)
class Sheet:
    """A sheet being filled: what is drawn and what is written, and what of it is still free for views."""

    facts: SheetFacts
    frame: Box
    shapes: list[Shape]
    texts: list[Text]
    area: Box
    foot: Box
    """Title block, caution and notes; on a wide sheet there is room for views at its left."""

    @property
    def is_wide(self) -> bool:
        """Whether the foot leaves room beside it."""
        return self.foot.left > self.frame.left

    @property
    def kept_free(self) -> tuple[Box, ...]:
        """Where no view may stand: the foot and a little about it, and the centring marks."""
        ends = (shape for shape in self.shapes[4:8] if isinstance(shape, Line))
        marks = (
            Box(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])).grown(1)
            for a, b in ((line.start, line.end) for line in ends)
        )
        return self.foot.grown(3), *marks

    @classmethod
    def of(cls, facts: SheetFacts) -> "Sheet":
        """The empty sheet: frame and centring marks (ISO 5457)."""
        width, height = PAPER_MM[facts.paper]
        frame = Box(STYLE.margin_left_mm, STYLE.margin_mm, width - STYLE.margin_mm, height - STYLE.margin_mm)
        middle_x, middle_y = width / 2, height / 2
        inside = STYLE.centring_mm
        marks = [
            Line((0, middle_y), (frame.left + inside, middle_y), Layer.FRAME),
            Line((width, middle_y), (frame.right - inside, middle_y), Layer.FRAME),
            Line((middle_x, 0), (middle_x, frame.bottom + inside), Layer.FRAME),
            # Into a banner it would look like the wall of a cell.
            Line((middle_x, height), (middle_x, frame.top - (inside if facts.fit_to_make else 0)), Layer.FRAME),
        ]
        left = frame.right - _FOOT_MM if width > height else frame.left
        foot = Box(left, frame.bottom, frame.right, frame.bottom)
        grid, letters = grid_references(frame, width, height) if facts.paper in _GRIDDED else ((), ())
        return cls(facts, frame, [*rectangle(frame, Layer.FRAME), *marks, *grid], [*letters], frame, foot)


def fill_sheet(facts: SheetFacts, notes: tuple[str, ...]) -> Sheet:
    """The sheet with banner, cautions, notes and the outline of the title block; the scale is written later."""
    sheet = Sheet.of(facts)
    bottom = sheet.frame.bottom + BLOCK_ROWS * STYLE.block_row_mm
    bar = Box(sheet.foot.left, bottom, sheet.foot.right, bottom + _CAUTION_BAR_MM)
    sheet.shapes += rectangle(bar, Layer.FRAME)
    middle = (bar.left + bar.right) / 2
    first, stop, last = ONE_LINE.rpartition(". ")
    for i, words in enumerate((last, f"{first}{stop}".strip())):
        at = (middle, bottom + 1.6 + i * STYLE.line_step_mm)
        sheet.texts.append(Text(at, words, STYLE.text_mm, "centre", layer=Layer.CAUTION))
    top = _banner(sheet)
    notes_top = _notes(sheet, bar.top, notes)
    sheet.foot = Box(sheet.foot.left, sheet.frame.bottom, sheet.foot.right, notes_top)
    low = sheet.frame.bottom + 4 if sheet.is_wide else notes_top + 3
    sheet.area = Box(sheet.frame.left + 4, low, sheet.frame.right - 4, top - 4)
    if sheet.is_wide:
        left = sheet.foot.left
        sheet.shapes.append(Line((left, sheet.foot.bottom), (left, sheet.foot.top), Layer.FRAME))
    return sheet


def _banner(sheet: Sheet) -> float:
    """The words that a part that is not fit to make carries in large letters; returns the height below them."""
    if sheet.facts.fit_to_make:
        return sheet.frame.top
    # Left and right of the centring mark.
    middle, room = PAPER_MM[sheet.facts.paper][0] / 2, 4.0
    width = min(middle - sheet.frame.left, sheet.frame.right - middle) - 2 * room
    lines = wrapped(sheet.facts.not_fit_words, height_mm=STYLE.text_mm, width_mm=width)
    height = max(STYLE.centring_mm + 1, STYLE.banner_mm + 8, len(lines) * STYLE.line_step_mm + 5)
    bottom = sheet.frame.top - height
    left = middle - room - width / 2
    at = (left, bottom + (height - STYLE.banner_mm) / 2)
    sheet.texts.append(Text(at, NOT_FIT, STYLE.banner_mm, "centre", layer=Layer.CAUTION))
    first = bottom + (height + (len(lines) - 1) * STYLE.line_step_mm - STYLE.text_mm) / 2
    for i, line in enumerate(lines):
        at = (middle + room, first - i * STYLE.line_step_mm)
        sheet.texts.append(Text(at, line, STYLE.text_mm, layer=Layer.CAUTION))
    sheet.shapes.append(Line((sheet.frame.left, bottom), (sheet.frame.right, bottom), Layer.FRAME))
    return bottom


def _notes(sheet: Sheet, bottom: float, words: tuple[str, ...]) -> float:
    """Notes on the left, cautions on the right, above the caution bar; returns the height where they end."""
    # What the line below says already is not said twice.
    warnings = tuple(f"{word}: {text}" for word, text in sheet.facts.cautions if not _said(text))
    columns = [_columns(sheet.foot.width, share, words, warnings) for share in _COLUMN_SHARES]
    column, notes, cautions = min(columns, key=lambda tried: max(len(tried[1]), len(tried[2])))
    top = bottom + max(len(notes), len(cautions)) * STYLE.line_step_mm + 2.6
    for lines, left, layer in (
        (notes, sheet.foot.left, Layer.NOTE),
        (cautions, sheet.foot.left + column, Layer.CAUTION),
    ):
        for i, line in enumerate(lines):
            at = (left + STYLE.cell_pad_mm + 1, top - 1.2 - (i + 1) * STYLE.line_step_mm + 1.0)
            sheet.texts.append(Text(at, line, STYLE.text_mm, layer=layer))
    sheet.shapes.append(Line((sheet.foot.left, top), (sheet.foot.right, top), Layer.FRAME))
    sheet.shapes.append(Line((sheet.foot.left + column, bottom), (sheet.foot.left + column, top), Layer.FRAME))
    return top


def _said(caution: str) -> bool:
    """Whether every sentence of it stands in the caution line."""
    return all(sentence.strip(". ") in ONE_LINE for sentence in caution.split(". "))


def _columns(
    width: float, share: float, words: tuple[str, ...], warnings: tuple[str, ...]
) -> tuple[float, list[str], list[str]]:
    """The first column's width, and the lines of both."""
    column, around = width * share, 2 * STYLE.cell_pad_mm + 2
    notes = [line for note in words for line in _bulleted(note, column - around)]
    return column, notes, [line for text in warnings for line in _bulleted(text, width - column - around)]


def _bulleted(words: str, width_mm: float) -> tuple[str, ...]:
    return wrapped(words, height_mm=STYLE.text_mm, width_mm=width_mm)
