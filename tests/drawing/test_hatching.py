"""Hatching at 45° beside edges that run at 45° too, such as chamfers; oracle: distances worked out here."""

from io import StringIO
from math import sqrt

from ezdxf.entities.boundary_paths import PolylinePath
from ezdxf.entities.hatch import Hatch
from ezdxf.filemanagement import read
from hypothesis import given
from hypothesis import strategies as st

from geometry.drawing import draw, to_dxf
from geometry.drawing.hatching import hatching_through
from geometry.drawing.model import Area
from geometry.drawing.style import STYLE
from tests.drawing.test_practice import sheet_of


def off_a_line(level: float, through: tuple[float, float]) -> float:
    """How far a line at 45° lies from the nearest line of the hatching, mm."""
    off = (level - (through[1] - through[0]) / sqrt(2)) % STYLE.hatch_step_mm
    return min(off, STYLE.hatch_step_mm - off)


def begins_at(hatch: Hatch, corner: tuple[float, float]) -> bool:
    """Whether the region of a hatch begins at a corner."""
    path = hatch.paths.paths[0]
    assert isinstance(path, PolylinePath)
    return abs(path.vertices[0][0] - corner[0]) < 0.01 and abs(path.vertices[0][1] - corner[1]) < 0.01


@given(x=st.floats(-200, 200), y=st.floats(-200, 200), size=st.floats(5, 60), edge=st.floats(2, 4))
def test_no_line_of_the_hatching_lies_on_a_chamfer(x: float, y: float, size: float, edge: float) -> None:
    corners = [(x, y), (x + size - edge, y), (x + size, y + edge), (x + size, y + size), (x, y + size)]
    through = hatching_through(corners, [0.0] * 5)
    level = (y - (x + size - edge)) / sqrt(2)
    assert off_a_line(level, through) > STYLE.hatch_step_mm / 3


def test_hatching_of_a_region_without_such_edges_begins_at_the_sheets_corner() -> None:
    assert hatching_through([(0, 0), (10, 0), (10, 5), (0, 5)], [0.0] * 4) == (0.0, 0.0)
    assert hatching_through([(0, 0), (10, 0), (15, 5), (0, 5)], [0.0, 1.0, 0.0, 0.0]) == (0.0, 0.0)


def test_the_hatching_in_the_file_keeps_off_the_chamfer_of_a_detail() -> None:
    """Its chamfer runs as the hatching does, and once had a line of it within its own."""
    pad, sheet = sheet_of("lifeguard_station_pickup_round_plug")
    drawing = draw(pad, sheet)
    (detail,) = (placed for placed in drawing.views if placed.view.name == "Z")
    (area,) = (shape for shape in detail.view.shapes if isinstance(shape, Area))
    corners = [detail.on_paper(point) for point in area.points]
    levels = [
        (a[1] - a[0]) / sqrt(2)
        for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
        if abs((b[1] - a[1]) - (b[0] - a[0])) < 1e-6 and abs(b[0] - a[0]) > 2
    ]
    assert len(levels) == 1
    grown = 1 / drawing.scale.factor
    hatches = [entity for entity in read(StringIO(to_dxf(drawing))).modelspace() if isinstance(entity, Hatch)]
    starts = [
        (line.base_point.x / grown, line.base_point.y / grown)
        for hatch in hatches
        if hatch.pattern and begins_at(hatch, (corners[0][0] * grown, corners[0][1] * grown))
        for line in hatch.pattern.lines
    ]
    (start,) = starts
    assert off_a_line(levels[0], start) > STYLE.hatch_step_mm / 3
