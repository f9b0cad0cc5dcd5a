"""The checks of a judged pad in words: each with its sentence, its verdict, its bar and what it rests on."""

from collections.abc import Callable, Mapping, Set
from dataclasses import dataclass
from functools import cache
from math import isfinite

from geometry.design import Design
from geometry.letters import lower_first, upper_first
from geometry.measurements import Measurements
from geometry.quantity import Group
from geometry.rules import NOT_CHECKED, Check
from geometry.variants import number_at
from server import shown
from server.field_views import LinkView, link_to, title_of
from server.fields import FIELDS
from server.fixing import sizes_behind
from server.left_out import is_optional

_BALANCE = "car.load_source"
_NEAR = 0.5
"""Checks that use less than half of their limit are folded away."""
_SAYS_MORE_OF: Mapping[str, str] = {
    "jack.stem_hole_depth_mm": "jack.stem_hole_diameter_mm",
    "jack.floor_boss_diameter_mm": "jack.floor_boss_height_mm",
    "jack.land_hole_depth_mm": "jack.land_hole_diameter_mm",
    "jack.plate_hole_depth_mm": "jack.plate_hole_diameter_mm",
    "seam.local_thickness_mm": "seam.local_length_mm",
    "seam.local_drop_mm": "seam.local_length_mm",
}
"""Measurements of a thing that need not be there, and the one that says whether it is."""


@dataclass(frozen=True, slots=True)
class CheckView:
    """One check with its verdict in words and as a bar."""

    code: str
    title: str
    words: str
    verdict: str
    verdict_words: str
    bar: str
    """Length of the bar; empty where there is nothing to draw."""
    bar_over: str
    """Length of its part beyond the limit; empty where there is none."""
    formula: str
    substituted: str
    source: str
    also: tuple[str, ...]
    needs: tuple[LinkView, ...]
    missing: LinkView | None = None
    """Of a check that could not be made, the way to the box that it waits for."""


@dataclass(frozen=True, slots=True)
class CheckGroup:
    """Checks under one heading; a folded group opens on demand."""

    heading: str
    checks: tuple[CheckView, ...]
    is_folded: bool

    @property
    def is_all_well(self) -> bool:
        """Whether it holds nothing that asks for a look: a phone folds it until somebody wants to read it."""
        return all(check.verdict == "pass" for check in self.checks)


def check_groups(design: Design, on_sheet: Set[str], units: str = "mm") -> tuple[CheckGroup, ...]:
    """The checks, governing first: what fails, what is advised, what is near its limit, then the rest, folded."""
    passing = [c for c in design.with_verdict("pass") if not c.rule.is_advice]
    near = [c for c in passing if c.utilisation >= _NEAR] or passing[:3]
    far = passing[len(near) :]
    advisory = [c for c in design.with_verdict("pass") if c.rule.is_advice]
    groups = (
        ("Fails", design.failures, False),
        ("Advice, which does not stand in the way", design.with_verdict("advice"), False),
        ("Passes, nearest its limit first", near, False),
        (f"{len(far)} more pass and use less of their limit", far, True),
        (_advisory_heading(advisory), advisory, True),
        ("Not checked, because a measurement is missing", design.with_verdict("not_checked"), False),
        ("Does not apply to this pad", design.with_verdict("not_applicable"), True),
    )
    fixed = sizes_behind(design)
    # Most measurements are needed by many checks.
    needed = cache(lambda key: link_to(key, on_sheet, _needed(key, design.measurements)))
    return tuple(
        CheckGroup(heading, tuple(_check(c, on_sheet, units, fixed.get(c.code, ()), needed) for c in found), folded)
        for heading, found, folded in groups
        if found
    )


def _advisory_heading(passing: list[Check]) -> str:
    """How many pass that nothing would be stopped by, and how near the nearest of them is."""
    nearest = max((check.utilisation for check in passing), default=0.0)
    near = f", the nearest at {shown.share(nearest)} of its limit" if nearest > 0 else ""
    return f"{len(passing)} pass that would only be advice{near}"


def _check(
    check: Check, on_sheet: Set[str], units: str, fixed: tuple[str, ...], needed: Callable[[str], LinkView]
) -> CheckView:
    drawn = check.finding is not None and check.utilisation > 0
    used = check.utilisation
    return CheckView(
        code=check.code,
        title=check.title,
        words=shown.weights_in(_words(check, units), units),
        verdict=check.verdict,
        verdict_words=verdict_words(check),
        bar=shown.bar_width(min(used, 1.0)) if drawn else "",
        bar_over=shown.bar_width(used - 1) if drawn and used > 1 else "",
        formula=check.formula,
        substituted=check.substituted,
        source=shown.source_words(check.rule.source, units),
        also=tuple(shown.words_in(words, units) for words in check.also_words),
        needs=(
            *(link_to(key, on_sheet, f"{lower_first(title_of(key))}, which you fixed") for key in fixed),
            *(needed(key) for key in check.needs if key in FIELDS),
        ),
        missing=_missing(check, on_sheet) if check.verdict == "not_checked" else None,
    )


def _words(check: Check, units: str) -> str:
    """The sentence of a check; that one was not made is its verdict, and stands beside it with what to do."""
    told = shown.check_words(check, units).removeprefix(NOT_CHECKED)
    return upper_first(told) + shown.words_in(_assumed(check), units)


def _needed(key: str, measurements: Measurements) -> str:
    """A measurement that a check rests on; one that nobody took says so."""
    return f"{title_of(key)} (assumed)" if _is_left_out(key, measurements) else title_of(key)


def _is_left_out(key: str, measurements: Measurements) -> bool:
    """Whether something else is taken for a measurement, because nobody took it."""
    group, _, name = key.partition(".")
    answers = getattr(measurements, group, None)
    is_given = answers is not None and name in answers.model_fields_set and getattr(answers, name) is not None
    return not is_given and is_optional(key)


def _assumed(check: Check) -> str:
    """What is assumed where a check has nothing to look at, as a sentence of its own; empty where it was measured."""
    if check.verdict != "not_applicable":
        return ""
    things = dict.fromkeys(_SAYS_MORE_OF.get(key, key) for key in check.needs if key in FIELDS)
    taken = [FIELDS[key].assumed for key in things if _is_left_out(key, check.c.measurements) and _is_asked(key, check)]
    return f" Assumed: {'; '.join(taken)}." if taken else ""


def _is_asked(key: str, check: Check) -> bool:
    """Whether the other answers about jack and car ask for a measurement at all."""
    group, _, name = key.partition(".")
    answers: Group | None = getattr(check.c.measurements, group, None)
    return answers is not None and type(answers).asks_for(name, vars(answers))


def troubling(design: Design) -> tuple[Check, ...]:
    """The checks that a change is looked for: what fails, and where nothing fails, advice that is past its limit."""
    return design.failures or tuple(check for check in design.with_verdict("advice") if check.utilisation > 1)


def _missing(check: Check, on_sheet: Set[str]) -> LinkView | None:
    """The way to the first box that a check waits for; of the car's own balance, to the choice that asks for it."""
    empty = [key for key in check.needs if key in FIELDS and number_at(check.c.measurements, key) is None]
    asked = next((key for key in (*empty, _BALANCE) if key in on_sheet), None)
    return link_to(asked, on_sheet) if empty and asked else None


def verdict_words(check: Check) -> str:
    """The verdict of one check with its number: ``passes, 0.65 of its limit``."""
    used = shown.share(check.utilisation)
    match check.verdict:
        case "not_checked":
            return "not checked"
        case "not_applicable":
            return "does not apply"
        case "pass":
            return f"passes, {used} of its limit"
        case "advice" if check.utilisation == 0:
            return "advice"
        case "advice" if not isfinite(check.utilisation):
            return "advice, nothing is left"
        case "advice":
            return f"advice, {used} of its limit" if check.utilisation <= 1 else f"advice, {used} times its limit"
        case "fail":
            return f"fails, {used} times its limit" if isfinite(check.utilisation) else "fails, nothing is left"


def governing_words(design: Design) -> str:
    """Which check comes nearest to its limit or farthest beyond it, and how far; and which piece of advice."""
    check = design.governing
    title = lower_first(check.title)
    if check.verdict == "fail":
        return f"Worst: {title}, {verdict_words(check).removeprefix('fails, ')}."
    advice = max((c for c in design.checks if c.rule.is_advice), key=lambda c: c.utilisation, default=None)
    beside = _advice_words(advice) if advice and advice.utilisation > 0 else ""
    return f"Nearest its limit: {title}, {shown.share(check.utilisation)} of it.{beside}"


def _advice_words(check: Check) -> str:
    """The same of what is only advised, which may be nearer its limit or past it."""
    title, used = lower_first(check.title), shown.share(check.utilisation)
    if check.utilisation <= 1:
        return f" Of the advice: {title}, {used} of its limit."
    far = f"{used} times it" if isfinite(check.utilisation) else "with nothing left"
    return f" Advice past its limit: {title}, {far}."
