"""Dimension lines of the section, in model mm."""

from dataclasses import dataclass
from typing import Literal

from geometry.outline import Point


@dataclass(frozen=True, slots=True)
class Span:
    """A dimension line with its extension lines."""

    start: Point
    end: Point
    extensions: tuple[tuple[Point, Point], ...] = ()
    arrows: Literal["between", "outside", "radius"] = "between"
    """Outside: pointing in from the extensions. Radius: one arrow, at the end."""


def across(half: float, y: float, from_y: float) -> Span:
    """A level dimension line below what it measures."""
    return Span((-half, y), (half, y), (((-half, from_y), (-half, y)), ((half, from_y), (half, y))))


def narrow(half: float, y: float, k: float, middle: float = 0.0) -> Span:
    """A level dimension line across something thin, its arrows outside."""
    left, right = middle - half, middle + half
    return Span(
        (left, y), (right, y), (((left - 8 * k, y), (left, y)), ((right + 8 * k, y), (right, y))), arrows="outside"
    )


def upright(x: float, low: float, high: float, *, from_x: tuple[float, float]) -> Span:
    """An upright dimension line beside what it measures, with its lower and upper extension line."""
    return Span((x, low), (x, high), (((from_x[0], low), (x, low)), ((from_x[1], high), (x, high))))
