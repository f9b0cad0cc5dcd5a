"""The ledger against scipy.optimize (brentq): the extreme size that the checks allow, found from the checks alone.

Bounds and checks are two hands of code. Where a dimension is chosen at the end of its interval, the check that guards this
end must let the size move only as far as the margin that the bound keeps on purpose, less one makeable step.
"""

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from scipy.optimize import brentq

from geometry.checks import judge
from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.fits import linear_tolerance_mm
from geometry.measurements import read_measurements
from tests.validation.documents import documents

_SETTINGS = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))


def _free_metric_design(document: dict[str, Any]) -> Design:
    document = document | {"fixed": {}, "make": document["make"] | {"step": "metric"}}
    try:
        return design_pad(read_measurements(document))
    except (BadMeasurementsError, NoPadFitsError):
        assume(False)
        raise


def _spare_mm(design: Design, code: str, dimension: str) -> Callable[[float], float]:
    """What a check has left at a size of one dimension, the others as chosen."""

    def spare(size_mm: float) -> float:
        checks = judge(design.conditions, design.pad.with_(**{dimension: size_mm}))
        finding = next(c for c in checks if c.code == code).finding
        assert finding is not None
        return finding.value - finding.limit

    return spare


def _extreme_mm(design: Design, code: str, dimension: str, reach_mm: float) -> float:
    """The size at which a check has nothing left, looked for between the chosen size and ``reach_mm`` beyond it."""
    chosen = getattr(design.pad, dimension)
    return float(brentq(_spare_mm(design, code, dimension), chosen, chosen + reach_mm, xtol=1e-9))


def _one_tolerance(a: float, b: float) -> bool:
    return linear_tolerance_mm(a) == linear_tolerance_mm(b)


@_SETTINGS
@given(documents())
def test_the_seat_is_the_largest_that_drops_into_the_cup(document: dict[str, Any]) -> None:
    """Oracle: the root of the tight fit's spare; the bound keeps 0.20 mm of cold air where the check asks 0.1."""
    design = _free_metric_design(document)
    most = _extreme_mm(design, "seat_fit_tight", "seat_diameter_mm", 3.0)
    assume(_one_tolerance(design.pad.seat_diameter_mm, most))
    assert -1e-9 <= most - design.pad.seat_diameter_mm <= 0.10 + 0.1 + 0.02 + 1e-6


@_SETTINGS
@given(documents())
def test_the_slot_is_the_deepest_that_clears_the_sill(document: dict[str, Any]) -> None:
    """Oracle: the root of the sill's spare; the bound keeps 3.0 mm where the check asks 2.0 and takes off the indentation."""
    design = _free_metric_design(document)
    assume(not design.ledger["slot_depth_mm"].notes)
    most = _extreme_mm(design, "sill_clear", "slot_depth_mm", 4.0)
    assume(_one_tolerance(design.pad.slot_depth_mm, most))
    assert -0.5 <= most - design.pad.slot_depth_mm <= 1.0 + 0.5 + 1e-6


@_SETTINGS
@given(documents())
def test_the_seat_is_the_shortest_that_keeps_the_lip_off_the_rim(document: dict[str, Any]) -> None:
    """Oracle: the root of the lip gap's spare; the bound keeps 0.5 mm where the check asks 0.2."""
    design = _free_metric_design(document)
    assume(design.ledger["seat_length_mm"].deciding is not None)
    assume("rim" in design.ledger["seat_length_mm"].deciding.reason)  # type: ignore[union-attr]
    least = _extreme_mm(design, "lip_gap", "seat_length_mm", -2.0)
    assume(_one_tolerance(design.pad.seat_length_mm, least))
    assert 0.3 - 0.01 <= design.pad.seat_length_mm - least <= 0.3 + 0.5 + 0.01


@_SETTINGS
@given(documents())
def test_no_cutter_that_is_smaller_would_let_the_seam_in(document: dict[str, Any]) -> None:
    """Oracle: the root of the tight fit of the seam; the bound keeps 0.6 mm where the check asks 0.3."""
    design = _free_metric_design(document)
    least = _extreme_mm(design, "slot_fit_tight", "slot_width_mm", -0.75 * design.pad.slot_width_mm)
    assume(_one_tolerance(design.pad.slot_width_mm, least))
    wanted = least + 0.3
    if design.conditions.slot_is_milled:
        smaller = [d for d in design.conditions.cutters_mm if wanted + 0.01 <= d < design.pad.slot_width_mm]
        assert not smaller
    else:
        assert design.pad.slot_width_mm - wanted == pytest.approx(0.05, abs=0.06)
