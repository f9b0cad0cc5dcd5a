"""What somebody typed, read: the text of an address becomes a measurement document.

The keys are the document's dotted names. ``units`` belongs to the viewer: with ``in``, a bare length is in inches and a
bare mass in pounds; a unit that is typed always wins. Empty text is a field not given.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, get_args

from geometry.errors import Problem, UnreadableError
from geometry.kinds import kinds_in
from geometry.measurements import Measurements
from geometry.units import LengthUnit, MassUnit, mm_to_inch, parse_length_mm, parse_mass_kg, parse_number
from server.fields import FIELDS, FormField, fields_of, is_asked
from server.unfinished import judge

Units = LengthUnit
LONGEST_TEXT = 1000
"""Characters in one field: room for sixty diameters."""
LONGEST_KEY_SHOWN = 80
_PLAIN_NUMBER = re.compile(r"-?\d+(\.\d+)?")
_SIGN = re.compile(r"\s*([-−+])")
_LIST_BREAK = re.compile(r"\s*[;\n]\s*|,\s+")
"""A semicolon, a new line, or a comma with a space; a comma between digits is a decimal comma."""
_LIST_ITEM = re.compile(
    r"""(?<!\S)
        (?: \d*\s*[½¼¾⅛⅜⅝⅞]            # 1½
         | \d+(?:[ ]+|-)\d+/\d+        # 1 1/2 or 1-1/2
         | \d+/\d+                     # 3/8
         | \d+(?:[.,]\d*)? | [.,]\d+ ) # 38.1 or 1,5
        (?:\s*[a-z"″”]+)?
        (?!\S)""",
    re.VERBOSE | re.IGNORECASE,
)


@dataclass(frozen=True)
class FormReading:
    """An address as understood: what is known, what is wrong and what is still to be measured."""

    typed: dict[str, str]
    """Every field given, by its dotted key, exactly as typed."""
    echo: dict[str, str]
    """What was understood, where that is not plain from the text: ``1-1/2 in = 38.10 mm``."""
    problems: tuple[Problem, ...]
    missing: tuple[str, ...]
    """Fields without which no pad can be sized, in the order of the document."""
    document: dict[str, Any]
    """What could be read, in mm and kg."""
    measurements: Measurements | None
    """None while something is missing or wrong."""
    units: Units
    units_chosen: bool
    """Whether the viewer chose them, or they are what holds where nobody has."""

    @cached_property
    def foot(self) -> str:
        """The kind of foot that was chosen; the usual one where none was, or none of that name."""
        return kinds_in(self.document)[0]

    @cached_property
    def head(self) -> str:
        """The kind of head, likewise."""
        return kinds_in(self.document)[1]

    @cached_property
    def fields(self) -> Mapping[str, FormField]:
        """Every field that this document can have, in the words of its own foot and head."""
        return fields_of(self.foot, self.head)

    def refused(self, problems: tuple[Problem, ...]) -> "FormReading":
        """The same reading with what only the sizing could find wrong."""
        return replace(self, problems=(*self.problems, *problems), measurements=None)


def read_form(items: Sequence[tuple[str, str]]) -> FormReading:
    """Read the pairs of a query; nothing is raised, and nothing that was typed is lost."""
    reader = _Reader()
    for key, text in items:
        reader.take(key, text)
    document = reader.read()
    measurements, found = judge(document)
    refused = {p.field for p in reader.problems}
    missing = {p.field for p in found if p.value is None} - refused
    problems = (*reader.problems, *(p for p in found if p.value is not None and p.field not in refused))
    return FormReading(
        typed=reader.typed,
        echo=reader.echo,
        problems=tuple(sorted(problems, key=_place)),
        missing=tuple(key for key in FIELDS if key in missing),
        document=document,
        measurements=None if problems or missing else measurements,
        units=reader.units,
        units_chosen=reader.units_chosen,
    )


def _place(problem: Problem) -> int:
    """Where a problem's field stands in the document; what is no field of it comes last."""
    order = list(FIELDS)
    return order.index(problem.field) if problem.field in FIELDS else len(order)


@dataclass(slots=True)
class _Reader:
    """Collects the pairs of one query, then reads each text by the kind of its field."""

    typed: dict[str, str] = field(default_factory=dict)
    echo: dict[str, str] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    units: Units = "mm"
    units_chosen: bool = False
    _seen: set[str] = field(default_factory=set)

    def take(self, key: str, text: str) -> None:
        """Take one pair, or say why it cannot be taken."""
        shown = key if len(key) <= LONGEST_KEY_SHOWN else key[:LONGEST_KEY_SHOWN] + "…"
        if key != "units" and key not in FIELDS:
            self._refuse(shown, text, f"“{shown}” is not a field of this form; check its spelling.")
        elif key in self._seen:
            self._refuse(key, text, f"“{key}” is given twice, and it is not clear which is meant; leave one out.")
        elif key == "units":
            self._take_units(text)
        elif text.strip():
            self.typed[key] = text
        if text.strip():
            self._seen.add(key)

    def _take_units(self, text: str) -> None:
        if text in get_args(Units):
            self.units, self.units_chosen = "in" if text == "in" else "mm", True
        elif text:
            self._refuse("units", text, f"“{text[:40]}” is not a choice of units; write mm or in.")

    def _refuse(self, key: str, text: str, message: str) -> None:
        self.problems.append(Problem(key, text[:LONGEST_TEXT], message))

    def read(self) -> dict[str, Any]:
        """The document as far as its texts can be read."""
        document: dict[str, Any] = {}
        for key, known in FIELDS.items():
            if key not in self.typed or not is_asked(key, document):
                # What another foot or head asks for stays typed, for the way back, and is no part of this document.
                continue
            try:
                value = self._value(known, self.typed[key])
            except UnreadableError as error:
                self._refuse(key, self.typed[key], str(error))
                continue
            group, _, name = key.rpartition(".")
            (document.setdefault(group, {}) if group else document)[name] = value
        return document

    def _value(self, known: FormField, text: str) -> Any:
        """One text by the kind of its field."""
        if len(text) > LONGEST_TEXT:
            raise UnreadableError(f"{known.title} is {len(text)} characters long; at most {LONGEST_TEXT} are read.")
        match known.kind:
            case "length":
                return self._quantity(known, text, self._length_mm, self.units, "mm")
            case "mass":
                pound: MassUnit = "lb" if self.units == "in" else "kg"
                return self._quantity(known, text, lambda t: parse_mass_kg(t, pound), pound, "kg")
            case "lengths":
                return self._lengths_mm(known, text)
            case "number" | "angle" | "count":
                return self._number(known, text)
            case _:
                return text.strip()

    def _length_mm(self, text: str) -> float:
        return parse_length_mm(text, self.units)

    def _quantity(
        self, known: FormField, text: str, parse: Callable[[str], float], bare: LengthUnit | MassUnit, house: str
    ) -> float:
        """A length or a mass; where the field may be negative, a sign is read as well."""
        sign = _SIGN.match(text) if (known.at_least or 0) < 0 else None
        size = parse(text[sign.end() :] if sign else text)
        value = -size if sign and sign[1] != "+" else size
        tidy = " ".join(text.split())
        has_unit = bool(re.search(r"[a-z\"″”]\s*$", tidy, re.IGNORECASE))
        is_plain = bool(_PLAIN_NUMBER.fullmatch(tidy.removesuffix(house).rstrip()))
        if is_plain and has_unit and bare == "in":
            # Typed in millimetres by one who reads inches: the box is labelled in inches, so that is said.
            self.echo[known.key] = f"{tidy} = {mm_to_inch(value):.3f} in"
        elif not (is_plain and (has_unit or bare == house)):
            self.echo[known.key] = f"{tidy if has_unit else f'{tidy} {bare}'} = {_shown(value, house)} {house}"
        return value

    def _number(self, known: FormField, text: str) -> float:
        """A number; its field's own unit may be typed behind it."""
        tidy = " ".join(text.split())
        bare = re.sub(f"{re.escape(known.unit)}$", "", tidy, flags=re.IGNORECASE).rstrip() if known.unit else tidy
        value = parse_number(bare)
        if known.kind == "count" and value != int(value):
            raise UnreadableError(f"{known.title} are counted: “{tidy}” is not a whole number such as 2.")
        if not _PLAIN_NUMBER.fullmatch(bare):
            self.echo[known.key] = f"{tidy} = {value:.6g} {known.unit}".rstrip()
        return int(value) if known.kind == "count" else value

    def _lengths_mm(self, known: FormField, text: str) -> list[float]:
        """A list of lengths; a unit that only the last of them carries is that of all."""
        pieces = [item for part in _LIST_BREAK.split(text.strip()) for item in _items(part)]
        units = [re.search(r"[a-z\"″”]+$", piece, re.IGNORECASE) for piece in pieces]
        shared = f" {units[-1][0]}" if units and units[-1] and not any(units[:-1]) else ""
        try:
            values = [
                self._length_mm(piece if unit else piece + shared) for piece, unit in zip(pieces, units, strict=True)
            ]
        except UnreadableError as error:
            raise UnreadableError(f"{error} Put a semicolon between the lengths.") from None
        if len(values) > 1 or any(units) or self.units != "mm":
            self.echo[known.key] = "; ".join(f"{value:.6g}" for value in values) + " mm"
        return values


def _items(part: str) -> list[str]:
    """The lengths of a list that stand side by side; a part that holds anything else stays whole, to be refused."""
    if not part or _LIST_ITEM.sub("", part).strip():
        return [part] if part else []
    return [match[0].strip() for match in _LIST_ITEM.finditer(part)]


def _shown(value: float, unit: str) -> str:
    """A number for the echo: exact to a thousandth of a millimetre, idle thousandths left out; masses without idle zeros."""
    if unit == "kg":
        return f"{value:.2f}".rstrip("0").rstrip(".")
    return f"{value:.3f}".removesuffix("0")
