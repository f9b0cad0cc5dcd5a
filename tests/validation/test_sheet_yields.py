"""Yields of body sheet: DC01 ≤ 280 MPa and the next strip group ≤ 240 MPa (EN 10130/10139: vinco.es, steelstrip.co.uk);
DC04 ≤ 210, EN 10268 bake-hardening and HSLA grades, dual-phase grades, and the design floor 140 of EN 10130's footnote
(DC06: 120) from memory.
"""

import pytest

from geometry.heads.slot.fields import ASSUMED_YIELD_MPA, SlotSeam
from geometry.heads.slot.seam_checks import DOUBTFUL_TO
from geometry.seam import STEEL_MODULUS_MPA, STEEL_POISSON

LEAST_YIELD_MPA = {
    "DC01 to DC05, design floor": 140,
    "HC180B": 180, "HC220B": 220, "HC260B": 260, "HC300B": 300,
    "HC260LA": 260, "HC300LA": 300, "HC340LA": 340, "HC380LA": 380, "HC420LA": 420,
    "DP590": 330, "DP980": 550, "press-hardened": 950,
}  # fmt: skip
MOST_YIELD_MPA = {"DC01": 280, "strip, second group": 240, "DC04": 210}


@pytest.mark.parametrize("grade", LEAST_YIELD_MPA)
def test_no_sill_steel_is_weaker_than_what_is_assumed(grade: str) -> None:
    """Oracle: least yields; DC06 (120) is for deep outer panels and not for sills (common practice)."""
    assert LEAST_YIELD_MPA[grade] >= ASSUMED_YIELD_MPA


@pytest.mark.parametrize("grade", MOST_YIELD_MPA)
def test_soft_sheet_may_be_stronger_than_assumed_by_at_least_the_doubt(grade: str) -> None:
    """Oracle: highest yields of soft grades; between 1.0 and 1.5 of the assumed yield the program advises and does not fail."""
    assert MOST_YIELD_MPA[grade] >= DOUBTFUL_TO * ASSUMED_YIELD_MPA


def test_every_grade_can_be_typed_in() -> None:
    """Oracle: the table; the field's bounds must hold all of it."""
    for least in LEAST_YIELD_MPA.values():
        seam = SlotSeam(thickness_mm=3, height_mm=15, edge_height_mm=180, yield_mpa=least)
        assert seam.facts().yield_mpa == least


def test_steel_is_as_stiff_as_en_1993_says() -> None:
    """Oracle: EN 1993-1-1 3.2.6, E = 210 000 MPa, ν = 0.3 (from memory)."""
    assert (STEEL_MODULUS_MPA, STEEL_POISSON) == (210_000, 0.3)
