"""The section of what not every job has: boss, slot off the middle, pocket, second slot, flats."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.design import design_pad
from geometry.drawing.section import Section, section_of_partial
from geometry.drawing.section_marks import Band, band_of
from geometry.drawing.section_shape import Kind
from geometry.drawing.section_words import description
from geometry.measurements import read_measurements
from geometry.outline import Point
from tests.geometry.feet.post_documents import posted
from tests.geometry.section_cases import document, section_of, sections

_BOSS, _DRAIN, _CROSSED = "scout_hall_minivan_boss", "kayak_club_estate_drain", "orchard_pickup_crossed_slots"


def _ends(section: Section, kind: Kind) -> list[tuple[Point, ...]]:
    """The corners of every shape of a kind."""
    return [
        tuple(point for piece in shape.outline for point in (piece.start, piece.end))
        for shape in section.shapes
        if shape.kind == kind and shape.outline
    ]


def _box(points: tuple[Point, ...]) -> tuple[float, float, float, float]:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def _words(section: Section) -> str:
    return description(section.scene, section.pointers, section.troubles, units="mm")


def _fixed(sample: str, **sizes: float) -> dict[str, Any]:
    return document(sample) | {"fixed": sizes}


def _band(told: dict[str, Any], code: str) -> tuple[Section, Band]:
    """The band of one check, which must fail."""
    title = next(c.rule.title for c in design_pad(read_measurements(told)).failures if c.code == code)
    section = section_of(told)
    spot = next(s for s in section.troubles if s.words == title)
    return section, band_of(spot, section.scene)


def test_a_boss_stands_on_the_cups_floor_within_the_recess() -> None:
    """Oracle: the measured boss, 19 mm across and 4.5 mm high, about the axis."""
    section = section_of(document(_BOSS))
    assert (-9.5, 0, 9.5, 4.5) in [_box(points) for points in _ends(section, "cut-steel")]
    pad = section.scene.pad
    assert (pad.seat_recess_diameter_mm / 2, pad.seat_recess_depth_mm) in _ends(section, "pad")[0]


@settings(max_examples=100, deadline=None)
@given(section=sections())
def test_the_seam_stands_in_the_slot_wherever_that_is(section: Section) -> None:
    """Oracle: the pad's own offset; its sheets stand on both sides of that. In a low seam they are all bend."""
    middle = section.scene.pad.slot_offset_mm
    boxes = [_box(points) for points in _ends(section, "seam")]
    assert not boxes or min(b[0] for b in boxes) <= middle <= max(b[2] for b in boxes)
    at = {p.field: p.at for p in section.pointers}
    assert at["seam.edge_height_mm"] == (middle, section.scene.pad.web_mm)
    assert at["seam.thickness_mm"][0] == pytest.approx(middle + section.scene.thickness / 2)


@settings(max_examples=100, deadline=None)
@given(section=sections())
def test_cup_and_pad_stay_centred(section: Section) -> None:
    kinds: tuple[Kind, ...] = ("cut-steel", "pad")
    for kind in kinds:
        boxes = [_box(points) for points in _ends(section, kind)]
        assert min(b[0] for b in boxes) == pytest.approx(-max(b[2] for b in boxes))


def test_an_offset_that_is_measured_moves_the_seam_before_a_pad_is_sized() -> None:
    at = {p.field: p.at for p in section_of_partial({"seam": {"offset_mm": 12}}).pointers}
    assert at["seam.edge_height_mm"][0] == 12


def test_what_hangs_below_the_seams_edge_is_drawn_in_the_open_pocket() -> None:
    """Oracle: the measured drop, 3.5 mm, below the seam's edge at the height of the web; the pocket is deeper."""
    section = section_of(document(_DRAIN))
    pad = section.scene.pad
    low = min(_box(points)[1] for points in _ends(section, "seam"))
    assert low == pytest.approx(pad.web_mm - 3.5)
    assert low > pad.body_top_mm - pad.relief_depth_mm


def test_the_thick_place_is_drawn_as_thick_as_measured() -> None:
    """Oracle: 6.5 mm, from the middles and widths of the drawn sheets."""
    section = section_of(document(_DRAIN))
    plates = [s for s in section.shapes if s.kind == "seam" and s.width_mm == pytest.approx((6.5 - 2.8) / 2)]
    edges = [s.outline[0].start[0] + side * s.width_mm / 2 for s in plates for side in (-1, 1)]
    assert max(edges) - min(edges) == pytest.approx(6.5)


@settings(max_examples=40, deadline=None)
@given(depth=st.floats(40, 109))
def test_the_floor_of_a_deep_bore_is_seen_to_be_clear_of_the_stem(depth: float) -> None:
    """Oracle: the measured depth less the pad's stem; a gap that is wider than 6 units may be drawn that narrow, no narrower."""
    scene = section_of(posted(jack__post_bore_depth_mm=depth)).scene
    assert scene.hole_floor is not None
    stem = scene.pad.stem_length_mm
    gap, drawn = depth - stem, -stem - scene.hole_floor
    assert gap > 0
    assert min(gap, 6 * scene.unit_mm) - 1e-9 <= drawn <= gap + 1e-9


@pytest.mark.parametrize("head", ["slot", "cushion", "plug"])
def test_the_pins_hole_crosses_the_stem_where_the_pad_has_it(head: str) -> None:
    """Oracle: the pad's own sizes: it lies in the plane of the cut, as far up and down as it is wide, from side to side."""
    section = section_of(posted(head))
    pad = section.scene.pad
    (upper, lower) = (_box(points) for points in _ends(section, "hole-edge"))
    assert upper[1] - lower[1] == pytest.approx(pad.cross_hole_diameter_mm)
    assert (upper[1] + lower[1]) / 2 == pytest.approx(-pad.cross_hole_distance_mm)
    for left, low, right, high in (upper, lower):
        assert (left, right) == (-pad.stem_diameter_mm / 2, pad.stem_diameter_mm / 2)
        assert low == high


def test_without_a_pin_no_hole_crosses_the_stem() -> None:
    assert _ends(section_of(posted(pinned=False)), "hole-edge") == []


def test_walls_between_crossed_slots_are_seen_beyond_the_cut() -> None:
    """Oracle: where the second slot's wall meets the round, by Pythagoras; the cut itself ends at the web."""
    section = section_of(document(_CROSSED))
    pad = section.scene.pad
    assert _box(_ends(section, "pad")[0])[3] == pytest.approx(pad.web_mm)
    _, low, right, high = _box(_ends(section, "hole-edge")[0])
    assert (low, high) == (pad.web_mm, pad.top_height_mm)
    assert right**2 + (pad.cross_slot_width_mm / 2) ** 2 == pytest.approx((pad.body_diameter_mm / 2) ** 2)


@pytest.mark.parametrize(
    ("sample", "told"),
    [
        (_BOSS, "A boss 19 mm across stands 4.5 mm high on the middle of the cup's floor."),
        (_BOSS, "Two flats along the slot leave the body"),
        (_DRAIN, "The slot runs 3 mm off the axis of cup and pad"),
        (_DRAIN, "the seam is 6.5 mm thick and has something hanging 3.5 mm below its edge, over a length of 18 mm"),
        (_CROSSED, "A second slot 5 mm wide crosses the first"),
    ],
)
def test_the_words_tell_what_is_out_of_the_ordinary(sample: str, told: str) -> None:
    """Oracle: the samples' own numbers; no other sample has any of it."""
    assert told in _words(section_of(document(sample)))
    assert told[:14] not in _words(section_of(document("mobile_library_van")))


def test_the_words_tell_the_pads_own_recess_pocket_and_flats() -> None:
    """Oracle: the designed pad's numbers, which have at most two decimals."""
    boss, drain = (section_of(document(sample)) for sample in (_BOSS, _DRAIN))
    recess, pocket = boss.scene.pad, drain.scene.pad
    assert f"a recess {recess.seat_recess_diameter_mm:g} mm across and {recess.seat_recess_depth_mm:g} mm" in _words(
        boss
    )
    assert f"leave the body {recess.flats_width_mm:g} mm across" in _words(boss)
    assert f"a pocket in the middle of the slot, {pocket.relief_width_mm:g} mm wide" in _words(drain)


def test_a_recess_too_narrow_is_marked_between_boss_and_recess() -> None:
    section, band = _band(_fixed(_BOSS, seat_recess_diameter_mm=19.5), "boss_clear")
    assert (band.low, band.high[0]) == ((-9.75, 0), -9.5)
    assert band.high[1] == section.scene.pad.seat_recess_depth_mm


def test_a_pocket_too_narrow_is_marked_between_seam_and_pocket() -> None:
    """Oracle: half of 6.5 mm and of the pocket's 7 mm, from the slot's middle."""
    section, band = _band(_fixed(_DRAIN, relief_width_mm=7.0), "relief_clear")
    assert (band.low[0], band.high[0]) == pytest.approx((3 + 3.25, 3 + 3.5))
    assert band.high[1] == section.scene.wall_top


def test_a_slot_that_is_not_where_the_seam_is_is_marked_between_the_two() -> None:
    """Oracle: the fixed 8 mm and the measured 3 mm."""
    section, band = _band(_fixed(_DRAIN, slot_offset_mm=8.0), "slot_offset_fit")
    assert (band.low[0], band.high[0]) == (3, 8)
    assert "Measured, the seam passes 3 mm beside the jack's axis." in _words(section)
