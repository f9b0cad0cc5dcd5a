"""What the template of the calculation sheet prints: typed pieces, all words and typeset formulas."""

from dataclasses import dataclass

from markupsafe import Markup

from geometry.calculation.opening import Doubtful, Factor
from server.advice_context import CurveView, PlotView, SensitivityView
from server.design_views import CautionGroup


@dataclass(frozen=True, slots=True)
class SourceTag:
    """A source as a short mark that leads to the list."""

    words: str
    href: str


@dataclass(frozen=True, slots=True)
class SymbolView:
    """One symbol with its number, for who redoes a formula."""

    symbol: Markup
    number: str
    meaning: str


@dataclass(frozen=True, slots=True)
class LineView:
    """One line of arithmetic."""

    symbol: Markup
    meaning: str
    formula: Markup
    """Empty where the number is given."""
    numbers: str
    result: str
    remark: str
    source: SourceTag | None


@dataclass(frozen=True, slots=True)
class LinePart:
    """Lines under one heading."""

    id: str
    heading: str
    intro: str
    lines: tuple[LineView, ...]


@dataclass(frozen=True, slots=True)
class InputView:
    """One answer of the measurements."""

    title: str
    symbol: Markup
    words: str
    uncertainty: str
    origin: str


@dataclass(frozen=True, slots=True)
class BoundView:
    """One bound of a dimension."""

    side: str
    kind: str
    decides: bool
    reason: str
    formula: Markup
    numbers: str
    result: str
    source: SourceTag | None


@dataclass(frozen=True, slots=True)
class LedgerView:
    """One dimension of the ledger."""

    title: str
    why: str
    inches: str
    """The value in inches for who works in them; else empty."""
    bounds: tuple[BoundView, ...]
    symbols: tuple[SymbolView, ...]


@dataclass(frozen=True, slots=True)
class FigureView:
    """One clearance."""

    words: str
    formula: Markup
    numbers: str
    result: str


@dataclass(frozen=True, slots=True)
class FitView:
    """One fit at one extreme."""

    title: str
    figures: tuple[FigureView, ...]
    statistical: str


@dataclass(frozen=True, slots=True)
class SideView:
    """Value or limit of a check."""

    formula: Markup
    numbers: str
    result: str


@dataclass(frozen=True, slots=True)
class CheckView:
    """One check."""

    code: str
    title: str
    verdict: str
    words: str
    sides: tuple[SideView, ...]
    sign: str
    unit: str
    margin: str
    also: tuple[str, ...]
    symbols: tuple[SymbolView, ...]
    source: SourceTag | None
    is_governing: bool


@dataclass(frozen=True, slots=True)
class SourceView:
    """One entry of the list of sources."""

    id: str
    tag: str
    words: str
    mark: str
    uses: str


@dataclass(frozen=True, slots=True)
class CalculationPage:
    """The whole sheet."""

    title: str
    verdict: str
    identity: str
    lengths: str
    """The units of the lengths."""
    back: str
    data: str
    scope: str
    not_covered: tuple[str, ...]
    factors: tuple[Factor, ...]
    doubtful: tuple[Doubtful, ...]
    inputs: tuple[InputView, ...]
    parts: tuple[LinePart, ...]
    curve: CurveView | None
    ledger: tuple[LedgerView, ...]
    fits: tuple[FitView, ...]
    clearance_plots: tuple[PlotView, ...]
    checks: tuple[CheckView, ...]
    checks_order: str
    """What the order of the checks means."""
    sensitivity: SensitivityView
    sources: tuple[SourceView, ...]
    cautions: tuple[CautionGroup, ...]
    caution_line: str
