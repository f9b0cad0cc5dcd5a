"""The plots: words that never overlap, patterns that can be told apart in grey, and the same in a table."""

import re
import xml.etree.ElementTree as ET
from itertools import combinations
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from geometry.calculation.pictures import clearance_plots_of, lift_plot_of
from geometry.design import Design, design_pad
from geometry.drawing.charts import Laid, lay_out
from geometry.drawing.plots import NARROW, WIDE, Plot, clearance_plot, lift_plot
from geometry.errors import BadMeasurementsError
from geometry.materials import MATERIALS
from geometry.measurements import read_measurements
from geometry.statics import Vehicle, lift_curve
from tests.documents import sample

_SETTINGS = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
CAR = sample("mobile_library_van")


def design() -> Design:
    return design_pad(read_measurements(CAR))


def overlaps(laid: Laid) -> list[tuple[str, str]]:
    """Pairs of words that meet."""
    pairs = combinations((*laid.above, *laid.beside), 2)
    return [(a.text, b.text) for a, b in pairs if a.box.meets(b.box)]


def outside(laid: Laid) -> list[str]:
    """Words that leave the page."""
    return [
        w.text
        for w in (*laid.above, *laid.beside)
        if w.box.left < -0.5 or w.box.right > laid.width + 0.5 or w.box.top < 0 or w.box.bottom > laid.height
    ]


@st.composite
def lifts(draw: st.DrawFn) -> tuple[Any, float, float]:
    """Curves of any car, with a rated load and a wanted lift."""
    track = draw(st.floats(1100, 2000))
    vehicle = Vehicle(
        mass_kg=draw(st.floats(400, 6000)),
        front_share=draw(st.floats(0.25, 0.75)),
        wheelbase_mm=2700.0,
        track_mm=track,
        point_behind_front_axle_mm=draw(st.floats(0, 2700)),
        point_from_centreline_mm=draw(st.floats(0.3, 0.6)) * track,
        cg_offset_mm=draw(st.floats(-100, 100)),
        ride_frequency_hz=draw(st.floats(0.7, 4)),
    )
    wanted = draw(st.floats(5, 800))
    return lift_curve(vehicle, lift_needed_mm=wanted), draw(st.floats(1000, 300_000)), wanted


@pytest.mark.parametrize("is_narrow", [False, True])
@_SETTINGS
@given(found=lifts(), units=st.sampled_from(("mm", "in")))
def test_no_words_of_the_lift_plot_overlap_or_leave_the_page(found: Any, units: Any, is_narrow: bool) -> None:
    curve, rated, wanted = found
    plot = lift_plot(curve, rated_load_n=rated, lift_needed_mm=wanted, units=units, is_narrow=is_narrow)
    laid = lay_out(plot.chart, width=NARROW if is_narrow else WIDE)
    assert overlaps(laid) == []
    assert outside(laid) == []


@_SETTINGS
@given(
    st.sampled_from(sorted(MATERIALS)),
    st.floats(-50, 30),
    st.floats(0, 90),
    st.floats(-1, 3),
    st.sampled_from((NARROW, WIDE)),
)
def test_no_words_of_a_clearance_plot_overlap_or_leave_the_page(
    key: str, low: float, span: float, gap: float, width: float
) -> None:
    plot = clearance_plot(
        "seat",
        clearance_mm=lambda growth: gap - 67 * growth,
        needed_mm=0.1,
        material=MATERIALS[key],
        temperature_low_c=low,
        temperature_high_c=low + span,
    )
    laid = lay_out(plot.chart, width=width)
    assert overlaps(laid) == []
    assert outside(laid) == []


def plots() -> list[Plot]:
    lift = lift_plot_of(design())
    assert lift is not None
    return [lift, *clearance_plots_of(design())]


@pytest.mark.parametrize("plot", plots(), ids=lambda p: p.chart.title)
def test_a_plot_is_a_picture_without_style_whose_title_and_words_name_it(plot: Plot) -> None:
    root = ET.fromstring(plot.svg(prefix="x"))  # noqa: S314 - our own text
    tags = {element.tag.rpartition("}")[2] for element in root.iter()}
    assert not tags & {"style", "script", "image"}
    assert not any("style" in element.attrib for element in root.iter())
    ids = {element.get("id") for element in root.iter()}
    assert set((root.get("aria-labelledby") or "").split()) <= ids


@pytest.mark.parametrize("plot", plots(), ids=lambda p: p.chart.title)
def test_no_two_lines_of_a_plot_look_alike_in_grey(plot: Plot) -> None:
    looks = [(series.dashes, series.width) for series in plot.chart.series]
    assert len(set(looks)) == len(looks)


@pytest.mark.parametrize("plot", plots(), ids=lambda p: p.chart.title)
def test_every_row_of_the_table_has_a_cell_for_each_heading(plot: Plot) -> None:
    assert len(plot.table.rows) >= 9
    assert {len(row) for row in plot.table.rows} == {len(plot.table.head)}


def test_the_lift_plot_names_what_happens_and_reaches_far_enough() -> None:
    plot = lift_plot_of(design())
    assert plot is not None
    words = [marker.words for marker in plot.chart.markers]
    assert [re.sub(r"\d+", "#", w) for w in words] == [
        "front near wheel leaves, # mm",
        "rear near wheel leaves, # mm",
        "wanted lift, # mm",
    ]
    assert plot.chart.x.high == 450
    assert any("19.61 kN" in note for note in plot.chart.notes)


def test_a_rated_load_near_the_force_is_drawn_as_a_line() -> None:
    document = {**CAR, "jack": {**CAR["jack"], "rated_load_kg": 1000}}
    plot = lift_plot_of(design_pad(read_measurements(document)))
    assert plot is not None
    assert any("rated load" in series.words for series in plot.chart.series)
    assert plot.chart.notes == ()


def test_a_wheel_is_drawn_until_it_leaves() -> None:
    """Oracle: the rise at which statics let the wheel go."""
    found = design().conditions.curve
    plot = lift_plot_of(design())
    assert found is not None
    assert plot is not None
    near = next(s for s in plot.chart.series if s.words == "front near wheel")
    assert near.points[-1] == pytest.approx((found.wheels_leave[0].rise_mm, 0.0), abs=1e-6)


def test_in_inches_the_axis_is_in_inches() -> None:
    plot = lift_plot_of(design(), units="in")
    assert plot is not None
    assert plot.chart.x.high == pytest.approx(450 / 25.4)


def test_a_curve_that_cannot_be_asked_for_is_refused() -> None:
    """The plot's description reads the curve at the wanted lift; a lift beyond it is no plot."""
    curve = design().conditions.curve
    assert curve is not None
    with pytest.raises(BadMeasurementsError):
        lift_plot(curve, rated_load_n=1e4, lift_needed_mm=curve.points[-1].rise_mm + 1)
