"""Passes that take a thickness off, and what the cross slide's dial reads for them."""

import math
from typing import Literal

Slide = Literal["radius", "diameter"]
"""What the cross slide's dial counts: its own travel, or the diameter that the travel takes off."""


def pass_depths_mm(*, total_mm: float, greatest_depth_mm: float, finishing_depth_mm: float) -> tuple[float, ...]:
    """Depths of the passes that remove a thickness: equal roughing passes, then one finishing pass.

    Parameters
    ----------
    total_mm : float
        What is to come off, square to the surface, [mm]
    greatest_depth_mm : float
        Greatest depth of a roughing pass, [mm]
    finishing_depth_mm : float
        Depth of the last pass, [mm]

    Returns
    -------
    depths_mm : tuple of float
        Depth of each pass in order, [mm]

    Notes
    -----
    Equal passes leave the last roughing pass as stiff as the first. Where no more is to come off than the finishing
    depth, there is one pass.

    Examples
    --------
    With roughing cuts of 0.020 in and a finishing cut of 0.005 in, common practice without a source, 0.065 in takes
    three roughing passes and a finishing one (here in thousandths):

    >>> pass_depths_mm(total_mm=65, greatest_depth_mm=20, finishing_depth_mm=5)
    (20.0, 20.0, 20.0, 5)

    References
    ----------
    Common practice, no source.
    """
    roughing_mm = total_mm - finishing_depth_mm
    if roughing_mm <= 0:
        return (total_mm,)
    # A thickness that is a whole number of cuts but for rounding does not get one cut more.
    count = max(1, math.ceil(roughing_mm / greatest_depth_mm - 1e-9))
    return (*(roughing_mm / count,) * count, finishing_depth_mm)


def diameter_after_mm(*, diameter_mm: float, infeed_mm: float) -> float:
    r"""Diameter of turned work after an infeed.

    .. math:: D' = D - 2a

    Parameters
    ----------
    diameter_mm : float
        Diameter before D, [mm]
    infeed_mm : float
        Travel of the tool towards the axis a, [mm]

    Returns
    -------
    diameter_mm : float
        Diameter after, [mm]

    Notes
    -----
    An infeed takes twice itself off the diameter.

    Examples
    --------
    0.005 in of infeed takes 3.000 in to 2.990 in:

    >>> round(diameter_after_mm(diameter_mm=76.2, infeed_mm=0.127) / 76.2 * 3, 6)
    2.99

    References
    ----------
    Common practice, no source; plain geometry.
    """
    return diameter_mm - 2 * infeed_mm


def dial_infeed_mm(*, diameter_mm: float, wanted_diameter_mm: float, slide: Slide) -> float:
    r"""What to advance the cross slide's dial by, to go from one diameter to another.

    .. math:: a = (D - D')/2 \text{ on a dial that counts its travel}

    .. math:: a = D - D' \text{ on a dial that counts the diameter}

    Parameters
    ----------
    diameter_mm : float
        Measured diameter D, [mm]
    wanted_diameter_mm : float
        Wanted diameter D', [mm]
    slide : str
        ``radius`` if the dial counts the travel of the slide, ``diameter`` if it counts what comes off the
        diameter, [-]

    Returns
    -------
    infeed_mm : float
        Advance of the dial, [mm]

    Notes
    -----
    To find out which dial it is: advance it by a known amount, cut, and measure what came off.

    Examples
    --------
    >>> dial_infeed_mm(diameter_mm=70, wanted_diameter_mm=68, slide="radius")
    1.0
    >>> dial_infeed_mm(diameter_mm=70, wanted_diameter_mm=68, slide="diameter")
    2

    References
    ----------
    Common practice, no source; plain geometry.
    """
    taken_off_mm = diameter_mm - wanted_diameter_mm
    return taken_off_mm / 2 if slide == "radius" else taken_off_mm
