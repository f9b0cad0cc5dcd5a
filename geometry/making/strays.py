"""How the geometrical tolerances of the drawing are measured without a measuring machine."""

from collections.abc import Iterator

from geometry.geometrical import LIP_RUN_OUT, SLOT_SYMMETRY, carrying_parallelism, location_of
from geometry.making.instruments import Instrument
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.units import Zone

INDICATOR = Instrument("dial indicator, 0.01 mm", 0.02)
SAMPLE = Instrument("roughness comparison sample", 0.0)

_OWNED = {"slot floor": "slot's floor"}
"""As the sentences say it."""

Line = tuple[str, str, Instrument, Sentence]
"""Name, title, instrument and method of one line."""


def stray_lines(pad: Pad, *, is_printed: bool = False) -> Iterator[Line]:
    """Place of slot or plug, parallelism of what carries, run-out of the lip, and surfaces; of a print no roughness."""
    place, level = location_of(pad), carrying_parallelism(pad)
    if place is not None:
        which = "Each slot" if pad.is_crossed else f"The {place.feature}"
        title = f"{which} stands where it should about the seat's axis."
        yield (place.name, title, INDICATOR, _symmetry(pad) if pad.has_slot else _plug_place(pad, place.value_mm))
    stands = "Seat face on two equal parallels on a flat plate" if _hangs(pad) else "Seat face on a flat plate"
    where = "at both ends and in the middle" if pad.has_slot else "in four places near the edge"
    yield (
        level.name,
        "The floor of both slots is parallel to the seat face."
        if pad.is_crossed
        else f"The {_OWNED.get(level.feature, level.feature)} is parallel to the seat face.",
        INDICATOR,
        said(
            f"{stands}: indicator on the {level.feature.removeprefix('slot ')} {where}. The readings differ by no more than"
            " {zone}.",
            zone=Zone(level.value_mm),
        ),
    )
    yield (LIP_RUN_OUT.name, "The lip's face runs true with the seat.", INDICATOR, _run_out(pad))
    if is_printed:
        return
    carries = "slot floor" if pad.has_slot else "shoulder" if pad.has_plug else "top"
    yield (
        "roughness",
        f"Seat face and {carries} are as smooth as the drawing asks.",
        SAMPLE,
        said("Side by side with the sample, by eye and finger nail, across the marks of the tool."),
    )


def _plug_place(pad: Pad, zone_mm: float) -> Sentence:
    """Half a turn doubles what a plug stands off the seat's axis."""
    held = "Body, where the skirt hides the seat," if pad.has_skirt else "Seat"
    if pad.plug_is_round:
        words = "indicator on the plug, half way up: one turn of the pad moves it by no more than {zone}."
    else:
        words = (
            "a side of the plug lying level, indicator on it. Turn the pad half round, level the other side, and read it: the two"
            " readings differ by no more than {zone}. The same for the other two sides."
        )
    return said(f"{held} in a V-block, {words}", zone=Zone(zone_mm))


def _hangs(pad: Pad) -> bool:
    """Whether anything hangs below the seat face."""
    return pad.foot_depth_mm > 0


def _run_out(pad: Pad) -> Sentence:
    held = "Seat in a V-block, a stop against its face, indicator on the lip near its edge"
    if pad.has_skirt:
        held = "Still in the chuck in which seat and lip were turned: indicator on the lip inside the skirt"
    return said(f"{held}: one turn of the pad moves it no more than {{zone}}.", zone=Zone(LIP_RUN_OUT.value_mm))


def _symmetry(pad: Pad) -> Sentence:
    turned = "which moves the indicator by no more than {zone}"
    if pad.slot_offset_mm > 0:
        turned = "which moves it by {twice}, give or take {zone}"
    held = "Body, where the skirt hides the seat," if pad.has_skirt else "Seat"
    return said(
        f"{held} in a V-block, a gauge plate in the slot lying level: indicator on the plate's upper face. Turn the pad half"
        f" round, level the plate again, and read its upper face once more, {turned}.",
        zone=Zone(SLOT_SYMMETRY.value_mm),
        twice=2 * pad.slot_offset_mm,
    )
