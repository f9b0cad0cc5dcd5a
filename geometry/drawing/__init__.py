"""The pad's drawing: views and dimensions as data, and thin renderers that play them to DXF, SVG, PDF and PNG."""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from geometry.drawing.errors import SheetError
from geometry.drawing.facts import SheetFacts
from geometry.drawing.model import Drawing
from geometry.drawing.table import Row, dimension_table

if TYPE_CHECKING:
    from geometry.drawing.dxf import to_dxf
    from geometry.drawing.pdf import to_pdf, to_png
    from geometry.drawing.sheet import draw
    from geometry.drawing.svg import to_svg

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

_ROOMS = {
    "draw": "geometry.drawing.sheet",
    "to_dxf": "geometry.drawing.dxf",
    "to_pdf": "geometry.drawing.pdf",
    "to_png": "geometry.drawing.pdf",
    "to_svg": "geometry.drawing.svg",
}


def __getattr__(name: str) -> Any:
    """What draws is loaded when it is first used: its libraries take 60 MB, which readers of facts and tables need not have."""
    if name not in _ROOMS:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(_ROOMS[name]), name)
