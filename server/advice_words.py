"""Advice in the reader's units: what a computed change asks for, and how wrong a measurement is taken to be."""

from geometry.letters import lower_first
from geometry.materials import MATERIALS
from geometry.remedies import Remedy
from geometry.sensitivity import Influence, Sensitivity
from geometry.units import kg_to_pound
from server import shown
from server.fields import FIELDS


def amount(key: str, value: float, units: str) -> str:
    """A number of a field with its unit.

    >>> amount("seam.height_mm", 25.4, "in"), amount("car.gross_mass_kg", 80.0, "in"), amount("jack.saddle_tilt_deg", 1.0, "in")
    ('1 in', '176 lb', '1 °')
    """
    field = FIELDS[key]
    if field.kind == "length":
        return shown.length_with_unit(value, units)
    if field.kind == "mass" and units == "in":
        return f"{shown.plain(kg_to_pound(value), 0)} lb"
    return f"{shown.plain(value, 4)} {field.unit}".rstrip()


def remedy_words(remedy: Remedy, units: str, *, then: str = "this no longer fails") -> str:
    """What a computed change asks for, in a sentence; ``then`` says what another measurement would bring about."""
    if remedy.kind == "material":
        return f"Make it of {MATERIALS[remedy.changes[remedy.key]].name}."
    title = lower_first(FIELDS[remedy.key].title)
    after = amount(remedy.key, remedy.after or 0.0, units)
    now = amount(remedy.key, remedy.before or 0.0, units)
    match remedy.kind:
        case "let_go":
            return f"Let the {title} go; {f'it becomes {after}' if remedy.after else 'the pad has none then'}."
        case "size":
            return f"Make the {title} {after} instead of {now}."
        case "measure" if remedy.is_assumed:
            return (
                f"Measure the {title}: {now} is assumed, because nobody measured it; only if it is {after}, {then}."
                " Never type a number that was not measured."
            )
        case "measure":
            return (
                f"Was the {title} read right? It stands at {now}; only if a new measurement gave {after}, {then}."
                " Never type a number that was not measured."
            )


def error_words(influence: Influence, units: str) -> str:
    """How wrong a measurement is taken to be."""
    return amount(influence.key, influence.error, units)


def sensitivity_words(found: Sensitivity, units: str) -> str:
    """What to measure most carefully for one check."""
    return found.told(lambda influence: error_words(influence, units))
