"""The calculation sheet: a design with every line of its arithmetic, in the order in which one would redo it."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite

from geometry import formulas
from geometry.calculation.basis import write_load, write_material
from geometry.calculation.book import Book, Line
from geometry.calculation.clearances import Clearance, clearances
from geometry.calculation.inputs import Input, write_inputs
from geometry.calculation.loading import write_loading
from geometry.calculation.opening import Doubtful, Factor, doubtful, factors, governing, symbols_of
from geometry.calculation.sizes import write_pad
from geometry.calculation.why import why
from geometry.case import case_of
from geometry.conditions import Conditions
from geometry.design import Design
from geometry.ledger import Bound, Entry
from geometry.letters import upper_first
from geometry.provenance import Mark, Source
from geometry.rules import Check, Numbers
from geometry.sensitivity import Sensitivity, sensitivities
from geometry.symbols import dimension_title, symbol_in

_ORDER = tuple(Mark)


@dataclass(frozen=True, slots=True)
class Part:
    """Lines under one heading."""

    key: str
    heading: str
    intro: str


PARTS = (
    Part(
        "load",
        "The load",
        "From the mass to the forces that the pad is judged by. Angles in sin are in radians; deg turns radians into degrees.",
    ),
    Part(
        "material",
        "Growth and what the material allows",
        "Growth is a ratio of length, from the part as machined dry at 20 °C.",
    ),
    Part("pad", "Sizes of the pad", "As chosen in the ledger below, or fixed."),
    Part(
        "tolerances",
        "Tolerances",
        "ISO 2768-1 class m, plus and minus; those in frames on the drawing as whole zones. In a formula tol is that of the"
        " dimension that the symbols below it name.",
    ),
    Part(
        "loading",
        "What the load does",
        "Quantities that the ledger and the checks take their numbers from, at nominal sizes and the worst play.",
    ),
)
"""The parts of the sheet that are lines, after the inputs, in the order in which page and paper have them."""


CHECKS_ORDER = (
    "First the checks that can fail a pad, nearest its limit first; the three that come nearest, and all that fail, govern. After"
    " them those that only advise: they fail no pad and govern nothing, however near their limits they come. Last what was not"
    " checked and what does not apply."
)
"""What the order of the checks means, and why one further down may use more of its limit."""


@dataclass(frozen=True, slots=True)
class SymbolNote:
    """One symbol of a formula with its number."""

    symbol: str
    number: str
    unit: str
    meaning: str


@dataclass(frozen=True, slots=True)
class LedgerPart:
    """One dimension: why it is what it is, and every bound."""

    entry: Entry
    why: str
    bounds: tuple[Bound, ...]
    deciding: Bound | None
    symbols: tuple[SymbolNote, ...]

    @property
    def dimension(self) -> str:
        """The name of the dimension."""
        return self.entry.dimension

    @property
    def title(self) -> str:
        """The dimension as a heading."""
        return upper_first(dimension_title(self.dimension))


@dataclass(frozen=True, slots=True)
class CheckPart:
    """One check with its two formulas, the numbers put in, and what is left to the limit."""

    check: Check
    symbols: tuple[SymbolNote, ...]
    is_governing: bool

    @property
    def unit(self) -> str:
        """The unit of both sides; empty for a plain number."""
        return "" if self.check.rule.unit == "–" else self.check.rule.unit

    @property
    def sides(self) -> tuple[tuple[str, str, str], ...]:
        """Value and limit: formula, the numbers put in, and the result as printed; empty where nothing was computed."""
        finding = self.check.finding
        if finding is None:
            return ()
        return tuple(
            (formula, formulas.substituted(formula, finding.numbers), formulas.shown(result))
            for formula, result in zip(self.check.formulas, (finding.value, finding.limit), strict=True)
        )

    @property
    def margin(self) -> float | None:
        """What is left to the limit, in the check's unit; negative where it is passed, None where nothing was computed."""
        finding = self.check.finding
        if finding is None or not isfinite(finding.value - finding.limit):
            return None
        left = finding.limit - finding.value
        return left if self.check.rule.sense == "at_most" else -left


@dataclass(frozen=True, slots=True)
class SourceUse:
    """One source, and what rests on it."""

    source: Source
    uses: tuple[str, ...]


@dataclass(frozen=True)
class CalculationSheet:
    """Everything that a reader needs to redo a design by hand."""

    design: Design
    factors: tuple[Factor, ...]
    doubtful: tuple[Doubtful, ...]
    inputs: tuple[Input, ...]
    book: Book
    ledger: tuple[LedgerPart, ...]
    clearances: tuple[Clearance, ...]
    checks: tuple[CheckPart, ...]
    sensitivities: tuple[Sensitivity, ...]
    sources: tuple[SourceUse, ...]

    def lines(self, part: str) -> tuple[Line, ...]:
        """The lines of one part: ``inputs``, ``load``, ``material``, ``pad``, ``tolerances`` or ``loading``."""
        return tuple(self.book.parts[part])

    @property
    def assumptions(self) -> tuple[Input, ...]:
        """What was assumed because it was not measured."""
        return tuple(i for i in self.inputs if i.origin == "assumed" and i.remark)


def calculation_sheet(design: Design) -> CalculationSheet:
    """The sheet of a design; it repeats no judgement, it shows where each came from."""
    c, case, book = design.conditions, case_of(design.conditions, design.pad), Book(said=design.conditions.said)
    inputs = write_inputs(book, c)
    fixed = frozenset(name for name, entry in design.ledger.items() if entry.is_fixed)
    write_material(book, c)
    write_pad(book, case, fixed=fixed)
    write_load(book, c)
    write_loading(book, case)
    deciding = governing(design)
    checks = tuple(
        CheckPart(check, _notes(c, check.code, symbols_of(check), _numbers_of(check)), check in deciding)
        for check in design.checks
    )
    ledger = tuple(_ledger_part(design, entry) for entry in design.ledger.values())
    return CalculationSheet(
        design=design,
        factors=factors(design),
        doubtful=doubtful(book, deciding),
        inputs=inputs,
        book=book,
        ledger=ledger,
        clearances=clearances(book, case),
        checks=checks,
        sensitivities=sensitivities(design),
        sources=_sources(book, ledger, checks),
    )


def _ledger_part(design: Design, entry: Entry) -> LedgerPart:
    numbers: dict[str, float] = {}
    for bound in entry.bounds:
        for name in formulas.symbols(bound.rule.formula):
            numbers.setdefault(name, bound.numbers[name])
    notes = _notes(design.conditions, entry.dimension, numbers, numbers)
    deciding = None if entry.is_fixed else entry.deciding
    return LedgerPart(entry, why(design, entry), entry.bounds, deciding, notes)


def _numbers_of(check: Check) -> Numbers:
    return check.finding.numbers if check.finding else {}


def _notes(c: Conditions, where: str, names: Iterable[str], numbers: Numbers) -> tuple[SymbolNote, ...]:
    """The symbols of a check or a dimension that have a number, in the meaning that they have there."""
    known = ((name, symbol_in(where, name)) for name in names if name in numbers)
    return tuple(SymbolNote(name, formulas.shown(numbers[name]), s.unit, c.said(s.meaning)) for name, s in known)


def _sources(book: Book, ledger: tuple[LedgerPart, ...], checks: tuple[CheckPart, ...]) -> tuple[SourceUse, ...]:
    """Every source that a line, a bound or a check of this sheet names, by its mark."""
    uses: dict[Source, dict[str, None]] = {}

    def rests(source: Source | None, what: str) -> None:
        if source is not None:
            uses.setdefault(source, {})[what] = None

    for line in book:
        rests(line.source, line.meaning)
    for part in ledger:
        for bound in part.bounds:
            rests(bound.rule.source, dimension_title(part.dimension))
    for item in checks:
        if item.check.finding is not None:
            rests(item.check.rule.source, f"check “{item.check.title}”")
    found = (SourceUse(source, tuple(what)) for source, what in uses.items())
    return tuple(sorted(found, key=lambda s: (_ORDER.index(s.source.mark), s.source.text)))
