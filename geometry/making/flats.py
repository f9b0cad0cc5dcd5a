"""Two flats along the slot: sawn near, then milled to size from the middle of the pad."""

from collections.abc import Iterator
from math import ceil, sqrt

from geometry.conditions import Conditions
from geometry.machining import milling_time_min
from geometry.making.card import ON_TOP, Operation, Table
from geometry.making.cutter import side_cutter_mm
from geometry.making.kit import CALIPER
from geometry.making.limits import limit_sentence
from geometry.making.machine import Machine
from geometry.making.slot_hold import Hold
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import memory

SAWN_SPARE_MM = 1.0
"""Left on each flat by the saw."""
FLUTE_SHARE = 3.0
"""Flutes of a common end mill are about three times as long as it is wide."""
FLUTE_SOURCE = memory("Common end mills have flutes of about three diameters")
LEAST_BLOCK_MM = 5.0
RUN_OUT_MM = 2.0
"""A cutter that is clear of the work by this much is clear."""
_JAW_SPARE_MM = 0.5
SHARP_FLATS = said("Take the sharpness off the new edges, no more: the drawing gives the flats no chamfer.")


def flats_operation(pad: Pad, c: Conditions, m: Machine, hold: Hold, *, was_turned: bool) -> Operation:
    """Saw and mill the flats in the clamping of the top; after a second slot on a lathe the pad is turned back for them."""
    cutter = side_cutter_mm(c.cutters_mm)
    rows = flat_rows(pad, m, cutter_mm=cutter)
    cut = m.milling(cutter)
    run = milling_time_min(
        length_mm=flat_length_mm(pad), cutter_diameter_mm=cutter, table_feed_mm_min=cut.table_feed_mm_min or 1.0
    )
    return Operation(
        title="Saw and mill the two flats",
        set_up=ON_TOP,
        holding=hold.words,
        tools=(
            said("Hand saw"),
            said(
                "End mill {cutter} for the flats, its flutes {flutes} long or longer, {reach} out of its holder",
                cutter=cutter,
                flutes=max(b - a for _, _, _, a, b in _cuts(pad, m, cutter)),
                reach=pad.top_height_mm - pad.foot_bottom_mm + RUN_OUT_MM,
            ),
            CALIPER,
        ),
        steps=tuple(_steps(pad, in_chuck=hold.in_chuck, was_turned=was_turned)),
        why=said("They come after the slot, which they run along: the pad still stands as it did, on the same zero.")
        if pad.has_slot and not was_turned
        else None,
        cut=cut,
        tables=(
            Table(
                title="Passes of the flats",
                columns=(
                    ("Flat", ""),
                    ("Job", ""),
                    ("Across, from the centre line", "mm"),
                    ("Depth below the body's top", "mm"),
                ),
                rows=rows,
            ),
        ),
        watch=watch_for(c.material.family, "mill", "saw"),
        leaves_mm={"flats_width_mm": pad.flats_width_mm},
        extra_cutting_min=run * len(rows),
        other_time_min=20.0,
        sources=(("Length of flutes", FLUTE_SOURCE),),
    )


def block_words(pad: Pad, c: Conditions) -> Sentence:
    """How thick the blocks between jaws and pad are, so that the cutter is clear before it meets the jaws."""
    cutter = side_cutter_mm(c.cutters_mm)
    # From the middle of a flat to where the cutter is clear of it, against where bare jaws would begin.
    needed = flat_length_mm(pad) / 2 + cutter + RUN_OUT_MM - pad.body_diameter_mm / 2
    return said(
        "The blocks are {thick} thick or thicker: the end mill of {cutter} for the flats runs out beside them before it meets the"
        " jaws.",
        thick=max(needed, LEAST_BLOCK_MM),
        cutter=cutter,
    )


def flat_height_mm(pad: Pad) -> float:
    """Height of the flats: the whole outside of the body, a skirt included."""
    return pad.body_top_mm - pad.foot_bottom_mm


def flat_length_mm(pad: Pad) -> float:
    """Length of each flat along the slot, a chord of the body."""
    return sqrt(pad.body_diameter_mm**2 - pad.flats_width_mm**2)


def flat_rows(pad: Pad, m: Machine, *, cutter_mm: float) -> tuple[tuple[float | str, ...], ...]:
    """Every run of the cutter: flat, job, place across and depth; y is to the left, as for the slot."""
    return tuple((flat, job, y, depth) for flat, job, y, _, depth in _cuts(pad, m, cutter_mm))


def _cuts(pad: Pad, m: Machine, cutter_mm: float) -> Iterator[tuple[str, str, float, float, float]]:
    """Flat, job, place across, and the depths between which the run cuts."""
    place = (pad.flats_width_mm + cutter_mm) / 2
    high = flat_height_mm(pad)
    levels = ceil(high / cutter_mm - 1e-9)
    at_once = 1 if high <= FLUTE_SHARE * cutter_mm else levels
    for flat, sign in (("left flat", 1.0), ("right flat", -1.0)):
        for job, spare, count in (("rough", m.finishing_mm, levels), ("finish", 0.0, at_once)):
            for k in range(count):
                yield flat, job, sign * (place + spare), high * k / count, high * (k + 1) / count


def _steps(pad: Pad, *, in_chuck: bool, was_turned: bool) -> Iterator[Sentence]:
    if was_turned:
        yield said("Turn the pad back a quarter turn, the first slot level by an indicator, and find the middle again.")
    yield said(
        "Scribe both flats on the top, {half} from the pad's centre line, along the slot. Saw {spare} outside the lines, down"
        " the whole body, before the cutter is put in; support the piece that falls off."
        if pad.has_slot
        else "Scribe both flats on the top, {half} from the pad's centre line. Saw {spare} outside the lines, down the whole"
        " body, before the cutter is put in; support the piece that falls off.",
        half=pad.flats_width_mm / 2,
        spare=SAWN_SPARE_MM,
    )
    if pad.slot_offset_mm > 0:
        yield said("The centre line is the axis of the pad, not the middle of the slot, which stands off it.")
    if pad.has_skirt:
        yield said("The skirt is thin under the flats: a ring of scrap in its bore keeps it from springing.")
    if in_chuck:
        yield said(
            "Stop {spare} above a jaw that stands out under a flat, and file the rest level with it afterwards.",
            spare=_JAW_SPARE_MM,
        )
    yield said(
        "Mill by the table, against the cutter's turning. After the first flat measure from it to the round side opposite:"
        " {over}. After the second measure across both.",
        over=(pad.flats_width_mm + pad.body_diameter_mm) / 2,
    )
    yield limit_sentence(pad, "flats_width_mm", "Across both flats it")
    yield SHARP_FLATS
