"""The route card of pads of every kind: whatever foot and head have, the card finishes it, in an order in which it can be held."""

from itertools import groupby, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation, Pass
from geometry.making.flats import flat_height_mm
from geometry.making.foot_cuts import foot_cuts
from geometry.making.groove import groove_plan
from geometry.making.machine import Machine, machine_of
from geometry.making.plug_milled import side_passes
from geometry.making.plug_turned import boss_mm, neck_plan
from geometry.making.slot_hold import milled_on_top
from geometry.making.stock import FACING_MM, REACH_SHARE, least_grip_mm, stock_plan
from geometry.making.wording import Sentence
from geometry.pad import DIMENSIONS, Pad
from geometry.profile import turned_outline
from geometry.route import RouteCard, route_card
from tests.geometry.pads import EVERY_KIND, pads_of_any_kind
from tests.geometry.shops import job, shops

Job = tuple[Pad, Conditions, Shop]
CONDITIONS = {
    (process, step): job(make={"process": process, "step": step})[1]
    for process in ("lathe_and_mill", "cnc")
    for step in ("metric", "inch")
}


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    """A pad of any kind in any shop; of the conditions only stock, cutters, material and process matter here."""
    return draw(pads_of_any_kind()), draw(st.sampled_from(list(CONDITIONS.values()))), draw(shops())


def machine(process: str = "lathe_and_mill") -> Machine:
    return machine_of(CONDITIONS[process, "metric"], Shop())


def made(name: str, **shop: object) -> RouteCard:
    """The card of one kind of pad."""
    return route_card(EVERY_KIND[name], CONDITIONS["lathe_and_mill", "metric"], Shop.model_validate(shop))


def titles(card: RouteCard) -> list[str]:
    return [o.title for o in card.operations]


def words(card: RouteCard) -> list[Sentence]:
    """Every sentence of a card."""
    found = [*card.troubles, *(s for each in card.set_ups for s in (each.holding, each.datum))]
    for o in card.operations:
        found += [o.holding, o.tool, *o.steps, *o.watch, *([o.why] if o.why else [])]
    return found


def runs(operation: Operation) -> list[list[Pass]]:
    return [list(passes) for _, passes in groupby(operation.passes, key=lambda p: p.axis)]


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


@settings(max_examples=40, deadline=None)
@given(pads_of_any_kind().filter(lambda pad: milled_on_top(pad) == "plug"), st.sampled_from([4.0, 6.0, 10.0, 16.0]))
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
    for sentence in words(route_card(*work)):
        assert "{" not in sentence.shown("mm")
        assert " mm" not in sentence.shown("in")
        assert "-" not in " ".join(f"{length:.6f}" for length in sentence.lengths_mm.values())


@settings(max_examples=40, deadline=None)
@given(jobs())
def test_a_warning_is_said_once(work: Job) -> None:
    """Oracle: no sentence of what to watch for stands under two operations."""
    said = [w.template for o in route_card(*work).operations for w in o.watch]
    assert len(said) == len(set(said))


def test_a_cushion_is_done_on_the_lathe() -> None:
    """Oracle: its top is flat; there is nothing to mill, and no third set-up."""
    card = made("cushion")
    assert card.title == "Route card: lathe"
    assert [s.number for s in card.set_ups] == [1, 2]
    assert not [w for w in words(card) if "slot" in w.shown().lower()]


@pytest.mark.parametrize("name", ["cushion", "round plug", "plug", "flats on a skirt", "stem with cross-hole"])
def test_where_there_is_no_slot_none_is_named(name: str) -> None:
    """Oracle: the pad."""
    said = [w.shown() for w in words(made(name)) if "slot" in w.shown().lower()]
    assert bool(said) == EVERY_KIND[name].has_slot


def test_a_short_skirt_leaves_the_seat_to_be_turned_and_then_grooved() -> None:
    """Oracle: 7 mm of the seat of 13 stand free above a skirt of 6."""
    card = made("short skirt")
    turned = next(o for o in card.operations if o.title == "Turn the seat down to the skirt")
    groove = next(o for o in card.operations if o.title == "Cut the groove between seat and skirt")
    assert titles(card).index(turned.title) < titles(card).index(groove.title)
    assert sum(p.infeed_mm for p in turned.passes if p.axis == "length") == pytest.approx(7)
    assert groove.tables[0].rows[0][2] == pytest.approx(6, abs=0.11)


def test_a_long_skirt_is_bored_to_the_seats_face_before_the_groove() -> None:
    """Oracle: a skirt of 20 on a seat of 13 hangs 7 mm below the seat's face."""
    card = made("skirt")
    bored = next(o for o in card.operations if o.title == "Bore the skirt down to the seat's face")
    assert titles(card).index(bored.title) < titles(card).index("Cut the groove between seat and skirt")
    assert bored.passes[-1].length_mm == pytest.approx(7)
    assert bored.passes[-1].after_mm == 74


def test_the_cross_hole_is_placed_from_the_seat_face_and_square_to_the_slot() -> None:
    """Oracle: 20 mm from the seat face is 10 mm from the end of a stem of 30."""
    hole = next(o for o in made("stem with cross-hole").operations if "cross-hole" in o.title)
    said = " ".join(s.shown() for s in hole.steps)
    assert (
        "Touch the seat's face, beside the stem, and go 20 mm from there towards the stem's end; 10 mm are left" in said
    )
    assert "square to the slot" in said
    assert "Deburr both mouths" in said
    assert hole.cut is not None
    assert hole.cut.rpm <= hole.cut.wanted_rpm


def test_the_flats_run_down_a_skirt_and_the_jaws_stand_clear_of_them() -> None:
    """Oracle: body and skirt of 13 mm of seat less 20 of skirt to the top at 37; blocks narrower than 80."""
    card, pad = made("flats on a skirt"), EVERY_KIND["flats on a skirt"]
    flats = next(o for o in card.operations if "flats" in o.title)
    assert flat_height_mm(pad) == pytest.approx(44)
    assert max(float(row[3]) for row in flats.tables[0].rows) == pytest.approx(44)
    assert "no wider than 78 mm" in flats.holding.shown()


def test_facing_to_height_states_its_limits() -> None:
    """Oracle: a pad 37 mm high may be 0.3 mm off by ISO 2768-1 m (30 to 120 mm)."""
    faced = next(o for o in made("cushion").operations if o.title.endswith("to height"))
    assert "between 21.8 mm and 22.2 mm" in " ".join(s.shown() for s in faced.steps)
    faced = next(o for o in made("offset slot").operations if o.title.endswith("to height"))
    assert "between 36.7 mm and 37.3 mm" in " ".join(s.shown() for s in faced.steps)


@pytest.mark.parametrize(("offset", "said"), [(2.0, "2.5 mm to the right"), (14.0, "9.5 mm to the left")])
def test_the_pointed_cutter_has_a_side_and_no_negative_place(offset: float, said: str) -> None:
    """Oracle: the slot's two walls, 4.5 mm to each side of its middle."""
    pad = EVERY_KIND["offset slot"].with_(slot_offset_mm=offset)
    card = route_card(pad, CONDITIONS["lathe_and_mill", "metric"], Shop())
    mouth = next(o for o in card.operations if o.title.startswith("Chamfer"))
    assert any(said in s.shown() for s in mouth.steps)


def test_each_table_of_a_mill_is_headed_by_what_it_cuts() -> None:
    """Oracle: the titles."""
    heads = {t.title for o in made("offset slot with relief").operations for t in o.tables}
    assert {"Passes of the slot", "Passes of the pocket"} <= heads
    assert "Passes of the second slot" in {t.title for o in made("crossed slots").operations for t in o.tables}


@pytest.mark.parametrize("name", [n for n, pad in EVERY_KIND.items() if milled_on_top(pad) == "slot"])
def test_without_a_mill_every_slot_is_made_by_hand_and_judged_at_class_c(name: str) -> None:
    """Oracle: the card says what hand work is good for; nothing turns an end mill."""
    card = made(name, slot_machine="none")
    assert card.by_hand is not None
    assert not [o for o in card.operations if o.set_up == 3 and o.cut]
