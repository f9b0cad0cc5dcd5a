"""Frame, title block, notes and cautions: everything on the sheet that is not a view."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.cautions import ONE_LINE
from geometry.drawing.facts import SheetFacts
from geometry.drawing.geometrical import OTHER_ROUGHNESS_UM
from geometry.drawing.lettering import cut_to_width, text_width_mm, wrapped
from geometry.drawing.model import Arc, Box, Layer, Line, Shape, Text
from geometry.drawing.qr import square_code
from geometry.drawing.scales import Scale
from geometry.drawing.signs import texture
from geometry.drawing.style import STYLE
from geometry.units import kg_to_pound

PAPER_MM = {"A4": (210.0, 297.0), "A3": (420.0, 297.0), "letter": (215.9, 279.4), "tabloid": (431.8, 279.4)}
"""ISO 216 A4 upright and A3 lying (ISO 5457); ANSI A (8.5 × 11 in) upright and ANSI B (17 × 11 in) lying."""
NOT_FIT = "NOT FIT TO MAKE"
_ROW_MM = 9.0
_PAD_MM = 1.2
_BLOCK_ROWS = 3
_CAUTION_BAR_MM = 2 * STYLE.line_step_mm + 1.8
_COLUMN_SHARES = (0.5, 0.54, 0.58, 0.62, 0.66, 0.7, 0.74, 0.46)
"""Of the foot, for the notes: that which makes the foot lowest."""
_WIDEST_FOOT_MM = 186.0
"""On a wide sheet title block and notes stand at its lower right, as wide as on a narrow one (ISO 7200: about 180 mm)."""


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
        left = max(frame.left, frame.right - _WIDEST_FOOT_MM)
        foot = Box(left, frame.bottom, frame.right, frame.bottom)
        return cls(facts, frame, [*rectangle(frame, Layer.FRAME), *marks], [], frame, foot)


def rectangle(box: Box, layer: Layer) -> tuple[Line, ...]:
    """The four sides of a rectangle."""
    corners = [(box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top)]
    return tuple(Line(a, b, layer) for a, b in zip(corners, corners[1:] + corners[:1], strict=True))


def fill_sheet(facts: SheetFacts, notes: tuple[str, ...]) -> Sheet:
    """The sheet with banner, cautions, notes and the outline of the title block; the scale is written later."""
    sheet = Sheet.of(facts)
    bottom = sheet.frame.bottom + _BLOCK_ROWS * _ROW_MM
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
            at = (left + _PAD_MM + 1, top - 1.2 - (i + 1) * STYLE.line_step_mm + 1.0)
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
    column, around = width * share, 2 * _PAD_MM + 2
    notes = [line for note in words for line in _bulleted(note, column - around)]
    return column, notes, [line for text in warnings for line in _bulleted(text, width - column - around)]


def _bulleted(words: str, width_mm: float) -> tuple[str, ...]:
    return wrapped(words, height_mm=STYLE.text_mm, width_mm=width_mm)


def title_block(sheet: Sheet, scale: Scale) -> None:
    """Fields of ISO 7200 with scale, projection, material, mass and general surface texture."""
    facts, frame = sheet.facts, sheet.foot
    left = _saved_code(sheet) if facts.saved_address else frame.left
    # The lower rows part at the middle of the sheet, where the centring mark comes in.
    middle = PAPER_MM[facts.paper][0] / 2
    if not left + 40 < middle < frame.right - 40:
        middle = left + 0.47 * (frame.right - left)
    surface = "as printed" if facts.as_printed else ""
    rows: tuple[tuple[tuple[float, str, str], ...], ...] = (
        ((68, "Drawing number", facts.design_id), (32, "Revision", facts.revision)),
        (
            (26, "Date of issue", facts.date),
            (14, "Scale", scale.words),
            (30, "Tolerances", "ISO 2768-mK"),
            (12, "Sheet", "1/1"),
            (18, "", ""),
        ),
        ((100, "Title", facts.title),),
        ((42, "Material", facts.material), (27, "Mass", _mass_words(facts)), (31, "Surface", surface)),
        ((50, "Legal owner", facts.owner), (50, "Created by", facts.created_by)),
        (
            (36, "Approved by", facts.approved_by),
            (27, "Document type", "Part drawing"),
            (13, "Pieces", "1"),
            (24, "Drawn with", facts.creator),
        ),
    )
    for i, row in enumerate(rows):
        bottom = frame.bottom + i // 2 * _ROW_MM
        sides = (middle, frame.right) if i % 2 else (left, middle)
        _block_row(sheet, row, Box(sides[0], bottom, sides[1], bottom + _ROW_MM))
    width = frame.right - middle
    sheet.shapes += projection_symbol(facts, frame.right - 0.09 * width, frame.bottom + _ROW_MM / 2)
    if not facts.as_printed:
        _general_texture(sheet, frame.right - 0.31 * width + _PAD_MM, frame.bottom + _ROW_MM + 0.3)


def _mass_words(facts: SheetFacts) -> str:
    """The mass, on a sheet with inches in pounds too."""
    mass = f"{facts.mass_kg:.3f} kg"
    return mass if facts.units == "mm" else f"{mass} ({kg_to_pound(facts.mass_kg):.2f} lb)"


def _general_texture(sheet: Sheet, x: float, y: float) -> None:
    """The texture of every surface that has no sign of its own, and in parentheses that there are such (ISO 21920-1)."""
    sign, h = texture(OTHER_ROUGHNESS_UM), STYLE.text_mm
    _, shapes, texts = sign.at((x, y))
    left, up = x + sign.width + 1.0, 1.05 * h
    others = (
        Line((left + 1.6, y + 0.6 + up * 0.5), (left + 2.2, y + 0.6), Layer.DIMENSION),
        Line((left + 2.2, y + 0.6), (left + 3.3, y + 0.6 + up), Layer.DIMENSION),
    )
    sheet.shapes += (*shapes, *others)
    sheet.texts += (*texts, Text((left, y + 0.8), "(", h), Text((left + 3.7, y + 0.8), ")", h))


def _saved_code(sheet: Sheet) -> float:
    """The code of the saved design at the block's left end; returns where the fields begin."""
    frame, height = sheet.foot, _BLOCK_ROWS * _ROW_MM
    code = Box(frame.left, frame.bottom, frame.left + height, frame.bottom + height)
    sheet.shapes += rectangle(code, Layer.FRAME)
    at = (code.left + _PAD_MM, code.top - _PAD_MM - STYLE.small_mm)
    sheet.texts.append(Text(at, "Saved design", STYLE.small_mm))
    side = code.height - 2 * _PAD_MM - STYLE.small_mm - 2.4
    corner = ((code.left + code.right - side) / 2, code.bottom + 1.2)
    sheet.shapes.append(square_code(sheet.facts.saved_address or "", corner, side))
    return code.right


def _block_row(sheet: Sheet, cells: tuple[tuple[float, str, str], ...], box: Box) -> None:
    """One row of the block; widths are shares of a hundred."""
    left = box.left
    for share, caption, value in cells:
        right = left + box.width * share / 100
        sheet.shapes += rectangle(Box(left, box.bottom, right, box.top), Layer.FRAME)
        room = right - left - 2 * _PAD_MM
        at = (left + _PAD_MM, box.top - _PAD_MM - STYLE.small_mm)
        if caption:
            sheet.texts.append(Text(at, cut_to_width(caption, height_mm=STYLE.small_mm, width_mm=room), STYLE.small_mm))
        sheet.texts += _cell_words(value, left + _PAD_MM, box.bottom, room)
        left = right


def _cell_words(value: str, left: float, bottom: float, room: float) -> Iterator[Text]:
    """A value in a cell: on one line where it fits, else on at most two small ones."""
    if text_width_mm(value, STYLE.text_mm) <= room:
        if value:
            yield Text((left, bottom + 1.4), value, STYLE.text_mm)
        return
    lines = wrapped(value, height_mm=STYLE.small_mm, width_mm=room)
    if len(lines) > 2:
        lines = (lines[0], cut_to_width(" ".join(lines[1:]), height_mm=STYLE.small_mm, width_mm=room))
    for i, line in enumerate(lines):
        up = 0.8 + (len(lines) - 1 - i) * 2.6 + (0.9 if len(lines) == 1 else 0)
        yield Text((left, bottom + up), line, STYLE.small_mm)


def projection_symbol(facts: SheetFacts, x: float, y: float) -> tuple[Shape, ...]:
    """The truncated cone of ISO 5456-2, small end left: before its circles in first angle, behind them in third."""
    small, large, length = 1.1, 2.2, 4.4
    cone, circles = (x - 3.0, x + 3.2) if facts.projection == "first" else (x + 3.0, x - 3.2)
    left, right = cone - length / 2, cone + length / 2
    corners = [(left, y - small), (right, y - large), (right, y + large), (left, y + small)]
    sides = tuple(Line(a, b, Layer.VISIBLE) for a, b in zip(corners, corners[1:] + corners[:1], strict=True))
    rings = tuple(Arc((circles, y), radius, 0, 360, Layer.VISIBLE) for radius in (small, large))
    over = large + 0.7
    axes = (
        Line((min(left, circles - over) - 0.3, y), (max(right, circles + over) + 0.3, y), Layer.THIN),
        Line((circles, y - over), (circles, y + over), Layer.THIN),
    )
    return (*sides, *rings, *axes)
