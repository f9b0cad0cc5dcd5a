"""The drawing as an SVG picture: the document played back, its style classes turned into plain attributes."""

from collections.abc import Iterable
from xml.etree import ElementTree

from ezdxf.addons.drawing.config import BackgroundPolicy, ColorPolicy, Configuration, LineweightPolicy
from ezdxf.addons.drawing.frontend import Frontend
from ezdxf.addons.drawing.layout import Margins, Page, Settings, Units
from ezdxf.addons.drawing.properties import BackendProperties, RenderContext
from ezdxf.addons.drawing.svg import SVGBackend, SVGRenderBackend
from ezdxf.math import BoundingBox2d

from geometry.drawing.dxf import document_of, repeatable
from geometry.drawing.lettering import CAP_HEIGHT_UNITS, advance_units, outline
from geometry.drawing.model import Drawing, Text
from geometry.drawing.table import dimension_table

_UNITS_PER_MM = 100
"""The picture's own grid: a hundredth of a millimetre."""
_CONFIGURATION = Configuration(
    background_policy=BackgroundPolicy.WHITE,
    color_policy=ColorPolicy.BLACK,
    lineweight_policy=LineweightPolicy.ABSOLUTE,
    max_flattening_distance=0.005,
)


class _AttributeBackend(SVGRenderBackend):
    """Writes presentation attributes where the library would write classes: a strict content policy refuses style blocks."""

    def __init__(self, page: Page, settings: Settings) -> None:
        super().__init__(page, settings)
        self.groups: dict[str, ElementTree.Element] = {}

    def _group(self, layer: str) -> ElementTree.Element:
        if layer not in self.groups:
            self.groups[layer] = ElementTree.SubElement(self.entities, "g", {"data-layer": layer.lower()})
        return self.groups[layer]

    def add_strokes(self, d: str, properties: BackendProperties) -> None:
        """A line, an arc or a curve."""
        if d:
            width = self.resolve_stroke_width(properties.lineweight)
            attributes = {"d": d, "fill": "none", "stroke": properties.color[:7], "stroke-width": str(width)}
            ElementTree.SubElement(self._group(properties.layer), "path", attributes)

    def add_filling(self, d: str, properties: BackendProperties) -> None:
        """A letter or an arrow."""
        if d:
            ElementTree.SubElement(self._group(properties.layer), "path", {"d": d, "fill": properties.color[:7]})


class _Backend(SVGBackend):
    @staticmethod
    def make_backend(page: Page, settings: Settings) -> SVGRenderBackend:
        """The backend that writes attributes."""
        return _AttributeBackend(page, settings)


def to_svg(drawing: Drawing, *, lettering: bool = True) -> str:
    """The drawing as an SVG document in true paper size, with title and description for those who do not see it."""
    with repeatable():
        document = document_of(drawing, lettering=False)
        backend = _Backend()
        Frontend(RenderContext(document), backend, config=_CONFIGURATION).draw_layout(document.modelspace())
    scale = drawing.scale.factor
    page = Page(drawing.width_mm, drawing.height_mm, Units.mm, Margins.all(0))
    longest = max(drawing.width_mm, drawing.height_mm)
    settings = Settings(fit_page=False, scale=scale, output_coordinate_space=longest * _UNITS_PER_MM)
    sheet = BoundingBox2d([(0, 0), (drawing.width_mm / scale, drawing.height_mm / scale)])
    root = backend.get_xml_root_element(page, settings=settings, render_box=sheet)
    for definitions in root.findall("defs"):
        root.remove(definitions)
    if lettering:
        _letter(root, all_texts(drawing), drawing.height_mm)
    _describe(root, drawing)
    return ElementTree.tostring(root, encoding="unicode")


def all_texts(drawing: Drawing) -> tuple[Text, ...]:
    """Every word on the sheet, those of the dimensions last."""
    return (*drawing.texts, *(dimension.text for dimension in drawing.dimensions))


def _letter(root: ElementTree.Element, texts: Iterable[Text], height_mm: float) -> None:
    """Write with outlines, each character's once: a picture that needs no font."""
    definitions = ElementTree.SubElement(root, "defs")
    groups: dict[str, ElementTree.Element] = {}
    known: set[str] = set()
    for text in texts:
        if text.layer not in groups:
            groups[text.layer] = ElementTree.SubElement(root, "g", {"data-layer": text.layer.lower()})
        (x, y), size = text.start, text.height_mm * _UNITS_PER_MM / CAP_HEIGHT_UNITS
        place = f"translate({x * _UNITS_PER_MM:.1f} {(height_mm - y) * _UNITS_PER_MM:.1f})"
        turn = " rotate(-90)" if text.turned else ""
        line = ElementTree.SubElement(
            groups[text.layer],
            "g",
            {"transform": f"{place}{turn} scale({size:.5f} {-size:.5f})", "data-words": text.words},
        )
        pen = 0
        for character in text.words:
            name = f"glyph-{ord(character):x}"
            if path := outline(character):
                if name not in known:
                    known.add(name)
                    ElementTree.SubElement(definitions, "path", {"id": name, "d": path})
                ElementTree.SubElement(line, "use", {"href": f"#{name}", "x": str(pen)})
            pen += advance_units(character)


def _describe(root: ElementTree.Element, drawing: Drawing) -> None:
    """Title and description first."""
    root.set("role", "img")
    root.set("aria-labelledby", "drawing-title drawing-description")
    title = ElementTree.Element("title", id="drawing-title")
    title.text = f"Part drawing {drawing.facts.design_id}: {drawing.facts.title}"
    description = ElementTree.Element("desc", id="drawing-description")
    views = ", ".join(placed.view.name for placed in drawing.views)
    sizes = "; ".join(f"{row.words} {row.nominal}" for row in dimension_table(drawing))
    unfit = "" if drawing.facts.fit_to_make else "Not fit to make. "
    description.text = f"{unfit}Views: {views}. Main scale {drawing.scale.words}. Dimensions: {sizes}."
    root.insert(0, title)
    root.insert(1, description)
