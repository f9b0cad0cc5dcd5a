"""The section told in words, with its numbers, for those who do not see it."""

from collections.abc import Iterable, Iterator

from geometry.drawing.section_known import TITLES
from geometry.drawing.section_lettering import length_words
from geometry.drawing.section_marks import TroubleSpot
from geometry.drawing.section_option_words import option_sentences
from geometry.drawing.section_pointers import Pointer
from geometry.drawing.section_scene import Scene
from geometry.units import LengthUnit

TITLE = "Assembled section: ground, jack, cup, pad, seam and sill"


def description(
    scene: Scene, pointers: Iterable[Pointer], troubles: Iterable[TroubleSpot], *, units: LengthUnit
) -> str:
    """What the picture shows, from the ground up."""
    return " ".join(_sentences(scene, tuple(pointers), tuple(troubles), units))


def _sentences(
    scene: Scene, pointers: tuple[Pointer, ...], troubles: tuple[TroubleSpot, ...], units: LengthUnit
) -> Iterator[str]:
    yield "A cut across the seam, from the ground up, outboard on the left; the seam has just come down on the slot's floor."
    for side, group in (("Jack", "jack."), ("Car", "seam.")):
        told = [p for p in pointers if p.field.startswith(group) and p.value_mm is not None]
        if told:
            yield f"{side}: {'; '.join(f'{_lower(TITLES[p.field])} {length_words(p.value_mm or 0, units)}' for p in told)}."
    missing = [p for p in pointers if p.value_mm is None and not p.is_optional]
    if missing:
        yield f"Still to be measured, drawn faintly: {', '.join(_lower(TITLES[p.field]) for p in missing)}."
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
        ("a slot", pad.slot_width_mm, "wide"),
    ]
    told = ", ".join(f"{what} {length_words(size, units)} {how}" for what, size, how in sizes)
    stem = f" A stem {length_words(pad.stem_diameter_mm, units)} across stands in the hole." if pad.has_stem else ""
    gap = length_words(min(scene.sill, scene.inboard, scene.outboard) - scene.wall_top, units)
    return (
        f"The pad has {told} and {length_words(pad.slot_depth_mm, units)} deep; its top stands"
        f" {length_words(pad.top_height_mm, units)} above the cup's floor, with {gap} to the car above it.{stem}"
    )


def _lower(title: str) -> str:
    return title[0].lower() + title[1:]


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
