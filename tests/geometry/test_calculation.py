"""The calculation sheet: what it opens with, what it lists, why each size is what it is."""

import re
from math import hypot
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from geometry.bound_rules import BOUND_RULES
from geometry.calculation.as_data import sheet_data
from geometry.calculation.book import Book
from geometry.calculation.opening import GOOD_TO_DOUBT, governing, lines_behind, not_covered_by
from geometry.calculation.pictures import clearance_plots_of, lift_plot_of
from geometry.calculation.sheet import CalculationSheet, calculation_sheet
from geometry.calculation.sizes import PAD_SYMBOLS, write_pad
from geometry.calculation.why import PHRASES, phrase_key
from geometry.case import case_of
from geometry.design import Design, design_pad
from geometry.drawing.measures import measures
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from geometry.pad import DIMENSIONS
from geometry.provenance import Mark
from tests.documents import roomy_documents, sample, van
from tests.drawing.pads import facts

_SETTINGS = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))


def sheet_of(document: dict[str, Any]) -> CalculationSheet:
    return calculation_sheet(design_pad(read_measurements(document)))


def designed(document: dict[str, Any]) -> Design | None:
    try:
        return design_pad(read_measurements(document))
    except (BadMeasurementsError, NoPadFitsError):
        return None


def test_every_bound_has_a_phrase_and_no_phrase_is_idle() -> None:
    assert {phrase_key(rule) for rule in BOUND_RULES} == set(PHRASES)


@pytest.mark.parametrize("word", ["Fatigue", "Impact", "jack itself", "Corrosion"])
def test_what_is_not_covered_is_named(word: str) -> None:
    assert any(word in words for words in not_covered_by(design_pad(read_measurements(van()))))


def test_why_the_van_seat_is_what_it_is() -> None:
    """Oracle: by hand, (68 − 0.1)/1.0028 − 0.2 − 0.3 = 67.210, down to 67.2; 67.2 · 0.0028 = 0.19."""
    why = {part.dimension: part.why for part in sheet_of(van()).ledger}
    assert why["seat_diameter_mm"].startswith("67.2 because the cup is 68 ± 0.1, acetal grows 0.19 by 40 °C")
    assert why["seat_diameter_mm"].endswith("at most 67.210, rounded down to 67.2.")


@_SETTINGS
@given(roomy_documents())
def test_every_dimension_says_why_in_short_sentences_that_start_with_its_value(document: dict[str, Any]) -> None:
    design = designed(document)
    for part in calculation_sheet(design).ledger if design else ():
        assert part.why.endswith(".")
        assert max(len(words.split()) for words in re.split(r"[.:] ", part.why)) <= 34, part.why
        if part.entry.value_mm and not part.entry.is_fixed:
            stated = float(part.why.split(" because ")[0].replace("−", "-"))
            assert stated == pytest.approx(part.entry.value_mm, abs=0.005001)


def test_a_fixed_size_says_so_and_what_it_would_be() -> None:
    why = {part.dimension: part.why for part in sheet_of(van(fixed__web_mm=30.0)).ledger}
    assert re.fullmatch(r"30 because you fixed it; let go, it would be [\d.]+\.", why["web_mm"])


def test_the_deciding_bound_is_marked_once_for_each_sized_dimension() -> None:
    for part in sheet_data(sheet_of(van()))["ledger"]:
        assert sum(b["decides"] for b in part["bounds"]) == (1 if part["bounds"] else 0)


def test_what_is_measured_is_told_from_what_is_assumed() -> None:
    inputs = {i.key: i for i in sheet_of(van()).inputs}
    assert inputs["jack.cup_bore_mm"].origin == "measured"
    assert inputs["jack.cup_bore_mm"].uncertainty == "± 0.1 mm"
    assert inputs["seam.bow_mm"].origin == "assumed"
    assert inputs["jack.rim_height_high_mm"].origin == "left out"
    assert inputs["seam.edge_height_mm"].uncertainty == "± 2 mm"


def test_an_own_value_is_named_as_yours() -> None:
    sheet = sheet_of(van(own={"stress_minutes_mpa": 28.0}))
    line = next(x for x in sheet.lines("material") if x.symbol == "sigma_min")
    assert (line.value, line.source and line.source.mark) == (28.0, Mark.OWN)


def test_what_is_from_memory_and_governs_is_listed() -> None:
    """Oracle: the seam's assumed yield is from memory (EN 10130), and it decides the seam's checks of this car."""
    sheet = sheet_of(sample("tool_library_hatchback_stem"))
    found = {(d.words, d.source.mark) for d in sheet.doubtful}
    titles = {c.rule.title for c in governing(sheet.design)}
    assert ("softening with temperature", Mark.MEMORY) in found
    assert all(set(d.checks) <= titles for d in sheet.doubtful)


@_SETTINGS
@given(roomy_documents())
def test_the_list_of_what_to_doubt_is_complete(document: dict[str, Any]) -> None:
    """Oracle: every source on the lines behind a governing check, by its mark."""
    design = designed(document)
    if design is None:
        return
    sheet = calculation_sheet(design)
    listed = {d.source for d in sheet.doubtful}
    for check in governing(design):
        for line in lines_behind(sheet.book, check):
            if line.source and line.source.mark in GOOD_TO_DOUBT:
                assert line.source in listed


def test_everything_that_fails_governs() -> None:
    design = design_pad(read_measurements(sample("repair_cafe_people_carrier")))
    assert {c.code for c in design.failures} <= {c.code for c in governing(design)}
    assert len(governing(design)) >= 3


@pytest.mark.parametrize("extreme", ["hot", "cold"])
def test_worst_case_clearances_lie_outside_the_statistical_ones(extreme: str) -> None:
    """Oracle: a root of a sum of squares is never more than the plain sum."""
    for fit in (c for c in sheet_of(sample("tool_library_hatchback_stem")).clearances if c.extreme == extreme):
        assert fit.least.value <= fit.nominal.value - fit.spread.value + 1e-9
        assert fit.most.value >= fit.nominal.value + fit.spread.value - 1e-9


def test_the_worst_clearances_are_those_of_the_checks() -> None:
    """Oracle: the checks of fit, which compute them on their own."""
    sheet = sheet_of(sample("tool_library_hatchback_stem"))
    values = {c.code: c.value for c in sheet.design.checks}
    fits = {(c.title.split()[0], c.extreme): c for c in sheet.clearances}
    assert fits["Seat", "hot"].least.value == pytest.approx(values["seat_fit_tight"])
    assert fits["Seat", "cold"].most.value == pytest.approx(values["seat_fit_loose"])
    assert fits["Seam", "cold"].least.value == pytest.approx(values["slot_fit_tight"])
    assert fits["Seam", "hot"].most.value == pytest.approx(values["slot_fit_loose"])


def test_the_statistical_spread_of_a_seat() -> None:
    """Oracle: by hand, √(0.1² + (0.3 · 1.0028)²)."""
    seat = next(c for c in sheet_of(van()).clearances if c.extreme == "hot")
    assert seat.spread.value == pytest.approx(hypot(0.1, 0.3 * 1.0028))


def test_a_pad_with_a_stem_shows_the_stem_in_its_hole() -> None:
    titles = {c.title for c in sheet_of(sample("tool_library_hatchback_stem")).clearances}
    assert any(title.startswith("Stem") for title in titles)


def test_the_sheet_lists_each_source_once_with_what_rests_on_it() -> None:
    sources = sheet_of(van()).sources
    assert len({s.source for s in sources}) == len(sources)
    assert all(s.uses for s in sources)


def test_the_factors_say_which_share_of_the_car_is_taken() -> None:
    places = {f.value: f.place for f in sheet_of(van()).factors}
    assert "share of one lifting point" in places["0.60"]
    assert "0.60" not in {f.value for f in sheet_of(sample("mobile_library_van")).factors}


def test_the_plots_belong_to_the_design() -> None:
    """Oracle: the checks of fit give the same clearance at the same end of the temperature range."""
    design = design_pad(read_measurements(sample("mobile_library_van")))
    seat, slot = clearance_plots_of(design)
    values = {c.code: c.value or 0.0 for c in design.checks}
    room_air = next(s for s in seat.chart.series if s.words == "in room air")
    assert room_air.points[-1][1] == pytest.approx(values["seat_fit_tight"])
    dry = next(s for s in slot.chart.series if s.words == "dry")
    assert dry.points[0][1] == pytest.approx(values["slot_fit_tight"])


def test_a_car_without_statics_has_no_curve() -> None:
    assert lift_plot_of(design_pad(read_measurements(van()))) is None


def test_the_data_of_a_sheet_are_plain() -> None:
    """Every number of a line is printed as text, too, with five digits."""
    for lines in sheet_data(sheet_of(van()))["lines"].values():
        for line in lines:
            if line["value"] is not None:
                assert float(line["result"].replace("−", "-")) == pytest.approx(line["value"], rel=5.1e-5, abs=5e-10)


def test_a_pad_has_a_line_for_each_dimension() -> None:
    """Oracle: the pad's own dimensions; those that it has, and no stem, are told, features of other kinds are not."""
    sheet = sheet_of(van())
    told = [line.symbol for line in sheet.lines("pad")]
    pad = sheet.design.pad
    assert told[-1] == "above"
    assert told[:-1] == [
        PAD_SYMBOLS[n] for n in DIMENSIONS if getattr(pad, n) > 0 or n in {"stem_diameter_mm", "stem_length_mm"}
    ]


def test_the_sheet_states_the_geometrical_tolerances_with_their_zones() -> None:
    """Oracle: the frames of the drawing: 0.6, 0.2 and 0.2."""
    lines = {line.symbol: line for line in sheet_of(van()).lines("tolerances")}
    assert [lines[s].value for s in ("tol_sym", "tol_par", "tol_run")] == [0.6, 0.2, 0.2]
    assert all("frame" in lines[s].remark for s in ("tol_sym", "tol_par", "tol_run"))


@pytest.mark.parametrize(
    "name", ["mobile_library_van", "lifeguard_station_pickup_round_plug", "tool_library_hatchback_stem"]
)
@pytest.mark.parametrize("changed", [{}, {"slot_offset_mm": 6.0}])
def test_the_tolerance_of_each_size_is_that_of_the_drawing(name: str, changed: dict[str, float]) -> None:
    """Oracle: the limits of the drawing's dimensions; an inner radius has the table of lengths, an exact place its frame."""
    design = design_pad(read_measurements(sample(name)))
    pad = design.pad.with_(**changed) if design.pad.has_slot else design.pad
    book = Book()
    write_pad(book, case_of(design.conditions, pad), fixed=frozenset())
    told = {line.where: line.value for line in book.parts["tolerances"] if line.symbol == "tol"}
    drawn = measures(pad, facts())
    for dimension in told.keys() & drawn.keys():
        limits = drawn[dimension]
        assert told[dimension] == pytest.approx((limits.upper_mm - limits.lower_mm) / 2), dimension
    assert len(told.keys() & drawn.keys()) > 6


def test_the_order_of_the_checks_is_the_one_that_is_told() -> None:
    """Oracle: checks that can fail come before those that only advise, and these before what was not judged."""
    for name in ("mobile_library_van", "brass_band_van_toothed_saddle", "lifeguard_station_pickup_round_plug"):
        sheet = calculation_sheet(design_pad(read_measurements(sample(name))))
        judged = [part.check for part in sheet.checks if part.check.verdict in {"pass", "advice", "fail"}]
        assert [part.check for part in sheet.checks][: len(judged)] == judged
        advises = [check.rule.is_advice for check in judged]
        assert advises == sorted(advises)
        assert not [part for part in sheet.checks if part.is_governing and part.check.rule.is_advice]
        assert max(c.utilisation for c in judged if c.rule.is_advice) > judged[0].utilisation


def test_a_rule_that_has_no_figure_is_called_one() -> None:
    """Oracle: no empty place in the column of values."""
    sheet = calculation_sheet(design_pad(read_measurements(sample("mobile_library_van"))))
    assert sheet.doubtful
    assert all(d.value for d in sheet.doubtful)


def test_a_round_holes_corner_is_said_to_be_half_its_width() -> None:
    """Oracle: the sample's hole of 40 mm, of which nobody gave a corner radius."""
    sheet = calculation_sheet(design_pad(read_measurements(sample("lifeguard_station_pickup_round_plug"))))
    corner = next(i for i in sheet.inputs if i.key == "pocket.corner_radius_mm")
    assert (corner.words, corner.remark) == ("20 mm", "half the hole's width: the hole is round")


def test_a_jack_without_a_hole_is_told_of_none_that_the_seat_would_carry_around() -> None:
    """Oracle: the van's cup, of which nobody gave a stem hole, and the tool library's, which has one."""
    for name, has_hole in (("mobile_library_van", False), ("tool_library_hatchback_stem", True)):
        sheet = calculation_sheet(design_pad(read_measurements(sample(name))))
        said = [bound.reason for part in sheet.ledger for bound in part.bounds]
        assert any("around the stem hole" in words for words in said) == has_hole
        assert any(words.startswith("Enough flat face stays to carry the load") for words in said)
