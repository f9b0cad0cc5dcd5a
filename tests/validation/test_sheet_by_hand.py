"""Every line of the calculation sheet redone from what is printed (own oracle), as an engineer with a calculator would.

The sheet is taken as data, in which every number is text as printed; a line must follow from its own text, and every number
in it must stand printed above it under its own symbol.
"""

import json
import math
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from geometry import formulas
from geometry.calculation.as_data import sheet_data
from geometry.calculation.pictures import lift_plot_of
from geometry.calculation.sheet import calculation_sheet
from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from tests.validation.documents import documents
from tests.validation.printed import agrees, doubt, read_back

SAMPLES = sorted(p for p in (Path(__file__).parents[2] / "sample_data").glob("*.json") if "no_pad" not in p.stem)
_SETTINGS = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
Data = dict[str, Any]


def _designed(document: dict[str, Any]) -> Design | None:
    try:
        return design_pad(read_measurements(document))
    except (BadMeasurementsError, NoPadFitsError):
        return None


def _sample(path: Path) -> Design:
    return design_pad(read_measurements(json.loads(path.read_text(encoding="utf-8"))))


def _worked_lines(data: Data) -> Iterator[tuple[str, str, str]]:
    """Every line with a formula: (where, the numbers put in, the result)."""
    for part, lines in data["lines"].items():
        yield from ((f"{part} {x['symbol']}", x["substituted"], x["result"]) for x in lines if x["substituted"])
    for entry in data["ledger"]:
        yield from ((entry["dimension"], b["substituted"], b["result"]) for b in entry["bounds"])
    for fit in data["clearances"]:
        for name in ("nominal", "least", "most", "spread"):
            yield f"{fit['title']} {fit['extreme']} {name}", fit[name]["substituted"], fit[name]["result"]


def _check_lines(data: Data) -> Iterator[tuple[str, str, str]]:
    """Both sides of every check that was computed; a side without arithmetic is its own result."""
    for check in data["checks"]:
        if check["substituted"]:
            for sign in (" ≤ ", " > ", " ≥ ", " < "):
                if sign in check["substituted"]:
                    for side in check["substituted"].split(sign):
                        text, _, result = side.partition(" = ")
                        yield check["code"], text, result or text


def _redo(data: Data) -> int:
    """Redo every line; how many there were."""
    count = 0
    for where, text, result in (*_worked_lines(data), *_check_lines(data)):
        assert agrees(text, result), (where, text, result)
        count += 1
    return count


@pytest.mark.parametrize(
    ("text", "result", "is_right"),
    [
        ("9000 / (2 · 60)", "75", True),
        ("9000 / (2 · 60)", "75.1", False),
        ("1 + (−0.25)", "0.75", True),
        ("2 · (4)^1.5", "16", True),
        ("√(2)", "1.4142", True),
        ("√(2)", "1.4152", False),
        ("max(0.1, 0.03 + sin(0.1))", "0.12983", True),
    ],
)
def test_a_wrong_digit_would_be_found(text: str, result: str, *, is_right: bool) -> None:
    """Oracle: done by hand."""
    assert agrees(text, result) == is_right


@pytest.mark.parametrize("path", SAMPLES, ids=lambda p: p.stem)
def test_every_line_of_a_sample_sheet_follows_from_its_own_text(path: Path) -> None:
    """Oracle: interval arithmetic on the printed digits. Without a seam a sheet has fewer lines."""
    design = _sample(path)
    assert _redo(sheet_data(calculation_sheet(design))) >= (120 if design.pad.has_slot else 90)


@_SETTINGS
@given(documents())
def test_every_line_of_any_sheet_follows_from_its_own_text(document: dict[str, Any]) -> None:
    """Oracle: as above, over the whole input domain."""
    design = _designed(document)
    if design:
        assert _redo(sheet_data(calculation_sheet(design))) >= 100


def _printed_above(data: Data) -> dict[str, set[str]]:
    """What stands printed under each symbol."""
    found: dict[str, set[str]] = {}
    for lines in data["lines"].values():
        for line in lines:
            found.setdefault(line["symbol"], set()).add(line["result"])
    return found


@_SETTINGS
@given(documents())
def test_every_number_of_a_bound_or_a_check_stands_on_a_line_of_its_own(document: dict[str, Any]) -> None:
    """Oracle: the printed lines, by symbol and digits."""
    design = _designed(document)
    data = sheet_data(calculation_sheet(design)) if design else {"lines": {}, "ledger": [], "checks": []}
    above = _printed_above(data)
    for rule in (*data["ledger"], *data["checks"]):
        for note in rule["symbols"]:
            assert note["number"] in above.get(note["symbol"], set()), (rule, note)


@_SETTINGS
@given(documents())
def test_the_value_of_a_line_is_what_its_formula_gives(document: dict[str, Any]) -> None:
    """Oracle: the formula evaluated with the numbers beside it; the sheet shows the design's own numbers."""
    design = _designed(document)
    for line in calculation_sheet(design).book if design else ():
        if line.formula:
            found = formulas.evaluate(line.formula, line.numbers)
            assert found == pytest.approx(line.value, rel=1e-9, abs=1e-9), line


@pytest.mark.parametrize("path", SAMPLES, ids=lambda p: p.stem)
def test_a_margin_is_the_difference_of_the_two_printed_results(path: Path) -> None:
    """Oracle: subtraction by hand."""
    sheet = calculation_sheet(_sample(path))
    for part in sheet.checks:
        if part.margin is None:
            continue
        (_, _, value), (_, _, limit) = part.sides
        text = f"{limit} − {value}" if part.check.rule.sense == "at_most" else f"{value} − {limit}"
        low, high = read_back(text.replace("− −", "+ "))
        assert low - doubt(part.margin) <= part.margin <= high + doubt(part.margin)


def test_the_rows_of_the_curve_balance_the_car() -> None:
    """Oracle: the sum of forces: what the jack and the wheels carry is the weight, row by row, from the printed table."""
    design = _sample(next(p for p in SAMPLES if p.stem == "mobile_library_van"))
    plot = lift_plot_of(design)
    assert plot is not None
    for row in plot.table.rows:
        low, high = read_back(" + ".join(row[1:6]))
        assert low - 1 <= 1600 * 9.80665 <= high + 1, row


def test_the_wheel_loads_of_the_curve_follow_from_rise_roll_and_pitch() -> None:
    """Oracle: N = max(0, N₀ (1 − z/δ)) with z from the printed angles, the standing loads and δ printed on the sheet."""
    design = _sample(next(p for p in SAMPLES if p.stem == "mobile_library_van"))
    lines = {line["symbol"]: line["value"] for line in sheet_data(calculation_sheet(design))["lines"]["load"]}
    plot = lift_plot_of(design)
    assert plot is not None
    car = design.measurements.car
    behind, out = car.point_behind_front_axle_mm or 0.0, car.point_from_centreline_mm or 0.0
    places = [(x - behind, side * 760.0 - out) for x in (0.0, 2750.0) for side in (1, -1)]
    for row in plot.table.rows:
        rise, _, *rest = (read_back(cell)[0] for cell in row)
        loads, (roll, pitch) = rest[:4], rest[4:]
        for (x, y), load, symbol in zip(places, loads, ("N_1", "N_2", "N_3", "N_4"), strict=True):
            z = rise - x * math.radians(pitch) + y * math.radians(roll)
            assert load == pytest.approx(max(0.0, lines[symbol] * (1 - z / lines["delta_s"])), abs=2.0), row


def test_moments_allow_the_force_that_the_curve_reaches() -> None:
    """Oracle: the bound of moments, which knows no springs; the plateau lies on it (two wheels are off the ground)."""
    design = _sample(next(p for p in SAMPLES if p.stem == "mobile_library_van"))
    lines = {line["symbol"]: line["value"] for line in sheet_data(calculation_sheet(design))["lines"]["load"]}
    assert lines["F"] == pytest.approx(lines["F_M"], rel=1e-6)
