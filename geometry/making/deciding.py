"""The few sizes that decide whether a pad goes where it should, and what each decides: for cover, saved page and preview."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.pad import Pad

Deciding = tuple[tuple[str, str], ...]
"""Dimensions, each with what it decides: what follows “because it”."""
_SKIRT: Deciding = (
    ("skirt_bore_mm", "goes around the jack's head"),
    ("skirt_length_mm", "keeps it on, clear of what is below"),
)
_STEM: Deciding = (("stem_diameter_mm", "goes into the bore"), ("stem_length_mm", "guides it, off the bore's bottom"))
_SEATS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "cup": ("goes into the cup", "keeps the lip off the rim"),
        "land": ("goes in between the teeth", "keeps the lip off the teeth"),
        "saddle": ("goes in between the teeth", "keeps the lip off the teeth"),
        "ring": ("goes into the ring", "keeps the lip off the ring"),
        "recess": ("goes into the recess", "keeps the lip off the plate around it"),
        "plate": ("goes into the ring or recess", "keeps the lip off what is around it"),
    }
)
"""What diameter and length of a seat decide, by the way in which the jack takes it, or by its kind."""
_HEADS: Mapping[str, Deciding] = MappingProxyType(
    {
        "slot": (
            ("slot_width_mm", "takes the seam"),
            ("slot_depth_mm", "keeps the sill clear of the walls"),
            ("web_mm", "carries the seam's edge"),
        ),
        "cushion": (("body_diameter_mm", "is wide enough for the car's face"), ("web_mm", "carries the car's face")),
        "plug": (
            ("plug_length_mm", "goes into the hole"),
            ("plug_width_mm", "goes into the hole"),
            ("plug_height_mm", "keeps the car on the shoulder"),
            ("web_mm", "carries the hole's rim"),
        ),
    }
)


def deciding_sizes(foot: str, head: str, pad: Pad) -> Deciding:
    """The sizes of a pad that decide, from the jack up; of a round plug its width says it all.

    ``foot`` is the kind of jack, or of a saddle or a plate the way in which it takes the pad, where that is known.
    """
    above = tuple(size for size in _HEADS[head] if not (pad.plug_is_round and size[0] == "plug_length_mm"))
    return (*_of_the_foot(foot, pad), *above)


def _of_the_foot(foot: str, pad: Pad) -> Deciding:
    if pad.has_skirt:
        return _SKIRT
    if foot == "post":
        return _STEM
    return tuple(zip(("seat_diameter_mm", "seat_length_mm"), _SEATS[foot], strict=True))
