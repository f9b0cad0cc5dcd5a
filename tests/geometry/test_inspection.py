"""The inspection sheet: every dimension once, with the drawing's limits, an instrument fine enough, and what depends on it."""

from datetime import date

import pytest
from hypothesis import given, settings

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.drawing.measures import measures
from geometry.inspection import checks_moved_by, inspection_sheet, instrument_for, is_fine_enough
from geometry.making.instruments import CALIPER, MICROMETER, PLATES
from geometry.measurements import read_measurements
from geometry.pad import DIMENSIONS, Pad
from tests.documents import sample, van
from tests.geometry.shops import job, jobs


@settings(max_examples=30, deadline=None)
@given(jobs())
def test_every_dimension_of_the_pad_stands_on_the_sheet_once(work: tuple[Pad, Conditions, Shop]) -> None:
    """Oracle: the pad's own dimensions, and the height that follows from two of them."""
    pad, conditions, _ = work
    lines = inspection_sheet(pad, conditions).characteristics
    measured = [c.name for c in lines if c.nominal_mm is not None]
    wanted = {n for n in DIMENSIONS if getattr(pad, n) > 0 and (pad.has_stem or not n.startswith("stem"))}
    assert len(measured) == len(set(measured))
    assert set(measured) == wanted | {"top_height_mm"}
    assert [c.number for c in lines] == list(range(1, len(lines) + 1))


@pytest.mark.parametrize("document", [van(), sample("tool_library_hatchback_stem")])
def test_limits_are_those_of_the_drawing(document: dict[str, object]) -> None:
    """Oracle: the drawing's own dimensions."""
    from geometry.design import design_pad
    from geometry.sheet_facts import sheet_facts

    design = design_pad(read_measurements(document))
    drawn = measures(design.pad, sheet_facts(design, issued=date(2026, 11, 25)))
    for line in inspection_sheet(design.pad, design.conditions).characteristics:
        if line.name in drawn:
            assert (line.lower_mm, line.upper_mm) == pytest.approx(
                (drawn[line.name].lower_mm, drawn[line.name].upper_mm)
            )


@pytest.mark.parametrize(
    ("name", "tolerance", "instrument"),
    [
        ("seat_diameter_mm", 0.3, CALIPER),
        ("seat_diameter_mm", 0.1, MICROMETER),
        ("slot_width_mm", 0.1, PLATES),
    ],
)
def test_the_instrument_is_the_coarsest_that_is_fine_enough(name: str, tolerance: float, instrument: object) -> None:
    """Oracle: a fifth of the zone: 0.05 of 0.6 will do, of 0.2 it will not."""
    assert instrument_for(name, tolerance) == instrument


def test_a_caliper_cannot_decide_on_five_hundredths() -> None:
    """Oracle: 0.05 against a fifth of 0.1."""
    assert not is_fine_enough(CALIPER, 0.05)


def test_the_sheet_says_what_depends_on_a_dimension() -> None:
    """Oracle: the seat's fit moves with the seat, the sill's clearance with the slot's depth, and neither with the other."""
    pad, conditions, _ = job()
    seat = checks_moved_by("seat_diameter_mm", 0.3, pad, conditions)
    depth = checks_moved_by("slot_depth_mm", 0.2, pad, conditions)
    assert seat[0] in {"seat_fit_tight", "seat_fit_loose"}
    assert "sill_clear" in depth
    assert "sill_clear" not in seat


def test_the_first_part_starts_with_what_others_are_counted_from() -> None:
    """Oracle: height and seat before the slot, edges last."""
    pad, conditions, _ = job()
    order = [c.name for c in inspection_sheet(pad, conditions).characteristics]
    assert order.index("top_height_mm") < order.index("slot_depth_mm") < order.index("web_mm")
    assert order.index("seat_diameter_mm") < order.index("slot_width_mm") < order.index("edge_chamfer_mm")


def test_nylon_is_said_to_grow_with_water_and_polyethylene_is_not() -> None:
    """Oracle: 2.5 % water times 0.3 % in room air against none."""
    notes = {}
    for key in ("pa66", "hdpe"):
        pad, conditions, _ = job(van(make={"material": key}))
        notes[key] = " ".join(n.shown() for n in inspection_sheet(pad, conditions).notes)
    assert "room air" in notes["pa66"]
    assert "room air" not in notes["hdpe"]
