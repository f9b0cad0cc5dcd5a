"""The DXF file as LibreCAD, a drawing program of its own, plots it: words, hatching and chain lines are really there.

The program writes letters as strokes, so a word is read by the program's own hand: the same word plotted from a plain text
at the same height must appear stroke for stroke. A DIMENSION's number is measured by the program (``<>`` in the file).
"""

import math
import os
import re
import shutil
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest
from ezdxf.filemanagement import new

from geometry.drawing import Drawing, to_dxf
from geometry.pad import Pad
from tests.drawing.pads import KNOWN, TYPICAL, drawn

PROGRAM = shutil.which("librecad")
pytestmark = pytest.mark.skipif(
    not PROGRAM and not os.environ.get("CI"), reason="LibreCAD is not installed (Debian: apt-get install librecad)"
)
Stroke = tuple[complex, complex, float]
"""Where a stroke begins and ends on the plot, and how long it is, in 0.06 point."""
NEAR = 12.0
"""A tenth of the height of a letter."""


def plotted(dxf: str, folder: Path) -> list[Stroke]:
    """Every stroke of the program's plot, in its order."""
    (folder / "f.dxf").write_text(dxf, encoding="utf-8")
    command = [str(PROGRAM), "dxf2pdf", "-a", "-c", "-p", "210x297", "f.dxf"]
    environment = os.environ | {"QT_QPA_PLATFORM": "offscreen", "HOME": str(folder), "XDG_RUNTIME_DIR": str(folder)}
    subprocess.run(command, cwd=folder, env=environment, capture_output=True, check=True, timeout=60)
    qpdf = [str(shutil.which("qpdf")), "--qdf", "--object-streams=disable", "f.pdf", "-"]
    return _strokes(subprocess.run(qpdf, cwd=folder, capture_output=True, check=True).stdout.decode("latin-1"))


def _strokes(operators: str) -> list[Stroke]:
    found: list[Stroke] = []
    path: list[complex] = []
    for line in operators.splitlines():
        if match := re.fullmatch(r"(-?[\d.]+) (-?[\d.]+) ([ml])", line):
            path = [] if match[3] == "m" else path
            path.append(complex(float(match[1]), float(match[2])))
        elif line.startswith("S") and path:
            found.append((path[0], path[-1], sum(abs(b - a) for a, b in pairwise(path))))
            path = []
    return found


def turns_deg(drawing: Drawing) -> list[float]:
    """How words may be turned: level, upright, and along the line of a radius."""
    found = {0.0, 90.0}
    for dimension in drawing.dimensions:
        if dimension.kind == "radius":
            (ax, ay), (bx, by) = dimension.lines[0].start, dimension.lines[0].end
            turn = math.degrees(math.atan2(by - ay, bx - ax)) % 180
            found.add(round(turn - 180 if turn > 90 else turn, 6))
    return sorted(found)


def hands(words: list[str], drawing: Drawing, folder: Path) -> dict[str, list[list[Stroke]]]:
    """Each word as the program writes a plain text at several turns, on a page of the same size."""
    document = new("R2010", units=4)
    space, grown = document.modelspace(), 1 / drawing.scale.factor
    size = (drawing.width_mm * grown, drawing.height_mm * grown)
    space.add_line((0, 0), size)
    for word in words:
        for turn in turns_deg(drawing):
            space.add_text(word, height=2.5 * grown, dxfattribs={"rotation": turn}).set_placement(
                (100 * grown, 150 * grown)
            )
            space.add_line((0, 0), size)
    path = folder / "hand.dxf"
    document.saveas(path)
    strokes = plotted(path.read_text(encoding="utf-8"), folder)
    groups: list[list[Stroke]] = []
    for stroke in strokes:
        if stroke[2] == strokes[0][2]:
            groups.append([])
        else:
            groups[-1].append(stroke)
    step = len(turns_deg(drawing))
    return {word: groups[i * step : (i + 1) * step] for i, word in enumerate(words)}


def is_written(word: list[Stroke], plot: list[Stroke]) -> bool:
    """Whether the strokes of a word stand somewhere on the plot, one after the other."""
    assert len(word) > 2
    return any(_agree(word, plot[k : k + len(word)]) for k in range(len(plot) - len(word) + 1))


def _agree(word: list[Stroke], there: list[Stroke]) -> bool:
    by = there[0][0] - word[0][0]
    return all(
        abs(a[0] + by - b[0]) < NEAR and abs(a[1] + by - b[1]) < NEAR and abs(a[2] - b[2]) < NEAR
        for a, b in zip(word, there, strict=True)
    )


def spelled(words: str) -> str:
    """Words of the sheet as plain text of a DXF file."""
    return words.replace("⌀", "%%c").replace("±", "%%p").replace("°", "%%d").replace("×", "x").replace("◆", "*")


@pytest.fixture(params=["typical", "tiny", "long stem"])
def pad(request: pytest.FixtureRequest) -> Pad:
    return KNOWN[request.param]


def test_another_program_writes_every_dimension_as_the_sheet_does(pad: Pad, tmp_path: Path) -> None:
    drawing = drawn(pad)
    plot = plotted(to_dxf(drawing), tmp_path)
    words = [spelled(dimension.text.words) for dimension in drawing.dimensions]
    missing = [w for w, turns in hands(words, drawing, tmp_path).items() if not any(is_written(t, plot) for t in turns)]
    assert missing == []


def test_a_size_that_is_not_on_the_sheet_is_not_found_on_the_plot(tmp_path: Path) -> None:
    """The reading can fail: neighbours of true sizes are not found."""
    drawing = drawn(TYPICAL)
    plot = plotted(to_dxf(drawing), tmp_path)
    wrong = hands(["%%c67.3", "%%c76", "17", "16.6", "R6"], drawing, tmp_path)
    assert not any(is_written(turn, plot) for turns in wrong.values() for turn in turns)


def test_another_program_hatches_the_section(tmp_path: Path) -> None:
    """Oracle: 45° lines 2.2 mm apart cross a section 74 mm wide and 36.5 mm high about (74 + 36.5) / 3.1 = 35 times."""
    level = [
        length
        for start, end, length in plotted(to_dxf(drawn(TYPICAL)), tmp_path)
        if length > 2 * NEAR
        and abs(abs(math.degrees(math.atan2((end - start).imag, (end - start).real))) % 90 - 45) < 1
    ]
    assert len(level) >= 35


def test_another_program_draws_centre_lines_as_chains(tmp_path: Path) -> None:
    """Oracle: a plot of the same file with every line type solid has fewer strokes."""
    chained = to_dxf(drawn(TYPICAL))
    assert "DASHDOT" in chained
    solid = chained.replace("\nDASHDOT\n", "\nCONTINUOUS\n")
    assert len(plotted(chained, tmp_path)) > len(plotted(solid, tmp_path)) + 10
