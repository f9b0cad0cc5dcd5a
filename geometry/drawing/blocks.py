"""Each view with everything that belongs to it, ready to be placed on a sheet."""

from dataclasses import dataclass
from math import inf

from geometry.drawing.canvas import Canvas, arrow_line
from geometry.drawing.details import Detail
from geometry.drawing.facts import Units
from geometry.drawing.isometric import isometric_view
from geometry.drawing.main_view import section_canvas
from geometry.drawing.model import Box, Layer, Line, Measure, Text, View
from geometry.drawing.placing import place_letter
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE
from geometry.drawing.views import side_view, top_view, underside_view
from geometry.pad import Pad

_LETTER_ANGLES = (30, 20, -30, 45, -45, 60, -60, 150, 160, 210, 135, 225, 75, -75, 105, -105)
_SIGHT_ARROW_MM = 7.0


@dataclass(slots=True)
class Block:
    """A view with its dimensions, marks and name, in paper mm about the view's origin."""

    view: View
    scale: Scale
    canvas: Canvas

    @property
    def box(self) -> Box:
        """All that it covers."""
        return self.canvas.box


def section_block(
    pad: Pad,
    shown: dict[str, Measure],
    scale: Scale,
    units: Units,
    details: tuple[Detail, ...],
    *,
    right_limit: float = inf,
) -> Block:
    """The main view with its dimensions, the marks of its details, its name and the sight of view C."""
    windows = tuple((detail.centre, detail.window_mm) for detail in details)
    view, canvas = section_canvas(pad, shown, scale, units, windows=windows, right_limit=right_limit)
    for detail in details:
        centre = (detail.centre[0] * scale.factor, detail.centre[1] * scale.factor)
        radius = detail.window_mm * scale.factor
        place_letter(canvas, detail.letter, centre=centre, radius=radius, angles_deg=_LETTER_ANGLES)
    canvas.add_text(Text((0, canvas.box.top + 3), "A–A", STYLE.large_mm, "centre"))
    if pad.has_stem:
        tip = canvas.box.bottom - 2
        tail = tip - _SIGHT_ARROW_MM
        canvas.add_text(Text((2, tail), "C", STYLE.large_mm), *arrow_line((0, tail), (0, tip), 90, Layer.THIN))
    return Block(view, scale, canvas)


def top_block(pad: Pad, scale: Scale) -> Block:
    """The top view with the ends of the cutting plane, arrows in the direction of sight, and its letters (ISO 128-3)."""
    view = top_view(pad, over_mm=STYLE.centre_over_mm / scale.factor)
    canvas = _canvas(view, scale)
    over = view.box.right * scale.factor + STYLE.centre_over_mm
    for way in (-1, 1):
        end = way * (over + 5)
        plane = Line((way * (over + 1), 0), (end, 0), Layer.CUT)
        arrow = arrow_line((end, -_SIGHT_ARROW_MM), (end, -STYLE.thick_mm / 2), 90, Layer.THIN)
        letter = Text((end + way * 1.2, -_SIGHT_ARROW_MM), "A", STYLE.large_mm, "left" if way > 0 else "right")
        canvas.add_text(letter, plane, *arrow)
    return Block(view, scale, canvas)


def side_block(pad: Pad, scale: Scale, *, half: bool) -> Block:
    """The side view, or the half of it."""
    view = side_view(pad, over_mm=STYLE.centre_over_mm / scale.factor, half=half)
    return Block(view, scale, _canvas(view, scale))


def underside_block(pad: Pad, scale: Scale, *, main: Scale) -> Block:
    """View C from below, at a scale of its own where that differs from the main one."""
    view = underside_view(pad, over_mm=STYLE.centre_over_mm / scale.factor)
    canvas = _canvas(view, scale)
    name = "C" if scale == main else f"C ({scale.words})"
    canvas.add_text(Text((0, canvas.box.top + 1.5), name, STYLE.large_mm, "centre"))
    return Block(view, scale, canvas)


def isometric_block(pad: Pad, scale: Scale) -> Block:
    """The picture of the whole pad; it has no dimensions, so its scale does not matter."""
    view = isometric_view(pad)
    return Block(view, scale, _canvas(view, scale))


def _canvas(view: View, scale: Scale) -> Canvas:
    """The surroundings of a view: the part, and the centre lines that stand out of it."""
    k = scale.factor
    box = Box(view.box.left * k, view.box.bottom * k, view.box.right * k, view.box.top * k)
    canvas = Canvas(solids=[box])
    for shape in view.shapes:
        if isinstance(shape, Line) and shape.layer is Layer.CENTRE:
            (ax, ay), (bx, by) = shape.start, shape.end
            canvas.lines.append(((ax * k, ay * k), (bx * k, by * k)))
    return canvas
