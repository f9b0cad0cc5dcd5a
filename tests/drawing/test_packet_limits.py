"""Limits on paper: wherever a sheet repeats one of the drawing's it has the same figures, and none lets a worse part pass."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from geometry.calculation.sheet import calculation_sheet
from geometry.drawing import draw
from geometry.drawing.facts import CRITICAL_MARK, Units
from geometry.drawing.figures import limit_words
from geometry.drawing.measures import measures
from geometry.drawing.model import Layer
from geometry.inspection import inspection_sheet
from geometry.making.deciding import deciding_sizes
from geometry.making.own_words import way_of
from geometry.packet import packet_pdf
from geometry.packet.cover import cover_data
from geometry.packet.gauge_outlines import gauges_of
from geometry.packet.making import inspection_data, making_data
from geometry.rules import CHECK_RULES
from tests.drawing.kinds_on_paper import EVERY, design_of, facts_of
from tests.drawing.packets import VAN, pages_of
from tests.drawing.packets import design_of as sample_of

INCH_MM = 25.4
"""The international inch (1959)."""
DUST_MM = 1e-5
UNITS: tuple[Units, ...] = ("mm", "in", "in_fraction", "dual")


def lengths_in(words: str, units: Units) -> tuple[list[float], list[float]]:
    """The figures of a text in mm: those without brackets, and those in them; each as it is read."""
    beside = re.findall(r"\[([\d.]+)\]", words)
    plain = re.findall(r"[\d.]*\d", re.sub(r"\[[^\]]*\]", "", words))
    one = INCH_MM if units in {"in", "in_fraction"} else 1.0
    return [float(x) * one for x in plain], [float(x) * INCH_MM for x in beside]


@pytest.mark.parametrize("units", UNITS)
@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_no_limit_on_cover_or_inspection_sheet_lets_pass_what_the_true_one_stops(
    foot: str, head: str, units: Units
) -> None:
    """Oracle: nominal size and tolerance of each line in mm, and each figure as printed, turned back into mm."""
    design = design_of(foot, head)
    facts = replace(facts_of(design), units=units)
    sized = [c for c in inspection_sheet(design.pad, design.conditions).characteristics if c.nominal_mm is not None]
    drawn = measures(design.pad, facts)
    printed = [
        (c.nominal_mm, c.tolerance_mm, row[3])
        for c, row in zip(sized, inspection_data(design, facts)["rows"], strict=True)
    ]
    cover = cover_data(design, facts, calculation_sheet(design))["sizes"]
    decide = deciding_sizes(way_of(design.conditions.foot), design.conditions.head.kind, design.pad)
    for (name, why), row in zip(decide, cover, strict=True):
        assert row[3] == why
        assert row[2] == " to ".join(limit_words(drawn[name], units))
        line = next(c for c in sized if c.name == name)
        printed.append((line.nominal_mm, line.tolerance_mm, row[2]))
    for nominal, tolerance, words in printed:
        assert nominal is not None
        assert tolerance is not None
        for found in lengths_in(words, units):
            assert len(found) in {0, 2}
            if found:
                assert max(0.0, nominal - tolerance) - DUST_MM <= found[0] <= found[1] <= nominal + tolerance + DUST_MM


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_the_route_card_of_an_inch_shop_repeats_limits_as_the_drawing_has_them(foot: str, head: str) -> None:
    """Oracle: the limits in the drawing's own table."""
    design = design_of(foot, head)
    facts = replace(facts_of(design), units="in")
    drawn = {tuple(limit_words(measure, "in")) for measure in measures(design.pad, facts).values()}
    steps = [step for operation in making_data(design, facts)["operations"] for step in operation["steps"]]
    told = [
        found for step in steps for found in re.findall(r"from ([\d.]+) in to ([\d.]+) in when it is finished", step)
    ]
    assert told
    assert set(told) <= drawn


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_what_an_operation_leaves_is_called_as_on_the_inspection_sheet(foot: str, head: str) -> None:
    """Oracle: the titles of what is measured, and the whole height, which is not."""
    design = design_of(foot, head)
    facts = facts_of(design)
    titles = {row[1].strip("()").lower() for row in inspection_data(design, facts)["rows"]}
    left = [o["leaves"] for o in making_data(design, facts)["operations"] if o["leaves"]]
    found = {re.sub(r" [\d.]+ mm$", "", part).lower() for words in left for part in words.split("; ")}
    assert found
    assert found - {"overall height"} <= titles


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_the_inspection_sheet_of_an_inch_shop_repeats_zones_as_the_frames_have_them(foot: str, head: str) -> None:
    """Oracle: the figures in the drawing's own frames."""
    design = design_of(foot, head)
    facts = replace(facts_of(design), units="in")
    texts = {text.words for text in draw(design.pad, facts).texts if text.layer == Layer.TOLERANCE}
    told = [
        found
        for row in inspection_data(design, facts)["looks"]
        for found in re.findall(r"(?:no more than|give or take) ([\d.]+) in", row[2])
    ]
    assert told
    assert {f"{float(zone):.4f}" for zone in told} <= {
        word.removeprefix("⌀") for words in texts for word in words.split()
    }
    assert all(len(zone) == len("0.0236") for zone in told)


@pytest.mark.parametrize("units", UNITS)
def test_the_gauge_sheet_says_limits_as_the_drawing_has_them_and_names_the_unit(units: Units) -> None:
    """Oracle: the limits in the drawing's own table."""
    design = design_of("cup", "slot")
    facts = replace(facts_of(design), units=units)
    low, high = limit_words(measures(design.pad, facts)["slot_width_mm"], units)
    uses = " ".join(gauge.use for gauge in gauges_of(design, units))
    unit = {"mm": "mm", "in": "in", "in_fraction": "in", "dual": "mm [in]"}[units]
    assert f"the slot's low limit, {low} {unit}, and" in uses
    assert f"the slot's high limit, {high} {unit}." in uses


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_the_inspection_sheet_tells_which_estimates_move_with_a_frame_as_with_a_size(foot: str, head: str) -> None:
    """Oracle: the marks of the drawing, and the titles of the checks."""
    design = design_of(foot, head)
    facts = facts_of(design)
    lines = inspection_sheet(design.pad, design.conditions).characteristics
    data = inspection_data(design, facts)
    told = {int(row[0]): row[5] for row in data["rows"]} | {int(row[0]): row[3] for row in data["looks"]}
    for line in lines:
        titles = [design.conditions.said(CHECK_RULES[code].title) for code in line.checks]
        assert told[line.number].split("; ") == (titles[:2] or [""])
        assert bool(told[line.number]) == (line.name in facts.critical)
    assert CRITICAL_MARK not in " ".join(told.values())


def test_what_moves_an_estimate_says_so_on_the_page(tmp_path: Path) -> None:
    """Oracle: poppler's text of the page, which has the words before each list once for every line that moves any."""
    design, facts = sample_of(VAN)
    (tmp_path / "packet.pdf").write_bytes(packet_pdf(design, facts))
    page = next(page for page in pages_of(tmp_path / "packet.pdf") if page.startswith("Inspection sheet"))
    lines = inspection_sheet(design.pad, design.conditions).characteristics
    assert page.count("(moves:") == sum(bool(line.checks) for line in lines)
    assert any(line.checks for line in lines if line.nominal_mm is None)
