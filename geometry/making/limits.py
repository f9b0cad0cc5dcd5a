"""The limits of a size, said where it is cut: those of the drawing, so that nobody has to look them up at the machine."""

from geometry.fits import linear_tolerance_mm
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.spread import general_tolerance_mm
from geometry.units import LowerLimit, UpperLimit, Zone

_SAME_MM = 1e-9


def limit_sentence(pad: Pad, name: str, subject: str) -> Sentence:
    """What a dimension may measure when it is finished, and how much that is to each side."""
    size, tolerance = getattr(pad, name), general_tolerance_mm(pad, name)
    return said(
        f"{subject} measures from {{least}} to {{most}} when it is finished.",
        least=LowerLimit(size - tolerance),
        most=UpperLimit(size + tolerance),
    )


def height_tolerance_mm(pad: Pad) -> float:
    """Plus and minus of the whole height, [mm].

    The drawing gives limits to the parts that make it up and none to their sum. Facing keeps to the general tolerance of the
    sum, and to no more than the parts may be off together, so that what is cut later can still keep its own (ISO 2768-1 m).
    """
    return min(parts_together_mm(pad), linear_tolerance_mm(pad.overall_height_mm))


def parts_together_mm(pad: Pad) -> float:
    """Plus and minus of the whole height as the drawing leaves it: what its parts may be off together, [mm]."""
    parts = ["web_mm", "slot_depth_mm", "plug_height_mm"]
    parts += ["stem_length_mm"] if pad.foot_depth_mm == pad.stem_length_mm else ["skirt_length_mm", "seat_length_mm"]
    there = [name for name in parts if getattr(pad, name) > 0]
    return sum(general_tolerance_mm(pad, name) for name in there)


def height_sentence(pad: Pad) -> Sentence:
    """Between which limits the whole height has to lie after facing."""
    off, together, size = height_tolerance_mm(pad), parts_together_mm(pad), pad.overall_height_mm
    least, most = LowerLimit(size - off), UpperLimit(size + off)
    later = ": what is cut from it later can keep its own limits" if pad.has_slot or pad.foot_depth_mm > 0 else ""
    if together - off < _SAME_MM:
        return said(f"The whole height then lies between {{least}} and {{most}}{later}.", least=least, most=most)
    return said(
        "The whole height then lies between {least} and {most}, the general tolerance of a length that one cut makes"
        f"{later}. The drawing gives no limits to the sum: the inspection sheet goes by its parts, which may be off by"
        " {together} together.",
        least=least,
        most=most,
        together=Zone(together),
    )
