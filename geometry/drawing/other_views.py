"""The views beside the section: in which ways they may stand, and what they tell of what the section leaves to them."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from math import inf
from typing import NamedTuple

from geometry.drawing.block import Block
from geometry.drawing.blocks import side_block, top_block, underside_block, with_marking, with_moved, with_told
from geometry.drawing.facts import SheetFacts
from geometry.drawing.model import Measure
from geometry.drawing.notes import OnLeader, marking_words
from geometry.drawing.placing import NoRoomError
from geometry.drawing.plan_view import AT_TOP
from geometry.drawing.scales import SCALES, Scale
from geometry.drawing.side_signs import AT_SIDE
from geometry.pad import Pad

_LEAST_UNDERSIDE_MM = 30.0
_NARROW_MM = 6.0


@dataclass(frozen=True, slots=True)
class Leeway:
    """What is allowed so that the views find room."""

    at_right: bool = False
    """Whether the projected views may stand at the right end of the area too."""
    crowded: bool = False
    """Whether views may stand nearer each other, and the section's name aside."""


class Way(NamedTuple):
    """The side view whole, half or not at all, the view that carries the words about marking, and how wide the side view may be."""

    half: bool | None
    marked: str
    narrow: bool = False
    """Words that the section leaves to it stand hardly wider than the part."""
    apart: bool = False
    """The side view stands where there is room, and an arrow says how it is seen (ISO 128-3)."""


WAYS = (
    *(Way(half, marked, narrow) for half, narrow, marked in product((False, True), (False, True), ("side", "top"))),
    Way(False, ""),
    Way(True, ""),
    Way(True, "", narrow=True),
    *(Way(half, marked, apart=True) for half, marked in product((False, True), ("top", ""))),
    *(Way(half, "", narrow=True, apart=True) for half in (False, True)),
    Way(None, "top"),
    Way(None, ""),
)
"""The most wanted first."""

Beside = tuple[Block | None, Block, frozenset[OnLeader]]
"""Side view, top view, and what they tell on leaders."""


class OtherViews:
    """Side view, top view and underside at one main scale: the same about every section, so made once."""

    def __init__(self, pad: Pad, shown: dict[str, Measure], facts: SheetFacts, scale: Scale) -> None:
        self.pad, self.shown, self.facts, self.scale = pad, shown, facts, scale
        self.marking = marking_words(facts.figure_unit)
        self.told: frozenset[OnLeader] = (
            frozenset({"pocket corners"}) if "relief_corner_radius_mm" in shown else frozenset()
        )
        self.made: dict[tuple[Way, frozenset[str], frozenset[OnLeader]], Beside | None] = {}
        self.tops: dict[frozenset[str], Block] = {}

    @cached_property
    def undersides(self) -> tuple[list[Block], ...]:
        """View C as large as can be, smaller, or not at all."""
        return tuple(_undersides(self.pad, self.scale))

    def top(self, moved: frozenset[str]) -> Block:
        """The top view with what the section leaves to it; raises NoRoomError where its dimensions have no room."""
        if moved not in self.tops:
            self.tops[moved] = top_block(self.pad, self.shown, self.scale, moved=moved)
        return self.tops[moved]

    def side(self, way: Way, moved: frozenset[str], wanted: frozenset[OnLeader]) -> tuple[Block, frozenset[OnLeader]]:
        """The side view or half of it, with what the section leaves to it, and what of that a note would tell otherwise.

        Raises NoRoomError where something has no room.
        """
        side = side_block(self.pad, self.scale, half=bool(way.half))
        limit = side.box.right + _NARROW_MM if way.narrow else inf
        side = with_moved(self.pad, side, self.shown, self.facts, moved, right_limit=limit)
        told = frozenset[OnLeader]()
        if wanted:
            side, told = with_told(self.pad, side, self.facts.figure_unit, wanted)
        return (with_marking(self.pad, side, self.marking) if way.marked == "side" else side), told

    def beside(self, way: Way, moved: frozenset[str], wanted: frozenset[OnLeader]) -> Beside | None:
        """The side view, or half of it or none, and the top view, one of them marked; nothing where something has no room."""
        key, at_top = (way, moved, wanted), moved & AT_TOP
        if way.half is None:
            if not moved <= AT_TOP:
                return None
        else:
            at_top -= AT_SIDE
        if key not in self.made:
            self.made[key] = None
            with suppress(NoRoomError):
                side, told = (
                    (None, frozenset[OnLeader]()) if way.half is None else self.side(way, moved - at_top, wanted)
                )
                top = self.top(at_top)
                top = with_marking(self.pad, top, self.marking) if way.marked == "top" else top
                self.made[key] = side, top, told | self.told
        return self.made[key]


def _undersides(pad: Pad, scale: Scale) -> Iterator[list[Block]]:
    """View C where there is something to see: at the main scale, or one step smaller where that is still a picture, or none."""
    if pad.has_stem or pad.has_recess or pad.has_skirt:
        yield [underside_block(pad, scale, main=scale)]
        smaller = next((other for other in SCALES if other < scale), scale)
        if smaller < scale and pad.body_diameter_mm * smaller.factor >= _LEAST_UNDERSIDE_MM:
            yield [underside_block(pad, smaller, main=scale)]
    yield []
