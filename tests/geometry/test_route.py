"""The route card: its passes leave exactly the drawing, its dials add up, its speeds can be set, its holds hold."""

from itertools import pairwise

import pytest
from hypothesis import given

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.stock import FACING_MM, least_grip_mm
from geometry.pad import Pad
from geometry.route import route_card
from tests.documents import sample, van
from tests.examples import examples
from tests.geometry.kinds_made import named, runs, sentences
from tests.geometry.shops import card, job, jobs

Job = tuple[Pad, Conditions, Shop]


@examples(30, many=600)
@given(jobs())
def test_after_all_operations_every_dimension_is_the_drawings(work: Job) -> None:
    """Oracle: the pad itself; every dimension that it has is left by some operation, at its exact size."""
    pad = work[0]
    left: dict[str, float] = {}
    for operation in route_card(*work).operations:
        left |= operation.leaves_mm
    wanted = {name: value for name, value in pad.as_dict().items() if value > 0 and name != "top_height_mm"}
    if not pad.has_stem:
        wanted.pop("stem_diameter_mm", None)
    assert left == wanted


@examples(30, many=600)
@given(jobs())
def test_passes_start_where_the_one_before_ended_and_end_at_the_size(work: Job) -> None:
    """Oracle: removing all passes leaves exactly the finished size."""
    pad, _, _ = work
    made = route_card(*work)
    for operation in made.operations:
        for passes in runs(operation):
            assert all(a.after_mm == b.before_mm for a, b in pairwise(passes))
            taken = sum(p.infeed_mm for p in passes) * (2 if passes[0].axis == "diameter" else 1)
            assert passes[0].before_mm - taken == pytest.approx(passes[-1].after_mm, abs=1e-9)
    assert named(made, "Turn the body").passes[-1].after_mm == pad.body_diameter_mm
    assert named(made, "Turn the seat").passes[-1].after_mm == pad.seat_diameter_mm


@examples(30, many=600)
@given(jobs())
def test_facing_both_ends_takes_the_blank_to_the_pads_height(work: Job) -> None:
    """Oracle: what facing and sawing off take from the blank, added up."""
    pad, _, _ = work
    made = route_card(*work)
    assert made.stock is not None
    faced = [o for o in made.operations if o.title.startswith("Face ")]
    assert faced[0].passes[0].before_mm == made.stock.blank_mm
    assert faced[0].passes[-1].after_mm == pytest.approx(made.stock.blank_mm - FACING_MM, abs=1e-9)
    assert faced[1].passes[-1].after_mm == pad.overall_height_mm
    gone = sum(p.infeed_mm for o in faced for p in o.passes)
    sawn = made.stock.stub_mm if any(o.title.startswith("Saw") and " off" in o.title for o in made.operations) else 0.0
    assert made.stock.blank_mm - gone - sawn == pytest.approx(pad.overall_height_mm, abs=1e-9)


@examples(30, many=600)
@given(jobs())
def test_dial_readings_add_up(work: Job) -> None:
    """Oracle: the dial's steps sum to its reading, which is what came off: half of it on a dial that counts travel."""
    _, _, shop = work
    for operation in route_card(*work).operations:
        for passes in runs(operation):
            off = passes[0].before_mm - passes[-1].after_mm
            share = 0.5 if passes[0].axis == "diameter" and shop.slide == "radius" else 1.0
            assert sum(p.dial_step_mm for p in passes) == pytest.approx(passes[-1].dial_reading_mm, abs=1e-9)
            assert passes[-1].dial_reading_mm == pytest.approx(off * share, abs=1e-9)


@examples(30, many=600)
@given(jobs())
def test_no_pass_is_deeper_than_the_shop_allows_and_the_last_is_fine(work: Job) -> None:
    """Oracle: the shop's deepest cut, by default 0.5 mm or 0.020 in; finishing 0.1 mm or 0.005 in."""
    _, conditions, shop = work
    deepest = shop.largest_cut_mm or (0.508 if conditions.is_inch else 0.5)
    for operation in route_card(*work).operations:
        for p in operation.passes:
            assert 0 < p.infeed_mm <= deepest + 1e-6
            assert p.kind == "rough" or p.infeed_mm <= 0.127 + 1e-6


@examples(30, many=600)
@given(jobs())
def test_every_speed_is_one_of_the_machines_and_none_is_too_fast_unsaid(work: Job) -> None:
    """Oracle: the list of the shop's speeds; a CNC machine sets any up to its fastest."""
    _, conditions, shop = work
    made = route_card(*work)
    machine = {*shop.lathe_speeds_used_rpm, *shop.mill_speeds_used_rpm}
    for cut in [c for o in made.operations for c in (o.cut, o.finish_cut) if c]:
        assert cut.rpm <= cut.wanted_rpm or cut.is_too_fast
        assert cut.rpm in machine or conditions.process == "cnc"
        assert not cut.is_too_fast or any("slowest speed" in s.shown() for s in made.troubles)


@examples(30, many=600)
@given(jobs())
def test_the_second_set_up_holds_on_finished_body_not_on_the_seat(work: Job) -> None:
    """Oracle: the grip lies between the body's edge breaks; where it is short, only a facing cut of 1.5 mm is left for it."""
    pad, _, _ = work
    made = route_card(*work)
    assert made.stock is not None
    body = pad.top_height_mm - pad.seat_length_mm - 2 * pad.edge_chamfer_mm
    assert made.stock.second_grip_mm <= body
    second = [o for o in made.operations if o.set_up == 2 and o.passes]
    if made.stock.second_grip_mm < least_grip_mm(pad.body_diameter_mm):
        assert sum(p.infeed_mm for o in second for p in o.passes) == pytest.approx(FACING_MM, abs=1e-9)
    assert "finished body" in made.set_ups[1].holding.shown()


@examples(30, many=600)
@given(jobs())
def test_the_first_set_up_grips_the_bar_long_enough(work: Job) -> None:
    """Oracle: grip and what stands out make up the blank; at least 10 mm and a third of what stands out."""
    made = route_card(*work)
    assert made.stock is not None
    assert made.stock.first_grip_mm + made.stock.first_reach_mm == pytest.approx(made.stock.blank_mm, abs=1e-9)
    assert made.stock.first_grip_mm >= max(10.0, made.stock.first_reach_mm / 3) - 1e-9


@examples(30, many=600)
@given(jobs())
def test_every_sentence_can_be_shown_in_both_units(work: Job) -> None:
    """Oracle: no open place is left, and an inch shop reads no millimetre."""
    for sentence in sentences(route_card(*work)):
        assert "{" not in sentence.shown("mm")
        assert " mm" not in sentence.shown("in")


def test_the_slot_is_cut_last_and_clamped_where_it_cannot_be_closed() -> None:
    """Oracle: the order of the titles, and the reason on the card."""
    made = card()
    titles = [o.title for o in made.operations]
    assert titles.index("Cut the slot") > titles.index("Turn the seat")
    hold = named(made, "Set up for the slot")
    assert hold.why is not None
    assert "close the slot" in hold.why.shown()


def test_three_pads_from_one_bar_take_less_time_each() -> None:
    """Oracle: settings are made once; the bar is used three times, saw cuts included."""
    made = card()
    assert made.stock is not None
    one, three = made.batches
    assert three.time_each_min < one.time_each_min
    assert three.bar_used_mm == pytest.approx(3 * (made.stock.blank_mm + made.stock.kerf_mm), abs=1e-9)


def test_a_pad_for_every_process_has_a_card() -> None:
    """Oracle: the four processes of the document."""
    titles = {
        card(van(make={"process": process, "material": material})).title
        for process, material in (
            ("lathe_and_mill", "pom_c"),
            ("cnc", "pom_c"),
            ("hand_tools", "pom_c"),
            ("printed", "petg"),
        )
    }
    assert len(titles) == 4


@examples(30, many=600)
@given(jobs())
def test_the_list_has_each_tool_once(work: Job) -> None:
    """Oracle: names without regard to their figures' place; a tool that several operations use has one line."""
    made = route_card(*work)
    names = [t.name.shown().lower() for t in made.tools]
    assert len(set(names)) == len(names)
    for number, operation in enumerate(made.operations, start=1):
        listed = {t.name.shown() for t in made.tools if number in t.operations}
        assert listed == {t.shown() for t in operation.tools}


@examples(30, many=600)
@given(jobs())
def test_the_card_says_what_the_dials_read_where_a_pass_ends(work: Job) -> None:
    """Oracle: half or all of what is off the diameter, by the kind of dial; the lengthwise dial reads the length."""
    pad, _, shop = work
    for operation in route_card(*work).operations:
        for table in operation.tables:
            if table.title != "Where the tool stops":
                continue
            columns = [title for title, _ in table.columns]
            for row in table.rows:
                found = dict(zip(columns, row, strict=True))
                if isinstance(found.get("Cross dial"), float) and isinstance(found["Diameter"], float):
                    off = float(table.rows[0][1]) - found["Diameter"]
                    wanted = off / 2 if shop.slide == "radius" else off
                    assert found["Cross dial"] == pytest.approx(wanted)
                if isinstance(found["Lengthwise dial"], float):
                    assert 0 < found["Lengthwise dial"] <= max(pad.seat_length_mm, pad.stem_length_mm) + 1e-9


def test_a_seat_behind_a_stem_is_counted_from_the_seats_face() -> None:
    """Oracle: its first pass takes the first cut off the seat's face, not off the stem's end."""
    made = card(sample("tool_library_hatchback_stem"))
    seat = named(made, "Turn the seat")
    assert any("Touch the outside and the seat's face" in s.shown() for s in seat.steps)
    pad = job(sample("tool_library_hatchback_stem"))[0]
    assert seat.tables[0].rows[-1][-1] == pytest.approx(pad.seat_length_mm)


def test_a_filed_slot_has_the_zero_of_a_scriber() -> None:
    """Oracle: the third set-up of a shop without a mill."""
    datum = {s.number: s.datum.shown() for s in card(shop__slot_machine="none").set_ups}
    assert datum[3].startswith("The centre line, scribed across the top")
    assert datum[1].startswith("Axis of the spindle")


@pytest.mark.parametrize("machine", ["mill", "vertical_slide"])
def test_a_stem_hangs_free_while_the_slot_is_cut(machine: str) -> None:
    """Oracle: nothing says that the seat face lies flat where a stem stands out of it, nor that it is drawn over a plate."""
    document = sample("tool_library_hatchback_stem")
    document["shop"] = {"slot_machine": machine}
    made = card(document)
    words = " ".join(s.shown() for s in sentences(made))
    assert "flat on the slide" not in words
    assert "down on parallels" not in words
    assert "Draw the seat face" not in words
    assert "Rub the seat face round the stem" in words


def test_the_way_of_the_cutter_is_said_for_the_machine_that_has_it() -> None:
    """Oracle: on a lathe the cross slide moves towards and away from one, and up is up."""
    slide = named(card(shop__slot_machine="vertical_slide"), "Cut the slot")
    mill = named(card(), "Cut the slot")
    assert any("+x is along the slot towards you" in s.shown() for s in slide.steps)
    assert any("the table moves the other way" in s.shown().lower() for s in mill.steps)


def test_the_cutters_flutes_reach_the_slots_floor() -> None:
    """Oracle: the slot's depth."""
    pad, _, _ = job()
    tool = named(card(), "Cut the slot").tools[0].shown()
    assert f"at least {pad.slot_depth_mm:g} mm long" in tool
