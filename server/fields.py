"""The fields of the measurement document, read off its models: what the form asks, in which order, and in what kind."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import get_args

from pydantic.fields import FieldInfo

from geometry.materials import MATERIALS
from geometry.measurements import Measurements
from geometry.quantity import Group, Kind


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


def group_models() -> Mapping[str, type[Group]]:
    """The groups of the document by name, in its order."""
    return {
        name: info.annotation
        for name, info in Measurements.model_fields.items()
        if isinstance(info.annotation, type) and issubclass(info.annotation, Group)
    }


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
            found |= {f"{name}.{part}": _field(f"{name}.{part}", i) for part, i in groups[name].model_fields.items()}
        elif info.json_schema_extra:
            found[name] = _field(name, info)
    return found


FIELDS: Mapping[str, FormField] = _fields()
"""Every field that can be typed, by its dotted name, in the order of the document; the document's version is none."""
