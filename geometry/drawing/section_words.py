"""The section told in words, with its numbers, for those who do not see it."""

from collections.abc import Iterable, Iterator, Mapping

from geometry.drawing.section_faces import FACE_TITLES
from geometry.drawing.section_lettering import length_words
from geometry.drawing.section_marks import TroubleSpot
from geometry.drawing.section_option_words import option_sentences
from geometry.drawing.section_pointers import Pointer
from geometry.drawing.section_scene import Scene
from geometry.letters import lower_first
from geometry.units import LengthUnit

_STANDS: Mapping[str, str] = {"cup": "cup", "saddle": "saddle", "plate": "plate", "post": "bore"}
_LANDED: Mapping[str, str] = {
    "slot": "A cut across the seam, from the ground up, outboard on the left; the seam has just come down on the slot's floor.",
    "cushion": "A cut across the car, from the ground up, outboard on the left; the car's face has just come down on the cushion.",
    "plug": "A cut across the car, from the ground up, outboard on the left; the hole's rim has just come down on the shoulder.",
}


def title(scene: Scene) -> str:
    """What the section shows, for a heading."""
    return f"Assembled section: ground, jack, {_STANDS[scene.known.foot]}, pad, {FACE_TITLES[scene.known.head]}"


def description(
    scene: Scene, pointers: Iterable[Pointer], troubles: Iterable[TroubleSpot], *, units: LengthUnit
) -> str:
    """What the picture shows, from the ground up."""
    return " ".join(_sentences(scene, tuple(pointers), tuple(troubles), units))


def _sentences(
    scene: Scene, pointers: tuple[Pointer, ...], troubles: tuple[TroubleSpot, ...], units: LengthUnit
) -> Iterator[str]:
    yield _LANDED[scene.known.head]
    for side, is_jack in (("Jack", True), ("Car", False)):
        told = [p for p in pointers if p.field.startswith("jack.") == is_jack and p.value_mm is not None]
        if told:
            yield f"{side}: {'; '.join(f'{lower_first(p.title)} {length_words(p.value_mm or 0, units)}' for p in told)}."
    missing = [p for p in pointers if p.value_mm is None and not p.is_optional]
    if missing:
        yield f"Still to be measured, drawn faintly: {', '.join(lower_first(p.title) for p in missing)}."
    yield _pad(scene, units)
    yield from option_sentences(scene, units)
    yield scale_words(scene)
    for spot in troubles:
        yield f"Marked: {spot.words}, {spot.numbers(units)}."


def _pad(scene: Scene, units: LengthUnit) -> str:
    pad = scene.pad
    if scene.pad_is_stand_in:
        return "The pad is not sized yet; a likely shape stands in its place."
    sizes = [
        ("a seat", pad.seat_diameter_mm, "across"),
        ("a body", pad.body_diameter_mm, "across"),
        ("a web", pad.web_mm, "thick"),
        *([("a slot", pad.slot_width_mm, "wide")] if pad.has_slot else []),
        *([("a plug", pad.plug_width_mm, "wide")] if pad.has_plug else []),
        *([("a skirt", pad.skirt_bore_mm, "inside")] if pad.has_skirt else []),
    ]
    told = ", ".join(f"{what} {length_words(size, units)} {how}" for what, size, how in sizes)
    stem = f" A stem {length_words(pad.stem_diameter_mm, units)} across stands in the hole." if pad.has_stem else ""
    gap = length_words(min(scene.sill, scene.inboard, scene.outboard) - scene.wall_top, units)
    deep = f" and {length_words(pad.slot_depth_mm, units)} deep" if pad.has_slot else ""
    above = f", with {gap} to the car above it" if pad.has_slot or pad.has_plug else ""
    floor = {"cup": "the cup's floor", "saddle": "what it stands on", "plate": "the plate", "post": "the bore's rim"}
    return (
        f"The pad has {told}{deep}; its top stands {length_words(pad.top_height_mm, units)} above"
        f" {floor[scene.known.foot]}{above}.{stem}"
    )


def scale_words(scene: Scene) -> str:
    """What is drawn shorter than it is."""
    match bool(scene.breaks), scene.is_clear_cut:
        case True, True:
            return "The ground and the clear height are drawn nearer than they are; all else is to scale."
        case True, False:
            return "The ground is drawn nearer than it is; all else is to scale."
        case False, True:
            return "The clear height is drawn shorter than it is; all else is to scale."
        case _:
            return "Everything is to scale."
