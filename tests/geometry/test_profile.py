"""The outlines, and areas and volumes in closed form, against independent integration and hand calculation."""

from cmath import phase, rect
from itertools import pairwise
from math import dist, pi, sqrt

import pytest
from hypothesis import given
from scipy.integrate import quad

from geometry.outline import Arc, Line, Outline
from geometry.pad import Pad
from geometry.profile import (
    balance_height_mm,
    cross_section_area_mm2,
    cross_slot_outline,
    plug_outline,
    relief_outline,
    section_outline,
    section_outlines,
    slot_floor_area_mm2,
    slot_outline,
    strip_in_disc_mm2,
    turned_outline,
    volume_mm3,
)
from tests.geometry.pads import ORDINARY, STEMMED, buildable_pads, pads_of_any_kind

SLOT_MM2 = 9 * 15 + 1 - (2 - pi / 2) * 0.5**2
"""The ordinary pad's slot in section: width times depth, two mouth chamfers more and two floor corners less."""


def assert_joined(outline: Outline) -> None:
    """Each piece starts where the one before it ends, to a hundredth of the kernel's precision."""
    assert all(dist(one.end, other.start) < 1e-9 for one, other in pairwise(outline))


def shoelace_mm2(outline: Outline) -> float:
    """Area inside a closed outline by Green's theorem, arcs as 400 chords each: an oracle of our own."""
    points = [point for piece in outline for point in chords(piece)]
    return sum(x0 * z1 - x1 * z0 for (x0, z0), (x1, z1) in pairwise([*points, points[0]])) / 2


def chords(piece: Line | Arc) -> list[tuple[float, float]]:
    """The start of a straight piece, or 400 points along a quarter arc."""
    if isinstance(piece, Line):
        return [piece.start]
    centre, start, end = complex(*piece.centre), complex(*piece.start), complex(*piece.end)
    turn = phase((end - centre) / (start - centre)) / 400
    points = [centre + (start - centre) * rect(1, turn * i) for i in range(400)]
    return [(point.real, point.imag) for point in points]


def outlines_of(pad: Pad) -> list[Outline]:
    """Every outline that belongs to what the pad has."""
    found = [turned_outline(pad), *section_outlines(pad), section_outline(pad)]
    found += [slot_outline(pad)] if pad.has_slot else []
    found += [cross_slot_outline(pad)] if pad.is_crossed else []
    found += [relief_outline(pad)] if pad.has_relief else []
    return [*found, plug_outline(pad)] if pad.has_plug else found


@given(buildable_pads() | pads_of_any_kind())
def test_every_outline_is_one_unbroken_walk(pad: Pad) -> None:
    """Pieces of no length are left out, and nothing else changes."""
    for outline in outlines_of(pad):
        assert_joined(outline)
        assert all(dist(piece.start, piece.end) > 1e-7 for piece in outline)


@given(pads_of_any_kind())
def test_what_is_closed_closes(pad: Pad) -> None:
    """Sections and what is seen from above end where they start, to the kernel's precision, and run anticlockwise."""
    closed = [*section_outlines(pad), section_outline(pad)]
    closed += [relief_outline(pad)] if pad.has_relief else []
    closed += [plug_outline(pad)] if pad.has_plug else []
    for outline in closed:
        assert dist(outline[0].start, outline[-1].end) < 1e-9
        assert shoelace_mm2(outline) > 0


@pytest.mark.parametrize(
    ("changes", "area"),
    [
        ({"slot_offset_mm": 10}, 0.0),
        ({"seat_recess_diameter_mm": 20, "seat_recess_depth_mm": 6}, -20 * 6),
        ({"flats_width_mm": 70}, -2 * (2 * 24 - 2 * 0.5)),
        ({"skirt_bore_mm": 70, "skirt_length_mm": 10}, 2 * 2 * 10),
        ({"stem_diameter_mm": 12, "stem_length_mm": 8}, 12 * 8),
        ({"relief_width_mm": 20, "relief_length_mm": 30, "relief_depth_mm": 10}, -11 * 10 + 1),
        ({"relief_width_mm": 20, "relief_length_mm": 30, "relief_depth_mm": 17}, SLOT_MM2 - 20 * 17),
        ({"cross_slot_width_mm": 8}, SLOT_MM2 - 74 * 15 + 1),
        ({"slot_width_mm": 0, "slot_depth_mm": 0}, SLOT_MM2 - 74 * 15),
    ],
)
def test_a_feature_changes_the_section_by_its_own_area(changes: dict[str, float], area: float) -> None:
    """Widths times heights by hand, on a body 74 across and 37 high with a slot 9 × 15, chamfers 1 and floor radius 0.5."""
    grown = shoelace_mm2(section_outline(ORDINARY.with_(**changes))) - shoelace_mm2(section_outline(ORDINARY))
    assert grown == pytest.approx(area, abs=1e-3)


def test_a_cross_hole_parts_the_stem_in_the_section() -> None:
    """The stem 12 × 20 loses 12 × 4 of it, and its end stands alone: 12 × 8."""
    whole = ORDINARY.with_(stem_diameter_mm=12, stem_length_mm=20)
    body, end = section_outlines(whole.with_(cross_hole_diameter_mm=4, cross_hole_distance_mm=10))
    assert shoelace_mm2(section_outline(whole)) - shoelace_mm2(body) == pytest.approx(12 * 12)
    assert shoelace_mm2(end) == pytest.approx(12 * 8)


@given(buildable_pads())
def test_the_section_closes_and_is_symmetric(pad: Pad) -> None:
    """A section on the axis of a turned part with its slot on the centre line mirrors into itself."""
    outline = section_outline(pad)
    assert outline[0].start == outline[-1].end
    starts = {(round(x, 9), round(z, 9)) for piece in outline for x, z in (piece.start, piece.end)}
    assert {(-x + 0.0, z) for x, z in starts} == {(x + 0.0, z) for x, z in starts}


@given(buildable_pads())
def test_the_section_outline_encloses_the_widths_of_the_pad(pad: Pad) -> None:
    """Its area is the integral over z of the turned width less the slot's width (scipy.integrate)."""

    def width_mm(z: float) -> float:
        turned = cross_section_area_mm2(pad.with_(web_mm=pad.top_height_mm, slot_depth_mm=0), z)
        return 2 * sqrt(turned / pi)

    lip, top, edge = pad.seat_length_mm, pad.top_height_mm, pad.edge_chamfer_mm
    kinks = sorted({-pad.stem_length_mm, 0, pad.seat_corner_radius_mm, lip, lip + edge, top - edge, top})
    whole = sum(quad(width_mm, a, b)[0] for a, b in pairwise(kinks))
    radius = pad.slot_corner_radius_mm
    slot = pad.slot_width_mm * pad.slot_depth_mm - (2 - pi / 2) * radius**2 + pad.slot_mouth_chamfer_mm**2
    assert shoelace_mm2(section_outline(pad)) == pytest.approx(whole - slot, rel=1e-4)


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
def test_the_volume_is_the_integral_of_the_area(pad: Pad) -> None:
    """Adaptive quadrature between the corners (scipy.integrate), to 1e-9."""
    assert volume_mm3(pad) == pytest.approx(integral(pad, 0), rel=1e-9)


@given(buildable_pads())
def test_the_balance_height_is_the_first_moment_over_the_volume(pad: Pad) -> None:
    """Adaptive quadrature (scipy.integrate), to 1e-8 of the height of the pad."""
    expected = integral(pad, 1) / integral(pad, 0)
    assert balance_height_mm(pad) == pytest.approx(expected, abs=1e-8 * pad.overall_height_mm)


def integral(pad: Pad, power: int) -> float:
    """∫ zⁿ A(z) dz, piece by piece; a fillet's square root is left to scipy's adaptive rule."""
    lip, web, top, edge = pad.seat_length_mm, pad.web_mm, pad.top_height_mm, pad.edge_chamfer_mm
    kinks = {-pad.stem_length_mm, 0, pad.seat_corner_radius_mm, lip, lip + edge, top - edge, top, web}
    kinks |= {web + pad.slot_corner_radius_mm, top - pad.slot_mouth_chamfer_mm}
    pieces = [(a, b) for a, b in pairwise(sorted(kinks)) if b - a > 1e-9]
    return sum(
        float(quad(lambda z: z**power * cross_section_area_mm2(pad, z), a, b, epsabs=0, epsrel=1e-11, limit=200)[0])
        for a, b in pieces
    )


def test_a_deeper_slot_takes_away_exactly_its_own_volume() -> None:
    """1 mm more of wall adds the walls' area above the fillets: two circular segments."""
    grown = volume_mm3(ORDINARY.with_(slot_depth_mm=16)) - volume_mm3(ORDINARY)
    walls = pi * 37**2 - strip_in_disc_mm2(radius_mm=37, half_width_mm=4.5)
    assert grown == pytest.approx(walls, rel=1e-9)


def test_the_flat_floor_lies_between_the_fillets() -> None:
    """A strip 8 mm wide in a disc 74 mm across (scipy.integrate)."""
    strip, _ = quad(lambda x: 2 * (37**2 - x**2) ** 0.5, -4, 4)
    assert slot_floor_area_mm2(ORDINARY) == pytest.approx(strip, rel=1e-12)


def test_a_round_floor_has_no_flat() -> None:
    """A floor radius of half the slot's width leaves none."""
    assert slot_floor_area_mm2(ORDINARY.with_(slot_corner_radius_mm=4.5)) == 0
