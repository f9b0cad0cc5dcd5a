"""The lifting card, by itself, read back by poppler: one page, with every caution and the steps of a first use."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from geometry.design import design_pad
from geometry.errors import NoPadFitsError
from geometry.packet import card_pdf
from geometry.packet.card import card_data
from geometry.sheet_facts import sheet_facts
from tests.documents import ordinary_documents, sample, understood
from tests.drawing.packets import DAY, FITTING, NOT_FIT_PAD, VAN, card_pages, design_of, run, squeezed


def test_what_somebody_typed_is_never_read_as_source(tmp_path: Path) -> None:
    typed = '#pagebreak() $x^2$ *b* _i_ \\ " <x> `c`'
    design, facts = design_of(VAN)
    path = tmp_path / "card.pdf"
    path.write_bytes(card_pdf(design, replace(facts, title=typed)))
    told = run("pdfinfo", path)
    assert re.search(r"Pages:\s+1\b", told)
    assert typed in told


@given(ordinary_documents())
@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_a_lifting_card_is_always_one_page_with_every_caution(tmp_path: Path, document: dict[str, object]) -> None:
    try:
        design = design_pad(understood(document))
    except NoPadFitsError:
        return
    pages = card_pages(tmp_path, design, sheet_facts(design, issued=DAY))
    assert len(pages) == 1
    for caution in design.cautions:
        assert (squeezed(caution.text) in pages[0]) == (design.fit_to_make or not caution.is_for_lifting)


def test_the_card_with_the_most_to_say_is_one_page(tmp_path: Path) -> None:
    """Stated load, a long hold, a jack that is stuck, a hole too small for a stem: every caution of its own at once."""
    document = sample(VAN)
    document["car"] = {"load_source": "stated", "load_kg": 300, "gross_mass_kg": 1600}
    document["service"] = {"hold": "overnight", "ground": "stuck"}
    document["jack"]["stem_hole_diameter_mm"] = 5
    document["make"] = {"material": "pa66"}
    design = design_pad(understood(document))
    assert len(design.cautions) >= 15
    assert len(card_pages(tmp_path, design, sheet_facts(design, issued=DAY))) == 1


@pytest.mark.parametrize("name", FITTING)
def test_the_cards_heights_follow_from_the_stack(name: str) -> None:
    """Oracle: the stack from the ground: rim, less the cup's depth, plus the web, is the seam's edge."""
    design, facts = design_of(name)
    heights = dict(map(tuple, card_data(design, replace(facts, units="mm"))["heights"]))
    c = design.conditions
    touch = c.seam.edge_height_mm + c.foot.depth_mm - design.pad.web_mm
    assert heights["Cup's rim as the seam meets the slot's floor"] == f"{touch:.0f} mm"
    needed = next(value for words, value in heights.items() if words.startswith("Cup's rim needed"))
    assert needed == f"{touch + c.lift_needed_mm:.0f} mm"


def test_the_card_of_a_pad_that_is_not_fit_has_no_steps_for_lifting(tmp_path: Path) -> None:
    page = card_pages(tmp_path, *design_of(NOT_FIT_PAD))[0]
    assert "Do not lift with this pad" in page
    for words in (
        "Raise until",
        "First use",
        "Lift in stages",
        "Set support stands",
        "Heights above",
        "kN",
        "Discard when",
    ):
        assert words not in page
    assert "Change what fails first" in page


@pytest.mark.parametrize("name", FITTING)
def test_the_card_says_how_the_first_use_goes(tmp_path: Path, name: str) -> None:
    page = card_pages(tmp_path, *design_of(name))[0]
    for words in ("First use", "Raise until the tyre just unloads", "Lower.", "then lift", "write it here"):
        assert words in page


def test_what_the_card_takes_from_an_answer_that_nobody_gave_says_so() -> None:
    """The van's owner named no height to lift by; the load rests on the car's usual ride frequency too."""
    design, facts = design_of(VAN)
    card = card_data(design, facts)
    assert [label for label, _ in card["heights"] if "(assumed)" in label] == [
        "Cup's rim needed to lift by 150 mm (assumed)"
    ]
    assert any("150 mm (assumed)" in words for _, words in card["steps"])
    assert card["load"][0][0].endswith("part of it assumed")
    assert card["assumed"]


def test_what_the_card_takes_from_answers_that_were_given_is_not_called_assumed() -> None:
    document = sample(VAN)
    document["car"] |= {"lift_needed_mm": 140, "cg_offset_mm": 50, "ride_frequency_hz": 1.5}
    design = design_pad(understood(document))
    card = card_data(design, sheet_facts(design, issued=DAY))
    assert card["assumed"] == ""
    assert "assumed" not in str((card["heights"], card["steps"], card["load"]))


@pytest.mark.parametrize("title", ["車 🚗", "שלום עולם", "مرحبا", "W" * 80, "a\u202eb\u200bc", "Lifting pad"])
def test_any_title_can_be_printed(tmp_path: Path, title: str) -> None:
    design, facts = design_of(VAN)
    assert len(card_pages(tmp_path, design, replace(facts, title=title))) == 1
