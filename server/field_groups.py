"""The questions of the sheet in the groups in which it asks them, each group with its answers in one line."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache

from geometry.design import Design
from geometry.letters import lower_first
from server import shown
from server.field_views import FieldView
from server.fields import FIELDS, models_of
from server.forms import FormReading
from server.stand import MASSES, Stand, answers_by_group, stand_for, stand_of

_STATICS = (
    "car.front_share",
    "car.wheelbase_mm",
    "car.track_mm",
    "car.point_behind_front_axle_mm",
    "car.point_from_centreline_mm",
    "car.cg_offset_mm",
    "car.ride_frequency_hz",
)
_USE = ("service.temperature_low_c", "service.temperature_high_c", "service.wetness", "service.ground")
_MAKE = (
    "make.material",
    "make.process",
    "make.body",
    "make.slots",
    "make.step",
    "make.stock_diameters_mm",
    "make.cutter_diameters_mm",
    "make.measured_with",
    "make.uncertainty_mm",
    "make.ground_uncertainty_mm",
)
NEEDED_FOR_LOAD: Mapping[str, tuple[str, ...]] = {
    "gross_mass": ("car.gross_mass_kg",),
    "stated": ("car.load_kg",),
    "statics": ("car.gross_mass_kg", *_STATICS[:5]),
}
_ASKED_ONLY_WHERE_TYPED = ("service.hold",)
"""A choice with one answer on this sheet; shown where an address gives another."""


@dataclass(frozen=True, slots=True)
class FieldGroup:
    """A few questions that belong together, and in one line what was answered."""

    name: str
    heading: str
    line: str
    fields: tuple[FieldView, ...]
    is_open: bool
    back: str = ""
    next: str = ""
    next_words: str = ""
    """The way to the groups before and after, where they are walked through one at a time."""


def needed_in(reading: FormReading) -> tuple[str, ...]:
    """Fields that the answers given so far make necessary, though the document allows to leave them out."""
    load = NEEDED_FOR_LOAD.get(reading.typed.get("car.load_source", "gross_mass"), ())
    models, answers = models_of(reading.foot, reading.head), answers_by_group(reading.typed)
    chosen = (
        f"{group}.{name}"
        for group, name in _needed_by_choice(reading.foot, reading.head)
        if models[group].needs(name, answers.get(group, {}))
    )
    return (*load, *chosen)


@cache
def _needed_by_choice(foot: str, head: str) -> tuple[tuple[str, str], ...]:
    """The fields that some answer makes necessary, each with its group."""
    return tuple(
        (group, name)
        for group, model in models_of(foot, head).items()
        for name in model.model_fields
        if model.needed_where(name)
    )


Ask = Callable[..., tuple[FieldView, ...]]
"""Turns keys into questions."""


def more(name: str, heading: str, fields: tuple[FieldView, ...]) -> FieldGroup:
    """Optional questions, folded until one of them has a problem."""
    given = sum(1 for field in fields if field.text)
    line = f"{given} of {len(fields)} given" if given else f"{len(fields)} can be left out"
    return FieldGroup(name, heading, line, fields, any(field.problem or field.is_open for field in fields))


def groups(reading: FormReading, design: Design | None, ask: Ask) -> tuple[FieldGroup, ...]:
    """The load, where the pad is used, how it is made."""
    source = reading.typed.get("car.load_source", "gross_mass")
    load_keys = ["car.load_source"]
    load_keys += ["car.load_kg"] if source == "stated" or "car.load_kg" in reading.typed else []
    load_keys += [key for key in _STATICS if source == "statics" or key in reading.typed]
    extra = tuple(key for key in _ASKED_ONLY_WHERE_TYPED if key in reading.typed)
    load, use, make = ask(*load_keys, "car.lift_needed_mm"), ask(*_USE, *extra), ask(*_MAKE)
    fixed = ask(*(key for key in FIELDS if key.startswith("fixed.") and key in reading.typed))
    found = [
        _group("load", "The load", _load_line(load, design, reading.units), load),
        _group("use", "Where it is used", _use_line(use), use),
        _group("make", "How it is made", _make_line(make), make),
    ]
    if fixed:
        found.append(_group("fixed", "Sizes fixed by you", _fixed_line(fixed), fixed))
    # What another foot or head asks for is carried along unseen, for the way back. What another answer asks for can contradict
    # what is asked here, so it stands where it can be read and emptied.
    asked, every = keys_on_sheet(found, stand_for(reading)), stand_of(reading.foot, reading.head).keys
    others = [key for key in reading.typed if key not in asked and key in reading.fields]
    for name, heading, line, keys in (
        (
            "unused",
            "Kept, and not used",
            "what another answer under “Jack and car” asks for",
            [k for k in others if k in every],
        ),
        ("others", "Also given", "what this address says besides", [k for k in others if k not in every]),
    ):
        if keys:
            found.append(_group(name, heading, line, ask(*keys)))
    return tuple(_in_line(found))


def keys_on_sheet(found: Iterable[FieldGroup], stand: Stand) -> frozenset[str]:
    """Every field that the sheet asks for: what always stands there, and what the given groups hold."""
    in_groups = (field.key for group in found for field in group.fields)
    return frozenset(("title", *stand.keys, *MASSES, *in_groups))


def _in_line(found: list[FieldGroup]) -> Iterator[FieldGroup]:
    """The groups, each with the way to the one before and the one after."""
    for index, group in enumerate(found):
        is_last = index == len(found) - 1
        yield replace(
            group,
            back=f"#step-{found[index - 1].name if index else 'car'}",
            next="#outcome" if is_last else f"#step-{found[index + 1].name}",
            next_words="Done: see the outcome" if is_last else f"Next: {lower_first(found[index + 1].heading)}",
        )


def _group(name: str, heading: str, line: str, fields: tuple[FieldView, ...]) -> FieldGroup:
    """Folded, unless something in it is wrong or still missing."""
    return FieldGroup(name, heading, line, fields, any(field.problem or field.is_open for field in fields))


def _fixed_line(fields: tuple[FieldView, ...]) -> str:
    return ", ".join(f"{lower_first(field.title)} {field.text}" for field in fields) + "; empty a box to let go"


def _load_line(fields: tuple[FieldView, ...], design: Design | None, units: str) -> str:
    answers = {field.key: field for field in fields}
    lift = answers["car.lift_needed_mm"]
    wanted = f"{lift.text} {lift.unit}" if lift.text else f"{lift.assumed} assumed"
    much = f"; {shown.force(design.conditions.force_n, units)}" if design else ""
    return f"from {answers['car.load_source'].chosen_words}{much}; lift {wanted}"


def _use_line(fields: tuple[FieldView, ...]) -> str:
    low, high, wetness, ground = fields[:4]
    # Typed with a hyphen, told with the sign of a number below zero.
    cold, hot = ((f.text or f.assumed.removesuffix("°C").strip()).replace("-", "−") for f in (low, high))
    return f"{cold} to {hot} °C, {wetness.chosen_words}, {ground.chosen_words}"


def _make_line(fields: tuple[FieldView, ...]) -> str:
    answers = {field.key: field.chosen_words for field in fields if field.is_choice}
    return (
        f"{answers['make.material']}, {answers['make.process']}, rounded {answers['make.step']},"
        f" measured with {answers['make.measured_with']}"
    )
