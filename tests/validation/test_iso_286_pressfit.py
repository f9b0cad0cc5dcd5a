"""ISO 286-1:2010 tolerance grades against pressfit 0.1.0, a general-purpose library of limits and fits (IT5 to IT11).

Worked fits printed in public texts: 25 H7/g6 (package page of pressfit), 29 h7 and 29 H7 (README of a public library),
132.5 H6 (a public code file), 25 H11/c11 and 80 H11/c11 (ANSI B4.2 preferred fits, widely published).
"""

import pressfit
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.fits import linear_tolerance_mm
from geometry.tolerances import GRADES, it_tolerance_mm, nearest_grade

IT12_TO_14_UM = {
    3: (100, 140, 250),
    30: (210, 330, 520),
    80: (300, 460, 740),
    120: (350, 540, 870),
    500: (630, 970, 1550),
}
"""Standard table, from memory, recomputed as ten times IT7 to IT9."""


@pytest.mark.parametrize("grade", range(5, 12))
def test_every_tenth_of_a_millimetre_up_to_500_agrees(grade: int) -> None:
    """Oracle: pressfit, hole H; 5000 sizes a grade, 35 000 in all."""
    for tenth in range(1, 5001):
        size = tenth / 10
        found = pressfit.fit(f"H{grade}/h{grade}", size)
        assert it_tolerance_mm(size, grade) == pytest.approx((found.hole_es_um - found.hole_ei_um) / 1000, abs=1e-12)


@pytest.mark.parametrize(
    ("size", "grade", "low_mm", "high_mm"),
    [
        (25, 7, 25.000, 25.021),
        (25, 6, 24.980, 24.993),
        (29, 7, 28.979, 29.000),
        (132.5, 6, 132.500, 132.525),
        (132.5, 13, 132.5 - 1.090, 132.5 - 0.460),
        (25, 11, 25.000, 25.130),
        (60, 7, 60.000, 60.030),
        (80, 11, 79.660, 79.850),
        (68, 10, 67.780, 67.900),
    ],
)
def test_published_limits_are_as_far_apart_as_their_grade(
    size: float, grade: int, low_mm: float, high_mm: float
) -> None:
    """Oracle: limits of H7, g6, h7, H6, a13, H11, c11, d10 as printed in the texts above."""
    assert it_tolerance_mm(size, grade) == pytest.approx(high_mm - low_mm, abs=1e-9)


@pytest.mark.parametrize("size", IT12_TO_14_UM)
def test_the_coarse_grades_are_those_of_the_standard_table(size: int) -> None:
    """Oracle: IT12, IT13, IT14 of the table."""
    assert tuple(round(1000 * it_tolerance_mm(size, grade)) for grade in (12, 13, 14)) == IT12_TO_14_UM[size]


@given(st.floats(0.01, 500), st.sampled_from(GRADES), st.floats(0.93, 1.07))
def test_the_nearest_grade_of_a_grade_is_itself(size: float, grade: int, off: float) -> None:
    """Oracle: the grades lie at least 1.25 apart, so 7 % off still belongs to the same one."""
    assert nearest_grade(nominal_mm=size, tolerance_mm=off * it_tolerance_mm(size, grade)) == grade


@given(st.floats(0.5, 400, exclude_max=True))
def test_general_tolerances_of_medium_grade_lie_between_it12_and_it14(size: float) -> None:
    """Oracle: textbooks equate ISO 2768-m with about IT12 to IT14 (from memory)."""
    assert nearest_grade(nominal_mm=size, tolerance_mm=2 * linear_tolerance_mm(size)) in {12, 13, 14}


@pytest.mark.parametrize(("size", "grade"), [(0.0, 7), (500.1, 7), (68.0, 4), (68.0, 15)])
def test_what_the_table_does_not_hold_is_refused(size: float, grade: int) -> None:
    """Oracle: ISO 286-1 Table 1 as carried here ends at 500 mm, IT5 and IT14."""
    with pytest.raises(ValueError, match="tabled here"):
        it_tolerance_mm(size, grade)


def test_no_tolerance_has_no_grade() -> None:
    """Oracle: a zone without width lies in no grade."""
    with pytest.raises(ValueError, match="is none"):
        nearest_grade(nominal_mm=68, tolerance_mm=0)
