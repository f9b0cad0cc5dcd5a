"""The pad in use: what to look for before each use, and how far it may wear before a check fails."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import Source, derived, practice
from geometry.rules import Check
from geometry.spread import Spread, general_tolerance_mm

HALVINGS = 24
STEPS = 40
"""Wear is tried in so many steps before the last one is halved: a check may fail and pass again further on."""
DEEPEST_GROOVE_MM = 1.0
GROOVE_SOURCE = derived("A groove deeper than the steel is thick guides the seam away from the floor; 1 mm in any case")
LOOK_SOURCE = practice("What one looks at on a plastic part that carries load")
LIMIT_SOURCE = derived("The wear at which the first estimate fails, found by halving; each kind of wear by itself")

CALIPER_MM = 0.05
"""What a worn dimension is known to when it is measured with a caliper: common practice, no source."""
_MAKING = frozenset({"stock", "cutter", "cutter_reach"})
Kind = Literal["groove", "seat_worn", "seat_swollen", "slot_wide", "slot_closed", "seat_short"]


@dataclass(frozen=True, slots=True, kw_only=True)
class WearLimit:
    """One reading to take in service, and the value at which the pad is discarded."""

    kind: Kind
    title: str
    dimension: str
    """What is measured, by its name in the pad."""
    now_mm: float
    limit_mm: float
    """Discard beyond this reading."""
    allowed_mm: float
    """How far it is from now to the limit; 0 where a check fails already."""
    direction: Literal["up", "down"]
    check: Check | None
    """What fails first beyond the limit; None where another rule ends it sooner."""
    how: Sentence
    words: Sentence
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One thing to look for before each use."""

    place: str
    """Where on the section it is: the places that checks use."""
    what: str
    then: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ServiceRecord:
    """What goes on the record that stays with the pad."""

    looks: tuple[Look, ...]
    limits: tuple[WearLimit, ...]
    discard_when: tuple[Sentence, ...]

    def limit(self, kind: Kind) -> WearLimit:
        """One wear limit."""
        return next(limit for limit in self.limits if limit.kind == kind)


_HOW: Mapping[Kind, str] = {
    "groove": "Depth rod into the groove from the wall tops, in three places, less the slot's depth when"
    " new; or the web.",
    "seat_worn": "Caliper, two directions, half way up the seat; write down the smaller.",
    "seat_swollen": "Caliper, two directions, half way up the seat, pad at room temperature; write down the larger.",
    "seat_short": "Depth rod from the lip's face to the seat face, in three places; write down the shortest.",
    "slot_wide": "Caliper's inside jaws near the mouth, both ends; write down the wider.",
    "slot_closed": "Caliper's inside jaws near the mouth, both ends; write down the narrower.",
}
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


def service_record(pad: Pad, conditions: Conditions, spread: Spread | None = None) -> ServiceRecord:
    """Looks and limits for a pad, as drawn or as measured (then with the spread of its readings)."""
    known = spread or Spread()
    limits = tuple(_limits(pad, conditions, known))
    failing = [c.rule.title for c in judge(conditions, pad, known) if c.verdict == "fail" and c.code not in _MAKING]
    never = (said(f"Do not use it at all. These estimates fail already: {'; '.join(failing)}."),) if failing else ()
    return ServiceRecord(looks=LOOKS, limits=limits, discard_when=(*never, *_discard(limits)))


def _limits(pad: Pad, c: Conditions, spread: Spread) -> Iterator[WearLimit]:
    finder = _Finder(pad, c, spread)
    groove = min(DEEPEST_GROOVE_MM, c.seam.edge_thickness_mm)
    yield finder.limit(
        "groove",
        "Groove in the slot's floor",
        "web_mm",
        lambda by: pad.with_(web_mm=pad.web_mm - by, slot_depth_mm=pad.slot_depth_mm + by),
        most_mm=groove,
        direction="down",
        how=said(_HOW["groove"]),
        beyond=said("A deeper groove holds the seam's edge like a notch, whatever the estimates say."),
        source=GROOVE_SOURCE,
    )
    for kind, title, name, sign, most in (
        ("seat_worn", "Seat worn thinner", "seat_diameter_mm", -1, 0.1 * pad.seat_diameter_mm),
        ("seat_swollen", "Seat swollen", "seat_diameter_mm", 1, 0.1 * pad.seat_diameter_mm),
        ("seat_short", "Seat face worn, seat shorter", "seat_length_mm", -1, 0.5 * pad.seat_length_mm),
        ("slot_wide", "Slot opened", "slot_width_mm", 1, pad.slot_width_mm),
        ("slot_closed", "Slot closed up", "slot_width_mm", -1, 0.9 * pad.slot_width_mm),
    ):
        yield finder.single(kind, title, name, sign, most)  # type: ignore[arg-type]  # the kinds stand in the tuple


@dataclass(frozen=True, slots=True)
class _Finder:
    """Finds how far one dimension may go."""

    pad: Pad
    c: Conditions
    spread: Spread

    def single(self, kind: Kind, title: str, name: str, sign: int, most: float) -> WearLimit:
        """A limit on one dimension."""
        size = getattr(self.pad, name)
        if kind == "seat_short":
            # What wears off the seat face takes web and height with it.
            change = self._seat_face
        else:

            def change(by: float) -> Pad:
                return self.pad.with_(**{name: size + sign * by})

        return self.limit(
            kind,
            title,
            name,
            change,
            most_mm=most,
            direction="up" if sign > 0 else "down",
            how=said(_HOW[kind]),
            beyond=said("No estimate fails before that; by then it is no longer the part that was drawn."),
            source=LIMIT_SOURCE,
        )

    def _seat_face(self, by: float) -> Pad:
        return self.pad.with_(seat_length_mm=self.pad.seat_length_mm - by, web_mm=self.pad.web_mm - by)

    def limit(
        self,
        kind: Kind,
        title: str,
        name: str,
        change: Callable[[float], Pad],
        *,
        most_mm: float,
        direction: Literal["up", "down"],
        how: Sentence,
        beyond: Sentence,
        source: Source,
    ) -> WearLimit:
        """Halve the wear until the first failing check is found."""
        allowed, check = self.reach(change, name, most_mm)
        now = getattr(self.pad, name)
        limit = now + allowed if direction == "up" else now - allowed
        ends = said(
            f"Discard when it reads {'more' if direction == 'up' else 'less'} than {{limit}}, {{allowed}} from now.",
            limit=limit,
            allowed=allowed,
        )
        why = (
            f" Beyond that fails: {check.rule.title[0].lower()}{check.rule.title[1:]}."
            if check
            else f" {beyond.template}"
        )
        return WearLimit(
            kind=kind,
            title=title,
            dimension=name,
            now_mm=now,
            limit_mm=limit,
            allowed_mm=allowed,
            direction=direction,
            check=check,
            how=how,
            words=Sentence(ends.template + why, ends.lengths_mm),
            source=LIMIT_SOURCE if check else source,
        )

    def reach(self, change: Callable[[float], Pad], name: str, most_mm: float) -> tuple[float, Check | None]:
        """How far a change may go before a check fails that does not fail now, and that check."""
        already = {c.code for c in self.failures(self.pad, name)}
        first = next(
            (k for k in range(STEPS + 1) if self.new_failure(change(most_mm * k / STEPS), name, already)), None
        )
        if first is None:
            return most_mm, None
        low, high = most_mm * max(0, first - 1) / STEPS, most_mm * first / STEPS
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            if self.new_failure(change(middle), name, already):
                high = middle
            else:
                low = middle
        return low, self.new_failure(change(high), name, already)

    def new_failure(self, pad: Pad, name: str, already: set[str]) -> Check | None:
        """The first check that fails and did not before."""
        return next((c for c in self.failures(pad, name) if c.code not in already), None)

    def failures(self, pad: Pad, name: str) -> tuple[Check, ...]:
        """The checks that fail, the worn dimension being measured and not drawn."""
        found = judge(self.c, pad, self._measured(name))
        return tuple(c for c in found if c.verdict == "fail" and c.code not in _MAKING)

    def _measured(self, name: str) -> Spread:
        """What is known of the part: the worn dimension as well as a caliper tells it."""
        general = general_tolerance_mm(self.pad, name)
        known = dict(self.spread.known)
        known[name] = min(known.get(name, general), CALIPER_MM)
        return Spread(known)


def _discard(limits: tuple[WearLimit, ...]) -> Iterator[Sentence]:
    for limit in limits:
        yield Sentence(f"{limit.title}: {limit.words.template}", limit.words.lengths_mm)
    yield said("A wall shows a white line or a crack: at once, whatever it measures.")
    yield said("The pad fell from a height, was overloaded, or the car slipped on it: at once.")
    yield said("It was left under load, in oil or fuel, or hotter than the sheet says.")
    yield said("Its number cannot be read, so nobody knows which jack and which car it is for.")
