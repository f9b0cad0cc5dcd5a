"""Level cuts and volumes in closed form, against independent integration and hand calculation."""

from math import pi, sqrt

import pytest
from hypothesis import given, settings
from scipy.integrate import quad

from geometry.levels import cross_section_area_mm2, strip_in_disc_mm2
from geometry.pad import Pad
from geometry.volume import volume_mm3
from tests.geometry.balance import moment
from tests.geometry.pads import ORDINARY, STEMMED, buildable_pads, pads_of_any_kind


def test_a_strip_takes_from_a_disc_what_integration_says() -> None:
    """∫ of the chord 2√(ρ²−x²) over the strip (scipy.integrate)."""
    chord_area, _ = quad(lambda x: 2 * (37**2 - x**2) ** 0.5, -4.5, 4.5)
    assert strip_in_disc_mm2(radius_mm=37, half_width_mm=4.5) == pytest.approx(chord_area, rel=1e-12)


def test_a_strip_wider_than_the_disc_takes_all_of_it() -> None:
    """The disc's area, π · 10²."""
    assert strip_in_disc_mm2(radius_mm=10, half_width_mm=11) == pytest.approx(pi * 100, rel=1e-12)


@pytest.mark.parametrize(
    ("z", "diameter", "slot"),
    [(-4, 12, 0), (8, 67.2, 0), (13.4, 72.8, 0), (20, 74, 0), (30, 74, 9), (36, 74, 10), (36.5, 73, 11)],
)
def test_the_area_at_a_height_is_the_disc_less_its_strip(z: float, diameter: float, slot: float) -> None:
    """Widths read by hand off the dimensions: stem, seat, lip chamfer, body, walls, mouth, top chamfer."""
    pad = STEMMED.with_(slot_mouth_chamfer_mm=1.5, slot_corner_radius_mm=0.5)
    strip, _ = quad(lambda x: (diameter**2 - 4 * x**2) ** 0.5, -slot / 2, slot / 2)
    assert cross_section_area_mm2(pad, z) == pytest.approx(pi * diameter**2 / 4 - strip, rel=1e-10)


def test_there_is_nothing_below_the_foot_and_above_the_walls() -> None:
    """The pad ends at −8 mm and 37 mm."""
    assert [cross_section_area_mm2(STEMMED, z) for z in (-8.01, 37.01)] == [0, 0]


@given(buildable_pads())
@settings(deadline=None)
def test_the_volume_is_the_integral_of_the_area(pad: Pad) -> None:
    """Adaptive quadrature between the corners (scipy.integrate), to 1e-9."""
    assert volume_mm3(pad) == pytest.approx(moment(pad, 0), rel=1e-9)


def test_a_deeper_slot_takes_away_exactly_its_own_volume() -> None:
    """1 mm more of wall adds the walls' area above the fillets: two circular segments."""
    grown = volume_mm3(ORDINARY.with_(slot_depth_mm=16)) - volume_mm3(ORDINARY)
    walls = pi * 37**2 - strip_in_disc_mm2(radius_mm=37, half_width_mm=4.5)
    assert grown == pytest.approx(walls, rel=1e-9)


def segment_mm2(radius: float, distance: float) -> float:
    """Area beyond a chord, by adaptive quadrature (scipy.integrate)."""
    return float(quad(lambda x: 2 * sqrt(radius**2 - x**2), distance, radius)[0])


RELIEF = {"relief_width_mm": 20, "relief_length_mm": 30, "relief_depth_mm": 10}
RELIEF_MM2 = 20 * 30 - (4 - pi) * 2**2
"""Seen from above: a rectangle with corners of radius 2."""
PLUG = {"slot_width_mm": 0, "slot_depth_mm": 0, "plug_length_mm": 40, "plug_width_mm": 20, "plug_height_mm": 12}


@pytest.mark.parametrize(
    ("changes", "volume"),
    [
        ({"seat_recess_diameter_mm": 20, "seat_recess_depth_mm": 6}, -pi * 10**2 * 6),
        ({"skirt_bore_mm": 70, "skirt_length_mm": 10}, pi * (37**2 - 35**2) * 10),
        ({"stem_diameter_mm": 12, "stem_length_mm": 8}, pi * 6**2 * 8),
        ({**RELIEF, "relief_depth_mm": 17}, -RELIEF_MM2 * 17 + 30 * (9 * 15 + 1 - (2 - pi / 2) * 0.25)),
        (RELIEF, -RELIEF_MM2 * 10 + 30 * (9 * 10 + 1)),
    ],
)
def test_a_feature_changes_the_volume_by_its_own(changes: dict[str, float], volume: float) -> None:
    """Cylinders, rings and blocks by hand; the relief's length of slot was empty before."""
    grown = volume_mm3(ORDINARY.with_(**changes)) - volume_mm3(ORDINARY)
    assert grown == pytest.approx(volume, rel=1e-8)


@pytest.mark.parametrize(
    ("changes", "z", "area"),
    [
        ({"flats_width_mm": 70}, 18, pi * 37**2 - 2 * segment_mm2(37, 35)),
        ({"slot_offset_mm": 12}, 30, pi * 37**2 - (segment_mm2(37, 7.5) - segment_mm2(37, 16.5))),
        ({**PLUG, "plug_corner_radius_mm": 3}, 28, 40 * 20 - (4 - pi) * 9),
        ({**PLUG, "plug_corner_radius_mm": 3}, 33.5, 39 * 19 - (4 - pi) * 2.5**2),
        ({**PLUG, "plug_corner_radius_mm": 0.25}, 33.5, 39 * 19),
        ({"skirt_bore_mm": 70, "skirt_length_mm": 14.5}, -1, pi * (36.5**2 - 35**2)),
    ],
)
def test_the_level_cut_of_a_feature_by_hand(changes: dict[str, float], z: float, area: float) -> None:
    """Segments by quadrature, plugs as rectangles with rounded corners, a skirt half a millimetre above its chamfered end."""
    assert cross_section_area_mm2(ORDINARY.with_(**changes), z) == pytest.approx(area, rel=1e-9)


def test_crossed_slots_leave_four_posts() -> None:
    """Each post by quadrature: what lies beyond both walls, within the disc and the flats (scipy.integrate)."""
    pad = ORDINARY.with_(cross_slot_width_mm=30, flats_width_mm=70)
    post, _ = quad(lambda x: max(0.0, sqrt(37**2 - x**2) - 15), 4.5, 35, points=[sqrt(37**2 - 15**2)])
    assert cross_section_area_mm2(pad, 30) == pytest.approx(4 * post, rel=1e-9)


@given(pads_of_any_kind())
@settings(deadline=None)
def test_the_volume_of_any_kind_is_the_integral_of_its_level_cuts(pad: Pad) -> None:
    """1000 slices (a sum of our own), to half a slice for each of at most six steps from one diameter to another."""
    low, high = -pad.foot_depth_mm, pad.top_height_mm
    step = (high - low) / 1000
    total = step * sum(cross_section_area_mm2(pad, low + (i + 0.5) * step) for i in range(1000))
    assert volume_mm3(pad) == pytest.approx(total, abs=3 * step * pi * pad.body_diameter_mm**2 / 4)
