"""How one field of the measurement document is described; form, API schema and help are made from this."""

from collections.abc import Mapping
from functools import cache
from typing import Annotated, Any, Literal, cast, get_args

from pydantic import BaseModel, ConfigDict, Field, FiniteFloat, Strict, StringConstraints
from pydantic.config import JsonDict
from pydantic_core import PydanticCustomError

from geometry.errors import Problem

Kind = Literal["length", "mass", "number", "angle", "choice", "count", "lengths", "text"]

Number = Annotated[FiniteFloat, Strict()]
"""Every number of the document: infinities, NaN, texts and truth values are refused."""

ShortText = Annotated[str, StringConstraints(strip_whitespace=True, max_length=80, pattern=r"^[^\x00-\x1f\x7f]*$")]
"""One line of a person's own words."""


class Group(BaseModel):
    """A frozen group of fields that refuses keys it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", str_strip_whitespace=True, validate_default=False)

    @classmethod
    @cache
    def only_where(cls, name: str) -> Mapping[str, list[str]]:
        """The choices of this group that a field depends on, each with the answers that ask for it; empty where it always is."""
        return cls._answers(name, "only_where")

    @classmethod
    @cache
    def needed_where(cls, name: str) -> Mapping[str, list[str]]:
        """The same for the answers with which a field cannot be left out; empty where there are none."""
        return cls._answers(name, "needed_where")

    @classmethod
    def _answers(cls, name: str, kept_as: str) -> Mapping[str, list[str]]:
        """Choices with their answers, as the field's description keeps them."""
        extra = cls.model_fields[name].json_schema_extra
        found = extra.get(kept_as) if isinstance(extra, dict) else None
        return cast(dict[str, list[str]], found or {})

    @classmethod
    def asks_for(cls, name: str, answers: Mapping[str, object]) -> bool:
        """Whether the answers to this group's own choices ask for a field; those not given are the usual ones."""
        return cls._are_given(cls.only_where(name), answers)

    @classmethod
    def needs(cls, name: str, answers: Mapping[str, object]) -> bool:
        """Whether these answers make a field necessary that the document allows to leave out."""
        needed = cls.needed_where(name)
        return bool(needed) and cls._are_given(needed, answers)

    @classmethod
    def _are_given(cls, named: Mapping[str, list[str]], answers: Mapping[str, object]) -> bool:
        given = {choice: answers.get(choice) or cls.model_fields[choice].default for choice in named}
        return all(given[choice] in wanted for choice, wanted in named.items())


def groups_in(annotation: object) -> tuple[type[Group], ...]:
    """The groups that a field of the document may hold: none for a number or a text, several where the kind decides."""
    found = (annotation, *get_args(annotation))
    return tuple(model for model in found if isinstance(model, type) and issubclass(model, Group))


def measured(
    title: str,
    *,
    unit: str,
    ge: float,
    le: float,
    help: str,
    how: str = "",
    assumed: str = "",
    default: Any = ...,
    kind: Kind = "length",
    balloon: bool = False,
    only_where: Mapping[str, tuple[str, ...]] | None = None,
    needed_where: Mapping[str, tuple[str, ...]] | None = None,
    is_asked_elsewhere: bool = False,
) -> Any:
    """Describe a number that somebody measures or knows.

    ``ge`` and ``le`` are the bounds of what can exist, in ``unit``; ``how`` says how to measure it, ``assumed`` what is
    taken when it is left out; ``balloon`` marks a field that the assembled section points at; ``only_where`` names choices of
    the same group and the answers to them without which the field has no use. ``needed_where`` names those with which it
    cannot be left out either; with others it has no use, unless ``is_asked_elsewhere``.
    """
    extra: JsonDict = {"unit": unit, "how": how, "assumed": assumed, "kind": kind, "balloon": balloon}
    only_where = only_where or (None if is_asked_elsewhere else needed_where)
    for told, named in (("only_where", only_where), ("needed_where", needed_where)):
        if named:
            extra[told] = {choice: list(answers) for choice, answers in named.items()}
    return Field(default, title=title, ge=ge, le=le, description=help, json_schema_extra=extra)


def chosen(title: str, *, default: Any, help: str, kind: Kind = "choice", unit: str = "") -> Any:
    """Describe a choice between named answers."""
    return Field(default, title=title, description=help, json_schema_extra={"kind": kind, "unit": unit})


def refuse(group: str, *problems: Problem | None) -> None:
    """Raise what pydantic reports as one error holding several problems; do nothing where there is none."""
    real = [p for p in problems if p]
    if real:
        raise PydanticCustomError(
            "cannot_be",
            "{words}",
            {
                "words": " ".join(p.message for p in real),
                "problems": [(f"{group}.{p.field}".lstrip("."), p.value, p.message) for p in real],
            },
        )


def problem_if(broken: bool, field: str, value: object, message: str) -> Problem | None:
    """A problem with ``field`` where ``broken``, else nothing."""
    return Problem(field, value, message) if broken else None
