"""A square code that a camera reads (ISO/IEC 18004)."""

import segno

from geometry.drawing.model import Box, Fill, Layer, Point

_QUIET_MODULES = 2
"""Free modules kept inside the square; the cell around it adds the rest."""


def square_code(address: str, corner: Point, side_mm: float) -> Fill:
    """The code of an address in a square with its lower left corner at a point; each row's dark runs as rectangles."""
    rows = [list(row) for row in segno.make(address, error="m", micro=False).matrix]
    module = side_mm / (len(rows) + 2 * _QUIET_MODULES)
    left, top = corner[0] + _QUIET_MODULES * module, corner[1] + side_mm - _QUIET_MODULES * module
    boxes = []
    for i, row in enumerate(rows):
        start = 0
        for j in range(len(row) + 1):
            dark = j < len(row) and row[j]
            if not dark:
                if j > start:
                    boxes.append(
                        Box(left + start * module, top - (i + 1) * module, left + j * module, top - i * module)
                    )
                start = j + 1
    return Fill(tuple(boxes), Layer.FRAME)
