"""Sentences of checks on paper: in the reader's inches, decimal or in fractions, and in mm where a sheet shows both."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation.sheet import calculation_sheet
from geometry.design import Design, design_pad
from geometry.errors import SeamrestError
from geometry.measurements import read_measurements
from geometry.packet.calculation import calculation_data
from geometry.packet.card import card_data
from geometry.packet.cover import cover_data
from geometry.packet.words import check_words
from geometry.rules import Check
from tests.documents import SAMPLES, designed, sample
from tests.drawing.kinds_on_paper import EVERY, facts_of, texts_in
from tests.examples import examples
from tests.geometry.test_every_foot_and_head import documents_of

MM_PER_INCH = 25.4
"""The international inch, exactly (International yard and pound agreement of 1959)."""
IN_MM = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?) mm(?![²/\w])")
INCHES = r"((?:\d+ )?\d+/\d+|\d+(?:\.\d+)?) in"
FAILING = sample("repair_cafe_people_carrier")


def half_a_step(figures: str) -> float:
    """Half of the last place of a number as it is written; of a fraction, what one may be off to be written so."""
    return 0.0005 if "/" in figures else 0.5 * 10.0 ** -len(figures.partition(".")[2])


def value_of(figures: str) -> float:
    return float(sum(Fraction(part) for part in figures.split()))


def off(check: Check, units: Any) -> Iterator[str]:
    """Lengths of a sentence that do not mean the same in inches as in mm, and what is left in mm."""
    around, metric = IN_MM.split(check.words)[::2], IN_MM.findall(check.words)
    inch = check_words(check, units)
    found = re.fullmatch(INCHES.join(map(re.escape, around)), inch)
    if found is None:
        yield f"{check.code}: {inch}"
        return
    for mm, inches in zip(metric, found.groups(), strict=True):
        if abs(value_of(inches) * MM_PER_INCH - float(mm)) > half_a_step(mm) + half_a_step(inches) * MM_PER_INCH + 1e-9:
            yield f"{check.code}: {mm} mm is not {inches} in"


def all_off(designs: Iterable[Design], units: Any) -> list[str]:
    return [words for design in designs for check in design.checks for words in off(check, units)]


@pytest.mark.parametrize("units", ["in", "in_fraction"])
def test_every_length_in_the_samples_sentences_means_the_same_in_inches(units: str) -> None:
    """Oracle: the sentence in mm, number by number, by 25.4 mm to the inch; its own rounding and that of the inches allowed."""
    designs = []
    for path in sorted(SAMPLES.glob("*.json")):
        try:
            designs.append(designed(sample(path.stem)))
        except SeamrestError:
            continue
    assert len(designs) > 5
    assert all_off(designs, units) == []


@pytest.mark.parametrize(("foot", "head"), EVERY)
@examples(6, many=300)
@given(data=st.data())
def test_every_length_of_any_sentence_means_the_same_in_inches(foot: str, head: str, data: st.DataObject) -> None:
    """Oracle: the same, for pads of every kind, most of which fail or pass by other sentences than the samples."""
    try:
        design = design_pad(read_measurements(data.draw(documents_of(foot, head))))
    except SeamrestError:
        return
    assert all_off([design], "in") == []
    assert all_off([design], "in_fraction") == []


def test_a_size_that_is_a_64th_is_told_as_the_drawing_has_it() -> None:
    """Oracle: a body of 3 3/4 in, 95.25 mm, told in the sentence of the bar it comes out of."""
    design = designed(sample("mobile_library_van") | {"fixed": {"body_diameter_mm": 95.25}, "make": {"step": "inch"}})
    words = {c.code: check_words(c, "in_fraction") for c in design.checks}["arm_clear"]
    assert "The body of 3 3/4 in stands over the rim of 3.307 in" in words


@pytest.mark.parametrize("units", ["mm", "dual"])
def test_where_the_sheet_has_mm_the_sentences_have_them_too(units: Any) -> None:
    for check in designed(FAILING).checks:
        assert check_words(check, units) == check.words


def test_cover_card_and_calculation_of_an_inch_reader_tell_their_checks_in_inches() -> None:
    """Oracle: the sentence of each failing check in inches; the one in mm stands on none of the three."""
    design = designed(FAILING)
    facts, sheet = replace(facts_of(design), units="in"), calculation_sheet(design)
    for data in (cover_data(design, facts, sheet), card_data(design, facts), calculation_data(sheet, "in")["checks"]):
        texts = "\n".join(texts_in(data))
        failing = [check for check in design.failures if IN_MM.search(check.words)]
        assert failing
        for check in failing:
            assert check_words(check, "in") in texts
            assert check.words not in texts


def test_no_mark_of_a_length_is_ever_seen() -> None:
    """Oracle: the private use area of Unicode, U+E000 to U+F8FF, of which no text of ours holds anything."""
    design = designed(FAILING)
    seen = [*texts_in(design.to_dict()), *(check_words(c, u) for c in design.checks for u in ("mm", "in", "dual"))]
    assert not [text for text in seen if re.search("[\ue000-\uf8ff]", text)]


def test_an_offset_finer_than_anybody_measures_is_told_as_none_in_either_unit() -> None:
    document = sample("mobile_library_van")
    document["seam"] = document["seam"] | {"offset_mm": 5.9e-260}
    (check,) = (check for check in designed(document).checks if check.code == "slot_offset_fit")
    assert check.words == "The slot is 0 mm off the pad's middle; the seam passes 0 mm beside the jack's axis."
    assert list(off(check, "in")) == []
