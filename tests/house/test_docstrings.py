"""Every public function of the formula rooms documents each of its arguments with a unit, its return, and a source."""

import importlib
import inspect
import re
from collections.abc import Callable

import pytest

FORMULA_ROOMS = (
    "bearing",
    "seam",
    "stability",
    "fits",
    "lift",
    "machining",
    "finish",
    "materials",
)


def public_formulas() -> list[tuple[str, Callable[..., object]]]:
    found = []
    for room in FORMULA_ROOMS:
        module = importlib.import_module(f"geometry.{room}")
        for name, thing in vars(module).items():
            if inspect.isfunction(thing) and thing.__module__ == module.__name__ and not name.startswith("_"):
                found.append((f"{room}.{name}", thing))
    return found


FORMULAS = [
    (name, function)
    for name, function in public_formulas()
    if {p.annotation for p in inspect.signature(function).parameters.values()} & {float, int}
]


def section(doc: str, title: str) -> str:
    match = re.search(rf"{title}\n-+\n(.*?)(?=\n\w[\w ]*\n-{{3,}}|\Z)", doc, re.DOTALL)
    return match[1] if match else ""


@pytest.mark.parametrize(("name", "function"), FORMULAS, ids=[n for n, _ in FORMULAS])
def test_a_formula_names_every_argument_with_its_unit(name: str, function: Callable[..., object]) -> None:
    parameters = section(inspect.getdoc(function) or "", "Parameters")
    documented = {n.strip() for line in re.findall(r"^(\S.*?) : ", parameters, re.MULTILINE) for n in line.split(",")}
    assert documented == set(inspect.signature(function).parameters), name
    for body in re.findall(r"^\S.*? : (?:float|int).*\n((?:    .*\n?)+)", parameters, re.MULTILINE):
        assert re.search(r"\[.+\]", body), f"{name}: no unit in {body.strip()!r}"


@pytest.mark.parametrize(("name", "function"), FORMULAS, ids=[n for n, _ in FORMULAS])
def test_a_formula_says_what_it_returns_where_it_comes_from_and_shows_a_run(
    name: str, function: Callable[..., object]
) -> None:
    doc = inspect.getdoc(function) or ""
    assert re.search(r"\[.+\]", section(doc, "Returns")), f"{name} returns something without a unit"
    assert len(section(doc, "References").strip()) > 5, f"{name} has no source"
    assert ">>>" in doc, f"{name} has no example"


def test_there_are_formulas_to_walk() -> None:
    assert len(FORMULAS) >= 25
