"""The mark on the sheets of a part whose readings fail, read back by poppler."""

import subprocess
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from geometry.cautions import ONE_LINE
from geometry.design import Design, design_pad
from geometry.drawing.facts import SheetFacts
from geometry.packet import card_pdf, packet_pdf
from geometry.packet.card import card_data
from geometry.packet.failed import failed_part
from geometry.sheet_facts import sheet_facts
from geometry.standing import DO_NOT_USE
from tests.documents import sample, understood

VAN, UNFIT = "mobile_library_van", "repair_cafe_people_carrier"
TOO_BIG: dict[str, Any] = {
    VAN: {"as_made": {"seat_diameter_mm": [68.4]}},
    UNFIT: {"as_made": {"seat_diameter_mm": [70.4]}},
}
"""Each 0.4 mm larger than its cup."""


def read(name: str, **readings: Any) -> tuple[Design, SheetFacts]:
    design = design_pad(understood(sample(name) | readings))
    return design, sheet_facts(design, issued=date(2026, 2, 3))


def pages_of(content: bytes, folder: Path) -> list[str]:
    file = folder / "sheet.pdf"
    file.write_bytes(content)
    found = subprocess.run(["pdftotext", file, "-"], capture_output=True, text=True, check=True).stdout
    return [" ".join(page.split()) for page in found.split("\f")[:-1]]


@pytest.mark.parametrize("name", [VAN, UNFIT])
def test_the_card_of_a_failed_part_is_one_page_with_the_mark_and_without_steps(tmp_path: Path, name: str) -> None:
    (page,) = pages_of(card_pdf(*read(name, **TOO_BIG[name])), tmp_path)
    assert DO_NOT_USE in page
    assert "Do not lift with this pad" in page
    assert ONE_LINE in page
    for word in ("Wipe the cup", "Look before each use", "Discard when it reads"):
        assert word not in page


def test_the_card_of_an_unread_or_a_good_part_has_no_mark(tmp_path: Path) -> None:
    good = {"as_made": {"seat_diameter_mm": [read(VAN)[0].pad.seat_diameter_mm]}}
    for readings in ({}, good):
        (page,) = pages_of(card_pdf(*read(VAN, **readings)), tmp_path)
        assert DO_NOT_USE not in page
        assert "Wipe the cup" in page


def test_every_page_of_a_failed_parts_packet_but_the_drawing_carries_the_mark(tmp_path: Path) -> None:
    """The drawing is of the pad that was wanted, from which another part can be made."""
    pages = pages_of(packet_pdf(*read(VAN, **TOO_BIG[VAN])), tmp_path)
    without = [page for page in pages if DO_NOT_USE not in page]
    assert len(pages) > 5
    assert len(without) == 1
    assert "Section A" in without[0] or "A–A" in without[0]


def test_reasons_of_a_part_that_also_fails_as_drawn_are_said_once() -> None:
    design, facts = read(UNFIT, **TOO_BIG[UNFIT])
    failures = card_data(design, facts, failed_part(design))["failures"]
    assert len(failures) > len(design.failures)
    assert len(failures) == len(set(failures))


def test_a_card_in_64ths_of_an_inch_speaks_inches() -> None:
    """Oracle: the cup of 68 mm is 2.677 in."""
    design, facts = read(VAN)
    where = card_data(design, replace(facts, units="in_fraction"))["where"]
    assert "bore 2.677 in" in where[0][1]
