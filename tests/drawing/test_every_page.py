"""The caution on every page and file that leaves the program on paper or for a cutter, and what an unfit pad's say beside it."""

import subprocess
from collections.abc import Callable
from datetime import date
from io import StringIO
from pathlib import Path
from xml.etree import ElementTree

import pytest
from ezdxf.filemanagement import read

from geometry.cautions import ONE_LINE
from geometry.design import Design, design_pad
from geometry.drawing import draw, to_dxf, to_pdf, to_svg
from geometry.drawing.facts import SheetFacts
from geometry.packet import card_pdf, gauge_dxf, gauge_pdf, gauge_svg
from geometry.sheet_facts import sheet_facts
from tests.documents import sample, understood

NOT_FIT = "NOT FIT TO MAKE"
CAUTION = "Never get under a car held by a jack"
"""What must be said, written out: a line that lost it would else be compared with itself."""
FITTING, UNFIT = "brass_band_van_toothed_saddle", "repair_cafe_people_carrier"
PAPERS: dict[str, Callable[[Design, SheetFacts], bytes]] = {
    "drawing": lambda design, facts: to_pdf(draw(design.pad, facts)),
    "card": card_pdf,
    "gauges": gauge_pdf,
}
FILES: dict[str, Callable[[Design, SheetFacts], str]] = {
    "drawing.svg": lambda design, facts: to_svg(draw(design.pad, facts)),
    "drawing.dxf": lambda design, facts: to_dxf(draw(design.pad, facts)),
    "gauge.svg": gauge_svg,
    "gauge.dxf": gauge_dxf,
}


def work(name: str, **make: str) -> tuple[Design, SheetFacts]:
    document = sample(name)
    design = design_pad(understood(document | {"make": document.get("make", {}) | make}))
    return design, sheet_facts(design, issued=date(2026, 2, 3))


def words_of(name: str, content: str) -> str:
    """What a file says in words: of a picture its lettering, of a drawing for cutters and CAD its texts."""
    if name.endswith(".dxf"):
        found = [entity.dxf.text for entity in read(StringIO(content)).modelspace().query("TEXT")]
    else:
        root = ElementTree.fromstring(content)  # noqa: S314 - our own picture
        found = [element.get("data-words", "") for element in root.iter()]
    return " ".join(" ".join(found).split())


def test_the_caution_is_the_one_that_the_house_asks_for() -> None:
    """Oracle: what the work can do to somebody, in words of this test."""
    assert f". {CAUTION}: " in ONE_LINE
    assert "not tested" in ONE_LINE


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", [FITTING, UNFIT])
def test_every_page_of_every_paper_carries_the_caution_and_of_an_unfit_pad_that_it_is_not_fit(
    tmp_path: Path, name: str, paper: str
) -> None:
    """Oracle: poppler's text of each page, one by one. Who works by hand has more gauges than one page takes."""
    design, facts = work(name, **({"process": "hand_tools"} if paper == "gauges" else {}))
    path = tmp_path / "paper.pdf"
    path.write_bytes(PAPERS[paper](design, facts))
    text = subprocess.run(["pdftotext", path, "-"], capture_output=True, text=True, check=True).stdout
    pages = [" ".join(page.split()) for page in text.split("\f")[:-1]]
    assert (len(pages) > 1) == (paper == "gauges")
    for page in pages:
        assert CAUTION in page
        assert (NOT_FIT in page) == (name == UNFIT) == (" ".join(design.verdict_words.split()) in page)


@pytest.mark.parametrize("file", FILES)
@pytest.mark.parametrize("name", [FITTING, UNFIT])
def test_every_file_for_screen_and_cutter_carries_them_too(name: str, file: str) -> None:
    words = words_of(file, FILES[file](*work(name)))
    assert CAUTION in words
    assert (NOT_FIT in words) == (name == UNFIT)


@pytest.mark.parametrize("file", ["drawing.dxf", "gauge.dxf"])
def test_a_file_for_cad_says_all_that_its_picture_says(file: str) -> None:
    """Oracle: the words of the picture; sizes are measured by the reader of the file and stand in no text of it."""
    design, facts = work(UNFIT)
    picture = ElementTree.fromstring(FILES[file.replace("dxf", "svg")](design, facts))  # noqa: S314 - our own picture
    told = words_of(file, FILES[file](design, facts))
    sizes = {d.text.words for d in draw(design.pad, facts).dimensions}
    said = {" ".join(e.get("data-words", "").split()) for e in picture.iter()} - {
        "",
        *(" ".join(s.split()) for s in sizes),
    }
    assert len(said) > 5
    assert sorted(words for words in said if words.isascii() and words not in told) == []
