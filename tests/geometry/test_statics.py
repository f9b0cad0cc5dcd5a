"""The rigid car on four springs: equilibrium, order and limits, over the whole input domain."""

import math
from dataclasses import replace
from itertools import pairwise
from time import perf_counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.contact import segments
from geometry.errors import BadMeasurementsError
from geometry.lift import moment_bound_n, weight_n
from geometry.statics import LiftPoint, Vehicle, _springs, lift_curve

ANCHOR = Vehicle(
    mass_kg=1300,
    front_share=0.6,
    wheelbase_mm=2600,
    track_mm=1500,
    point_behind_front_axle_mm=550,
    point_from_centreline_mm=700,
    cg_offset_mm=0,
    ride_frequency_hz=1.3,
)


@st.composite
def vehicles(draw: st.DrawFn) -> Vehicle:
    """Any car, with the point also a little before and behind the axles, and often exactly where ties arise."""
    wheelbase, track = draw(st.floats(1500, 5000)), draw(st.floats(1000, 2200))
    front = draw(st.one_of(st.floats(0.2, 0.8), st.sampled_from([0.5, 0.6])))
    ties = st.sampled_from([0.0, wheelbase, wheelbase / 2, (1 - front) * wheelbase])
    return Vehicle(
        mass_kg=draw(st.floats(400, 7500)),
        front_share=front,
        wheelbase_mm=wheelbase,
        track_mm=track,
        point_behind_front_axle_mm=draw(st.one_of(st.floats(-500, wheelbase + 500), ties)),
        point_from_centreline_mm=draw(st.one_of(st.floats(200, 1200), st.just(track / 2))),
        cg_offset_mm=draw(st.one_of(st.floats(-150, 150), st.just(0.0))),
        ride_frequency_hz=draw(st.floats(0.8, 3)),
    )


def bound_n(car: Vehicle) -> float:
    """The closed bound of moments for a car."""
    return moment_bound_n(
        mass_kg=car.mass_kg,
        wheelbase_mm=car.wheelbase_mm,
        track_mm=car.track_mm,
        cg_behind_front_axle_mm=(1 - car.front_share) * car.wheelbase_mm,
        cg_offset_mm=car.cg_offset_mm,
        point_behind_front_axle_mm=car.point_behind_front_axle_mm,
        point_from_centreline_mm=car.point_from_centreline_mm,
    )


def residuals(car: Vehicle, point: LiftPoint) -> tuple[float, float, float]:
    """What is missing to the equilibrium of force, of pitch moment and of roll moment, as shares."""
    weight, half, n = weight_n(car.mass_kg), car.track_mm / 2, point.wheel_loads_n
    force = sum(n) + point.force_n - weight
    pitch = (n[2] + n[3]) * car.wheelbase_mm + point.force_n * car.point_behind_front_axle_mm
    pitch -= weight * (1 - car.front_share) * car.wheelbase_mm
    roll = (n[0] + n[2] - n[1] - n[3]) * half + point.force_n * car.point_from_centreline_mm - weight * car.cg_offset_mm
    return force / weight, pitch / (weight * car.wheelbase_mm), roll / (weight * half)


def test_the_anchor_car_carries_2504_newtons_at_58_mm() -> None:
    """Oracle: an energy minimum computed apart from this program."""
    assert lift_curve(ANCHOR, lift_needed_mm=150).at(58.3).force_n == pytest.approx(2504, abs=0.5)


def test_the_anchor_car_loses_its_front_wheel_at_132_mm() -> None:
    """Oracle: an energy minimum computed apart from this program."""
    first, second = lift_curve(ANCHOR, lift_needed_mm=150).wheels_leave
    assert (first.wheel, second.wheel) == ("front near", "rear near")
    assert first.rise_mm == pytest.approx(132, abs=0.5)


def test_the_anchor_car_ends_at_0_5172_of_its_weight_from_234_mm() -> None:
    """Oracle: an energy minimum computed apart from this program; 750/1450 by moments."""
    curve = lift_curve(ANCHOR, lift_needed_mm=150)
    assert curve.greatest_force_n / weight_n(1300) == pytest.approx(0.5172, abs=5e-5)
    assert curve.plateau_rise_mm == pytest.approx(234, abs=0.5)


@given(car=vehicles())
def test_every_point_is_in_equilibrium(car: Vehicle) -> None:
    """Oracle: the sum of forces and both moments, written down again here."""
    for point in lift_curve(car, lift_needed_mm=150).points:
        assert residuals(car, point) == pytest.approx((0, 0, 0), abs=1e-11)


@given(car=vehicles())
def test_the_force_ends_at_the_bound_of_moments_and_never_passes_it(car: Vehicle) -> None:
    """Oracle: the closed bound, which knows no springs."""
    curve = lift_curve(car, lift_needed_mm=150)
    assert curve.greatest_force_n == pytest.approx(bound_n(car), rel=1e-11)


@given(car=vehicles())
def test_the_force_never_falls_as_the_car_rises(car: Vehicle) -> None:
    """Oracle: the energy at a prescribed rise is convex in that rise, and the force is its slope."""
    points = lift_curve(car, lift_needed_mm=150).points
    tiny = 1e-12 * weight_n(car.mass_kg)
    assert all(b.force_n >= a.force_n - tiny and b.rise_mm > a.rise_mm for a, b in pairwise(points))


@given(car=vehicles())
def test_wheels_only_push_and_two_of_them_leave(car: Vehicle) -> None:
    """Oracle: the bound is reached with two wheels off the ground; a wheel never pulls."""
    curve = lift_curve(car, lift_needed_mm=150)
    assert all(load >= 0 for point in curve.points for load in point.wheel_loads_n)
    assert len({leaving.wheel for leaving in curve.wheels_leave}) == len(curve.wheels_leave) == 2


@given(car=vehicles())
def test_at_rest_the_jack_carries_nothing_and_the_axles_their_shares(car: Vehicle) -> None:
    """Oracle: front share and 1/2 ± e/track."""
    rest = lift_curve(car, lift_needed_mm=150).at(0)
    near = 0.5 + car.cg_offset_mm / car.track_mm
    weight, front = weight_n(car.mass_kg), car.front_share
    expected = (front * near, front * (1 - near), (1 - front) * near, (1 - front) * (1 - near))
    assert rest.wheel_loads_n == pytest.approx([weight * share for share in expected], rel=1e-12)
    assert (rest.force_n, rest.roll_deg, rest.pitch_deg) == pytest.approx((0, 0, 0), abs=1e-9)


@given(car=vehicles(), lift=st.floats(0, 800), share=st.floats(0, 1))
def test_any_rise_up_to_the_end_can_be_asked_for(car: Vehicle, lift: float, share: float) -> None:
    """Oracle: a straight line between two states in equilibrium is in equilibrium."""
    curve = lift_curve(car, lift_needed_mm=lift)
    assert curve.points[-1].rise_mm >= max(lift, 450)
    assert residuals(car, curve.at(share * curve.points[-1].rise_mm)) == pytest.approx((0, 0, 0), abs=1e-11)


@given(car=vehicles(), factor=st.floats(0.5, 2))
def test_the_greatest_force_does_not_hang_on_the_guessed_springs(car: Vehicle, factor: float) -> None:
    """Oracle: the last two wheels and the jack are three supports, whose loads moments alone decide."""
    other = replace(car, ride_frequency_hz=car.ride_frequency_hz * factor)
    forces = [lift_curve(c, lift_needed_mm=150).greatest_force_n for c in (car, other)]
    assert forces[0] == pytest.approx(forces[1], rel=1e-11)


@given(car=vehicles())
def test_the_body_is_flat_through_its_lifting_point(car: Vehicle) -> None:
    """Oracle: roll and pitch put the wheels that push where their springs say they are."""
    curve = lift_curve(car, lift_needed_mm=150)
    deflection = 1000 * 9.80665 / (2 * math.pi * car.ride_frequency_hz) ** 2
    rest, state = curve.points[0].wheel_loads_n, curve.at(40)
    roll, pitch = math.radians(state.roll_deg), math.radians(state.pitch_deg)
    for i, (x, y) in enumerate((x, y) for x in (0.0, car.wheelbase_mm) for y in (0.5, -0.5)):
        rise = 40 - pitch * (x - car.point_behind_front_axle_mm)
        rise += roll * (y * car.track_mm - car.point_from_centreline_mm)
        expected = max(0.0, rest[i] * (1 - rise / deflection))
        assert state.wheel_loads_n[i] == pytest.approx(expected, abs=1e-9 * sum(rest))


def test_a_front_point_raises_the_nose_and_the_jacked_side() -> None:
    """Oracle: the signs that the records state."""
    state = lift_curve(ANCHOR, lift_needed_mm=150).at(150)
    assert state.roll_deg > 0
    assert state.pitch_deg > 0


def test_raised_under_one_wheel_the_car_ends_on_the_two_beside_it() -> None:
    """Oracle: by symmetry half the weight at the jack, half at the wheel across: three wheels carry nothing."""
    car = replace(ANCHOR, front_share=0.5, point_behind_front_axle_mm=2600.0, point_from_centreline_mm=750.0)
    curve = lift_curve(car, lift_needed_mm=150)
    half = weight_n(1300) / 2
    assert curve.greatest_force_n == pytest.approx(half, rel=1e-12)
    assert curve.points[-1].wheel_loads_n == pytest.approx((0, half, 0, 0), abs=1e-8)


@pytest.mark.parametrize("off_mm", [1e-13, -1e-13, 1e-10, -1e-10, 1e-7, -1e-7, 1e-4, -1e-4])
def test_nearly_three_wheels_at_once_is_no_obstacle(off_mm: float) -> None:
    """Oracle: the closed bound on both sides of the tie, to rounding."""
    car = replace(
        ANCHOR,
        front_share=0.5,
        point_behind_front_axle_mm=2600.0,
        point_from_centreline_mm=750.0,
        cg_offset_mm=off_mm,
    )
    assert lift_curve(car, lift_needed_mm=150).greatest_force_n == pytest.approx(bound_n(car), rel=1e-11)


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("mass_kg", 0.0),
        ("front_share", 1.0),
        ("front_share", math.nan),
        ("wheelbase_mm", -2600.0),
        ("track_mm", math.inf),
        ("point_behind_front_axle_mm", math.nan),
        ("point_from_centreline_mm", 0.0),
        ("cg_offset_mm", 750.0),
        ("cg_offset_mm", -900.0),
        ("cg_offset_mm", 700.0),
        ("ride_frequency_hz", 0.0),
    ],
)
def test_a_car_that_cannot_stand_or_be_raised_is_refused_beside_its_field(field: str, value: float) -> None:
    """Oracle: the names of the fields of the measurement document."""
    with pytest.raises(BadMeasurementsError) as refused:
        lift_curve(replace(ANCHOR, **{field: value}), lift_needed_mm=150)
    names = {problem.field for problem in refused.value.problems}
    moved = {"mass_kg": "gross_mass_kg"}.get(field, field)
    assert f"car.{moved}" in names or (value == 700 and names == {"car.point_from_centreline_mm"})


@pytest.mark.parametrize("rise_mm", [-0.1, 450.1, math.nan])
def test_a_rise_outside_the_curve_is_refused(rise_mm: float) -> None:
    """Oracle: the curve of the anchor car runs from 0 to 450 mm."""
    with pytest.raises(BadMeasurementsError, match="outside the curve"):
        lift_curve(ANCHOR, lift_needed_mm=150).at(rise_mm)


def test_a_curve_takes_less_than_ten_milliseconds() -> None:
    """Oracle: the clock, best of five; about 0.15 ms on two slow cores."""
    times = []
    for _ in range(5):
        start = perf_counter()
        lift_curve(ANCHOR, lift_needed_mm=150)
        times.append(perf_counter() - start)
    assert min(times) < 0.010


def test_one_stretch_follows_another_until_two_wheels_are_left() -> None:
    """Oracle: four wheels, then three, then two."""
    assert [len(s.pushing) for s in segments(_springs(ANCHOR))] == [4, 3, 2]
