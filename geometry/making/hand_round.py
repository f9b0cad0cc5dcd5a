"""What is scribed, sawn and filed, in order, until body, seat and stem of a pad are round without a lathe."""

from collections.abc import Iterator
from math import hypot

from geometry.making.wording import Sentence, said
from geometry.pad import Pad


def round_steps(pad: Pad) -> Iterator[Sentence]:
    """The steps, from the circles on both ends to the broken edges; the order in which nothing hides what comes next."""
    stem = pad.stem_length_mm if pad.has_stem else 0.0
    also = " and {stem}" if pad.has_stem else ""
    yield said(
        f"Scribe circles from the centre of each end: {{body}} on the top, {{seat}}{also} on the foot. Square a line down"
        " the side, so that both centres stay on one axis.",
        body=pad.body_diameter_mm,
        seat=pad.seat_diameter_mm,
        stem=pad.stem_diameter_mm,
    )
    yield said(
        "File the body until its gap gauge goes over it all round. A bar that already measures within the body's limits stays as"
        " it is."
    )
    yield said(
        "Scribe the lip all round, {up} up from the foot. Saw in from there all round, short of the seat, and pare the seat"
        " down to its circle.",
        up=stem + pad.seat_length_mm,
    )
    yield said("File the lip flat and square to the side all round.")
    if pad.has_stem:
        yield said(
            "Scribe the seat's face all round, {stem} up from the foot. Saw in, pare the stem down to its circle, and file it until"
            " its gap gauge goes over, {across} across. File the seat's face flat: the load stands on it.",
            stem=stem,
            across=pad.stem_diameter_mm,
        )
    stem_too = ", its stem in the hole" if pad.has_stem else ""
    yield said(
        f"File the seat until its gap gauge goes over it all round, then try it in the jack: it drops in{stem_too} and turns"
        " by hand."
    )
    if pad.seat_corner_radius_mm > 0:
        yield said("File the seat's corner to the seat corner gauge, R {radius}.", radius=pad.seat_corner_radius_mm)
    if pad.has_recess:
        yield said(
            "Recess in the seat's face: a flat-bottomed bit {across} across in a drill press, its stop set {depth} below the"
            " seat's face, the pad clamped. A knife or a hand drill does not make it round and deep enough: have it bored.",
            across=pad.seat_recess_diameter_mm,
            depth=pad.seat_recess_depth_mm,
        )
    if pad.has_plug:
        yield _shoulder(pad)
    if pad.edge_chamfer_mm > 0:
        yield said("Break the edges of the body {edge} × 45°.", edge=pad.edge_chamfer_mm)


def _shoulder(pad: Pad) -> Sentence:
    """The step down from a plug's top, and a round plug with it."""
    words = "Scribe the shoulder all round, {deep} down from the top, and a circle of {across} on the top. Saw in, and pare down to"
    if pad.plug_is_round:
        return said(
            f"{words} the circle; file the plug until its gap gauge goes over it all round, and the shoulder flat.",
            deep=pad.plug_height_mm,
            across=pad.plug_width_mm,
        )
    return said(
        f"{words} the circle: the plug comes out of what stays. File the shoulder flat: the car stands on it.",
        deep=pad.plug_height_mm,
        across=min(hypot(pad.plug_width_mm, pad.plug_length_mm), pad.body_diameter_mm),
    )
