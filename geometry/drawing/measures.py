"""The dimensions that make the part, each once: by function from the seat face, with limits from the general tolerances."""

from dataclasses import replace

from geometry.drawing.facts import CRITICAL_MARK, SheetFacts
from geometry.drawing.model import Measure
from geometry.drawing.size_writer import SizeWriter
from geometry.geometrical import SLOT_SYMMETRY
from geometry.pad import Pad


def measures(pad: Pad, facts: SheetFacts) -> dict[str, Measure]:
    """Every dimension to be shown, by its name in the pad; what the pad does not have is left out."""
    writer = SizeWriter(facts.units, facts.job_units)
    shown = [*_of_foot(pad, writer), *_of_body(pad, writer), *(_of_slot(pad, writer) if pad.has_slot else ())]
    if pad.has_plug:
        shown += _of_plug(pad, writer)
    return {m.name: _marked(m) if m.name in facts.critical else m for m in shown if m.nominal_mm > 0}


def _of_foot(pad: Pad, writer: SizeWriter) -> list[Measure]:
    found = [
        writer.diameter("seat_diameter_mm", pad.seat_diameter_mm),
        writer.length("seat_length_mm", pad.seat_length_mm),
        writer.outer_radius("seat_corner_radius_mm", pad.seat_corner_radius_mm),
        writer.diameter("seat_recess_diameter_mm", pad.seat_recess_diameter_mm if pad.has_recess else 0.0),
        writer.length("seat_recess_depth_mm", pad.seat_recess_depth_mm),
        writer.diameter("skirt_bore_mm", pad.skirt_bore_mm if pad.has_skirt else 0.0),
        writer.length("skirt_length_mm", pad.skirt_length_mm),
    ]
    if pad.has_stem:
        found += [
            writer.diameter("stem_diameter_mm", pad.stem_diameter_mm),
            writer.length("stem_length_mm", pad.stem_length_mm),
        ]
    if pad.has_cross_hole:
        found += [
            writer.diameter("cross_hole_diameter_mm", pad.cross_hole_diameter_mm, suffix=" through"),
            writer.length("cross_hole_distance_mm", pad.cross_hole_distance_mm),
        ]
    return found


def _of_body(pad: Pad, writer: SizeWriter) -> list[Measure]:
    count = 3 if pad.has_plug else 2
    above = (pad.web_mm, *(part for part in (pad.slot_depth_mm, pad.plug_height_mm) if part))
    below = (
        (pad.stem_length_mm,) if pad.foot_depth_mm == pad.stem_length_mm else (pad.skirt_length_mm, -pad.seat_length_mm)
    )
    found = [
        writer.diameter("body_diameter_mm", pad.body_diameter_mm),
        writer.length("flats_width_mm", pad.flats_width_mm),
        writer.length("web_mm", pad.web_mm),
        writer.chamfer("edge_chamfer_mm", pad.edge_chamfer_mm, count=count),
    ]
    if len(above) > 1:
        found.append(writer.auxiliary("top_height_mm", pad.top_height_mm, of=above))
    if pad.foot_depth_mm > 0:
        found.append(writer.auxiliary("overall_height_mm", pad.overall_height_mm, of=(*above, *below)))
    return found


def _of_slot(pad: Pad, writer: SizeWriter) -> list[Measure]:
    sides = 4 if pad.is_crossed else 2
    is_one_round = 2 * pad.slot_corner_radius_mm >= pad.slot_width_mm
    is_twin = slots_are_alike(pad)
    return [
        writer.length("slot_width_mm", pad.slot_width_mm, count="2× " if is_twin else ""),
        writer.length("slot_depth_mm", pad.slot_depth_mm),
        writer.exact("slot_offset_mm", pad.slot_offset_mm, zone_mm=SLOT_SYMMETRY.value_mm),
        writer.inner_radius(
            "slot_corner_radius_mm", pad.slot_corner_radius_mm, count="" if is_one_round else f"{sides}× "
        ),
        writer.chamfer("slot_mouth_chamfer_mm", pad.slot_mouth_chamfer_mm, count=sides),
        writer.length("cross_slot_width_mm", 0.0 if is_twin else pad.cross_slot_width_mm),
        *(
            writer.length(name, getattr(pad, name) if pad.has_relief else 0.0)
            for name in ("relief_width_mm", "relief_length_mm", "relief_depth_mm")
        ),
        writer.greatest_radius(
            "relief_corner_radius_mm", pad.relief_corner_radius_mm if pad.has_relief else 0.0, count="4× "
        ),
    ]


def slots_are_alike(pad: Pad) -> bool:
    """Whether one size says the width of both slots of a crossing."""
    return pad.is_crossed and pad.cross_slot_width_mm == pad.slot_width_mm


def _of_plug(pad: Pad, writer: SizeWriter) -> list[Measure]:
    height = writer.length("plug_height_mm", pad.plug_height_mm)
    if pad.plug_is_round:
        return [height, writer.diameter("plug_width_mm", pad.plug_width_mm)]
    return [
        height,
        writer.length("plug_length_mm", pad.plug_length_mm),
        writer.length("plug_width_mm", pad.plug_width_mm),
        writer.outer_radius("plug_corner_radius_mm", pad.plug_corner_radius_mm, count="4× "),
    ]


def _marked(measure: Measure) -> Measure:
    """The measure with the mark of a size that an estimate depends on."""
    return replace(measure, words=f"{CRITICAL_MARK} {measure.words}", prefix=f"{CRITICAL_MARK} {measure.prefix}")
