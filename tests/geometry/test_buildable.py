"""Which dimensions make one body: on both sides of every limit, each found by hand from the dimensions of the pad."""

from math import sqrt

import pytest

from geometry.buildable import require_buildable
from geometry.errors import BadMeasurementsError
from geometry.pad import Pad
from tests.geometry.pads import EVERY_KIND, ORDINARY, STEMMED

A_HAIR_MM = 1e-6
KINDS = EVERY_KIND | {
    "ordinary": ORDINARY,
    "shallow slot": ORDINARY.with_(slot_depth_mm=5),
    "sharp floor": ORDINARY.with_(slot_corner_radius_mm=0),
    "stem": STEMMED,
    "skirt around a pin": EVERY_KIND["stem with cross-hole"].with_(
        body_diameter_mm=84, skirt_bore_mm=70, skirt_length_mm=20
    ),
    "relief and flats": EVERY_KIND["relief"].with_(body_diameter_mm=84, flats_width_mm=70),
    "slim plug": EVERY_KIND["plug"].with_(plug_corner_radius_mm=0),
}
"""Every kind of pad, and some on which another limit comes first."""

AT_MOST = [
    # A fillet takes at most the seat's whole length.
    ("ordinary", "seat_corner_radius_mm", 13.0, "seat_corner_radius_mm"),
    # A seat of 67.2 mm less two fillets of 4.5 mm and a shoulder of 0.5 mm.
    ("stem", "stem_diameter_mm", 57.7, "stem_diameter_mm"),
    ("recess", "seat_recess_diameter_mm", 57.7, "seat_recess_diameter_mm"),
    # A web of 22 mm less 0.5 mm.
    ("recess", "seat_recess_depth_mm", 21.5, "seat_recess_depth_mm"),
    # A stem of 18 mm less 0.5 mm; 30 mm of it less half the hole and 0.25 mm.
    ("stem with cross-hole", "cross_hole_diameter_mm", 17.5, "cross_hole_diameter_mm"),
    ("stem with cross-hole", "cross_hole_distance_mm", 26.75, "cross_hole_distance_mm"),
    # The body of 84 mm less two chamfers of 1 mm and two rings of 0.5 mm.
    ("skirt", "skirt_bore_mm", 81.0, "skirt_bore_mm"),
    # The hole's upper edge lies 17 mm below the seat face, the lip 13 mm above it; 0.5 mm stay between.
    ("skirt around a pin", "skirt_length_mm", 29.5, "skirt_length_mm"),
    # The body of 84 mm less its two chamfers and 0.5 mm.
    ("flats", "flats_width_mm", 81.5, "flats_width_mm"),
    # Two walls of both chamfers and 0.5 mm each, in a body of 74 mm, between flats of 70 mm, or with all room on one side.
    ("ordinary", "slot_width_mm", 69.0, "slot_width_mm"),
    ("flats", "slot_width_mm", 65.0, "slot_width_mm"),
    ("offset slot", "slot_offset_mm", 30.0, "slot_width_mm"),
    # Half the slot, and what is left of its depth below the mouth's chamfer.
    ("ordinary", "slot_corner_radius_mm", 4.5, "slot_corner_radius_mm"),
    ("shallow slot", "slot_corner_radius_mm", 4.0, "slot_corner_radius_mm"),
    ("ordinary", "slot_mouth_chamfer_mm", 14.5, "slot_corner_radius_mm"),
    ("sharp floor", "slot_mouth_chamfer_mm", 15.0, "slot_mouth_chamfer_mm slot_corner_radius_mm"),
    # From corner to corner of both mouths, 11 mm by c + 2 mm, twice the radius of 37 mm less chamfer and 0.5 mm.
    ("crossed slots", "cross_slot_width_mm", sqrt(71**2 - 11**2) - 2, "cross_slot_width_mm"),
    # A corner of the relief, 10 or 20 mm off the middle, within 35.5 mm of it; between flats 33.5 mm to each side.
    ("relief", "relief_length_mm", 2 * sqrt(35.5**2 - 10**2), "relief_length_mm"),
    ("offset slot with relief", "relief_length_mm", 2 * sqrt(35.5**2 - 20**2), "relief_length_mm"),
    ("relief and flats", "relief_width_mm", 67.0, "relief_width_mm"),
    # 37 mm of height less the seat of 13 mm and 0.5 mm.
    ("relief", "relief_depth_mm", 23.5, "relief_depth_mm"),
    # The corner's round, 5 mm, and its middle together within 35.5 mm of the pad's middle; between flats 34.5 mm.
    ("plug", "plug_width_mm", 2 * (5 + sqrt(30.5**2 - 13**2)), "plug_width_mm"),
    ("plug and flats", "plug_width_mm", 69.0, "plug_width_mm"),
    ("plug", "plug_corner_radius_mm", 10.0, "plug_corner_radius_mm"),
]
AT_LEAST = [
    # The seat of 67.2 mm and two chamfers of 1 mm.
    ("ordinary", "body_diameter_mm", 69.2, "body_diameter_mm"),
    # The seat of 13 mm and the lip's chamfer; where the web is all the height, both chamfers and 0.5 mm.
    ("ordinary", "web_mm", 14.0, "web_mm"),
    ("cushion", "web_mm", 15.5, "web_mm"),
    ("recess", "seat_recess_diameter_mm", 0.5, "seat_recess_diameter_mm"),
    # Half a hole of 6 mm and 0.25 mm.
    ("stem with cross-hole", "cross_hole_distance_mm", 3.25, "cross_hole_distance_mm"),
    ("skirt", "skirt_bore_mm", 67.7, "skirt_bore_mm"),
    ("flats", "flats_width_mm", 67.7, "flats_width_mm"),
    # The skirt's bore of 74 mm and 0.5 mm on each side.
    ("flats on a skirt", "flats_width_mm", 75.0, "flats_width_mm"),
    ("offset slot", "slot_offset_mm", 0.0, "slot_offset_mm"),
    # The slot of 9 mm, its two chamfers and 0.5 mm.
    ("relief", "relief_width_mm", 11.5, "relief_width_mm"),
    ("relief", "relief_length_mm", 0.5, "relief_length_mm"),
    # Deeper than the mouth's chamfer; taller than the plug's.
    ("relief", "relief_depth_mm", 1.0, "relief_depth_mm"),
    ("plug", "plug_height_mm", 1.0, "plug_height_mm"),
    # A chamfer of 1 mm and 0.5 mm on each side.
    ("slim plug", "plug_width_mm", 3.0, "plug_width_mm"),
    ("slim plug", "plug_length_mm", 3.0, "plug_width_mm"),
]


def refused(pad: Pad) -> set[str]:
    """The dimensions that a pad is refused for."""
    try:
        require_buildable(pad)
    except BadMeasurementsError as error:
        return {problem.field.removeprefix("fixed.") for problem in error.problems}
    return set()


@pytest.mark.parametrize(
    ("kind", "name", "limit_mm", "field", "beyond"),
    [(*row, 1) for row in AT_MOST] + [(*row, -1) for row in AT_LEAST],
)
def test_a_hair_inside_a_limit_is_one_body_and_a_hair_beyond_is_refused(
    kind: str, name: str, limit_mm: float, field: str, beyond: int
) -> None:
    inside, outside = (KINDS[kind].with_(**{name: limit_mm + way * beyond * A_HAIR_MM}) for way in (-1, 1))
    assert refused(inside) == set()
    assert refused(outside) == {*field.split()}


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_is_one_body(kind: str) -> None:
    assert refused(KINDS[kind]) == set()


@pytest.mark.parametrize(
    ("kind", "changes", "field"),
    [
        ("recess", {"stem_diameter_mm": 12, "stem_length_mm": 8}, "seat_recess_diameter_mm"),
        ("crossed slots", {"slot_offset_mm": 1}, "cross_slot_width_mm"),
        (
            "crossed slots",
            {"relief_width_mm": 20, "relief_length_mm": 26, "relief_depth_mm": 9},
            "cross_slot_width_mm",
        ),
        ("plug", {"slot_width_mm": 9, "slot_depth_mm": 15}, "plug_width_mm"),
        ("cushion", {"slot_depth_mm": 15}, "slot_depth_mm"),
        ("cushion", {"cross_slot_width_mm": 9}, "cross_slot_width_mm"),
    ],
)
def test_what_cannot_be_on_one_pad_together_is_refused(kind: str, changes: dict[str, float], field: str) -> None:
    assert refused(KINDS[kind].with_(**changes)) == {field}


@pytest.mark.parametrize(
    ("kind", "lost", "words"),
    [
        ("recess", "seat_recess_depth_mm", "A recess has no seat recess depth."),
        ("skirt", "skirt_length_mm", "A skirt has no skirt length."),
        ("stem with cross-hole", "cross_hole_distance_mm", "A cross-hole has no cross hole distance."),
        ("relief", "relief_depth_mm", "A relief has no relief depth."),
        ("plug", "plug_height_mm", "A plug has no plug height."),
    ],
)
def test_half_of_a_feature_is_refused_with_what_it_lacks(kind: str, lost: str, words: str) -> None:
    with pytest.raises(BadMeasurementsError) as caught:
        require_buildable(KINDS[kind].with_(**{lost: 0.0}))
    assert any(problem.message.startswith(words) for problem in caught.value.problems)
