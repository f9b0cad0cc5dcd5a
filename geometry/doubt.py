"""One doubt about a number that can exist and seldom does, and the ways in which it may be odd."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

Known = Mapping[str, float]
"""What is known so far, in mm, kg and plain numbers, by dotted key."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """One thing to look at again, at one field."""

    field: str
    is_odd: Callable[[Known], bool]
    """Asked only where everything in ``needs`` is known."""
    words: str
    """A sentence; ``{value}`` is the field's number."""
    needs: tuple[str, ...] = ()
    """Other fields that the question looks at."""


def above(key: str, usual: float) -> Callable[[Known], bool]:
    """Whether a field is more than is usual."""
    return lambda known: known[key] > usual


def below(key: str, usual: float) -> Callable[[Known], bool]:
    """Whether a field is less than is usual."""
    return lambda known: known[key] < usual


def around(outer: str, inner: str, *, least: float, words: str) -> Doubt:
    """An outside that leaves less than ``least`` around its inside, on both sides together, [mm]."""
    return Doubt(outer, lambda known: known[outer] - known[inner] < least, words, (inner,))
