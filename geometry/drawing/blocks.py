"""Each view with everything that belongs to it, ready to be placed on a sheet."""

from collections.abc import Iterator
from contextlib import suppress
from itertools import pairwise, product
from math import cos, inf, radians, sin

from geometry.drawing.block import ROUND_VIEWS, Block
from geometry.drawing.callouts import place_callout
from geometry.drawing.canvas import Canvas
from geometry.drawing.details import Detail
from geometry.drawing.facts import FigureUnit, SheetFacts
from geometry.drawing.isometric import isometric_view
from geometry.drawing.main_signs import with_signs
from geometry.drawing.meeting import arrow_line, axes_of
from geometry.drawing.model import Anchor, Arrow, Box, Layer, Line, Measure, Text, View
from geometry.drawing.notes import OnLeader
from geometry.drawing.placing import NoRoomError, place_letter
from geometry.drawing.plan import top_view, underside_view
from geometry.drawing.plan_view import add_plan_dimensions, moved_to_plan
from geometry.drawing.scales import Scale
from geometry.drawing.side import flat_end_mm, side_view
from geometry.drawing.side_signs import SideSigns, hidden_at_side, side_solids
from geometry.drawing.signs import lines_of_words
from geometry.drawing.style import STYLE
from geometry.drawing.views import section_view
from geometry.pad import Pad

_LETTER_ANGLES = (30, 20, -30, 60, -45, 10, -10, 150, 160, 210, 135, 240, 170, 190, -60, 120)
"""None along the hatching at 45°, in which a thin line would be lost, nor nearly along an upright wall."""
_MARK_ANGLES = (75.0, 60.0, 105.0, 120.0, 45.0, 135.0, -75.0, -60.0, -105.0, -120.0)
_RIM_ANGLES = (-45.0, 45.0, -30.0, 30.0, -60.0, 60.0, -135.0, 135.0, -70.0, 70.0, -120.0, 120.0)
_OFF_EDGE_MM = 1.2
_SIGHT_ARROW_MM = 7.0
_LETTERS = ((1.2, 0.0), (0.0, -STYLE.large_mm - 1.0), (1.2, _SIGHT_ARROW_MM - STYLE.large_mm / 2))
"""Where the letters of the cutting plane may stand, from the arrows' tails: beside them, below, and at the plane's end."""


def section_block(
    pad: Pad, with_sizes: Canvas, scale: Scale, details: tuple[Detail, ...], *, name_aside: bool = False
) -> Block:
    """The main view with its dimensions, the marks of its details and its name above it, or aside where that is as high.

    Raises NoRoomError where a detail's letter, or the name aside, finds no place.
    """
    is_fine = pad.slot_mouth_chamfer_mm * scale.factor >= STYLE.least_apart_mm
    k = scale.factor
    view = section_view(pad, over_mm=STYLE.centre_over_mm / k, apart_mm=STYLE.least_apart_mm / k, inner_edges=is_fine)
    canvas = with_sizes.copied()
    for detail in details:
        centre = (detail.centre[0] * scale.factor, detail.centre[1] * scale.factor)
        radius = detail.window_mm * scale.factor
        place_letter(canvas, detail.letter, centre=centre, radius=radius, angles_deg=_LETTER_ANGLES)
    canvas.add_text(
        _name_aside(canvas) if name_aside else Text((0, canvas.box.top + 3), "A–A", STYLE.large_mm, "centre")
    )
    return Block(view, scale, canvas)


def _name_aside(canvas: Canvas) -> Text:
    """The section's name no higher than what stands about it, as near the axis as there is room."""
    level = canvas.box.top - STYLE.large_mm
    for aside in range(0, round(max(-canvas.box.left, canvas.box.right)), 2):
        for way in (-1, 1):
            name = Text((way * aside, level), "A–A", STYLE.large_mm, "centre")
            if canvas.has_room(name.box.grown(STYLE.letter_clear_mm), ()):
                return name
    raise NoRoomError("no room for the section's name")


def with_told(
    pad: Pad, block: Block, unit: FigureUnit, wanted: frozenset[OnLeader]
) -> tuple[Block, frozenset[OnLeader]]:
    """A section or side view with what had better stand on leaders than in a note, and which of that found a good place."""
    is_side = block.view.name == "side"
    canvas, told = with_signs(
        block.canvas,
        pad,
        block.scale,
        unit,
        wanted - hidden_at_side(pad) if is_side else wanted,
        plug_mm=pad.plug_length_mm if is_side else pad.plug_width_mm,
        mirrored=block.view.box.left < 0,
        only_here=frozenset() if is_side else hidden_at_side(pad),
    )
    return Block(block.view, block.scale, canvas), told


def with_sight(section: Block, letter: str, *, aside: bool = False) -> Block:
    """The main view with the direction in which a view that stands elsewhere is seen: from below, or from the right.

    Raises NoRoomError where an arrow from the right finds no place.
    """
    canvas = section.canvas.copied()
    if aside:
        # The limit leaves room for a side view in projection, and this one is not.
        canvas.right_limit = inf
        canvas.add_text(*_sight_from_right(canvas, section, letter))
    else:
        tip = canvas.box.bottom - 2
        tail = tip - _SIGHT_ARROW_MM
        canvas.add_text(Text((2, tail), letter, STYLE.large_mm), *arrow_line((0, tail), (0, tip), 90, Layer.THIN))
    return Block(section.view, section.scale, canvas)


def _sight_from_right(canvas: Canvas, section: Block, letter: str) -> tuple[Text, Line, Arrow]:
    """An arrow at the right of the part, as near to it as there is room, with its letter above."""
    right, top = section.view.box.right * section.scale.factor, section.view.box.top * section.scale.factor
    for aside, share in product(range(3, 90, 2), (0.5, 0.3, 0.7)):
        tip = (right + aside, top * share)
        tail = (tip[0] + _SIGHT_ARROW_MM, tip[1])
        name = Text((tip[0] + 2.5, tip[1] + 1.2), letter, STYLE.large_mm)
        line, head = arrow_line(tail, tip, 180, Layer.THIN)
        box = Box(tip[0], tip[1], tail[0], name.box.top).grown(STYLE.letter_clear_mm - STYLE.clear_mm)
        if canvas.has_room(box, ()):
            return name, line, head
    raise NoRoomError(f"no room for the arrow of view {letter}")


def named(block: Block, letter: str) -> Block:
    """A view that stands apart, with its letter above it (ISO 128-3: reference arrows)."""
    canvas = block.canvas.copied()
    canvas.add_text(
        Text(
            ((block.view.box.left + block.view.box.right) * block.scale.factor / 2, canvas.box.top + 1.5),
            letter,
            STYLE.large_mm,
            "centre",
        )
    )
    return Block(block.view, block.scale, canvas)


def _coarse(pad: Pad, scale: Scale) -> Pad:
    """The pad without chamfers whose two lines would run into one on paper; the section and its details show them."""
    return pad.with_(
        **{
            name: 0.0
            for name in ("edge_chamfer_mm", "slot_mouth_chamfer_mm")
            if getattr(pad, name) * scale.factor < STYLE.least_apart_mm
        }
    )


def top_block(pad: Pad, shown: dict[str, Measure], scale: Scale, *, moved: frozenset[str]) -> Block:
    """The top view with its dimensions, what the section leaves to it, and cutting plane, arrows and letters (ISO 128-3)."""
    coarse = _coarse(pad, scale)
    view = top_view(coarse, over_mm=STYLE.centre_over_mm / scale.factor, apart_mm=STYLE.least_apart_mm / scale.factor)
    for letters in _LETTERS:
        canvas = _canvas(view, scale)
        _add_cutting_plane(canvas, view.box.right * scale.factor + STYLE.centre_over_mm, *letters)
        with suppress(NoRoomError):
            add_plan_dimensions(canvas, pad, shown, scale)
            moved_to_plan(canvas, coarse, shown, scale, moved)
            return Block(view, scale, canvas)
    raise NoRoomError(f"no room for the dimensions of the top view at {scale.words}")


def _add_cutting_plane(canvas: Canvas, over: float, aside: float, up: float) -> None:
    """The ends of the cutting plane, where it is looked at from, and its letters, so far aside of the arrows' tails and up."""
    for way in (-1, 1):
        end = way * (over + 5)
        plane = Line((way * (over + 1), 0), (end, 0), Layer.CUT)
        arrow = arrow_line((end, -_SIGHT_ARROW_MM), (end, -STYLE.thick_mm / 2), 90, Layer.THIN)
        anchor: Anchor = "centre" if not aside else "left" if way > 0 else "right"
        letter = Text((end + way * aside, up - _SIGHT_ARROW_MM), "A", STYLE.large_mm, anchor)
        canvas.add_text(letter, plane, *arrow)


def side_block(pad: Pad, scale: Scale, *, half: bool) -> Block:
    """The side view, or the half of it; of chamfers that are small on paper the cut corner alone."""
    view = side_view(
        pad, over_mm=STYLE.centre_over_mm / scale.factor, half=half, inner_edges=_coarse(pad, scale) == pad
    )
    canvas = _canvas(view, scale)
    canvas.solids = side_solids(pad, view, scale)
    canvas.part = list(canvas.solids)
    canvas.add_edges(view.shapes, scale.factor)
    return Block(view, scale, canvas)


def with_moved(
    pad: Pad, side: Block, shown: dict[str, Measure], facts: SheetFacts, moved: frozenset[str], *, right_limit: float
) -> Block:
    """The side view with what the section leaves to it, words no further right than a limit; raises NoRoomError."""
    canvas = side.canvas.copied()
    canvas.right_limit = right_limit
    SideSigns(canvas, pad, shown, side.scale, facts, whole=side.view.box.left < 0).place(moved)
    return Block(side.view, side.scale, canvas)


def with_marking(pad: Pad, block: Block, words: tuple[str, ...]) -> Block:
    """A side or top view with the words about marking on a leader at the body: a dot on its face, an arrow at its edge.

    Raises NoRoomError where they find no place.
    """
    canvas, k = block.canvas.copied(), block.scale.factor
    radius = pad.body_diameter_mm * k / 2
    sign, what = lines_of_words(words), "the words about marking"
    if block.view.name == "side":
        low, high = pad.foot_bottom_mm + pad.edge_chamfer_mm, pad.body_top_mm - pad.edge_chamfer_mm
        # A dot on a hidden edge would speak of that edge.
        hidden = [z for z in (pad.web_mm, pad.body_top_mm - pad.relief_depth_mm) if pad.has_slot]
        heights = [(low + (high - low) * share) * k for share in (0.6, 0.4, 0.75, 0.25, 0.85)]
        clear = [z for z in heights if all(abs(z - edge * k) > _OFF_EDGE_MM for edge in hidden)] or heights
        flat = flat_end_mm(pad) * k
        shares = (0.5, 0.35, 0.65) if flat else (0.45, 0.6, 0.3, 0.75)
        tips = [(flat + (radius - flat) * share, z) for z in clear for share in shares]
        place_callout(canvas, sign, tips, _MARK_ANGLES, what, dotted=True)
    else:
        for angle in _RIM_ANGLES:
            if pad.has_flats and abs(cos(radians(angle))) * pad.body_diameter_mm > pad.flats_width_mm:
                continue
            tip = (radius * cos(radians(angle)), radius * sin(radians(angle)))
            with suppress(NoRoomError):
                place_callout(canvas, sign, [tip], (angle,), what)
                return Block(block.view, block.scale, canvas)
        raise NoRoomError(f"no room for {what}")
    return Block(block.view, block.scale, canvas)


def underside_block(pad: Pad, scale: Scale, *, main: Scale) -> Block:
    """View C from below, at a scale of its own where that differs from the main one."""
    coarse = _coarse(pad, scale)
    if pad.seat_corner_radius_mm * scale.factor < STYLE.least_apart_mm:
        coarse = coarse.with_(seat_corner_radius_mm=0.0)
    view = underside_view(coarse, over_mm=STYLE.centre_over_mm / scale.factor)
    return named(Block(view, scale, _canvas(view, scale)), "C" if scale == main else f"C ({scale.words})")


def isometric_block(pad: Pad, scale: Scale) -> Block:
    """The picture of the whole pad, without chamfers that are small on paper; it has no dimensions."""
    view = isometric_view(_coarse(pad, scale))
    return Block(view, scale, _canvas(view, scale))


def _about_circle(radius: float) -> Iterator[Box]:
    """Rectangles that together cover a circle and leave the corners about it free."""
    for near, far in pairwise(radians(turn) for turn in (0, 15, 30, 45, 60, 75, 90)):
        x, y = radius * cos(near), radius * sin(far)
        yield Box(-x, -y, x, y)


def _canvas(view: View, scale: Scale) -> Canvas:
    """The surroundings of a view: the part, and the centre lines that stand out of it."""
    k = scale.factor
    box = Box(view.box.left * k, view.box.bottom * k, view.box.right * k, view.box.top * k)
    solids = [box] if view.name not in ROUND_VIEWS else list(_about_circle(box.right))
    return Canvas(solids=solids, lines=axes_of(view.shapes, k))
