"""Spot-weld schedule for low-carbon steel (SAE 1010; docslib 9660685): least overlap of two sheets by the thinner outer one,
11.1 to 22.2 mm for 0.53 to 3.18 mm, and least spacing of the welds. 0.040 in of sheet: overlap 1/2 in, spacing 3/4 in.

The overlap is the least height of a sound welded seam: the program must take every one of them and find a pad.
"""

from typing import Any

import pytest

from geometry.design import Design, design_pad
from geometry.measurements import read_measurements
from geometry.units import inch_to_mm

SHEET_IN = (0.021, 0.031, 0.040, 0.050, 0.062, 0.078, 0.094, 0.125)
OVERLAP_IN = (7 / 16, 7 / 16, 1 / 2, 9 / 16, 5 / 8, 11 / 16, 3 / 4, 7 / 8)
SPACING_IN = (3 / 8, 1 / 2, 3 / 4, 7 / 8, 1, 9 / 8, 5 / 4, 3 / 2)
ROWS = list(zip(SHEET_IN, OVERLAP_IN, SPACING_IN, strict=True))


def _designed(sheet_in: float, height_in: float) -> Design:
    steel = 2 * inch_to_mm(sheet_in)
    document: dict[str, Any] = {
        "jack": {"cup_bore_mm": 68, "cup_depth_mm": 12, "rated_load_kg": 2000, "rim_height_low_mm": 105},
        "seam": {
            "thickness_mm": steel + 0.6,
            "bare_thickness_mm": steel,
            "height_mm": inch_to_mm(height_in),
            "edge_height_mm": 190,
        },
        "car": {"gross_mass_kg": 1500},
    }
    return design_pad(read_measurements(document))


@pytest.mark.parametrize(("sheet_in", "overlap_in", "spacing_in"), ROWS)
def test_a_seam_as_low_as_its_least_overlap_gets_a_slot(sheet_in: float, overlap_in: float, spacing_in: float) -> None:
    """Oracle: the schedule; the walls stay clear of the sill and still guide the seam by a few millimetres."""
    design = _designed(sheet_in, overlap_in)
    assert 2 < design.pad.slot_depth_mm < inch_to_mm(overlap_in) - 2
    assert {c.code: c.verdict for c in design.checks}["sill_clear"] == "pass"


@pytest.mark.parametrize(("sheet_in", "overlap_in", "spacing_in"), ROWS)
def test_the_loaded_edge_always_spans_several_welds(sheet_in: float, overlap_in: float, spacing_in: float) -> None:
    """Oracle: spacing of the schedule; the sheets are taken to press together, which one weld alone could not see to."""
    design = _designed(sheet_in, overlap_in)
    bearing = next(c for c in design.checks if c.code == "slot_floor_bearing")
    assert bearing.finding is not None
    assert bearing.finding.numbers["L"] > 1.5 * inch_to_mm(spacing_in)


def test_the_common_sheet_has_the_printed_overlap_and_spacing() -> None:
    """Oracle: the 0.040 in row, 12.7 and 19.1 mm."""
    assert inch_to_mm(OVERLAP_IN[2]) == pytest.approx(12.7, abs=1e-9)
    assert inch_to_mm(SPACING_IN[2]) == pytest.approx(19.05, abs=1e-9)
