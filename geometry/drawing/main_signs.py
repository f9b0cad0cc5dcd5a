"""Signs about the main view: datums, tolerance frames and texture, and on leaders the roots that it sizes and does not draw."""

from contextlib import suppress

from geometry.drawing.callouts import place_axis_datum, place_beside, place_callout, place_datum, place_square
from geometry.drawing.canvas import Canvas
from geometry.drawing.facts import FigureUnit
from geometry.drawing.geometrical import FLOOR_ROUGHNESS_UM, SEAT_ROUGHNESS_UM
from geometry.drawing.main_notes import LITTLE, UP, placed_or_moved
from geometry.drawing.main_plan import Plan, half_body, lip_outer_mm
from geometry.drawing.model import Dimension, Measure
from geometry.drawing.notes import OnLeader, lead_in_words, root_words
from geometry.drawing.placing import NoRoomError
from geometry.drawing.scales import Scale
from geometry.drawing.signs import lines_of_words, stacked, texture, tolerance_frame
from geometry.geometrical import (
    FLOOR_PARALLELISM,
    LIP_RUN_OUT,
    PLACE_AXIS,
    SEAT_FACE,
    carrying_parallelism,
    location_of,
)
from geometry.pad import Pad

_DOWN = (-60.0, -45.0, -120.0, -135.0)
_DOWN_ASIDE = (-45.0, -30.0, -60.0, -20.0, -75.0)
"""Directions in which leaders leave, the most wanted first."""
_UPRIGHT_DEG = 90.0
_FEW_CROSSED = 3.5
"""What a leader may cost that no other view can take: to cross one dimension line or a few extension lines, and no leader."""


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

    def place(canvas: Canvas) -> None:
        place_square(canvas, sign, tips, "parallelism of the top", up=True, mirrored=True)

    placed_or_moved(canvas, plan, FLOOR_PARALLELISM.name, place)


def lip_run_out(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The lip face's circular run-out about the axis (ISO 1101), unless a detail of the lip has it. Raises NoRoomError."""
    if not plan.lip_apart and not plan.run_out_apart:
        k = scale.factor
        inner, outer = pad.seat_diameter_mm / 2, lip_outer_mm(pad)
        tips = [((inner + (outer - inner) * share) * k, pad.seat_length_mm * k) for share in (0.5, 0.65, 0.8)]
        frame = tolerance_frame(LIP_RUN_OUT, plan.unit, critical=plan.critical)

        def place(canvas: Canvas) -> None:
            place_square(canvas, frame, tips, "lip run-out", up=False, mirrored=True)

        placed_or_moved(canvas, plan, LIP_RUN_OUT.name, place, is_seen=not pad.has_skirt)


def _placed(canvas: Canvas, name: str) -> Dimension:
    return next(d for d in canvas.dimensions if d.measure.name == name)


def _face_places(pad: Pad, scale: Scale) -> list[float]:
    """Where on the seat face, left and right, a sign may stand, the most wanted first."""
    k = scale.factor
    face = pad.seat_flat_diameter_mm * k / 2
    stem = (pad.seat_recess_diameter_mm if pad.has_recess else pad.stem_diameter_mm if pad.has_stem else 0.0) * k / 2
    return [way * (stem + (face - stem) * share) for share in (0.75, 0.6, 0.9, 0.45, 0.3) for way in (1, -1)]


def wanted_signs(pad: Pad, *, is_printed: bool) -> frozenset[OnLeader]:
    """What had better stand on a leader at the part than in a note: roots, lead-in and the seat's texture."""
    stem: tuple[OnLeader, ...] = ("stem root", "lead-in") if pad.has_stem else ()
    plug: tuple[OnLeader, ...] = ("plug root",) if pad.has_plug else ()
    seat: tuple[OnLeader, ...] = () if is_printed else ("seat texture",)
    return frozenset((*stem, *plug, *seat))


def with_signs(
    canvas: Canvas,
    pad: Pad,
    scale: Scale,
    unit: FigureUnit,
    wanted: frozenset[OnLeader],
    *,
    plug_mm: float,
    mirrored: bool = True,
    only_here: frozenset[OnLeader] = frozenset(),
) -> tuple[Canvas, frozenset[OnLeader]]:
    """What is wanted on leaders where each has a good place, and what that is: ``plug_mm`` is how wide the view shows the plug.

    What is ``only_here`` to be seen may be a little in the way. What is placed first may bar the way of the other, so where
    care is taken it is tried with the texture last and first.
    """
    found = []
    for texture_first in (False, True) if len(wanted) > 1 and canvas.patience else (False,):
        signed, told = canvas, set[OnLeader]()
        for name in sorted(wanted, key=lambda name: ((name == "seat texture") != texture_first, _ORDER.index(name))):
            trial = signed.copied()
            with suppress(NoRoomError):
                _place_sign(trial, pad, scale, unit, name, plug_mm, mirrored=mirrored)
                if trial.trouble - signed.trouble <= (_FEW_CROSSED if name in only_here else LITTLE):
                    signed = trial
                    told.add(name)
        found.append((len(told), -signed.trouble, signed, frozenset(told)))
    return max(found, key=lambda each: each[:2])[2:]


_ORDER: tuple[OnLeader, ...] = ("stem root", "lead-in", "plug root", "seat texture")


def _place_sign(
    canvas: Canvas, pad: Pad, scale: Scale, unit: FigureUnit, name: OnLeader, plug_mm: float, *, mirrored: bool
) -> None:
    """One of them. The radius at a root and the lead-in at the stem's end are not drawn; a texture cannot stand upside down."""
    k = scale.factor
    stem, top = pad.stem_diameter_mm * k / 2, pad.seat_recess_depth_mm * k if pad.has_recess else 0.0
    if name == "seat texture":
        tips = [(x, 0.0) for x in _face_places(pad, scale)[:4] if mirrored or x > 0]
        place_callout(
            canvas, texture(SEAT_ROUGHNESS_UM), tips, _DOWN if mirrored else _DOWN[:2], "the seat face's texture"
        )
        return
    at_plug = (plug_mm * k / 2, pad.body_top_mm * k)
    words, tip, wanted = {
        "stem root": (root_words(unit), (stem, top), _DOWN_ASIDE),
        "lead-in": (lead_in_words(unit), (stem, -pad.stem_length_mm * k), _DOWN_ASIDE),
        "plug root": (root_words(unit), at_plug, UP),
    }[name]
    # Half a view ends on its axis: nothing goes that way.
    angles = wanted if mirrored else tuple(angle for angle in wanted if abs(angle) <= _UPRIGHT_DEG)
    place_callout(canvas, lines_of_words((words,)), [tip], angles, name, mirrored=mirrored)
