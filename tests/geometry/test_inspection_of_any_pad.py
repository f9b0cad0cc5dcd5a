"""Whatever a pad has is measured once, with the drawing's limits and an instrument, read, and judged."""

import pytest
from hypothesis import given

from geometry.as_made import judge_sizes
from geometry.checks import judge
from geometry.document.as_made import READABLE, ReadingSet
from geometry.drawing.measures import measures
from geometry.geometrical import tolerances_of
from geometry.inspection import Characteristic, characteristics, checks_moved_by
from geometry.making.how_measured import height_parts
from geometry.pad import Pad
from geometry.readings import Judged
from tests.drawing.pads import facts
from tests.examples import examples
from tests.geometry.pads import EVERY_KIND, pads_of_any_kind
from tests.geometry.shops import job

CONDITIONS = job()[1]
JUST_MM = 0.001
"""Beyond a limit by so much is beyond it."""


def measured(pad: Pad) -> dict[str, Characteristic]:
    """The lines with limits; a line that stands twice is a mistake."""
    lines = [line for line in characteristics(pad) if line.nominal_mm is not None]
    found = {line.name: line for line in lines}
    assert len(found) == len(lines)
    return found


def read(pad: Pad, **sizes: float) -> dict[str, Judged]:
    """Some sizes read with a micrometer at 20 °C and judged; what is not given stays unread."""
    given_sizes = {name: (size,) for name, size in sizes.items()}
    taken = ReadingSet.model_validate({"instrument": "micrometer", "sure": "yes", **given_sizes})
    return judge_sizes(pad, CONDITIONS, (taken,))


@examples(60, many=2000)
@given(pads_of_any_kind())
def test_what_the_drawing_dimensions_is_measured_once_between_the_drawings_limits(pad: Pad) -> None:
    """Oracle: the drawing's own dimensions; what follows from others may be left out but for the height."""
    drawn = measures(pad, facts())
    lines = measured(pad)
    wanted = {name for name, m in drawn.items() if not m.auxiliary} - {"relief_corner_radius_mm"}
    wanted |= {"cross_slot_width_mm"} if pad.is_crossed else set()
    assert set(lines) - {"top_height_mm"} == wanted
    assert ("top_height_mm" in lines) == ("top_height_mm" in drawn)
    for name, line in lines.items():
        # Two slots of one width have one size on the drawing.
        limits = drawn[name if name in drawn else "slot_width_mm"]
        assert line.upper_mm == pytest.approx(limits.upper_mm)
        assert line.lower_mm == pytest.approx(max(0.0, limits.lower_mm))


@examples(50, many=1000)
@given(pads_of_any_kind())
def test_every_line_says_with_what_and_how_in_words_for_this_pad(pad: Pad) -> None:
    """Oracle: the pad's own features: no line speaks of a slot, a stem, a plug or a skirt that is not there."""
    lines = characteristics(pad)
    assert [line.number for line in lines] == list(range(1, len(lines) + 1))
    words = " ".join(f"{line.title} {line.how.shown()}" for line in lines).lower()
    assert all(line.instrument.name and line.how.shown().endswith(".") for line in lines)
    for word, is_there in (("slot", pad.has_slot), ("plug", pad.has_plug), ("skirt", pad.has_skirt)):
        assert (word in words) == is_there
    assert ("cross-hole" in words) == pad.has_cross_hole


@examples(50, many=1000)
@given(pads_of_any_kind())
def test_an_instrument_that_is_too_coarse_for_a_zone_says_so(pad: Pad) -> None:
    """Oracle: a fifth of the zone between the limits."""
    for line in measured(pad).values():
        zone = 2 * (line.tolerance_mm or 0.0)
        assert line.is_fine_enough == (line.instrument.uncertainty_mm <= zone / 5)


@examples(60, many=2000)
@given(pads_of_any_kind())
def test_a_part_that_reads_as_drawn_is_as_drawn_and_what_is_not_read_stays_open(pad: Pad) -> None:
    """Oracle: the pad's own sizes, each read and then each left out."""
    sizes = {name: getattr(pad, name) for name in measured(pad)}
    found = read(pad, **sizes)
    assert set(found) == set(sizes) <= set(READABLE)
    assert {j.verdict for j in found.values()} == {"accept"}
    unread = read(pad)
    assert {j.verdict for j in unread.values()} == {"open"}
    for name, line in measured(pad).items():
        assert (unread[name].lower_mm, unread[name].upper_mm) == pytest.approx((line.lower_mm, line.upper_mm))


@examples(60, many=2000)
@given(pads_of_any_kind())
def test_a_reading_beyond_its_limit_is_never_as_drawn(pad: Pad) -> None:
    """Oracle: the drawing's limits."""
    drawn = measures(pad, facts())
    for name in measured(pad):
        limits = drawn.get(name, drawn["slot_width_mm"]) if pad.has_slot else drawn[name]
        assert read(pad, **{name: limits.upper_mm + JUST_MM})[name].verdict in {"doubtful", "reject"}
        if limits.lower_mm > JUST_MM:
            assert read(pad, **{name: limits.lower_mm - JUST_MM})[name].verdict in {"doubtful", "reject"}
        assert read(pad, **{name: limits.upper_mm + 1})[name].verdict == "reject"


@examples(50, many=1000)
@given(pads_of_any_kind())
def test_the_height_is_its_parts(pad: Pad) -> None:
    """Oracle: the pad's own height above its seat face."""
    assert sum(getattr(pad, name) for name in height_parts(pad)) == pytest.approx(pad.top_height_mm)


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_no_two_lines_of_a_pad_have_one_title(kind: str) -> None:
    titles = [line.title for line in characteristics(EVERY_KIND[kind])]
    assert len(titles) == len(set(titles))


@examples(50, many=1000)
@given(pads_of_any_kind())
def test_what_is_held_to_an_indicator_says_how_far_it_may_be_off(pad: Pad) -> None:
    """Oracle: the geometrical tolerances of the drawing; of a print no roughness is asked."""
    held = {
        line.name: line.how.shown()
        for line in characteristics(pad)
        if line.name.endswith("_mm") and line.nominal_mm is None
    }
    assert set(held) == {tolerance.name for tolerance in tolerances_of(pad)}
    for tolerance in tolerances_of(pad):
        assert f"{tolerance.value_mm:g} mm" in held[tolerance.name]
    assert "roughness" not in {line.name for line in characteristics(pad, is_printed=True)}


def test_no_estimate_of_the_making_is_said_to_depend_on_a_finished_size() -> None:
    """Oracle: a narrow slot asks more of its cutter, which no longer matters once it is cut."""
    pad, conditions, _ = job()
    assert "cutter_reach" in {check.code for check in judge(conditions, pad)}
    moved = checks_moved_by("slot_width_mm", 1.0, pad, conditions)
    assert moved
    assert not set(moved) & {"cutter_reach", "cutter", "stock"}


def test_what_the_drawing_asks_for_beside_sizes_has_a_line_too() -> None:
    """Oracle: the drawing's notes: roots of stem and plug, both floors of a crossing, a pocket's corners, and the mark."""
    lines = {name: {line.name: line.title for line in characteristics(pad)} for name, pad in EVERY_KIND.items()}
    for name, pad in EVERY_KIND.items():
        assert ("stem_root" in lines[name]) == pad.has_stem
        assert ("plug_root" in lines[name]) == pad.has_plug
        assert ("pocket" in lines[name]) == pad.has_relief
        assert ("tag" in lines[name]["mark"]) != pad.has_side_to_mark
    crossed = lines["crossed slots"]
    assert crossed["slot_symmetry_mm"].startswith("Each slot")
    assert "both slots" in crossed["slot_floor_parallelism_mm"]
