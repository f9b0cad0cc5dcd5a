"""Frame, title block, notes and cautions: everything on the sheet that is not a view."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.drawing.facts import CAUTION_LINE, CRITICAL_MARK, SheetFacts, Units
from geometry.drawing.geometrical import OTHER_ROUGHNESS_UM, SEAT_ROUGHNESS_UM
from geometry.drawing.lettering import cut_to_width, text_width_mm, wrapped
from geometry.drawing.measures import length_words
from geometry.drawing.model import Arc, Box, Layer, Line, Shape, Text
from geometry.drawing.qr import square_code
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE
from geometry.fits import linear_tolerance_mm, radius_tolerance_mm

PAPER_MM = {"A4": (210.0, 297.0), "A3": (420.0, 297.0), "letter": (215.9, 279.4), "tabloid": (431.8, 279.4)}
"""ISO 216 A4 upright and A3 lying (ISO 5457); ANSI A (8.5 × 11 in) upright and ANSI B (17 × 11 in) lying."""
NOT_FIT = "NOT FIT TO MAKE"
_ROW_MM = 9.0
_PAD_MM = 1.2
_BLOCK_ROWS = 3
_CAUTION_BAR_MM = 6.0
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

    @classmethod
    def of(cls, facts: SheetFacts) -> "Sheet":
        """The empty sheet: frame and centring marks (ISO 5457)."""
        width, height = PAPER_MM[facts.paper]
        frame = Box(STYLE.margin_left_mm, STYLE.margin_mm, width - STYLE.margin_mm, height - STYLE.margin_mm)
        middle_x, middle_y = width / 2, height / 2
        marks = [
            Line((0, middle_y), (frame.left, middle_y), Layer.FRAME),
            Line((width, middle_y), (frame.right, middle_y), Layer.FRAME),
            Line((middle_x, 0), (middle_x, frame.bottom), Layer.FRAME),
            Line((middle_x, height), (middle_x, frame.top), Layer.FRAME),
        ]
        left = max(frame.left, frame.right - _WIDEST_FOOT_MM)
        foot = Box(left, frame.bottom, frame.right, frame.bottom)
        return cls(facts, frame, [*rectangle(frame, Layer.FRAME), *marks], [], frame, foot)


def rectangle(box: Box, layer: Layer) -> tuple[Line, ...]:
    """The four sides of a rectangle."""
    corners = [(box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top)]
    return tuple(Line(a, b, layer) for a, b in zip(corners, corners[1:] + corners[:1], strict=True))


def fill_sheet(facts: SheetFacts) -> Sheet:
    """The sheet with banner, cautions, notes and the outline of the title block; the scale is written later."""
    sheet = Sheet.of(facts)
    bottom = sheet.frame.bottom + _BLOCK_ROWS * _ROW_MM
    bar = Box(sheet.foot.left, bottom, sheet.foot.right, bottom + _CAUTION_BAR_MM)
    sheet.shapes += rectangle(bar, Layer.FRAME)
    middle = (bar.left + bar.right) / 2
    sheet.texts.append(Text((middle, bottom + 1.8), CAUTION_LINE, STYLE.text_mm, "centre", layer=Layer.CAUTION))
    top = _banner(sheet)
    notes_top = _notes(sheet, bar.top)
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
    middle, y = (sheet.frame.left + sheet.frame.right) / 2, sheet.frame.top - STYLE.banner_mm - 7
    sheet.texts.append(Text((middle, y), NOT_FIT, STYLE.banner_mm, "centre", layer=Layer.CAUTION))
    width = sheet.frame.width - 8
    for line in wrapped(sheet.facts.not_fit_words, height_mm=STYLE.text_mm, width_mm=width):
        y -= STYLE.line_step_mm + 0.6
        sheet.texts.append(Text((middle, y), line, STYLE.text_mm, "centre", layer=Layer.CAUTION))
    bottom = y - 3
    box = Box(sheet.frame.left, bottom, sheet.frame.right, sheet.frame.top)
    sheet.shapes.append(Line((box.left, bottom), (box.right, bottom), Layer.FRAME))
    return bottom


def _notes(sheet: Sheet, bottom: float) -> float:
    """Notes on the left, cautions on the right, above the caution bar; returns the height where they end."""
    column = sheet.foot.width / 2
    inner = column - 2 * _PAD_MM - 2
    notes = [line for note in note_words(sheet.facts) for line in _bulleted(note, inner)]
    cautions = [line for word, text in sheet.facts.cautions for line in _bulleted(f"{word}: {text}", inner)]
    rows = max(len(notes), len(cautions))
    top = bottom + rows * STYLE.line_step_mm + 2.6
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


def _bulleted(words: str, width_mm: float) -> tuple[str, ...]:
    return wrapped(words, height_mm=STYLE.text_mm, width_mm=width_mm)


def note_words(facts: SheetFacts) -> tuple[str, ...]:
    """The general notes of the sheet."""
    unit = {"mm": "mm", "in": "inches", "in_fraction": "inches", "dual": "mm [inches]"}[facts.units]
    made = facts.moisture[:1].upper() + facts.moisture[1:]
    return tuple(
        words.replace(" °C", "\u00a0°C")
        for words in (
            f"Sizes in {unit}. {made}, {facts.temperature}.",
            f"Unless stated ISO 2768-m: {_tolerance_words(facts.units)}",
            f"Break edges {length_words(0.3, 'in' if facts.units == 'in_fraction' else facts.units)} where nothing is shown.",
            f"Surface: seat face Ra\u00a0{SEAT_ROUGHNESS_UM}\u00a0µm, where nothing is shown Ra\u00a0{OTHER_ROUGHNESS_UM}\u00a0µm.",
            *((f"{CRITICAL_MARK} An estimate depends on this size: measure and record it.",) if facts.critical else ()),
            f"Estimated design load {facts.design_load_n:.0f} N, not tested.",
        )
    )


def _tolerance_words(units: Units) -> str:
    """The rows of ISO 2768-1 m that such a part needs, for a reader who has no copy."""

    def row(upper: float, tolerance: float) -> str:
        return f"to\u00a0{length_words(upper, units)}\u00a0±{length_words(tolerance, units)}"

    shown: Units = "mm" if units in ("mm", "dual") else "in"
    units = shown
    lengths = ", ".join(row(upper, linear_tolerance_mm(upper)) for upper in (6, 30, 120, 400))
    radii = ", ".join(row(upper, radius_tolerance_mm(upper)) for upper in (3, 6))
    above = f"above\u00a0±{length_words(radius_tolerance_mm(7), units)}"
    return f"lengths {lengths}; outer radii and chamfers {radii}, {above}; angles\u00a0±1°."


def title_block(sheet: Sheet, scale: Scale) -> None:
    """Fields of ISO 7200 with scale, projection, material and mass."""
    facts, frame = sheet.facts, sheet.foot
    code = Box(frame.left, frame.bottom, frame.left + _BLOCK_ROWS * _ROW_MM, frame.bottom + _BLOCK_ROWS * _ROW_MM)
    sheet.shapes += rectangle(code, Layer.FRAME)
    at = (code.left + _PAD_MM, code.top - _PAD_MM - STYLE.small_mm)
    sheet.texts.append(Text(at, "Saved design", STYLE.small_mm))
    if facts.saved_address:
        side = code.height - 2 * _PAD_MM - STYLE.small_mm - 2.4
        sheet.shapes.append(
            square_code(facts.saved_address, ((code.left + code.right - side) / 2, code.bottom + 1.2), side)
        )
    rows: tuple[tuple[tuple[float, str, str], ...], ...] = (
        (
            (30, "Drawing number", facts.design_id),
            (8, "Rev.", facts.revision),
            (16, "Date of issue", facts.date),
            (11, "Scale", scale.words),
            (15, "Tolerances", "ISO 2768-m"),
            (8, "Sheet", "1/1"),
            (12, "", ""),
        ),
        ((50, "Title", facts.title), (32, "Material", facts.material), (18, "Mass", f"{facts.mass_kg:.3f} kg")),
        (
            (34, "Legal owner", facts.owner),
            (22, "Created by", facts.creator),
            (22, "Approved by", facts.approved_by),
            (22, "Document type", "Part drawing"),
        ),
    )
    for i, row in enumerate(rows):
        _block_row(
            sheet, row, Box(code.right, frame.bottom + i * _ROW_MM, frame.right, frame.bottom + (i + 1) * _ROW_MM)
        )
    right = frame.right - 0.06 * (frame.right - code.right)
    sheet.shapes += projection_symbol(facts, right, frame.bottom + _ROW_MM / 2)


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
