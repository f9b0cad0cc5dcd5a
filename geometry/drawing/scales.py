"""The standard scales of ISO 5455."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Scale:
    """Paper mm for model mm, such as 1:2."""

    factor: float
    words: str


def _scale(paper: int, model: int) -> Scale:
    return Scale(paper / model, f"{paper}:{model}")


SCALES = tuple(
    _scale(*pair) for pair in ((50, 1), (20, 1), (10, 1), (5, 1), (2, 1), (1, 1), (1, 2), (1, 5), (1, 10), (1, 20))
)
"""ISO 5455, largest first."""


def largest_scale(factor_at_most: float, *, no_more_than: Scale | None = None) -> Scale:
    """The largest standard scale within a limit; the smallest where none is."""
    limit = min(factor_at_most, no_more_than.factor) if no_more_than else factor_at_most
    return next((scale for scale in SCALES if scale.factor <= limit + 1e-9), SCALES[-1])
