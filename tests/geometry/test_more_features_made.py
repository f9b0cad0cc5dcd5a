"""Route card, inspection and readings of pads with a recess, flats, a slot off the middle, a second slot, or a relief pocket."""

import json
from pathlib import Path

import pytest

from geometry.as_made import judge_as_made
from geometry.design import Design, design_pad
from geometry.document.as_made import READABLE, ReadingSet
from geometry.inspection import inspection_sheet
from geometry.measurements import Measurements
from geometry.route import RouteCard, route_card

SAMPLES = ("scout_hall_minivan_boss", "kayak_club_estate_drain", "orchard_pickup_crossed_slots")
DATA = Path(__file__).parents[2] / "sample_data"


def _designed(name: str, **make: str) -> Design:
    document = json.loads((DATA / f"{name}.json").read_text(encoding="utf-8"))
    document["make"] |= make
    return design_pad(Measurements.model_validate(document))


def _card(design: Design) -> RouteCard:
    return route_card(design.pad, design.conditions, design.measurements.shop)


@pytest.mark.parametrize("process", ["lathe_and_mill", "cnc", "hand_tools"])
@pytest.mark.parametrize("name", SAMPLES)
def test_the_card_finishes_every_size_that_the_drawing_states(name: str, process: str) -> None:
    """Oracle: the pad's own list of its dimensions; each is left as drawn by some operation."""
    design = _designed(name, process=process)
    left = {k: v for operation in _card(design).operations for k, v in operation.leaves_mm.items()}
    wanted = {k: getattr(design.pad, k) for k in design.pad.present if getattr(design.pad, k) > 0}
    wanted.pop("edge_chamfer_mm")
    assert {k: left.get(k) for k in wanted} == pytest.approx(wanted)


def test_the_bore_ends_at_the_recess_and_its_dial_steps_add_up() -> None:
    """Oracle: a radius-reading dial shows half of what the bore grows by."""
    design = _designed(SAMPLES[0])
    bore = next(o for o in _card(design).operations if o.title.startswith("Bore the recess"))
    assert bore.passes[-1].after_mm == design.pad.seat_recess_diameter_mm
    assert bore.passes[-1].dial_reading_mm == pytest.approx(sum(p.dial_step_mm for p in bore.passes), abs=1e-9)
    grown = bore.passes[-1].after_mm - bore.passes[0].before_mm
    assert sum(p.infeed_mm for p in bore.passes) == pytest.approx(grown / 2, abs=1e-9)


def test_a_slot_off_the_middle_is_milled_off_the_middle() -> None:
    """Oracle: the cutter's outermost edges are the slot's walls, counted from the pad's axis."""
    design = _designed(SAMPLES[1])
    pad, plan = design.pad, _card(design).slot
    assert plan is not None
    walls = [p.y_mm + side * plan.cutter_mm / 2 for p in plan.passes for side in (1, -1)]
    assert max(walls) == pytest.approx(pad.slot_offset_mm + pad.slot_width_mm / 2)
    assert min(walls) == pytest.approx(pad.slot_offset_mm - pad.slot_width_mm / 2)


def test_the_relief_pocket_is_centred_on_the_slot_and_as_deep_as_drawn() -> None:
    """Oracle: the pad's relief, centred on the slot, counted from the pad's axis."""
    design = _designed(SAMPLES[1])
    pad = design.pad
    pocket = next(o for o in _card(design).operations if o.title == "Cut the relief pocket")
    across = [float(row[2]) for row in pocket.tables[0].rows]
    assert (max(across) + min(across)) / 2 == pytest.approx(pad.slot_offset_mm)
    assert max(float(row[3]) for row in pocket.tables[0].rows) == pytest.approx(pad.relief_depth_mm)


@pytest.mark.parametrize("name", SAMPLES)
def test_every_size_of_the_pad_can_be_measured_and_read(name: str) -> None:
    """Oracle: the pad's own list of its dimensions."""
    design = _designed(name)
    there = {k for k in design.pad.present if getattr(design.pad, k) > 0}
    lines = {c.name for c in inspection_sheet(design.pad, design.conditions).characteristics}
    assert there <= lines
    assert there <= set(READABLE)


def test_a_shallow_recess_makes_the_part_one_not_to_be_used() -> None:
    """Oracle: a recess less deep than the boss is high lets the pad stand on the boss."""
    design = _designed(SAMPLES[0])
    found = judge_as_made(design.pad, design.conditions, (ReadingSet(seat_recess_depth_mm=(4.0,)),))
    assert found.must_not_be_used
    assert "boss_clear" in {c.code for c in found.checks if c.verdict == "fail"}


def test_a_size_out_of_its_limits_is_named_first_while_others_are_unread() -> None:
    """Oracle: the headline of a part whose slot is 0.4 mm too wide, nothing else read."""
    design = _designed(SAMPLES[2])
    wide = design.pad.slot_width_mm + 0.4
    found = judge_as_made(design.pad, design.conditions, (ReadingSet(slot_width_mm=(wide,)),))
    assert found.outcome == "open"
    assert found.words.startswith("Not as drawn: slot width outside")


def test_the_pockets_depth_on_the_card_has_the_limits_of_the_drawing() -> None:
    """Oracle: the drawing's 23 ±0.2; a card that asks for more than the drawing cannot be kept."""
    pocket = next(
        o for o in _card(_designed("kayak_club_estate_drain")).operations if o.title == "Cut the relief pocket"
    )
    words = " ".join(step.shown() for step in pocket.steps)
    assert "from 22.8 mm to 23.2 mm" in words
    assert "never less" not in words
