"""The gauge sheet of a design in its three forms."""

from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.packet.gauge_files import dxf_of, svg_of
from geometry.packet.gauge_outlines import gauges_of
from geometry.packet.gauge_sheet import TITLE, cutter_sheet, paper_pages
from geometry.packet.paper import pdf_of, placed_page


def gauge_pdf(design: Design, facts: SheetFacts) -> bytes:
    """Gauges in true size on the paper of the facts, with bars to measure before anything is cut."""
    pages = [
        placed_page(
            width_mm=page.width_mm,
            height_mm=page.height_mm,
            picture=svg_of(page, lettering=False),
            texts=page.texts,
            alt="Outlines of gauges to cut, and bars of 100 mm and 4 in across and up.",
        )
        for page in paper_pages(gauges_of(design, facts.units), facts)
    ]
    return pdf_of("gauge.typ", facts, TITLE, {"pages": pages})


def gauge_svg(design: Design, facts: SheetFacts) -> str:
    """All gauges side by side in true size, as a picture that needs no font."""
    return svg_of(cutter_sheet(gauges_of(design, facts.units), facts), title=f"{TITLE}: {facts.title}")


def gauge_dxf(design: Design, facts: SheetFacts) -> str:
    """All gauges side by side for a cutter: closed outlines on a layer of their own, in mm."""
    return dxf_of(cutter_sheet(gauges_of(design, facts.units), facts))
