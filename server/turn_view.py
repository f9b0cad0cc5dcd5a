"""The pad to turn in the hand: a ready picture, the same in words, and what a script needs to turn the model."""

import json
from collections.abc import Callable
from dataclasses import dataclass

from markupsafe import Markup

from geometry.cautions import ONE_LINE
from geometry.design import Design
from geometry.drawing.bodies import Body, bodies_around
from geometry.kinds import USUAL_FOOT
from geometry.pad import Pad
from server import links, shown
from server.forms import FormReading
from server.kind_words import AROUND, STANDS
from server.sheet_files import sibling

PICTURE_WORDS = "The pad as it is held in the hand, from the right, the front and above"
_DIGITS = 3


@dataclass(frozen=True, slots=True)
class TurnView:
    """What stands on the page before a script runs, and what the script reads."""

    picture: Markup
    """The picture itself; empty where the page had better not wait for it, and has the address alone."""
    picture_address: str
    """The picture as a file."""
    picture_words: str
    words: tuple[str, ...]
    unfit: str
    """What to say over the picture of a pad that is not fit to make; empty otherwise."""
    model: str
    """The address of the STL file; of an unfit pad the confirmed one, because looking at it is not making it."""
    bodies: str
    """Cup, seam and sill as JSON."""
    address: str
    """The page of this view."""
    around: str
    """What else it can show: the jack's head and what of the car stands on the pad."""


@dataclass(frozen=True, slots=True)
class TurnPage:
    """The view on a page of its own."""

    title: str
    turn: TurnView
    back: str
    no_models: str
    """What keeps this machine from building models, and what to install; empty where nothing does."""
    caution_line: str = ONE_LINE


def turn_page(design: Design, reading: FormReading, picture: str, *, no_models: str) -> TurnPage:
    """The context of the view's own page."""
    back = links.pad_address(reading.typed, units=reading.units)
    return TurnPage(design.measurements.title or "Lifting pad", turn_view(design, reading, picture), back, no_models)


def turn_view(design: Design, reading: FormReading, picture: str = "") -> TurnView:
    """The view of a design; part of the working sheet and of its own page."""
    own = links.pad_address(reading.typed, units=reading.units)
    confirmed = (
        "" if design.fit_to_make else links.pad_address(reading.typed, ".stl", units=reading.units, confirmed=True)
    )
    return TurnView(
        picture=Markup(picture),  # noqa: S704  our own drawing
        picture_address=sibling(own, "/turn.svg"),
        picture_words=PICTURE_WORDS,
        words=pad_words(design.pad, reading.units, foot=reading.foot),
        unfit="" if design.fit_to_make else f"A picture of a pad that is not fit to make. {design.verdict_words}",
        model=confirmed or sibling(own, ".stl"),
        around=AROUND[reading.head],
        bodies=json.dumps([_body(body) for body in bodies_around(design.measurements, design.pad)]),
        address=sibling(own, "/turn"),
    )


def _body(body: Body) -> dict[str, object]:
    """A body with its numbers as short as the eye needs them."""
    return {
        "name": body.name,
        "way": body.way,
        "outline": [[round(across, _DIGITS), round(height, _DIGITS)] for across, height in body.outline],
        "half_length_mm": body.half_length_mm,
    }


def pad_words(pad: Pad, units: str, *, foot: str = USUAL_FOOT) -> tuple[str, ...]:
    """The shape of the pad for those who do not see it, from the jack up."""

    def mm(value: float) -> str:
        return shown.length_with_unit(value, units)

    foot_words = (
        [f"A stem {mm(pad.stem_diameter_mm)} across reaches {mm(pad.stem_length_mm)} down."] if pad.has_stem else []
    )
    if pad.has_cross_hole:
        foot_words.append(f"A hole of {mm(pad.cross_hole_diameter_mm)} goes across it for a pin.")
    if pad.has_skirt:
        foot_words.append(
            f"A skirt, {mm(pad.skirt_bore_mm)} inside, hangs {mm(pad.skirt_length_mm)} down from the body."
        )
    return (
        *foot_words,
        f"The seat, {mm(pad.seat_diameter_mm)} across and {mm(pad.seat_length_mm)} long, {STANDS[foot]};"
        f" its lower edge is rounded by {mm(pad.seat_corner_radius_mm)}.",
        f"Above it the body widens to {mm(pad.body_diameter_mm)}; the top is {mm(pad.top_height_mm)} above the seat's face.",
        _top_words(pad, mm),
    )


def _top_words(pad: Pad, mm: Callable[[float], str]) -> str:
    """What of the pad takes the car."""
    if pad.has_slot:
        return (
            f"One straight slot, {mm(pad.slot_width_mm)} wide and {mm(pad.slot_depth_mm)} deep, runs through the whole body;"
            f" {mm(pad.web_mm)} of solid material stay below it."
        )
    if pad.plug_is_round:
        return f"On the middle of its top stands a round plug, {mm(pad.plug_width_mm)} across and {mm(pad.plug_height_mm)} high."
    if pad.has_plug:
        size = f"{mm(pad.plug_length_mm)} long, {mm(pad.plug_width_mm)} wide and {mm(pad.plug_height_mm)} high"
        return f"On the middle of its top stands a plug, {size}."
    return "Its top is flat."
