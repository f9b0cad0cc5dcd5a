"""The force at the lifting point without the car's springs."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.lift import (
    DESIGN_FACTOR,
    SHARE_OF_GROSS_MASS,
    bound_from_gross_mass_n,
    design_force_n,
    moment_bound_n,
    weight_n,
)
from geometry.provenance import Mark

MASSES = st.floats(300, 12000)


def test_a_mass_weighs_standard_gravity_times_itself() -> None:
    """Oracle: the conventional value of g, 9.80665 m/s²."""
    assert weight_n(1300) == pytest.approx(12748.645, abs=1e-9)


def test_a_car_of_two_tonnes_is_taken_to_put_11768_newtons_on_one_point() -> None:
    """Oracle: 0.60 · 2000 · 9.80665 by hand."""
    assert bound_from_gross_mass_n(2000) == pytest.approx(11767.98, abs=0.005)


def test_the_design_force_is_a_fifth_above_the_estimated_force() -> None:
    """Oracle: 1.2 · 11767.98 by hand."""
    assert design_force_n(11767.98) == pytest.approx(14121.576, abs=1e-6)


def test_both_assumed_factors_say_that_they_are_derived() -> None:
    """Oracle: neither number was found in a publication."""
    assert {SHARE_OF_GROSS_MASS.source.mark, DESIGN_FACTOR.source.mark} == {Mark.DERIVED}


@given(
    track=st.floats(1000, 2200),
    seam_out=st.floats(0.85, 1.2),
    offset_share=st.floats(-0.055, 0.055),
    along=st.floats(0, 1),
    front_share=st.floats(0.2, 0.8),
)
def test_the_share_of_gross_mass_covers_every_car_that_it_claims_to(
    track: float, seam_out: float, offset_share: float, along: float, front_share: float
) -> None:
    """Oracle: (1/2 + 0.055)/(1/2 + 0.85/2) = 0.6, the closed bound at the corner of its range."""
    bound = moment_bound_n(
        mass_kg=1500,
        wheelbase_mm=2600,
        track_mm=track,
        cg_behind_front_axle_mm=(1 - front_share) * 2600,
        cg_offset_mm=offset_share * track,
        point_behind_front_axle_mm=along * 2600,
        point_from_centreline_mm=seam_out * track / 2,
    )
    assert bound <= bound_from_gross_mass_n(1500) * (1 + 1e-12)


def test_an_ordinary_car_reaches_fifty_six_hundredths_of_its_weight() -> None:
    """Oracle: (750 + 30)/(750 + 0.85 · 750) = 0.562, the reason for rounding up to 0.60."""
    bound = moment_bound_n(
        mass_kg=1500,
        wheelbase_mm=2600,
        track_mm=1500,
        cg_behind_front_axle_mm=1040,
        cg_offset_mm=30,
        point_behind_front_axle_mm=600,
        point_from_centreline_mm=0.85 * 750,
    )
    assert bound / weight_n(1500) == pytest.approx(0.562, abs=5e-4)


@pytest.mark.parametrize("point_mm", [-400.0, 0.0, 2600.0, 3000.0])
def test_a_point_on_or_beyond_an_axle_has_a_bound(point_mm: float) -> None:
    """Oracle: moments about the axle that the point overhangs say nothing; no division by zero, no negative force."""
    bound = moment_bound_n(
        mass_kg=1500,
        wheelbase_mm=2600,
        track_mm=1500,
        cg_behind_front_axle_mm=1040,
        cg_offset_mm=0,
        point_behind_front_axle_mm=point_mm,
        point_from_centreline_mm=700,
    )
    assert 0 < bound <= weight_n(1500) * 750 / 1450 + 1e-9


@given(mass=MASSES)
def test_half_the_gross_mass_is_less_than_what_is_assumed(mass: float) -> None:
    """Oracle: ASME PALD-2009 5-2.2(a), least rating 50 % of the vehicle's gross mass; ours must not fall below it."""
    assert bound_from_gross_mass_n(mass) > 0.5 * mass * 9.80665
    assert math.isfinite(bound_from_gross_mass_n(mass))
