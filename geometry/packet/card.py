"""The lifting card: one page for the garage wall, with everything that is needed while the car goes up."""

from collections.abc import Iterator

from geometry.calculation.book import Book
from geometry.calculation.inputs import write_inputs
from geometry.cautions import SignalWord
from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.making.wording import Units, length_shown
from geometry.packet.cover import section_picture
from geometry.packet.failed import banner_of, failed_part
from geometry.packet.paper import Data, pdf_of
from geometry.packet.record import discard_words, drawn_look, limit_rows
from geometry.packet.words import height_words, load_words, plate_words, shop_units
from geometry.standing import PartStanding, record_of

TITLE = "Lifting card"
_SIGNALS: tuple[SignalWord, ...] = ("DANGER", "WARNING", "CAUTION", "NOTICE")
_NARROW = 390
_UNFIT = "It is not fit to make, so there are no steps. What fails:"
_INSTEAD = (
    "Do not make it. Change what fails first: the material, a jack with a wider cup, or the measurement that is in doubt;"
    " the changes that would help are listed with the design. Print a new card for the changed design."
)
_DISCARD = "Keep it away from the jack. Mark it as scrap, and make another one to the drawing."
_LIFT, _LOAD = frozenset({"car.lift_needed_mm"}), frozenset({"car.cg_offset_mm", "car.ride_frequency_hz"})
_USED = _LIFT | _LOAD
"""What the card shows of answers that may be left to the program; all else on it must be measured."""
_ASSUMED_NOTE = "Assumed: not measured, the program's usual value. The calculation sheet says which and why."
_FAILED = "Its readings say that it must not be used, so there are no steps. Why:"


def card_pdf(design: Design, facts: SheetFacts, *, failed: PartStanding | None = None) -> bytes:
    """The card by itself, one page; marked where readings say that the part must not be used.

    ``failed`` is for readings that stand elsewhere than in the design's own document.
    """
    found = failed or failed_part(design)
    return pdf_of("card.typ", facts, TITLE, {"card": card_data(design, facts, found)} | banner_of(found, facts))


def card_data(design: Design, facts: SheetFacts, failed: PartStanding | None = None) -> Data:
    """What the card says; of a part that must not be used nothing that one would do with it."""
    units, (record, _) = shop_units(facts), record_of(design)
    may_be_used = failed is None and design.fit_to_make
    said = [c for c in design.cautions if may_be_used or not c.is_for_lifting]
    return {
        "for": design.measurements.title or "one jack and one car",
        "section": section_picture(design, facts, width=_NARROW, is_bare=True),
        "section_alt": "The pad in its place: seat on the cup's floor, lip off the rim, the seam in its slot.",
        "where": list(_where(design, units)),
        "heights": list(_heights(design, units)) if may_be_used else [],
        "assumed": _ASSUMED_NOTE if may_be_used and _assumed(design) & _USED else "",
        "load": list(_load(design, units)) if may_be_used else [],
        "steps": list(_steps(design, units)) if may_be_used else [],
        "no_steps": _UNFIT if failed is None else _FAILED,
        "failures": _failures(design, failed, units),
        "instead": "" if may_be_used else _INSTEAD if failed is None else _DISCARD,
        "cautions": [
            [signal, [c.text for c in said if c.signal == signal]]
            for signal in _SIGNALS
            if any(c.signal == signal for c in said)
        ],
        "looks": [drawn_look(look, with_words=False) for look in record.looks] if may_be_used else [],
        "limits": [row[:3] for row in limit_rows(record, units)] if may_be_used else [],
        "discard": discard_words(record, units) if may_be_used else [],
    }


def _failures(design: Design, failed: PartStanding | None, units: Units) -> list[str]:
    """What the readings say and what of the design fails, each once."""
    drawn = (f"{check.title}: {check.words}" for check in design.failures)
    return list(dict.fromkeys((*(reason.shown(units) for reason in (failed.reasons if failed else ())), *drawn)))


def _assumed(design: Design) -> frozenset[str]:
    """Keys of the answers that nobody gave, so that the program's usual value stands in."""
    return frozenset(i.key for i in write_inputs(Book(), design.conditions) if i.origin == "assumed" and i.remark)


def _lift_words(design: Design, units: Units) -> str:
    """How far the seam is to rise, marked where nobody said so."""
    mark = " (assumed)" if _assumed(design) & _LIFT else ""
    return f"{height_words(design.conditions.lift_needed_mm, units)}{mark}"


def _where(design: Design, units: Units) -> Iterator[list[str]]:
    c = design.conditions
    cup = f"bore {length_shown(c.foot.bore_mm, units)}, {length_shown(c.foot.depth_mm, units)} deep"
    yield [
        "Jack",
        f"The one with this cup: {cup}; rated load on its plate {plate_words(c.foot.rated_load_kg, units)}",
    ]
    yield ["Seam", f"{length_shown(c.seam.thickness_mm, units)} thick, {length_shown(c.seam.height_mm, units)} high"]
    yield ["Pad", f"Number {design.design_id}, {c.material.short_name}; the slot lies along the seam"]


def _heights(design: Design, units: Units) -> Iterator[list[str]]:
    """Heights of the jack's rim above the ground, from low to high, and the seam's."""
    c, pad = design.conditions, design.pad
    touch = c.seam.edge_height_mm + c.foot.depth_mm - pad.web_mm
    low, high = c.foot.rim_height_low_mm, c.foot.rim_height_high_mm
    walls = low - c.foot.depth_mm + pad.top_height_mm
    lifted = _lift_words(design, units)
    yield ["Rim, jack all the way down", height_words(low, units)]
    yield ["Wall tops of the pad then", height_words(walls, units)]
    yield ["Seam's edge, car on its wheels", height_words(c.seam.edge_height_mm, units)]
    if c.seam.edge_height_flat_mm is not None:
        yield ["Seam's edge, tyre flat", height_words(c.seam.edge_height_flat_mm, units)]
    yield ["Rim as the seam meets the slot's floor", height_words(touch, units)]
    yield [f"Rim needed to lift by {lifted}", height_words(design.rim_height_needed_mm, units)]
    yield ["Rim, jack all the way up", "not measured: look first" if high is None else height_words(high, units)]


def _load(design: Design, units: Units) -> Iterator[list[str]]:
    c = design.conditions
    mark = ", part of it assumed" if _assumed(design) & _LOAD else ""
    yield [f"Load used in the estimates{mark}", load_words(c.design_force_n, units)]
    yield ["Jack's rated load", plate_words(c.foot.rated_load_kg, units)]


def _steps(design: Design, units: Units) -> Iterator[list[str]]:
    """(when, what): the routine of a lift; what is done at the first use alone is marked."""
    c, pad = design.conditions, design.pad
    stem = ", stem in its hole" if pad.has_stem else ""
    touch = height_words(c.seam.edge_height_mm + c.foot.depth_mm - pad.web_mm, units)
    needed, lifted = height_words(design.rim_height_needed_mm, units), _lift_words(design, units)
    yield ["", "Look at pad, cup and seam as listed below. Read the pad's number: it must be this card's."]
    yield [
        "",
        "Hard, level ground. Park brake on, the wheels that stay down chocked on both sides. Nobody and no pet in the car.",
    ]
    yield ["", f"Wipe the cup. Drop the pad in: seat on the cup's floor{stem}, lip off the rim, slot along the seam."]
    yield [
        "",
        "Roll the jack in at the lift point that the vehicle's manual names. The walls pass under the seam's edge.",
    ]
    yield [
        "",
        f"Raise until the seam stands on the slot's floor (rim at about {touch}). Look in from both ends: the seam is in the"
        " slot all along, the sill is clear of both walls.",
    ]
    yield [
        "First use",
        "Raise until the tyre just unloads. Lower. Look at pad, cup and seam. Nothing moved, whitened or bent: then lift.",
    ]
    yield ["", "Lift in stages, the jack free to roll. Where pad or seam shifts, lower and seat them anew."]
    yield [
        "",
        f"Rim at {needed}: the seam has risen by {lifted}. Set stands at once, from the side, at"
        " arm's length, nothing of you under the sill or the car, and lower the car onto them.",
    ]
    yield [
        "",
        "Down again: nobody under the car. Raise it off the stands and take them away from the side, at arm's length, nothing"
        " of you under the sill or the car. Lower slowly, roll the jack out.",
    ]
