"""The fields of the measurement document, read off its models: what the form asks, in which order, and in what kind."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any, get_args

from pydantic.fields import FieldInfo

from geometry.kinds import FACE_GROUPS, USUAL_FOOT, USUAL_HEAD, face_group, jack_model, kinds_in
from geometry.materials import MATERIALS
from geometry.measurements import Measurements
from geometry.quantity import Group, Kind, groups_in


@dataclass(frozen=True, slots=True)
class FormField:
    """One field of the document, with all that a form or a description of an address says about it."""

    key: str
    """The dotted name, such as ``jack.cup_bore_mm``."""
    title: str
    kind: Kind
    unit: str
    help: str
    how: str
    """How to measure it; empty where there is nothing to measure."""
    assumed: str
    """What is taken when it is left out."""
    balloon: bool
    """Whether the assembled section points at it."""
    required: bool
    """Whether no pad can be sized without it, whatever else is given."""
    default: object
    choices: tuple[str, ...]
    """The answers of a choice; empty for every other kind."""
    at_least: float | None
    at_most: float | None

    @property
    def group(self) -> str:
        """The group that it belongs to; empty for the document itself."""
        return self.key.rpartition(".")[0]


@cache
def group_models() -> Mapping[str, tuple[type[Group], ...]]:
    """The groups of the document by name, in its order; several models where the kind of foot decides which one it is."""
    found = {name: groups_in(info.annotation) for name, info in Measurements.model_fields.items()}
    return {name: models for name, models in found.items() if models}


@cache
def models_of(foot: str, head: str) -> Mapping[str, type[Group]]:
    """The groups that a document with this foot and head asks for, each with its own model."""
    face, jack = face_group(head), jack_model(foot)
    return {
        name: jack if jack in models else models[0]
        for name, models in group_models().items()
        if name not in FACE_GROUPS.values() or name == face
    }


def models_for(document: Mapping[str, Any]) -> Mapping[str, type[Group]]:
    """The groups that a document with its foot and head asks for."""
    return models_of(*kinds_in(document))


def is_asked(key: str, document: Mapping[str, Any]) -> bool:
    """Whether a document with its foot and head has a field of this dotted name."""
    return key in fields_of(*kinds_in(document))


def _field(key: str, info: FieldInfo) -> FormField:
    extra = info.json_schema_extra if isinstance(info.json_schema_extra, dict) else {}
    kind: Kind = extra["kind"]  # type: ignore[assignment]  # the models describe every field by ``measured`` or ``chosen``
    choices = tuple(MATERIALS) if key == "make.material" else tuple(str(answer) for answer in get_args(info.annotation))
    bounds = {name: getattr(m, name) for m in info.metadata for name in ("ge", "le") if hasattr(m, name)}
    return FormField(
        key=key,
        title=info.title or key,
        kind=kind,
        unit=str(extra.get("unit", "")),
        help=info.description or "",
        how=str(extra.get("how", "")),
        assumed=str(extra.get("assumed", "")),
        balloon=bool(extra.get("balloon", False)),
        required=info.is_required(),
        default=None if info.is_required() else info.default,
        choices=choices if kind == "choice" else (),
        at_least=bounds.get("ge"),
        at_most=bounds.get("le"),
    )


def _fields() -> Mapping[str, FormField]:
    groups = group_models()
    found: dict[str, FormField] = {}
    for name, info in Measurements.model_fields.items():
        if name in groups:
            for model in groups[name]:
                parts = {f"{name}.{part}": _field(f"{name}.{part}", i) for part, i in model.model_fields.items()}
                found |= {key: field for key, field in parts.items() if key not in found}
        elif info.json_schema_extra:
            found[name] = _field(name, info)
    return found


@cache
def fields_of(foot: str = USUAL_FOOT, head: str = USUAL_HEAD) -> Mapping[str, FormField]:
    """Every field that a document with this foot and head has, in the words of these kinds."""
    models = models_of(foot, head)
    found: dict[str, FormField] = {}
    for key, field in FIELDS.items():
        if not field.group:
            found[key] = field
        elif field.group in models and key not in found:
            # A group stands where its first field does, its fields in the order of their own model.
            parts = models[field.group].model_fields.items()
            found |= {f"{field.group}.{name}": _field(f"{field.group}.{name}", info) for name, info in parts}
    return MappingProxyType(found)


FIELDS: Mapping[str, FormField] = _fields()
"""Every field that can be typed, by its dotted name, in the order of the document; the document's version is none."""
