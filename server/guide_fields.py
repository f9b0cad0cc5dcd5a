"""The guide's entries for the fields of the document, made from the field list and from the checks that rest on each."""

from collections.abc import Iterable, Mapping

from geometry.drawing.section_known import asked_of
from geometry.kinds import FACE_GROUPS, JACKS, USUAL_FOOT, USUAL_HEAD
from geometry.letters import upper_first
from server import shown
from server.choice_words import words_of_answer
from server.field_groups import NEEDED_FOR_LOAD
from server.field_views import LinkView, field_id
from server.fields import FIELDS, FormField, fields_of, group_models
from server.guide_context import FieldGroupPart, FieldPart
from server.guide_uses import checks_on
from server.how_to import picture_for

_HEADINGS: Mapping[str, tuple[str, str]] = {
    "": ("The job", ""),
    "jack": ("Every jack", "Whatever it carries with."),
    "seam": (
        "A welded seam",
        "Under the sill, at the lifting point that the vehicle's maker names. Balloons have these numbers where the jack has a"
        " round cup.",
    ),
    "rail": (
        "A reinforced plate or a frame rail",
        "At the lifting point that the vehicle's maker names; asked where a face of the car lies on a flat cushion. Balloons have"
        " these numbers where the jack has a round cup.",
    ),
    "pocket": (
        "A hole or pocket in the body",
        "At the lifting point that the vehicle's maker names; asked where a plug enters it. Balloons have these numbers where the"
        " jack has a round cup.",
    ),
    "car": ("The car and its load", "From its plate, or from its own balance."),
    "service": ("Where it is used", ""),
    "make": ("Material, machine, and how well you measured", ""),
    "own": (
        "Your own data sheet",
        "Takes the place of the table's values; a sheet of the very rod you buy is worth more.",
    ),
    "fixed": ("Sizes fixed by you", "Every size is chosen for you; one that you fix is judged like the others."),
    "shop": ("Your shop", "For the route card: what is left out is taken as a small shop commonly has it."),
    "as_made": (
        "Readings of the finished part",
        "Judged like the drawing. Up to three sets can be kept beside one another.",
    ),
    "wear": ("Readings in service", "Dated, and judged against limits that are computed from the estimates."),
}
"""By group of the document: its heading and a line below it."""


_JACKS: Mapping[str, tuple[str, str]] = {
    "cup": ("A jack with a round cup", "From the ground up to its rim."),
    "saddle": (
        "A jack whose saddle has teeth or lugs",
        "The land between the teeth first, then the teeth, then the ground.",
    ),
    "plate": ("A jack with a flat plate", "The plate, what stands on it or is sunk into it, then the ground."),
    "post": ("A jack with a bore that takes a post", "The bore and its rim, the pin across it, then the ground."),
}
"""By what the jack carries with: the heading of its own questions and a line below it."""


def field_groups(name: str, units: str) -> tuple[FieldGroupPart, ...]:
    """One group of the document, its own questions in its own order; the jack's by what it carries with."""
    if name == "jack":
        return _jacks(units)
    heading, words = _HEADINGS.get(name, (upper_first(name.replace("_", " ")), ""))
    head = next((head for head, group in FACE_GROUPS.items() if group == name), USUAL_HEAD)
    found = tuple(_field(field, units, head=head) for field in FIELDS.values() if field.group == name)
    return (FieldGroupPart(f"group-{name or 'job'}", heading, words, found),)


def _jacks(units: str) -> tuple[FieldGroupPart, ...]:
    """What is asked of every jack alike, then what is asked of each kind in words of its own."""
    asked = {
        foot: tuple(fields_of(foot)[f"jack.{name}"] for name in model.model_fields) for foot, model in JACKS.items()
    }
    alike = tuple(field for field in asked[USUAL_FOOT] if all(field in fields for fields in asked.values()))
    groups = [FieldGroupPart("group-jack", *_HEADINGS["jack"], tuple(_field(field, units) for field in alike))]
    named = {field.key for field in alike}
    for foot, fields in asked.items():
        own = tuple(
            _field(field, units, foot=foot, ending=f"-{foot}" if field.key in named else "")
            for field in fields
            if field not in alike
        )
        named |= {field.key for field in fields}
        groups.append(FieldGroupPart(f"group-jack-{foot}", *_JACKS[foot], own))
    return tuple(groups)


def groups_asked_once() -> tuple[str, ...]:
    """The groups of the document, one for each kind: readings that can be given three times are told of once."""
    seen: dict[object, str] = {}
    for name, model in group_models().items():
        seen.setdefault(model, name)
    return ("", *seen.values())


def _same_questions(field: FormField) -> tuple[str, ...]:
    """The ids of the same question in groups of the same kind."""
    models = group_models()
    name = field.key.rpartition(".")[2]
    others = (
        g for g, model in models.items() if field.group in models and g != field.group and model == models[field.group]
    )
    return tuple(field_id(f"{group}.{name}") for group in others)


def _field(
    field: FormField, units: str, *, foot: str = USUAL_FOOT, head: str = USUAL_HEAD, ending: str = ""
) -> FieldPart:
    return FieldPart(
        id=field_id(field.key) + ending,
        also_ids=_same_questions(field),
        key=field.key,
        title=field.title,
        balloon=asked_of(foot, head).balloons.get(field.key),
        how=shown.words_in(field.how, units),
        why=shown.words_in(field.help, units),
        without=shown.words_in(_without(field), units),
        answers=tuple(_answers(field)),
        can_be=_can_be(field, units),
        picture=picture_for(field.key, foot),
        checks=tuple(LinkView(rule.title, f"#check-{rule.code}") for rule in checks_on(field.key)),
    )


def _without(field: FormField) -> str:
    """What is done while it is left out."""
    if field.required:
        return "Needed: without it no pad can be sized."
    if field.assumed:
        return f"Left out, this is taken: {field.assumed}."
    source = next((source for source, keys in NEEDED_FOR_LOAD.items() if field.key in keys), None)
    if source is not None:
        return f"Needed where the load comes from {words_of_answer('car.load_source', source)}."
    if field.kind == "choice":
        return f"Left out, this is taken: {words_of_answer(field.key, str(field.default))}."
    return "It can be left out."


def _answers(field: FormField) -> Iterable[str]:
    return (words_of_answer(field.key, answer) for answer in field.choices)


def _answer(field: FormField, answer: str) -> str:
    return words_of_answer(field.key, answer)


def _can_be(field: FormField, units: str) -> str:
    """The bounds of what can exist, with their unit."""
    if field.at_least is None or field.at_most is None:
        return ""
    if field.kind == "length":
        low, high = (shown.length_with_unit(bound, units) for bound in (field.at_least, field.at_most))
        return f"{low} to {high}"
    bounds = f"{shown.plain(field.at_least, 4)} to {shown.plain(field.at_most, 4)} {field.unit}".rstrip()
    return shown.with_customary(bounds, units)
