"""The papers and data of every way to stand with every way to take the car: nothing raises, nothing speaks of another kind."""

import re
import subprocess
from pathlib import Path

import pytest

from geometry.calculation.sheet import calculation_sheet
from geometry.packet import card_pdf, gauge_pdf, packet_pdf
from geometry.packet.card import card_data
from tests.drawing.kinds_on_paper import EVERY, PAPERS, design_of, document_of, drawn, facts_of, foreign_words, texts_in

FARTHEST = (("post", "plug"), ("edge", "cushion"), ("teeth", "slot"))
"""Three that share neither foot nor head."""
_SIGNALS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
_ACROSS = {"cup_bore_mm", "between_teeth_mm", "over_teeth_mm", "plate_diameter_mm", "ring_bore_mm", "post_bore_mm"}
_DEPTHS = {"cup_depth_mm", "tooth_height_mm", "ring_height_mm"}
_TORN_OFF = ("Lifting card", "Record in service", "Calculation sheet")
"""Sheets of the packet that keep to one page, and what follows them."""


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_no_paper_speaks_of_a_part_that_this_jack_or_car_has_not(foot: str, head: str) -> None:
    """Oracle: the list of words and of the kinds that they belong to; common practice, no source."""
    design = design_of(foot, head)
    facts, sheet = facts_of(design), calculation_sheet(design)
    said = [
        (name, words, text)
        for name, make in PAPERS.items()
        for text in texts_in(make(design, facts, sheet))
        if (words := foreign_words(foot, head, text))
    ]
    assert said == []


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_the_card_says_which_jack_and_car_it_is_for_and_how_high_they_stand(foot: str, head: str) -> None:
    """Oracle: the document's own figures; the pad's web between the car and what it stands on."""
    design, document = design_of(foot, head), document_of(foot, head)
    card, pad = card_data(design, facts_of(design)), design.pad
    rows, where = dict(card["heights"]), dict(card["where"])
    jack, (car,) = document["jack"], (document[group] for group in ("seam", "rail", "pocket") if group in document)
    assert any(re.search(rf"\b{value:g} mm", where["Jack"]) for key, value in jack.items() if key in _ACROSS)
    assert "2000 kg" in where["Jack"]
    edge = next(value for key, value in car.items() if key in {"edge_height_mm", "face_height_mm", "rim_height_mm"})
    depth = next((value for key, value in jack.items() if key in _DEPTHS and foot not in {"teeth", "edge", "post"}), 0)
    assert f"{edge + depth - pad.web_mm:.0f} mm" in [height for words, height in rows.items() if " as the " in words]
    assert f"{jack['rim_height_low_mm']} mm" in rows.values()
    told = [words for _, sentences in card["cautions"] for words in sentences]
    assert told == [c.text for signal in _SIGNALS for c in design.cautions if c.signal == signal]


@pytest.mark.parametrize(("foot", "head"), FARTHEST)
def test_no_printed_page_speaks_of_one_either(foot: str, head: str, tmp_path: Path) -> None:
    """Oracle: the same list, on what poppler reads back from packet, card and gauge sheet; and the drawing's own words."""
    design = design_of(foot, head)
    facts = facts_of(design)
    for name, pdf in (("packet", packet_pdf), ("card", card_pdf), ("gauges", gauge_pdf)):
        path = tmp_path / f"{name}.pdf"
        path.write_bytes(pdf(design, facts))
        text = subprocess.run(["pdftotext", path, "-"], capture_output=True, text=True, check=True).stdout
        found = foreign_words(foot, head, " ".join(text.split()).replace("\u200b", ""))
        # Columns part words, so that “never a post” may come apart; the data of the same page are held to that word.
        assert [word for word in found if word not in {"post", "posts"}] == [], name
        if name == "packet":
            firsts = [page.strip().partition("\n")[0] for page in text.split("\f")]
            assert [firsts.index(sheet) - firsts.index(_TORN_OFF[0]) for sheet in _TORN_OFF] == [0, 1, 2]
    assert [words for text in texts_in(drawn(design, facts)) if (words := foreign_words(foot, head, text))] == []


def test_the_list_of_words_finds_what_is_foreign() -> None:
    """Oracle: sentences of a cup and a seam, read as a post and a plug."""
    words = "Drop the pad into the cup, lip off the rim: the seam stands in the slot, the sill is clear of the walls."
    assert {"cup", "seam", "slot", "sill"} <= set(foreign_words("post", "plug", words))
    assert foreign_words("cup", "slot", words) == []


@pytest.mark.parametrize(("foot", "head"), [("cup", "oblong"), ("edge", "cushion"), ("post", "plug")])
@pytest.mark.parametrize("process", ["hand_tools", "printed"])
def test_hand_card_and_print_sheet_speak_of_what_is_there(foot: str, head: str, process: str) -> None:
    """Oracle: the same list."""
    material = {"material": "petg"} if process == "printed" else {}
    design = design_of(foot, head, process=process, **material)
    facts, sheet = facts_of(design), calculation_sheet(design)
    for name in ("route", "inspection", "gauges", "route.json"):
        for text in texts_in(PAPERS[name](design, facts, sheet)):
            assert foreign_words(foot, head, text) == [], (name, text)
