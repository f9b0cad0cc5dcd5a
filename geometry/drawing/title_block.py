"""The title block: fields by ISO 7200, projection symbol, general texture and the code of the saved design."""

from collections.abc import Iterator

from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import BLOCK_ROWS, PAPER_MM, Sheet
from geometry.drawing.geometrical import OTHER_ROUGHNESS_UM
from geometry.drawing.lettering import cut_to_width, text_width_mm, wrapped
from geometry.drawing.meeting import rectangle
from geometry.drawing.model import Arc, Box, Layer, Line, Shape, Text
from geometry.drawing.qr import square_code
from geometry.drawing.scales import Scale
from geometry.drawing.signs import texture
from geometry.drawing.style import STYLE
from geometry.units import kg_to_pound

_EDGE_PAD_MM, _SMALL_STEP_MM = 0.9, 2.8
"""Above a caption and below two small lines, which are as far apart as ISO 3098-1 asks: 22/14 of their height (from memory)."""


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
        bottom = frame.bottom + i // 2 * STYLE.block_row_mm
        sides = (middle, frame.right) if i % 2 else (left, middle)
        _block_row(sheet, row, Box(sides[0], bottom, sides[1], bottom + STYLE.block_row_mm))
    width = frame.right - middle
    sheet.shapes += projection_symbol(facts, frame.right - 0.09 * width, frame.bottom + STYLE.block_row_mm / 2)
    if not facts.as_printed:
        _general_texture(sheet, frame.right - 0.31 * width + STYLE.cell_pad_mm, frame.bottom + STYLE.block_row_mm + 0.7)


def _mass_words(facts: SheetFacts) -> str:
    """The mass, on a sheet with inches in pounds too."""
    mass = f"{facts.mass_kg:.3f} kg"
    return mass if facts.units == "mm" else f"{mass} ({kg_to_pound(facts.mass_kg):.2f} lb)"


def _general_texture(sheet: Sheet, x: float, y: float) -> None:
    """The texture of every surface that has no sign of its own, and in parentheses that there are such (ISO 21920-1)."""
    h = 0.84 * STYLE.text_mm
    sign = texture(OTHER_ROUGHNESS_UM, h)
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
    frame, height = sheet.foot, BLOCK_ROWS * STYLE.block_row_mm
    code = Box(frame.left, frame.bottom, frame.left + height, frame.bottom + height)
    sheet.shapes += rectangle(code, Layer.FRAME)
    at = (code.left + STYLE.cell_pad_mm, code.top - STYLE.cell_pad_mm - STYLE.small_mm)
    sheet.texts.append(Text(at, "Saved design", STYLE.small_mm))
    side = code.height - 2 * STYLE.cell_pad_mm - STYLE.small_mm - 2.4
    corner = ((code.left + code.right - side) / 2, code.bottom + 1.2)
    sheet.shapes.append(square_code(sheet.facts.saved_address or "", corner, side))
    return code.right


def _block_row(sheet: Sheet, cells: tuple[tuple[float, str, str], ...], box: Box) -> None:
    """One row of the block; widths are shares of a hundred."""
    left = box.left
    for share, caption, value in cells:
        right = left + box.width * share / 100
        sheet.shapes += rectangle(Box(left, box.bottom, right, box.top), Layer.FRAME)
        room = right - left - 2 * STYLE.cell_pad_mm
        at = (left + STYLE.cell_pad_mm, box.top - _EDGE_PAD_MM - STYLE.small_mm)
        if caption:
            sheet.texts.append(Text(at, cut_to_width(caption, height_mm=STYLE.small_mm, width_mm=room), STYLE.small_mm))
        sheet.texts += _cell_words(value, left + STYLE.cell_pad_mm, box.bottom, room)
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
        up = _EDGE_PAD_MM + (len(lines) - 1 - i) * _SMALL_STEP_MM + (0.7 if len(lines) == 1 else 0)
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
