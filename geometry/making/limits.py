"""The limits of a size, said where it is cut: those of the drawing, so that nobody has to look them up at the machine."""

from geometry.fits import linear_tolerance_mm
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.spread import general_tolerance_mm


def limit_words(pad: Pad, name: str, subject: str) -> Sentence:
    """What a dimension may measure when it is finished, and how much that is to each side."""
    size, tolerance = getattr(pad, name), general_tolerance_mm(pad, name)
    return said(
        f"{subject} measures from {{least}} to {{most}} when it is finished.",
        least=size - tolerance,
        most=size + tolerance,
    )


def height_tolerance_mm(pad: Pad) -> float:
    """Plus and minus of the whole height, [mm].

    The drawing gives limits to the parts that make it up and none to their sum. Facing keeps to the general tolerance of the
    sum, and to no more than the parts may be off together, so that what is cut later can still keep its own (ISO 2768-1 m).
    """
    parts = ["web_mm", "slot_depth_mm", "plug_height_mm"]
    parts += ["stem_length_mm"] if pad.foot_depth_mm == pad.stem_length_mm else ["skirt_length_mm", "seat_length_mm"]
    there = [name for name in parts if getattr(pad, name) > 0]
    together = sum(general_tolerance_mm(pad, name) for name in there)
    return min(together, linear_tolerance_mm(pad.overall_height_mm))


def height_words(pad: Pad) -> Sentence:
    """Between which limits the whole height has to lie after facing."""
    off = height_tolerance_mm(pad)
    later = ": what is cut from it later can keep its own limits" if pad.has_slot or pad.foot_depth_mm > 0 else ""
    return said(
        f"The whole height then lies between {{least}} and {{most}}{later}.",
        least=pad.overall_height_mm - off,
        most=pad.overall_height_mm + off,
    )
