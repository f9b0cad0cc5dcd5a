"""The pad in use: what to look for before each use, and how far it may wear before a check fails."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.inspection import MAKING
from geometry.letters import lower_first
from geometry.making.looks import Look, looks_of
from geometry.making.own_words import cracks_at
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import Source, derived
from geometry.rules import Check
from geometry.spread import Spread
from geometry.units import LowerLimit, UpperLimit
from geometry.wear_kinds import HALVINGS, WORN, Kind, Way, furthest, how_read, water_growth, ways, worn_pad

STEPS = 40
"""Wear is tried in so many steps before the last one is halved: a check may fail and pass again further on."""
GROOVE_SOURCE = derived("A groove deeper than the steel is thick guides the seam away from the floor; 1 mm in any case")
DENT_SOURCE = derived("A dent is allowed 1 mm at most: what is deeper came from something else than a flat face")
LIMIT_SOURCE = derived(
    "What wears off in use may go half of the way to the first failing estimate: the other half is for what wears until"
    " the next reading. No nearer than the drawing's own tolerance; all such wear at once fails no estimate"
    " that passes now. What swells or closes may go up to the first failing estimate. A reading may have in it all the"
    " water that the case allows, or none: neither condemns a size that the drawing allows"
)
WEAR_SHARE = 0.5
"""Of the way to the first failing estimate, what may be used up before the pad is discarded: judged."""

_SHOWN_WATER_MM = 0.01
_SAME_MM = 1e-9
CALIPER_MM = 0.05
"""What a worn dimension is known to when it is measured with a caliper: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WearLimit:
    """One reading to take in service, and the value at which the pad is discarded."""

    kind: Kind
    title: str
    dimension: str
    """What is measured, by its name in the pad."""
    now_mm: float
    limit_mm: LowerLimit | UpperLimit
    """Discard beyond this reading, at 20 °C and with whatever water the pad has taken up."""
    allowed_mm: float
    """How far the size as machined, dry, may go."""
    fails_mm: float | None
    """The size as machined, dry, at which the first estimate fails; None where another rule ends it sooner."""
    direction: Literal["up", "down"]
    check: Check | None
    """What fails first beyond the limit; None where another rule ends it sooner."""
    how: Sentence
    words: Sentence
    source: Source

    @property
    def away_mm(self) -> float:
        """How far the reading may be from the size as new and dry."""
        return abs(self.limit_mm - self.now_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class ServiceRecord:
    """What goes on the record that stays with the pad."""

    looks: tuple[Look, ...]
    limits: tuple[WearLimit, ...]
    discard_when: tuple[Sentence, ...]
    has_slot: bool
    cracks_at: str
    """Where a white line or a crack shows first."""

    def limit(self, kind: Kind) -> WearLimit:
        """One wear limit."""
        return next(limit for limit in self.limits if limit.kind == kind)


def service_record(
    pad: Pad, conditions: Conditions, spread: Spread | None = None, *, is_failed: bool = False
) -> ServiceRecord:
    """Looks and limits for a pad, as drawn or as measured (then with the spread of its readings).

    A pad that fails an estimate, or a part that its readings condemn (``is_failed``), has no limits: it is not used at all.
    """
    known = spread or Spread()
    failing = [c.title for c in judge(conditions, pad, known) if c.verdict == "fail" and c.code not in MAKING]
    if failing or is_failed:
        why = f" These estimates fail already: {'; '.join(failing)}." if failing else ""
        never = said(f"Do not use it at all.{why}")
        return _record(pad, conditions, limits=(), discard_when=(never, *_discard((), pad)))
    limits = _Finder(pad, conditions, known).limits()
    return _record(pad, conditions, limits=limits, discard_when=tuple(_discard(limits, pad)))


def _record(
    pad: Pad, c: Conditions, *, limits: tuple[WearLimit, ...], discard_when: tuple[Sentence, ...]
) -> ServiceRecord:
    return ServiceRecord(
        looks=looks_of(c, pad),
        limits=limits,
        discard_when=discard_when,
        has_slot=pad.has_slot,
        cracks_at=cracks_at(c, pad),
    )


@dataclass(frozen=True, slots=True)
class _Finder:
    """Finds how far each kind of wear may go."""

    pad: Pad
    c: Conditions
    spread: Spread

    def limits(self) -> tuple[WearLimit, ...]:
        """The limit of each kind: what wears in use as far as all of it at once fails nothing."""
        kinds = ways(self.pad, self.c)
        reached = {way.kind: self.reach(way) for way in kinds}
        allowed = {way.kind: self._allowed(way, *reached[way.kind]) for way in kinds}
        worn = {kind: by for kind, by in allowed.items() if kind in WORN}
        allowed |= self._together(worn)
        return tuple(self._limit(way, allowed[way.kind], *reached[way.kind]) for way in kinds)

    def _allowed(self, way: Way, reach_mm: float, check: Check | None) -> float:
        """How far one kind of wear may go by itself: what swells or closes, as far as a new part may be out in any case."""
        if way.kind == "groove" and check is None:
            return reach_mm
        if way.kind not in WORN:
            return max(reach_mm, self.spread.of(self.pad, way.dimension))
        return min(reach_mm, max(WEAR_SHARE * reach_mm, self.spread.of(self.pad, way.dimension)))

    def _together(self, worn: Mapping[Kind, float]) -> dict[Kind, float]:
        """These wears, as far as all may have come about at once: beyond the drawing's own tolerances, a share of each."""
        names = [way.dimension for way in ways(self.pad, self.c) if way.kind in worn]
        drawn = {way.kind: self._within_tolerance(way) for way in ways(self.pad, self.c) if way.kind in worn}
        least = {kind: min(by, drawn[kind]) for kind, by in worn.items()}

        def passes(by: Mapping[Kind, float]) -> bool:
            return not self.failures(worn_pad(self.pad, by), *names)

        if not passes(least):
            least = dict.fromkeys(worn, 0.0)
        return furthest(least, worn, passes)

    def _within_tolerance(self, way: Way) -> float:
        """How far a new part may be out, less what a caliper may be off, which is counted again where it is read."""
        return max(0.0, self.spread.of(self.pad, way.dimension) - CALIPER_MM)

    def _limit(self, way: Way, allowed: float, reach: float, check: Check | None) -> WearLimit:
        now = getattr(self.pad, way.dimension)
        limit = self._read_at(way, allowed, reach, check)
        return WearLimit(
            kind=way.kind,
            title=way.title,
            dimension=way.dimension,
            now_mm=now,
            limit_mm=limit,
            allowed_mm=allowed,
            fails_mm=None if check is None else now + way.sign * reach,
            direction="up" if way.sign > 0 else "down",
            check=check,
            how=said(how_read(way.kind, self.pad)),
            words=self._words(way, limit, self._read_at(way, reach, reach, check), check),
            source=self._source(way, check),
        )

    def _read_at(self, way: Way, allowed: float, reach: float, check: Check | None) -> LowerLimit | UpperLimit:
        """What is read of a size that has gone as far as it may: the estimates speak of the size as machined, dry, and add the
        water themselves, but a pad is read with its water in it.

        Where too much condemns, all that the case allows is let through. Where too little does, water must not hide it: the
        limit lies where even a wet pad's size as machined still passes, no nearer than the drawing's own tolerance.
        """
        now: float = getattr(self.pad, way.dimension)
        water = water_growth(self.c)
        if way.sign > 0:
            return UpperLimit((now + allowed) * (1 + water))
        if check is None:
            return LowerLimit(now - allowed)
        nearest = now - min(allowed, self.spread.of(self.pad, way.dimension))
        return LowerLimit(max(now - allowed, min(nearest, (now - reach) * (1 + water))))

    def _words(
        self, way: Way, limit: LowerLimit | UpperLimit, ends: LowerLimit | UpperLimit, check: Check | None
    ) -> Sentence:
        """The limit in words, and what is beyond it."""
        now = getattr(self.pad, way.dimension)
        more = "more" if way.sign > 0 else "less"
        words = f"Discard when it reads {more} than {{limit}}, {{away}} from now. "
        lengths: dict[str, float] = {"limit": limit, "away": abs(limit - now)}
        water = now * water_growth(self.c)
        if way.sign > 0 and water >= _SHOWN_WATER_MM:
            words += "Of that, {water} is water that it may take up. "
            lengths["water"] = water
        is_end = abs(limit - ends) < _SAME_MM
        if check is None:
            words += way.beyond if is_end else f"Nothing is allowed beyond {{ends}} in any case. {way.beyond}"
        else:
            title = lower_first(check.title)
            words += f"Beyond that fails: {title}." if is_end else f"At {{ends}} fails: {title}."
        return Sentence(words, lengths if is_end else {**lengths, "ends": ends})

    def _source(self, way: Way, check: Check | None) -> Source:
        if way.kind != "groove" or check is not None:
            return LIMIT_SOURCE
        return GROOVE_SOURCE if self.pad.has_slot else DENT_SOURCE

    def reach(self, way: Way) -> tuple[float, Check | None]:
        """How far a kind of wear may go before a check fails, and that check."""

        def failing(by: float) -> Check | None:
            return next(iter(self.failures(worn_pad(self.pad, {way.kind: by}), way.dimension)), None)

        first = next((k for k in range(STEPS + 1) if failing(way.most_mm * k / STEPS)), None)
        if first is None:
            return way.most_mm, None
        low, high = way.most_mm * max(0, first - 1) / STEPS, way.most_mm * first / STEPS
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            low, high = (low, middle) if failing(middle) else (middle, high)
        return low, failing(high)

    def failures(self, pad: Pad, *names: str) -> tuple[Check, ...]:
        """The checks that fail, the worn dimensions being measured and not drawn."""
        found = judge(self.c, pad, self._measured(names))
        return tuple(c for c in found if c.verdict == "fail" and c.code not in MAKING)

    def _measured(self, names: tuple[str, ...]) -> Spread:
        """What is known of the part: the worn dimensions as well as a caliper tells them."""
        known = dict(self.spread.known)
        for name in names:
            known[name] = min(self.spread.of(self.pad, name), CALIPER_MM)
        return Spread(known)


def _discard(limits: tuple[WearLimit, ...], pad: Pad) -> Iterator[Sentence]:
    """When the pad is thrown away: the limits of wear, and what condemns it whatever it measures."""
    for limit in limits:
        yield Sentence(f"{limit.title}: {limit.words.template}", limit.words.lengths_mm)
    yield said(f"{'A wall' if pad.has_slot else 'It'} shows a white line or a crack: at once, whatever it measures.")
    yield said("The pad fell from a height, was overloaded, or the car slipped on it: at once.")
    yield said("It was left under load, in oil or fuel, or hotter than the sheet says.")
    yield said("Its number cannot be read, so nobody knows which jack and which car it is for.")
