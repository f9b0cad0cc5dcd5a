"""How each dimension is chosen inside its interval: from which end, in which makeable steps, and with which tolerance."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import ceil, floor

from geometry.bound_rules import Side
from geometry.fits import linear_tolerance_mm, radius_tolerance_mm
from geometry.units import inch_to_mm

EPS_MM = 1e-9
"""What binary arithmetic may leave of a difference that is nothing."""
STEPS_MM = {False: (0.1, 0.5, 1.0), True: (inch_to_mm(0.005), inch_to_mm(0.025), inch_to_mm(1 / 32))}
"""Makeable steps, fine, middle and coarse: metric, and inch."""


@dataclass(frozen=True, slots=True)
class Habit:
    """How a dimension is chosen inside its interval."""

    end: Side
    step: int
    """Index of the makeable step: 0 fine, 1 middle, 2 coarse."""
    tolerance_mm: Callable[[float], float]


HABITS: Mapping[str, Habit] = {
    "seat_diameter_mm": Habit("upper", 0, linear_tolerance_mm),
    "seat_corner_radius_mm": Habit("lower", 1, radius_tolerance_mm),
    "seat_length_mm": Habit("lower", 1, linear_tolerance_mm),
    "skirt_bore_mm": Habit("lower", 0, linear_tolerance_mm),
    "skirt_length_mm": Habit("upper", 1, linear_tolerance_mm),
    "seat_recess_diameter_mm": Habit("lower", 1, linear_tolerance_mm),
    "seat_recess_depth_mm": Habit("lower", 1, linear_tolerance_mm),
    "stem_diameter_mm": Habit("upper", 1, linear_tolerance_mm),
    "stem_length_mm": Habit("upper", 1, linear_tolerance_mm),
    "cross_hole_diameter_mm": Habit("lower", 1, linear_tolerance_mm),
    "cross_hole_distance_mm": Habit("lower", 0, linear_tolerance_mm),
    "slot_width_mm": Habit("lower", 0, linear_tolerance_mm),
    "slot_offset_mm": Habit("lower", 0, linear_tolerance_mm),
    "cross_slot_width_mm": Habit("lower", 0, linear_tolerance_mm),
    "slot_depth_mm": Habit("upper", 1, linear_tolerance_mm),
    "relief_width_mm": Habit("lower", 1, linear_tolerance_mm),
    "relief_length_mm": Habit("lower", 1, linear_tolerance_mm),
    "relief_depth_mm": Habit("lower", 1, linear_tolerance_mm),
    "plug_length_mm": Habit("upper", 0, linear_tolerance_mm),
    "plug_width_mm": Habit("upper", 0, linear_tolerance_mm),
    "plug_height_mm": Habit("upper", 1, linear_tolerance_mm),
    "plug_corner_radius_mm": Habit("lower", 1, radius_tolerance_mm),
    "flats_width_mm": Habit("lower", 1, linear_tolerance_mm),
    "web_mm": Habit("lower", 1, linear_tolerance_mm),
    "body_diameter_mm": Habit("lower", 2, linear_tolerance_mm),
    "slot_corner_radius_mm": Habit("upper", 0, linear_tolerance_mm),
}
"""In the order in which they are chosen; the two chamfers are standard."""


def tolerance_mm(name: str, value_mm: float) -> float:
    """Plus and minus of a dimension as chosen; a chamfer, and what is not there, goes by the radii."""
    habit = HABITS.get(name)
    return habit.tolerance_mm(value_mm) if habit and value_mm else radius_tolerance_mm(value_mm)


def step_up(value_mm: float, step_mm: float) -> float:
    """The least makeable size that is no smaller.

    >>> step_up(67.21, 0.1), step_up(67.2, 0.1)
    (67.3, 67.2)
    """
    return clean(ceil(value_mm / step_mm - EPS_MM) * step_mm)


def step_down(value_mm: float, step_mm: float) -> float:
    """The largest makeable size that is no larger.

    >>> step_down(67.21, 0.1), step_down(67.2, 0.1)
    (67.2, 67.2)
    """
    return clean(floor(value_mm / step_mm + EPS_MM) * step_mm)


def clean(value_mm: float) -> float:
    """Take off what binary arithmetic leaves behind a decimal size."""
    return round(value_mm, 9)
