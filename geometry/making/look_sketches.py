"""Sketches of what to look for: the pad in section with the top and the foot that it has, the fault much exaggerated."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.feet.facts import Locates
from geometry.kinds import HeadKind

Lines = tuple[tuple[str, str], ...]
"""(class, path) of each line."""
Words = tuple[tuple[float, float, str], ...]
"""(x, y, word)."""
Fault = tuple[str, Lines, Words]
"""A part of the pad's outline with the fault in it, what is drawn over it, and the words."""
WIDTH, HEIGHT = 240, 176
"""Of every sketch, in its own units."""
LOOK_OF: Mapping[str, str] = {
    "sk-pad": 'fill="#e9dcc3" stroke="#5b3d1e" stroke-width="1.6" stroke-linejoin="round"',
    "sk-mark": 'fill="none" stroke="#1d262d" stroke-width="2.6" stroke-linejoin="round"',
    "sk-white": 'fill="none" stroke="#fffdf7" stroke-width="3"',
    "sk-lead": 'fill="none" stroke="#1d262d" stroke-width="0.9"',
    "sk-lead sk-dash": 'fill="none" stroke="#1d262d" stroke-width="0.9" stroke-dasharray="5 4"',
    "sk-steel": 'fill="#dfe5e8" stroke="#55636d" stroke-width="1"',
    "sk-sheet": 'fill="none" stroke="#8fa1ad" stroke-width="5"',
}
"""What each class looks like where no style sheet says otherwise."""
_DASH = "sk-lead sk-dash"
_TOPS: Mapping[str, str] = MappingProxyType(
    {"slot": "M30 26H112V76H128V26H210", "cushion": "M30 40H210", "plug": "M30 52H88V20H152V52H210"}
)
_FEET: Mapping[str, str] = MappingProxyType(
    {
        "seat": "V110H180V142a8 8 0 0 1-8 8H68a8 8 0 0 1-8-8V110H30Z",
        "skirt": "V152H194V108H184V116H56V108H46V152H30Z",
        "stem": "V110H192V118H144V162a4 4 0 0 1-4 4H100a4 4 0 0 1-4-4V118H48V110H30Z",
    }
)
"""From the body's right edge round the foot and back."""
_ABOVE: Mapping[str, Fault] = MappingProxyType(
    {
        "wall": (
            _TOPS["slot"],
            (
                ("sk-white", "M128 76L140 92M133 72L148 92M138 68L156 92"),
                ("sk-mark", "M128 76l7 5-1 6 9 6 1 7 9 4"),
                ("sk-lead", "M150 84L170 73"),
                ("sk-lead", "M146 102L150 128"),
            ),
            ((168, 70, "white"), (136, 142, "crack")),
        ),
        "slot_floor": (
            "M30 26H112V76h3v7q5 5 10 0v-7h3V26H210",
            ((_DASH, "M112 76H128"), ("sk-mark", "M115 76v7q5 5 10 0v-7"), ("sk-lead", "M124 84L146 100")),
            ((148, 105, "groove"),),
        ),
        "wall_top": (
            "M30 26H54q10 8 22 0H112V76H128V26H210",
            (
                ("sk-sheet", "M20 14H106"),
                ("sk-mark", "M54 26q10 8 22 0"),
                ("sk-lead", "M66 32L72 48"),
            ),
            ((22, 10, "sill"), (50, 62, "bruise")),
        ),
        "top": (
            "M30 40H92q28 14 56 0H210",
            ((_DASH, "M92 40H148"), ("sk-mark", "M92 40q28 14 56 0"), ("sk-lead", "M124 48L144 68")),
            ((146, 76, "dent"),),
        ),
        "top_edge": (
            "M30 40H172q14 8 28 0H210",
            (
                ("sk-sheet", "M60 34H150"),
                ("sk-mark", "M172 40q14 8 28 0"),
                ("sk-lead", "M184 46L176 66"),
            ),
            ((64, 24, "face"), (146, 80, "bruise")),
        ),
        "plug_root": (
            _TOPS["plug"],
            (
                ("sk-white", "M152 52L138 66M147 48L130 66M142 44L122 66"),
                ("sk-mark", "M152 52l-8 5 1 6-9 5-1 7-9 4"),
                ("sk-lead", "M140 46L172 34"),
                ("sk-lead", "M132 76L150 94"),
            ),
            ((174, 36, "white"), (152, 102, "crack")),
        ),
        "shoulder": (
            "M30 52H40q16 11 32 0H88V20H152V52H210",
            ((_DASH, "M40 52H72"), ("sk-mark", "M40 52q16 11 32 0"), ("sk-lead", "M58 58L76 78")),
            ((78, 86, "dent"),),
        ),
        "plug_top": (
            "M30 52H88V20H104q14 8 30 0H152V52H210",
            (
                ("sk-sheet", "M70 10H176"),
                ("sk-mark", "M104 20q14 8 30 0"),
                ("sk-lead", "M120 25L124 48"),
            ),
            ((100, 64, "bruise"),),
        ),
        "body": (
            "",
            (
                ("sk-white", "M34 58l14 14M34 70l14 14M34 82l10 10M34 94l8 8"),
                ("sk-mark", "M176 66c-9 13-9 20 0 20s9-7 0-20Z"),
            ),
            ((52, 80, "chalk"), (162, 104, "oil")),
        ),
    }
)
"""By place: the top with its fault, what is drawn over it, and the words; no top of its own where any has the fault."""
_ROOTS: Mapping[str, tuple[float, float]] = MappingProxyType(
    {"seat": (180, 110), "skirt": (194, 108), "stem": (144, 118)}
)
"""Where a crack starts under each foot."""


def _root(foot: Locates) -> Fault:
    x, y = _ROOTS[foot]
    sign = 1 if foot == "skirt" else -1
    return (
        _FEET[foot],
        (
            ("sk-white", f"M{x} {y}l{sign * 8} -14M{x + sign * 5} {y + 2}l{sign * 8} -16"),
            ("sk-mark", f"M{x} {y}l{sign * 3} -6 {sign * 4} -2 {sign * 3} -7 {sign * 4} -2"),
            ("sk-lead", f"M{x + sign * 8} {y - 10}L110 86"),
        ),
        ((62, 86, "crack"),),
    )


_SEATS: Mapping[str, Fault] = MappingProxyType(
    {
        "seat": (
            "V110H180V142a8 8 0 0 1-8 8Q120 130 68 150a8 8 0 0 1-8-8V110H30Z",
            (
                (_DASH, "M48 150H192"),
                ("sk-mark", "M172 150Q120 130 68 150M84 145l3-9-3-6 2-6"),
            ),
            ((104, 168, "dished"), (90, 124, "split")),
        ),
        "skirt": (
            "V152H194V108H184V116Q120 98 56 116V108H46V152H30Z",
            ((_DASH, "M46 116H194"), ("sk-mark", "M184 116Q120 98 56 116M84 110l3-8-3-6 2-6")),
            ((96, 134, "dished"), (92, 92, "split")),
        ),
        "stem": (
            "V110H192V118Q168 106 144 118V162a4 4 0 0 1-4 4H100a4 4 0 0 1-4-4V118Q72 106 48 118V110H30Z",
            ((_DASH, "M44 118H196"), ("sk-mark", "M192 118Q168 106 144 118M96 118Q72 106 48 118")),
            ((150, 138, "dished"),),
        ),
    }
)
_TIGHT: Mapping[str, Fault] = MappingProxyType(
    {
        "seat": (
            "V110H181C190 118 190 138 176 149Q174 150 170 150H70Q66 150 64 149C50 138 50 118 59 110H30Z",
            (
                (_DASH, "M60 110V142M180 110V142"),
                ("sk-steel", "M44 114V162H196V114H188V154H52V114Z"),
                ("sk-lead", "M184 124L208 136"),
            ),
            ((200, 150, "tight"),),
        ),
        "skirt": (
            "V152H188Q176 130 194 108H184V116H56V108H46Q64 130 52 152H30Z",
            (
                (_DASH, "M46 108V152M194 108V152"),
                ("sk-steel", "M58 118H182V136H58Z"),
                ("sk-lead", "M182 130L206 160"),
            ),
            ((196, 172, "tight"),),
        ),
        "stem": (
            "V110H192V118H146Q158 142 146 166H94Q82 142 94 118H48V110H30Z",
            (
                (_DASH, "M96 118V166M144 118V166"),
                ("sk-steel", "M60 120H90V172H60ZM150 120H180V172H150Z"),
                ("sk-lead", "M150 144L196 150"),
            ),
            ((198, 156, "tight"),),
        ),
    }
)
_LIPS: Mapping[str, Fault] = MappingProxyType(
    {
        "seat": (
            "V110H202v-5h-10v5H180V142a8 8 0 0 1-8 8H68a8 8 0 0 1-8-8V110H48v-5h-10v5H30Z",
            (
                ("sk-steel", "M40 114V164H200V114H192V156H48V114Z"),
                ("sk-mark", "M202 110v-5h-10v5M48 110v-5h-10v5"),
                ("sk-lead", "M197 103L182 84"),
            ),
            ((148, 80, "mark"),),
        ),
        "skirt": (
            "V152H206v-5h-8v5H194V108H184V116H56V108H46V152H42v-5h-8v5H30Z",
            (
                ("sk-steel", "M58 118H182V136H58Z"),
                ("sk-mark", "M206 152v-5h-8v5M42 152v-5h-8v5"),
                ("sk-lead", "M198 150L176 160"),
            ),
            ((136, 168, "mark"),),
        ),
        "stem": (
            "V110H206v-5h-8v5H192V118H144V162a4 4 0 0 1-4 4H100a4 4 0 0 1-4-4V118H48V110H42v-5h-8v5H30Z",
            (
                ("sk-steel", "M60 120H90V172H60ZM150 120H180V172H150Z"),
                ("sk-mark", "M206 110v-5h-8v5M42 110v-5h-8v5"),
                ("sk-lead", "M202 103L184 88"),
            ),
            ((146, 84, "mark"),),
        ),
    }
)
_BELOW: Mapping[str, Mapping[str, Fault]] = MappingProxyType({"seat": _SEATS, "seat_side": _TIGHT, "lip": _LIPS})


def sketch_of(place: str, head: HeadKind, foot: Locates) -> tuple[Lines, Words]:
    """Lines and words of the fault at a place of a pad with this head and foot."""
    if place == "root" or place in _BELOW:
        below, lines, words = _root(foot) if place == "root" else _BELOW[place][foot]
        return (("sk-pad", f"{_TOPS[head]}{below}"), *lines), words
    above, lines, words = _ABOVE[place]
    return (("sk-pad", f"{above or _TOPS[head]}{_FEET[foot]}"), *lines), words
