"""The guide's cautions: those of every pad, and those that only some cases add, each found by designing such a case."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from geometry.case_cautions import cautions_for
from geometry.cautions import Caution
from geometry.design import design_pad
from geometry.measurements import read_measurements
from server import shown
from server.design_views import SIGNAL_WORDS
from server.guide_context import CautionPart, SignalPart
from server.links import ready_sample

_TEETH = {
    "between_teeth_mm": 76,
    "tooth_height_mm": 14,
    "over_teeth_mm": 100,
    "tip_length_mm": 20,
    "tip_width_mm": 10,
    "rated_load_kg": 2000,
    "rim_height_low_mm": 105,
}
_BORE = {
    "post_bore_mm": 35,
    "post_bore_depth_mm": 80,
    "bore_rim_diameter_mm": 62,
    "rated_load_kg": 2000,
    "rim_height_low_mm": 105,
}
_CASES: Mapping[str, Mapping[str, Mapping[str, Any]]] = {
    "": {},
    "Where ageing under a long load is asked for.": {"service": {"hold": "overnight"}},
    "Where the load is stated; the figures are those of an example.": {
        "car": {"load_source": "stated", "load_kg": 600}
    },
    "Where the jack cannot roll.": {"service": {"ground": "stuck"}},
    "Where values of a data sheet are entered.": {"own": {"density_g_cm3": 1.4}},
    "For aluminium.": {"make": {"material": "aluminium"}},
    "For materials that take up water.": {"make": {"material": "pa66"}},
    "Where the cup has a small hole.": {"jack": {"stem_hole_diameter_mm": 6}},
}
"""In which case more is said, and an answer of the worked example that makes it so."""
_FEET: Mapping[str, tuple[str, Mapping[str, Any]]] = {
    "For a saddle with teeth.": ("saddle", _TEETH),
    "Where the pad stands on teeth, and of the skirt also where it goes around a plate.": (
        "saddle",
        {**_TEETH, "stands_on": "teeth"},
    ),
    "For a bore that takes a post.": ("post", _BORE),
    "Where a pin goes through the post.": ("post", {**_BORE, "pin_diameter_mm": 8, "pin_distance_mm": 20}),
}
"""The same with another foot, and all that is measured on it."""
_RAIL = {"face_width_mm": 90, "face_length_mm": 250, "face_height_mm": 210}
_HOLE = {"hole_width_mm": 40, "hole_depth_mm": 40, "rim_width_mm": 15, "rim_height_mm": 210}
_HEADS: Mapping[str, tuple[str, str, Mapping[str, Any], str]] = {
    "For a flat cushion.": ("cushion", "rail", _RAIL, "pom_c"),
    "For a cushion of polyurethane.": ("cushion", "rail", _RAIL, "pur_95"),
    "For a plug.": ("plug", "pocket", _HOLE, "pom_c"),
}
"""The same with another head, all that is measured for it, and a material."""


def signals(units: str) -> tuple[SignalPart, ...]:
    """Every caution by signal word, the gravest first, those of every pad before those of some."""
    found = tuple(all_cautions())
    parts = (
        SignalPart(
            signal,
            tuple(
                CautionPart(shown.words_in(c.text, units), str(c.source), when)
                for when, c in found
                if c.signal == signal
            ),
        )
        for signal in SIGNAL_WORDS
    )
    return tuple(part for part in parts if part.cautions)


@cache
def all_cautions() -> tuple[tuple[str, Caution], ...]:
    """Every caution once, with the case in which it is said; those of every pad first."""
    found: dict[str, tuple[str, Caution]] = {}
    for when, caution in _said():
        found.setdefault(caution.text, (when, caution))
    return tuple(found.values())


def _said() -> Iterator[tuple[str, Caution]]:
    for when, document in example_documents():
        design = design_pad(read_measurements(document))
        for caution in cautions_for(design.conditions, design.pad):
            yield when, caution


def example_documents() -> Iterator[tuple[str, Mapping[str, Any]]]:
    """The worked example with other answers, another foot or another head, and in which case something more is said of it."""
    plain = ready_sample().document
    for when, answers in _CASES.items():
        yield when, {**plain, **{group: {**plain.get(group, {}), **given} for group, given in answers.items()}}
    for when, (foot, jack) in _FEET.items():
        yield when, {**plain, "foot": foot, "jack": dict(jack)}
    for when, (head, group, face, material) in _HEADS.items():
        without_seam = {key: given for key, given in plain.items() if key != "seam"}
        made = {**plain.get("make", {}), "material": material}
        yield when, {**without_seam, "head": head, group: dict(face), "make": made}
