"""Two designs side by side: inputs, sizes and estimates that differ, in words."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import inf
from typing import Any

from geometry.drawing.table import WORDS
from geometry.rules import CHECK_RULES
from server import shown
from server.choice_words import CHOICE_WORDS
from server.field_views import title_of
from server.fields import FIELDS

NONE = "left out"


@dataclass(frozen=True, slots=True)
class Line:
    """One thing that differs."""

    title: str
    one: str
    other: str


@dataclass(frozen=True, slots=True)
class Difference:
    """What differs between two designs; everything else is the same."""

    inputs: tuple[Line, ...]
    sizes: tuple[Line, ...]
    estimates: tuple[Line, ...]
    verdicts: tuple[str, str]

    @property
    def is_nothing(self) -> bool:
        """Whether the two are the same in all three."""
        return not (self.inputs or self.sizes or self.estimates)

    @property
    def parts(self) -> tuple[tuple[str, tuple[Line, ...]], ...]:
        """The three lists that are not empty, with their headings."""
        named = (("Answers", self.inputs), ("Sizes", self.sizes), ("Estimates", self.estimates))
        return tuple((heading, lines) for heading, lines in named if lines)


def difference(one: Mapping[str, Any], other: Mapping[str, Any], units: str) -> Difference:
    """The difference of two design documents, whatever engine wrote them."""
    return Difference(
        inputs=tuple(_inputs(one["measurements"], other["measurements"], units)),
        sizes=tuple(_sizes(one["pad"], other["pad"], units)),
        estimates=tuple(_estimates(one["checks"], other["checks"])),
        verdicts=(one["verdict"], other["verdict"]),
    )


def _inputs(one: Mapping[str, Any], other: Mapping[str, Any], units: str) -> Iterator[Line]:
    left, right = _flat(one), _flat(other)
    keys = [
        *(key for key in FIELDS if key in left or key in right),
        *sorted((left.keys() | right.keys()) - FIELDS.keys()),
    ]
    for key in keys:
        if left.get(key) != right.get(key):
            yield Line(title_of(key), answer_words(key, left.get(key), units), answer_words(key, right.get(key), units))


def _flat(document: Mapping[str, Any]) -> dict[str, Any]:
    """A document's answers by dotted key; its own version is none."""
    flat: dict[str, Any] = {}
    for name, value in document.items():
        if isinstance(value, Mapping):
            flat |= {f"{name}.{part}": answer for part, answer in value.items()}
        elif name != "version":
            flat[name] = value
    return flat


def answer_words(key: str, value: Any, units: str) -> str:
    """One answer as people read it."""
    field = FIELDS.get(key)
    if value is None:
        return NONE
    if isinstance(value, list | tuple):
        return "; ".join(answer_words(key, part, units) for part in value)
    if isinstance(value, str):
        return CHOICE_WORDS.get(key, {}).get(value, value)
    if field is not None and field.kind in {"length", "lengths"}:
        return shown.length_with_unit(float(value), units, digits=3)
    return f"{shown.plain(float(value), 4)} {field.unit if field else ''}".strip()


def _sizes(one: Mapping[str, float], other: Mapping[str, float], units: str) -> Iterator[Line]:
    for name, title in WORDS.items():
        left, right = one.get(name, 0.0), other.get(name, 0.0)
        if left != right:
            yield Line(title, _size(left, units), _size(right, units))


def _size(length_mm: float, units: str) -> str:
    return shown.length_with_unit(length_mm, units, digits=3) if length_mm else "none"


def _estimates(one: Sequence[Mapping[str, Any]], other: Sequence[Mapping[str, Any]]) -> Iterator[Line]:
    left, right = ({check["code"]: check for check in checks} for checks in (one, other))
    codes = [*(code for code in CHECK_RULES if code in left or code in right)]
    codes += sorted((left.keys() | right.keys()) - CHECK_RULES.keys())
    for code in codes:
        words = estimate_words(left.get(code)), estimate_words(right.get(code))
        if words[0] != words[1]:
            yield Line((left.get(code) or right[code])["title"], *words)


def estimate_words(check: Mapping[str, Any] | None) -> str:
    """The verdict of a kept check with its number."""
    if check is None:
        return "not asked"
    used = check["utilisation"]
    if used is None and check["verdict"] in {"fail", "advice"}:
        return {"fail": "fails", "advice": "advice"}[check["verdict"]] + ", nothing is left"
    share = shown.share(inf if used is None else used)
    match check["verdict"]:
        case "pass":
            return f"passes, {share} of its limit"
        case "fail":
            return f"fails, {share} times its limit"
        case "advice":
            return f"advice, {share} of its limit" if used else "advice"
        case "not_checked":
            return "not checked"
        case _:
            return "does not apply"
