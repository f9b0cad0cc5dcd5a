"""The pad's drawing: views and dimensions as data, and thin renderers that play them to DXF, SVG, PDF and PNG."""

from geometry.drawing.dxf import to_dxf
from geometry.drawing.errors import SheetError
from geometry.drawing.facts import SheetFacts
from geometry.drawing.model import Drawing
from geometry.drawing.pdf import to_pdf, to_png
from geometry.drawing.sheet import draw
from geometry.drawing.svg import to_svg
from geometry.drawing.table import Row, dimension_table

__all__ = [
    "Drawing",
    "Row",
    "SheetError",
    "SheetFacts",
    "dimension_table",
    "draw",
    "to_dxf",
    "to_pdf",
    "to_png",
    "to_svg",
]
