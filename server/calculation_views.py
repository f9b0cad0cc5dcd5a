"""The calculation sheet in words and typeset formulas: one typed context, of which the template only prints."""

from dataclasses import replace

from markupsafe import Markup

from geometry import ENGINE_VERSION, formulas
from geometry.calculation.book import Line
from geometry.calculation.clearances import Clearance, Figure
from geometry.calculation.opening import not_covered_by, scope_of
from geometry.calculation.sheet import CHECKS_ORDER, PARTS, CalculationSheet, CheckPart, LedgerPart, SymbolNote
from geometry.cautions import ONE_LINE
from geometry.ledger import Bound
from geometry.mathml import mathml, mathml_equation
from geometry.provenance import Source
from server import links, shown
from server.advice_views import clearance_views, curve_view, sensitivity_view
from server.calculation_context import (
    BoundView,
    CalculationPage,
    CheckView,
    FigureView,
    FitView,
    InputView,
    LedgerView,
    LinePart,
    LineView,
    SideView,
    SourceTag,
    SourceView,
    SymbolView,
)
from server.check_views import verdict_words
from server.design_views import caution_groups
from server.forms import FormReading, Units

_LENGTHS: dict[Units, str] = {
    "mm": "Lengths in mm",
    "in": "Lengths in mm, and in inches in what a check says in its sentence",
}


class _Tags:
    """Numbers the sources of a sheet."""

    def __init__(self, sheet: CalculationSheet) -> None:
        self.number = {use.source: i for i, use in enumerate(sheet.sources, start=1)}

    def of(self, source: Source | None) -> SourceTag | None:
        """The tag of a source: its mark and its number in the list."""
        if source is None or source not in self.number:
            return None
        return SourceTag(f"{source.mark.value} {self.number[source]}", f"#source-{self.number[source]}")


def calculation_page(sheet: CalculationSheet, reading: FormReading) -> CalculationPage:
    """The context of the calculation sheet."""
    design, tags, units = sheet.design, _Tags(sheet), reading.units
    return CalculationPage(
        title=design.measurements.title or "Lifting pad",
        verdict=design.verdict_words,
        identity=f"design {design.design_id}, engine {ENGINE_VERSION}",
        lengths=_LENGTHS[units],
        back=links.pad_address(reading.typed, units=units),
        data=links.pad_address(reading.typed, "/calculation.json", units=units),
        scope=scope_of(sheet.design),
        not_covered=not_covered_by(sheet.design),
        factors=sheet.factors,
        doubtful=tuple(replace(d, value=shown.with_customary(d.value, units)) for d in sheet.doubtful),
        inputs=tuple(
            InputView(
                i.title,
                _symbol(i.symbol),
                shown.with_customary(i.words, units),
                i.uncertainty,
                i.where_from,
            )
            for i in sheet.inputs
        ),
        parts=tuple(
            LinePart(p.key, p.heading, p.intro, tuple(_line(line, tags, units) for line in sheet.lines(p.key)))
            for p in PARTS
        ),
        curve=curve_view(design, units) if design.conditions.curve else None,
        ledger=tuple(_ledger(part, tags, units) for part in sheet.ledger),
        fits=tuple(_fit(c) for c in sheet.clearances),
        clearance_plots=clearance_views(design, units),
        checks=tuple(_check(part, tags, units) for part in sheet.checks),
        checks_order=CHECKS_ORDER,
        sensitivity=sensitivity_view(sheet.sensitivities),
        sources=tuple(
            SourceView(
                f"source-{i}",
                f"{use.source.mark.value} {i}",
                use.source.text,
                use.source.mark.words,
                ", ".join(use.uses),
            )
            for i, use in enumerate(sheet.sources, start=1)
        ),
        cautions=caution_groups(design.cautions),
        caution_line=ONE_LINE,
    )


def _symbol(name: str) -> Markup:
    return Markup(mathml(name)) if name else Markup("")  # noqa: S704 - written by our own typesetter, which escapes


def _equation(symbol: str, formula: str) -> Markup:
    return Markup(mathml_equation(symbol, formula))  # noqa: S704 - as above


def _line(line: Line, tags: _Tags, units: str) -> LineView:
    return LineView(
        symbol=_symbol(line.symbol),
        meaning=line.meaning,
        formula=_equation(line.symbol, line.formula) if line.formula else Markup(""),
        numbers=line.substituted,
        result=shown.with_customary(line.result_with_unit, units),
        remark=line.remark,
        source=tags.of(line.source),
    )


def _symbols(notes: tuple[SymbolNote, ...], units: str) -> tuple[SymbolView, ...]:
    return tuple(
        SymbolView(_symbol(n.symbol), shown.with_customary(f"{n.number} {n.unit}".rstrip(), units), n.meaning)
        for n in notes
    )


def _ledger(part: LedgerPart, tags: _Tags, units: str) -> LedgerView:
    value = part.entry.value_mm
    return LedgerView(
        title=part.title,
        why=part.why,
        inches=f"{shown.length(value, 'in')} in" if units == "in" and value else "",
        bounds=tuple(_bound(b, part.deciding, tags) for b in part.bounds),
        symbols=_symbols(part.symbols, units),
    )


def _bound(bound: Bound, deciding: Bound | None, tags: _Tags) -> BoundView:
    return BoundView(
        side="at least" if bound.rule.side == "lower" else "at most",
        kind="must" if bound.rule.must else "aim",
        decides=bound is deciding,
        reason=bound.reason,
        formula=_symbol(bound.rule.formula),
        numbers=bound.substituted,
        result=f"{formulas.shown(bound.value)} mm",
        source=tags.of(bound.rule.source),
    )


def _fit(c: Clearance) -> FitView:
    return FitView(
        title=c.heading,
        figures=tuple(_figure(words, figure) for words, figure in c.figures),
        statistical=c.statistical_words,
    )


def _figure(words: str, figure: Figure) -> FigureView:
    return FigureView(words, _symbol(figure.formula), figure.substituted, f"{figure.result} mm")


def _check(part: CheckPart, tags: _Tags, units: str) -> CheckView:
    check = part.check
    return CheckView(
        code=check.code,
        title=check.title,
        verdict=verdict_words(check),
        words=shown.check_words(check, units),
        sides=tuple(
            SideView(_symbol(f), numbers, shown.with_customary(f"{result} {part.unit}".rstrip(), units))
            for f, numbers, result in part.sides
        ),
        sign=check.sign,
        unit=part.unit,
        margin=_margin(part, units),
        also=tuple(shown.with_customary(words, units) for words in check.also_words),
        symbols=_symbols(part.symbols, units),
        source=tags.of(check.rule.source),
        is_governing=part.is_governing,
    )


def _margin(part: CheckPart, units: str) -> str:
    """What is left to the limit; of a temperature this is a difference, which stands for itself in °C alone."""
    if part.margin is None:
        return ""
    words = f"margin {formulas.shown(part.margin)} {part.unit}".rstrip()
    return words if part.unit == "°C" else shown.with_customary(words, units)
