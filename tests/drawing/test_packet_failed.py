"""The mark on the sheets of a part whose readings fail, read back by poppler."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from geometry.cautions import ONE_LINE
from geometry.packet import card_pdf, packet_pdf
from geometry.packet.card import card_data
from geometry.packet.failed import failed_part
from geometry.standing import DO_NOT_USE
from tests.drawing.packets import NOT_FIT_PAD, VAN, design_of, pages_in

TOO_BIG: dict[str, Any] = {
    VAN: {"as_made": {"seat_diameter_mm": [68.4]}},
    NOT_FIT_PAD: {"as_made": {"seat_diameter_mm": [70.4]}},
}
"""Each 0.4 mm larger than its cup."""


@pytest.mark.parametrize("name", [VAN, NOT_FIT_PAD])
def test_the_card_of_a_failed_part_is_one_page_with_the_mark_and_without_steps(tmp_path: Path, name: str) -> None:
    (page,) = pages_in(card_pdf(*design_of(name, **TOO_BIG[name])), tmp_path)
    assert DO_NOT_USE in page
    assert "Do not lift with this pad" in page
    assert ONE_LINE in page
    for word in ("Wipe the cup", "Look before each use", "Discard when it reads"):
        assert word not in page


def test_the_card_of_an_unread_or_a_good_part_has_no_mark(tmp_path: Path) -> None:
    good = {"as_made": {"seat_diameter_mm": [design_of(VAN)[0].pad.seat_diameter_mm]}}
    for readings in ({}, good):
        (page,) = pages_in(card_pdf(*design_of(VAN, **readings)), tmp_path)
        assert DO_NOT_USE not in page
        assert "Wipe the cup" in page


def test_every_page_of_a_failed_parts_packet_but_the_drawing_carries_the_mark(tmp_path: Path) -> None:
    """The drawing is of the pad that was wanted, from which another part can be made."""
    pages = pages_in(packet_pdf(*design_of(VAN, **TOO_BIG[VAN])), tmp_path)
    without = [page for page in pages if DO_NOT_USE not in page]
    assert len(pages) > 5
    assert len(without) == 1
    assert "Section A" in without[0] or "A–A" in without[0]


def test_reasons_of_a_part_that_also_fails_as_drawn_are_said_once() -> None:
    design, facts = design_of(NOT_FIT_PAD, **TOO_BIG[NOT_FIT_PAD])
    failures = card_data(design, facts, failed_part(design))["failures"]
    assert len(failures) > len(design.failures)
    assert len(failures) == len(set(failures))


def test_a_card_in_64ths_of_an_inch_speaks_inches() -> None:
    """Oracle: the cup of 68 mm is 2.677 in."""
    design, facts = design_of(VAN)
    where = card_data(design, replace(facts, units="in_fraction"))["where"]
    assert "bore 2.677 in" in where[0][1]
