"""What not every job has, told in words with its numbers: boss, slot off the middle, pocket, second slot, flats."""

from collections.abc import Callable, Iterator

from geometry.drawing.section_lettering import length_words
from geometry.drawing.section_scene import Scene
from geometry.units import LengthUnit

_Say = Callable[[float], str]


def option_sentences(scene: Scene, units: LengthUnit) -> Iterator[str]:
    """A sentence or two for each of them that the section has; of a likely pad only what was measured."""

    def say(length_mm: float) -> str:
        return length_words(length_mm, units)

    yield from _boss(scene, say)
    yield from _offset(scene, say)
    yield from _place(scene, say)
    if scene.pad_is_stand_in:
        return
    yield from _pocket(scene, say)
    yield from _second_slot(scene, say)
    if scene.pad.has_flats:
        yield f"Two flats along the slot leave the body {say(scene.pad.flats_width_mm)} across; the cut goes through both."


def _boss(scene: Scene, say: _Say) -> Iterator[str]:
    pad = scene.pad
    if scene.boss:
        yield f"A boss {say(2 * scene.boss)} across stands {say(scene.boss_height)} high on the middle of the cup's floor."
    if pad.has_recess and not scene.pad_is_stand_in:
        size = f"{say(pad.seat_recess_diameter_mm)} across and {say(pad.seat_recess_depth_mm)} deep"
        yield f"The seat face has a recess {size}{' over it' if scene.boss else ''}."


def _offset(scene: Scene, say: _Say) -> Iterator[str]:
    if scene.middle:
        yield f"The slot runs {say(scene.middle)} off the axis of cup and pad, drawn on the right; seam and sill stand over it."
    wanted = scene.known.offset_mm or 0.0
    if abs(wanted - scene.middle) > _SEEN_MM:
        yield f"Measured, the seam passes {say(wanted)} beside the jack's axis."


_SEEN_MM = 0.01
"""Offsets nearer than this are the same."""


def _place(scene: Scene, say: _Say) -> Iterator[str]:
    """The place where the seam is not plain, in the middle of the pad and so in the cut."""
    known = scene.known
    told = []
    if known.local_thickness_mm:
        told.append(f"is {say(known.local_thickness_mm)} thick")
    if known.local_drop_mm:
        told.append(f"has something hanging {say(known.local_drop_mm)} below its edge")
    if told:
        length = f", over a length of {say(known.local_length_mm)}" if known.local_length_mm else ""
        yield f"Where it is cut the seam {' and '.join(told)}{length}."


def _pocket(scene: Scene, say: _Say) -> Iterator[str]:
    pad = scene.pad
    if pad.has_relief:
        size = f"{say(pad.relief_width_mm)} wide, {say(pad.relief_length_mm)} long and {say(pad.relief_depth_mm)} deep"
        below = pad.relief_depth_mm - pad.slot_depth_mm
        floor = f", {say(below)} below the slot's floor" if pad.floor_is_open else ""
        yield f"The cut goes through a pocket in the middle of the slot, {size} from the wall tops{floor}."
        yield "Beyond it the slot's walls are seen."


def _second_slot(scene: Scene, say: _Say) -> Iterator[str]:
    if scene.pad.is_crossed:
        yield f"A second slot {say(scene.pad.cross_slot_width_mm)} wide crosses the first at its depth."
        yield "The cut runs along it, so that no wall is cut; the walls beyond it are drawn as thin lines."
