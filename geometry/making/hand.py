"""Saw and file: the slot, or the whole pad, by hand against plates of the gauge sheet, and what that is good enough for."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation, Table
from geometry.making.stock import StockPlan
from geometry.making.watch import watch_for
from geometry.making.wording import said
from geometry.pad import DIMENSIONS, Pad
from geometry.rules import Check
from geometry.spread import AS_DRAWN, Spread, general_tolerance_mm

SLOT = ("slot_width_mm", "slot_depth_mm", "web_mm", "slot_corner_radius_mm", "slot_mouth_chamfer_mm")
"""What a slot cut by hand decides."""
SAW_SPARE_MM = 0.5
"""Left on each side of the slot for the file."""
_HAND_HOLD = "Vice with wooden or lead jaws, on the solid body below the slot's floor, at the two ends of the slot."


@dataclass(frozen=True, slots=True)
class HandVerdict:
    """What the checks say when some dimensions are only held to class c."""

    dimensions: tuple[str, ...]
    """Held to class c of ISO 2768-1."""
    checks: tuple[Check, ...]
    """Every check at class c."""
    newly_failing: tuple[Check, ...]
    """Pass at class m, fail at class c."""

    @property
    def is_enough(self) -> bool:
        """Whether hand work changes no verdict to a failure."""
        return not self.newly_failing

    @property
    def still_met(self) -> tuple[Check, ...]:
        """The checks that pass at class c and depend on a tolerance."""
        return tuple(c for c in self.checks if c.verdict == "pass" and c.finding and "tol" in _symbols(c))

    @property
    def words(self) -> str:
        """Whether hand work will do, in one or two sentences."""
        if self.is_enough:
            return "Made by hand to class c, every estimate that passes as drawn still passes. Not tested."
        names = "; ".join(c.rule.title for c in self.newly_failing)
        return (
            f"Class c is too coarse for this pad: {names}. Work to the drawing's limits with the gauge"
            f" sheet, measure, and enter the"
            " readings: the estimates are then made again for the part as it is."
        )


def hand_verdict(pad: Pad, conditions: Conditions, dimensions: tuple[str, ...] = DIMENSIONS) -> HandVerdict:
    """Judge a pad of which some dimensions are made by hand, to class c of ISO 2768-1."""
    coarse = Spread({name: general_tolerance_mm(pad, name, "c") for name in dimensions if getattr(pad, name) > 0})
    before = {c.code: c.verdict for c in judge(conditions, pad, AS_DRAWN)}
    checks = judge(conditions, pad, coarse)
    failing = tuple(c for c in checks if c.verdict == "fail" and before[c.code] != "fail")
    return HandVerdict(dimensions, checks, failing)


def gauge_table(pad: Pad) -> Table:
    """The plates to cut from sheet by the gauge sheet: the one must go, the other must not."""
    rows = []
    for name, title in (
        ("slot_width_mm", "Plate for the slot"),
        ("seat_diameter_mm", "Ring for the seat"),
        ("body_diameter_mm", "Ring for the body"),
    ):
        nominal, tolerance = getattr(pad, name), general_tolerance_mm(pad, name)
        inside = name == "slot_width_mm"
        goes, stops = (
            (nominal - tolerance, nominal + tolerance) if inside else (nominal + tolerance, nominal - tolerance)
        )
        rows.append((title, goes, stops))
    return Table(title="Gauges", columns=(("Gauge", ""), ("Must go", "mm"), ("Must not go", "mm")), rows=tuple(rows))


def slot_by_hand(pad: Pad, conditions: Conditions, shop: Shop) -> Iterator[Operation]:
    """Saw and file the slot."""
    half = pad.slot_width_mm / 2
    spare = SAW_SPARE_MM + shop.kerf_mm / 2
    family = conditions.material.family
    yield Operation(
        title="Mark out the slot",
        set_up=3,
        holding=said("Seat face down on a flat plate."),
        tool=said("Scriber, square, dividers, centre punch"),
        steps=(
            said("Rub chalk or pen over the top and the two sides."),
            said(
                "Find the middle of the top with dividers and scribe the centre line across it, square down both sides."
            ),
            said("Scribe a line {half} to each side of it, over the top and down both sides.", half=half),
            said("Scribe the floor on both sides, {web} up from the plate.", web=pad.web_mm),
        ),
        other_time_min=15.0,
    )
    yield Operation(
        title="Saw out the slot",
        set_up=3,
        holding=said(_HAND_HOLD),
        tool=said("Fine hacksaw, {kerf} wide; narrow chisel", kerf=shop.kerf_mm),
        steps=(
            said(
                "Saw down {off} inside each wall line, to {off} above the floor line. Turn the pad round"
                " every few strokes.",
                off=spare,
            ),
            said(
                "Saw more cuts between these two until only thin leaves stand, and break the leaves out with"
                " a narrow chisel."
            ),
        ),
        why=said("Vice jaws across the walls would close the slot; here they press on solid plastic, along the slot."),
        watch=watch_for(family, "saw"),
        other_time_min=30.0,
    )
    yield Operation(
        title="File the slot to the gauge",
        set_up=3,
        holding=said(_HAND_HOLD),
        tool=said("Flat file with one safe edge, 320 grit on a flat stick, gauge plates"),
        steps=(
            said("File one wall to its line first: straight by a steel rule, square by a small square."),
            said("File the floor to {web} over the seat face; measure at both ends and in the middle.", web=pad.web_mm),
            said(
                "File the other wall until the go plate slides through the whole length; the no-go plate must"
                " not enter at either"
                " end."
            ),
            said(
                "Leave a radius of {radius} in both corners of the floor: no saw mark may stay there.",
                radius=pad.slot_corner_radius_mm,
            ),
        ),
        tables=(gauge_table(pad),),
        watch=watch_for(family, "edges"),
        leaves_mm={name: getattr(pad, name) for name in SLOT if name != "slot_mouth_chamfer_mm"},
        other_time_min=90.0,
    )


def round_by_hand(pad: Pad, conditions: Conditions, plan: StockPlan, shop: Shop) -> Iterator[Operation]:
    """File body and seat round against rings; honest work for a patient hand, without a lathe."""
    family = conditions.material.family
    yield Operation(
        title="File both ends flat and square",
        set_up=1,
        holding=said("Vice with wooden jaws, on the raw bar."),
        tool=said("Large flat file, square, 80 then 320 grit on a flat plate"),
        steps=(
            said("File one end flat: it stands on a glass plate without rocking."),
            said("File the other end to {height}, square to the bar all round.", height=pad.overall_height_mm),
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
        tool=said("Rasp, flat file, ring gauges, dividers"),
        steps=(
            said(
                "Scribe circles on both ends from one centre: {body} on the top, {seat} on the foot.",
                body=pad.body_diameter_mm,
                seat=pad.seat_diameter_mm,
            ),
            said("File the body to its ring. A bar that already measures within the body's limits stays as it is."),
            said(
                "Scribe the lip {length} up from the foot. Saw in from there all round, short of the seat,"
                " and pare the seat down.",
                length=pad.seat_length_mm,
            ),
            said("File the seat to its ring, then try it in the jack's cup: it drops in and turns by hand."),
            said("File the corner to a gauge of {radius} cut from card.", radius=pad.seat_corner_radius_mm),
            said("Break the edges {edge} × 45°.", edge=pad.edge_chamfer_mm),
            *(
                (
                    said(
                        "The stem stays as a boss {stem} across and {length} long: pare round it last.",
                        stem=pad.stem_diameter_mm,
                        length=pad.stem_length_mm,
                    ),
                )
                if pad.has_stem
                else ()
            ),
        ),
        tables=(gauge_table(pad),),
        why=said(
            "By hand the seat and the body come out to class c at best. The lip must be level: a wedge"
            " under the seam tips the pad."
        ),
        watch=watch_for(family, "edges", "saw"),
        leaves_mm={
            name: getattr(pad, name)
            for name in DIMENSIONS
            if name not in SLOT and not (name.startswith("stem") and not pad.has_stem)
        },
        other_time_min=240.0,
    )


def _symbols(check: Check) -> set[str]:
    numbers = check.finding.numbers if check.finding else {}
    return {"tol" if name.startswith("tol") else name for name in numbers}
