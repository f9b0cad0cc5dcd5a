"""The calculation sheet for paper: the lines of the calculation, their formulas in the typesetter's own language."""

from functools import lru_cache

from geometry import formulas
from geometry.calculation.book import Line
from geometry.calculation.clearances import Clearance, Figure
from geometry.calculation.opening import not_covered_by, scope_of
from geometry.calculation.sheet import CHECKS_ORDER, PARTS, CalculationSheet, CheckPart, LedgerPart
from geometry.drawing.facts import Units as SheetUnits
from geometry.ledger import Bound
from geometry.making.wording import Units
from geometry.mathml import typst_math
from geometry.packet.paper import Data
from geometry.packet.words import check_words, verdict_of
from geometry.provenance import Source


class Tags:
    """Numbers the sources of a sheet, so that a line names its source in one short mark."""

    def __init__(self, sheet: CalculationSheet) -> None:
        self._tags = {use.source: f"{use.source.mark.value}{i}" for i, use in enumerate(sheet.sources, start=1)}

    def of(self, source: Source | None) -> str:
        """The mark and number of a source; empty where a line has none."""
        return self._tags.get(source, "") if source else ""


LENGTHS: dict[Units, str] = {
    "mm": "Lengths in mm.",
    "in": "Lengths in mm, though the drawing is in inches: every formula and every table behind them is in mm (25.4 mm = 1 in)."
    " What each check says in its sentence is in inches.",
}


def calculation_data(sheet: CalculationSheet, units: SheetUnits = "mm") -> Data:
    """Every line that it takes to redo the design by hand."""
    tags = Tags(sheet)
    return {
        "lengths": LENGTHS["in" if units in {"in", "in_fraction"} else "mm"],
        "scope": scope_of(sheet.design),
        "not_covered": list(not_covered_by(sheet.design)),
        "factors": [[f.value, f.place, str(f.source)] for f in sheet.factors],
        "doubtful": [[d.words, d.value, "; ".join(d.checks)] for d in sheet.doubtful],
        "inputs": [[i.title, _formula(i.symbol), i.words, i.uncertainty, i.where_from] for i in sheet.inputs],
        "parts": [
            {
                "heading": part.heading,
                "intro": part.intro,
                "lines": [_line(line, tags) for line in sheet.lines(part.key)],
            }
            for part in PARTS
        ],
        "ledger": [_ledger(part, tags) for part in sheet.ledger],
        "fits": [_fit(c) for c in sheet.clearances],
        "checks_order": CHECKS_ORDER,
        "checks": [_check(part, tags, units) for part in sheet.checks],
        "sensitivities": [f"{found.check.title}: {found.words}" for found in sheet.sensitivities],
    }


@lru_cache(maxsize=1024)
def _formula(formula: str) -> tuple[str, str] | None:
    """A formula typeset, and the same in plain text for readers of the screen; None where there is none."""
    return (typst_math(formula), formulas.pretty(formula)) if formula else None


def _line(line: Line, tags: Tags) -> Data:
    return {
        "symbol": _formula(line.symbol),
        "meaning": line.meaning,
        "remark": line.remark,
        "formula": _formula(line.formula),
        "numbers": _numbers(line.substituted, line.result),
        "result": line.result_with_unit,
        "tag": tags.of(line.source),
    }


def _numbers(substituted: str, result: str) -> str:
    """The line with the numbers put in; empty where it would only say the result twice."""
    return "" if substituted == result else substituted


def with_unit(number: str, unit: str) -> str:
    """A number and its unit; a sign of degrees stands close to it, as on the page.

    >>> with_unit("3", "°"), with_unit("40", "°C"), with_unit("0.2", "")
    ('3°', '40 °C', '0.2')
    """
    return f"{number}{unit}" if unit == "°" else f"{number} {unit}".rstrip()


def _ledger(part: LedgerPart, tags: Tags) -> Data:
    return {
        "title": part.title,
        "why": part.why,
        "bounds": [_bound(b, part.deciding, tags) for b in part.bounds],
        "symbols": [[_formula(n.symbol), with_unit(n.number, n.unit), n.meaning] for n in part.symbols],
    }


def _bound(bound: Bound, deciding: Bound | None, tags: Tags) -> Data:
    side = "at least" if bound.rule.side == "lower" else "at most"
    kind = "must" if bound.rule.must else "aim"
    return {
        "words": f"{side}, {kind}{', decides' if bound is deciding else ''}",
        "reason": bound.reason,
        "formula": _formula(bound.rule.formula),
        "numbers": _numbers(bound.substituted, formulas.shown(bound.value)),
        "result": f"{formulas.shown(bound.value)} mm",
        "tag": tags.of(bound.rule.source),
    }


def _fit(c: Clearance) -> Data:
    return {
        "title": c.heading,
        "figures": [_figure(words, figure) for words, figure in c.figures],
        "statistical": c.statistical_words,
    }


def _figure(words: str, figure: Figure) -> Data:
    return {
        "words": words,
        "formula": _formula(figure.formula),
        "numbers": _numbers(figure.substituted, figure.result),
        "result": f"{figure.result} mm",
    }


def _check(part: CheckPart, tags: Tags, units: SheetUnits) -> Data:
    check = part.check
    return {
        "title": check.title,
        "governs": part.is_governing,
        "verdict": verdict_of(check),
        "words": check_words(check, units),
        "asked": "at most" if check.rule.sense == "at_most" else "at least",
        "sides": [
            [None if formula == result else _formula(formula), _numbers(numbers, result), with_unit(result, part.unit)]
            for formula, numbers, result in part.sides
        ],
        "symbols": [[_formula(n.symbol), with_unit(n.number, n.unit), n.meaning] for n in part.symbols],
        "tag": tags.of(check.rule.source),
    }
