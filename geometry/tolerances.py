"""Standard tolerance grades of ISO 286-1: how fine a tolerance is, in the grades that a machinist knows."""

from bisect import bisect_left
from math import log

GRADES = tuple(range(5, 15))
"""IT5 (ground) to IT14 (sawn)."""

_UPPER_MM = (3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500)
_IT_UM: dict[int, tuple[int, ...]] = {
    5: (4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27),
    6: (6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40),
    7: (10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63),
    8: (14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97),
    9: (25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155),
    10: (40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250),
    11: (60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400),
}
_FIVE_GRADES = 10
"""From IT6 on, five grades coarser is ten times wider: IT12 to IT14 are ten times IT7 to IT9."""


def it_tolerance_mm(nominal_mm: float, grade: int) -> float:
    r"""Width of the tolerance zone of a standard grade.

    Parameters
    ----------
    nominal_mm : float
        Nominal size, over 0 to 500, [mm]
    grade : int
        Grade 5 to 14, [-]

    Returns
    -------
    tolerance_mm : float
        From the lower to the upper limit, [mm]

    Notes
    -----
    A range of nominal sizes includes its upper end. Raises ValueError outside sizes and grades.

    Examples
    --------
    A 68 mm shaft to d10 has limits of -100 and -220 μm:

    >>> it_tolerance_mm(68, 10)
    0.12

    References
    ----------
    ISO 286-1:2010, Table 1, as given by two public transcriptions that agree (IT5 to IT11); IT12 to IT14 recomputed.
    """
    if not 0 < nominal_mm <= _UPPER_MM[-1]:
        raise ValueError(f"ISO 286-1 grades are tabled here up to {_UPPER_MM[-1]} mm, not for {nominal_mm:g} mm")
    if grade not in GRADES:
        raise ValueError(f"IT{grade} is not tabled here, only IT{GRADES[0]} to IT{GRADES[-1]}")
    band = bisect_left(_UPPER_MM, nominal_mm)
    if grade in _IT_UM:
        return _IT_UM[grade][band] / 1000
    return _FIVE_GRADES * _IT_UM[grade - 5][band] / 1000


def nearest_grade(*, nominal_mm: float, tolerance_mm: float) -> int:
    r"""The standard grade whose tolerance zone comes nearest to a given one.

    .. math:: \min_g \left|\ln \frac{T}{IT_g}\right|

    Parameters
    ----------
    nominal_mm : float
        Nominal size, over 0 to 500, [mm]
    tolerance_mm : float
        Width of the zone, from the lower to the upper limit: twice a plus-and-minus tolerance, [mm]

    Returns
    -------
    grade : int
        Grade 5 to 14; an end of that range for anything beyond it, [-]

    Notes
    -----
    Near by ratio, since the grades grow by a ratio of about 1.6.

    Examples
    --------
    A seat of 67.2 ± 0.3 mm:

    >>> nearest_grade(nominal_mm=67.2, tolerance_mm=0.6)
    14

    References
    ----------
    ISO 286-1:2010, Table 1.
    """
    if tolerance_mm <= 0:
        raise ValueError(f"a tolerance zone of {tolerance_mm:g} mm is none")
    return min(GRADES, key=lambda grade: abs(log(tolerance_mm / it_tolerance_mm(nominal_mm, grade))))
