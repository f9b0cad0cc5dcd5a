"""How the geometrical tolerances of the drawing are measured without a measuring machine."""

from collections.abc import Iterator

from geometry.geometrical import FLOOR_PARALLELISM, LIP_RUN_OUT, SLOT_SYMMETRY
from geometry.making.instruments import Instrument
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

INDICATOR = Instrument("dial indicator, 0.01 mm", 0.02)
SAMPLE = Instrument("roughness comparison sample", 0.0)

Line = tuple[str, str, Instrument, Sentence]
"""Name, title, instrument and method of one line."""


def stray_lines(pad: Pad, *, is_printed: bool = False) -> Iterator[Line]:
    """Place of the slot, parallelism of its floor, run-out of the lip, and the surfaces that carry; of a print no roughness."""
    if pad.has_slot:
        yield (SLOT_SYMMETRY.name, "The slot stands where it should about the seat's axis.", INDICATOR, _symmetry(pad))
        stands = "Seat face on two equal parallels on a flat plate" if _hangs(pad) else "Seat face on a flat plate"
        yield (
            FLOOR_PARALLELISM.name,
            "The slot's floor is parallel to the seat face.",
            INDICATOR,
            said(
                f"{stands}: indicator on the floor at both ends and in the middle. The readings differ by no more than {{zone}}.",
                zone=FLOOR_PARALLELISM.value_mm,
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


def _hangs(pad: Pad) -> bool:
    """Whether anything hangs below the seat face."""
    return pad.foot_depth_mm > 0


def _run_out(pad: Pad) -> Sentence:
    held = "Seat in a V-block, a stop against its face, indicator on the lip near its edge"
    if pad.has_skirt:
        held = "Still in the chuck in which seat and lip were turned: indicator on the lip inside the skirt"
    return said(f"{held}: one turn of the pad moves it no more than {{zone}}.", zone=LIP_RUN_OUT.value_mm)


def _symmetry(pad: Pad) -> Sentence:
    turned = "which moves the indicator by no more than {zone}"
    if pad.slot_offset_mm > 0:
        turned = "which moves it by {twice}, give or take {zone}"
    held = "Body, where the skirt hides the seat," if pad.has_skirt else "Seat"
    return said(
        f"{held} in a V-block, a gauge plate in the slot lying level: indicator on the plate's upper face. Turn the pad half"
        f" round, level the plate again, and read its upper face once more, {turned}.",
        zone=SLOT_SYMMETRY.value_mm,
        twice=2 * pad.slot_offset_mm,
    )
