"""ISO 2768-1:1989, Tables 1 and 2, classes f, m, c, v (two public transcriptions that agree; rows that one of them adds
above 4000 mm, and above 30 mm for radii, are not in the standard)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.fits import Grade, linear_tolerance_mm, radius_tolerance_mm

LINEAR = {
    "f": (0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, None),
    "m": (0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2),
    "c": (0.2, 0.3, 0.5, 0.8, 1.2, 2, 3, 4),
    "v": (None, 0.5, 1, 1.5, 2.5, 4, 6, 8),
}
"""Columns: 0.5 up to 3, over 3 to 6, 30, 120, 400, 1000, 2000, 4000 mm."""
ENDS = (0.5, 3, 6, 30, 120, 400, 1000, 2000, 4000)
RADII = {"f": (0.2, 0.5, 1), "m": (0.2, 0.5, 1), "c": (0.4, 1, 2), "v": (0.4, 1, 2)}
CLASSES: tuple[Grade, ...] = ("f", "m", "c", "v")


@pytest.mark.parametrize("grade", CLASSES)
@pytest.mark.parametrize("column", range(8))
def test_a_length_has_the_tolerance_of_its_row_and_column(grade: Grade, column: int) -> None:
    """Oracle: Table 1, just above the lower and at the upper end of each range of nominal sizes."""
    for nominal in (ENDS[column] + 0.01, ENDS[column + 1]):
        printed = LINEAR[grade][column]
        if printed is None:
            with pytest.raises(ValueError, match=f"class {grade} gives no tolerance"):
                linear_tolerance_mm(nominal, grade)
        else:
            assert linear_tolerance_mm(nominal, grade) == printed


@pytest.mark.parametrize("grade", CLASSES)
def test_a_radius_has_the_tolerance_of_its_row_and_column(grade: Grade) -> None:
    """Oracle: Table 2, at both ends of each range."""
    found = [radius_tolerance_mm(nominal, grade) for nominal in (0.5, 3, 3.01, 6, 6.01, 80)]
    small, middle, large = RADII[grade]
    assert found == [small, small, middle, middle, large, large]


def test_fifty_millimetres_medium_is_plus_and_minus_three_tenths() -> None:
    """Oracle: worked value in a public transcription of the standard."""
    assert linear_tolerance_mm(50, "m") == 0.3


def test_beyond_the_table_there_is_no_tolerance() -> None:
    """Oracle: Table 1 ends at 4000 mm."""
    with pytest.raises(ValueError, match="4001"):
        linear_tolerance_mm(4001, "m")


@given(st.floats(0.5, 2000), st.floats(0.5, 2000))
def test_a_larger_size_never_has_a_finer_tolerance(a: float, b: float) -> None:
    """Oracle: the rows of Table 1 rise from left to right."""
    small, large = sorted((a, b))
    assert linear_tolerance_mm(small) <= linear_tolerance_mm(large)
