"""The caution on every page and file that leaves the program on paper or for a cutter, and what an unfit pad's say beside it."""

from collections.abc import Callable
from io import StringIO
from pathlib import Path
from xml.etree import ElementTree

import pytest
from ezdxf.filemanagement import read

from geometry.cautions import ONE_LINE
from geometry.design import Design
from geometry.drawing import draw, to_dxf, to_pdf, to_svg
from geometry.drawing.facts import SheetFacts
from geometry.packet import card_pdf, gauge_dxf, gauge_pdf, gauge_svg
from tests.documents import sample
from tests.drawing.packets import NOT_FIT_PAD, design_of, pages_in, squeezed

NOT_FIT = "NOT FIT TO MAKE"
CAUTION = "Never get under a car held by a jack"
"""What must be said, written out: a line that lost it would else be compared with itself."""
FITTING = "brass_band_van_toothed_saddle"
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
@pytest.mark.parametrize("name", [FITTING, NOT_FIT_PAD])
def test_every_page_of_every_paper_carries_the_caution_and_of_an_unfit_pad_that_it_is_not_fit(
    tmp_path: Path, name: str, paper: str
) -> None:
    """Oracle: poppler's text of each page, one by one. Who works by hand has more gauges than one page takes."""
    by_hand = {"make": sample(name)["make"] | {"process": "hand_tools"}} if paper == "gauges" else {}
    design, facts = design_of(name, **by_hand)
    pages = pages_in(PAPERS[paper](design, facts), tmp_path)
    assert (len(pages) > 1) == (paper == "gauges")
    for page in pages:
        assert CAUTION in page
        assert (NOT_FIT in page) == (name == NOT_FIT_PAD) == (squeezed(design.verdict_words) in page)


@pytest.mark.parametrize("file", FILES)
@pytest.mark.parametrize("name", [FITTING, NOT_FIT_PAD])
def test_every_file_for_screen_and_cutter_carries_them_too(name: str, file: str) -> None:
    words = words_of(file, FILES[file](*design_of(name)))
    assert CAUTION in words
    assert (NOT_FIT in words) == (name == NOT_FIT_PAD)


@pytest.mark.parametrize("file", ["drawing.dxf", "gauge.dxf"])
def test_a_file_for_cad_says_all_that_its_picture_says(file: str) -> None:
    """Oracle: the words of the picture; sizes are measured by the reader of the file and stand in no text of it."""
    design, facts = design_of(NOT_FIT_PAD)
    picture = ElementTree.fromstring(FILES[file.replace("dxf", "svg")](design, facts))  # noqa: S314 - our own picture
    told = words_of(file, FILES[file](design, facts))
    sizes = {d.text.words for d in draw(design.pad, facts).dimensions}
    said = {" ".join(e.get("data-words", "").split()) for e in picture.iter()} - {
        "",
        *(" ".join(s.split()) for s in sizes),
    }
    assert len(said) > 5
    assert sorted(words for words in said if words.isascii() and words not in told) == []
