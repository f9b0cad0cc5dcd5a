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


def stray_lines(pad: Pad) -> Iterator[Line]:
    """Symmetry of the slot, parallelism of its floor, run-out of the lip, and the surfaces that carry."""
    if pad.has_slot:
        yield (SLOT_SYMMETRY.name, "The slot stands where it should about the seat's axis.", INDICATOR, _symmetry(pad))
        yield (
            FLOOR_PARALLELISM.name,
            "The slot's floor is parallel to the seat face.",
            INDICATOR,
            said(
                "Seat face on a flat plate, on parallels where there is a stem: indicator on the floor at both ends and in the"
                " middle. The readings differ by no more than {zone}.",
                zone=FLOOR_PARALLELISM.value_mm,
            ),
        )
    yield (
        LIP_RUN_OUT.name,
        "The lip's face runs true with the seat.",
        INDICATOR,
        said(
            "Seat in a V-block, a stop against its face, indicator on the lip near its edge: one turn of the pad moves it no more"
            " than {zone}.",
            zone=LIP_RUN_OUT.value_mm,
        ),
    )
    yield (
        "roughness",
        "Seat face and slot floor are as smooth as the drawing asks.",
        SAMPLE,
        said("Side by side with the sample, by eye and finger nail, across the marks of the tool."),
    )


def _symmetry(pad: Pad) -> Sentence:
    turned = "which moves the indicator by no more than {zone}"
    if pad.slot_offset_mm > 0:
        turned = "which moves it by {twice}, give or take {zone}"
    return said(
        "Seat in a V-block, a gauge plate in the slot lying level: indicator on the plate's upper face. Turn the pad half round,"
        f" level the plate again, and read its upper face once more, {turned}.",
        zone=SLOT_SYMMETRY.value_mm,
        twice=2 * pad.slot_offset_mm,
    )
