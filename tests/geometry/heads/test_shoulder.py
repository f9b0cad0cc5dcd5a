"""The shoulder around a plug: what the hole's rim presses on it, and what its lip beyond the seat takes."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.design import Design
from geometry.heads.plug.fields import Pocket
from geometry.heads.plug.loading import shoulder_area_mm2
from tests.documents import designed
from tests.geometry.heads.documents import (
    F_D,
    POCKET,
    check,
    in_a_hole,
    in_an_oblong_hole,
)


def test_the_rim_presses_on_the_ring_between_hole_and_rim() -> None:
    """Oracle: by hand, a rim of 14 mm around a hole of 40 reaches to 68 mm; the shoulder is wider."""
    found = check(designed(in_a_hole()), "plug_shoulder_bearing")
    assert found.value == pytest.approx(F_D / (math.pi / 4 * (68**2 - 40**2)), rel=1e-9)


def test_the_words_tell_the_shoulders_area_in_square_centimetres() -> None:
    """Oracle: by hand, π/4 (68² − 40²) = 2375 mm²."""
    assert " on 23.8 cm² of the shoulder;" in check(designed(in_a_hole()), "plug_shoulder_bearing").words


def test_the_shoulder_is_wide_enough_for_four_fifths_of_the_strength() -> None:
    """Oracle: by hand, F_d/(0.8 · 30 · 0.83) of a ring around the hole of 40 mm, and two broken edges of 1 mm."""
    lower = designed(in_a_hole()).ledger["body_diameter_mm"].lower
    found = next(b.value for b in lower if "not to press too hard" in b.reason)
    assert found == pytest.approx(math.sqrt(40**2 + 4 * F_D / (0.8 * 30 * 0.83) / math.pi) + 2, rel=1e-6)


def wedge(pressure: float, seat: float, inner: float, outer: float) -> tuple[float, float]:
    """Shear and moment at the seat's edge of a wedge under a ring of pressure, by plain statics; radii."""
    start = max(seat, inner)
    shear = pressure * (outer**2 - start**2) / 2 / seat
    moment = pressure * ((outer**3 - start**3) / 3 - seat * (outer**2 - start**2) / 2) / seat
    return shear, moment


def lip_numbers(design: Design) -> tuple[float, float]:
    finding = check(design, "face_lip_shear").finding
    assert finding is not None
    return finding.numbers["V_l"], finding.numbers["M_l"]


_SMALL_CUP: dict[str, Any] = {"jack__cup_bore_mm": 52, "fixed": {"body_diameter_mm": 75, "web_mm": 30}}


def test_the_rim_loads_the_lip_as_far_as_it_reaches() -> None:
    """Oracle: by hand, a seat of 51.2 mm and a rim that ends 14 mm outside a hole of 40 mm."""
    pressure = F_D / (math.pi / 4 * (68**2 - 40**2))
    assert lip_numbers(designed(in_a_hole(**_SMALL_CUP))) == pytest.approx(wedge(pressure, 25.6, 20, 34))


def test_of_two_ways_across_an_oblong_hole_the_one_that_loads_the_lip_more_counts() -> None:
    """Oracle: by hand; across, the rim ends at 34 mm, along, the shoulder of 73 mm ends it at 36.5 mm."""
    design = designed(in_an_oblong_hole(**_SMALL_CUP))
    bearing = check(design, "plug_shoulder_bearing").value
    assert bearing is not None
    across, along = wedge(bearing, 25.6, 20, 34), wedge(bearing, 25.6, 28, 36.5)
    assert lip_numbers(design) == pytest.approx((max(across[0], along[0]), max(across[1], along[1])))


def test_a_lip_takes_no_more_than_the_material_lets_through() -> None:
    """Oracle: polyethylene under a heavy car flows at 9 · 0.779 MPa, and its rim presses no harder on the lip than that."""
    design = designed(in_a_hole(**_SMALL_CUP, make__material="hdpe", car__gross_mass_kg=3500))
    assert check(design, "plug_shoulder_bearing").verdict == "fail"
    assert lip_numbers(design) == pytest.approx(wedge(9 * 0.779, 25.6, 20, 34))


def test_the_rim_of_a_rectangular_hole_has_rounder_corners_than_the_hole() -> None:
    """Oracle: by hand, on a very wide shoulder: 84·68 − (4 − π)·20² less 56·40 − (4 − π)·6²."""
    pocket = Pocket(**{**POCKET, "shape": "rectangular", "hole_length_mm": 56, "corner_radius_mm": 6}).facts()
    outside, hole = 84 * 68 - (4 - math.pi) * 20**2, 56 * 40 - (4 - math.pi) * 6**2
    assert shoulder_area_mm2(pocket, 400) == pytest.approx(outside - hole, rel=1e-9)


@given(st.floats(20, 80), st.floats(20, 80), st.floats(0, 1), st.floats(2, 30), st.floats(20, 150))
def test_the_shoulder_never_carries_more_than_rim_or_disc(
    width: float, length: float, share: float, rim: float, d: float
) -> None:
    hole = {**POCKET, "shape": "rectangular", "hole_width_mm": width, "hole_length_mm": length, "rim_width_mm": rim}
    pocket = Pocket(**hole, corner_radius_mm=share * min(width, length) / 2).facts()
    area = shoulder_area_mm2(pocket, d)
    corner = pocket.corner_radius_mm
    around = 2 * (width + length - 4 * corner) + 2 * math.pi * corner
    assert 0 <= area <= min(math.pi / 4 * d**2, around * rim + math.pi * rim**2) + 1e-3


@given(st.floats(1.0, 60.0))
def test_a_wider_shoulder_never_carries_less(more: float) -> None:
    pocket = Pocket(**{**POCKET, "shape": "rectangular", "hole_length_mm": 56, "corner_radius_mm": 6}).facts()
    assert shoulder_area_mm2(pocket, 50 + more) >= shoulder_area_mm2(pocket, 50) - 1e-3
