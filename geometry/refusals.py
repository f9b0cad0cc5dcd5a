"""What a document is refused for, in plain words: validation errors with the titles and units of their fields."""

from pydantic_core import ErrorDetails

from geometry.errors import Problem
from geometry.quantity import Group, groups_in

_LONGEST_INTEGER = 10**12
_MOST_DIGITS = 9
"""Longer numbers are two that ran together, and are told by their length."""


def problems_of(errors: list[ErrorDetails], document: type[Group]) -> tuple[Problem, ...]:
    """Validation errors in plain words, each with the dotted key of its field."""
    problems: list[Problem] = []
    for error in errors:
        listed = (error.get("ctx") or {}).get("problems")
        if listed:
            problems += [Problem(*entry) for entry in listed]
        else:
            problems.append(_problem(error, document))
    return tuple(problems)


def _problem(error: ErrorDetails, document: type[Group]) -> Problem:
    field = ".".join(str(part) for part in error["loc"])
    title, unit = _title_and_unit(error["loc"], document)
    ctx = error.get("ctx") or {}
    value = error["input"]
    shown = _shown(value, unit)
    match error["type"]:
        case "missing":
            return Problem(field, None, f"{title} is still to be measured.")
        case "extra_forbidden":
            return Problem(field, value, f"“{field[:80]}” is not a field of this document; check its spelling.")
        case "greater_than_equal" | "less_than_equal":
            bound, word = (ctx.get("ge"), "at least") if "ge" in ctx else (ctx.get("le"), "at most")
            return Problem(
                field,
                value,
                f"{title} {shown} cannot be right ({word} {bound:g} {unit}). Measure it again.".replace(" )", ")"),
            )
        case "finite_number" | "float_type" | "float_parsing" | "int_type" | "int_parsing" | "int_from_float":
            return Problem(field, value, f"{title} must be a number; {shown} is not one that can be used.")
        case "literal_error":
            return Problem(field, value, f"{title} must be {ctx.get('expected', 'one of the choices')}, not {shown}.")
        case "value_error":
            return Problem(field, value, str(ctx.get("error", error["msg"])))
        case _:
            return Problem(field, value, f"{title}: {error['msg']}.")


def _shown(value: object, unit: str) -> str:
    """A value that was given, short enough to stand in a sentence."""
    if isinstance(value, float) or (isinstance(value, int) and abs(value) < _LONGEST_INTEGER):
        return _plainly(value, unit)
    return "that" if isinstance(value, int) else f"“{str(value)[:40]}”"


def _plainly(value: float, unit: str) -> str:
    """A number with its unit as people write it, without a power of ten.

    >>> _plainly(12.5, "mm"), _plainly(1234567.0, "kg"), _plainly(1e-7, ""), _plainly(1.1e23, "mm")
    ('12.5 mm', '1234567 kg', '0.0000001', 'of 24 digits')
    """
    text = f"{value:g}"
    if "e" in text:
        whole = f"{abs(value):.0f}"
        if len(whole) > _MOST_DIGITS:
            return f"of {len(whole)} digits"
        text = f"{value:.0f}" if abs(value) >= 1 else f"{value:.12f}".rstrip("0").rstrip(".")
    return f"{text} {unit}".strip()


def _title_and_unit(loc: tuple[int | str, ...], document: type[Group]) -> tuple[str, str]:
    """Title and unit of the field at ``loc``, or its key where there is none."""
    groups: tuple[type[Group], ...] = (document,)
    title, unit = str(loc[-1]) if loc else "The document", ""
    for part in loc:
        info = next((g.model_fields[str(part)] for g in groups if str(part) in g.model_fields), None)
        if info is None:
            break
        title = info.title or str(part)
        extra = info.json_schema_extra
        unit = str(extra.get("unit", "")) if isinstance(extra, dict) else ""
        groups = groups_in(info.annotation)
    return title, unit
