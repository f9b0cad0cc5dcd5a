"""The surface that a round-nosed tool leaves, and a corner radius cut as straight facets."""

import math
from dataclasses import dataclass
from itertools import pairwise


def roughness_average_um(*, feed_mm_rev: float, nose_radius_mm: float) -> float:
    r"""Estimated average roughness Ra of a turned surface.

    .. math:: R_a \approx \frac{f^2}{32\, r}

    Parameters
    ----------
    feed_mm_rev : float
        Feed f, [mm/rev]
    nose_radius_mm : float
        Nose radius of the tool r, [mm]

    Returns
    -------
    roughness_um : float
        Ra, [μm]

    Notes
    -----
    The least that geometry allows: published factors for real surfaces run from 1.2 to 3. Some sources print 31.2.

    Examples
    --------
    >>> round(roughness_average_um(feed_mm_rev=0.2, nose_radius_mm=0.8), 2)
    1.56

    References
    ----------
    machinecalcs.com and vibromera.eu, theoretical turned finish.
    """
    return 1000 * feed_mm_rev**2 / (32 * nose_radius_mm)


def facet_cusp_mm(*, radius_mm: float, facets: int) -> float:
    r"""How far the edges between the facets stand outside a corner radius.

    .. math:: \delta = r\left(\frac{1}{\cos(45°/N)} - 1\right)

    Parameters
    ----------
    radius_mm : float
        Corner radius r of a quarter turn, [mm]
    facets : int
        Number of straight cuts N, each tangent to the arc, [-]

    Returns
    -------
    cusp_mm : float
        Greatest height outside the arc δ, [mm]

    Notes
    -----
    The edges stay outside and are filed off: left on, they touch the cup's corner first. Of a single facet this
    is the height of the sharp corner before the cut, an upper bound.

    Examples
    --------
    >>> [round(facet_cusp_mm(radius_mm=1, facets=n), 4) for n in (1, 2, 3, 4)]
    [0.4142, 0.0824, 0.0353, 0.0196]

    References
    ----------
    Derived: two tangents 90°/N apart meet at r/cos(45°/N) from the centre of the arc.
    """
    return radius_mm * (1 / math.cos(math.radians(45 / facets)) - 1)


@dataclass(frozen=True, slots=True)
class Facet:
    """One straight cut of a corner: where it starts and ends, and at what angle."""

    angle_from_axis_deg: float
    """Angle between the cut and the axis of the work: what the compound slide is swivelled to from the axis."""
    start_inset_mm: float
    """Start of the cut: this far in from the turned diameter, measured along the radius."""
    start_height_mm: float
    """Start of the cut: this far from the face, measured along the axis."""
    end_inset_mm: float
    end_height_mm: float


def corner_facets(*, radius_mm: float, facets: int) -> tuple[Facet, ...]:
    r"""The straight cuts that make an outer corner radius, from the face to the diameter.

    .. math:: \varphi_k = \left(k - \tfrac12\right)\frac{90°}{N}, \quad k = 1 \dots N

    Parameters
    ----------
    radius_mm : float
        Corner radius r, [mm]
    facets : int
        Number of straight cuts N, [-]

    Returns
    -------
    cuts : tuple of Facet
        The cuts in order, each starting where the one before it ends, [-]

    Notes
    -----
    Every cut is tangent to the arc at its own φ, counted from the face, so no cut goes below the finished radius. The
    first starts on the face, the last ends on the turned diameter.

    Examples
    --------
    A single cut is a chamfer of 45° that touches the arc in its middle:

    >>> cut, = corner_facets(radius_mm=10, facets=1)
    >>> cut.angle_from_axis_deg, round(cut.start_inset_mm, 3), round(cut.end_height_mm, 3)
    (45.0, 5.858, 5.858)

    References
    ----------
    Derived: tangents of a circle.
    """
    step = math.pi / 2 / facets
    tangents = [0.0, *(step * (k + 0.5) for k in range(facets)), math.pi / 2]
    corners = [_meeting(radius_mm, a, b) for a, b in pairwise(tangents)]
    return tuple(
        Facet(90 - math.degrees(angle), *start, *end)
        for angle, (start, end) in zip(tangents[1:-1], pairwise(corners), strict=True)
    )


def _meeting(radius_mm: float, a: float, b: float) -> tuple[float, float]:
    """Where the tangents at two angles from the face meet: inset from the diameter, height from the face."""
    middle, reach = (a + b) / 2, radius_mm / math.cos((b - a) / 2)
    return radius_mm - reach * math.sin(middle), radius_mm - reach * math.cos(middle)
