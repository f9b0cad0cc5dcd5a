import ast
import re
from pathlib import Path
from xml.etree import ElementTree

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]
from hypothesis import given, settings
from hypothesis import strategies as st

import geometry.drawing
from geometry.buildable import require_buildable
from geometry.design import design_pad
from geometry.drawing.section import (
    BALLOONS,
    Known,
    Section,
    assembled_section,
    section_of_conflict,
    section_of_partial,
    to_svg,
)
from geometry.drawing.section_known import GROUPS, known_of_partial
from geometry.drawing.section_lettering import text_width, wrapped
from geometry.drawing.section_marks import PLACE_OF_DIMENSION, TroubleSpot, band_of
from geometry.errors import NoPadFitsError
from geometry.measurements import read_measurements
from geometry.pad import DIMENSIONS
from geometry.rules import CHECK_RULES
from tests.geometry.section_cases import document, page_of, section_of, sections, unfinished_documents

_SVG = "{http://www.w3.org/2000/svg}"
_ROOM = Path(geometry.drawing.__file__).parent


def _parsed(section: Section, **how: object) -> ElementTree.Element:
    return ElementTree.fromstring(to_svg(section, **how))  # type: ignore[arg-type]  # noqa: S314 - our own picture


def _words(section: Section, **how: object) -> str:
    description = _parsed(section, **how).find(f".//{_SVG}desc")
    assert description is not None
    return description.text or ""


def test_balloons_number_the_marked_fields_from_the_floor_up_without_a_gap() -> None:
    """Oracle: the field lists themselves, the jack below the car."""
    marked = [
        f"{group}.{name}"
        for group in ("jack", "seam")
        for name, field in GROUPS[group].model_fields.items()
        if isinstance(field.json_schema_extra, dict) and field.json_schema_extra["balloon"]
    ]
    assert list(BALLOONS.items()) == [(key, number) for number, key in enumerate(marked, start=1)]


@settings(max_examples=60, deadline=None)
@given(section=sections(), width=st.sampled_from([1080, 390]))
def test_each_balloon_is_a_link_to_its_field_and_carries_its_key(section: Section, width: int) -> None:
    links = _parsed(section, width=width).findall(f"{_SVG}a")
    assert {link.get("data-field"): link.get("href") for link in links} == {
        key: f"#field-{key.replace('.', '-')}" for key in BALLOONS
    }
    ids = [element.get("id") for element in _parsed(section, width=width).iter() if element.get("id")]
    assert len(ids) == len(set(ids))


@settings(max_examples=60, deadline=None)
@given(section=sections())
def test_the_picture_carries_no_style(section: Section) -> None:
    """The page's content policy refuses style blocks and style attributes."""
    for element in _parsed(section).iter():
        assert element.tag != f"{_SVG}style"
        assert "style" not in element.attrib


@settings(max_examples=60, deadline=None)
@given(told=unfinished_documents())
def test_the_same_document_gives_the_same_bytes(told: dict[str, dict[str, float]]) -> None:
    assert to_svg(section_of_partial(told)) == to_svg(section_of_partial(told))


@settings(deadline=None)
@given(told=unfinished_documents())
def test_what_stands_in_for_a_pad_could_be_made(told: dict[str, dict[str, float]]) -> None:
    """Oracle: the same refusal that guards real pads."""
    require_buildable(section_of_partial(told).scene.pad)


def test_the_pad_is_drawn_to_scale_both_ways() -> None:
    """Oracle: body diameter over overall height, from the pad; read back from the drawn outline."""
    section = section_of(document("tool_library_hatchback_stem"))
    pad = section.scene.pad
    path = _parsed(section).find(f".//{_SVG}path[@class='pad']")
    assert path is not None
    straight = re.sub(r"A\S+ \S+ 0 0 [01] ", "L", path.get("d", ""))
    ends = [(float(x), float(y)) for x, y in re.findall(r"[ML](\S+?) ([\d.]+)", straight)]
    wide, tall = (max(p[i] for p in ends) - min(p[i] for p in ends) for i in (0, 1))
    assert wide / tall == pytest.approx(pad.body_diameter_mm / pad.overall_height_mm, rel=1e-3)


def test_heights_that_fit_are_drawn_to_scale_and_others_are_said_to_be_shortened() -> None:
    """Oracle: ground to seam's edge as measured, 190 mm and 60 mm."""
    far = section_of(document("mobile_library_van"))
    near = section_of_partial(
        {"jack": {"cup_bore_mm": 150, "rim_height_low_mm": 30}, "seam": {"height_mm": 12, "edge_height_mm": 60}}
    )
    assert far.scene.edge - far.scene.ground < 190
    assert "The ground is drawn nearer than it is" in _words(far)
    assert near.scene.edge - near.scene.ground == pytest.approx(60)
    assert "Everything is to scale" in _words(near)


def test_an_empty_form_shows_the_whole_job_faintly() -> None:
    section = section_of_partial({})
    drawn = {
        shape.kind: shape.is_ghost for shape in section.shapes if shape.kind in {"cut-steel", "pad", "seam", "ground"}
    }
    assert drawn == {"cut-steel": True, "pad": True, "seam": True, "ground": True}
    assert to_svg(section).count("to be measured") >= 6


@pytest.mark.parametrize("wrong", [float("nan"), float("inf"), -5, 1e9, "68", True, None])
def test_a_value_that_cannot_be_counts_as_still_to_be_measured(wrong: object) -> None:
    assert known_of_partial({"jack": {"cup_bore_mm": wrong}}) == Known()


def test_a_corner_too_large_for_its_cup_counts_as_still_to_be_measured() -> None:
    known = known_of_partial({"jack": {"cup_depth_mm": 6, "cup_corner_radius_mm": 5.5}})
    assert (known.cup_depth_mm, known.cup_corner_radius_mm) == (6, None)


def test_a_failed_estimate_is_shown_where_it_occurs_with_its_numbers() -> None:
    """Oracle: the check's own value and limit; the slot's floor lies at the height of the web."""
    told = document("repair_cafe_people_carrier")
    design, section = design_pad(read_measurements(told)), section_of(told)
    failed, spot = design.failures[0], section.troubles[0]
    band = band_of(spot, section.scene)
    assert band.high[1] == design.pad.web_mm
    assert f"{failed.value:.1f} MPa, at most {failed.limit:.1f} MPa" in " ".join(_parsed(section).itertext())


def test_a_conflict_is_marked_with_both_numbers_where_the_pad_has_no_room() -> None:
    """Oracle: the two bounds of the error."""
    measurements = read_measurements(document("rowing_club_trailer_car_no_pad"))
    with pytest.raises(NoPadFitsError) as caught:
        design_pad(measurements)
    section = section_of_conflict(measurements, caught.value)
    band = band_of(section.troubles[0], section.scene)
    assert [line[0][1] for line in band.levels] == [caught.value.lower.value_mm, caught.value.upper.value_mm]
    assert "at least 19.5 mm, at most −2.63 mm: no room" in _words(section)


@pytest.mark.parametrize(
    "place", sorted({rule.place for rule in CHECK_RULES.values()} | set(PLACE_OF_DIMENSION.values()))
)
def test_every_place_has_a_stretch_of_its_own(place: str) -> None:
    """Oracle: an unknown place falls back to the body's side, which no known place but the body may do."""
    section = section_of(document("tool_library_hatchback_stem"))
    band, unknown = (
        band_of(TroubleSpot(p, "", 1, 2, "mm", "at_most"), section.scene) for p in (place, "somewhere else")
    )
    assert (band == unknown) == (place == "body")


def test_every_dimension_of_a_conflict_has_its_place() -> None:
    assert set(PLACE_OF_DIMENSION) == set(DIMENSIONS)


def test_the_lit_field_alone_shows_its_dimension_line() -> None:
    section = section_of(document("mobile_library_van"))
    assert to_svg(section).count("lit-dimension") == 0
    for key in [*BALLOONS, "fixed.web_mm", "fixed.seat_diameter_mm"]:
        lit = _parsed(section, lit=key)
        assert len(lit.findall(f".//{_SVG}g[@class='lit-dimension']")) == 1
        assert [a.get("data-field") for a in lit.iter(f"{_SVG}a") if " lit" in a.get("class", "")] == [key] * (
            key in BALLOONS
        )


@pytest.mark.parametrize("key", sorted(BALLOONS))
def test_a_detail_shows_one_balloon_and_says_its_value(key: str) -> None:
    section = section_of(document("mobile_library_van"))
    (link,) = _parsed(section, width=390, detail=key).iter(f"{_SVG}a")
    assert link.get("data-field") == key


def test_words_and_numbers_stand_in_the_viewers_unit() -> None:
    """Oracle: 63.5 mm is 2.5 in, 203.2 mm is 8 in."""
    words = _words(section_of(document("allotment_estate_inch_shop")), units="in")
    assert "cup bore 2.5 in" in words
    assert "seam edge above ground 8 in" in words
    assert " mm" not in words


@settings(max_examples=60, deadline=None)
@given(section=sections())
def test_the_words_name_every_measurement_that_is_known_or_wanted(section: Section) -> None:
    words = _words(section)
    for pointer in section.pointers:
        title = GROUPS[pointer.field.split(".")[0]].model_fields[pointer.field.split(".")[1]].title or ""
        if pointer.value_mm is not None or not pointer.is_optional:
            assert title[1:] in words


def test_what_somebody_typed_is_shown_as_typed_and_cannot_become_markup() -> None:
    typed = {"jack.cup_bore_mm": '2-1/2"', "jack.cup_depth_mm": "<script>"}
    root = _parsed(section_of(document("mobile_library_van")), typed=typed)
    texts = [text.text for text in root.iter(f"{_SVG}text")]
    assert '2-1/2"' in texts
    assert "<script>" in texts
    assert not list(root.iter(f"{_SVG}script"))


@settings(max_examples=60, deadline=None)
@given(section=sections())
def test_a_label_of_a_measurement_is_never_cut(section: Section) -> None:
    labels = [line.words for placed in page_of(section).placed if placed.pointer for line in placed.label]
    assert not [words for words in labels if words.endswith("…")]


def test_text_is_never_wider_than_estimated_in_the_shipped_font() -> None:
    """Oracle: advance widths of DejaVu Sans, from the font file."""
    font = TTFont(_ROOM / "fonts" / "DejaVuSans.ttf")
    names, advances, em = font.getBestCmap(), font["hmtx"], font["head"].unitsPerEm
    for character in [chr(code) for code in range(32, 127)] + list("°⌀−–…≤≥×½’"):
        assert advances[names[ord(character)]][0] / em <= text_width(character, 1.0) + 1e-3


@settings(deadline=None)
@given(st.text(alphabet="abc mW", max_size=80), st.integers(1, 3))
def test_wrapped_lines_fit_and_lose_words_only_at_the_end(words: str, most: int) -> None:
    lines = wrapped(words, size=10, width=60, most=most)
    assert len(lines) <= most
    assert all(text_width(line, 10) <= 60 + 1e-9 for line in lines)


def test_without_a_pad_the_marks_given_are_still_drawn() -> None:
    spot = TroubleSpot("rim", "Seam's edge above the cup's rim", 0.4, 1.0, "mm", "at_least")
    assert "0.4 mm, at least 1 mm" in " ".join(_parsed(assembled_section(Known(), None, (spot,))).itertext())


def test_the_section_needs_neither_drawing_library_nor_kernel() -> None:
    """Oracle: the imports as written; only these rooms of the drawing are redrawn on every change."""
    for room in sorted(_ROOM.glob("section*.py")):
        imported = {
            name
            for node in ast.walk(ast.parse(room.read_text(encoding="utf-8")))
            if isinstance(node, ast.Import | ast.ImportFrom)
            for name in ([node.module or ""] if isinstance(node, ast.ImportFrom) else [a.name for a in node.names])
        }
        assert not {name for name in imported if name.split(".")[0] in {"ezdxf", "cadquery", "OCP", "typst"}}
        assert not {
            n for n in imported if n.startswith("geometry.drawing.") and not n.startswith("geometry.drawing.section")
        }
