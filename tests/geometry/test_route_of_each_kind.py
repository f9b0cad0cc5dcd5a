"""What the route card of each kind of pad says: order, holding, tools and limits that only this kind has."""

import pytest

from geometry.document.shop import Shop
from geometry.making.flats import flat_height_mm
from geometry.making.plug_milled import filed_plug
from geometry.making.slot_hold import hand_hold, milled_on_top
from geometry.route import route_card
from tests.geometry.kinds_made import CONDITIONS, made, sentences, titles
from tests.geometry.pads import EVERY_KIND


def test_a_cushion_is_done_on_the_lathe() -> None:
    """Oracle: its top is flat; there is nothing to mill, and no third set-up."""
    card = made("cushion")
    assert card.title == "Route card: lathe"
    assert [s.number for s in card.set_ups] == [1, 2]
    assert not [w for w in sentences(card) if "slot" in w.shown().lower()]


@pytest.mark.parametrize("name", ["cushion", "round plug", "plug", "flats on a skirt", "stem with cross-hole"])
def test_where_there_is_no_slot_none_is_named(name: str) -> None:
    """Oracle: the pad."""
    said = [w.shown() for w in sentences(made(name)) if "slot" in w.shown().lower()]
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


@pytest.mark.parametrize(("bore", "is_said"), [(68.2, True), (74.0, False)])
def test_a_groove_that_no_tool_cuts_stands_in_the_way(bore: float, is_said: bool) -> None:
    """Oracle: half a millimetre beside the seat, 13 mm deep, against 3.4 mm."""
    pad = EVERY_KIND["skirt"].with_(skirt_bore_mm=bore)
    troubles = route_card(pad, CONDITIONS["lathe_and_mill", "metric"], Shop()).troubles
    assert any("no usual grooving tool" in s.shown() for s in troubles) == is_said


@pytest.mark.parametrize(
    ("name", "tool"), [("skirt", "Form tool"), ("short skirt", "Pointed tool"), ("recess", "Pointed tool")]
)
def test_a_corner_behind_a_skirt_is_not_cut_by_the_compound_slide(name: str, tool: str) -> None:
    """Oracle: the long skirt hangs over the whole corner; the short one ends 7 mm from the seat's face, beyond a corner of 4.5."""
    corner = next(o for o in made(name).operations if o.title == "Cut the seat's corner radius")
    assert corner.tools[0].shown().startswith(tool)


@pytest.mark.parametrize("name", ["skirt", "short skirt", "recess", "stem with cross-hole"])
@pytest.mark.parametrize(("radius", "is_scraped"), [(0.3, True), (0.5, True), (0.6, False)])
def test_an_edge_of_half_a_millimetre_is_broken_with_a_scraper_and_not_cut_to_a_form(
    name: str, radius: float, is_scraped: bool
) -> None:
    """Oracle: common practice, no source: so small an edge is broken by hand in a few minutes, whatever stands around it."""
    pad = EVERY_KIND[name].with_(seat_corner_radius_mm=radius)
    card = route_card(pad, CONDITIONS["lathe_and_mill", "metric"], Shop())
    corner = next(o for o in card.operations if "seat_corner_radius_mm" in o.leaves_mm)
    assert corner.tools[0].shown().startswith("Scraper") == is_scraped
    assert (corner.cut is None and corner.time_min <= 3) == is_scraped


def test_a_lathe_that_profiles_cuts_the_small_edge_with_the_rest() -> None:
    """Oracle: the tool passes the edge in any case, so nobody stops the spindle for it."""
    pad = EVERY_KIND["skirt"].with_(seat_corner_radius_mm=0.5)
    card = route_card(pad, CONDITIONS["cnc", "metric"], Shop())
    corner = next(o for o in card.operations if "seat_corner_radius_mm" in o.leaves_mm)
    assert corner.title == "Profile the seat's corner"


def test_a_plug_leaves_the_saw_and_the_file_as_it_leaves_the_mill() -> None:
    """Oracle: the milled plug; the 45° cut of a corner of 5 mm begins 5 · (2 − √2) = 2.93 mm from it."""
    pad, conditions = EVERY_KIND["plug"], CONDITIONS["lathe_and_mill", "metric"]
    milled = next(o for o in made("plug").operations if o.title == "Mill the plug's sides")
    filed = filed_plug(pad, conditions, hand_hold(pad))
    assert filed.leaves_mm == milled.leaves_mm
    assert any("begins 2.93 mm" in s.shown() for s in filed.steps)


def test_a_long_stub_is_sawn_off_and_a_short_one_is_faced_away() -> None:
    """Oracle: 19 mm of stub behind a skirt of 20 mm; none behind a stem of 30 mm, which the jaws hold in its place."""
    assert "Saw off the stub" in titles(made("skirt"))
    assert "Saw off the stub" not in titles(made("stem with cross-hole"))


def test_a_plug_on_a_tall_body_is_turned_before_the_pad_is_turned_round() -> None:
    """Oracle: 27 mm of body less its edges hold it; the shoulder lies against the jaws and the web is measured from it."""
    pad = EVERY_KIND["round plug"].with_(web_mm=40)
    card = route_card(pad, CONDITIONS["lathe_and_mill", "metric"], Shop())
    assert titles(card).index("Turn the plug") < titles(card).index("Flip, and indicate the run-out")
    faced = next(o for o in card.operations if o.title == "Face the foot to height")
    assert "plug inwards" in faced.holding.shown()
    assert "From the shoulder to the seat's face it measures from 39.7 mm to 40.3 mm" in " ".join(
        s.shown() for s in faced.steps
    )


def test_flats_after_a_second_slot_on_a_lathe_are_cut_with_the_pad_turned_back() -> None:
    """Oracle: the second slot is cut a quarter turn on; on a mill it runs along the other slide instead."""
    for machine_name, is_turned in (("vertical_slide", True), ("mill", False)):
        flats = next(
            o for o in made("crossed slots and flats", slot_machine=machine_name).operations if "flats" in o.title
        )
        assert flats.steps[0].shown().startswith("Turn the pad back") == is_turned


def test_a_pocket_that_no_cutter_enters_stands_in_the_way() -> None:
    """Oracle: the smallest end mill to hand against a pocket 1 mm long."""
    pad = EVERY_KIND["relief"].with_(relief_length_mm=1)
    troubles = route_card(pad, CONDITIONS["lathe_and_mill", "metric"], Shop()).troubles
    assert any("enters the relief pocket" in s.shown() for s in troubles)
