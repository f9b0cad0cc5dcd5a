"""Saw and file: the slot, or the whole pad, by hand against plates and rings of the gauge sheet."""

from collections.abc import Iterator, Mapping

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation, Table
from geometry.making.kit import (
    CALIPER,
    DIVIDERS,
    FINE_FILE,
    FLAT_PLATE,
    GAUGES,
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
from geometry.spread import general_tolerance_mm

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
_LATER = (*SLOT, "flats_width_mm")
_OF_THE_SLOT = ("slot_width_mm", "slot_depth_mm", "slot_offset_mm", "web_mm", "slot_corner_radius_mm")
SAW_SPARE_MM = 0.5
"""Left on each side of the slot for the file."""
_GAUGES: Mapping[str, str] = {
    "slot_width_mm": "Plate for the slot",
    "seat_diameter_mm": "Ring for the seat",
    "body_diameter_mm": "Ring for the body",
    "stem_diameter_mm": "Ring for the stem",
}


def gauge_table(pad: Pad, *names: str) -> Table:
    """The plates and rings to cut from sheet by the gauge sheet: the one must go, the other must not."""
    rows = []
    for name in names or tuple(_GAUGES):
        if getattr(pad, name) <= 0:
            continue
        nominal, tolerance = getattr(pad, name), general_tolerance_mm(pad, name)
        is_inside = name == "slot_width_mm"
        goes, stops = (
            (nominal - tolerance, nominal + tolerance) if is_inside else (nominal + tolerance, nominal - tolerance)
        )
        rows.append((_GAUGES[name], goes, stops))
    return Table(title="Gauges", columns=(("Gauge", ""), ("Must go", "mm"), ("Must not go", "mm")), rows=tuple(rows))


def slot_by_hand(pad: Pad, conditions: Conditions, shop: Shop) -> Iterator[Operation]:
    """Saw and file the slot."""
    family = conditions.material.family
    hold = hand_hold(pad)
    yield _mark_out(pad)
    yield Operation(
        title="Saw out the slot",
        set_up=3,
        holding=hold,
        tools=(saw(shop.kerf_mm), said("Narrow chisel")),
        steps=tuple(_saw_out(pad, shop)),
        why=said("Vice jaws across the walls would close the slot; here they press on solid plastic, along the slot."),
        watch=watch_for(family, "saw"),
        other_time_min=30.0,
    )
    yield Operation(
        title="File the slot to the gauge",
        set_up=3,
        holding=hold,
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
                "File the other wall until the go plate slides through the whole length; the no-go plate must"
                " not enter at either end."
            ),
            said("Finish walls and floor with 320 grit wrapped round a flat stick, along the slot."),
            said(
                "Leave a radius of {radius} in both corners of the floor: no saw mark may stay there.",
                radius=pad.slot_corner_radius_mm,
            ),
        ),
        tables=(gauge_table(pad, "slot_width_mm"),),
        watch=watch_for(family, "edges"),
        leaves_mm={name: getattr(pad, name) for name in _OF_THE_SLOT if getattr(pad, name) > 0},
        other_time_min=90.0,
    )
    yield from more_by_hand(pad, conditions, hold)


def _mark_out(pad: Pad) -> Operation:
    stands = "Seat face down on a flat plate."
    if pad.has_stem:
        stands = "Seat face down on two equal parallels, thicker than the stem's {stem}, on a flat plate."
    return Operation(
        title="Mark out the slot",
        set_up=3,
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
    """File body and seat round against rings; honest work for a patient hand, without a lathe."""
    family = conditions.material.family
    yield Operation(
        title="File both ends flat and square",
        set_up=1,
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
    yield Operation(
        title="File the body and the seat round",
        set_up=1,
        holding=said(
            "Vice with wooden jaws; or on a centre bolt turned by hand or by a drill press, never freehand in a drill."
        ),
        tools=(said("Rasp"), LARGE_FILE, SCRAPER, saw(shop.kerf_mm), GAUGES, DIVIDERS, FINE_FILE, RADIUS_GAUGE),
        steps=tuple(_round_steps(pad)),
        tables=(gauge_table(pad, "seat_diameter_mm", "body_diameter_mm", "stem_diameter_mm"),),
        why=said(
            "By hand the seat and the body come out to class c at best. The lip must be level: a wedge"
            " under the seam tips the pad."
        ),
        watch=watch_for(family, "edges", "saw"),
        leaves_mm={name: getattr(pad, name) for name in DIMENSIONS if name not in _LATER and getattr(pad, name) > 0},
        other_time_min=240.0,
    )


def _round_steps(pad: Pad) -> Iterator[Sentence]:
    stem = pad.stem_length_mm if pad.has_stem else 0.0
    also = " and {stem}" if pad.has_stem else ""
    yield said(
        f"Scribe circles from the centre of each end: {{body}} on the top, {{seat}}{also} on the foot. Square a line down"
        " the side, so that both centres stay on one axis.",
        body=pad.body_diameter_mm,
        seat=pad.seat_diameter_mm,
        stem=pad.stem_diameter_mm,
    )
    yield said("File the body to its ring. A bar that already measures within the body's limits stays as it is.")
    yield said(
        "Scribe the lip all round, {up} up from the foot. Saw in from there all round, short of the seat, and pare the seat"
        " down to its circle.",
        up=stem + pad.seat_length_mm,
    )
    yield said("File the lip flat and square to the side all round.")
    if pad.has_stem:
        yield said(
            "Scribe the seat's face all round, {stem} up from the foot. Saw in, pare the stem down to its circle, and file it"
            " to its ring, {across} across. File the seat's face flat: the load stands on it.",
            stem=stem,
            across=pad.stem_diameter_mm,
        )
    stem_too = ", its stem in the hole" if pad.has_stem else ""
    yield said(f"File the seat to its ring, then try it in the jack's cup: it drops in{stem_too} and turns by hand.")
    if pad.seat_corner_radius_mm > 0:
        yield said("File the seat's corner to the gauge of {radius}.", radius=pad.seat_corner_radius_mm)
    if pad.has_recess:
        yield said(
            "Recess in the seat's face: a flat-bottomed bit {across} across in a drill press, its stop set {depth} below the"
            " seat's face, the pad clamped. A knife or a hand drill does not make it round and deep enough: have it bored.",
            across=pad.seat_recess_diameter_mm,
            depth=pad.seat_recess_depth_mm,
        )
    yield said("Break the edges of the body {edge} × 45°.", edge=pad.edge_chamfer_mm)
