"""The gauges to cut: closed, in true size, fitting the part; what each is for is said in words of this pad."""

from cmath import exp, phase
from math import dist, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.design import design_pad
from geometry.drawing.measures import measures
from geometry.fits import linear_tolerance_mm
from geometry.making.hand import round_by_hand, slot_by_hand
from geometry.outline import SAME_POINT_MM, Arc, Outline, Point
from geometry.packet.gauge_jack import cup_gauge
from geometry.packet.gauge_outlines import gauges_of, pad_gauges
from geometry.packet.gauge_shapes import Gauge, bounds
from geometry.pad import Pad
from tests.documents import sample, understood
from tests.drawing.packets import design_of
from tests.drawing.pads import TYPICAL, facts, pads
from tests.examples import examples
from tests.geometry.pads import EVERY_KIND, pads_of_any_kind
from tests.geometry.shops import job

CUPS = st.tuples(st.floats(20, 200), st.floats(2, 60), st.floats(0, 1))


def is_closed(outline: Outline) -> bool:
    """Whether each piece starts where the one before ends."""
    return all(dist(outline[i - 1].end, piece.start) <= SAME_POINT_MM for i, piece in enumerate(outline))


def corners(outline: Outline, steps: int = 24) -> list[Point]:
    """The outline as a polygon, its arcs in chords."""
    points: list[Point] = []
    for piece in outline:
        points.append(piece.start)
        if isinstance(piece, Arc):
            centre, start = complex(*piece.centre), complex(*piece.start)
            turn = phase((complex(*piece.end) - centre) / (start - centre))
            spokes = [centre + (start - centre) * exp(1j * turn * i / steps) for i in range(1, steps)]
            points += [(z.real, z.imag) for z in spokes]
    return points


def area(outline: Outline) -> float:
    """Shoelace of the corners, and the exact segment between each arc and its chord."""
    total = 0.0
    for piece in outline:
        (ax, ay), (bx, by) = piece.start, piece.end
        total += (ax * by - bx * ay) / 2
        if isinstance(piece, Arc):
            # Every arc here is a quarter turn: its segment is r²(π/2 − 1)/2.
            (cx, cy) = piece.centre
            turns_left = (ax - cx) * (by - cy) - (ay - cy) * (bx - cx) > 0
            total += (1 if turns_left else -1) * piece.radius_mm**2 * (pi / 2 - 1) / 2
    return total


def by_hand_mm2(pad: Pad) -> float:
    """Area of the section from its rectangles, less corners and slot."""
    edge, r, rs = pad.edge_chamfer_mm, pad.seat_corner_radius_mm, pad.slot_corner_radius_mm
    body = pad.body_diameter_mm * (pad.top_height_mm - pad.seat_length_mm) - 2 * edge**2
    seat = pad.seat_diameter_mm * pad.seat_length_mm - 2 * (1 - pi / 4) * r**2
    slot = pad.slot_width_mm * pad.slot_depth_mm + pad.slot_mouth_chamfer_mm**2 - 2 * (1 - pi / 4) * rs**2
    return body + seat + pad.stem_diameter_mm * pad.stem_length_mm - slot


def named(pad: Pad, key: str) -> Gauge:
    return next(gauge for gauge in pad_gauges(pad, "mm") if gauge.key == key)


@given(pads())
@settings(max_examples=200, deadline=None)
def test_every_gauge_of_a_pad_is_one_closed_outline_that_encloses_something(pad: Pad) -> None:
    for gauge in pad_gauges(pad, "mm"):
        for outline in (gauge.outline, gauge.half):
            assert is_closed(outline)
            assert area(outline) > 0


@given(CUPS)
@settings(max_examples=100, deadline=None)
def test_a_cup_gauge_is_as_wide_and_as_deep_as_the_cup(cup: tuple[float, float, float]) -> None:
    bore, depth, share = cup
    radius = share * min(bore / 2, depth - 1)
    gauge = cup_gauge(bore_mm=bore, depth_mm=depth, corner_radius_mm=radius, units="mm")
    assert is_closed(gauge.outline)
    at_rim = sorted(x for piece in gauge.outline for x, y in (piece.start,) if abs(y - depth) < 1e-9)
    assert (at_rim[1], at_rim[-2]) == pytest.approx((-bore / 2, bore / 2), abs=1e-9)
    assert bounds(gauge.outline).bottom == 0


@given(pads())
@settings(max_examples=200, deadline=None)
def test_the_pad_gauge_has_the_area_of_the_section(pad: Pad) -> None:
    """Oracle: rectangles less corners and slot, added up by hand."""
    assert area(named(pad, "pad").outline) == pytest.approx(by_hand_mm2(pad), rel=1e-9)


@given(pads())
@settings(max_examples=200, deadline=None)
def test_half_a_gauge_is_half_of_it(pad: Pad) -> None:
    for key in ("pad", "slot"):
        gauge = named(pad, key)
        assert area(gauge.half) == pytest.approx(area(gauge.outline) / 2, rel=1e-9)


@given(pads())
@settings(max_examples=200, deadline=None)
def test_the_corner_gauge_touches_the_part_and_never_enters_it(pad: Pad) -> None:
    """Oracle: the body of revolution itself, radius by height."""
    for x, y in corners(named(pad, "corner").outline):
        inside_seat = 0 < y < pad.seat_length_mm and x < pad.seat_diameter_mm / 2
        inside_body = pad.seat_length_mm < y and x < pad.body_diameter_mm / 2
        if inside_seat:
            # Beside the rounded corner: no nearer to its centre than its radius.
            centre = (pad.seat_diameter_mm / 2 - pad.seat_corner_radius_mm, pad.seat_corner_radius_mm)
            assert dist((x, y), centre) >= pad.seat_corner_radius_mm - 1e-9
        if inside_body:
            # Beside the edge's chamfer.
            out = pad.body_diameter_mm / 2 - x
            assert out + (y - pad.seat_length_mm) <= pad.edge_chamfer_mm + 1e-9


def test_the_slot_gauge_is_as_wide_and_as_deep_as_the_slot() -> None:
    outline = named(TYPICAL, "slot").outline
    levels = [piece.start for piece in outline if abs(abs(piece.start[0]) - TYPICAL.slot_width_mm / 2) < 1e-9]
    assert max(x for x, _ in levels) - min(x for x, _ in levels) == pytest.approx(TYPICAL.slot_width_mm)
    shoulders = {y for piece in outline for x, y in (piece.start,) if x > TYPICAL.slot_width_mm / 2 + 1e-9}
    assert min(shoulders) == TYPICAL.slot_depth_mm


def slot_width_mm(gauge: Gauge, depth_mm: float) -> float:
    """Widest part of a slot gauge below its shoulders."""
    xs = [x for piece in gauge.outline for x, y in (piece.start, piece.end) if y < depth_mm - 2]
    return max(xs) - min(xs)


@pytest.mark.parametrize("name", ["mobile_library_van", "choir_minibus_printed", "orchard_pickup_crossed_slots"])
def test_one_slot_gauge_enters_the_narrowest_slot_and_the_other_not_the_widest(name: str) -> None:
    """Oracle: the size and the tolerance of the ledger."""
    design, sheet = design_of(name)
    by_key = {gauge.key: gauge for gauge in gauges_of(design, sheet.units)}
    size, tolerance = design.pad.slot_width_mm, design.ledger["slot_width_mm"].tolerance_mm
    depth = design.pad.slot_depth_mm
    assert tolerance > 0
    assert slot_width_mm(by_key["slot"], depth) == pytest.approx(size - tolerance)
    assert slot_width_mm(by_key["slot_high"], depth) == pytest.approx(size + tolerance)


@pytest.mark.parametrize("name", ["scout_hall_minivan_boss", "kayak_club_estate_drain", "orchard_pickup_crossed_slots"])
def test_the_gauges_of_a_pad_with_more_than_a_slot_are_closed(name: str) -> None:
    design, sheet = design_of(name)
    for gauge in gauges_of(design, sheet.units):
        for outline in (gauge.outline, gauge.half):
            assert is_closed(outline)
            assert area(outline) > 0


def test_a_cup_corner_that_was_not_measured_is_called_assumed() -> None:
    document = sample("mobile_library_van")
    said = {}
    for radius in (None, 3.0):
        document["jack"]["cup_corner_radius_mm"] = radius
        said[radius] = gauges_of(design_pad(understood(document)), "mm")[0].use
    assert "assumed: measure it" in said[None]
    assert "assumed" not in said[3.0]


def test_nobody_is_told_to_cut_by_a_gauge_of_a_pad_that_is_not_fit() -> None:
    design, sheet = design_of("repair_cafe_people_carrier")
    assert "while cutting" not in " ".join(gauge.use for gauge in gauges_of(design, sheet.units)[2:])


def test_a_print_is_never_called_a_turned_part() -> None:
    design, sheet = design_of("choir_minibus_printed")
    assert "turned" not in " ".join(gauge.title + gauge.use for gauge in gauges_of(design, sheet.units))


@pytest.mark.parametrize(("width", "height"), [(19.0, 4.5), (30.0, 1.0), (8.0, 15.0)])
def test_a_cup_gauge_stands_free_of_a_boss_on_the_floor(width: float, height: float) -> None:
    """Oracle: a rectangle of the boss's size on the middle of the floor; the gauge loses it and 1 mm around it."""
    plain = cup_gauge(bore_mm=72, depth_mm=11, corner_radius_mm=2.5, units="mm")
    notched = cup_gauge(bore_mm=72, depth_mm=11, corner_radius_mm=2.5, units="mm", boss_mm=(width, height))
    assert is_closed(notched.outline)
    assert not [(x, y) for x, y in corners(notched.outline) if abs(x) < width / 2 + 0.99 and y < height + 0.99]
    handle = bounds(notched.outline).top - bounds(plain.outline).top
    wanted = (width + 2) * (height + 1) - handle * (72 + 2 * 8)
    assert area(plain.outline) - area(notched.outline) == pytest.approx(wanted, rel=1e-9)


def test_the_cup_gauge_of_a_jack_with_a_bolt_head_has_its_notch() -> None:
    """Oracle: the document's boss of 19 mm by 4.5 mm, and 1 mm around it."""
    gauge = gauges_of(design_of("scout_hall_minivan_boss")[0], "mm")[0]
    ends = {piece.start for piece in gauge.outline}
    assert {(10.5, 5.5), (-10.5, 5.5), (10.5, 0.0), (-10.5, 0.0)} <= ends
    assert "boss of 19 × 4.5 mm" in gauge.use


def test_the_pad_gauge_of_crossed_slots_shows_the_first_slot() -> None:
    """Oracle: the same section with rectangles, and floor and wall tops at the pad's own levels."""
    design, _ = design_of("orchard_pickup_crossed_slots")
    pad = design.pad
    gauge = next(g for g in gauges_of(design, "mm") if g.key == "pad")
    walls = {x for p in gauge.outline for x, y in (p.start,) if pad.web_mm + 0.01 < y < pad.body_top_mm - 3}
    assert {pad.slot_width_mm / 2, -pad.slot_width_mm / 2} <= {round(x, 9) for x in walls}
    assert bounds(gauge.outline).top == pytest.approx(pad.body_top_mm)
    assert "second slot" in gauge.use


def test_the_pad_gauge_says_what_its_section_goes_through() -> None:
    """Oracle: the pad's own sizes, given here."""
    flats = named(TYPICAL.with_(flats_width_mm=80.0), "pad")
    relief = TYPICAL.with_(relief_width_mm=20.0, relief_length_mm=30.0, relief_depth_mm=6.0)
    assert flats.use.endswith("Shown across the two flats: 80 mm.")
    assert bounds(flats.outline).width == pytest.approx(80.0)
    assert named(relief, "pad").use.endswith("Cut where the relief is: 20 × 30 mm, 6 mm deep.")
    assert named(relief, "slot").use.endswith("Over the relief, 30 mm long, it stands free.")


@pytest.mark.parametrize(
    ("width", "words"),
    [(None, "Try it in both slots."), (12.5, "Not for the second slot, which has gauges of its own.")],
)
def test_the_slot_gauge_says_what_to_do_with_a_second_slot(width: float | None, words: str) -> None:
    crossed = TYPICAL.with_(cross_slot_width_mm=width or TYPICAL.slot_width_mm)
    assert words in named(crossed, "slot").use
    assert words not in named(TYPICAL, "slot").use


@given(pads_of_any_kind(), st.booleans())
@settings(max_examples=200, deadline=None)
def test_the_gauges_of_any_pad_are_closed_and_enclose_something(pad: Pad, is_by_hand: bool) -> None:
    for gauge in pad_gauges(pad, "mm", slot_tolerance_mm=0.1, is_by_hand=is_by_hand):
        for outline in (gauge.outline, gauge.half):
            assert is_closed(outline)
            assert area(outline) > 0


@given(pads_of_any_kind())
@settings(max_examples=200, deadline=None)
def test_the_pad_gauge_of_any_pad_is_as_high_as_the_pad_and_as_wide_across(pad: Pad) -> None:
    """Oracle: the pad's own sizes."""
    box = bounds(named(pad, "pad").outline)
    assert box.height == pytest.approx(pad.overall_height_mm)
    assert box.width == pytest.approx(pad.flats_width_mm or pad.body_diameter_mm)


@examples(60, many=2000)
@given(pads_of_any_kind())
def test_a_gap_gauge_is_as_wide_as_a_limit_of_the_drawing(pad: Pad) -> None:
    """Oracle: the limits of the drawing's own dimensions; the legs reach to shoulder or past the widest place."""
    drawn = measures(pad, facts())
    gaps = [g for g in pad_gauges(pad, "mm", is_by_hand=True) if g.key.startswith("gap_")]
    for gauge in gaps:
        name = f"{gauge.key.removeprefix('gap_').removesuffix('_low')}_mm"
        limit = drawn[name].lower_mm if gauge.key.endswith("_low") else drawn[name].upper_mm
        inner = [abs(x) for piece in gauge.outline for x, y in (piece.start,) if y == 0]
        assert 2 * min(inner) == pytest.approx(limit)
        roof = min(y for piece in gauge.outline for x, y in (piece.start,) if y > 0)
        assert roof > drawn[name].nominal_mm / 2 or name.startswith("plug") or pad.has_skirt


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_every_gauge_that_the_card_of_hand_work_asks_for_is_on_the_gauge_sheet(kind: str) -> None:
    """Oracle: the two sizes of each row of the card's tables, and the titles of the gauges."""
    pad, (_, conditions, shop) = EVERY_KIND[kind], job()
    operations = [*round_by_hand(pad, conditions, shop)]
    operations += [*slot_by_hand(pad, conditions, shop)] if pad.has_slot else []
    asked = [row for o in operations for table in o.tables if table.title == "Gauges" for row in table.rows]
    tolerance = linear_tolerance_mm(pad.slot_width_mm) if pad.has_slot else 0.0
    there = pad_gauges(pad, "mm", slot_tolerance_mm=tolerance, is_by_hand=True)
    for title, goes, stops in (map(str, row) for row in asked):
        told = " ".join(gauge.use for gauge in there if gauge.title.partition(":")[0] == title)
        for size in (float(goes), float(stops)):
            assert f"limit, {size:.3f}".rstrip("0").rstrip(".") in told
    assert bool(asked) == (pad.has_slot or not pad.has_skirt)
