"""Line types, layers, lettering and dimension style of the DXF document."""

from ezdxf.document import Drawing as Document

from geometry.drawing.lettering import FONT_FILE
from geometry.drawing.model import Drawing, Layer
from geometry.drawing.style import STYLE

TEXT_STYLE = "LETTERING"
DIMENSION_STYLE = "ISO-129"
_D = STYLE.thin_mm
_LINETYPES = {
    # ISO 128-2: dash 12 d, long dash 24 d, gap 3 d, dot at most 0.5 d. Some readers know a line type by its name alone,
    # so each is called by the plain words for it.
    "DASHED": [15 * _D, 12 * _D, -3 * _D],
    "DASHDOT": [30.5 * _D, 24 * _D, -3 * _D, 0.5 * _D, -3 * _D],
}
LEAST_DASHED_MM = 2.5 * 15 * _D
"""A hidden line of this length shows two dashes and a half."""
_LAYERS = {
    Layer.VISIBLE: ("CONTINUOUS", STYLE.thick_mm),
    Layer.HIDDEN: ("DASHED", STYLE.thin_mm),
    Layer.CENTRE: ("DASHDOT", STYLE.thin_mm),
    Layer.CUT: ("CONTINUOUS", STYLE.thick_mm),
    Layer.HATCH: ("CONTINUOUS", STYLE.thin_mm),
    Layer.DIMENSION: ("CONTINUOUS", STYLE.thin_mm),
    Layer.TOLERANCE: ("CONTINUOUS", STYLE.thin_mm),
    Layer.THIN: ("CONTINUOUS", STYLE.thin_mm),
    Layer.NOTE: ("CONTINUOUS", STYLE.thin_mm),
    Layer.FRAME: ("CONTINUOUS", STYLE.thick_mm),
    Layer.CAUTION: ("CONTINUOUS", STYLE.thin_mm),
}


def make_tables(document: Document, drawing: Drawing) -> None:
    """Line types, layers, the text style, and the dimension style twice: in its table and in the header."""
    k = drawing.scale.factor
    for name, pattern in _LINETYPES.items():
        document.linetypes.add(name, pattern)
    for layer, (linetype, width) in _LAYERS.items():
        document.layers.add(layer, color=7, linetype=linetype, lineweight=round(width * 100))
    document.styles.add(TEXT_STYLE, font=FONT_FILE)
    style = document.dimstyles.new(DIMENSION_STYLE)
    values = {
        "dimtxt": STYLE.text_mm,
        "dimasz": STYLE.arrow_mm,
        "dimexo": STYLE.extension_gap_mm,
        "dimexe": STYLE.extension_over_mm,
        "dimgap": STYLE.text_gap_mm,
        "dimtad": 1,
        "dimtih": 0,
        "dimtoh": 0,
        "dimdec": 3,
        "dimzin": 8,
        "dimscale": 1 / k,
        "dimdsep": ord("."),
    }
    for name, value in values.items():
        style.set_dxf_attrib(name, value)
        document.header[f"${name.upper()}"] = value
    style.set_dxf_attrib("dimtxsty", TEXT_STYLE)
    # Readers that ignore the style table take its values from the header.
    document.header["$DIMSTYLE"] = DIMENSION_STYLE
    document.header["$LTSCALE"] = 1 / k
    document.header["$LWDISPLAY"] = 1
    document.header["$LIMMAX"] = (drawing.width_mm / k, drawing.height_mm / k)
    document.header["$EXTMIN"] = (0, 0, 0)
    document.header["$EXTMAX"] = (drawing.width_mm / k, drawing.height_mm / k, 0)
