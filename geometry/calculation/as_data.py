"""The calculation sheet for programs: plain lists and numbers, ready for JSON."""

from math import isfinite
from typing import Any

from geometry import ENGINE_VERSION, formulas
from geometry.calculation.book import Line
from geometry.calculation.clearances import Clearance, Figure
from geometry.calculation.opening import not_covered_by, scope_of
from geometry.calculation.sheet import PARTS, CalculationSheet, CheckPart, LedgerPart, SymbolNote
from geometry.provenance import Source
from geometry.sensitivity import Sensitivity


def sheet_data(sheet: CalculationSheet) -> dict[str, Any]:
    """The sheet with every formula, the numbers put in and the result; later versions only add keys."""
    design = sheet.design
    return {
        "engine_version": ENGINE_VERSION,
        "design_id": design.design_id,
        "title": design.measurements.title,
        "verdict": design.verdict_words,
        "scope": scope_of(design),
        "not_covered": list(not_covered_by(design)),
        "factors": [{"value": f.value, "place": f.place, **_source(f.source)} for f in sheet.factors],
        "doubtful": [
            {"words": d.words, "value": d.value, "checks": list(d.checks), **_source(d.source)} for d in sheet.doubtful
        ],
        "inputs": [
            {
                "key": i.key,
                "title": i.title,
                "symbol": i.symbol,
                "value": i.words,
                "uncertainty": i.uncertainty,
                "origin": i.origin,
                "assumed": i.remark,
            }
            for i in sheet.inputs
        ],
        "lines": {
            part: [_line(line) for line in sheet.lines(part)] for part in ("inputs", *(part.key for part in PARTS))
        },
        "ledger": [_ledger(part) for part in sheet.ledger],
        "clearances": [_clearance(c) for c in sheet.clearances],
        "checks": [_check(part) for part in sheet.checks],
        "sensitivity": [_sensitivity(s) for s in sheet.sensitivities],
        "sources": [{**_source(s.source), "uses": list(s.uses)} for s in sheet.sources],
        "cautions": [{"signal": c.signal, "text": c.text} for c in design.cautions],
    }


def _number(value: float | None) -> float | None:
    return value if value is not None and isfinite(value) else None


def _source(source: Source | None) -> dict[str, str]:
    return {"source": source.text, "mark": source.mark.value} if source else {"source": "", "mark": ""}


def _line(line: Line) -> dict[str, Any]:
    return {
        "symbol": line.symbol,
        "meaning": line.meaning,
        "value": _number(line.value),
        "unit": line.unit,
        "formula": formulas.pretty(line.formula) if line.formula else "",
        "substituted": line.substituted,
        "result": line.result,
        "remark": line.remark,
        **_source(line.source),
    }


def _symbols(notes: tuple[SymbolNote, ...]) -> list[dict[str, str]]:
    return [{"symbol": n.symbol, "number": n.number, "unit": n.unit, "meaning": n.meaning} for n in notes]


def _ledger(part: LedgerPart) -> dict[str, Any]:
    return {
        "dimension": part.dimension,
        "value": part.entry.value_mm,
        "why": part.why,
        "symbols": _symbols(part.symbols),
        "bounds": [
            {
                "side": b.rule.side,
                "must": b.rule.must,
                "decides": b is part.deciding,
                "reason": b.reason,
                "formula": formulas.pretty(b.rule.formula),
                "substituted": b.substituted,
                "result": formulas.shown(b.value),
                **_source(b.rule.source),
            }
            for b in part.bounds
        ],
    }


def _figure(figure: Figure) -> dict[str, str]:
    return {"formula": formulas.pretty(figure.formula), "substituted": figure.substituted, "result": figure.result}


def _clearance(c: Clearance) -> dict[str, Any]:
    least, most = c.statistical
    return {
        "title": c.title,
        "extreme": c.extreme,
        "nominal": _figure(c.nominal),
        "least": _figure(c.least),
        "most": _figure(c.most),
        "spread": _figure(c.spread),
        "statistical_least": least,
        "statistical_most": most,
    }


def _check(part: CheckPart) -> dict[str, Any]:
    check = part.check
    return {
        "code": check.code,
        "title": check.title,
        "verdict": check.verdict,
        "words": check.words,
        "formula": check.formula,
        "substituted": check.substituted,
        "unit": check.rule.unit,
        "utilisation": _number(check.utilisation),
        "margin": _number(part.margin),
        "governing": part.is_governing,
        "symbols": _symbols(part.symbols),
        **_source(check.rule.source),
    }


def _sensitivity(found: Sensitivity) -> dict[str, Any]:
    return {
        "code": found.check.code,
        "words": found.words,
        "weaker_utilisation": _number(found.weaker_utilisation),
        "influences": [
            {
                "key": i.key,
                "title": i.title,
                "error": i.error,
                "unit": i.unit,
                "before": _number(i.before),
                "after": _number(i.after),
            }
            for i in found.influences
        ],
    }
