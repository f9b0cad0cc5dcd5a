"""The packet: cover, drawing, route card, inspection sheet, lifting card, record, calculation and sources in one document."""

from geometry.calculation.sheet import calculation_sheet
from geometry.design import Design
from geometry.drawing import draw, to_svg
from geometry.drawing.facts import SheetFacts
from geometry.drawing.svg import all_texts
from geometry.drawing.table import dimension_table
from geometry.packet.calculation import calculation_data
from geometry.packet.card import card_data
from geometry.packet.cover import cover_data
from geometry.packet.failed import banner_of, failed_part
from geometry.packet.making import inspection_data, making_data, source_rows
from geometry.packet.paper import pdf_of, placed_page
from geometry.packet.record import record_data
from geometry.standing import PartStanding

TITLE = "Lifting pad packet"
NO_MAKING = (
    "There is no route card and no inspection sheet in this packet, and its record in service is empty: the pad is not fit"
    " to make, and sheets that are torn from it would not say so. Change what fails, and print the packet anew."
)
NO_ROUTE = "There is no route card in this packet: its part must not be used. The inspection sheet tells why."


def packet_pdf(design: Design, facts: SheetFacts, *, failed: PartStanding | None = None) -> bytes:
    """Everything about a design on paper; the same bytes for the same design and facts.

    Marked where readings say that the part must not be used; ``failed`` is for readings that stand elsewhere than in the
    design's own document.

    Raises SheetError where the drawing finds no room.
    """
    found = failed or failed_part(design)
    drawing, sheet = draw(design.pad, facts), calculation_sheet(design)
    sizes = "; ".join(f"{row.words} {row.nominal}" for row in dimension_table(drawing))
    data = {
        "cover": cover_data(design, facts, sheet),
        "drawing": placed_page(
            width_mm=drawing.width_mm,
            height_mm=drawing.height_mm,
            picture=to_svg(drawing, lettering=False),
            texts=all_texts(drawing),
            alt=f"Part drawing {facts.design_id}, main scale {drawing.scale.words}. {sizes}.",
        ),
        "calculation": calculation_data(sheet, facts.units),
        "route": making_data(design, facts) if design.fit_to_make and found is None else None,
        "inspection": inspection_data(design, facts) if design.fit_to_make else None,
        "card": card_data(design, facts, found),
        "record": record_data(design, facts, is_failed=found is not None),
        "no_making": NO_ROUTE if design.fit_to_make else NO_MAKING,
        "sources": source_rows(design, sheet),
    }
    return pdf_of("packet.typ", facts, TITLE, data | banner_of(found, facts))
