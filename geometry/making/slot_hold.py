"""Where the pad is held while its slot is cut or filed: on solid plastic, where clamping cannot close the slot."""

from dataclasses import dataclass

from geometry.making.wording import Sentence, said
from geometry.pad import Pad

LEAST_BAND_MM = 5.0
"""A lower band than this of solid body is no hold for vice jaws."""
UNDER_FLOOR_MM = 1.0
"""Jaws end this far below the slot's floor, so that neither the cutter nor their squeeze meets the slot."""
_SQUEEZE = "Jaws that press on the walls close the slot while it is cut; released, it is too wide. Here they press on"
_SOLID = said(f"{_SQUEEZE} solid plastic below its floor, and along the slot, not across it.")


@dataclass(frozen=True, slots=True)
class Hold:
    """Where the pad is held while its slot is cut."""

    words: Sentence
    why: Sentence
    band_mm: float
    """Height of solid material in the jaws."""


def held_band(pad: Pad) -> tuple[str, float]:
    """The band of the pad that is gripped, in words, and its height: the body under the slot's floor, or a taller seat."""
    body = pad.web_mm - pad.seat_length_mm - pad.edge_chamfer_mm - UNDER_FLOOR_MM
    seat = pad.seat_length_mm - pad.seat_corner_radius_mm
    if body >= LEAST_BAND_MM or body >= seat:
        return "the body under the slot's floor", max(body, 0.0)
    return "the straight part of the seat", max(seat, 0.0)


def hand_hold(pad: Pad) -> Sentence:
    """The same in a bench vice."""
    where, band = held_band(pad)
    return said(f"Vice with wooden or lead jaws on {where}, {{band}} high, at the two ends of the slot.", band=band)


def slot_hold(pad: Pad, *, on_lathe: bool) -> Hold:
    """How the pad is held on a vertical slide or on the table of a mill."""
    where, band = held_band(pad)
    stem = pad.stem_length_mm
    if on_lathe:
        words = said(
            f"Vertical slide: seat face {_under(pad, 'flat on the slide')}, top towards the spindle, slot level so that the"
            f" cross slide feeds along it. A vice on the slide, its jaws on {where}, {{band}} high, at the two ends of the"
            " slot.",
            band=band,
            stem=stem,
        )
        return Hold(words, _SOLID, band)
    if where.startswith("the body"):
        words = said(
            f"Milling vice, seat face down {_under(pad, 'on parallels')}, a V-block between one jaw and the pad. The jaws"
            " press on {band} of solid body, ending {under} below the slot's floor, at the two ends of the slot.",
            band=band,
            under=UNDER_FLOOR_MM,
            stem=stem,
        )
        return Hold(words, _SOLID, band)
    words = said(
        "Three-jaw chuck clamped to the table, jaws up: on {band} of straight seat, the lip down on the jaws' tops.",
        band=band,
    )
    return Hold(words, said(f"{_SQUEEZE} the seat, well below the slot's floor."), band)


def _under(pad: Pad, plainly: str) -> str:
    """What the seat's face stands on; a stem must hang free."""
    return "on two equal parallels thicker than the stem's {stem}" if pad.has_stem else plainly
