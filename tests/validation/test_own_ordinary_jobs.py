"""Own oracle: 400 ordinary jobs drawn at random for each material, and how many pads have no failing estimate.

Expected before drawing: about 95 % for nylon, acetal and PET-P, 5 to 10 % for polyethylene. Found with the ranges of
``ordinary.py`` (950 to 2300 kg, minutes, dry or room, up to 45 °C, cups of 50 to 90 mm, seams of 2 to 4 sheets, 120 mm
straight): nylons 95 %, POM-C 98 %, POM-H 99 %, PET-P nearly all, together 97 %; UHMW-PE 14 %, HDPE 19 %, more than expected,
since cups over 80 mm and cars under 1200 kg let polyethylene pass. A lasting mark is advised for 34 % of the nylon pads, 21 % of
POM-C, 6 % of PET-P, nearly all of polyethylene.
"""

from collections import Counter

import pytest

from geometry.design import Design
from tests.validation.ordinary import NYLON_ACETAL_PET, POLYETHYLENE, ordinary_designs

BANDS = {
    "pa66": (0.93, 0.975),
    "pa6_cast": (0.93, 0.975),
    "pom_c": (0.97, 1.0),
    "pom_h": (0.975, 1.0),
    "pet_p": (0.985, 1.0),
    "uhmw_pe": (0.10, 0.18),
    "hdpe": (0.15, 0.23),
}
"""Shares without a failing estimate: what was found, two standard deviations of the drawing to either side."""
_DRAWN: dict[str, list[Design | None]] = {}


def drawn(material: str) -> list[Design | None]:
    """The same 400 jobs for every material, once."""
    if material not in _DRAWN:
        _DRAWN[material] = ordinary_designs(material, 400)
    return _DRAWN[material]


@pytest.mark.parametrize("material", BANDS)
def test_the_share_without_failure_is_the_one_found(material: str) -> None:
    """Oracle: the shares above."""
    least, most = BANDS[material]
    assert least <= sum(d is not None and d.fit_to_make for d in drawn(material)) / 400 <= most


@pytest.mark.parametrize("material", BANDS)
def test_nearly_every_ordinary_job_gets_some_pad(material: str) -> None:
    """Oracle: none of 400 was refused for want of room; 1 % would be a change worth knowing."""
    assert sum(d is None for d in drawn(material)) < 4


@pytest.mark.parametrize("material", POLYETHYLENE)
def test_polyethylene_fails_because_the_seam_cuts_in(material: str) -> None:
    """Oracle: what was expected, and found in more than nine of ten failing pads."""
    failing = [d for d in drawn(material) if d is not None and not d.fit_to_make]
    assert sum("slot_floor_bearing" in {c.code for c in d.failures} for d in failing) > 0.9 * len(failing)


@pytest.mark.parametrize(
    ("material", "least", "most"), [("pa66", 0.25, 0.45), ("pom_c", 0.13, 0.30), ("pet_p", 0.02, 0.12)]
)
def test_many_are_advised_that_the_floor_will_mark(material: str, least: float, most: float) -> None:
    """Oracle: the shares above."""
    verdicts = Counter(c.verdict for d in drawn(material) if d for c in d.checks if c.code == "slot_floor_marking")
    assert least <= verdicts["advice"] / verdicts.total() <= most


@pytest.mark.parametrize("stronger", ["pom_c", "pom_h", "pet_p"])
def test_a_stronger_material_never_passes_less_often_than_nylon(stronger: str) -> None:
    """Oracle: allowables of 25, 30, 35 and 40 MPa; growth and friction differ too, but strength decides."""
    nylon, other = (sum(d is not None and d.fit_to_make for d in drawn(m)) for m in ("pa66", stronger))
    assert other >= nylon


def test_hard_plastics_together_pass_about_nineteen_times_in_twenty() -> None:
    """Oracle: 95 % expected, 97 % found."""
    passed = sum(d is not None and d.fit_to_make for m in NYLON_ACETAL_PET for d in drawn(m))
    assert 0.94 <= passed / (400 * len(NYLON_ACETAL_PET)) <= 0.99
