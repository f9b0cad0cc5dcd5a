"""General tolerances of lengths, radii and chamfers (ISO 2768-1), and how independent deviations add up."""

from bisect import bisect_left
from typing import Literal

Grade = Literal["f", "m", "c", "v"]

_LINEAR_UPPER_MM = (3.0, 6.0, 30.0, 120.0, 400.0, 1000.0, 2000.0, 4000.0)
_LINEAR_MM: dict[Grade, tuple[float | None, ...]] = {
    "f": (0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, None),
    "m": (0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2.0),
    "c": (0.2, 0.3, 0.5, 0.8, 1.2, 2.0, 3.0, 4.0),
    "v": (None, 0.5, 1.0, 1.5, 2.5, 4.0, 6.0, 8.0),
}
_RADIUS_UPPER_MM = (3.0, 6.0)
_RADIUS_MM: dict[Grade, tuple[float, ...]] = {
    "f": (0.2, 0.5, 1.0),
    "m": (0.2, 0.5, 1.0),
    "c": (0.4, 1.0, 2.0),
    "v": (0.4, 1.0, 2.0),
}
_LEAST_NOMINAL_MM = 0.5
_BELOW_LEAST_MM = 0.1
"""Below 0.5 mm ISO 2768-1 gives nothing: the drawing states ±0.1 mm at the dimension."""


def linear_tolerance_mm(nominal_mm: float, grade: Grade = "m") -> float:
    r"""General tolerance of a length or a diameter.

    Parameters
    ----------
    nominal_mm : float
        Nominal size, over 0 to 4000, [mm]
    grade : str
        Tolerance class f, m, c or v, [-]

    Returns
    -------
    tolerance_mm : float
        Plus and minus, [mm]

    Notes
    -----
    Below 0.5 mm the standard gives no value; 0.1 mm is used and written at the dimension.
    Raises ValueError beyond 4000 mm or where the class has no value.

    Examples
    --------
    >>> linear_tolerance_mm(50)
    0.3

    References
    ----------
    ISO 2768-1:1989, Table 1 (two public transcriptions that agree).
    """
    if nominal_mm < _LEAST_NOMINAL_MM:
        return _BELOW_LEAST_MM
    band = bisect_left(_LINEAR_UPPER_MM, nominal_mm)
    value = _LINEAR_MM[grade][band] if band < len(_LINEAR_UPPER_MM) else None
    if value is None:
        raise ValueError(f"ISO 2768-1 class {grade} gives no tolerance for {nominal_mm:g} mm")
    return value


def radius_tolerance_mm(nominal_mm: float, grade: Grade = "m") -> float:
    r"""General tolerance of an external radius or a chamfer height.

    Parameters
    ----------
    nominal_mm : float
        Nominal size, [mm]
    grade : str
        Tolerance class f, m, c or v, [-]

    Returns
    -------
    tolerance_mm : float
        Plus and minus, [mm]

    Notes
    -----
    Below 0.5 mm the standard gives no value; 0.1 mm is used and written at the dimension.

    Examples
    --------
    >>> radius_tolerance_mm(5.0)
    0.5

    References
    ----------
    ISO 2768-1:1989, Table 2 (two public transcriptions that agree).
    """
    if nominal_mm < _LEAST_NOMINAL_MM:
        return _BELOW_LEAST_MM
    return _RADIUS_MM[grade][bisect_left(_RADIUS_UPPER_MM, nominal_mm)]


def root_sum_square_mm(*parts_mm: float) -> float:
    r"""Statistical sum of independent deviations.

    .. math:: T = \sqrt{\sum T_i^2}

    Parameters
    ----------
    parts_mm : float
        Deviations, each plus and minus, [mm]

    Returns
    -------
    total_mm : float
        Plus and minus, [mm]

    Notes
    -----
    Assumes independent, centred deviations; it informs, the worst case decides.

    Examples
    --------
    >>> root_sum_square_mm(0.3, 0.4)
    0.5

    References
    ----------
    Common statistical tolerancing, from memory.
    """
    return float(sum(part**2 for part in parts_mm) ** 0.5)
