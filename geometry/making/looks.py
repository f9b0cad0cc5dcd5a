"""What to look for on a pad before each use, in the words of its kind, each with a sketch of our own."""

from dataclasses import dataclass, replace
from html import escape

from geometry.conditions import Conditions
from geometry.drawing.lettering import FONT_FAMILY
from geometry.feet.facts import Locates
from geometry.kinds import HeadKind
from geometry.making.look_sketches import HEIGHT, LOOK_OF, WIDTH, sketch_of
from geometry.making.own_words import JackWords, jack_words
from geometry.pad import Pad
from geometry.provenance import practice

LOOK_SOURCE = practice("What one looks at on a plastic part that carries load")


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One thing to look for before each use."""

    place: str
    """Where on the section it is."""
    what: str
    then: str
    head: HeadKind = "slot"
    foot: Locates = "seat"
    """What the pad of the sketch has above and below."""


_DISCARD = "Discard the pad."
_DENT = "Measure the web under it; beyond the limit discard the pad."
_WALL = Look(place="wall", what="A white line or a crack at the foot of a slot wall", then=_DISCARD)
_FLOOR = Look(
    place="slot_floor",
    what="A groove in the slot's floor",
    then="Measure its depth; beyond the limit discard the pad.",
)
_SEAT = Look(
    place="seat",
    what="A dished, split or shiny ring on the seat face; grit in it",
    then="Clean it; dished or split, discard.",
)
_WALL_TOP = Look(
    place="wall_top",
    what="Paint or a bruise on a wall top",
    then="The sill has touched: measure the slot's depth, and do not lift.",
)
_BODY = Look(
    place="body",
    what="Oil, fuel, brake fluid, sunburn, chalking",
    then="Wipe it off; gone soft, sticky or chalky, discard.",
)
_TIGHT = {
    "seat": "Measure the seat; swollen, discard.",
    "skirt": "Measure the skirt inside; closed up, discard.",
    "stem": "Measure the stem; swollen, discard.",
}
_ROOT = {
    "seat": "A white line or a crack under the lip, around the seat",
    "skirt": "A white line or a crack at the root of the skirt",
    "stem": "A white line or a crack where the stem meets the seat",
}
_OF_CUSHION = (
    Look(place="top", what="A dent, a cut or a split in the top", then=_DENT),
    Look(place="top_edge", what="Paint or a bruise beside the face", then="Something else has touched: do not lift."),
)
_OF_PLUG = (
    Look(place="plug_root", what="A white line or a crack at the foot of the plug", then=_DISCARD),
    Look(place="shoulder", what="A dent or a cut in the shoulder", then=_DENT),
    Look(
        place="plug_top",
        what="Paint or a bruise on the plug's top",
        then="It has met what is above the hole: measure its height, and do not lift.",
    ),
)


def looks_of(c: Conditions, pad: Pad) -> tuple[Look, ...]:
    """What to look for on this pad, from what carries the car down."""
    head: HeadKind = "slot" if pad.has_slot else "plug" if pad.has_plug else "cushion"
    foot = c.foot.locates
    first, last = {
        "slot": ((_WALL, _FLOOR), (_WALL_TOP,)),
        "plug": (_OF_PLUG[:2], _OF_PLUG[2:]),
        "cushion": (_OF_CUSHION[:1], _OF_CUSHION[1:]),
    }[head]
    below = _below(jack_words(c), foot, has_root=foot != "seat" or head == "cushion")
    return tuple(replace(look, head=head, foot=foot) for look in (*first, *below, *last, _BODY))


def _below(jack: JackWords, foot: Locates, *, has_root: bool) -> tuple[Look, ...]:
    """The looks at seat and lip, and at the root of what hangs below."""
    return (
        *((Look(place="root", what=_ROOT[foot], then=_DISCARD),) if has_root else ()),
        _SEAT,
        Look(place="seat_side", what=f"The pad no longer {jack.goes} by itself", then=_TIGHT[foot]),
        Look(place="lip", what=jack.mark, then=jack.read),
    )


def sketch_svg(look: Look, *, with_words: bool = True) -> str:
    """The sketch of one look as SVG, its classes named for their meaning, plain attributes as fallback.

    Printed very small, its words are left out: they stand beside it.
    """
    lines, every = sketch_of(look.place, look.head, look.foot)
    words = every if with_words else ()
    drawn = "".join(f'<path class="{name}" d="{d}" {LOOK_OF[name]}/>' for name, d in lines)
    lettered = "".join(
        f'<text class="sk-words" x="{x:g}" y="{y:g}" fill="#1d262d">{said}</text>' for x, y, said in words
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="sketch" viewBox="0 0 {WIDTH} {HEIGHT}" width="{WIDTH}"'
        f' height="{HEIGHT}" role="img" aria-label="{escape(sketch_words(look))}" font-family="{FONT_FAMILY}, sans-serif"'
        f' font-size="16">{drawn}{lettered}</svg>'
    )


def sketch_words(look: Look) -> str:
    """The sketch in words, for those who do not see it."""
    return f"Sketch, exaggerated: {look.what}"
