"""The few sizes that decide whether a pad goes where it should: what a saved page and a preview show first."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from geometry.kinds import USUAL_FOOT, USUAL_HEAD
from geometry.pad import Pad

Deciding = tuple[tuple[str, str], ...]
"""Dimensions, each with what it decides."""
_SEAT: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "cup": ("goes into the cup", "keeps the lip off the rim"),
        "saddle": ("goes in between the teeth", "keeps the lip off the teeth"),
        "plate": ("goes into the ring or recess", "keeps the lip off what is around it"),
    }
)
_HEADS: Mapping[str, Deciding] = MappingProxyType(
    {
        "slot": (
            ("slot_width_mm", "takes the seam"),
            ("slot_depth_mm", "keeps clear of the sill"),
            ("web_mm", "carries the seam"),
        ),
        "cushion": (("body_diameter_mm", "is wide enough for the car's face"), ("web_mm", "carries the car's face")),
        "plug": (
            ("plug_length_mm", "goes into the hole"),
            ("plug_width_mm", "goes into the hole"),
            ("plug_height_mm", "keeps clear of what is above"),
            ("web_mm", "carries the hole's rim"),
        ),
    }
)


def deciding_as_kept(design: Mapping[str, Any], pad: Pad) -> Deciding:
    """The sizes of a kept design's pad that decide."""
    understood = design.get("measurements", {})
    return deciding_sizes(understood.get("foot", USUAL_FOOT), understood.get("head", USUAL_HEAD), pad)


def deciding_sizes(foot: str, head: str, pad: Pad) -> Deciding:
    """The sizes of a pad that decide, from the jack up; of a round plug its width says it all."""
    above = tuple(size for size in _HEADS[head] if not (pad.plug_is_round and size[0] == "plug_length_mm"))
    return (*_of_the_foot(foot, pad), *above)


def _of_the_foot(foot: str, pad: Pad) -> Deciding:
    if pad.has_skirt:
        return (
            ("skirt_bore_mm", "goes around the jack's head"),
            ("skirt_length_mm", "hangs clear of what is below its edge"),
        )
    if foot == "post":
        return (("stem_diameter_mm", "goes into the bore"), ("stem_length_mm", "keeps off the bore's bottom"))
    into, off = _SEAT[foot]
    return (("seat_diameter_mm", into), ("seat_length_mm", off))
