"""The part as made: readings judged, every check run again on them, and what may be done with the part."""

import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.as_made import AsMade, judge_as_made
from geometry.checks import judge
from geometry.document.as_made import READABLE, ReadingSet
from geometry.errors import BadMeasurementsError
from geometry.measurements import read_measurements
from geometry.readings import size_at_20_c, slip_in, verdict_of
from geometry.spread import Spread
from tests.documents import van
from tests.geometry.shops import job

PAD, CONDITIONS, _ = job()
EXACT = {name: (getattr(PAD, name),) for name in READABLE if getattr(PAD, name) > 0}


def made(*sets: dict[str, Any], **readings: Any) -> AsMade:
    """The outcome of an exact part with some readings changed, and of later sets."""
    first = EXACT | {"hours_since_cutting": 48, **readings}
    return judge_as_made(PAD, CONDITIONS, tuple(ReadingSet.model_validate(s) for s in (first, *sets)))


def verdict(found: AsMade, name: str) -> str:
    return next(j.verdict for j in found.judged if j.dimension == name)


def words(found: AsMade) -> str:
    return " ".join(s.shown() for s in found.reasons)


def test_an_exact_part_is_as_drawn() -> None:
    """Oracle: every reading is the nominal size."""
    found = made()
    assert found.outcome == "as_drawn"
    assert not found.reasons
    assert found.pad == PAD


def test_a_part_that_was_not_read_stays_open() -> None:
    """Oracle: nothing is known of it, so that it is neither good nor bad."""
    found = judge_as_made(PAD, CONDITIONS, (ReadingSet(),))
    assert found.outcome == "open"
    assert set(found.unread) == set(EXACT)
    assert not found.must_not_be_used


def test_half_filled_readings_stay_open_and_name_what_is_missing() -> None:
    """Oracle: only the seat was read."""
    found = judge_as_made(PAD, CONDITIONS, (ReadingSet(seat_diameter_mm=(PAD.seat_diameter_mm,)),))
    assert found.outcome == "open"
    assert verdict(found, "seat_diameter_mm") == "accept"
    assert "slot width" in words(found)


def test_a_seat_too_big_for_the_cup_is_not_to_be_used() -> None:
    """Oracle: 68.3 mm does not go into a cup of 68 mm."""
    found = made(seat_diameter_mm=[68.3])
    assert found.outcome == "do_not_use"
    assert "Seat drops into the cup" in words(found)


def test_why_a_part_must_not_be_used_is_told_in_inches_too() -> None:
    """Oracle: a seat read 1.2 mm larger than drawn: 1 in is 25.4 mm; of the sentence in inches no length is left in mm."""
    found = made(seat_diameter_mm=(PAD.seat_diameter_mm + 1.2,))
    told = next(s for s in found.reasons if s.shown().startswith("Seat drops into the cup: "))
    too_big = re.search(r"the seat is ([\d.]+) mm too big", told.shown())
    inches = re.search(r"the seat is ([\d.]+) in too big", told.shown("in"))
    assert too_big
    assert inches
    assert float(inches[1]) * 25.4 == pytest.approx(float(too_big[1]), abs=0.005 + 0.0005 * 25.4)
    assert " mm" not in told.shown("in")


def test_a_body_too_big_is_usable_with_its_margins() -> None:
    """Oracle: no check minds a body 0.4 mm larger than drawn; that no bar has room for it no longer matters."""
    found = made(body_diameter_mm=[PAD.body_diameter_mm + 0.4])
    assert found.outcome == "usable"
    assert verdict(found, "body_diameter_mm") == "reject"
    assert found.changed
    assert "stock" not in {c.code for c in found.checks}


def test_checks_use_the_reading_and_its_uncertainty_and_not_the_tolerance() -> None:
    """Oracle: the same check by hand: bore − u − (reading + spread)(1 + growth)."""
    found = made(seat_diameter_mm=[67.0], uncertainty_mm=0.02)
    seat = next(j for j in found.judged if j.dimension == "seat_diameter_mm")
    check = next(c for c in found.checks if c.code == "seat_fit_tight")
    by_hand = 68 - CONDITIONS.u - (67.0 + seat.spread_mm) * (1 + CONDITIONS.g_hot)
    assert check.value == pytest.approx(by_hand, abs=1e-9)
    assert 0.02 <= seat.spread_mm < 0.03


def test_readings_at_30_degrees_are_brought_to_20() -> None:
    """Oracle: acetal, 115e-6 per kelvin: 67.2 (1 + 0.00115) reads as 67.2773 at 30 °C."""
    found = made(seat_diameter_mm=[67.2 * 1.00115], part_temperature_c=30)
    seat = next(j for j in found.judged if j.dimension == "seat_diameter_mm")
    assert seat.size_mm == pytest.approx(67.2, abs=1e-9)
    assert any("30 °C" in note.shown() for note in found.notes)


@settings(deadline=None)
@given(st.floats(1, 200), st.floats(-20, 60))
def test_a_size_read_warm_goes_back_to_what_it_was(size: float, temperature: float) -> None:
    """Oracle: the growth of the material table and its inverse."""
    grown = size * (1 + 115e-6 * (temperature - 20))
    back = size_at_20_c(reading_mm=grown, part_temperature_c=temperature, material=CONDITIONS.material)
    assert back == pytest.approx(size, rel=1e-12)


@settings(deadline=None)
@given(
    x=st.floats(5, 15), spread=st.floats(0, 1), u=st.floats(0, 0.5), low=st.floats(8, 10), zone=st.floats(0.1, 3)
)  # fmt: skip
def test_what_is_accepted_is_inside_and_what_is_rejected_is_outside(
    x: float, spread: float, u: float, low: float, zone: float
) -> None:
    """Oracle: whatever the true size within ± u of the readings, an accepted part is inside and a rejected one is not."""
    found = verdict_of(low_mm=x, high_mm=x + spread, uncertainty_mm=u, lower_mm=low, upper_mm=low + zone)
    if found == "accept":
        assert x - u >= low
        assert x + spread + u <= low + zone
    if found == "reject":
        assert x + u < low or x + spread - u > low + zone


def test_a_reading_in_inches_is_asked_about_and_left_out() -> None:
    """Oracle: 67.2 mm is 2.646 in."""
    found = made(seat_diameter_mm=[2.646])
    assert found.outcome == "open"
    assert verdict(found, "seat_diameter_mm") == "asked"
    assert "inches" in words(found)
    assert found.pad.seat_diameter_mm == PAD.seat_diameter_mm


@pytest.mark.parametrize(
    ("reading", "word"), [(72.5, "slip"), (61.9, "slip"), (67.2 * 25.4, "inches"), (2.65, "inches")]
)
def test_slips_are_asked_about(reading: float, word: str) -> None:
    """Oracle: more than 5 mm off, or off by a factor 25.4."""
    question = slip_in(reading, 67.2)
    assert question is not None
    assert word in question.shown()


@pytest.mark.parametrize("reading", [67.2, 62.3, 72.1])
def test_an_ordinary_fault_is_no_slip(reading: float) -> None:
    """Oracle: less than 5 mm off."""
    assert slip_in(reading, 67.2) is None


def test_a_slip_that_is_confirmed_is_judged() -> None:
    """Oracle: a seat of 60 mm is 7 mm off and rattles."""
    assert made(seat_diameter_mm=[60.0]).outcome == "open"
    assert verdict(made(seat_diameter_mm=[60.0], sure="yes"), "seat_diameter_mm") == "reject"


def test_readings_that_make_no_body_are_answered_in_words() -> None:
    """Oracle: a seat of 3 mm cannot have a corner of 6 mm; nothing is raised."""
    found = made(seat_diameter_mm=[3.0], sure="yes")
    assert found.outcome == "do_not_use"
    assert "does not fit" in words(found)


def test_readings_that_contradict_each_other_are_asked_about() -> None:
    """Oracle: web and slot depth make the height."""
    found = made(top_height_mm=[PAD.top_height_mm - 0.8])
    assert found.outcome == "open"
    assert "misread" in words(found)


def test_height_and_slot_depth_stand_in_for_the_web() -> None:
    """Oracle: 19.6 = 35.6 − 16.0, known to the sum of both uncertainties."""
    readings = {name: value for name, value in EXACT.items() if name != "web_mm"} | {"top_height_mm": (35.6,)}
    found = judge_as_made(PAD, CONDITIONS, (ReadingSet.model_validate(readings),))
    assert found.pad.web_mm == pytest.approx(19.6, abs=1e-9)
    assert found.outcome == "as_drawn"
    assert found.spread.known["web_mm"] > 0.1


def test_a_later_set_counts_and_the_movement_between_is_said() -> None:
    """Oracle: the seat went from 67.7 over 67.6 to the middle of 67.2 and 67.4."""
    between, last = ({"seat_diameter_mm": read, "hours_since_cutting": 40} for read in ([67.6], [67.2, 67.4]))
    found = made(between, last, seat_diameter_mm=[67.7])
    assert verdict(found, "seat_diameter_mm") == "accept"
    assert "Seat diameter moved by −0.4 mm from the first set to the last." in [n.shown() for n in found.notes]


def test_several_readings_widen_the_spread() -> None:
    """Oracle: half of 0.2 mm more than one reading has."""
    alone, apart = made(slot_width_mm=[5.0]), made(slot_width_mm=[4.9, 5.1])
    gained = apart.spread.known["slot_width_mm"] - alone.spread.known["slot_width_mm"]
    assert gained == pytest.approx(0.1, abs=1e-9)


def test_a_part_read_soon_after_cutting_is_to_be_read_again() -> None:
    """Oracle: plastics move for a day (common practice, no source)."""
    assert any("2 hours" in note.shown() for note in made(hours_since_cutting=2).notes)


@settings(deadline=None)
@given(st.lists(st.sampled_from(sorted(EXACT)), unique=True), st.integers(0, 10**6))
def test_a_part_as_measured_is_judged_like_a_pad_of_its_sizes(names: list[str], seed: int) -> None:
    """Oracle: judging the measured pad with the measured spread directly."""
    changes = {name: [EXACT[name][0] + ((seed >> i) % 7 - 3) * 0.05] for i, name in enumerate(names)}
    found = made(**changes)
    direct = {c.code: c.value for c in judge(CONDITIONS, found.pad, Spread(found.spread.known))}
    assert all(direct[c.code] == c.value for c in found.checks)


@settings(deadline=None)
@given(
    st.dictionaries(
        st.sampled_from(READABLE),
        st.lists(st.floats(0.01, 500).map(lambda x: round(x, 3)), min_size=1, max_size=3),
        max_size=6,
    )
)
def test_readings_go_through_the_document_and_back_unchanged(readings: dict[str, list[float]]) -> None:
    """Oracle: the document read, written as JSON, and read again."""
    first = read_measurements(van(as_made=readings, as_made_2={"instrument": "micrometer"}))
    again = read_measurements(first.model_dump(mode="json", exclude_none=True))
    assert again == first
    assert {name: list(read) for name, read in again.as_made.given().items()} == readings


@pytest.mark.parametrize("reading", [0, -1, 1e9])
def test_a_reading_that_cannot_be_is_refused_beside_its_field(reading: float) -> None:
    """Oracle: the problem names the field."""
    with pytest.raises(BadMeasurementsError) as caught:
        read_measurements(van(as_made={"web_mm": [reading]}))
    assert caught.value.problems[0].field == "as_made.web_mm"
