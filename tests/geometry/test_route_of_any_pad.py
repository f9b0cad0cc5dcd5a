"""The route card of pads of every kind: whatever foot and head have, the card finishes it, in an order in which it can be held."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.document.shop import Shop
from geometry.making.foot_cuts import foot_cuts
from geometry.making.groove import groove_plan
from geometry.making.how_measured import looks
from geometry.making.plug_milled import side_passes
from geometry.making.plug_turned import boss_mm, neck_plan
from geometry.making.stock import FACING_MM, REACH_SHARE, least_grip_mm, stock_plan
from geometry.pad import DIMENSIONS, Pad
from geometry.profile import turned_outline
from geometry.route import route_card
from tests.geometry.kinds_made import CONDITIONS, Job, jobs, machine, runs, sentences, titles
from tests.geometry.pads import EVERY_KIND, pads_of_any_kind


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_every_dimension_of_any_pad_is_left_by_some_operation(work: Job) -> None:
    """Oracle: the pad's own dimensions; what is 0 is not made."""
    pad = work[0]
    left: dict[str, float] = {}
    for operation in route_card(*work).operations:
        left |= operation.leaves_mm
    wanted = {name: getattr(pad, name) for name in DIMENSIONS if getattr(pad, name) > 0}
    assert {n: v for n, v in left.items() if v > 0} == wanted | {"overall_height_mm": pad.overall_height_mm}


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_a_part_is_marked_where_the_inspection_sheet_looks_for_the_mark(work: Job) -> None:
    """Oracle: the line of the inspection sheet: the side of the body, or a tag where that is too low."""
    pad = work[0]
    looked = dict(looks(pad))["mark"]
    step = next(
        s.shown() for o in route_card(*work).operations for s in o.steps if s.shown().startswith("Mark the part")
    )
    assert ("tag" in step) == ("tag" in looked) == ("on the side" not in step)


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_passes_of_any_pad_end_at_its_sizes_and_their_dials_add_up(work: Job) -> None:
    """Oracle: what all passes of a run take off is what lies between its first and its last size, on work and on dial alike."""
    _, _, shop = work
    for operation in route_card(*work).operations:
        for passes in runs(operation):
            assert all(a.after_mm == b.before_mm for a, b in pairwise(passes))
            twice = 1 if passes[0].axis == "length" else 2
            off = abs(passes[0].before_mm - passes[-1].after_mm)
            assert sum(p.infeed_mm for p in passes) * twice == pytest.approx(off, abs=1e-9)
            share = 0.5 if twice == 2 and shop.slide == "radius" else 1.0
            assert sum(p.dial_step_mm for p in passes) == pytest.approx(passes[-1].dial_reading_mm, abs=1e-9)
            assert passes[-1].dial_reading_mm == pytest.approx(off * share, abs=1e-9)
            assert (passes[-1].after_mm > passes[0].before_mm) == (passes[0].axis == "bore")


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_the_second_set_up_holds_solid_finished_body_long_enough_or_only_faces(work: Job) -> None:
    """Oracle: a seventh of the diameter and a third of what stands out, or one facing of 1.5 mm and no other cut than edges."""
    pad = work[0]
    card = route_card(*work)
    assert card.stock is not None
    grip = card.stock.second_grip_mm
    solid = pad.body_top_mm - pad.seat_length_mm - pad.edge_chamfer_mm
    second = [o for o in card.operations if o.set_up == 2 and o.passes]
    if card.stock.order == "top_first":
        out = pad.overall_height_mm - pad.top_height_mm + pad.seat_length_mm
        assert grip <= solid + 1e-9
        assert grip >= max(least_grip_mm(pad.body_diameter_mm), out * REACH_SHARE) - 1e-9
    else:
        assert sum(p.infeed_mm for o in second for p in o.passes) == pytest.approx(FACING_MM, abs=1e-9)
        assert grip <= pad.body_top_mm - pad.foot_bottom_mm


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_the_blank_is_the_pad_with_what_is_faced_sawn_and_held(work: Job) -> None:
    """Oracle: facing and sawing off take the blank to the pad's whole height, from the lowest point to the highest."""
    pad, conditions, shop = work
    card = route_card(pad, conditions, shop)
    assert card.stock is not None
    gone = sum(p.infeed_mm for o in card.operations if o.title.startswith("Face ") for p in o.passes)
    sawn = card.stock.stub_mm if any(t.startswith("Saw") and " off" in t for t in titles(card)) else 0.0
    assert card.stock.blank_mm - gone - sawn == pytest.approx(pad.overall_height_mm, abs=1e-9)
    assert card.stock.bar_mm > pad.body_diameter_mm


@settings(max_examples=40, deadline=None)
@given(pads_of_any_kind())
def test_the_cuts_of_the_foot_remove_what_is_not_foot(pad: Pad) -> None:
    """Oracle: the turned profile, which model and drawing play back: at every level between two cuts' ends the foot has the
    radii that the cuts leave."""
    points = [p for piece in turned_outline(pad) for p in (piece.start, piece.end)]
    lowest = min(z for _, z in points)
    cuts = foot_cuts(pad)
    assert cuts[0].from_mm == pytest.approx(lowest)
    assert cuts[-1].to_mm == pytest.approx(pad.seat_length_mm)
    assert all(a.to_mm == b.from_mm for a, b in pairwise(cuts))
    stands = {round(r, 6) for r, z in points if z < pad.seat_length_mm + 1e-6}
    for cut in cuts:
        for diameter in (cut.inner_mm, cut.outer_mm):
            assert diameter == 0 or round(diameter / 2, 6) in stands


@settings(deadline=None)
@given(inner=st.floats(5, 120), gap=st.floats(0.2, 25), depth=st.floats(0.2, 40))
def test_plunges_and_finishing_clear_a_groove_from_wall_to_wall(inner: float, gap: float, depth: float) -> None:
    """Oracle: the plunges lie side by side without a ring between them, and end at each wall's allowance."""
    outer = inner + 2 * gap
    plan = groove_plan(inner_mm=inner, outer_mm=outer, depth_mm=depth, m=machine())
    reached = outer - 2 * plan.side_mm
    for edge in plan.edges_mm:
        assert edge + 2 * plan.tool_mm >= reached - 1e-9
        assert edge + 2 * plan.tool_mm <= outer - 2 * plan.side_mm + 1e-9
        reached = edge
    assert reached == pytest.approx(inner + 2 * plan.side_mm, abs=1e-9)
    assert 0 < plan.floor_mm < depth


@pytest.mark.parametrize("name", ["plug", "round plug", "plug and flats"])
def test_the_neck_behind_a_short_body_is_plunged_from_its_shoulder_to_the_saw(name: str) -> None:
    """Oracle: the shoulder stands web and foot from the faced foot; the neck has room for plug, facing and saw cut."""
    pad, m = EVERY_KIND[name], machine()
    plan = stock_plan(pad, CONDITIONS["lathe_and_mill", "metric"], Shop())
    neck = neck_plan(pad, plan, m)
    reached = pad.web_mm + pad.foot_depth_mm + neck.spare_mm
    for edge in neck.edges_mm:
        assert edge <= reached + 1e-9
        reached = edge + neck.tool_mm
    assert reached == pytest.approx(neck.from_mm + pad.plug_height_mm + FACING_MM + plan.kerf_mm)


@st.composite
def plugs(draw: st.DrawFn) -> Pad:
    """Plugs from a peg to a plank, with sharp corners and with round ends."""
    width, length = draw(st.floats(4, 60)), draw(st.floats(4, 60))
    radius = draw(st.just(0.0) | st.floats(0, min(width, length) / 2))
    sizes = {"plug_width_mm": width, "plug_length_mm": length, "plug_corner_radius_mm": radius}
    return EVERY_KIND["plug"].with_(plug_height_mm=draw(st.floats(2, 40)), **sizes)


@settings(max_examples=40, deadline=None)
@given(plugs(), st.sampled_from([4.0, 6.0, 10.0, 16.0]))
def test_milling_a_plugs_sides_leaves_nothing_of_its_boss_and_cuts_nothing_of_the_plug(pad: Pad, cutter: float) -> None:
    """Oracle: on each side the places at full depth cover from the plug's side to the boss's outside without a gap."""
    for side, half in (("left", pad.plug_width_mm / 2), ("near end", pad.plug_length_mm / 2)):
        found = [p for p in side_passes(pad, machine(), cutter_mm=cutter, is_slender=False) if p.side == side]
        assert all(abs(p.place_mm) - cutter / 2 >= half - 1e-9 for p in found)
        full = sorted(abs(p.place_mm) for p in found if p.depth_mm == pad.plug_height_mm)
        assert full[0] - cutter / 2 == pytest.approx(half)
        assert all(b - a <= cutter for a, b in pairwise(full))
        assert full[-1] + cutter / 2 >= boss_mm(pad) / 2 - 1e-9
        depths = sorted({p.depth_mm for p in found})
        assert all(b - a <= cutter / 2 + 1e-9 for a, b in pairwise([0.0, *depths]))


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_every_sentence_of_any_pad_can_be_shown_in_both_units(work: Job) -> None:
    """Oracle: no open place is left, and an inch shop reads no millimetre."""
    for sentence in sentences(route_card(*work)):
        assert "{" not in sentence.shown("mm")
        assert " mm" not in sentence.shown("in")
        assert "-" not in " ".join(f"{length:.6f}" for length in sentence.lengths_mm.values())


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_a_warning_is_said_once(work: Job) -> None:
    """Oracle: no sentence of what to watch for stands under two operations."""
    said = [w.template for o in route_card(*work).operations for w in o.watch]
    assert len(said) == len(set(said))
