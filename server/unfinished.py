"""What can be said about a document before it is complete: early words beside a field instead of late ones."""

import re
from collections.abc import Mapping
from dataclasses import replace
from math import nan
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic_core import PydanticCustomError

from geometry.errors import BadMeasurementsError, Problem
from geometry.measurements import Measurements
from geometry.refusals import problems_of
from server.fields import FIELDS, models_for

Document = Mapping[str, Any]


def judge(document: Document) -> tuple[Measurements | None, tuple[Problem, ...]]:
    """The measurements, or what is wrong and what is missing; a problem without a value is a field not yet given."""
    groups = models_for(document)
    filled = {**{name: {} for name in groups}, **document}
    try:
        return Measurements.model_validate(filled), ()
    except ValidationError as error:
        found = problems_of(error.errors(), Measurements)
    wrong = {p.field for p in found}
    parts = {name: _partly(model, filled[name], name, wrong) for name, model in groups.items()}
    problems = list(found)
    for part in (*parts.values(), Measurements.model_construct(**{**document, **parts})):
        problems += [p for p in _of_rules(part) if p.field not in wrong]
    return None, tuple(_in_own_words(problem, groups) for problem in problems)


def _in_own_words(problem: Problem, groups: Mapping[str, type[BaseModel]]) -> Problem:
    """A problem with the title that its field has on this kind of jack or car, where another kind's stands before it."""
    group, _, name = problem.field.partition(".")
    usual = FIELDS[problem.field].title if problem.field in FIELDS else ""
    own = groups[group].model_fields[name].title if group in groups and name in groups[group].model_fields else None
    if not usual or not own or not problem.message.startswith(usual):
        return problem
    return replace(problem, message=own + problem.message.removeprefix(usual))


def _partly(model: type[BaseModel], values: Document, group: str, wrong: set[str]) -> BaseModel:
    """A group with what is known of it; a number that is wrong or missing is NaN, of which no comparison is true."""
    known: dict[str, Any] = {name: value for name, value in values.items() if name in model.model_fields}
    try:
        # Only a whole group converts its values (a list to a tuple, for instance).
        return model.model_validate(known)
    except ValidationError:
        unknown = {
            name: nan for name in model.model_fields if f"{group}.{name}" in wrong and _is_number(f"{group}.{name}")
        }
        return model.model_construct(**{**known, **unknown})


def _is_number(key: str) -> bool:
    return FIELDS[key].kind in {"length", "mass", "number", "angle", "count"}


def _of_rules(part: BaseModel) -> tuple[Problem, ...]:
    """What the rules between the fields of a group refuse, as far as they can be asked."""
    problems: list[Problem] = []
    for rule in type(part).__pydantic_decorators__.model_validators.values():
        try:
            rule.func(part)
        except PydanticCustomError as error:
            listed = (error.context or {}).get("problems", ())
            problems += [Problem(*entry) for entry in listed]
        except (BadMeasurementsError, TypeError, KeyError, AttributeError):
            # A choice that is not one of the answers leaves its rules without a subject.
            continue
    return tuple(p for p in problems if not re.search(r"\bnan\b", p.message))
