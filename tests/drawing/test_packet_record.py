"""The packet's record in service, what a worn or failed part changes on paper, and the sources beside route card and sheets."""

from pathlib import Path
from typing import Any

import pytest

from geometry.making.looks import looks_of, sketch_svg
from geometry.making.sources import inspection_sources, record_sources, route_sources
from geometry.making.wording import length_shown
from geometry.packet import card_pdf, packet_pdf
from geometry.packet.card import card_data
from geometry.packet.making import inspection_data, making_data
from geometry.packet.record import record_data
from geometry.route import route_card
from geometry.standing import DO_NOT_USE
from tests.drawing.packets import NOT_FIT_PAD, VAN, design_of, pages_in

_NO_BREAKS = str.maketrans("", "", " -")


def test_the_packet_has_the_record_with_every_look_and_every_source(tmp_path: Path) -> None:
    """Oracle: the looks, and the lists of sources of route card, inspection sheet and record."""
    design, facts = design_of(VAN)
    words = " ".join(pages_in(packet_pdf(design, facts), tmp_path))
    card = route_card(design.pad, design.conditions, design.measurements.shop)
    found = [
        *route_sources(card, design.conditions, design.measurements.shop),
        *inspection_sources(design.conditions),
        *record_sources(),
    ]
    assert "Record in service" in words
    assert all(look.what in words for look in looks_of(design.conditions, design.pad))
    # Lines break at blanks and hyphens, and poppler takes a hyphen at a line's end away.
    plain = words.translate(_NO_BREAKS)
    missing = [source.text for _, source in found if source.text.translate(_NO_BREAKS)[:30] not in plain]
    assert missing == []


def test_every_look_has_a_sketch_of_its_own_on_the_card_and_in_the_record() -> None:
    """Oracle: seven places, seven drawings, and each told in words."""
    design, facts = design_of(VAN)
    looks = looks_of(design.conditions, design.pad)
    for drawn in (card_data(design, facts)["looks"], record_data(design, facts)["looks"]):
        assert len({look["svg"] for look in drawn}) == len(looks) == 7
        assert [look["alt"] for look in drawn] == [f"Sketch, exaggerated: {look.what}" for look in looks]
    assert all("<text" in sketch_svg(look) and "<text" not in sketch_svg(look, with_words=False) for look in looks)


def test_readings_in_service_are_printed_with_their_verdicts() -> None:
    """Oracle: the log of the document."""
    design, facts = design_of(VAN, wear={"log": "2026-01-10 seat 67.1 wall clean"})
    data = record_data(design, facts)
    assert data["days"] == [["2026-01-10", "Seat diameter 67.1 mm", "clean", "67.1 mm, 0.1 mm from new."]]
    assert data["worn"].startswith("Every reading in service lies inside its limits.")


@pytest.mark.parametrize("make", [card_pdf, packet_pdf])
def test_a_worn_pad_marks_card_and_packet_and_has_no_steps(make: Any, tmp_path: Path) -> None:
    """Oracle: a wall that is white at its foot."""
    words = " ".join(pages_in(make(*design_of(VAN, wear={"log": "2026-01-10 wall white"})), tmp_path))
    assert DO_NOT_USE in words
    assert "2026-01-10: a wall was white at its foot." in words
    assert "Raise until the seam stands on the slot's floor" not in words


def test_the_cards_limits_are_those_of_the_part_as_measured() -> None:
    """Oracle: a seat read 0.1 mm under the drawing starts from there."""
    drawn, _ = design_of(VAN)
    seat = drawn.pad.seat_diameter_mm - 0.1
    design, facts = design_of(VAN, as_made={"seat_diameter_mm": [seat], "instrument": "micrometer"})
    rows = {row[0]: row[1] for row in card_data(design, facts)["limits"]}
    assert rows["Seat worn thinner"] == length_shown(seat)


def test_a_part_that_failed_has_no_limits_and_no_empty_lines() -> None:
    """Oracle: a seat larger than the cup."""
    data = record_data(*design_of(VAN, as_made={"seat_diameter_mm": [69.0]}))
    assert (data["limits"], data["empty"]) == ([], 0)


def test_the_inspection_sheet_prints_readings_and_leaves_the_unread_open() -> None:
    """Oracle: two sizes read, one of them outside its limits."""
    design, facts = design_of(VAN, as_made={"seat_diameter_mm": [67.2], "body_diameter_mm": [107.0]})
    data = inspection_data(design, facts)
    read = {row[1]: row[-1] for row in data["rows"]}
    assert read["Seat diameter"] == "67.20: inside"
    assert read["Body diameter"] == "107.00: outside"
    assert read["Slot width"] == "open"
    assert inspection_data(*design_of(VAN))["rows"][0][-1] == ""


def test_a_cnc_sheet_on_paper_has_no_dials() -> None:
    """Oracle: the columns of its passes, beside those of the same pad wound by hand."""
    by_hand, by_program = (
        {
            c
            for o in making_data(*design_of(VAN, make=make))["operations"]
            if o["passes"]
            for c in o["passes"]["columns"]
        }
        for make in ({}, {"process": "cnc"})
    )
    assert {c for c in by_hand if "dial" in c} == {"dial by, mm", "dial reads, mm"}
    assert not {c for c in by_program if "dial" in c}


def test_an_inch_shop_reads_cutting_speeds_in_feet() -> None:
    """Oracle: 400 turns on 4.5 in are π · 4.5 · 400 / 12 = 471 ft/min."""
    data = making_data(*design_of(VAN, make={"step": "inch"}))
    cuts = [words for o in data["operations"] for words in o["cuts"]]
    assert any(words.startswith("400 turns/min (471 ft/min on 4.500 in)") for words in cuts)
    assert not [words for words in cuts if "m/min on" in words]


def test_the_record_of_a_pad_that_is_not_fit_tells_nothing_to_do_with_it(tmp_path: Path) -> None:
    """Oracle: the same page of a pad that fits has looks, limits, reasons to discard and sources."""
    design, facts = design_of(NOT_FIT_PAD)
    assert not design.fit_to_make
    for key in ("looks", "limits", "discard", "sources"):
        assert record_data(*design_of(VAN))[key] != []
        assert record_data(design, facts)[key] == []
    words = " ".join(pages_in(packet_pdf(design, facts), tmp_path))
    assert "Look before each use" not in words
    assert "Discard it at once when" not in words
    assert "no limits of wear" in words


@pytest.mark.parametrize("name", ["kayak_club_estate_drain", "allotment_estate_inch_shop"])
def test_a_record_that_nothing_was_read_for_fills_one_page_and_no_more(name: str, tmp_path: Path) -> None:
    """Oracle: poppler's pages: heading, empty lines and the way to the sources stand on one, on A4 and on letter paper."""
    pages = pages_in(packet_pdf(*design_of(name)), tmp_path)
    record = next(page for page in pages if page.startswith("Record in service"))
    assert "Readings in service, in" in record
    assert "Where its figures come from" in record


@pytest.mark.parametrize(("days", "least"), [(0, 3), (1, 2), (9, 10)])
def test_there_are_always_lines_for_another_reading(days: int, least: int) -> None:
    log = "; ".join(f"2026-0{month + 1}-10 wall clean" for month in range(days))
    design, facts = design_of(VAN, wear={"log": log})
    assert record_data(design, facts)["empty"] >= least
