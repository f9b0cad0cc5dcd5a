"""The live assembled section: ground, jack, cup, pad, seam and sill, with a balloon for each measurement.

Data in model mm first (:class:`Section`), then a thin writer (:func:`to_svg`). Redrawn on every change, so it needs neither
the drawing library nor the kernel.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from geometry.drawing import section_layout, section_svg, section_words
from geometry.drawing.section_known import BALLOONS, Known, fixed_of_partial, known_of, known_of_partial
from geometry.drawing.section_marks import TroubleSpot, spot_of_conflict, spots_of_checks
from geometry.drawing.section_pointers import Pointer, pad_spans, pointers_of
from geometry.drawing.section_scene import Scene, scene_of
from geometry.drawing.section_shape import Shape
from geometry.drawing.section_shapes import shapes_of
from geometry.errors import NoPadFitsError
from geometry.measurements import Measurements
from geometry.pad import Pad
from geometry.rules import Check
from geometry.units import LengthUnit

__all__ = [
    "BALLOONS",
    "Known",
    "Section",
    "TroubleSpot",
    "assembled_section",
    "section_of_conflict",
    "section_of_design",
    "section_of_partial",
    "to_svg",
]

WIDTH = 1080


@dataclass(frozen=True, slots=True)
class Section:
    """The assembled job: shapes, balloon targets and trouble spots in model mm, y up from the seat face."""

    scene: Scene
    shapes: tuple[Shape, ...]
    pointers: tuple[Pointer, ...]
    troubles: tuple[TroubleSpot, ...]


def assembled_section(known: Known, pad: Pad | None, marks: tuple[TroubleSpot, ...] = ()) -> Section:
    """The section of what is known so far; without a pad a likely one stands in, drawn faintly."""
    return _section(scene_of(known, pad), marks)


def section_of_design(measurements: Measurements, pad: Pad, checks: tuple[Check, ...]) -> Section:
    """The section of a sized and judged pad, each failed check where it occurs."""
    return assembled_section(known_of(measurements), pad, spots_of_checks(checks))


def section_of_conflict(measurements: Measurements, error: NoPadFitsError) -> Section:
    """The section of measurements that no pad fits: what was chosen so far, and the two bounds that leave no room."""
    so_far = {**error.so_far, error.dimension: error.lower.value_mm}
    return _section(scene_of(known_of(measurements), None, so_far), (spot_of_conflict(error),))


def section_of_partial(document: Mapping[str, Any], *, asks_all: bool = False) -> Section:
    """The section of an unfinished document: what is given is drawn, the rest faintly.

    With ``asks_all`` it also asks for what the choices made so far have no use for.
    """
    return _section(scene_of(known_of_partial(document, asks_all=asks_all), None, fixed_of_partial(document)), ())


def _section(scene: Scene, troubles: tuple[TroubleSpot, ...]) -> Section:
    return Section(scene, shapes_of(scene), pointers_of(scene), troubles)


def to_svg(
    section: Section,
    *,
    units: LengthUnit = "mm",
    lit: str | None = None,
    width: int = WIDTH,
    detail: str | None = None,
    typed: Mapping[str, str] | None = None,
    prefix: str = "section",
) -> str:
    """The section as an SVG element.

    ``lit`` is the dotted key of the field in focus, a measurement or a fixed dimension of the pad; ``typed`` holds values
    as the viewer typed them, by dotted key; below 640 units of width labels give way to a caption. ``detail`` shows only
    what one balloon points at. ``prefix`` keeps the ids of two sections on one page apart.
    """
    as_typed = typed or {}
    shown = {p.field: p for p in section.pointers}.get(detail or "")
    if shown:
        lit = shown.field
        page = section_layout.lay_out_detail(section.scene, shown, units=units, width=width, typed=as_typed)
    else:
        page = section_layout.lay_out(
            section.scene, section.pointers, section.troubles, units=units, width=width, typed=as_typed, lit=lit
        )
    spans = {**pad_spans(section.scene), **{p.field: p.span for p in section.pointers}}
    return section_svg.svg_of(
        page,
        section.shapes,
        title=section_words.title(section.scene),
        description=section_words.description(section.scene, section.pointers, section.troubles, units=units),
        units=units,
        typed=as_typed,
        lit=lit,
        lit_span=spans.get(lit or ""),
        prefix=prefix,
    )
