"""Signs about the main view: datums, tolerance frames and texture, and on leaders the roots that it sizes and does not draw."""

from contextlib import suppress

from geometry.drawing.callouts import place_axis_datum, place_beside, place_callout, place_datum, place_square
from geometry.drawing.canvas import Canvas
from geometry.drawing.facts import FigureUnit
from geometry.drawing.geometrical import FLOOR_ROUGHNESS_UM, SEAT_ROUGHNESS_UM
from geometry.drawing.main_notes import UP
from geometry.drawing.main_plan import Plan, half_body, lip_outer_mm
from geometry.drawing.model import Dimension, Measure, Point
from geometry.drawing.notes import OnLeader, lead_in_words, root_words
from geometry.drawing.placing import NoRoomError
from geometry.drawing.scales import Scale
from geometry.drawing.signs import lines_of_words, stacked, texture, tolerance_frame
from geometry.geometrical import LIP_RUN_OUT, PLACE_AXIS, SEAT_FACE, carrying_parallelism, location_of
from geometry.pad import Pad

_DOWN = (-60.0, -45.0, -120.0, -135.0)
_DOWN_ASIDE = (-45.0, -30.0, -60.0, -20.0, -75.0, -10.0)
"""Directions in which leaders leave, the most wanted first."""
_FEW_CROSSED = 3.5
"""What a leader that could be a note instead may cost: to cross one dimension line or a few extension lines, and no leader."""


def datums(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Datum A at the seat face, datum B at the axis of what locates the pad, and where slot or plug stand about that."""
    k = scale.factor
    face, body = pad.seat_flat_diameter_mm * k / 2, half_body(pad) * k
    place_axis_datum(canvas, PLACE_AXIS, _placed(canvas, plan.located_by))
    beside = [(way * (body + x), 0.0) for x in (3.5, 5.0, 12.0, 17.0, 22.0, 30.0, 40.0, 50.0) for way in (-1, 1)]
    places = [((x, 0.0), 270.0) for x in _face_places(pad, scale)]
    places += [(foot, turn) for foot in beside for turn in (270.0, 90.0)]
    place_datum(canvas, SEAT_FACE, places, reached_from=face)
    location = location_of(pad)
    if location:
        line = _placed(canvas, "slot_width_mm" if pad.has_slot else "plug_width_mm").lines[0]
        frame = tolerance_frame(location, plan.unit, critical=plan.critical)
        place_beside(canvas, frame, line, f"{location.feature} {location.characteristic}")


def top_signs(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Parallelism and texture of a face that carries without a slot: a cushion's top, a plug's shoulder."""
    if pad.has_slot:
        return
    k, rim = scale.factor, pad.body_diameter_mm / 2 - pad.edge_chamfer_mm
    inner = pad.plug_width_mm / 2 if pad.has_plug else 0.0
    half = min(rim, half_body(pad))
    tips = [((inner + (half - inner) * share) * k, pad.body_top_mm * k) for share in (0.5, 0.35, 0.65, 0.8, 0.2)]
    frame = tolerance_frame(carrying_parallelism(pad), plan.unit, critical=plan.critical)
    sign = frame if plan.is_printed else stacked(frame, texture(FLOOR_ROUGHNESS_UM))
    place_square(canvas, sign, tips, "parallelism of the top", up=True, mirrored=True)


def lip_run_out(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The lip face's circular run-out about the axis (ISO 1101), unless a detail of the lip has it. Raises NoRoomError."""
    if not plan.lip_apart:
        k = scale.factor
        inner, outer = pad.seat_diameter_mm / 2, lip_outer_mm(pad)
        tips = [((inner + (outer - inner) * share) * k, pad.seat_length_mm * k) for share in (0.5, 0.65, 0.8)]
        frame = tolerance_frame(LIP_RUN_OUT, plan.unit, critical=plan.critical)
        place_square(canvas, frame, tips, "lip run-out", up=False, mirrored=True)


def _placed(canvas: Canvas, name: str) -> Dimension:
    return next(d for d in canvas.dimensions if d.measure.name == name)


def _face_places(pad: Pad, scale: Scale) -> list[float]:
    """Where on the seat face, left and right, a sign may stand, the most wanted first."""
    k = scale.factor
    face = pad.seat_flat_diameter_mm * k / 2
    stem = (pad.seat_recess_diameter_mm if pad.has_recess else pad.stem_diameter_mm if pad.has_stem else 0.0) * k / 2
    return [way * (stem + (face - stem) * share) for share in (0.75, 0.6, 0.9, 0.45, 0.3) for way in (1, -1)]


def with_signs(
    canvas: Canvas, pad: Pad, scale: Scale, unit: FigureUnit, *, rooted: bool, textured: bool
) -> tuple[Canvas, frozenset[OnLeader], bool]:
    """Roots and lead-in on leaders, and the seat's texture: which roots found room, and whether the texture did.

    What finds none, or only a leader that one cannot follow, is a note instead. What is placed first may bar the way of the
    other, so where care is taken both orders are tried.
    """
    found = []
    for texture_first in (False, True) if rooted and textured and canvas.patience else (False,):
        signed, told, is_textured = canvas, frozenset[OnLeader](), False
        if textured and texture_first:
            signed, is_textured = _with_texture(signed, pad, scale)
        if rooted:
            signed, told = _with_roots(signed, pad, scale, unit)
        if textured and not texture_first:
            signed, is_textured = _with_texture(signed, pad, scale)
        found.append((len(told) + is_textured, -signed.trouble, signed, told, is_textured))
    return max(found, key=lambda each: each[:2])[2:]


def _with_texture(canvas: Canvas, pad: Pad, scale: Scale) -> tuple[Canvas, bool]:
    """The seat face's texture, on a leader: the sign cannot stand upside down on the face itself."""
    tips = [(x, 0.0) for x in _face_places(pad, scale)[:4]]
    trial = canvas.copied()
    with suppress(NoRoomError):
        place_callout(trial, texture(SEAT_ROUGHNESS_UM), tips, _DOWN, "the seat face's texture")
        if trial.trouble - canvas.trouble <= _FEW_CROSSED:
            return trial, True
    return canvas, False


def _with_roots(canvas: Canvas, pad: Pad, scale: Scale, unit: FigureUnit) -> tuple[Canvas, frozenset[OnLeader]]:
    """The radius at the root of stem or plug and the lead-in at the stem's end on leaders, and which of them found room.

    None of them is drawn.
    """
    k, told = scale.factor, set()
    stem, plug = pad.stem_diameter_mm * k / 2, pad.plug_width_mm * k / 2
    top = pad.seat_recess_depth_mm * k if pad.has_recess else 0.0
    places: list[tuple[OnLeader, str, Point, tuple[float, ...]]] = []
    if pad.has_stem:
        places.append(("stem root", root_words(unit), (stem, top), _DOWN_ASIDE))
        places.append(("lead-in", lead_in_words(unit), (stem, -pad.stem_length_mm * k), _DOWN_ASIDE))
    if pad.has_plug:
        places.append(("plug root", root_words(unit), (plug, pad.body_top_mm * k), UP))
    for root, words, tip, angles in places:
        trial = canvas.copied()
        with suppress(NoRoomError):
            place_callout(trial, lines_of_words((words,)), [tip], angles, root, mirrored=True)
            if trial.trouble - canvas.trouble <= _FEW_CROSSED:
                canvas = trial
                told.add(root)
    return canvas, frozenset(told)
