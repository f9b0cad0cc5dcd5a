"""The lifting card: one page for the garage wall, with everything that is needed while the car goes up."""

from collections.abc import Iterator

from geometry.calculation.book import Book
from geometry.calculation.inputs import write_inputs
from geometry.cautions import SignalWord
from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.drawing.facts import Units as SheetUnits
from geometry.letters import upper_first
from geometry.making.own_words import car_words, jack_words
from geometry.making.wording import Units, length_shown
from geometry.packet.cover_picture import section_picture
from geometry.packet.failed import banner_of, failed_part
from geometry.packet.measured import car_measures, jack_measures
from geometry.packet.paper import Data, pdf_of
from geometry.packet.record import discard_words, drawn_look, limit_rows
from geometry.packet.words import check_words, height_words, load_words, plate_words, shop_units
from geometry.standing import PartStanding, record_of

TITLE = "Lifting card"
_SIGNALS: tuple[SignalWord, ...] = ("DANGER", "WARNING", "CAUTION", "NOTICE")
_NARROW = 390
_UNFIT = "It is not fit to make, so there are no steps. What fails:"
_INSTEAD = (
    "Do not make it. Change what fails first: the material, the jack, or the measurement that is in doubt;"
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
        "section_alt": f"The pad in its place: {_in_place(design)}.",
        "where": list(_where(design, units)),
        "heights": list(_heights(design, units)) if may_be_used else [],
        "assumed": _ASSUMED_NOTE if may_be_used and _assumed(design) & _USED else "",
        "load": list(_load(design, units)) if may_be_used else [],
        "steps": list(_steps(design, units)) if may_be_used else [],
        "no_steps": _UNFIT if failed is None else _FAILED,
        "failures": _failures(design, failed, facts.units),
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


def _in_place(design: Design) -> str:
    """How the pad stands and takes the car, for those who do not see it."""
    stands = jack_words(design.conditions).put.format(stem="").partition(": ")[2]
    return f"{stands}, {car_words(design.conditions).lies}"


def _failures(design: Design, failed: PartStanding | None, units: SheetUnits) -> list[str]:
    """What the readings say and what of the design fails, each once."""
    eye: Units = "in" if units in {"in", "in_fraction"} else "mm"
    drawn = (f"{check.title}: {check_words(check, units)}" for check in design.failures)
    return list(dict.fromkeys((*(reason.shown(eye) for reason in (failed.reasons if failed else ())), *drawn)))


def _assumed(design: Design) -> frozenset[str]:
    """Keys of the answers that nobody gave, so that the program's usual value stands in."""
    return frozenset(i.key for i in write_inputs(Book(), design.conditions) if i.origin == "assumed" and i.remark)


def _lift_words(design: Design, units: Units) -> str:
    """How far the car is to rise, marked where nobody said so."""
    mark = " (assumed)" if _assumed(design) & _LIFT else ""
    return f"{height_words(design.conditions.lift_needed_mm, units)}{mark}"


def _where(design: Design, units: Units) -> Iterator[list[str]]:
    c, car = design.conditions, car_words(design.conditions)
    yield [
        "Jack",
        f"The one with this {jack_measures(c, units)}; rated load on its plate {plate_words(c.foot.rated_load_kg, units)}",
    ]
    name, measured = car_measures(c, units)
    yield [name, measured]
    yield ["Pad", f"Number {design.design_id}, {c.material.short_name}; {car.lies}"]


def _heights(design: Design, units: Units) -> Iterator[list[str]]:
    """Heights of the jack's head above the ground, from low to high, and of what the car is lifted by."""
    c, pad = design.conditions, design.pad
    car, top = car_words(c), upper_first(jack_words(c).top)
    low, high = c.foot.rim_height_low_mm, c.foot.rim_height_high_mm
    highest = low - c.foot.depth_mm + pad.top_height_mm
    lifted, edge = _lift_words(design, units), upper_first(car.edge)
    above = car.top if car.top.endswith("plug") else f"{car.top} of the pad"
    yield [f"{top}, jack all the way down", height_words(low, units)]
    yield [f"{upper_first(above)} then", height_words(highest, units)]
    yield [f"{edge}, car on its wheels", height_words(c.head.edge_height_mm, units)]
    if c.head.edge_height_flat_mm is not None:
        yield [f"{edge}, tyre flat", height_words(c.head.edge_height_flat_mm, units)]
    yield [f"{top} as the {car.name} meets the {car.carries}", height_words(_touch_mm(design), units)]
    yield [f"{top} needed to lift by {lifted}", height_words(design.rim_height_needed_mm, units)]
    yield [f"{top}, jack all the way up", "not measured: look first" if high is None else height_words(high, units)]


def _touch_mm(design: Design) -> float:
    """How high the top of the jack's head stands as the car first meets what carries it, [mm]."""
    c = design.conditions
    return c.head.edge_height_mm + c.foot.depth_mm - design.pad.web_mm


def _load(design: Design, units: Units) -> Iterator[list[str]]:
    c = design.conditions
    mark = ", part of it assumed" if _assumed(design) & _LOAD else ""
    yield [f"Load used in the estimates{mark}", load_words(c.design_force_n, units)]
    yield ["Jack's rated load", plate_words(c.foot.rated_load_kg, units)]


def _steps(design: Design, units: Units) -> Iterator[list[str]]:
    """(when, what): the routine of a lift; what is done at the first use alone is marked."""
    c, pad = design.conditions, design.pad
    jack, car = jack_words(c), car_words(c)
    top, under = jack.top, "under the sill or the car" if pad.has_slot else "under the car"
    needed, lifted = height_words(design.rim_height_needed_mm, units), _lift_words(design, units)
    looked = f"pad, {jack.head} and {car.name}"
    yield ["", f"Look at {looked} as listed below. Read the pad's number: it must be this card's."]
    yield [
        "",
        "Hard, level ground. Park brake on, the wheels that stay down chocked on both sides. Nobody and no pet in the car.",
    ]
    along = ", slot along the seam" if pad.has_slot else ""
    yield ["", f"{jack.put.format(stem=_stem(design))}{along}.{_turned(design, units)}"]
    yield ["", f"Roll the jack in at the lift point that the vehicle's manual names. {car.passes}"]
    touch = height_words(_touch_mm(design), units)
    yield ["", f"Raise until {car.stands} ({top} at about {touch}). {car.seen}"]
    yield [
        "First use",
        f"Raise until the tyre just unloads. Lower. Look at {looked}. Nothing moved, whitened or bent: then lift.",
    ]
    yield ["", f"Lift in stages, the jack free to roll. Where pad or {car.name} shifts, lower and seat them anew."]
    yield [
        "",
        f"{upper_first(top)} at {needed}: the {car.name} has risen by {lifted}. Set stands at once, from the side, at"
        f" arm's length, nothing of you {under}, and lower the car onto them.",
    ]
    yield [
        "",
        "Down again: nobody under the car. Raise it off the stands and take them away from the side, at arm's length, nothing"
        f" of you {under}. Lower slowly, roll the jack out.",
    ]


def _turned(design: Design, units: Units) -> str:
    """Which way round a pad goes whose slot is off its middle; nothing of one that goes in either way.

    On which side the seam passes the jack is not asked: it is seen at the car, and the picture has it inboard.
    """
    off = design.pad.slot_offset_mm
    if off <= 0:
        return ""
    return (
        f" The slot is {length_shown(off, units)} off the pad's middle: turn the pad so that the slot lies on the side on which"
        " the seam passes the middle of the jack's head (in the picture inboard, which may not be your side)."
    )


def _stem(design: Design) -> str:
    """What goes along with the seat: a stem into its hole, or a pin through the stem."""
    pad = design.pad
    if design.conditions.foot.locates == "stem":
        return ", the retaining pin through tube and stem" if pad.has_cross_hole else ""
    return ", stem in its hole" if pad.has_stem else ""
