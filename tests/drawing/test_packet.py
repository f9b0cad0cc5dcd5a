"""Packet and lifting card, read back by poppler and qpdf: all is said, on every page, in searchable words."""

import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from geometry.calculation.sheet import calculation_sheet
from geometry.cautions import ONE_LINE
from geometry.drawing import dimension_table, draw
from geometry.drawing.facts import CRITICAL_MARK
from geometry.drawing.frame import NOT_FIT
from geometry.packet import packet_pdf
from geometry.packet.paper import printable
from geometry.packet.words import load_words
from tests.drawing.packets import (
    FITTING,
    INCH,
    NOT_FIT_PAD,
    STEM,
    UNFIT,
    VAN,
    card_pages,
    design_of,
    pages_of,
    run,
    squeezed,
)

ALL = (*FITTING, *UNFIT)
MOST_BYTES_A_PAGE = 2 * 2**20


@pytest.fixture(scope="module")
def packets(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The packet of every sample that has a pad."""
    folder = tmp_path_factory.mktemp("packets")
    for name in ALL:
        (folder / f"{name}.pdf").write_bytes(packet_pdf(*design_of(name)))
    return {name: folder / f"{name}.pdf" for name in ALL}


@pytest.mark.parametrize("name", ALL)
def test_every_page_carries_the_caution_line(packets: dict[str, Path], name: str) -> None:
    before, _, after = ONE_LINE.partition(" The vehicle")
    for page in pages_of(packets[name]):
        # On the drawing the line stands in two rows.
        assert before in page
        assert f"The vehicle{after}" in page


@pytest.mark.parametrize("name", UNFIT)
def test_every_page_of_a_pad_that_is_not_fit_says_so(packets: dict[str, Path], name: str) -> None:
    design, _ = design_of(name)
    for page in pages_of(packets[name]):
        assert NOT_FIT in page
        assert squeezed(design.verdict_words) in page


@pytest.mark.parametrize("name", FITTING)
def test_no_page_of_a_fitting_pad_says_not_fit(packets: dict[str, Path], name: str) -> None:
    assert not [page for page in pages_of(packets[name]) if NOT_FIT in page]


@pytest.mark.parametrize("name", ALL)
def test_every_dimension_of_the_drawing_is_real_text_on_its_page(packets: dict[str, Path], name: str) -> None:
    design, facts = design_of(name)
    drawn = pages_of(packets[name])[1].replace(" ", "")
    for row in dimension_table(draw(design.pad, facts)):
        assert row.nominal.replace(" ", "") in drawn


def test_the_drawings_page_is_the_sheet_in_true_size(packets: dict[str, Path]) -> None:
    """Oracle: poppler's box of the frame's lower left word, 20 mm of filing margin and more from the left."""
    words = run("pdftotext", "-bbox", "-f", "2", "-l", "2", packets[VAN], "-")
    found = re.search(r'<word xMin="([\d.]+)"[^>]*>Drawing</word>', words)
    assert found
    assert float(found[1]) * 25.4 / 72 == pytest.approx(20 + 1.2, abs=0.5)


@pytest.mark.parametrize("name", [VAN, NOT_FIT_PAD])
def test_every_result_of_the_calculation_is_printed(packets: dict[str, Path], name: str) -> None:
    text = " ".join(pages_of(packets[name]))
    sheet = calculation_sheet(design_of(name)[0])
    for line in sheet.book:
        assert squeezed(line.meaning) in text
        assert line.result in text
    for part in sheet.checks:
        assert squeezed(part.check.rule.title) in text
        assert squeezed(part.check.words) in text


def test_the_numbers_put_into_a_formula_give_the_printed_result(packets: dict[str, Path]) -> None:
    """Oracle: Python's own arithmetic on the printed digits of 1.2 · F = F_d."""
    text = " ".join(pages_of(packets[VAN]))
    found = re.search(r"1\.2 · ([\d.]+) = ([\d.]+) N", text)
    assert found
    assert 1.2 * float(found[1]) == pytest.approx(float(found[2]), rel=1e-4)


def test_formulas_are_typeset_and_told_to_who_cannot_see_them(packets: dict[str, Path]) -> None:
    """Oracle: the structure tree, laid open by qpdf; each formula has its plain text beside it."""
    command = ["qpdf", "--qdf", "--object-streams=disable", str(packets[VAN]), "-"]
    opened = subprocess.run(command, capture_output=True, check=True).stdout
    formula_objects = [found for found in opened.split(b"endobj") if b"/S /Formula" in found]
    sheet = calculation_sheet(design_of(VAN)[0])
    assert len(formula_objects) > len([line for line in sheet.book if line.formula])
    assert all(b"/Alt" in found for found in formula_objects)


def test_every_source_is_listed(packets: dict[str, Path]) -> None:
    text = " ".join(pages_of(packets[VAN]))
    design, _ = design_of(VAN)
    for use in calculation_sheet(design).sources:
        assert squeezed(printable(use.source.text)) in text
    for caution in design.cautions:
        assert squeezed(caution.source.text) in text


@pytest.mark.parametrize("name", ALL)
def test_a_packet_is_sound_tagged_and_has_its_two_fonts_inside(packets: dict[str, Path], name: str) -> None:
    run("qpdf", "--check", packets[name])
    told = run("pdfinfo", packets[name])
    assert re.search(r"Tagged:\s+yes", told)
    assert b"pdfuaid" in packets[name].read_bytes()
    fonts = [line.split() for line in run("pdffonts", packets[name]).splitlines()[2:]]
    assert {re.sub(r"^\w+\+|-Identity-H$", "", font[0]) for font in fonts} == {"DejaVuSans", "NewCMMath-Book"}
    assert all(font[-5:-2] == ["yes", "yes", "yes"] for font in fonts)


@pytest.mark.parametrize("name", ALL)
def test_no_page_is_larger_than_two_megabytes(packets: dict[str, Path], name: str) -> None:
    assert packets[name].stat().st_size < MOST_BYTES_A_PAGE


def test_an_inch_shop_gets_letter_paper_inches_and_pounds(packets: dict[str, Path]) -> None:
    assert "612 x 792" in run("pdfinfo", packets[INCH])
    design, _ = design_of(INCH)
    cover = pages_of(packets[INCH])[0]
    assert load_words(design.conditions.design_force_n, "in") in cover
    assert "lbf" in cover


@pytest.mark.parametrize("paper", ["A4", "letter"])
def test_every_page_has_the_paper_that_was_asked_for(tmp_path: Path, paper: str) -> None:
    design, facts = design_of(VAN)
    path = tmp_path / "packet.pdf"
    path.write_bytes(packet_pdf(design, replace(facts, paper=paper)))  # type: ignore[arg-type]  # one of the two
    told = run("pdfinfo", "-f", "1", "-l", "99", path)
    sizes = {tuple(round(float(n)) for n in pair) for pair in re.findall(r"Page +\d+ size: +([\d.]+) x ([\d.]+)", told)}
    assert sizes == {(595, 842) if paper == "A4" else (612, 792)}


def test_the_same_design_and_day_give_the_same_bytes_in_another_process(packets: dict[str, Path]) -> None:
    code = (
        "import sys; from tests.drawing.packets import VAN, design_of; from geometry.packet import packet_pdf;"
        "sys.stdout.buffer.write(packet_pdf(*design_of(VAN)))"
    )
    env = {"PYTHONHASHSEED": "7", "PATH": ""}
    other = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, env=env).stdout
    assert other == packets[VAN].read_bytes()


def test_a_packet_can_be_printed_under_a_title_in_any_letters() -> None:
    """The card is tried with each of them by itself."""
    design, facts = design_of(VAN)
    assert packet_pdf(design, replace(facts, title="車 🚗 שלום מرحبا a\u202eb\u200bc")).startswith(b"%PDF")


def test_the_cover_tells_the_verdict_the_deciding_sizes_the_load_and_the_material(packets: dict[str, Path]) -> None:
    design, facts = design_of(STEM)
    cover = pages_of(packets[STEM])[0]
    shown = {row.name: row.nominal for row in dimension_table(draw(design.pad, facts))}
    wanted = [
        shown[n].removeprefix(CRITICAL_MARK)
        for n in ("seat_diameter_mm", "seat_length_mm", "slot_width_mm", "slot_depth_mm", "web_mm")
    ]
    for words in (*wanted, design.verdict_words, facts.material, load_words(design.conditions.design_force_n, "mm")):
        assert squeezed(words) in cover


@pytest.mark.parametrize("name", ALL)
def test_no_load_on_card_or_cover_has_more_than_two_digits_that_count(
    packets: dict[str, Path], tmp_path: Path, name: str
) -> None:
    """More would read as a rating; the jack's own plate is the one figure taken as it stands."""
    pages = (pages_of(packets[name])[0], *card_pages(tmp_path, *design_of(name)))
    for page in pages:
        head = page.partition("What fails")[0] if name in UNFIT else page
        assert not re.search(r"\b\d+\.\d\d kN", head)
        assert "designed for" not in page
        assert not re.search(r"weight of \d", page)


@pytest.mark.parametrize("name", UNFIT)
def test_a_packet_of_a_pad_that_is_not_fit_has_no_route_card_and_says_why(packets: dict[str, Path], name: str) -> None:
    pages = pages_of(packets[name])
    assert "no route card" in pages[0]
    assert not [page for page in pages if "Set-ups and tools" in page or "Looked at" in page]


@pytest.mark.parametrize("name", ALL)
def test_every_page_has_its_number_and_how_many_there_are(packets: dict[str, Path], name: str) -> None:
    pages = pages_of(packets[name])
    for number, page in enumerate(pages, start=1):
        assert f"page {number} of {len(pages)}" in page


def test_a_picture_of_the_route_card_stands_on_the_page_of_its_table(packets: dict[str, Path]) -> None:
    """Oracle: a label of the picture, and the table's title, as poppler finds them."""
    pages = pages_of(packets[VAN])
    for label, title in (
        ("1: 78.75°", "Corner radius in"),
        ("cutter in every pass: 0 mm across", "Passes of the slot"),
    ):
        assert [page for page in pages if label in page] == [page for page in pages if title in page] != []


@pytest.mark.parametrize("name", FITTING)
def test_the_letters_of_the_covers_balloons_are_seven_points_high(packets: dict[str, Path], name: str) -> None:
    """Oracle: the boxes of the words as poppler finds them; a balloon's label is the only place where a cup has a “bore”."""
    page = run("pdftotext", "-f", "1", "-l", "1", "-bbox", packets[name], "-")
    found = re.findall(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">bore<', page)
    assert found
    assert all(float(low) - float(high) >= 7 for high, low in found)


@pytest.mark.parametrize("name", FITTING)
def test_the_calculation_of_an_inch_shop_says_that_its_lengths_are_in_mm(packets: dict[str, Path], name: str) -> None:
    text = " ".join(pages_of(packets[name]))
    assert "Lengths in mm" in text
    assert ("though the drawing is in inches" in text) == (name == INCH)


def test_a_sheet_laid_out_a_moment_ago_is_not_laid_out_again() -> None:
    design, facts = design_of(VAN)
    assert draw(design.pad, facts) is draw(design.pad, facts)
