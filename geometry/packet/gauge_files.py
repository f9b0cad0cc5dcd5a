"""The gauge sheet as a picture and as a file for a cutter, each the same bytes for the same sheet."""

from collections.abc import Iterable
from html import escape
from io import StringIO
from math import atan2, tan

from ezdxf.document import Drawing as Document
from ezdxf.enums import TextEntityAlignment
from ezdxf.filemanagement import new

from geometry.drawing.dxf import repeatable
from geometry.drawing.lettering import CAP_HEIGHT_UNITS, FONT_FILE, advance_units, outline
from geometry.drawing.model import Text
from geometry.drawing.style import STYLE
from geometry.outline import Arc, Outline
from geometry.packet.gauge_sheet import TITLE, GaugePage

CUT, SCALE, WORDS = "CUT", "SCALE", "WORDS"
_DXF_VERSION = "R2000"
_RED, _BLUE, _INK = 1, 5, 7
_ALIGNMENT = {
    "left": TextEntityAlignment.LEFT,
    "centre": TextEntityAlignment.CENTER,
    "right": TextEntityAlignment.RIGHT,
}
_SPELLED = str.maketrans({"×": "x", "“": '"', "”": '"', "’": "'", "–": "-", "−": "-", "\u00a0": " ", "…": "..."})


def svg_of(page: GaugePage, *, title: str = TITLE, lettering: bool = True) -> str:
    """A page in true size; its letters are outlines, so that no font is needed."""
    width, height = page.width_mm, page.height_mm
    cuts = "".join(_path(cut, height) for cut in page.cuts)
    bars = "".join(
        f"M{_n(a[0])} {_n(height - a[1])}L{_n(b[0])} {_n(height - b[1])}"
        for a, b in ((line.start, line.end) for line in page.scale)
    )
    words = _letters(page.texts, height) if lettering else ""
    said = f"{len(page.cuts)} gauges to cut along their outlines, and bars of 100 mm and 4 in across and up."
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(width)}mm" height="{_n(height)}mm"'
        f' viewBox="0 0 {_n(width)} {_n(height)}" role="img" aria-labelledby="gauge-title gauge-words">'
        f'<title id="gauge-title">{escape(title)}</title><desc id="gauge-words">{said}</desc>'
        f'<rect width="{_n(width)}" height="{_n(height)}" fill="#fff"/>'
        f'<g data-layer="scale" fill="none" stroke="#000" stroke-width="{STYLE.thin_mm}"><path d="{bars}"/></g>'
        f'<g data-layer="cut" fill="none" stroke="#000" stroke-width="{STYLE.thick_mm}">{cuts}</g>'
        f"{words}</svg>"
    )


def _n(number: float) -> str:
    """A number to a thousandth, as short as it can be."""
    text = f"{number:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _path(cut: Outline, height: float) -> str:
    (x, y) = cut[0].start
    steps = [f"M{_n(x)} {_n(height - y)}"]
    for piece in cut:
        end = f"{_n(piece.end[0])} {_n(height - piece.end[1])}"
        if isinstance(piece, Arc):
            sweep = 0 if _bulge(piece) > 0 else 1
            steps.append(f"A{_n(piece.radius_mm)} {_n(piece.radius_mm)} 0 0 {sweep} {end}")
        else:
            steps.append(f"L{end}")
    return f'<path d="{"".join(steps)}Z"/>'


def _bulge(arc: Arc) -> float:
    """Tangent of a quarter of the turn, positive anticlockwise with y up."""
    (ax, ay), (bx, by), (cx, cy) = arc.start, arc.end, arc.centre
    across = (ax - cx) * (by - cy) - (ay - cy) * (bx - cx)
    along = (ax - cx) * (bx - cx) + (ay - cy) * (by - cy)
    return tan(atan2(across, along) / 4)


def _letters(texts: Iterable[Text], height: float) -> str:
    """Every word as outlines, each character's once."""
    known: dict[str, str] = {}
    lines = []
    for text in texts:
        size, (x, y) = text.height_mm / CAP_HEIGHT_UNITS, text.start
        pen, uses = 0, []
        for character in text.words:
            if path := outline(character):
                known.setdefault(f"glyph-{ord(character):x}", path)
                uses.append(f'<use href="#glyph-{ord(character):x}" x="{pen}"/>')
            pen += advance_units(character)
        turn = " rotate(-90)" if text.turned else ""
        place = f"translate({_n(x)} {_n(height - y)}){turn} scale({size:.7f} {-size:.7f})"
        lines.append(f'<g transform="{place}" data-words="{escape(text.words)}">{"".join(uses)}</g>')
    glyphs = "".join(f'<path id="{name}" d="{path}"/>' for name, path in known.items())
    return f'<defs>{glyphs}</defs><g data-layer="words">{"".join(lines)}</g>'


def dxf_of(page: GaugePage) -> str:
    """Closed polylines alone on the layer that is cut; bars and words on layers of their own; millimetres."""
    with repeatable():
        document = _document(page)
        stream = StringIO()
        document.write(stream)
    return stream.getvalue()


def _document(page: GaugePage) -> Document:
    document = new(_DXF_VERSION, units=4)
    for name, colour in ((CUT, _RED), (SCALE, _BLUE), (WORDS, _INK)):
        document.layers.add(name, color=colour)
    document.styles.add("LETTERING", font=FONT_FILE)
    document.header["$EXTMIN"], document.header["$EXTMAX"] = (0, 0, 0), (page.width_mm, page.height_mm, 0)
    space = document.modelspace()
    for cut in page.cuts:
        points = [(*piece.start, _bulge(piece) if isinstance(piece, Arc) else 0.0) for piece in cut]
        space.add_lwpolyline(points, format="xyb", close=True, dxfattribs={"layer": CUT})
    for line in page.scale:
        space.add_line(line.start, line.end, dxfattribs={"layer": SCALE})
    for text in page.texts:
        attributes = {"layer": WORDS, "style": "LETTERING", "rotation": 90 if text.turned else 0}
        entity = space.add_text(text.words.translate(_SPELLED), height=text.height_mm, dxfattribs=attributes)
        entity.set_placement(text.at, align=_ALIGNMENT[text.anchor])
    section = document.classes
    section.add_required_classes(document.dxfversion)
    for key in sorted(section.classes):
        # The library lists them in the order of a set, which changes from process to process.
        section.classes[key] = section.classes.pop(key)
    return document
