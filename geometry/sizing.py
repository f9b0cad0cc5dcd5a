"""The ledger: every dimension an interval with reasons, and the value chosen inside it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cache
from math import ceil, floor, inf, isfinite

import geometry.body.bounds
import geometry.body.flats
import geometry.feet.cup.boss
import geometry.feet.cup.bounds
import geometry.feet.plate.bounds
import geometry.feet.post.bounds
import geometry.feet.post.pin
import geometry.feet.saddle.bounds
import geometry.feet.skirt.bounds
import geometry.heads.cushion.bounds
import geometry.heads.face.bounds
import geometry.heads.plug.bounds
import geometry.heads.plug.shoulder
import geometry.heads.slot.bounds
import geometry.heads.slot.options  # noqa: F401 - importing these rooms registers their bounds
from geometry import formulas
from geometry.buildable import require_buildable
from geometry.conditions import Conditions
from geometry.draft import STANDARD_CHAMFER_MM, Draft
from geometry.errors import BadMeasurementsError, Limit, NoPadFitsError, Problem
from geometry.feet.cup.bounds import LEAST_STEM_DIAMETER_MM, LEAST_STEM_LENGTH_MM
from geometry.feet.play import LOCATING
from geometry.fits import linear_tolerance_mm, radius_tolerance_mm
from geometry.pad import DIMENSIONS, Pad
from geometry.rules import BOUND_RULES, BoundRule, Numbers, Side
from geometry.units import inch_to_mm

MOST_ROUNDS = 60
"""Ordinary cases settle in two or three rounds. Web and body only grow, in steps, and the floor's strength caps the edge's load, so
far fewer than this are ever needed; a test asks for the ledger to hold at the end."""
STANDARD_CHAMFER_INCH_SHOP_MM = inch_to_mm(0.040)
_EPS = 1e-9
_STEPS_MM = {False: (0.1, 0.5, 1.0), True: (inch_to_mm(0.005), inch_to_mm(0.025), inch_to_mm(1 / 32))}
"""Makeable steps, fine, middle and coarse: metric, and inch."""


@dataclass(frozen=True, slots=True)
class Habit:
    """How a dimension is chosen inside its interval."""

    end: Side
    step: int
    """Index of the makeable step: 0 fine, 1 middle, 2 coarse."""
    tolerance_mm: Callable[[float], float]


HABITS: Mapping[str, Habit] = {
    "seat_diameter_mm": Habit("upper", 0, linear_tolerance_mm),
    "seat_corner_radius_mm": Habit("lower", 1, radius_tolerance_mm),
    "seat_length_mm": Habit("lower", 1, linear_tolerance_mm),
    "skirt_bore_mm": Habit("lower", 0, linear_tolerance_mm),
    "skirt_length_mm": Habit("upper", 1, linear_tolerance_mm),
    "seat_recess_diameter_mm": Habit("lower", 1, linear_tolerance_mm),
    "seat_recess_depth_mm": Habit("lower", 1, linear_tolerance_mm),
    "stem_diameter_mm": Habit("upper", 1, linear_tolerance_mm),
    "stem_length_mm": Habit("upper", 1, linear_tolerance_mm),
    "cross_hole_diameter_mm": Habit("lower", 1, linear_tolerance_mm),
    "cross_hole_distance_mm": Habit("lower", 0, linear_tolerance_mm),
    "slot_width_mm": Habit("lower", 0, linear_tolerance_mm),
    "slot_offset_mm": Habit("lower", 0, linear_tolerance_mm),
    "cross_slot_width_mm": Habit("lower", 0, linear_tolerance_mm),
    "slot_depth_mm": Habit("upper", 1, linear_tolerance_mm),
    "relief_width_mm": Habit("lower", 1, linear_tolerance_mm),
    "relief_length_mm": Habit("lower", 1, linear_tolerance_mm),
    "relief_depth_mm": Habit("lower", 1, linear_tolerance_mm),
    "plug_length_mm": Habit("upper", 0, linear_tolerance_mm),
    "plug_width_mm": Habit("upper", 0, linear_tolerance_mm),
    "plug_height_mm": Habit("upper", 1, linear_tolerance_mm),
    "plug_corner_radius_mm": Habit("lower", 1, radius_tolerance_mm),
    "flats_width_mm": Habit("lower", 1, linear_tolerance_mm),
    "web_mm": Habit("lower", 1, linear_tolerance_mm),
    "body_diameter_mm": Habit("lower", 2, linear_tolerance_mm),
    "slot_corner_radius_mm": Habit("upper", 0, linear_tolerance_mm),
}
"""In the order in which they are chosen; the two chamfers are standard."""

_SKIRT = ("skirt_bore_mm", "skirt_length_mm")
_NO_STEM = "None: the skirt keeps the pad in its place."
_PIN = ("cross_hole_diameter_mm", "cross_hole_distance_mm")
_PLUG = ("plug_length_mm", "plug_width_mm", "plug_height_mm", "plug_corner_radius_mm")


@cache
def _rules_of(rooms: frozenset[str]) -> Mapping[str, tuple[BoundRule, ...]]:
    """The bounds that a pad for a foot and a head with these rooms has to respect, by dimension."""
    applying = [rule for rule in BOUND_RULES if rule.applies(rooms)]
    return {name: tuple(rule for rule in applying if rule.dimension == name) for name in DIMENSIONS}


@dataclass(frozen=True, slots=True)
class Bound:
    """One limit of one dimension on the finished ledger."""

    rule: BoundRule
    value: float
    draft: Draft

    @property
    def reason(self) -> str:
        """Why, in a sentence, in the words of this pad's own foot and head."""
        return self.draft.c.said(self.rule.reason)

    @property
    def needs(self) -> tuple[str, ...]:
        """The measurements that it rests on, by the keys of this pad's own foot and head."""
        return self.draft.c.own_keys(self.rule.needs)

    @property
    def numbers(self) -> Numbers:
        """The symbols of the formula with their values."""
        return self.rule.numbers(self.draft)

    @property
    def substituted(self) -> str:
        """The formula with the numbers put in."""
        return formulas.substituted(self.rule.formula, self.numbers)

    def allows(self, value_mm: float) -> bool:
        """Whether a value respects this bound."""
        return value_mm >= self.value - _EPS if self.rule.side == "lower" else value_mm <= self.value + _EPS


@dataclass(frozen=True, slots=True)
class Entry:
    """One dimension of the ledger."""

    dimension: str
    value_mm: float
    tolerance_mm: float
    lower: tuple[Bound, ...]
    upper: tuple[Bound, ...]
    free_value_mm: float | None
    """What would be chosen here if it were not fixed; None where it is not fixed or nothing would fit."""
    is_fixed: bool
    notes: tuple[str, ...]

    @property
    def bounds(self) -> tuple[Bound, ...]:
        """All bounds, lower first."""
        return self.lower + self.upper

    @property
    def broken(self) -> tuple[Bound, ...]:
        """The musts that the value does not respect; only a fixed value can have any."""
        return tuple(b for b in self.bounds if b.rule.must and not b.allows(self.value_mm))

    @property
    def given_up(self) -> tuple[Bound, ...]:
        """The aims that could not be met."""
        return tuple(b for b in self.bounds if not b.rule.must and not b.allows(self.value_mm))

    @property
    def deciding(self) -> Bound | None:
        """The bound that the value was chosen from."""
        habit = HABITS.get(self.dimension)
        side = self.lower if habit and habit.end == "lower" else self.upper
        met = [b for b in side if b.allows(self.value_mm)]
        return min(met, key=lambda b: abs(b.value - self.value_mm), default=None)


Ledger = Mapping[str, Entry]


@dataclass(frozen=True, slots=True)
class Sized:
    """A pad with the ledger that it came from."""

    pad: Pad
    ledger: Ledger


def size(conditions: Conditions) -> Sized:
    """Choose every dimension.

    Raises NoPadFitsError where an interval is empty, BadMeasurementsError where fixed dimensions make no body.
    """
    fixed = conditions.measurements.fixed.given()
    _refuse_strangers(fixed, conditions)
    sizer = _free_sizer_that_agrees(conditions, fixed) or _Sizer(conditions, fixed)
    if not sizer.is_done:
        sizer.run()
    pad = sizer.draft.pad()
    require_buildable(pad)
    return Sized(pad, sizer.ledger(fixed))


_STANDARD = ("slot_mouth_chamfer_mm", "edge_chamfer_mm")


def _refuse_strangers(fixed: Mapping[str, float], c: Conditions) -> None:
    """Refuse dimensions of features that a pad for this foot and head does not have."""
    problems = tuple(
        Problem(
            f"fixed.{name}",
            value,
            f"A pad for this jack and this lifting point has no {name.removesuffix('_mm').replace('_', ' ')}. Let it go.",
        )
        for name, value in fixed.items()
        if value > 0 and name not in _STANDARD and not _rules_of(c.rooms)[name]
    )
    if problems:
        raise BadMeasurementsError(problems)


def _free_sizer_that_agrees(conditions: Conditions, fixed: Mapping[str, float]) -> "_Sizer | None":
    """A sizing with web or body left free that arrives at their fixed values by itself.

    Web and body are found in rounds, each from the other; fixing one at the value that the rounds arrive at must change
    nothing, so the rounds are asked first.
    """
    both = [name for name in ("web_mm", "body_diameter_mm") if name in fixed]
    attempts: list[list[str]] = [both] + ([[both[0]], [both[1]]] if len(both) == 2 else [])
    for freed in attempts if both else []:
        sizer = _Sizer(conditions, {k: v for k, v in fixed.items() if k not in freed})
        try:
            sizer.run()
        except NoPadFitsError:
            continue
        if all(abs(getattr(sizer.draft, name) - fixed[name]) < _EPS for name in freed):
            return sizer
    return None


class _Sizer:
    """One run through the ledger."""

    def __init__(self, conditions: Conditions, fixed: Mapping[str, float]) -> None:
        self.draft = Draft(conditions)
        self.rules = _rules_of(conditions.rooms)
        self.fixed = fixed
        self.steps = _STEPS_MM[conditions.is_inch]
        self.tolerances: dict[str, float] = {}
        self.notes: dict[str, list[str]] = {}
        self.is_done = False

    def run(self) -> None:
        """Choose every dimension in order."""
        d, c = self.draft, self.draft.c
        chamfer_mm = STANDARD_CHAMFER_INCH_SHOP_MM if c.is_inch else STANDARD_CHAMFER_MM
        d.edge_chamfer_mm = self.fixed.get("edge_chamfer_mm", chamfer_mm)
        self.choose_foot()
        if c.head.kind == "slot":
            d.slot_mouth_chamfer_mm = self.fixed.get("slot_mouth_chamfer_mm", chamfer_mm)
            self.choose_slot()
        self.choose_all_asked(*_PLUG, "flats_width_mm")
        self.choose_web_and_body()
        self.is_done = True

    def choose_foot(self) -> None:
        """What stands on the jack and keeps the pad there."""
        for name in ("seat_diameter_mm", "seat_corner_radius_mm", "seat_length_mm"):
            self.choose(name)
        self.choose_all_asked(*_SKIRT, "seat_recess_diameter_mm", "seat_recess_depth_mm")
        c = self.draft.c
        if c.foot.locates == "stem":
            self.choose("stem_diameter_mm")
            self.choose("stem_length_mm")
        elif self.takes_a_stem or {"stem_diameter_mm", "stem_length_mm"} & self.fixed.keys():
            self.choose_stem()
        elif c.foot.locates == "skirt":
            self.note("stem_diameter_mm", _NO_STEM)
            self.note("stem_length_mm", _NO_STEM)
        self.choose_all_asked(*_PIN)

    def choose_slot(self) -> None:
        """The slot, and what makes it more than one straight cut through the middle."""
        self.choose("slot_width_mm")
        self.choose_all_asked("slot_offset_mm", "cross_slot_width_mm")
        self.choose("slot_depth_mm")
        self.choose("slot_corner_radius_mm")
        self.choose_all_asked("relief_width_mm", "relief_length_mm", "relief_depth_mm")

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

    @property
    def takes_a_stem(self) -> bool:
        """Whether a hole under the seat can take one beside what locates the pad."""
        return self.draft.c.foot.locates == "seat" and self.draft.c.foot.hole_diameter_mm > 0

    def choose_stem(self) -> None:
        """A stem, or none where none worth making fits."""
        least = {"stem_diameter_mm": LEAST_STEM_DIAMETER_MM, "stem_length_mm": LEAST_STEM_LENGTH_MM}
        if 0 in {self.fixed.get(name) for name in least}:
            return
        try:
            if self.takes_a_stem:
                self.choose("stem_diameter_mm")
                self.choose("stem_length_mm")
                return
            words = self.draft.c.said("the cup has no hole for one.")
        except NoPadFitsError as error:
            words = error.words
        asked = least.keys() & self.fixed.keys()
        for name, value in least.items():
            setattr(self.draft, name, self.fixed.get(name, value) if asked else 0.0)
        self.note("stem_diameter_mm", f"A stem was asked for all the same: {words}" if asked else f"No stem: {words}")

    def choose_web_and_body(self) -> None:
        """Web and body in rounds; where the web has no room, a shallower slot makes some."""
        first_depth = self.draft.slot_depth_mm
        try:
            self.rounds()
        except NoPadFitsError as error:
            if error.dimension != "web_mm" or "slot_depth_mm" in self.fixed or self.draft.c.head.kind != "slot":
                raise
            self.lower_the_slot(error)
            self.note(
                "slot_depth_mm",
                f"Lowered from {first_depth:g} to {self.draft.slot_depth_mm:g} mm so that the web has room: {error.words}",
            )

    def lower_the_slot(self, error: NoPadFitsError) -> None:
        """Take the first slot depth that leaves the web room; raise the first conflict where none does."""
        lowest = max(b.value for b in self.bounds("slot_depth_mm") if b.rule.side == "lower" and b.rule.must)
        while self.draft.slot_depth_mm - self.steps[1] >= lowest - _EPS:
            self.draft.slot_depth_mm = _clean(self.draft.slot_depth_mm - self.steps[1])
            try:
                self.choose("slot_corner_radius_mm")
                self.choose_where_asked("relief_depth_mm")
                self.rounds()
            except NoPadFitsError:
                continue
            return
        raise error

    def rounds(self) -> None:
        """Web from body and body from web until neither moves; neither ever falls."""
        d = self.draft
        d.web_mm = d.body_diameter_mm = d.edge_force_n_per_mm = 0.0
        self.choose("web_mm")
        self.choose("body_diameter_mm", musts_only=True)
        for _ in range(MOST_ROUNDS):
            before = d.web_mm, d.body_diameter_mm
            d.load_the_edge()
            self.choose("web_mm", at_least=before[0])
            self.choose("body_diameter_mm", at_least=before[1])
            if (d.web_mm, d.body_diameter_mm) == before:
                break
        d.load_the_edge()

    def choose(self, name: str, *, at_least: float = -inf, musts_only: bool = False) -> None:
        """Set one dimension of the draft: its fixed value, or the best makeable value inside its interval."""
        if name in self.fixed:
            value = self.fixed[name]
            self.tolerances[name] = HABITS[name].tolerance_mm(value)
        else:
            value = max(at_least, self.best(name, musts_only=musts_only))
        setattr(self.draft, name, value)

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
        must_low, must_high, low, high = -inf, inf, -inf, inf
        for rule in self.rules[name]:
            limit = rule.compute(self.draft)
            if limit is None or (musts_only and not rule.must):
                continue
            if rule.side == "lower":
                low = max(low, limit)
                must_low = max(must_low, limit) if rule.must else must_low
            else:
                high = min(high, limit)
                must_high = min(must_high, limit) if rule.must else must_high
        if must_low > must_high + _EPS:
            raise self.conflict(name)
        if must_high - must_low <= _EPS:
            # Two musts leave this one value, whatever the step: a round plug's radius is half its width.
            return must_low
        # What keeps the pad in its place is made as finely as the tools allow: on a post that is the stem.
        step = self.steps[0 if name == LOCATING[self.draft.c.foot.locates] else habit.step]
        if name == "slot_width_mm" and self.draft.c.slot_is_milled:
            return self.cutter_or_passes(must_low, must_high, step)
        if habit.end == "lower":
            value = _up(min(low, must_high), step)
            value = value if value <= must_high + _EPS else _down(must_high, step)
        else:
            value = _down(max(high, must_low), step)
            value = value if value >= must_low - _EPS else _up(must_low, step)
        if not must_low - _EPS <= value <= must_high + _EPS:
            raise self.conflict(name, step)
        return value

    def cutter_or_passes(self, low: float, high: float, step: float) -> float:
        """Slot width of the smallest cutter that fits, else the narrowest slot that a smaller cutter opens up in passes."""
        cutters = self.draft.c.cutters_mm
        for cutter in cutters:
            if low - _EPS <= cutter <= high + _EPS:
                return cutter
        value = _up(low, step)
        if value > high + _EPS:
            raise self.conflict("slot_width_mm", step)
        if cutters[0] > value:
            limit = Limit(
                cutters[0], "The narrowest cutter to hand makes the narrowest slot.", "make.cutter_diameters_mm"
            )
            raise self.conflict("slot_width_mm", lower=limit)
        self.note(
            "slot_width_mm", "No cutter of this width is to hand: open the slot in side passes with a smaller one."
        )
        return value

    def note(self, name: str, words: str) -> None:
        """Say something beside a dimension, once."""
        said = self.notes.setdefault(name, [])
        if words not in said:
            said.append(words)

    def bounds(self, name: str) -> list[Bound]:
        """All bounds of a dimension at the present state of the draft."""
        self.draft.tol = self.tolerances.get(name, 0.0)
        draft = replace(self.draft)
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

    def ledger(self, fixed: Mapping[str, float]) -> Ledger:
        """Every dimension with its bounds at the final state."""
        return {name: self.entry(name, fixed) for name in self.draft.pad().present}

    def entry(self, name: str, fixed: Mapping[str, float]) -> Entry:
        """One dimension with its bounds at the final state."""
        value = getattr(self.draft, name)
        tolerance = HABITS[name].tolerance_mm(value) if name in HABITS and value else radius_tolerance_mm(value)
        self.tolerances[name] = tolerance
        bounds = self.bounds(name) if value else []
        free: float | None = None
        if name in fixed and any(b.rule.side == HABITS[name].end for b in bounds if name in HABITS):
            try:
                free = self.best(name)
            except NoPadFitsError:
                free = None
        return Entry(
            dimension=name,
            value_mm=value,
            tolerance_mm=tolerance,
            lower=tuple(b for b in bounds if b.rule.side == "lower"),
            upper=tuple(b for b in bounds if b.rule.side == "upper"),
            free_value_mm=free,
            is_fixed=name in fixed,
            notes=tuple(self.notes.get(name, ())),
        )


def _limit(bound: Bound) -> Limit:
    return Limit(bound.value, bound.reason, next(iter(bound.needs), bound.rule.needs[0]))


def _up(value: float, step: float) -> float:
    return _clean(ceil(value / step - _EPS) * step)


def _down(value: float, step: float) -> float:
    return _clean(floor(value / step + _EPS) * step)


def _clean(value: float) -> float:
    """Take off what binary arithmetic leaves behind a decimal size."""
    return round(value, 9)
