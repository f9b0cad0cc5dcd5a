"""Where the pad is held while something is cut into its top: on solid plastic, where clamping cannot close a slot."""

from dataclasses import dataclass
from typing import Literal

from geometry.making.wording import Sentence, said
from geometry.pad import Pad

LEAST_BAND_MM = 5.0
"""A lower band than this of solid body is no hold for vice jaws."""
UNDER_FLOOR_MM = 1.0
"""Jaws end this far below what is milled last, so that neither the cutter nor their squeeze meets it."""
BLOCK_SPARE_MM = 1.0
"""By this each block between jaw and pad stays inside the flats that are milled past it."""
_SQUEEZE = "Jaws that press on the walls close the slot while it is cut; released, it is too wide. Here they press on"
_SOLID = f"{_SQUEEZE} solid plastic below its floor, and along the slot, not across it."

Milled = Literal["slot", "plug", "flats", ""]


@dataclass(frozen=True, slots=True)
class Hold:
    """Where the pad is held while its top is cut."""

    words: Sentence
    why: Sentence | None
    band_mm: float
    """Height of solid material in the jaws."""
    in_chuck: bool
    """Whether a three-jaw chuck on the table holds it by the seat."""


def milled_on_top(pad: Pad) -> Milled:
    """What the set-up after the lathe is for, first of all; nothing where the lathe does everything."""
    if pad.has_slot:
        return "slot"
    if pad.has_plug and not pad.plug_is_round:
        return "plug"
    return "flats" if pad.has_flats else ""


def held_band(pad: Pad) -> tuple[str, float]:
    """The band of the pad that is gripped, in words, and its height: solid body, or a seat that is taller."""
    low = pad.seat_length_mm + (0.0 if pad.has_skirt else pad.edge_chamfer_mm)
    high = min(pad.web_mm - UNDER_FLOOR_MM, pad.body_top_mm - pad.edge_chamfer_mm)
    body = high - low
    # A seat behind a skirt is out of reach.
    seat = 0.0 if pad.has_skirt else pad.seat_length_mm - pad.seat_corner_radius_mm
    if body >= LEAST_BAND_MM or body >= seat:
        return f"the body under the {_lowest(pad)}", max(body, 0.0)
    return "the straight part of the seat", max(seat, 0.0)


def _lowest(pad: Pad) -> str:
    """The lowest thing that is milled, as the jaws must stay below it."""
    return {"slot": "slot's floor", "plug": "plug's shoulder"}.get(milled_on_top(pad), "top edge")


def hand_hold(pad: Pad) -> Sentence:
    """How the pad is held in a bench vice while its top is cut by hand."""
    where, band = held_band(pad)
    return said(
        f"Vice with wooden or lead jaws on {where}, {{band}} high, {_pressing(pad)}.",
        band=band,
    )


def top_hold(pad: Pad, *, on_lathe: bool) -> Hold:
    """How the pad is held on a vertical slide or on the table of a mill."""
    where, band = held_band(pad)
    why = said(_SOLID) if pad.has_slot else None
    if on_lathe:
        words = said(
            f"Vertical slide: {_stands(pad, 'flat on the slide')}, top towards the spindle, the {_along(pad)} level so that the"
            f" cross slide feeds along it. A vice on the slide, its jaws on {where}, {{band}} high,"
            f" {_pressing(pad)}{_blocks(pad, '')}.",
            **_lengths(pad, band),
        )
        return Hold(words, why, band, in_chuck=False)
    if where.startswith("the body"):
        words = said(
            f"Milling vice, {_stands(pad, 'down on parallels')}{_blocks(pad, ', a V-block between one jaw and the pad')}. The jaws"
            f" press on {{band}} of solid body, ending {{under}} below the {_lowest(pad)}, {_pressing(pad)}.",
            **_lengths(pad, band),
        )
        return Hold(words, why, band, in_chuck=False)
    words = said(
        "Three-jaw chuck clamped to the table, jaws up: on {band} of straight seat, the lip down on the jaws' tops.",
        band=band,
    )
    seat = said(f"{_SQUEEZE} the seat, well below the slot's floor.") if pad.has_slot else None
    return Hold(words, seat, band, in_chuck=True)


def _lengths(pad: Pad, band: float) -> dict[str, float]:
    return {
        "band": band,
        "under": UNDER_FLOOR_MM,
        "out": max(0.0, _hanging_mm(pad)),
        "block": max(0.0, pad.flats_width_mm - 2 * BLOCK_SPARE_MM),
    }


def _along(pad: Pad) -> str:
    return {"slot": "slot", "plug": "plug's length"}.get(milled_on_top(pad), "flats")


def _pressing(pad: Pad) -> str:
    """Where round the pad the jaws press."""
    return f"at the two ends of the {_along(pad)}"


def _blocks(pad: Pad, otherwise: str) -> str:
    """What stands between jaws and pad: narrow blocks where flats are milled past them."""
    if not pad.has_flats:
        return otherwise
    return (
        ", between each jaw and the pad a block no wider than {block}, hollowed a little, so that the flats stand free"
    )


def _hanging_mm(pad: Pad) -> float:
    """What stands out below the face that the pad is put down on."""
    return pad.stem_length_mm - max(0.0, -pad.foot_bottom_mm)


def _stands(pad: Pad, plainly: str) -> str:
    """What the pad is put down on; a stem must hang free."""
    face = "skirt's end" if pad.foot_bottom_mm < 0 else "seat face"
    if _hanging_mm(pad) > 0:
        return f"{face} on two equal parallels thicker than the stem's {{out}}"
    return f"{face} {plainly}"
