"""What to look for on a pad before each use, each with a sketch of our own: the pad in section, the fault much exaggerated."""

from collections.abc import Mapping
from dataclasses import dataclass
from html import escape

from geometry.drawing.lettering import FONT_FAMILY
from geometry.provenance import practice

LOOK_SOURCE = practice("What one looks at on a plastic part that carries load")
WIDTH, HEIGHT = 240, 176
"""Of every sketch, in its own units."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One thing to look for before each use."""

    place: str
    """Where on the section it is: the places that checks use."""
    what: str
    then: str


LOOKS = (
    Look(place="wall", what="A white line or a crack at the foot of a slot wall", then="Discard the pad."),
    Look(
        place="slot_floor",
        what="A groove in the slot's floor",
        then="Measure its depth; beyond the limit discard the pad.",
    ),
    Look(
        place="seat",
        what="A dished, split or shiny ring on the seat face; grit in it",
        then="Clean it; dished or split, discard.",
    ),
    Look(
        place="seat_side",
        what="The pad no longer drops into the cup by itself",
        then="Measure the seat; swollen, discard.",
    ),
    Look(place="lip", what="A mark of the rim on the lip", then="Measure the seat's length; the lip must not touch."),
    Look(
        place="wall_top",
        what="Paint or a bruise on a wall top",
        then="The sill has touched: measure the slot's depth, and do not lift.",
    ),
    Look(
        place="body",
        what="Oil, fuel, brake fluid, sunburn, chalking",
        then="Wipe it off; gone soft, sticky or chalky, discard.",
    ),
)

_SEAT = "V110H180V142a8 8 0 0 1-8 8H68a8 8 0 0 1-8-8V110H30Z"
_WHOLE = f"M30 26H112V76H128V26H210{_SEAT}"
_LOOK_OF: Mapping[str, str] = {
    "sk-pad": 'fill="#e9dcc3" stroke="#5b3d1e" stroke-width="1.6" stroke-linejoin="round"',
    "sk-mark": 'fill="none" stroke="#1d262d" stroke-width="2.6" stroke-linejoin="round"',
    "sk-white": 'fill="none" stroke="#fffdf7" stroke-width="3"',
    "sk-lead": 'fill="none" stroke="#1d262d" stroke-width="0.9"',
    "sk-lead sk-dash": 'fill="none" stroke="#1d262d" stroke-width="0.9" stroke-dasharray="5 4"',
    "sk-steel": 'fill="#dfe5e8" stroke="#55636d" stroke-width="1"',
    "sk-sheet": 'fill="none" stroke="#8fa1ad" stroke-width="5"',
}
"""What each class looks like where no style sheet says otherwise."""
_Lines = tuple[tuple[str, str], ...]
_Words = tuple[tuple[float, float, str], ...]
_SKETCHES: Mapping[str, tuple[_Lines, _Words]] = {
    "wall": (
        (
            ("sk-pad", _WHOLE),
            ("sk-white", "M128 76L140 92M133 72L148 92M138 68L156 92"),
            ("sk-mark", "M128 76l7 5-1 6 9 6 1 7 9 4"),
            ("sk-lead", "M150 84L170 73"),
            ("sk-lead", "M146 102L150 128"),
        ),
        ((168, 70, "white"), (136, 142, "crack")),
    ),
    "slot_floor": (
        (
            ("sk-pad", f"M30 26H112V76h3v7q5 5 10 0v-7h3V26H210{_SEAT}"),
            ("sk-lead sk-dash", "M112 76H128"),
            ("sk-mark", "M115 76v7q5 5 10 0v-7"),
            ("sk-lead", "M124 84L146 100"),
        ),
        ((148, 105, "groove"),),
    ),
    "seat": (
        (
            ("sk-pad", "M30 26H112V76H128V26H210V110H180V142a8 8 0 0 1-8 8Q120 130 68 150a8 8 0 0 1-8-8V110H30Z"),
            ("sk-lead sk-dash", "M48 150H192"),
            ("sk-mark", "M172 150Q120 130 68 150M84 145l3-9-3-6 2-6"),
        ),
        ((104, 168, "dished"), (90, 124, "split")),
    ),
    "seat_side": (
        (
            (
                "sk-pad",
                "M30 26H112V76H128V26H210V110H181C190 118 190 138 176 149Q174 150 170 150H70Q66 150 64 149C50 138 50 118"
                " 59 110H30Z",
            ),
            ("sk-lead sk-dash", "M60 110V142M180 110V142"),
            ("sk-steel", "M44 114V162H196V114H188V154H52V114Z"),
            ("sk-lead", "M184 124L208 136"),
        ),
        ((200, 150, "tight"),),
    ),
    "lip": (
        (
            (
                "sk-pad",
                "M30 26H112V76H128V26H210V110H202v-5h-10v5H180V142a8 8 0 0 1-8 8H68a8 8 0 0 1-8-8V110H48v-5h-10v5H30Z",
            ),
            ("sk-steel", "M40 114V164H200V114H192V156H48V114Z"),
            ("sk-mark", "M202 110v-5h-10v5M48 110v-5h-10v5"),
            ("sk-lead", "M197 103L182 84"),
        ),
        ((148, 80, "mark"),),
    ),
    "wall_top": (
        (
            ("sk-pad", f"M30 26H54q10 8 22 0H112V76H128V26H210{_SEAT}"),
            ("sk-sheet", "M20 14H106"),
            ("sk-mark", "M54 26q10 8 22 0"),
            ("sk-lead", "M66 32L72 48"),
        ),
        ((22, 10, "sill"), (50, 62, "bruise")),
    ),
    "body": (
        (
            ("sk-pad", _WHOLE),
            ("sk-white", "M34 34l10 10M34 46l14 14M34 58l18 18M34 70l14 14M34 82l10 10"),
            ("sk-mark", "M176 44c-9 13-9 20 0 20s9-7 0-20Z"),
        ),
        ((52, 52, "chalk"), (162, 82, "oil")),
    ),
}


def sketch_svg(look: Look, *, with_words: bool = True) -> str:
    """The sketch of one look as SVG, its classes named for their meaning, plain attributes as fallback.

    Printed very small, its words are left out: they stand beside it.
    """
    lines, every = _SKETCHES[look.place]
    words = every if with_words else ()
    drawn = "".join(f'<path class="{name}" d="{d}" {_LOOK_OF[name]}/>' for name, d in lines)
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
