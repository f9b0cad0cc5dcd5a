"""Why a cushion and a plug are as large as they are: what follows “because” for the bounds of both."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Protocol

from geometry.rules import Numbers


class Told(Protocol):
    """What a phrase may ask of the numbers of its bound."""

    @property
    def numbers(self) -> Numbers:
        """The symbols of the formula with their values."""

    def mm(self, symbol: str) -> str:
        """A length of the bound's formula."""

    def measured(self, symbol: str, uncertainty: str = "u") -> str:
        """A measured length with its uncertainty."""

    def hot(self) -> str:
        """How much the size grows at the hottest and wettest."""

    def cold(self) -> str:
        """How much it shrinks at the coldest."""


FACE_PHRASES: Mapping[tuple[str, str], Callable[[Told], str]] = MappingProxyType(
    {
        ("web_mm", "seat_length + sqrt(3) * V_l / sigma_allow"): lambda b: (
            f"the seat is {b.mm('seat_length')} long and above it the lip must take {b.numbers['V_l']:.0f} N/mm in shear at"
            f" {b.numbers['sigma_allow']:.1f} MPa"
        ),
        ("web_mm", "seat_length + sqrt(6 * M_l / sigma_allow)"): lambda b: (
            f"the seat is {b.mm('seat_length')} long and above it the lip must take {b.numbers['M_l']:.0f} N of bending per"
            f" length at {b.numbers['sigma_allow']:.1f} MPa"
        ),
        ("web_mm", "min(body - 2 * c_e, w_f, l_f) / 4 * sqrt(2 / (F_d / (A * E_0 * eps) - 1))"): lambda b: (
            f"a taller pad would give way by more than {100 * b.numbers['eps']:g} %"
        ),
        ("body_diameter_mm", "D_p + 2 * c_e"): lambda b: (
            f"a top of {b.mm('D_p')} carries the car's face well below its limit, or as much of it as fits"
        ),
    }
)
"""Keyed by dimension and formula."""
