"""What can go wrong between a measurement and a pad.

::

    SeamrestError
    ├── UnreadableError        a text is not a length or a mass
    ├── BadMeasurementsError   one or more fields cannot be: each problem names field, number and remedy
    ├── NoPadFitsError         the measurements are possible, but two requirements leave no room between them
    └── ModelError             the model could not be built
        └── KernelMissingError a system library that the modelling kernel needs is not installed

*Impossible* input raises; an *inadequate* pad is a verdict of a check, never an exception; what is *noteworthy* is a caution.
"""

from collections.abc import Mapping
from dataclasses import dataclass


class SeamrestError(Exception):
    """The root of everything this program raises on purpose."""


class UnreadableError(SeamrestError, ValueError):
    """A typed text is not a length or a mass."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong with one field."""

    field: str
    """The dotted key, such as ``jack.cup_bore_mm``."""
    value: object
    """What was given."""
    message: str
    """What is wrong, with numbers and units, and what to do: whole sentences."""


class BadMeasurementsError(SeamrestError):
    """The measurement document holds values that cannot be."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        self.problems = problems
        super().__init__("\n".join(f"{p.field}: {p.message}" for p in problems))


@dataclass(frozen=True, slots=True)
class Limit:
    """One side of an empty interval."""

    value_mm: float
    reason: str
    field: str
    """The measurement that moves this bound most."""


class NoPadFitsError(SeamrestError):
    """Two requirements on one dimension leave no room between them."""

    def __init__(
        self, *, dimension: str, lower: Limit, upper: Limit, words: str, so_far: Mapping[str, float] | None = None
    ) -> None:
        self.dimension, self.lower, self.upper, self.words = dimension, lower, upper, words
        self.so_far = dict(so_far or {})
        """The dimensions that were chosen before the conflict, in mm."""
        super().__init__(words)


class ModelError(SeamrestError):
    """The model could not be built or written."""


class KernelMissingError(ModelError):
    """The modelling kernel cannot be loaded on this machine; the message says what to install."""
