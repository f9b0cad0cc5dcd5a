"""What each dimension of one pad is called on the shop's sheets, how it is measured, and what is only looked at."""

from collections.abc import Callable, Mapping

from geometry.letters import lower_first
from geometry.making.instruments import FIRST_OFF, HOW, TITLES
from geometry.pad import Pad

NARROW_MM = 6.0
"""A caliper's jaws and its depth rod want about so much room beside the seat: judged."""
_OF_A_ROUND_PLUG = frozenset({"plug_length_mm", "plug_corner_radius_mm"})
"""What the diameter of a round plug says already."""


def height_parts(pad: Pad) -> tuple[str, ...]:
    """The dimensions that the height above the seat face is made of, from the seat face up."""
    above = [name for name in ("slot_depth_mm", "plug_height_mm") if getattr(pad, name) > 0]
    return ("web_mm", *above)


def measured_names(pad: Pad) -> tuple[str, ...]:
    """What is measured on a pad, in the order of the first part: its dimensions, and its height where that is one more."""
    return tuple(name for name in FIRST_OFF if getattr(pad, name) > 0 and _is_of(pad, name))


def _is_of(pad: Pad, name: str) -> bool:
    if name.startswith("stem"):
        return pad.has_stem
    if name == "top_height_mm":
        return len(height_parts(pad)) > 1
    return not (pad.plug_is_round and name in _OF_A_ROUND_PLUG)


def dimension_title(name: str, pad: Pad | None = None) -> str:
    """A dimension in words; of a given pad in the words for what that pad has.

    >>> dimension_title("slot_width_mm")
    'Slot width'
    """
    if pad is not None and name in _OF_THIS_PAD:
        return _OF_THIS_PAD[name](pad)
    if name in TITLES:
        return TITLES[name]
    return name.removesuffix("_mm").replace("_", " ").capitalize()


def left_sizes(leaves_mm: Mapping[str, float], pad: Pad) -> tuple[tuple[str, float], ...]:
    """What an operation leaves finished, in mm: sizes as they are measured, named as inside a sentence, and the whole height."""
    told = {*measured_names(pad), "overall_height_mm"}
    return tuple((lower_first(dimension_title(name, pad)), mm) for name, mm in leaves_mm.items() if name in told)


def how_measured(name: str, pad: Pad) -> str:
    """How a dimension of a pad is measured, in a sentence or two."""
    words = _HOW_HERE[name](pad) if name in _HOW_HERE else HOW[name]
    return f"{words}{_OVER_BLOCKS}" if name in {"web_mm", "top_height_mm"} and _hides_the_seat(pad) else words


def looks(pad: Pad) -> tuple[tuple[str, str], ...]:
    """What is looked at and felt on a pad: key and words."""
    where = "in the slot's corners" if pad.has_slot else "where the body steps in to the seat"
    where = "at the plug's foot" if pad.has_plug else where
    pin = (
        (
            "cross_hole",
            "The cross-hole goes through the stem's middle, square to its axis: a pin enters from both sides.",
        ),
    )
    return (
        *((("cusps", "No ridge stands out of the seat's corner."),) if pad.seat_corner_radius_mm > 0 else ()),
        *(pin if pad.has_cross_hole else ()),
        ("edges", _edges(pad)),
        ("cracks", f"No crack, no white line, no porous spot, above all {where}."),
        ("seat", "The seat face shows one even pattern and does not rock on a flat plate."),
        *_roots(pad),
        *((("pocket", "The pocket stands mid-slot, its corners no rounder than drawn."),) if pad.has_relief else ()),
        ("mark", f"Drawing number and date stand on {'the side' if pad.has_side_to_mark else 'a tag or the bag'}."),
    )


def _roots(pad: Pad) -> tuple[tuple[str, str], ...]:
    """The small radii and the lead-in that the drawing asks for without a dimension of the pad."""
    stem = ("stem_root", "The stem's root is round as drawn, no notch; its end is chamfered to enter the hole.")
    plug = ("plug_root", "The plug's root is round as drawn, no notch.")
    return (*((stem,) if pad.has_stem else ()), *((plug,) if pad.has_plug else ()))


def _edges(pad: Pad) -> str:
    flats = ", the flats' own edges too" if pad.has_flats else ""
    return f"Every edge is broken{flats}; nothing is furry."


def _top(pad: Pad) -> str:
    return f"Height, seat face to {'plug top' if pad.has_plug else 'wall top'}"


def _web(pad: Pad) -> str:
    if pad.has_slot:
        return "Web"
    return "Web, seat face to shoulder" if pad.has_plug else "Web, seat face to top"


def _plug_width(pad: Pad) -> str:
    return "Plug diameter" if pad.plug_is_round else "Plug width, across"


_OF_THIS_PAD: Mapping[str, Callable[[Pad], str]] = {
    "top_height_mm": _top,
    "web_mm": _web,
    "plug_width_mm": _plug_width,
}
_OVER_BLOCKS = " Stand the seat face on two equal blocks inside the skirt, and take their height off."


def _hides_the_seat(pad: Pad) -> bool:
    """Whether the skirt hangs below the seat face, so that no jaw reaches that from the side."""
    return pad.has_skirt and pad.foot_bottom_mm < 0


def skirt_gap_mm(pad: Pad) -> float:
    """Room between the seat and the skirt around it, on each side, in mm."""
    return (pad.skirt_bore_mm - pad.seat_diameter_mm) / 2


def _how_seat_diameter(pad: Pad) -> str:
    if not pad.has_skirt:
        return HOW["seat_diameter_mm"]
    late = (
        " Where they find no room: by the dials of the machine, and on the jack."
        if skirt_gap_mm(pad) < NARROW_MM
        else ""
    )
    return f"Two directions at right angles, with the jaws' tips as far up inside the skirt as they go.{late}"


def _how_seat_length(pad: Pad) -> str:
    if not pad.has_skirt:
        return HOW["seat_length_mm"]
    if _hides_the_seat(pad):
        return "The skirt's length, less the depth from the skirt's end to the seat face, in three places."
    return "From the skirt's end to the seat face, and the skirt's length with it, in three places."


def _how_skirt_bore(pad: Pad) -> str:
    words = "Two directions at right angles, near the skirt's end."
    if skirt_gap_mm(pad) < NARROW_MM and not _hides_the_seat(pad):
        words += (
            " Where the jaws find no room beside the seat: the body's diameter, less the skirt's wall on both sides."
        )
    return words


def _how_skirt_length(pad: Pad) -> str:
    thin = ", with a thin strip instead of the rod where that finds no room" if skirt_gap_mm(pad) < NARROW_MM else ""
    return f"From the skirt's end to the lip's face, the floor of the groove beside the seat, in three places{thin}."


def _how_body(pad: Pad) -> str:
    if pad.has_slot:
        return HOW["body_diameter_mm"]
    return "Two directions at right angles, near both ends."


def _how_flats(pad: Pad) -> str:
    if pad.has_slot:
        return HOW["flats_width_mm"]
    return "Both ends of the flats, near the lip and near the top."


def _how_web(pad: Pad) -> str:
    if pad.has_slot:
        return HOW["web_mm"]
    if pad.has_plug:
        return "From the seat face to the shoulder, on both sides of the plug."
    return "From the seat face to the top, in four places near the edge and in the middle."


def _how_top(pad: Pad) -> str:
    return "From the seat face to the plug's top, in three places." if pad.has_plug else HOW["top_height_mm"]


def _how_offset(pad: Pad) -> str:
    side = "the flat" if pad.has_flats else "the body's side"
    return f"Half way along the slot, from each of its walls to {side} on that wall's own side: the offset is half the difference."


def _how_plug_width(pad: Pad) -> str:
    if pad.plug_is_round:
        return "Two directions at right angles, half way up."
    return "Across, at both ends, half way up."


def _how_edges(pad: Pad) -> str:
    ends = "The skirt's end and the top of the body" if pad.has_skirt else "Both ends of the body"
    plug = ", and the plug's top" if pad.has_plug else ""
    flats = "; the flats' own edges are only broken" if pad.has_flats else ""
    return f"{ends}{plug}{flats}."


_HOW_HERE: Mapping[str, Callable[[Pad], str]] = {
    "seat_diameter_mm": _how_seat_diameter,
    "seat_length_mm": _how_seat_length,
    "skirt_bore_mm": _how_skirt_bore,
    "skirt_length_mm": _how_skirt_length,
    "body_diameter_mm": _how_body,
    "flats_width_mm": _how_flats,
    "slot_offset_mm": _how_offset,
    "web_mm": _how_web,
    "top_height_mm": _how_top,
    "plug_width_mm": _how_plug_width,
    "edge_chamfer_mm": _how_edges,
}
"""Where it depends on what else the pad has."""
