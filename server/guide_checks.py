"""The guide's entries for the checks, made from their register and from one worked example."""

from collections.abc import Mapping

from markupsafe import Markup

import geometry.checks  # noqa: F401 - registers every check
from geometry import formulas
from geometry.design import Design
from geometry.mathml import mathml
from geometry.rules import CHECK_RULES, CheckRule
from geometry.symbols import symbol_in
from server import shown
from server.field_views import LinkView, field_id, title_of
from server.guide_context import CheckGroupPart, CheckPart, MeaningView
from server.guide_uses import rests_on
from server.guide_words import PURPOSES

_ROOMS: Mapping[str, str] = {
    "geometry.heads.slot": "The slot and what stands around it",
    "geometry.heads.slot.seam_checks": "The car's own seam",
    "geometry.heads.cushion": "A flat cushion under a plate or a rail",
    "geometry.heads.plug": "A plug in a hole of the body, and the shoulder around it",
    "geometry.heads.face": "A face of the car on a flat top, and the lip around the seat",
    "geometry.feet.cup": "The seat, the lip and the stem in the cup",
    "geometry.feet.post": "The seat on a bore's rim, the stem in the bore, and its pin",
    "geometry.feet.saddle": "The tips of a saddle's teeth",
    "geometry.feet.skirt": "The skirt around a plate's edge or around teeth",
    "geometry.body": "The whole: heights, jack, bar, and how the car leans",
    "": "Further checks",
}
"""Where checks are registered, in the order in which the guide tells of them; the nearest room or package around counts."""


def check_groups(example: Design, units: str) -> tuple[CheckGroupPart, ...]:
    """Every registered check, by what it looks at."""
    found: dict[str, list[CheckPart]] = {room: [] for room in _ROOMS}
    for rule in CHECK_RULES.values():
        found[_room_of(rule)].append(_check(rule, example, units))
    filled = (room for room, checks in found.items() if checks)
    return tuple(
        CheckGroupPart(f"checks-{place}", _ROOMS[room], tuple(found[room]))
        for place, room in enumerate(filled, start=1)
    )


def _room_of(rule: CheckRule) -> str:
    module = rule.find.__module__
    return max((room for room in _ROOMS if f"{module}.".startswith(f"{room}." if room else "")), key=len)


def _check(rule: CheckRule, example: Design, units: str) -> CheckPart:
    return CheckPart(
        id=f"check-{rule.code}",
        code=rule.code,
        title=rule.title,
        purpose=PURPOSES[rule.code],
        kind="Advice: it never stands in the way of a pad."
        if rule.is_advice
        else "Where it fails, the pad is not fit to make.",
        formula=_typeset(rule.formula),
        limit=_typeset(rule.limit_formula),
        sign=rule.sign,
        unit="" if rule.unit == "–" else rule.unit,
        meanings=_meanings(rule),
        needs=tuple(LinkView(title_of(key), f"#{field_id(key)}") for key in rests_on(rule)),
        example=_example(rule, example, units),
        mark=rule.source.mark.value,
        source=f"{rule.source.text} ({rule.source.mark.words})",
    )


def _typeset(formula: str) -> Markup:
    return Markup(mathml(formula))  # noqa: S704 - written by our own typesetter, which escapes


def _meanings(rule: CheckRule) -> tuple[MeaningView, ...]:
    names = dict.fromkeys((*formulas.symbols(rule.formula), *formulas.symbols(rule.limit_formula)))
    known = ((name, symbol_in(rule.code, name)) for name in names)
    return tuple(MeaningView(_typeset(name), symbol.meaning, symbol.unit) for name, symbol in known)


def _example(rule: CheckRule, example: Design, units: str) -> str:
    """What the check says of the worked example."""
    return next((shown.check_words(check, units) for check in example.checks if check.code == rule.code), "")
