"""What to watch for while cutting each kind of material; facts of the trade carry their mark."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from geometry.making.wording import Sentence, said
from geometry.materials import Family
from geometry.provenance import Source, memory, practice
from geometry.units import inch_to_mm

Stage = Literal["saw", "turn", "hold", "finish", "mill", "edges", "rest"]


@dataclass(frozen=True, slots=True)
class Watch:
    """One thing to look out for, and at which stages."""

    stages: tuple[Stage, ...]
    words: Sentence
    source: Source


_PRACTICE = practice("What machinists say of these plastics")
_STRINGS = Watch(
    ("turn", "mill"),
    said(
        "It comes off in long strings. Keep them off the chuck: stop the spindle and pull them away"
        " with a hook, never by hand."
    ),
    _PRACTICE,
)
_SLIPS = Watch(
    ("hold",),
    said("It slips in the jaws. Clamp firmly, take light cuts, and mark bar and jaw with a pen line to see a slip."),
    _PRACTICE,
)
_HEAT = Watch(
    ("turn", "finish", "mill"),
    said(
        "It swells with heat: let it cool before the finishing cut and before each measurement."
        " Rubbing makes more heat than"
        " cutting: keep the tool sharp and the feed going."
    ),
    _PRACTICE,
)
_CLAMPED = Watch(
    ("hold", "finish"),
    said(
        "It gives under the jaws and springs back: what is round in the chuck may be three-cornered"
        " out of it. Ease the jaws"
        " before the finishing cut."
    ),
    _PRACTICE,
)
_REST = Watch(
    ("rest",),
    said(
        "It goes on moving after it is cut. Let it lie for a day in the room, then measure again and"
        " write down the later figures."
    ),
    _PRACTICE,
)
_SOFT = Watch(
    ("saw", "edges"),
    said("Edges fur up instead of breaking: take the fur off with a sharp knife or a scraper, not with a file."),
    memory("Polyethylene and nylon at a cut edge"),
)
_BURNS = Watch(
    ("turn", "mill"),
    said(
        "It burns with a flame that is hard to see and gives off formaldehyde when overheated. Cut it"
        " cool, clear the chips, air"
        " the room."
    ),
    memory("Acetal"),
)
_CHIPS = Watch(
    ("turn", "mill", "edges"),
    said(
        "It chips at edges where a tool leaves it: back the exit with scrap, or finish the cut from"
        " the other side, and break"
        " every edge."
    ),
    memory("PET-P is notch-sensitive"),
)
_DUST = Watch(
    ("saw", "edges", "finish"), said("Wear a mask: fine wood dust harms the lungs."), practice("Wood dust in a shop")
)
_WELDS = Watch(
    ("turn", "mill"),
    said("It sticks to a dry edge: use spirit or a cutting fluid, and clear the slot of chips."),
    practice("Aluminium on the tool"),
)
_HOLE = Watch(
    ("turn",),
    said(
        "Rod above about {core} across can be porous along its middle: look at the faced end for a"
        " soft, chalky core before going"
        " on.",
        core=inch_to_mm(3),
    ),
    memory("Acetal homopolymer rod; the 3 in from readyplastics.com"),
)

_GIVES = Watch(
    ("turn", "finish", "mill"),
    said(
        "It gives way under the tool instead of being cut: use a razor-sharp, polished tool with much rake, and put the part in"
        " a freezer before the finishing cut."
    ),
    practice("Turning of cast polyurethane: sdplastics.com on sharp tools, rorty.net on turning it cold"),
)

_BY_FAMILY: Mapping[Family, tuple[Watch, ...]] = {
    "nylon": (_STRINGS, _SLIPS, _HEAT, _CLAMPED, _REST, _SOFT),
    "acetal": (_SLIPS, _HEAT, _BURNS, _REST),
    "polyethylene": (_STRINGS, _SLIPS, _HEAT, _CLAMPED, _REST, _SOFT),
    "polyester": (_CHIPS, _HEAT, _REST),
    "elastomer": (_GIVES, _STRINGS, _SLIPS, _HEAT, _CLAMPED),
    "wood": (_DUST, _REST),
    "aluminium": (_WELDS,),
}


def watch_for(family: Family, *stages: Stage, key: str = "") -> tuple[Sentence, ...]:
    """What to look out for at some stages; ``key`` names the material where one of a family is special."""
    every = _BY_FAMILY.get(family, ()) + ((_HOLE,) if key == "pom_h" else ())
    return tuple(w.words for w in every if set(w.stages) & set(stages))


def sources_of(family: Family) -> tuple[Source, ...]:
    """Where the warnings of a kind of material come from."""
    return tuple(w.source for w in _BY_FAMILY.get(family, ()))
