"""Pages of the packet that are read alone: what heads each of them, how large its letters are, what its cover says."""

import re
from pathlib import Path

import pytest

from geometry.calculation.sheet import calculation_sheet
from geometry.design import design_pad
from geometry.packet import card_pdf, packet_pdf
from geometry.packet.card import card_data
from geometry.packet.cover import ADVISING, cover_data
from geometry.packet.cover_picture import section_picture
from geometry.packet.record import record_data
from geometry.sheet_facts import sheet_facts
from tests.documents import sample, understood
from tests.drawing.packets import DAY, INCH, VAN, design_of, pages_of, run

ROUND, EDGE, TEETH, RAIL = (
    "lifeguard_station_pickup_round_plug",
    "puppet_theatre_van_plate_edge",
    "brass_band_van_toothed_saddle",
    "village_bakery_van_rail_cushion",
)
WHOLE = (VAN, ROUND, EDGE)


@pytest.fixture(scope="module")
def packets(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The packets of pads with long route cards."""
    folder = tmp_path_factory.mktemp("pages")
    for name in (*WHOLE, INCH):
        (folder / f"{name}.pdf").write_bytes(packet_pdf(*design_of(name)))
    return {name: folder / f"{name}.pdf" for name in (*WHOLE, INCH)}


@pytest.mark.parametrize("name", WHOLE)
def test_every_page_of_the_route_card_begins_with_the_operation_that_it_is_about(
    packets: dict[str, Path], name: str
) -> None:
    """Oracle: poppler's first words of each page: a heading of the card, or an operation's name with “continued”."""
    pages = pages_of(packets[name])
    first = next(i for i, page in enumerate(pages) if page.startswith("Route card"))
    last = next(i for i, page in enumerate(pages) if page.startswith("Inspection sheet"))
    assert last - first > 2
    went_on = 0
    for page in pages[first + 1 : last]:
        assert re.match(r"\d+ [A-Z]", page), page[:60]
        went_on += bool(re.match(r"\d+ [A-Z][^.]*?, continued ", page))
        assert not re.match(r"\d+ [A-Z][^.]*?, continued \d+ [A-Z]", page), "nothing of it goes on here"
    assert went_on


@pytest.mark.parametrize("name", [*WHOLE, INCH])
def test_no_page_is_left_with_a_line_or_two(packets: dict[str, Path], name: str) -> None:
    """Oracle: poppler's words of each page, the caution and the identity at its foot taken off."""
    for number, page in enumerate(pages_of(packets[name]), start=1):
        said = page.partition("Estimated, not tested. Never get under")[0]
        assert len(said.split()) > 25 or number == 2, f"page {number}: {said}"


@pytest.mark.parametrize("name", WHOLE)
def test_no_words_on_the_pages_of_sources_are_smaller_than_those_of_the_foot(
    packets: dict[str, Path], name: str
) -> None:
    """Oracle: the sizes of letters as poppler finds them, three times enlarged; the line at the foot is 6.1 points."""
    last = str(len(pages_of(packets[name])))
    told = run("pdftohtml", "-xml", "-i", "-stdout", "-zoom", "3", "-f", last, "-l", last, packets[name])
    sizes = {int(size) for size in re.findall(r'<fontspec [^>]*size="(\d+)"', told)}
    assert len(sizes) > 2
    assert min(sizes) == int(3 * 6.1)


@pytest.mark.parametrize("name", [VAN, ROUND, EDGE, TEETH, RAIL])
def test_no_label_of_the_covers_picture_is_cut_short_and_none_of_the_page_above_it_is_empty(name: str) -> None:
    """Oracle: the picture's own words and its view."""
    picture = section_picture(*design_of(name))
    assert "…" not in picture
    view = re.search(r'viewBox="0 ([\d.]+) 840 ([\d.]+)"', picture)
    assert view
    assert float(view[1]) > 40
    assert float(view[1]) + float(view[2]) == pytest.approx(560)
    heights = [float(y) for y in re.findall(r'<text[^>]* y="([\d.]+)"', picture)]
    assert all(float(view[1]) < y < 560 for y in heights)


def test_a_label_in_two_lines_says_all_of_its_words() -> None:
    """Oracle: the field's own title."""
    lines = re.findall(r'class="balloon-label"[^>]*font-size="11\.5"[^>]*>([^<]*)<', section_picture(*design_of(ROUND)))
    assert " ".join(lines) == "Rim of the hole above the ground"


def test_the_cover_names_what_was_not_checked_and_what_comes_nearer_to_its_limit_but_only_advises() -> None:
    """Oracle: the checks of the design."""
    design, facts = design_of(VAN)
    cover = cover_data(design, facts, calculation_sheet(design))
    assert cover["governing"].startswith("Nearest its limit: ")
    unchecked = [c.title for c in design.with_verdict("not_checked")]
    assert unchecked
    assert [words.partition(":")[0] for words in cover["not_checked"]] == unchecked
    advising = [c for c in design.checks if c.rule.is_advice and c.utilisation > design.governing.utilisation]
    assert advising
    assert cover["advice"].startswith(ADVISING)
    assert all(check.title in cover["advice"] for check in advising)


def test_a_signal_word_stands_in_one_line_with_its_sign(tmp_path: Path) -> None:
    """Oracle: poppler's lines: a badge that breaks would leave the sign in a line of its own."""
    path = tmp_path / "card.pdf"
    path.write_bytes(card_pdf(*design_of(VAN)))
    words = re.findall(
        r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">(!|DANGER|WARNING|CAUTION)<',
        run("pdftotext", "-bbox", path, "-"),
    )
    signs = [(float(a), float(b)) for a, b, word in words if word == "!"]
    badges = [(float(a), float(b)) for a, b, word in words if word != "!"]
    assert len(badges) == 3
    for top, bottom in badges:
        assert [1 for high, low in signs if high < bottom and low > top]


def test_a_pad_with_its_slot_off_the_middle_says_which_way_round_it_goes() -> None:
    """Oracle: the sample whose seam passes 3 mm beside the jack's axis, and one whose jack stands centred."""
    steps = " ".join(words for _, words in card_data(*design_of("kayak_club_estate_drain"))["steps"])
    assert "The slot is 3 mm off the pad's middle: turn the pad so that the slot lies on the side" in steps
    assert "turn the pad" not in " ".join(words for _, words in card_data(*design_of(VAN))["steps"])


def test_the_card_tells_the_cups_rim_from_the_holes() -> None:
    """Oracle: the round plug: both have a rim, and no height is that of a bare “rim”."""
    heights = [words for words, _ in card_data(*design_of(ROUND))["heights"]]
    assert [words for words in heights if words.startswith("Cup's rim")]
    assert [words for words in heights if words.startswith("Hole's rim")]
    assert not [words for words in heights if words.startswith("Rim")]


@pytest.mark.parametrize("name", WHOLE)
def test_no_page_begins_with_symbols_whose_formula_stands_on_the_page_before(
    packets: dict[str, Path], name: str
) -> None:
    """Oracle: poppler's first words of each page of the calculation: those of a list are “symbol = number meaning;”."""
    pages = pages_of(packets[name])
    first = next(i for i, page in enumerate(pages) if page.startswith("Calculation sheet"))
    heads = [page[:120] for page in pages[first + 1 :]]
    assert len(heads) > 8
    assert not [head for head in heads if re.match(r"\S+ = [-−\d.]+ ?\S* [a-z][^=;]*; \S+ = ", head)]


def test_the_record_of_a_pad_that_takes_up_water_says_that_its_limits_allow_for_it() -> None:
    """Oracle: cast nylon in room air, and the same kept dry."""
    design, facts = design_of(TEETH)
    assert record_data(design, facts)["water"] == "The values allow for the water that it may take up."
    dry = design_pad(understood(sample(TEETH) | {"service": {"wetness": "dry"}}))
    assert record_data(dry, sheet_facts(dry, issued=DAY))["water"] == ""
