"""The outlines against independent integration and hand calculation."""

from cmath import phase, rect
from itertools import pairwise
from math import dist, pi, sqrt

import pytest
from hypothesis import given, settings
from scipy.integrate import quad

from geometry.levels import cross_section_area_mm2
from geometry.outline import Arc, Line, Outline
from geometry.pad import Pad
from geometry.profile import (
    cross_slot_outline,
    plug_outline,
    relief_outline,
    section_outline,
    section_outlines,
    slot_outline,
    turned_outline,
)
from tests.geometry.pads import ORDINARY, buildable_pads, pads_of_any_kind

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
@settings(deadline=None)
def test_every_outline_is_one_unbroken_walk(pad: Pad) -> None:
    """Pieces of no length are left out, and nothing else changes."""
    for outline in outlines_of(pad):
        assert_joined(outline)
        assert all(dist(piece.start, piece.end) > 1e-7 for piece in outline)


@given(pads_of_any_kind())
@settings(deadline=None)
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
@settings(deadline=None)
def test_the_section_closes_and_is_symmetric(pad: Pad) -> None:
    """A section on the axis of a turned part with its slot on the centre line mirrors into itself."""
    outline = section_outline(pad)
    assert outline[0].start == outline[-1].end
    starts = {(round(x, 9), round(z, 9)) for piece in outline for x, z in (piece.start, piece.end)}
    assert {(-x + 0.0, z) for x, z in starts} == {(x + 0.0, z) for x, z in starts}


@given(buildable_pads())
@settings(deadline=None)
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


def test_a_relief_as_deep_as_its_slot_leaves_no_sliver_between_two_floors() -> None:
    """Oracle: binary arithmetic puts the two floors some 1e-15 mm apart; both are one."""
    pad = ORDINARY.with_(
        seat_diameter_mm=15,
        seat_length_mm=1,
        seat_corner_radius_mm=0,
        body_diameter_mm=19,
        slot_width_mm=1,
        web_mm=3.42,
    ).with_(slot_depth_mm=7.36, relief_width_mm=3.5, relief_length_mm=1, relief_depth_mm=7.36)
    for outline in outlines_of(pad):
        assert all(dist(piece.start, piece.end) > 1e-7 for piece in outline)
