"""Saw and file: the slot, or the whole pad, by hand against gauges cut out of the gauge sheet."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import FIRST, ON_TOP, Operation
from geometry.making.gauge_limits import ROUND_SIZES, gauge_table
from geometry.making.hand_round import round_steps
from geometry.making.kit import (
    CALIPER,
    DIVIDERS,
    FINE_FILE,
    FLAT_PLATE,
    GAUGES,
    GRIT,
    GRIT_PAPER,
    LARGE_FILE,
    RADIUS_GAUGE,
    RULE,
    SCRAPER,
    SCRIBER,
    SQUARE,
    saw,
)
from geometry.making.more_by_hand import more_by_hand
from geometry.making.slot_hold import hand_hold
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import DIMENSIONS, Pad

SLOT = (
    "slot_width_mm",
    "slot_depth_mm",
    "slot_offset_mm",
    "cross_slot_width_mm",
    "relief_width_mm",
    "relief_length_mm",
    "relief_depth_mm",
    "web_mm",
    "slot_corner_radius_mm",
    "slot_mouth_chamfer_mm",
)
"""What a slot cut by hand decides."""
_LATER = frozenset({*SLOT, "flats_width_mm", "cross_hole_diameter_mm", "cross_hole_distance_mm"}) - {"web_mm"}
"""What operations of their own leave after the round work; the web too where a slot decides it."""
_PLUG_SIDES = frozenset({"plug_width_mm", "plug_length_mm", "plug_corner_radius_mm"})
_OF_THE_SLOT = ("slot_width_mm", "slot_depth_mm", "slot_offset_mm", "web_mm", "slot_corner_radius_mm")
SAW_SPARE_MM = 0.5
"""Left on each side of the slot for the file."""


def slot_by_hand(pad: Pad, conditions: Conditions, shop: Shop) -> Iterator[Operation]:
    """Saw and file the slot."""
    yield _mark_out(pad)
    yield _sawn_out(pad, conditions, shop)
    yield _filed(pad, conditions)
    yield from more_by_hand(pad, conditions, hand_hold(pad))


def _mark_out(pad: Pad) -> Operation:
    stands = "Seat face down on a flat plate."
    if pad.has_stem:
        stands = "Seat face down on two equal parallels, thicker than the stem's {stem}, on a flat plate."
    return Operation(
        title="Mark out the slot",
        set_up=ON_TOP,
        holding=said(stands, stem=pad.stem_length_mm),
        tools=(SCRIBER, SQUARE, DIVIDERS, RULE, FLAT_PLATE),
        steps=(
            said("Rub chalk or pen over the top and the two sides."),
            said(
                "Find the middle of the top with dividers and scribe the centre line across it, square down both sides."
            ),
            _walls_scribed(pad),
            said(
                "Scribe the floor on both sides, {depth} below the wall tops: {web} above the seat face.",
                depth=pad.slot_depth_mm,
                web=pad.web_mm,
            ),
        ),
        other_time_min=15.0,
    )


def _walls_scribed(pad: Pad) -> Sentence:
    half = pad.slot_width_mm / 2
    if pad.slot_offset_mm > 0:
        return said(
            "The slot stands off the middle: scribe its own middle {off} from that line and parallel to it, then a line {half} to"
            " each side of the slot's middle, over the top and down both sides.",
            off=pad.slot_offset_mm,
            half=half,
        )
    return said("Scribe a line {half} to each side of it, over the top and down both sides.", half=half)


def _sawn_out(pad: Pad, c: Conditions, shop: Shop) -> Operation:
    """The slot roughed with the saw, short of its lines."""
    return Operation(
        title="Saw out the slot",
        set_up=ON_TOP,
        holding=hand_hold(pad),
        tools=(saw(shop.kerf_mm), said("Narrow chisel")),
        steps=tuple(_saw_out(pad, shop)),
        why=said("Vice jaws across the walls would close the slot; here they press on solid plastic, along the slot."),
        watch=watch_for(c.material.family, "saw"),
        other_time_min=30.0,
    )


def _filed(pad: Pad, c: Conditions) -> Operation:
    """The slot brought to its size by the gauge."""
    return Operation(
        title="File the slot to the gauge",
        set_up=ON_TOP,
        holding=hand_hold(pad),
        tools=(
            said("Flat file with one safe edge, thinner than {slot}", slot=pad.slot_width_mm),
            GRIT_PAPER,
            GAUGES,
            RULE,
            SQUARE,
            CALIPER,
        ),
        steps=(
            said("File one wall to its line first: straight by a steel rule, square to the top by a small square."),
            said(
                "File the floor to {depth} below the wall tops, by the depth rod at both ends and in the middle; {web} is"
                " then left to the seat face.",
                depth=pad.slot_depth_mm,
                web=pad.web_mm,
            ),
            said(
                "File the other wall until the gauge that goes in slides through the whole length; the other one must not enter at"
                " either end."
            ),
            said(f"Finish walls and floor with {GRIT} wrapped round a flat stick, along the slot."),
            said(
                "Leave a radius of {radius} in both corners of the floor: no saw mark may stay there.",
                radius=pad.slot_corner_radius_mm,
            ),
        ),
        tables=(gauge_table(pad, "slot_width_mm"),),
        watch=watch_for(c.material.family, "edges"),
        leaves_mm={name: getattr(pad, name) for name in _OF_THE_SLOT if getattr(pad, name) > 0},
        other_time_min=90.0,
    )


def _saw_out(pad: Pad, shop: Shop) -> Iterator[Sentence]:
    off = SAW_SPARE_MM + shop.kerf_mm / 2
    above = said(
        "Stop {spare} above the floor line. Turn the pad round every few strokes.",
        spare=SAW_SPARE_MM,
    )
    if pad.slot_width_mm <= 2 * off:
        yield said("Saw once, down the slot's middle: the slot is hardly wider than the saw's cut.")
        yield above
        return
    yield said("Saw twice, the middle of the blade {off} inside each wall line.", off=off)
    yield above
    yield said(
        "Saw more cuts between these two where more than a thin leaf stands, and break the leaves out with a narrow chisel."
    )


def round_by_hand(pad: Pad, conditions: Conditions, shop: Shop) -> Iterator[Operation]:
    """File body and seat round against gap gauges; honest work for a patient hand, without a lathe."""
    family = conditions.material.family
    yield Operation(
        title="File both ends flat and square",
        set_up=FIRST,
        holding=said("Vice with wooden jaws, on the raw bar."),
        tools=(LARGE_FILE, SQUARE, said("80 grit paper"), GRIT_PAPER, FLAT_PLATE, CALIPER),
        steps=(
            said("File one end flat, finish it on 80 grit, then 320, on a flat plate: it stands without rocking."),
            said("File the other end to {height}, square to the bar all round.", height=pad.overall_height_mm),
            said("Mark one end as the foot and the other as the top."),
        ),
        leaves_mm={"overall_height_mm": pad.overall_height_mm},
        watch=watch_for(family, "edges"),
        other_time_min=40.0,
    )
    if pad.has_skirt:
        yield _turned_elsewhere(pad)
        return
    yield Operation(
        title="File the body and the seat round",
        set_up=FIRST,
        holding=said(
            "Vice with wooden jaws; or on a centre bolt turned by hand or by a drill press, never freehand in a drill."
        ),
        tools=(said("Rasp"), LARGE_FILE, SCRAPER, saw(shop.kerf_mm), GAUGES, DIVIDERS, FINE_FILE, RADIUS_GAUGE),
        steps=tuple(round_steps(pad)),
        tables=(gauge_table(pad, *ROUND_SIZES, *(("plug_width_mm",) if pad.plug_is_round else ())),),
        why=said(
            "By hand the seat and the body come out to class c at best. The lip must be level: a wedge"
            " under the seam tips the pad."
            if pad.has_slot
            else "By hand the seat and the body come out to class c at best. The lip must be level all round."
        ),
        watch=watch_for(family, "edges", "saw"),
        leaves_mm=_left_round(pad),
        other_time_min=240.0,
    )


def _left_round(pad: Pad) -> dict[str, float]:
    """What the round work finishes: all that no saw cut of its own comes back to."""
    later = _LATER | ({"web_mm"} if pad.has_slot else frozenset())
    later |= frozenset() if pad.plug_is_round else _PLUG_SIDES
    return {name: getattr(pad, name) for name in DIMENSIONS if name not in later and getattr(pad, name) > 0}


def _turned_elsewhere(pad: Pad) -> Operation:
    """Body, seat and skirt of a pad that no file can make."""
    return Operation(
        title="Have the body, the seat and the skirt turned",
        set_up=FIRST,
        holding=said("In the chuck of a lathe, at somebody's who has one."),
        tools=(said("The drawing"), CALIPER),
        steps=(
            said(
                "The skirt stands around the seat, {bore} inside and {deep} below the lip: no saw and no file gets in there."
                " Have everything that is round turned by the drawing before the top is sawn.",
                bore=pad.skirt_bore_mm,
                deep=pad.skirt_length_mm,
            ),
            said("Measure what comes back by the inspection sheet before you go on."),
        ),
        leaves_mm=_left_round(pad),
        other_time_min=60.0,
    )
