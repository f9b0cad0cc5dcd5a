"""Sizes, tolerances and masses in the units of a sheet: what was converted lets nothing pass that the true figure stops."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.drawing import draw
from geometry.drawing.facts import Units
from geometry.drawing.figures import limit_words
from geometry.drawing.measures import measures
from geometry.drawing.notes import OnLeader, note_words
from geometry.pad import Pad
from tests.drawing.faults import words_of
from tests.drawing.pads import TYPICAL, drawn, facts, laid_out
from tests.drawing.test_practice import all_words, sheet_of
from tests.examples import examples
from tests.geometry.pads import pads_of_any_kind


def test_converted_sizes_are_true_to_a_thousandth_of_an_inch_or_a_hundredth_of_a_millimetre() -> None:
    """4 1/16 in is 103.1875 mm, 46.5 mm is 1.8307 in, 17 mm 0.6693 in; oracle: 25.4 mm are an inch."""
    drawing = laid_out(*sheet_of("allotment_estate_inch_shop", "mm"))
    assert "⌀103.19" in {d.text.words.removeprefix("◆ ") for d in drawing.dimensions}
    assert "Sizes in mm, converted from inches." in all_words(drawing)
    inch = measures(TYPICAL.with_(web_mm=46.5, slot_depth_mm=17.0), facts(units="in"))
    assert (inch["web_mm"].words, inch["slot_depth_mm"].words) == ("1.831", "0.669")
    assert "converted" not in all_words(laid_out(*sheet_of("allotment_estate_inch_shop")))


@examples(60, many=1000)
@given(pad=pads_of_any_kind(), units=st.sampled_from(["mm", "in", "dual"]), job=st.sampled_from(["mm", "in"]))
def test_a_converted_tolerance_lets_nothing_pass_that_the_true_one_stops(pad: Pad, units: Units, job: str) -> None:
    """Oracle: the written size and its plus-and-minus, and the limits in the table, each in true mm."""
    sheet = facts(units=units, job_units=job)
    for measure in measures(pad, sheet).values():
        written = re.findall(r"([\d.]+) ±([\d.]+)", measure.words)
        # A chamfer has the ruling unit alone.
        figures = _UNITS[job] if units == "dual" and measure.words.endswith("45°") else _UNITS[units]
        for (size, off), one in zip(written, figures, strict=False):
            low, high = ((float(size) + way * float(off)) * one for way in (-1, 1))
            assert measure.lower_mm - 1e-6 <= low <= high <= measure.upper_mm + 1e-6
        lower, upper = (w.removesuffix("]").split("[")[-1] for w in limit_words(measure, units))
        least, most = (float(w) * _UNITS[units][-1] for w in (lower, upper))
        assert measure.lower_mm - 1e-3 <= least <= most <= measure.upper_mm + 1e-3


_UNITS: dict[str, tuple[float, ...]] = {"mm": (1.0,), "in": (25.4,), "dual": (1.0, 25.4)}


def _digits(words: str) -> str:
    return "".join(c for c in words.rsplit("×", maxsplit=1)[-1] if c.isdigit() or c == ".")


@examples(60, many=1000)
@given(pad=pads_of_any_kind())
def test_the_parts_of_a_converted_height_add_up_to_it(pad: Pad) -> None:
    """Oracle: the words of the parts; in thousandths of an inch."""
    found = measures(pad, facts(units="in"))
    inch = {name: float(_digits(measure.words)) for name, measure in found.items() if measure.name.endswith(_HEIGHTS)}
    if "top_height_mm" in found:
        parts = ("web_mm", "slot_depth_mm", "plug_height_mm")
        assert inch["top_height_mm"] == pytest.approx(sum(inch.get(name, 0.0) for name in parts), abs=1e-9)


_HEIGHTS = ("web_mm", "slot_depth_mm", "plug_height_mm", "top_height_mm")


def test_the_general_tolerances_of_an_inch_sheet_are_no_wider_than_those_of_the_standard() -> None:
    """0.1 mm is 0.00394 in, 0.3 mm 0.01181 in."""
    words = " ".join(note_words(facts(units="in"), TYPICAL)).replace("\u00a0", " ")
    assert "to 0.236 ±0.0039" in words
    assert "to 4.724 ±0.0118" in words


def test_a_sheet_says_in_which_unit_its_roughness_its_frames_and_its_load_are() -> None:
    told: frozenset[OnLeader] = frozenset({"seat texture"})
    dual = " ".join(note_words(facts(units="dual"), TYPICAL, told=told)).replace("\u00a0", " ")
    assert "Sizes in mm [inches], mm govern; chamfers, frames, notes in mm." in dual
    assert "Ra in µm." in dual
    assert "lbf" in dual
    assert "lbf" not in " ".join(note_words(facts(), TYPICAL))
    assert "inches govern; chamfers, frames, notes in inches" in " ".join(
        note_words(facts(units="dual", job_units="in"), TYPICAL)
    )


def test_a_size_of_the_jobs_own_unit_is_written_as_it_is() -> None:
    assert measures(TYPICAL.with_(web_mm=20.022), facts())["web_mm"].words == "20.022"
    assert measures(TYPICAL.with_(web_mm=20.022), facts(job_units="in"))["web_mm"].words == "20.02"


def test_a_sheet_with_inches_has_the_mass_in_pounds_too_and_says_how_many_are_made() -> None:
    """0.18 kg are 0.40 lb."""
    dual = all_words(draw(TYPICAL, facts(units="dual", mass_kg=0.18)))
    assert "0.180 kg (0.40 lb)" in dual
    assert "lb)" not in all_words(drawn(TYPICAL))
    assert {"Pieces", "1"} <= {text.words for text in words_of(drawn(TYPICAL))}


def test_beside_the_figures_of_a_ruling_inch_the_metric_ones_let_nothing_pass_that_they_stop() -> None:
    """0.015 ±0.0039 in are 0.282 to 0.480 mm; 4 1/16 in is written 4.0625, which is 103.19 mm, and 0.425 in is 10.80 mm."""
    pad, sheet = sheet_of("allotment_estate_inch_shop", "dual")
    shown = measures(pad, sheet)
    assert shown["slot_corner_radius_mm"].words == "◆ 2× R0.38 ±0.09 [0.015 ±0.0039]"
    assert {"⌀103.19 [4.0625]"} <= {measure.words.removeprefix("◆ ") for measure in shown.values()}
    assert not [m.words for m in shown.values() if "10.79 [0.425]" in m.words]
    words = all_words(draw(pad, sheet))
    assert "inches govern; chamfers, frames, notes in inches" in words
    assert "2× [0.040] × 45°" in words
    assert "1.016" not in words
