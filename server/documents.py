"""Measurement documents as programs send them: strict JSON, and a query that holds a whole document."""

import json
from collections import Counter
from collections.abc import Mapping
from math import inf
from typing import Any
from urllib.parse import parse_qsl

from starlette.requests import Request

from geometry.errors import BadMeasurementsError, Problem
from geometry.measurements import Measurements, read_measurements
from server.fields import FIELDS, group_models, models_for
from server.forms import FormReading, Units, read_form
from server.links import CONFIRM_KEY, CONFIRM_NOT_FIT
from server.problems import NOT_JSON, TOO_LARGE, UNREADABLE, AnsweredError

LONGEST_QUERY = 16384
_MOST_PAIRS = 200
_MOST_DIGITS = 40
_NUMBER_KINDS = {"length", "mass", "number", "angle", "count"}

Pairs = list[tuple[str, str]]


def query_pairs(request: Request) -> Pairs:
    """The pairs of an address, in their order; an address that is too long to be ours is refused."""
    query = request.url.query
    if len(query) > LONGEST_QUERY:
        raise AnsweredError(TOO_LARGE, f"The address holds {len(query)} characters; at most {LONGEST_QUERY} are read.")
    try:
        return parse_qsl(query, keep_blank_values=True, max_num_fields=_MOST_PAIRS)
    except ValueError:
        raise AnsweredError(TOO_LARGE, f"The address holds more than {_MOST_PAIRS} fields.") from None


def split_confirmation(pairs: Pairs) -> tuple[Pairs, bool]:
    """The pairs without the confirmation, and whether a design whose estimate fails is wanted nevertheless."""
    said = [text for key, text in pairs if key == CONFIRM_KEY]
    wrong = [text for text in said if text != CONFIRM_NOT_FIT]
    if wrong:
        message = f"“{wrong[0][:40]}” confirms nothing; the only thing to confirm is {CONFIRM_NOT_FIT}."
        raise BadMeasurementsError((Problem(CONFIRM_KEY, wrong[0], message),))
    return [pair for pair in pairs if pair[0] != CONFIRM_KEY], bool(said)


def read_whole_form(pairs: Pairs) -> tuple[FormReading, Measurements]:
    """A form that must be complete.

    Raises BadMeasurementsError naming each field that is wrong or missing.
    """
    form = read_form(pairs)
    if form.measurements is None:
        missing = [Problem(key, None, _still_to_measure(key)) for key in form.missing]
        raise BadMeasurementsError((*form.problems, *missing))
    return form, form.measurements


def _still_to_measure(key: str) -> str:
    return f"{FIELDS[key].title} is still to be measured. {FIELDS[key].how}".rstrip()


def chosen_units(pairs: Pairs) -> Units | None:
    """The viewer's units in an address whose document stands in the body; a field of the document has no place there."""
    strangers = [(key, text) for key, text in pairs if key != "units"]
    form = read_form([pair for pair in pairs if pair[0] == "units"])
    problems = [
        Problem(k[:80], t[:80], f"“{k[:80]}” is not a field of this address; it belongs in the body.")
        for k, t in strangers
    ]
    if problems or form.problems:
        raise BadMeasurementsError((*form.problems, *problems))
    return form.units if form.units_chosen else None


async def read_document(request: Request) -> Measurements:
    """The document in the body of a request, read strictly.

    Raises AnsweredError where it is no JSON object, BadMeasurementsError where its fields cannot be.
    """
    kind = request.headers.get("content-type", "").partition(";")[0].strip().lower()
    if not (kind == "application/json" or (kind.startswith("application/") and kind.endswith("+json"))):
        raise AnsweredError(NOT_JSON, f"The body is said to be “{kind[:60]}”. {NOT_JSON.meaning}")
    document = parse_json(await request.body())
    wrong = (*_not_groups(document), *_not_numbers(document))
    if wrong:
        raise BadMeasurementsError(wrong)
    # Without its groups, a document would be told to have three fields too few instead of all that stand in them.
    return read_measurements({**{name: {} for name in models_for(document)}, **document})


def parse_json(body: bytes) -> dict[str, Any]:
    """One JSON object; NaN, numbers without end and repeated names do not pass for what they are not."""
    try:
        document = json.loads(body.decode("utf-8"), object_pairs_hook=_object, parse_int=_whole)
    except RecursionError:
        raise AnsweredError(UNREADABLE, "The document is nested too deeply; it has two levels.") from None
    except UnicodeDecodeError as error:
        raise AnsweredError(UNREADABLE, f"The body is not UTF-8: byte {error.start} cannot be read.") from None
    except ValueError as error:
        raise AnsweredError(UNREADABLE, f"The body is not JSON: {error}.") from None
    if not isinstance(document, dict):
        raise AnsweredError(UNREADABLE, "The body must be one JSON object, with the groups “jack”, “seam” and “car”.")
    _require_characters(document)
    return document


def _require_characters(document: dict[str, Any]) -> None:
    """Refuse half a character, which JSON can spell and no text can hold."""
    try:
        json.dumps(document, ensure_ascii=False).encode("utf-8")
    except UnicodeEncodeError:
        raise AnsweredError(UNREADABLE, "The document holds half a character (a lone surrogate).") from None


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        twice = next(name for name, times in Counter(name for name, _ in pairs).items() if times > 1)
        raise ValueError(f"“{twice[:80]}” is given twice")
    return found


def _whole(digits: str) -> float:
    """A whole number; one beyond all measure is infinite, and refused as such beside its field."""
    return int(digits) if len(digits) <= _MOST_DIGITS else inf


def _not_groups(document: Mapping[str, Any]) -> list[Problem]:
    """Groups that are anything but an object."""
    return [
        Problem(name, document[name], f"“{name}” must be an object with the fields of that group.")
        for name in group_models()
        if name in document and not isinstance(document[name], Mapping)
    ]


def _not_numbers(document: Mapping[str, Any]) -> list[Problem]:
    """Numbers given as texts or as true and false, which must not pass for lengths."""
    problems = []
    for key, field in FIELDS.items():
        group, _, name = key.rpartition(".")
        holder = document.get(group) if group else document
        value = holder.get(name) if isinstance(holder, Mapping) else None
        parts = value if isinstance(value, list) and field.kind == "lengths" else [value]
        is_number = field.kind in _NUMBER_KINDS or field.kind == "lengths"
        if is_number and any(isinstance(part, str | bool) for part in parts):
            unit = f" in {field.unit}" if field.unit else ""
            problems.append(Problem(key, value, f"{field.title} must be a number{unit}, not a text or a truth value."))
    return problems
