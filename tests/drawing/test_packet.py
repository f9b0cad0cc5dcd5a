"""Packet and lifting card, read back by poppler and qpdf: all is said, on every page, in searchable words."""

import re
import subprocess
import sys
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from geometry.calculation.sheet import calculation_sheet
from geometry.cautions import ONE_LINE
from geometry.design import Design, design_pad
from geometry.drawing import dimension_table, draw
from geometry.drawing.facts import CRITICAL_MARK, SheetFacts
from geometry.drawing.frame import NOT_FIT
from geometry.errors import NoPadFitsError
from geometry.packet import card_pdf, packet_pdf
from geometry.packet.card import card_data
from geometry.packet.paper import printable
from geometry.packet.words import load_words
from geometry.sheet_facts import sheet_facts
from tests.documents import ordinary_documents, sample, understood

DAY = date(2026, 2, 3)
VAN, STEM, INCH, NOT_FIT_PAD, PRINTED = (
    "mobile_library_van",
    "tool_library_hatchback_stem",
    "allotment_estate_inch_shop",
    "repair_cafe_people_carrier",
    "choir_minibus_printed",
)
FITTING = (VAN, STEM, INCH)
UNFIT = (NOT_FIT_PAD, PRINTED)
ALL = (*FITTING, *UNFIT)
MOST_BYTES_A_PAGE = 2 * 2**20


def design_of(name: str) -> tuple[Design, SheetFacts]:
    design = design_pad(understood(sample(name)))
    return design, sheet_facts(design, issued=DAY)


def run(*command: str | Path) -> str:
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def squeezed(words: str) -> str:
    """Words with single blanks; poppler breaks lines where the page does."""
    return " ".join(words.split())


def pages_of(path: Path) -> list[str]:
    """The text of each page, as poppler finds it."""
    return [squeezed(page) for page in run("pdftotext", path, "-").split("\f")[:-1]]


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
    code = "import sys; from tests.drawing.test_packet import *; sys.stdout.buffer.write(packet_pdf(*design_of(VAN)))"
    env = {"PYTHONHASHSEED": "7", "PATH": ""}
    other = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, env=env).stdout
    assert other == packets[VAN].read_bytes()


def test_what_somebody_typed_is_never_read_as_source(tmp_path: Path) -> None:
    typed = '#pagebreak() $x^2$ *b* _i_ \\ " <x> `c`'
    design, facts = design_of(VAN)
    path = tmp_path / "card.pdf"
    path.write_bytes(card_pdf(design, replace(facts, title=typed)))
    told = run("pdfinfo", path)
    assert re.search(r"Pages:\s+1\b", told)
    assert typed in told


@pytest.mark.parametrize("title", ["車 🚗", "שלום עולם", "مرحبا", "W" * 80, "a\u202eb\u200bc", ""])
def test_any_title_can_be_printed(title: str) -> None:
    design, facts = design_of(VAN)
    assert packet_pdf(design, replace(facts, title=title or "Lifting pad")).startswith(b"%PDF")


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


def card_pages(tmp: Path, design: Design, facts: SheetFacts) -> list[str]:
    path = tmp / "card.pdf"
    path.write_bytes(card_pdf(design, facts))
    return pages_of(path)


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


@pytest.mark.parametrize("name", FITTING)
def test_the_card_says_how_the_first_use_goes(tmp_path: Path, name: str) -> None:
    page = card_pages(tmp_path, *design_of(name))[0]
    for words in ("First use", "Raise until the tyre just unloads", "Lower.", "then lift", "write it here"):
        assert words in page


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


@pytest.mark.parametrize("name", FITTING)
def test_the_calculation_of_an_inch_shop_says_that_its_lengths_are_in_mm(packets: dict[str, Path], name: str) -> None:
    text = " ".join(pages_of(packets[name]))
    assert "Lengths in mm" in text
    assert ("though the drawing is in inches" in text) == (name == INCH)


def test_a_sheet_laid_out_a_moment_ago_is_not_laid_out_again() -> None:
    design, facts = design_of(VAN)
    assert draw(design.pad, facts) is draw(design.pad, facts)
