"""The main view with its dimensions: section A–A across the slot, everything sized by function from the seat face."""

from collections.abc import Callable, Iterator

from geometry.drawing.canvas import BESIDE, Canvas
from geometry.drawing.main_notes import corner_note, edge_note, mouth_note
from geometry.drawing.main_plan import Plan, half_body
from geometry.drawing.main_signs import datums, lip_run_out, top_signs
from geometry.drawing.main_sizes import diameters, diameters_further_out, heights, reaches
from geometry.drawing.meeting import axes_of, rival
from geometry.drawing.model import Box, Measure
from geometry.drawing.placing import NoRoomError
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE
from geometry.drawing.views import section_view
from geometry.pad import Pad

_LITTLE_TROUBLE = 2.5
"""An outer radius crosses an extension line of its own seat, a frame beside the slot's width one of the body's."""

_MOVED = 0.3
"""What it costs that one has to look for something at another view."""

_Step = Callable[[Canvas, Pad, dict[str, Measure], Scale, Plan], None]


class SectionCanvases:
    """The section at a scale with its dimensions, in paper mm about the view's origin, clear of its details' windows.

    Where one order of placing leaves leaders in the way of other lines, others are tried; what several orders begin with is
    placed once.
    """

    def __init__(self, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan, *, patience: int) -> None:
        self.of = (pad, shown, scale, plan)
        empty = _empty_canvas(pad, scale, plan)
        empty.patience = patience
        self.begun: dict[tuple[_Step, ...], Canvas | None] = {(): empty}
        self.found: list[Canvas] = []
        self.orders = iter(_ORDERS)

    def all(self) -> Iterator[Canvas]:
        """All that have room, in the order in which they are tried."""
        yield from tuple(self.found)
        for order in self.orders:
            canvas = self._after(order)
            if canvas:
                self.found.append(canvas)
                yield canvas

    def best(self) -> list[Canvas]:
        """All that have room, those that leave least trouble first; once one leaves little, no more are tried."""
        for canvas in self.all():
            if trouble_of(canvas) <= _LITTLE_TROUBLE:
                break
        return sorted(self.found, key=trouble_of)

    def _after(self, steps: tuple[_Step, ...]) -> Canvas | None:
        """What some steps leave; nothing where one of them finds no room."""
        if steps not in self.begun:
            before = self._after(steps[:-1])
            canvas = before.copied() if before else None
            try:
                if canvas:
                    steps[-1](canvas, *self.of)
            except NoRoomError:
                canvas = None
            self.begun[steps] = canvas
        return self.begun[steps]


def trouble_of(canvas: Canvas) -> float:
    """What could not be helped on a section, and what it leaves to other views."""
    return canvas.trouble + _MOVED * len(canvas.moved)


def _empty_canvas(pad: Pad, scale: Scale, plan: Plan) -> Canvas:
    """The part's own places, that no words may stand on, and its axis."""
    k = scale.factor
    seat, body = pad.seat_diameter_mm * k / 2, half_body(pad) * k
    low, high, top = pad.foot_bottom_mm * k, pad.body_top_mm * k, pad.top_height_mm * k
    lip = pad.seat_length_mm * k
    canvas = Canvas(plan.right_limit, solids=[Box(-body, lip, body, high), Box(-seat, 0, seat, lip)])
    if pad.has_skirt:
        bore = pad.skirt_bore_mm * k / 2
        canvas.solids += [Box(-body, low, -bore, lip), Box(bore, low, body, lip)]
        # Behind the cut the skirt's rim shows from wall to wall.
        canvas.lines.append(((-bore, low), (bore, low)))
    if pad.has_stem:
        stem = pad.stem_diameter_mm * k / 2
        canvas.solids.append(Box(-stem, -pad.stem_length_mm * k, stem, 0))
    if pad.has_plug:
        plug = pad.plug_width_mm * k / 2
        canvas.solids.append(Box(-plug, high, plug, top))
    canvas.part = list(canvas.solids)
    shapes = section_view(pad, over_mm=STYLE.centre_over_mm / k, apart_mm=STYLE.least_apart_mm / k).shapes
    canvas.add_edges(shapes, k)
    for (x, y), reach in plan.windows:
        canvas.solids.append(Box((x - reach) * k, (y - reach) * k, (x + reach) * k, (y + reach) * k))
        canvas.circles.append(((x * k, y * k), reach * k))
    axes = axes_of(shapes, k)
    canvas.lines += axes
    canvas.ends += [end for axis in axes for end in axis]
    canvas.rivals += [rival(axis, across=0.0, beside=BESIDE) for axis in axes]
    return canvas


_ORDERS: tuple[tuple[_Step, ...], ...] = (
    (heights, diameters, reaches, datums, top_signs, lip_run_out, corner_note, mouth_note, edge_note),
    # Long words on a leader out of the slot go by below the outer diameter where no sign stands at the slot's dimension yet.
    (heights, diameters, reaches, mouth_note, datums, top_signs, lip_run_out, corner_note, edge_note),
    (heights, diameters_further_out, reaches, mouth_note, datums, top_signs, lip_run_out, corner_note, edge_note),
    (heights, diameters, reaches, mouth_note, lip_run_out, edge_note, corner_note, datums, top_signs),
    # So does what stands on the top of a body without a slot.
    (heights, mouth_note, top_signs, diameters, reaches, datums, lip_run_out, corner_note, edge_note),
    (heights, mouth_note, top_signs, diameters, reaches, lip_run_out, corner_note, edge_note, datums),
    (heights, reaches, diameters, datums, top_signs, lip_run_out, corner_note, mouth_note, edge_note),
    # Long words on leaders may find room where signs have not taken it yet.
    (heights, reaches, diameters, corner_note, mouth_note, edge_note, datums, top_signs, lip_run_out),
    (heights, diameters, reaches, corner_note, mouth_note, edge_note, datums, top_signs, lip_run_out),
    # Signs at the end of a dimension line go where long words of depths would stand.
    (heights, diameters, datums, reaches, top_signs, lip_run_out, corner_note, mouth_note, edge_note),
)
"""What is placed first finds room most easily."""
