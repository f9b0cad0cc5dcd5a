"""Each output read back by a program of its own: ezdxf, pdftotext, qpdf, an XML parser."""

import hashlib
import re
import shutil
import subprocess
import sys
from io import StringIO
from math import dist
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from ezdxf.document import Drawing as Document
from ezdxf.entities.dimension import Dimension as DimensionEntity
from ezdxf.entities.hatch import Hatch
from ezdxf.filemanagement import read
from numpy.typing import NDArray

from geometry.cautions import ONE_LINE
from geometry.drawing import Drawing, draw, to_dxf, to_pdf, to_png, to_svg
from geometry.drawing.frame import NOT_FIT
from geometry.drawing.model import Curve, Layer, Line
from geometry.drawing.svg import all_texts
from geometry.geometrical import GEOMETRICAL_TOLERANCES
from geometry.pad import Pad
from tests.drawing.pads import KNOWN, LONG_STEM, TYPICAL, drawn, facts, shown_sizes
from tests.geometry.pads import EVERY_KIND

SVG = "{http://www.w3.org/2000/svg}"
_WORD = r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]+)</word>'
LINEAR = {
    "seat_diameter_mm",
    "seat_length_mm",
    "body_diameter_mm",
    "slot_width_mm",
    "slot_depth_mm",
    "web_mm",
    "stem_diameter_mm",
    "stem_length_mm",
    "top_height_mm",
    "overall_height_mm",
}


@pytest.fixture(params=KNOWN)
def pad(request: pytest.FixtureRequest) -> Pad:
    return KNOWN[request.param]


def read_dxf(drawing: Drawing) -> Document:
    return read(StringIO(to_dxf(drawing)))


def test_every_dimension_of_the_pad_is_on_the_drawing_exactly_once(pad: Pad) -> None:
    shown = sorted((d.measure.name, d.measure.nominal_mm) for d in drawn(pad).dimensions)
    assert shown == sorted(shown_sizes(pad).items())


def test_a_reader_of_the_dxf_file_measures_the_pads_lengths(pad: Pad) -> None:
    """Oracle: ezdxf measures each DIMENSION entity from its points; model space is true size."""
    document = read_dxf(drawn(pad))
    entities = [
        e for e in document.modelspace().query("DIMENSION") if isinstance(e, DimensionEntity) and e.dimtype == 0
    ]
    measured = sorted(round(float(e.get_measurement()), 6) for e in entities)
    wanted = sorted(round(value, 6) for name, value in shown_sizes(pad).items() if name in LINEAR)
    assert measured == pytest.approx(wanted, abs=1e-6)


def test_the_dxf_file_passes_the_librarys_audit(pad: Pad) -> None:
    auditor = read_dxf(drawn(pad)).audit()
    assert not auditor.errors
    assert not auditor.fixes


def test_the_dxf_file_has_real_hatches_and_a_layer_for_each_kind_of_line() -> None:
    document = read_dxf(drawn(TYPICAL))
    assert len(document.modelspace().query("HATCH")) >= 2
    assert {"VISIBLE", "HIDDEN", "CENTRE", "HATCH", "DIMENSION", "TOLERANCE", "CAUTION"} <= {
        layer.dxf.name for layer in document.layers
    }


def test_tolerance_frames_lie_on_a_layer_of_their_own() -> None:
    """Oracle: the zones and datums of the room that the checks read; sizes stay on the layer of dimensions."""
    drawing = drawn(TYPICAL)
    words = {text.words for text in all_texts(drawing) if text.layer == Layer.TOLERANCE}
    assert {f"{t.value_mm:g}" for t in GEOMETRICAL_TOLERANCES} <= words
    assert {t.datum for t in GEOMETRICAL_TOLERANCES} <= words
    assert not words & {dimension.text.words for dimension in drawing.dimensions}
    assert len(read_dxf(drawing).modelspace().query('LINE[layer=="TOLERANCE"]')) > 10


def test_the_hatched_area_in_the_dxf_file_is_the_sections_area(pad: Pad) -> None:
    """Oracle: width of the turned profile less the slot's, summed over 20 000 levels."""
    from geometry.drawing.views import outermost_at
    from geometry.profile import slot_outline, turned_outline

    steps, low = 20_000, -pad.stem_length_mm
    step = pad.overall_height_mm / steps
    area = 0.0
    for z in (low + (i + 0.5) * step for i in range(steps)):
        slot = outermost_at(slot_outline(pad), z) if z > pad.web_mm else 0.0
        area += 2 * step * (outermost_at(turned_outline(pad), z) - slot)
    section = next(iter(read_dxf(drawn(pad)).modelspace().query("HATCH")))
    assert isinstance(section, Hatch)
    assert _area(section.paths[0]) == pytest.approx(area, rel=1e-3)


def _area(path: object) -> float:
    """Area of a hatch's outline by the shoelace formula over its flattened edge."""
    from ezdxf.math import OCS, area
    from ezdxf.path import from_hatch_boundary_path

    return float(area(from_hatch_boundary_path(path, ocs=OCS()).flattening(0.001)))  # type: ignore[arg-type]


def test_other_readers_find_the_dimension_style_in_the_header() -> None:
    header = read_dxf(drawn(TYPICAL)).header
    assert (header["$DIMTXT"], header["$DIMASZ"], header["$DIMSCALE"]) == (2.5, 2.5, 1.0)


def test_texts_of_the_dxf_file_need_no_sign_outside_ascii_for_dimensions() -> None:
    texts = [e.dxf.text for e in read_dxf(drawn(LONG_STEM)).modelspace().query("DIMENSION")]
    assert "%%c<>" in texts
    assert all(text.isascii() for text in texts)


def test_same_input_gives_the_same_bytes(pad: Pad) -> None:
    first, second = draw(pad, facts()), draw(pad, facts())
    assert to_dxf(first) == to_dxf(second)
    assert to_svg(first) == to_svg(second)
    assert to_pdf(first) == to_pdf(second)


def test_another_process_writes_the_same_bytes(tmp_path: Path) -> None:
    """A new process has other hash seeds, other counters and another clock."""
    drawing = drawn(TYPICAL)
    out = _in_new_process(
        "print(*(hashlib.sha256(b).hexdigest() for b in (to_dxf(d).encode(), to_svg(d).encode(), to_pdf(d))))", tmp_path
    )
    assert out.split() == [
        hashlib.sha256(data).hexdigest()
        for data in (to_dxf(drawing).encode(), to_svg(drawing).encode(), to_pdf(drawing))
    ]


def _in_new_process(code: str, home: Path) -> str:
    """Run code with a drawing ``d`` of the typical pad, in a home without fonts or caches."""
    start = (
        "import hashlib\nfrom geometry.drawing import draw, to_dxf, to_pdf, to_svg\n"
        "from tests.drawing.pads import TYPICAL, facts\nd = draw(TYPICAL, facts())\n"
    )
    environment = {"HOME": str(home), "XDG_CACHE_HOME": str(home / "c"), "XDG_DATA_HOME": str(home / "d"), "PATH": ""}
    result = subprocess.run(
        [sys.executable, "-c", start + code], env=environment, capture_output=True, text=True, check=True
    )
    return result.stdout


def test_a_machine_without_fonts_draws_every_dimension(tmp_path: Path) -> None:
    """The library's list of font folders is emptied before anything is drawn; letters are read back from their outlines."""
    code = (
        "from ezdxf.fonts import fonts, font_manager as m\n"
        "m.LINUX_FONT_DIRS[:] = []; fonts.font_manager.clear()\n"
        "print(to_svg(draw(TYPICAL, facts())))"
    )
    svg = _in_new_process(code, tmp_path)
    assert {"⌀67.2", "⌀74", "14", "20", "16.5", "8", "R5", "2× R0.5 ±0.1", "(36.5)", "2× 1 × 45°"} <= set(
        outlined_words(svg)
    )


def outlined_words(svg: str) -> list[str]:
    """Words spelled by glyph outlines: a space is a gap between them."""
    root = ElementTree.fromstring(svg)  # noqa: S314
    outlines = {
        path.get("id"): path.get("d") for path in root.iter(f"{SVG}path") if (path.get("id") or "").startswith("glyph-")
    }
    words = []
    for group in root.iter(f"{SVG}g"):
        uses = group.findall(f"{SVG}use")
        if not uses:
            continue
        assert all(outlines[use.get("href", "")[1:]] for use in uses)
        letters = [chr(int(use.get("href", "").removeprefix("#glyph-"), 16)) for use in uses]
        given = group.get("data-words", "")
        assert "".join(letters) == re.sub(r"\s", "", given)
        words.append(given)
    return words


def test_the_svg_picture_says_every_word_of_the_sheet(pad: Pad) -> None:
    drawing = drawn(pad, units="dual")
    assert sorted(outlined_words(to_svg(drawing))) == sorted(text.words for text in all_texts(drawing))


def test_the_svg_picture_obeys_a_content_policy_that_allows_no_style() -> None:
    root = ElementTree.fromstring(to_svg(drawn(TYPICAL)))  # noqa: S314
    assert not list(root.iter(f"{SVG}style"))
    assert not list(root.iter(f"{SVG}script"))
    for element in root.iter():
        assert not {"style", "class"} & set(element.attrib)


def test_the_svg_picture_is_titled_and_described_for_screen_readers() -> None:
    root = ElementTree.fromstring(to_svg(drawn(TYPICAL, fit_to_make=False)))  # noqa: S314
    title, description = root[0], root[1]
    assert (title.tag, description.tag) == (f"{SVG}title", f"{SVG}desc")
    assert "K7Q3M9T2XW" in (title.text or "")
    assert (description.text or "").startswith("Not fit to make.")
    assert "Seat diameter ⌀67.2" in (description.text or "")


def test_the_svg_picture_has_true_paper_size() -> None:
    root = ElementTree.fromstring(to_svg(drawn(TYPICAL, paper="letter")))  # noqa: S314
    assert (root.get("width"), root.get("height")) == ("215.9mm", "279.4mm")


def pdf_text(pdf: bytes, tmp_path: Path) -> str:
    path = tmp_path / "drawing.pdf"
    path.write_bytes(pdf)
    tool = shutil.which("pdftotext")
    assert tool
    return subprocess.run([tool, "-layout", str(path), "-"], capture_output=True, text=True, check=True).stdout


def test_every_dimension_can_be_found_in_the_pdf(pad: Pad, tmp_path: Path) -> None:
    drawing = drawn(pad)
    text = pdf_text(to_pdf(drawing), tmp_path)
    for dimension in drawing.dimensions:
        assert dimension.text.words in text


def test_words_in_the_pdf_stand_where_the_layout_put_them(tmp_path: Path) -> None:
    """Oracle: poppler's own boxes of words, in points from the page's top left; lettering by another program (typst)."""
    drawing, path = drawn(TYPICAL), tmp_path / "drawing.pdf"
    path.write_bytes(to_pdf(drawing))
    tool = str(shutil.which("pdftotext"))
    page = subprocess.run([tool, "-bbox", str(path), "-"], capture_output=True, text=True, check=True).stdout
    found = {m[5]: [float(m[i]) * 25.4 / 72 for i in range(1, 5)] for m in re.finditer(_WORD, page)}
    for dimension in drawing.dimensions:
        box, words = dimension.text.box, dimension.text.words
        if " " in words or dimension.text.turned:
            continue
        left, top, right, bottom = found[words]
        assert (left, right) == pytest.approx((box.left, box.right), abs=0.05)
        assert drawing.height_mm - bottom < dimension.text.at[1] < drawing.height_mm - top


def test_the_pdf_is_tagged_for_screen_readers(tmp_path: Path) -> None:
    path = tmp_path / "drawing.pdf"
    path.write_bytes(to_pdf(drawn(TYPICAL)))
    words = subprocess.run([str(shutil.which("pdfinfo")), str(path)], capture_output=True, text=True, check=True).stdout
    assert re.search(r"Tagged: +yes", words)
    assert re.search(r"Title: +Lifting pad, left front point, part drawing K7Q3M9T2XW", words)


def test_the_pdf_is_sound_and_carries_its_font(tmp_path: Path) -> None:
    path = tmp_path / "drawing.pdf"
    path.write_bytes(to_pdf(drawn(LONG_STEM)))
    checked = subprocess.run(
        [str(shutil.which("qpdf")), "--check", str(path)], capture_output=True, text=True, check=True
    )
    assert "No syntax or stream encoding errors found" in checked.stdout
    fonts = subprocess.run(
        [str(shutil.which("pdffonts")), str(path)], capture_output=True, text=True, check=True
    ).stdout
    rows = fonts.splitlines()[2:]
    assert rows
    assert all("DejaVuSans" in row and re.search(r"yes yes yes", row) for row in rows)


def test_every_sheet_carries_the_caution_and_the_words_about_and_not_tested(tmp_path: Path) -> None:
    """11416 N in three figures; the caution's sentences stand inside the frame, in lettering that one can read (ISO 3098-1)."""
    drawing = drawn(TYPICAL)
    text = " ".join(pdf_text(to_pdf(drawing), tmp_path).split())
    assert all(sentence.strip(". ") in text for sentence in ONE_LINE.split(". "))
    assert "Load used in the estimates: about 11.4 kN, not tested." in text
    cautions = [text for text in all_texts(drawing) if text.layer == Layer.CAUTION]
    assert min(text.height_mm for text in cautions) >= 2.5
    assert NOT_FIT not in text


def test_a_pad_that_is_not_fit_states_no_load(tmp_path: Path) -> None:
    assert " kN" not in pdf_text(to_pdf(drawn(TYPICAL, fit_to_make=False)), tmp_path)


def test_a_pad_that_is_not_fit_says_so_in_every_output(tmp_path: Path) -> None:
    drawing = drawn(TYPICAL, fit_to_make=False, not_fit_words="The slot floor is overloaded.")
    assert NOT_FIT in pdf_text(to_pdf(drawing), tmp_path)
    assert NOT_FIT in outlined_words(to_svg(drawing))
    assert NOT_FIT in {e.dxf.text for e in read_dxf(drawing).modelspace().query("TEXT")}


def test_the_png_is_a_picture_of_the_whole_page() -> None:
    data = to_png(drawn(TYPICAL), dots_per_inch=72)
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = (int.from_bytes(data[at : at + 4], "big") for at in (16, 20))
    assert (width, height) == pytest.approx((210 / 25.4 * 72, 297 / 25.4 * 72), abs=1.5)


def _ends_of_paths(svg: str) -> NDArray[np.float64]:
    """Where each path of straight steps begins and ends, in hundredths of a millimetre from the page's upper left corner."""
    found = []
    for path in re.findall(r' d="M ([-\d l]+)"', svg):
        steps = np.array(path.replace("l", " ").split(), dtype=float).reshape(-1, 2)
        found.append((*steps[0], *steps.sum(axis=0)))
    return np.array(found)


@pytest.mark.parametrize("name", ["crossed slots", "offset slot", "skirt", "flats"])
def test_a_curve_of_the_picture_ends_on_the_page_where_it_ends_in_the_view(name: str) -> None:
    """The page has whole steps of 0.01 mm, each from the last: through points much nearer than that a floor ran askew."""
    drawing = drawn(EVERY_KIND[name])
    ends = _ends_of_paths(to_svg(drawing))
    (placed,) = (placed for placed in drawing.views if placed.view.name == "isometric")
    curves = [shape for shape in placed.view.shapes if isinstance(shape, Curve)]
    assert curves
    for curve in curves:
        (ax, ay), (bx, by) = placed.on_paper(curve.points[0]), placed.on_paper(curve.points[-1])
        wanted = np.array([ax, drawing.height_mm - ay, bx, drawing.height_mm - by]) * 100
        assert np.abs(ends - wanted).max(axis=1).min() < 10


def test_a_hidden_line_hardly_longer_than_a_dash_is_dashed_too() -> None:
    """Two dashes and a gap at least; a line type has dashes of 12 line widths (ISO 128-2, from memory)."""
    drawing = drawn(EVERY_KIND["skirt"])
    lines = read_dxf(drawing).modelspace().query("LINE")
    hidden = [line for line in lines if line.dxf.layer == "HIDDEN"]
    lengths: dict[str, list[float]] = {kind: [] for kind in ("BYLAYER", "CONTINUOUS")}
    for line in hidden:
        lengths[line.dxf.get("linetype", "BYLAYER")].append(
            line.dxf.start.distance(line.dxf.end) * drawing.scale.factor
        )
    assert 0 < max(lengths["CONTINUOUS"]) < 3.0
    assert min(lengths["BYLAYER"]) > 2 * 3.0 + 0.75
    side = next(placed for placed in drawing.views if placed.view.name == "side")
    walls = [s for s in side.view.shapes if isinstance(s, Line) and s.layer is Layer.HIDDEN]
    short = [wall for wall in walls if dist(wall.start, wall.end) * drawing.scale.factor < 6.75]
    assert short
    assert len(lengths["CONTINUOUS"]) >= 2 * len(short)
