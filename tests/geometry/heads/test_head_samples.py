"""The worked examples of cushions and plugs: each passes everything that is judged, on a jack with a cup."""

from datetime import date

import pytest

from geometry.checks import judge
from geometry.design import design_pad
from geometry.drawing.notes import note_words
from geometry.measurements import read_measurements
from geometry.sheet_facts import sheet_facts
from geometry.volume import volume_mm3
from tests.documents import sample

SAMPLES = {
    "village_bakery_van_rail_cushion": "cushion",
    "lifeguard_station_pickup_round_plug": "plug",
    "pottery_studio_city_car_pocket": "plug",
}


@pytest.mark.parametrize(("name", "head"), SAMPLES.items())
def test_an_example_passes_and_leaves_nothing_unchecked(name: str, head: str) -> None:
    design = design_pad(read_measurements(sample(name)))
    assert design.measurements.head == head
    assert design.measurements.foot == "cup"
    assert design.fit_to_make
    assert not design.with_verdict("not_checked")


def test_one_plug_is_round_and_one_is_not() -> None:
    pads = [design_pad(read_measurements(sample(name))).pad for name, head in SAMPLES.items() if head == "plug"]
    assert [pad.plug_is_round for pad in pads] == [True, False]


@pytest.mark.parametrize("name", SAMPLES)
def test_an_example_weighs_what_its_simple_bodies_add_up_to(name: str) -> None:
    """Oracle: discs and a block without their broken edges and radii; those take off less than a twentieth."""
    pad = design_pad(read_measurements(sample(name))).pad
    quarter = 0.7853981633974483
    seat = quarter * pad.seat_diameter_mm**2 * pad.seat_length_mm
    body = quarter * pad.body_diameter_mm**2 * (pad.web_mm - pad.seat_length_mm)
    stem = quarter * pad.stem_diameter_mm**2 * pad.stem_length_mm
    share = quarter if pad.plug_is_round else 1.0
    plug = share * pad.plug_width_mm * pad.plug_length_mm * pad.plug_height_mm
    assert 0.95 * (seat + body + stem + plug) < volume_mm3(pad) < seat + body + stem + plug


def test_the_drawing_limits_the_root_of_a_plug_and_of_no_cushion() -> None:
    """Oracle: the radius that the factor at the plug's root is for."""
    notes = {head: _notes(name) for name, head in SAMPLES.items()}
    assert "plug root R0.2 to R0.4" in notes["plug"]
    assert "plug root" not in notes["cushion"]


def _notes(name: str) -> str:
    design = design_pad(read_measurements(sample(name)))
    return " ".join(note_words(sheet_facts(design, issued=date(2026, 2, 3)), design.pad))


@pytest.mark.parametrize(
    ("size", "slip"),
    [("plug_width_mm", 1.1), ("plug_length_mm", 1.1), ("plug_height_mm", 0.35), ("plug_corner_radius_mm", 0.1)],
)
def test_a_gross_slip_in_a_size_of_a_plug_fails_a_check(size: str, slip: float) -> None:
    """Oracle: the checks themselves, which pass this pad as drawn."""
    design = design_pad(read_measurements(sample("pottery_studio_city_car_pocket")))
    slipped = design.pad.with_(**{size: getattr(design.pad, size) * slip})
    assert "fail" in {found.verdict for found in judge(design.conditions, slipped)}
