"""A rigid car on four wheel springs, raised at one point: the force against the rise, and which wheels leave.

Axes: x runs back from the front axle, y from the centre line towards the jacked side, z up. *Near* is the
jacked side. Angles are small (a height difference divided by its distance), so force, loads and angles are
exactly linear in the rise as long as the same wheels touch.

Each wheel load is N = max(0, N₀ − k z) with k = (N₀/g)(2πf)²: all wheels have the same static deflection δ =
g/(2πf)². The force never falls as the rise grows, and it ends at the bound of moments
(:func:`geometry.lift.moment_bound_n`), which no choice of springs changes.
"""

import math
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from geometry.contact import Segment, Springs, segments
from geometry.errors import BadMeasurementsError, Problem
from geometry.lift import weight_n
from geometry.units import STANDARD_GRAVITY

WHEELS = ("front near", "front far", "rear near", "rear far")
"""The order of all wheel loads; near is the jacked side."""
LEAST_END_MM = 450.0
"""A curve is followed at least up to this rise of the jacked point."""
STEP_MM = 25.0
"""Distance of the regular points; the curve is straight between its events, so they serve a table, not exactness."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Vehicle:
    """What the statics of a car lifted at one point need."""

    mass_kg: float
    front_share: float
    """Share of the mass on the front axle, 0 to 1."""
    wheelbase_mm: float
    track_mm: float
    point_behind_front_axle_mm: float
    point_from_centreline_mm: float
    cg_offset_mm: float
    """Centre of gravity off the centre line, towards the jacked side."""
    ride_frequency_hz: float


@dataclass(frozen=True, slots=True)
class LiftPoint:
    """The state of the car at one rise of the lifting point."""

    rise_mm: float
    force_n: float
    wheel_loads_n: tuple[float, ...]
    """In the order of ``WHEELS``."""
    roll_deg: float
    """Positive where the jacked side rises."""
    pitch_deg: float
    """Positive where the nose rises."""


@dataclass(frozen=True, slots=True)
class WheelLeaves:
    """One wheel that loses the ground."""

    wheel: str
    """One of ``WHEELS``."""
    rise_mm: float


@dataclass(frozen=True, slots=True)
class LiftCurve:
    """The force at the lifting point against its rise, straight between its points."""

    points: tuple[LiftPoint, ...]
    """Rising in ``rise_mm`` from 0; at each change of contact and at regular steps."""
    wheels_leave: tuple[WheelLeaves, ...]
    """In the order of the rise: two wheels, as many as a car on a jack can spare."""

    @property
    def greatest_force_n(self) -> float:
        """The greatest force of the whole curve, whatever lift is wanted: it does not hang on the guessed springs."""
        return max(p.force_n for p in self.points)

    @property
    def plateau_rise_mm(self) -> float:
        """The least rise from which on the force no longer grows."""
        top = self.greatest_force_n
        return next(p.rise_mm for p in self.points if p.force_n >= top * (1 - 1e-9))

    def at(self, rise_mm: float) -> LiftPoint:
        """The state at a rise between 0 and the end of the curve; outside of it raises BadMeasurementsError."""
        end_mm = self.points[-1].rise_mm
        if not 0 <= rise_mm <= end_mm:
            words = f"A rise of {rise_mm:g} mm is outside the curve, which runs from 0 to {end_mm:g} mm."
            raise BadMeasurementsError((Problem("car.lift_needed_mm", rise_mm, words),))
        after = bisect_left(self.points, rise_mm, key=lambda p: p.rise_mm)
        if self.points[after].rise_mm == rise_mm:
            return self.points[after]
        return _between(self.points[after - 1], self.points[after], rise_mm)


def _between(low: LiftPoint, high: LiftPoint, rise_mm: float) -> LiftPoint:
    """The straight line between two points."""
    share = (rise_mm - low.rise_mm) / (high.rise_mm - low.rise_mm)

    def mix(a: float, b: float) -> float:
        return a + share * (b - a)

    return LiftPoint(
        rise_mm,
        mix(low.force_n, high.force_n),
        tuple(map(mix, low.wheel_loads_n, high.wheel_loads_n)),
        mix(low.roll_deg, high.roll_deg),
        mix(low.pitch_deg, high.pitch_deg),
    )


def lift_curve(vehicle: Vehicle, *, lift_needed_mm: float) -> LiftCurve:
    r"""Force, wheel loads, roll and pitch of a car against the rise of its lifting point.

    .. math:: \sum N_i + F = W, \quad \sum N_i\,\mathbf{d}_i = W\,\mathbf{d}_{cg}

    .. math:: N_i = \max(0,\ N_{0i} - k_i z_i), \quad z_i = h + \mathbf{d}_i\cdot\boldsymbol{\theta}

    Parameters
    ----------
    vehicle : Vehicle
        Mass, geometry and ride frequency of the car, [-]
    lift_needed_mm : float
        Rise up to which the curve is wanted, [mm]

    Returns
    -------
    curve : LiftCurve
        From 0 to at least ``lift_needed_mm`` and 450 mm, and on until the force no longer rises, [-]

    Notes
    -----
    d is the distance of a wheel or of the centre of gravity from the lifting point in plan, θ the two slopes of
    the body. Static wheel loads: front share, and 1/2 ± e/track left and right. Suspension and tyre are one
    spring; no friction, no anti-roll bars, no stop of the springs' travel: the rise at which a wheel leaves is
    a rough guess, the greatest force is not. A lifting point inboard of the centre of gravity, or a centre of
    gravity outside the wheels, raises BadMeasurementsError. If three wheels let go at once, the body turns
    about the line through the last wheel that carries and one that just touches without load.

    Examples
    --------
    >>> car = Vehicle(mass_kg=1300, front_share=0.6, wheelbase_mm=2600, track_mm=1500, point_behind_front_axle_mm=550,
    ...               point_from_centreline_mm=700, cg_offset_mm=0, ride_frequency_hz=1.3)
    >>> curve = lift_curve(car, lift_needed_mm=150)
    >>> round(curve.at(58.3).force_n), curve.wheels_leave[0].wheel, round(curve.wheels_leave[0].rise_mm)
    (2504, 'front near', 132)
    >>> round(curve.greatest_force_n / (1300 * 9.80665), 4), round(curve.plateau_rise_mm)
    (0.5172, 234)

    References
    ----------
    Derived; confirmed against an energy minimum and a linear programme (tests/validation/test_statics_scipy.py).
    """
    _require_possible(vehicle, lift_needed_mm)
    stretches = tuple(segments(_springs(vehicle)))
    end_mm = max(lift_needed_mm, LEAST_END_MM, stretches[-1].start_mm)
    return LiftCurve(tuple(_points(stretches, end_mm)), tuple(_leaving(stretches)))


def _require_possible(vehicle: Vehicle, lift_needed_mm: float) -> None:
    """Refuse a car that cannot stand, or a point that cannot raise it."""
    problems = tuple(
        Problem(f"car.{name}", value, words)
        for name, value, broken, words in _obstacles(vehicle, lift_needed_mm)
        if broken
    )
    if problems:
        raise BadMeasurementsError(problems)


def _obstacles(car: Vehicle, lift_needed_mm: float) -> Iterator[tuple[str, float, bool, str]]:
    """Each way in which the numbers cannot be: (field, value, is it so, words)."""
    e, s, x, share = car.cg_offset_mm, car.point_from_centreline_mm, car.point_behind_front_axle_mm, car.front_share
    for name, value, what in (
        ("gross_mass_kg", car.mass_kg, "kg is not a mass"),
        ("wheelbase_mm", car.wheelbase_mm, "mm is not a wheelbase"),
        ("track_mm", car.track_mm, "mm is not a track"),
        ("point_from_centreline_mm", s, "mm is not a distance from the centre line"),
        ("ride_frequency_hz", car.ride_frequency_hz, "Hz is not a ride frequency"),
    ):
        yield name, value, not 0 < value < math.inf, f"{value:g} {what}; measure again."
    words = f"{x:g} mm is not a distance from the front axle; measure again."
    yield "point_behind_front_axle_mm", x, not math.isfinite(x), words
    words = f"{lift_needed_mm:g} mm is not a rise; change it."
    yield "lift_needed_mm", lift_needed_mm, not 0 <= lift_needed_mm < math.inf, words
    words = f"A front share of {share:g} leaves an axle without load; weigh both axles."
    yield "front_share", share, not 0 < share < 1, words
    words = f"A centre of gravity {e:g} mm off the middle is not between wheels {car.track_mm:g} mm apart; check both."
    yield "cg_offset_mm", e, not abs(e) < car.track_mm / 2, words
    words = f"A point {s:g} mm from the middle is not outboard of the centre of gravity at {e:g} mm; measure both."
    yield "point_from_centreline_mm", s, s > 0 and not s > e, words


def _springs(car: Vehicle) -> Springs:
    """The wheels as seen from the lifting point, in the order of ``WHEELS``."""
    x, y, half = car.point_behind_front_axle_mm, car.point_from_centreline_mm, car.track_mm / 2
    near = 0.5 + car.cg_offset_mm / car.track_mm
    shares = [axle * side for axle in (car.front_share, 1 - car.front_share) for side in (near, 1 - near)]
    loads = tuple(weight_n(car.mass_kg) * share for share in shares)
    static_deflection_mm = 1000 * STANDARD_GRAVITY / (2 * math.pi * car.ride_frequency_hz) ** 2
    return Springs(
        places_mm=tuple((axle - x, side - y) for axle in (0.0, car.wheelbase_mm) for side in (half, -half)),
        static_loads_n=loads,
        stiffness_n_per_mm=tuple(load / static_deflection_mm for load in loads),
    )


def _points(stretches: tuple[Segment, ...], end_mm: float) -> Iterator[LiftPoint]:
    """The states at each change of contact, at regular steps and at the end."""
    ends = [s.start_mm for s in stretches[1:]] + [end_mm]
    for stretch, stop_mm in zip(stretches, ends, strict=True):
        if stop_mm > stretch.start_mm:
            first, last = math.floor(stretch.start_mm / STEP_MM) + 1, math.ceil(stop_mm / STEP_MM)
            for rise_mm in (stretch.start_mm, *(n * STEP_MM for n in range(first, last))):
                yield _state(stretch, rise_mm)
    yield _state(stretches[-1], end_mm)


def _state(stretch: Segment, rise_mm: float) -> LiftPoint:
    """The state at a rise inside a stretch."""
    loads = tuple(stretch.load_n(i, rise_mm) for i in range(len(WHEELS)))
    along, across = stretch.slopes_at(rise_mm)
    force = sum(stretch.springs.static_loads_n) - sum(loads)
    return LiftPoint(rise_mm, force, loads, roll_deg=math.degrees(across), pitch_deg=math.degrees(0.0 - along))


def _leaving(stretches: tuple[Segment, ...]) -> Iterator[WheelLeaves]:
    """The wheels that let go, in order."""
    for before, after in pairwise(stretches):
        for i in sorted(before.pushing - after.pushing):
            yield WheelLeaves(WHEELS[i], after.start_mm)
