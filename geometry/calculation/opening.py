"""What a sheet says before its first number: what it covers, what it leaves out, where its factors sit, what to doubt."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from geometry import formulas, lift, side_load
from geometry.calculation.book import Book, Line
from geometry.design import Design
from geometry.heads.plug.strength import ROOT_FACTOR
from geometry.provenance import Mark, Source, derived, found, memory
from geometry.rules import Check
from geometry.sensitivity import nearest_to_limit

_SCOPE = (
    "This sheet estimates one lifting pad for one jack and one car: whether it goes together, whether it clears what is"
    " around it, and what the load does to the plastic and to the car's own seam, once, standing still, for the time"
    " stated. Every dimension is at 20 °C, the part as machined from dry stock. Nothing here was tested."
)
_NOT_COVERED = (
    "Fatigue: the pad is judged for one load, not for how many it will see.",
    "Impact: a car that drops onto the pad, or a pad that is struck.",
    "The jack itself: its own strength and stability, its arm, its wheels, its hydraulics.",
    "The ground: its strength, slope and evenness, beyond whether the jack rolls.",
    "Corrosion, cracks, spot welds and earlier damage of the seam and the sill.",
    "Chemicals, sunlight and ageing of the plastic, beyond the time under load that is stated.",
    "Hidden flaws of the stock, and work that does not keep to the general tolerances.",
    "Lifting at any other point, with any other jack or car than those measured.",
)
_RULE = "a rule"
GOOD_TO_DOUBT = (Mark.MEMORY, Mark.DERIVED)
"""The marks of values that nobody else vouches for."""


@dataclass(frozen=True, slots=True)
class Factor:
    """One factor or allowance: how large, and where it sits."""

    value: str
    place: str
    source: Source


@dataclass(frozen=True, slots=True)
class Doubtful:
    """A value or a formula from memory or of our own deriving that a governing check uses."""

    words: str
    value: str
    """With its unit; of the rule of a check, that it is one."""
    source: Source
    checks: tuple[str, ...]
    """The titles of the governing checks that use it."""


def scope_of(design: Design) -> str:
    """What the sheet of a design covers, in the words of its kinds."""
    return design.conditions.said(_SCOPE)


def not_covered_by(design: Design) -> tuple[str, ...]:
    """What it leaves out, in the words of its kinds."""
    return tuple(design.conditions.said(words) for words in _NOT_COVERED)


def governing(design: Design) -> tuple[Check, ...]:
    """The checks that decide: all that fail, and those that come nearest to their limit."""
    failing = [c for c in design.failures if c.finding]
    return tuple(failing + [c for c in nearest_to_limit(design) if c not in failing])


def factors(design: Design) -> tuple[Factor, ...]:
    """Every factor of this case, from the load to the limits."""
    return tuple(_load_factors(design)) + _LIMIT_FACTORS.get(design.conditions.head.kind, ())


def _load_factors(design: Design) -> Iterator[Factor]:
    source = design.measurements.car.load_source
    if source == "gross_mass":
        yield Factor(
            "0.60", "on the weight of the whole car: the share of one lifting point", lift.SHARE_OF_GROSS_MASS.source
        )
    yield Factor("1.2", "on the force at the lifting point: bump and slip", lift.DESIGN_FACTOR.source)
    if design.measurements.service.ground == "stuck":
        yield Factor(
            "0.30",
            "of the design force, at least: side load where the jack cannot roll",
            side_load.STUCK_SIDE_SHARE.source,
        )
    else:
        yield Factor(
            "0.10", "of the design force, at least: side load that is always assumed", side_load.LEAST_SIDE_SHARE.source
        )
    yield Factor(
        "0.03", "of the design force, added to the lean: rolling of the jack", side_load.ROLLING_SIDE_SHARE.source
    )
    if design.conditions.curve is None:
        yield Factor("1400 mm", "lever of the assumed lean: lift over lever", side_load.LEAN_LEVER_MM.source)
    friction, head = design.conditions.material.assumed_friction, design.conditions.head
    if head.kind != "plug":
        words = head.said("assumed friction of the seam on the slot's floor")
        yield Factor(f"{friction.value:g}", words, friction.source)


_SLOT_FACTORS = (
    Factor(
        "1.5",
        "on the yield of the slot's floor, for which 2 σ_allow stands",
        derived("Factor against cutting in; the allowables are at most half the yield"),
    ),
    Factor("2.57", "at most, on that yield: support of a thick floor around the edge", found("Prandtl's strip punch")),
    Factor("1/√3", "on σ_allow: shear of lip and web", derived("Shear yield by von Mises")),
    Factor("1.5", "on σ_allow at the edge of the seat face", derived("A peak at its edge may yield a little")),
    Factor("1.1", "on the squash of the seat", derived("A tenth more for the rounded corner")),
    Factor("1.5", "on the buckling stress of the seam", derived("Imperfect sheets buckle sooner")),
    Factor(
        "1.5",
        "times its limit: up to there a seam of assumed yield is advice",
        memory("Sill steels are commonly 210–350 MPa"),
    ),
    Factor("0.8", "of the marking limit: the aim of the body's size", derived("Room before the floor is marked")),
    Factor(
        "2",
        "on σ_allow: tension under the lip, bent from wall to wall",
        derived("2 σ_allow stands for the yield, 1.5 against it, times 1.5, the plastic shape factor of a rectangle"),
    ),
    Factor("2/1.5", "on σ_allow: the peak at the root of a slot wall", derived("As for the slot's floor")),
    Factor(
        "K_t", "on the bending stress of a wall: its root fillet", derived("Fitted to own finite elements of the slot")
    ),
)
_FACE_FACTORS = (
    Factor("1/√3", "on σ_allow: shear of the lip around the seat", derived("Shear yield by von Mises")),
    Factor("1.5", "on σ_allow at the edge of the seat face", derived("A peak at its edge may yield a little")),
    Factor("1.1", "on the squash of the seat", derived("A tenth more for the rounded corner")),
    Factor("0.8", "of the pressure allowed: the aim of the body's size", derived("Room before the face sinks in")),
)
_LIMIT_FACTORS: Mapping[str, tuple[Factor, ...]] = MappingProxyType(
    {
        "slot": _SLOT_FACTORS,
        "cushion": _FACE_FACTORS,
        "plug": (*_FACE_FACTORS, Factor("4", "on the bending stress of the plug: its root", ROOT_FACTOR.source)),
    }
)
"""By kind of head."""


def doubtful(book: Book, checks: Iterable[Check]) -> tuple[Doubtful, ...]:
    """Every value from memory or derived that ``checks`` use, directly or through the lines above them."""
    used: dict[tuple[str, str, Source], dict[str, None]] = {}
    for check in checks:
        for words, value, source in _doubts_of(book, check):
            used.setdefault((words, value, source), {})[check.title] = None
    return tuple(Doubtful(*key, tuple(titles)) for key, titles in used.items())


def _doubts_of(book: Book, check: Check) -> Iterator[tuple[str, str, Source]]:
    if check.rule.source.mark in GOOD_TO_DOUBT:
        yield f"the rule of the check “{check.title}”", _RULE, check.rule.source
    for line in lines_behind(book, check):
        if line.source and line.source.mark in GOOD_TO_DOUBT:
            is_rule = bool(line.formula) and line not in book.parts["inputs"]
            yield f"{'the rule for ' if is_rule else ''}{line.meaning}", line.result_with_unit, line.source


def lines_behind(book: Book, check: Check) -> tuple[Line, ...]:
    """Every line that a check rests on, however far above."""
    finding = check.finding
    waiting = [(name, finding.numbers[name]) for name in symbols_of(check)] if finding else []
    found_lines: dict[int, Line] = {}
    while waiting:
        name, value = waiting.pop()
        line = book.line_of(name, value)
        if line is not None and id(line) not in found_lines:
            found_lines[id(line)] = line
            waiting += list(line.numbers.items())
    return tuple(line for line in book if id(line) in found_lines)


def symbols_of(check: Check) -> tuple[str, ...]:
    """The symbols of both formulas of a check, in the order of reading."""
    return tuple(dict.fromkeys(name for text in check.formulas for name in formulas.symbols(text)))
