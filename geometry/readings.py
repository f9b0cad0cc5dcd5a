"""Readings of one dimension: brought to 20 °C, doubted where they look like slips, judged against their limits."""

from dataclasses import dataclass
from math import hypot, inf
from typing import Literal

from geometry.conditions import Conditions
from geometry.document.as_made import ReadingSet
from geometry.inspection import REFERENCE_C, limits_about, tolerance_mm
from geometry.making.how_measured import dimension_title
from geometry.making.wording import Sentence, said
from geometry.materials import Material
from geometry.pad import Pad
from geometry.provenance import memory
from geometry.units import MM_PER_INCH, LowerLimit, UpperLimit

SLIP_MM = 5.0
"""Further from the drawing than this is a slip of the pen or a spoilt part: it is asked about."""
INCH_SLIP_SHARE = 0.03
"""A reading this near to the size times or through 25.4 was read in the other unit."""
TEMPERATURE_DOUBT_K = 2.0
"""How far a part's temperature may be off what the room's thermometer says: judged."""
DECISION_SOURCE = memory(
    "ISO 14253-1: to accept, the reading with its uncertainty lies inside the limits; to reject,"
    " outside; between, in doubt"
)

Verdict = Literal["accept", "doubtful", "reject", "asked", "open"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """One dimension of the part: what was read, what it is at 20 °C, and whether it is as drawn."""

    dimension: str
    title: str
    """The dimension in words."""
    nominal_mm: float
    lower_mm: LowerLimit
    upper_mm: UpperLimit
    readings_mm: tuple[float, ...]
    """As read; empty where it was not."""
    set_number: int
    """Which set they are from: the latest that has any; 0 where none has."""
    size_mm: float
    """Middle of the readings, at 20 °C; the nominal size where nothing was read."""
    spread_mm: float
    """Half of how far the readings lie apart, and their uncertainty; the general tolerance where nothing was read."""
    verdict: Verdict
    words: Sentence

    @property
    def is_taken(self) -> bool:
        """Whether its size is known well enough to be used."""
        return self.verdict in {"accept", "doubtful", "reject"}


def size_at_20_c(*, reading_mm: float, part_temperature_c: float, material: Material) -> float:
    r"""Size that a part will have at 20 °C.

    .. math:: L_{20} = \frac{L}{1 + \alpha (T - 20)}

    Parameters
    ----------
    reading_mm : float
        Size at the part's temperature L, [mm]
    part_temperature_c : float
        Temperature of the part T, [°C]
    material : Material
        Supplies the expansion α, [1/K]

    Returns
    -------
    size_mm : float
        Size at 20 °C, [mm]

    Notes
    -----
    The instrument is taken to be right at its own temperature: steel moves a tenth of what these plastics move.

    Examples
    --------
    An acetal seat read as 67.4 mm at 30 °C: 67.4/(1 + 115e-6 · 10).

    >>> from geometry.materials import MATERIALS
    >>> round(size_at_20_c(reading_mm=67.4, part_temperature_c=30, material=MATERIALS["pom_c"]), 3)
    67.323

    References
    ----------
    Linear thermal expansion; ISO 1 for the 20 °C (from memory).
    """
    return reading_mm / (1 + material.expansion_per_k.value * (part_temperature_c - REFERENCE_C))


def verdict_of(*, low_mm: float, high_mm: float, uncertainty_mm: float, lower_mm: float, upper_mm: float) -> Verdict:
    r"""Accept, reject or doubt readings against limits.

    .. math:: \text{accept: } L + u \le x \le U - u; \quad \text{reject: } x < L - u \text{ or } x > U + u

    Parameters
    ----------
    low_mm : float
        Smallest reading at 20 °C, [mm]
    high_mm : float
        Largest reading at 20 °C, [mm]
    uncertainty_mm : float
        How far a reading may be off u, [mm]
    lower_mm : float
        Lower limit L, [mm]
    upper_mm : float
        Upper limit U, [mm]

    Returns
    -------
    verdict : str
        ``accept``, ``doubtful`` or ``reject``, [-]

    Examples
    --------
    >>> [verdict_of(low_mm=x, high_mm=x, uncertainty_mm=0.05, lower_mm=8.8, upper_mm=9.2) for x in (9.1, 9.18, 9.3)]
    ['accept', 'doubtful', 'reject']

    References
    ----------
    ISO 14253-1, from memory.
    """
    if low_mm - uncertainty_mm >= lower_mm and high_mm + uncertainty_mm <= upper_mm:
        return "accept"
    if low_mm < lower_mm - uncertainty_mm or high_mm > upper_mm + uncertainty_mm:
        return "reject"
    return "doubtful"


def slip_in(reading_mm: float, nominal_mm: float) -> Sentence | None:
    """What to ask about a reading that looks like a slip; None where it does not.

    >>> slip_in(2.646, 67.2).shown()
    'Was 2.65 mm read in inches and entered as millimetres?'
    """
    inch = float(MM_PER_INCH)
    if abs(reading_mm * inch / nominal_mm - 1) < INCH_SLIP_SHARE:
        return said("Was {reading} read in inches and entered as millimetres?", reading=reading_mm)
    if abs(reading_mm / inch / nominal_mm - 1) < INCH_SLIP_SHARE:
        return said("Was {reading} read in millimetres and entered as inches?", reading=reading_mm)
    if abs(reading_mm - nominal_mm) > SLIP_MM:
        return said(
            "{reading} is more than {slip} from the drawing's {nominal}: is it a slip?",
            reading=reading_mm,
            slip=SLIP_MM,
            nominal=nominal_mm,
        )
    return None


def judge_readings(name: str, pad: Pad, c: Conditions, sets: tuple[ReadingSet, ...]) -> Judged:
    """Judge one dimension by the latest set that has readings of it."""
    nominal, tolerance = getattr(pad, name), tolerance_mm(pad, name)
    found = next(((n, s) for n, s in reversed(list(enumerate(sets, 1))) if name in s.given()), None)
    if found is None:
        return _unread(name, pad, tolerance)
    number, taken = found
    readings = taken.given()[name]
    temperature = taken.part_temperature_c
    sizes = [size_at_20_c(reading_mm=r, part_temperature_c=temperature, material=c.material) for r in readings]
    low, high, (lower, upper) = min(sizes), max(sizes), limits_about(nominal, tolerance)
    # Thermometer and instrument are wrong independently of each other.
    u = hypot(taken.uncertainty_used_mm, nominal * c.material.expansion_per_k.value * TEMPERATURE_DOUBT_K)
    question = next((q for r in readings if (q := slip_in(r, nominal))), None) if taken.sure == "ask" else None
    # Where the tolerance is as large as the size there is nothing that is too small.
    least = lower or -inf
    plain = verdict_of(low_mm=low, high_mm=high, uncertainty_mm=u, lower_mm=least, upper_mm=upper)
    return Judged(
        dimension=name,
        title=dimension_title(name, pad),
        nominal_mm=nominal,
        lower_mm=lower,
        upper_mm=upper,
        readings_mm=readings,
        set_number=number,
        size_mm=(low + high) / 2,
        spread_mm=(high - low) / 2 + u,
        verdict="asked" if question else plain,
        words=question or _said(plain, low, high, u, lower, upper),
    )


def _unread(name: str, pad: Pad, tolerance: float) -> Judged:
    nominal = getattr(pad, name)
    lower, upper = limits_about(nominal, tolerance)
    return Judged(
        dimension=name,
        title=dimension_title(name, pad),
        nominal_mm=nominal,
        lower_mm=lower,
        upper_mm=upper,
        readings_mm=(),
        set_number=0,
        size_mm=nominal,
        spread_mm=tolerance,
        verdict="open",
        words=said("Not read; between {lower} and {upper} as drawn.", lower=lower, upper=upper),
    )


def _said(verdict: Verdict, low: float, high: float, u: float, lower: LowerLimit, upper: UpperLimit) -> Sentence:
    """The verdict in words: the size at 20 °C, from ``low`` to ``high``, its uncertainty, and the limits; all in mm."""
    end = {
        "accept": "inside {lower} to {upper} by more than its uncertainty of {u}.",
        "doubtful": "within {u} of a limit, {lower} or {upper}: it may be inside or outside. Measure with a finer"
        " instrument.",
        "reject": "outside {lower} to {upper} by more than its uncertainty of {u}.",
    }[verdict]
    size = "{low}" if abs(high - low) < 1e-9 else "{low} to {high}"
    return said(f"At 20 °C {size}: {end}", low=low, high=high, u=u, lower=lower, upper=upper)
