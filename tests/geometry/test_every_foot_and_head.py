"""Every foot with every head: whatever is measured, there is a pad or a refusal that says why, and every estimate is made."""

from itertools import product
from math import isnan
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.buildable import require_buildable
from geometry.design import Design, design_pad
from geometry.drawing.section_known import asked_of
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.kinds import FACES, JACKS
from geometry.measurements import read_measurements
from geometry.volume import volume_mm3
from tests.documents import cars, services
from tests.geometry.section_cases import anything

KINDS = tuple(product(JACKS, FACES))


JACK = {"rated_load_kg": 2000, "rim_height_low_mm": 105, "rim_height_high_mm": 420}
FEET: dict[str, tuple[dict[str, Any], ...]] = {
    "cup": ({"cup_bore_mm": 68, "cup_depth_mm": 12},),
    "saddle": (
        {"between_teeth_mm": 70, "tooth_height_mm": 8, "over_teeth_mm": 92},
        {"stands_on": "teeth", "between_teeth_mm": 60, "tooth_height_mm": 10, "over_teeth_mm": 90, "teeth": 6}
        | {"tip_length_mm": 14, "tip_width_mm": 12},
    ),
    "plate": (
        {"plate_diameter_mm": 80, "free_edge_mm": 12},
        {"located_by": "ring", "plate_diameter_mm": 100, "ring_bore_mm": 74, "ring_height_mm": 6},
        {"located_by": "recess", "plate_diameter_mm": 100, "ring_bore_mm": 74, "ring_height_mm": 4},
    ),
    "post": (
        {"post_bore_mm": 32, "bore_rim_diameter_mm": 60},
        {"post_bore_mm": 32, "bore_rim_diameter_mm": 60, "pin_diameter_mm": 6, "pin_distance_mm": 25},
    ),
}
HEADS: dict[str, tuple[dict[str, Any], ...]] = {
    "slot": ({"thickness_mm": 3.2, "height_mm": 20, "edge_height_mm": 190},),
    "cushion": ({"face_width_mm": 60, "face_length_mm": 100, "face_height_mm": 200},),
    "plug": (
        {"hole_width_mm": 30, "hole_depth_mm": 30, "rim_width_mm": 12, "rim_height_mm": 200},
        {"shape": "rectangular", "hole_width_mm": 26, "hole_length_mm": 40, "hole_depth_mm": 30, "rim_width_mm": 12}
        | {"rim_height_mm": 200},
    ),
}
"""Ordinary jacks and lifting points, invented; around them the numbers are drawn."""


@st.composite
def documents_of(draw: st.DrawFn, foot: str, head: str) -> dict[str, Any]:
    """Any document with this foot and head: mostly around ordinary sizes, and any field anywhere within what it allows."""
    told: dict[str, Any] = {"foot": foot, "head": head, "car": draw(cars()), "service": draw(services())}
    ordinary = (draw(st.sampled_from(FEET[foot])) | JACK, draw(st.sampled_from(HEADS[head])))
    for (group, model), usual in zip(asked_of(foot, head).groups.items(), ordinary, strict=True):
        told[group] = {name: draw(_around(value)) for name, value in usual.items()}
        odd = draw(st.sampled_from(["", "", "", *model.model_fields]))
        if odd:
            told[group][odd] = draw(anything(model.model_fields[odd]))
    told["make"] = {"material": draw(st.sampled_from(["pa66", "pa6_cast", "pom_c", "pet_p"]))}
    return told


def _around(value: Any) -> st.SearchStrategy[Any]:
    """A length within a fifth of an ordinary one; a choice or a count as it is."""
    if isinstance(value, str):
        return st.just(value)
    return st.floats(0.85 * value, 1.2 * value) if value > 6 else st.just(value)


def designed(document: dict[str, Any]) -> Design | None:
    """The pad; none where the document is refused or no pad fits, which is then said in whole sentences."""
    try:
        return design_pad(read_measurements(document))
    except BadMeasurementsError as error:
        assert all(p.field and p.message.rstrip().endswith((".", "”")) for p in error.problems), error
    except NoPadFitsError as error:
        assert error.lower.reason.endswith(".")
        assert error.upper.reason.endswith(".")
        assert f"{error.lower.value_mm:.2f} mm" in error.words
    return None


@pytest.mark.parametrize(("foot", "head"), KINDS)
@settings(max_examples=25)
@given(data=st.data())
def test_any_measurements_give_a_pad_or_say_why_not(foot: str, head: str, data: st.DataObject) -> None:
    """Oracle: the ledger's own musts, what can be built, and a volume that is one."""
    design = designed(data.draw(documents_of(foot, head)))
    if design is None:
        return
    require_buildable(design.pad)
    assert volume_mm3(design.pad) > 0
    assert not [name for name, entry in design.ledger.items() if entry.broken]
    assert design.pad.top_height_mm <= design.pad.seat_diameter_mm + 1e-6
    for check in design.checks:
        assert check.words
        assert not isnan(check.utilisation)
