"""Choosing one dimension of a draft: the best makeable size between its bounds, or the two bounds that leave none."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import inf, isfinite

from geometry.bound_rules import BOUND_RULES, BoundRule, Side
from geometry.conditions import Conditions
from geometry.draft import Draft
from geometry.errors import Limit, NoPadFitsError
from geometry.feet.play import LOCATING
from geometry.habits import EPS_MM, HABITS, STEPS_MM, Habit, step_down, step_up, tolerance_mm
from geometry.ledger import Bound, Entry, Ledger
from geometry.pad import DIMENSIONS


@cache
def rules_of(rooms: frozenset[str]) -> Mapping[str, tuple[BoundRule, ...]]:
    """The bounds that a pad for a foot and a head with these rooms has to respect, by dimension."""
    applying = [rule for rule in BOUND_RULES if rule.applies(rooms)]
    return {name: tuple(rule for rule in applying if rule.dimension == name) for name in DIMENSIONS}


@dataclass(slots=True)
class _Interval:
    """What the bounds of one dimension leave, [mm]: the musts by themselves, and with the aims."""

    must_low: float = -inf
    must_high: float = inf
    low: float = -inf
    high: float = inf

    def narrow(self, limit: float, rule: BoundRule) -> None:
        """Take one more limit in, of that rule."""
        if rule.side == "lower":
            self.low = max(self.low, limit)
            if rule.must:
                self.must_low = max(self.must_low, limit)
        else:
            self.high = min(self.high, limit)
            if rule.must:
                self.must_high = min(self.must_high, limit)

    def allows(self, value: float) -> bool:
        """Whether a value respects all musts."""
        return self.must_low - EPS_MM <= value <= self.must_high + EPS_MM

    def nearest(self, end: Side, step: float) -> float:
        """The makeable value nearest to one end, the aims given up as far as needed; without a step between the musts, none."""
        if end == "lower":
            value = step_up(min(self.low, self.must_high), step)
            return value if value <= self.must_high + EPS_MM else step_down(self.must_high, step)
        value = step_down(max(self.high, self.must_low), step)
        return value if value >= self.must_low - EPS_MM else step_up(self.must_low, step)


class Chooser:
    """A draft of which one dimension after the other is chosen, with what is said beside them."""

    def __init__(self, conditions: Conditions, fixed: Mapping[str, float]) -> None:
        self.draft = Draft(conditions)
        self.rules = rules_of(conditions.rooms)
        self.fixed = fixed
        self.steps = STEPS_MM[conditions.is_inch]
        self.tolerances: dict[str, float] = {}
        self.notes: dict[str, list[str]] = {}

    def choose(self, name: str, *, at_least: float = -inf, musts_only: bool = False) -> None:
        """Set one dimension of the draft: its fixed value, or the best makeable value inside its interval."""
        if name in self.fixed:
            value = self.fixed[name]
            self.tolerances[name] = HABITS[name].tolerance_mm(value)
        else:
            value = max(at_least, self.best(name, musts_only=musts_only))
        if name == "slot_width_mm" and self.draft.c.slot_is_milled:
            self.say_if_in_passes(value)
        setattr(self.draft, name, value)

    def choose_all_asked(self, *names: str) -> None:
        """Each of these dimensions that the foot or the head asks for, or that is fixed."""
        for name in names:
            self.choose_where_asked(name)

    def choose_where_asked(self, name: str) -> None:
        """A dimension that most pads do not have: its fixed value, or what its rules ask for, or none where none applies."""
        if name in self.fixed or any(
            r.compute(self.draft) is not None for r in self.rules[name] if r.side == HABITS[name].end
        ):
            self.choose(name)

    def best(self, name: str, *, musts_only: bool = False) -> float:
        """The makeable value that the habit of a dimension picks; its tolerance settles with it."""
        habit, tol = HABITS[name], 0.1
        while True:
            self.tolerances[name] = self.draft.tol = tol
            value = self.pick(name, habit, musts_only=musts_only)
            settled = habit.tolerance_mm(value)
            if settled <= tol:
                return value
            tol = settled

    def pick(self, name: str, habit: Habit, *, musts_only: bool) -> float:
        """The best makeable value for the tolerance assumed in the draft."""
        left = self.interval(name, musts_only=musts_only)
        if left.must_low > left.must_high + EPS_MM:
            raise self.conflict(name)
        if left.must_high - left.must_low <= EPS_MM:
            # Two musts leave this one value, whatever the step: a round plug's radius is half its width.
            return left.must_low
        # What keeps the pad in its place is made as finely as the tools allow: on a post that is the stem.
        step = self.steps[0 if name == LOCATING[self.draft.c.foot.locates] else habit.step]
        if name == "slot_width_mm" and self.draft.c.slot_is_milled:
            return self.cutter_or_passes(left.must_low, left.must_high, step)
        value = left.nearest(habit.end, step)
        if not left.allows(value):
            raise self.conflict(name, step)
        return value

    def interval(self, name: str, *, musts_only: bool) -> _Interval:
        """What the bounds of a dimension leave at the present state of the draft."""
        left = _Interval()
        for rule in self.rules[name]:
            limit = rule.compute(self.draft) if rule.must or not musts_only else None
            if limit is not None:
                left.narrow(limit, rule)
        return left

    def cutter_or_passes(self, low: float, high: float, step: float) -> float:
        """Slot width of the smallest cutter that fits, else the narrowest slot that a smaller cutter opens up in passes."""
        cutters = self.draft.c.cutters_mm
        for cutter in cutters:
            if low - EPS_MM <= cutter <= high + EPS_MM:
                return cutter
        value = step_up(low, step)
        if value > high + EPS_MM:
            raise self.conflict("slot_width_mm", step)
        if cutters[0] > value:
            limit = Limit(
                cutters[0], "The narrowest cutter to hand makes the narrowest slot.", "make.cutter_diameters_mm"
            )
            raise self.conflict("slot_width_mm", lower=limit)
        return value

    def say_if_in_passes(self, width: float) -> None:
        """Say of a slot as it was chosen or fixed that no single cutter makes it, where one makes it in passes."""
        cutters = self.draft.c.cutters_mm
        if cutters[0] < width and all(abs(cutter - width) > EPS_MM for cutter in cutters):
            words = "No cutter of this width is to hand: open the slot in side passes with a smaller one."
            self.note("slot_width_mm", words)

    def note(self, name: str, words: str) -> None:
        """Say something beside a dimension, once."""
        said = self.notes.setdefault(name, [])
        if words not in said:
            said.append(words)

    def bounds(self, name: str) -> list[Bound]:
        """All bounds of a dimension at the present state of the draft."""
        self.draft.tol = self.tolerances.get(name, 0.0)
        draft = Draft(**vars(self.draft))
        found = ((rule, rule.compute(draft)) for rule in self.rules[name])
        return [Bound(rule, value, draft) for rule, value in found if value is not None and isfinite(value)]

    def conflict(self, name: str, step: float = 0.0, *, lower: Limit | None = None) -> NoPadFitsError:
        """The error that names the two bounds between which nothing fits."""
        bounds = [b for b in self.bounds(name) if b.rule.must]
        low = lower or _limit(max((b for b in bounds if b.rule.side == "lower"), key=lambda b: b.value))
        high = _limit(min((b for b in bounds if b.rule.side == "upper"), key=lambda b: b.value))
        title = name.removesuffix("_mm").replace("_", " ")
        between = f" in steps of {step:g} mm" if step and low.value_mm <= high.value_mm else ""
        words = (
            f"The {title} must be at least {low.value_mm:.2f} mm and at most {high.value_mm:.2f} mm{between}."
            f" At least: {low.reason} At most: {high.reason}"
        )
        so_far = {key: getattr(self.draft, key) for key in DIMENSIONS if getattr(self.draft, key) > 0}
        return NoPadFitsError(dimension=name, lower=low, upper=high, words=words, so_far=so_far)

    def ledger(self, names: tuple[str, ...], fixed: Mapping[str, float]) -> Ledger:
        """These dimensions with their bounds at the final state."""
        return {name: self.entry(name, is_fixed=name in fixed) for name in names}

    def entry(self, name: str, *, is_fixed: bool) -> Entry:
        """One dimension with its bounds at the final state."""
        value = getattr(self.draft, name)
        self.tolerances[name] = tolerance_mm(name, value)
        bounds = self.bounds(name) if value else []
        return Entry(
            dimension=name,
            value_mm=value,
            tolerance_mm=self.tolerances[name],
            lower=tuple(b for b in bounds if b.rule.side == "lower"),
            upper=tuple(b for b in bounds if b.rule.side == "upper"),
            is_fixed=is_fixed,
            notes=tuple(self.notes.get(name, ())),
        )


def _limit(bound: Bound) -> Limit:
    return Limit(bound.value, bound.reason, next(iter(bound.needs), bound.rule.needs[0]))
