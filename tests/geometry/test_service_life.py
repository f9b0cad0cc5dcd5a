"""The pad in use: wear limits are where the first check fails, and no nearer."""

import pytest
from hypothesis import assume, given, settings

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.pad import Pad
from geometry.service_life import CALIPER_MM, WearLimit, service_record
from geometry.spread import Spread
from geometry.wear_kinds import DEEPEST_GROOVE_MM, WORN, Kind, how_read, ways, worn_pad
from tests.documents import sample
from tests.drawing.kinds_on_paper import EVERY, design_of
from tests.geometry.pads import EVERY_KIND
from tests.geometry.shops import job, jobs

_MAKING = {"stock", "cutter", "cutter_reach"}


def growth_by_water(conditions: Conditions) -> float:
    """How much of itself a pad grows by all the water of its case; by the figures of the table alone."""
    material, wetness = conditions.material, conditions.measurements.service.wetness
    water = {"dry": 0.0, "room": material.water_room_percent.value, "soaked": material.water_soaked_percent.value}
    return water[wetness] * material.swell_per_percent.value


def failing(pad: Pad, conditions: Conditions, name: str) -> set[str]:
    found = judge(conditions, pad, Spread({name: CALIPER_MM}))
    return {c.code for c in found if c.verdict == "fail"} - _MAKING


def assert_fails_just_beyond(limit: WearLimit, pad: Pad, conditions: Conditions) -> None:
    """A hair short of where a limit ends nothing fails, a hair beyond it its check does; some wear makes nothing fail."""
    if limit.check is None or limit.fails_mm is None:
        return
    way = abs(limit.fails_mm - limit.now_mm)
    inside, beyond = (worn_pad(pad, {limit.kind: max(0.0, way + by)}) for by in (-1e-3, 1e-3))
    assert way < 1e-3 or not failing(inside, conditions, limit.dimension)
    assert limit.check.code in failing(beyond, conditions, limit.dimension)


def test_the_seat_swells_until_the_fit_fails() -> None:
    """Oracle: solving bore − u − (seat + 0.05)(1 + g) = 0.1 for the seat as machined; read with 0.2 % of water in it, of which
    each per cent makes acetal 0.0025 larger."""
    pad, conditions, _ = job()
    limit = service_record(pad, conditions).limit("seat_swollen")
    assert limit.check is not None
    assert limit.check.code == "seat_fit_tight"
    by_hand = (68 - conditions.u - 0.1) / (1 + conditions.g_hot) - CALIPER_MM
    assert limit.fails_mm == pytest.approx(by_hand, abs=1e-4)
    assert limit.limit_mm == pytest.approx(by_hand * (1 + 0.2 * 0.0025), abs=1e-4)


def test_the_slot_closes_until_the_seam_no_longer_enters() -> None:
    """Oracle: solving (slot − 0.05)(1 + g) − t − u − bow = 0.3 for the slot as machined, in which 0.2 % of water hides 0.05 %."""
    pad, conditions, _ = job()
    limit = service_record(pad, conditions).limit("slot_closed")
    seam = conditions.seam
    by_hand = (0.3 + seam.thickness_mm + conditions.u + seam.bow_mm) / (1 + conditions.g_cold) + CALIPER_MM
    assert limit.fails_mm == pytest.approx(by_hand, abs=1e-4)
    assert limit.limit_mm == pytest.approx(by_hand * (1 + 0.2 * 0.0025), abs=1e-4)


@settings(max_examples=25, deadline=None)
@given(jobs())
def test_short_of_where_a_limit_ends_nothing_fails_and_beyond_it_something_does(
    work: tuple[Pad, Conditions, Shop],
) -> None:
    """Oracle: the checks themselves, a hair on either side."""
    pad, conditions, _ = work
    for limit in service_record(pad, conditions).limits:
        assert_fails_just_beyond(limit, pad, conditions)


@settings(max_examples=25, deadline=None)
@given(jobs())
def test_a_limit_never_lies_beyond_the_first_failing_estimate(work: tuple[Pad, Conditions, Shop]) -> None:
    """Oracle: the order of now, limit and failure along the way, in the size as machined that the water of the case leaves of a
    reading; a new part at the edge of its tolerance may be a caliper's 0.05 mm short of where its estimates pass by nothing."""
    pad, conditions, _ = work
    water = growth_by_water(conditions)
    for limit in service_record(pad, conditions).limits:
        sign = 1 if limit.direction == "up" else -1
        assert limit.away_mm == pytest.approx(sign * (limit.limit_mm - limit.now_mm))
        if limit.fails_mm is not None:
            tolerance = Spread().of(pad, limit.dimension)
            fails = max(sign * limit.fails_mm, sign * limit.now_mm + tolerance)
            assert sign * limit.limit_mm / (1 + (water if sign > 0 else 0)) <= fails + 1e-9
            assert fails - sign * limit.fails_mm <= CALIPER_MM + 1e-9 or limit.kind in WORN


@settings(max_examples=25, deadline=None)
@given(jobs())
def test_all_that_wears_in_use_may_reach_its_limit_at_once(work: tuple[Pad, Conditions, Shop]) -> None:
    """Oracle: the checks of a pad that is worn to every limit of use together, each size read with a caliper."""
    pad, conditions, _ = work
    limits = [limit for limit in service_record(pad, conditions).limits if limit.kind in WORN]
    worn = worn_pad(pad, {limit.kind: max(0.0, limit.allowed_mm - 1e-6) for limit in limits})
    known = Spread({limit.dimension: CALIPER_MM for limit in limits})
    found = {c.code for c in judge(conditions, worn, known) if c.verdict == "fail"} - _MAKING
    assert not limits or not found


@settings(max_examples=25, deadline=None)
@given(jobs())
def test_a_new_part_at_every_edge_of_its_tolerances_is_not_called_worn(work: tuple[Pad, Conditions, Shop]) -> None:
    """Oracle: the tolerances themselves, less a caliper's 0.05 mm, wherever the part with all of them at once fails nothing."""
    pad, conditions, _ = work
    limits = [limit for limit in service_record(pad, conditions).limits if limit.kind in WORN]
    edge = {x.kind: min(Spread().of(pad, x.dimension) - CALIPER_MM, DEEPEST_GROOVE_MM) for x in limits}
    found = judge(conditions, worn_pad(pad, edge), Spread({x.dimension: CALIPER_MM for x in limits}))
    assume(not {c.code for c in found if c.verdict == "fail"} - _MAKING)
    for limit in limits:
        assert limit.away_mm >= edge[limit.kind] - 1e-9


@pytest.mark.parametrize(
    ("part", "wear", "changes"),
    [
        ("offset slot", "groove", {"web_mm": -1, "slot_depth_mm": 1}),
        ("cushion", "groove", {"web_mm": -1}),
        ("recess", "seat_short", {"web_mm": -1, "seat_length_mm": -1, "seat_recess_depth_mm": -1}),
        (
            "stem with cross-hole",
            "seat_short",
            {"web_mm": -1, "seat_length_mm": -1, "stem_length_mm": 1, "cross_hole_distance_mm": 1},
        ),
        ("cushion", "seat_worn", {"seat_diameter_mm": -1}),
        ("cushion", "seat_swollen", {"seat_diameter_mm": 1}),
        ("skirt", "skirt_worn", {"skirt_bore_mm": 1}),
        ("skirt", "skirt_closed", {"skirt_bore_mm": -1}),
        ("stem with cross-hole", "stem_worn", {"stem_diameter_mm": -1}),
        ("stem with cross-hole", "stem_swollen", {"stem_diameter_mm": 1}),
        ("plug", "plug_worn", {"plug_width_mm": -1}),
        ("plug", "plug_swollen", {"plug_width_mm": 1}),
        ("round plug", "plug_worn", {"plug_width_mm": -1, "plug_length_mm": -1, "plug_corner_radius_mm": -0.5}),
        ("crossed slots", "slot_wide", {"slot_width_mm": 1}),
        ("crossed slots", "slot_closed", {"slot_width_mm": -1}),
    ],
)
def test_what_wears_or_swells_moves_these_sizes_and_no_others(part: str, wear: Kind, changes: dict[str, float]) -> None:
    """Oracle: the shape itself; what is worn off the seat face lets a stem and its hole stand out further."""
    pad = EVERY_KIND[part]
    worn = worn_pad(pad, {wear: 0.25})
    expected = {name: getattr(pad, name) + 0.25 * way for name, way in changes.items()}
    assert worn == pad.with_(**expected)


def test_a_seat_is_discarded_half_way_to_where_it_fails() -> None:
    """Oracle: solving bore + u − (seat − 0.05)(1 + g) = 0.10 bore for the seat, and the middle between it and new."""
    pad, conditions, _ = job()
    limit = service_record(pad, conditions).limit("seat_worn")
    assert limit.check is not None
    assert limit.check.code == "seat_fit_loose"
    fails = (0.9 * 68 + conditions.u) / (1 + conditions.g_cold) + CALIPER_MM
    assert limit.fails_mm == pytest.approx(fails, abs=1e-4)
    assert limit.limit_mm == pytest.approx((pad.seat_diameter_mm + fails) / 2, abs=1e-4)


def test_a_limit_says_on_which_side_of_it_the_pad_is_discarded() -> None:
    """Oracle: seat and web get smaller by wear and the slot wider; swelling goes the other way."""
    said = {limit.kind: limit.words.shown() for limit in service_record(*job()[:2]).limits}
    more = {kind for kind, words in said.items() if words.startswith("Discard when it reads more than ")}
    less = {kind for kind, words in said.items() if words.startswith("Discard when it reads less than ")}
    assert (more, less) == ({"seat_swollen", "slot_wide"}, {"groove", "seat_worn", "seat_short", "slot_closed"})


def test_a_new_pad_at_the_edge_of_its_tolerance_is_not_discarded() -> None:
    """Oracle: ISO 2768-1 m on seat diameter, ± 0.3, and seat length, ± 0.2, as on the drawing."""
    pad, conditions, _ = job()
    record = service_record(pad, conditions)
    assert record.limit("seat_worn").limit_mm <= pad.seat_diameter_mm - 0.3
    assert record.limit("seat_short").limit_mm <= pad.seat_length_mm - 0.2


def test_no_groove_deeper_than_a_millimetre_is_allowed() -> None:
    """Oracle: the derived limit, whatever the checks say; less where the steel is thinner."""
    pad, conditions, _ = job()
    groove = service_record(pad, conditions).limit("groove")
    assert 0 < groove.allowed_mm <= min(DEEPEST_GROOVE_MM, conditions.seam.edge_thickness_mm)


def test_a_pad_that_fails_already_is_not_to_be_used_at_all_and_has_no_limits() -> None:
    """Oracle: the polyethylene sample, into which the seam cuts."""
    pad, conditions, _ = job(sample("repair_cafe_people_carrier"))
    record = service_record(pad, conditions)
    assert record.discard_when[0].shown().startswith("Do not use it at all. These estimates fail already: ")
    assert record.limits == ()


def test_a_part_that_its_readings_condemn_has_no_limits() -> None:
    """Oracle: the ready pad, which by itself has six."""
    pad, conditions, _ = job()
    assert len(service_record(pad, conditions).limits) == 6
    assert service_record(pad, conditions, is_failed=True).limits == ()


def test_the_record_looks_at_walls_floor_seat_and_lip_before_use() -> None:
    """Oracle: the places where such a pad goes wrong."""
    pad, conditions, _ = job()
    record = service_record(pad, conditions)
    assert {"wall", "slot_floor", "seat", "seat_side", "lip"} <= {look.place for look in record.looks}
    assert any("white line" in s.shown() for s in record.discard_when)


def test_the_limits_of_a_part_start_from_its_own_size() -> None:
    """Oracle: a seat made 0.2 mm larger has 0.2 mm less to swell."""
    pad, conditions, _ = job()
    drawn = service_record(pad, conditions).limit("seat_swollen")
    larger = pad.with_(seat_diameter_mm=pad.seat_diameter_mm + 0.2)
    part = service_record(larger, conditions, Spread({"seat_diameter_mm": 0.05})).limit("seat_swollen")
    assert part.limit_mm == pytest.approx(drawn.limit_mm, abs=1e-4)
    assert part.allowed_mm == pytest.approx(drawn.allowed_mm - 0.2, abs=1e-4)


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_where_nothing_wears_nothing_changes(kind: str) -> None:
    assert worn_pad(EVERY_KIND[kind], {}) == EVERY_KIND[kind]


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_a_seat_face_that_wears_off_moves_nothing_but_itself(kind: str) -> None:
    """Oracle: everything else keeps its place above the lip's face: stem's end, recess floor, cross-hole, web, wall tops."""
    pad = EVERY_KIND[kind]
    worn = worn_pad(pad, {"seat_short": 0.4})

    def places(p: Pad) -> tuple[float, ...]:
        lip = p.seat_length_mm
        return (p.web_mm - lip, p.top_height_mm - lip, p.foot_bottom_mm - lip)

    assert places(worn) == pytest.approx(places(pad))
    assert worn.seat_length_mm == pytest.approx(pad.seat_length_mm - 0.4)
    for below in ("stem_length_mm", "cross_hole_distance_mm"):
        assert getattr(worn, below) == pytest.approx(getattr(pad, below) + (0.4 if getattr(pad, below) else 0.0))
    if pad.has_recess:
        assert worn.seat_recess_depth_mm == pytest.approx(pad.seat_recess_depth_mm - 0.4)


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_only_what_is_there_wears(kind: str) -> None:
    """Oracle: the pad's own slot."""
    pad, conditions, _ = job()
    pad = EVERY_KIND[kind]
    found = ways(pad, conditions)
    words = " ".join(f"{way.title} {how_read(way.kind, pad)}" for way in found).lower()
    assert ("slot" in words) == pad.has_slot
    assert all(getattr(pad, way.dimension) > 0 for way in found)


def test_a_seat_face_over_a_boss_may_wear_no_further_than_the_boss_leaves_room() -> None:
    """Oracle: the check of the boss itself, on the pad worn to its limit and read to a caliper's 0.05 mm."""
    pad, conditions, _ = job(sample("scout_hall_minivan_boss"))
    limit = service_record(pad, conditions).limit("seat_short")
    worn = worn_pad(pad, {"seat_short": limit.allowed_mm})
    spread = Spread({"seat_length_mm": CALIPER_MM})
    assert next(c for c in judge(conditions, worn, spread) if c.code == "boss_clear").verdict == "pass"


_PLACED = {
    "cup": "seat",
    "land": "seat",
    "teeth": "skirt",
    "edge": "skirt",
    "ring": "seat",
    "recess": "seat",
    "post": "stem",
}


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_what_keeps_pad_and_car_in_their_places_is_measured_in_service(foot: str, head: str) -> None:
    """Oracle: the kinds themselves, and the checks a hair on either side of where a limit ends."""
    design = design_of(foot, head)
    pad, conditions = design.pad, design.conditions
    limits = {limit.kind: limit for limit in service_record(pad, conditions).limits}
    placed = {kind.partition("_")[0] for kind in limits} & {"seat", "skirt", "stem"}
    assert placed == {"seat", _PLACED[foot]}
    assert ("plug_worn" in limits) == (head in {"plug", "oblong"})
    assert ("slot_wide" in limits) == (head == "slot")
    for limit in limits.values():
        assert_fails_just_beyond(limit, pad, conditions)
