"""Leaning and pitching of the pad and what stands on it, by the statics of rigid bodies."""

import pytest

from geometry.stability import free_lean_deg, pitched_edge_pressure_mpa


@pytest.mark.parametrize(("rim_mm", "pressed_mm"), [(12, 72), (15, 63), (20, 48)])
def test_a_car_that_pitches_further_presses_a_triangle_over_the_seats_rim(rim_mm: float, pressed_mm: float) -> None:
    """Oracle: a triangle's resultant lies a third of its length from its high end, 36 mm off the middle of a slot of 72 mm."""
    total = 30 * 72
    assert pressed_mm / 3 + rim_mm == 36
    peak = pitched_edge_pressure_mpa(pressure_mpa=30, loaded_length_mm=72, seat_flat_radius_mm=rim_mm)
    assert peak * pressed_mm / 2 == pytest.approx(total, rel=1e-12)


def test_a_wider_seat_never_sees_a_higher_pressure_fall_to_a_lower_one() -> None:
    """Oracle: the further out the rim, the shorter the triangle, down to two thirds of the length: three times the even one."""
    radii = [0.5 * i for i in range(81)]
    peaks = [pitched_edge_pressure_mpa(pressure_mpa=30, loaded_length_mm=72, seat_flat_radius_mm=r) for r in radii]
    assert peaks == sorted(peaks)
    assert peaks[radii.index(20)] == peaks[-1] == 90


def test_a_pad_leans_by_its_play_over_what_guides_it_and_freely_where_nothing_does() -> None:
    """Oracle: a play as long as the guided depth is 45°; no play, none."""
    assert free_lean_deg(side_play_mm=12, guided_depth_mm=12) == pytest.approx(45)
    assert free_lean_deg(side_play_mm=-0.1, guided_depth_mm=12) == 0
    assert free_lean_deg(side_play_mm=0.1, guided_depth_mm=0) == 90
