"""Speeds, feeds and times of turning, milling and drilling."""

import math
from collections.abc import Iterable


def spindle_speed_rpm(*, cutting_speed_m_min: float, diameter_mm: float) -> float:
    r"""Spindle speed for a cutting speed at a diameter.

    .. math:: n = \frac{1000\, v}{\pi D}

    Parameters
    ----------
    cutting_speed_m_min : float
        Cutting speed v, [m/min]
    diameter_mm : float
        Diameter of the work, or of the cutter where that turns, D, [mm]

    Returns
    -------
    spindle_speed_rpm : float
        Turns per minute n, [1/min]

    Notes
    -----
    The tool meets the outermost diameter first: take the greatest one of the pass.

    Examples
    --------
    Nylon turned with high-speed steel at 50 m/min, on a 76.2 mm bar:

    >>> round(spindle_speed_rpm(cutting_speed_m_min=50, diameter_mm=76.2), 1)
    208.9

    References
    ----------
    Carvill, Mechanical Engineer's Data Handbook, p. 176 (the 50 m/min; the turns are computed).
    """
    return 1000 * cutting_speed_m_min / (math.pi * diameter_mm)


def cutting_speed_m_min(*, spindle_speed_rpm: float, diameter_mm: float) -> float:
    r"""Cutting speed that a spindle speed makes at a diameter.

    .. math:: v = \frac{\pi D n}{1000}

    Parameters
    ----------
    spindle_speed_rpm : float
        Turns per minute n, [1/min]
    diameter_mm : float
        Diameter D, [mm]

    Returns
    -------
    cutting_speed_m_min : float
        Cutting speed v, [m/min]

    Notes
    -----
    What is left of the wanted speed after rounding down to one that the machine has.

    Examples
    --------
    600 turns on a 3 in bar, a speed of common practice without a source, is 471.2 ft/min:

    >>> round(cutting_speed_m_min(spindle_speed_rpm=600, diameter_mm=76.2), 1)
    143.6

    References
    ----------
    The definition of a cutting speed.
    """
    return math.pi * diameter_mm * spindle_speed_rpm / 1000


def machine_speed_rpm(*, wanted_rpm: float, machine_speeds_rpm: Iterable[float]) -> float | None:
    """The fastest speed of a machine that is not above the wanted one.

    Parameters
    ----------
    wanted_rpm : float
        Computed turns per minute, [1/min]
    machine_speeds_rpm : iterable of float
        The speeds that the machine has, in any order, [1/min]

    Returns
    -------
    machine_speed_rpm : float or None
        The speed to set; None where even the slowest is above the wanted one, [1/min]

    Notes
    -----
    Rounded down, never to the nearest: too slow costs time, too fast melts plastic.

    Examples
    --------
    >>> machine_speed_rpm(wanted_rpm=208.9, machine_speeds_rpm=(60, 100, 170, 250, 400))
    170

    References
    ----------
    Common practice, no source.
    """
    return max((speed for speed in machine_speeds_rpm if speed <= wanted_rpm), default=None)


def pass_time_min(*, length_mm: float, feed_mm_rev: float, spindle_speed_rpm: float) -> float:
    r"""Time of one turning pass.

    .. math:: T = \frac{l}{f n}

    Parameters
    ----------
    length_mm : float
        Length of the cut l, or the radius when facing, [mm]
    feed_mm_rev : float
        Feed f, [mm/rev]
    spindle_speed_rpm : float
        Turns per minute n, [1/min]

    Returns
    -------
    time_min : float
        Cutting time T, without setting and run-up, [min]

    Notes
    -----
    A pass under power feed; by hand it takes longer.

    Examples
    --------
    >>> pass_time_min(length_mm=60, feed_mm_rev=0.25, spindle_speed_rpm=240)
    1.0

    References
    ----------
    The definition of a feed; from memory as a workshop formula.
    """
    return length_mm / (feed_mm_rev * spindle_speed_rpm)


def table_feed_mm_min(*, spindle_speed_rpm: float, teeth: int, feed_mm_tooth: float) -> float:
    r"""Feed of a milling table.

    .. math:: v_f = n z f_z

    Parameters
    ----------
    spindle_speed_rpm : float
        Turns of the cutter per minute n, [1/min]
    teeth : int
        Teeth of the cutter z, [-]
    feed_mm_tooth : float
        Feed per tooth f_z, [mm]

    Returns
    -------
    table_feed_mm_min : float
        Table feed v_f, [mm/min]

    Notes
    -----
    A cutter that stands still in plastic melts it: use the feed, not less.

    Examples
    --------
    A 1/4 in cutter with 2 teeth at 300 ft/min and 0.0018 in (0.04572 mm) per tooth makes 4584 turns and 16.5 in/min:

    >>> round(table_feed_mm_min(spindle_speed_rpm=4584, teeth=2, feed_mm_tooth=0.04572) / 10, 1)
    41.9

    References
    ----------
    service.polymech.info, milling HDPE (the feed per tooth); the product is computed.
    """
    return spindle_speed_rpm * teeth * feed_mm_tooth


def milling_time_min(*, length_mm: float, cutter_diameter_mm: float, table_feed_mm_min: float) -> float:
    r"""Time of one milling pass with full run-out.

    .. math:: T = \frac{l + D}{v_f}

    Parameters
    ----------
    length_mm : float
        Length of the work along the pass l, [mm]
    cutter_diameter_mm : float
        Cutter diameter D, [mm]
    table_feed_mm_min : float
        Table feed v_f, [mm/min]

    Returns
    -------
    time_min : float
        Cutting time T, [min]

    Notes
    -----
    The cutter starts clear of the work on one side and ends clear of it on the other.

    Examples
    --------
    >>> milling_time_min(length_mm=80, cutter_diameter_mm=10, table_feed_mm_min=300)
    0.3

    References
    ----------
    From memory as a workshop formula.
    """
    return (length_mm + cutter_diameter_mm) / table_feed_mm_min
