"""Every public function of geometry says what it is for; a formula names each argument with its unit, its return, and a source."""

import importlib
import inspect
import re
import tomllib
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.house.test_floors import KERNEL_ROOMS, MODULES

FORMULA_ROOMS = {"bearing", "seam", "stability", "fits", "lift", "machining", "dials", "finish", "materials"}
"""Rooms in which every public function with a number among its arguments is a formula."""


def public_functions() -> Iterator[tuple[str, Callable[..., object]]]:
    for module_name in MODULES:
        if not module_name.startswith("geometry.") or module_name in KERNEL_ROOMS or module_name.endswith("__main__"):
            continue
        module = importlib.import_module(module_name)
        for name, thing in vars(module).items():
            if inspect.isfunction(thing) and thing.__module__ == module_name and not name.startswith("_"):
                yield f"{module_name.removeprefix('geometry.')}.{name}", thing


def is_formula(name: str, function: Callable[..., object]) -> bool:
    numbers = {p.annotation for p in inspect.signature(function).parameters.values()} & {float, int}
    in_room = name.partition(".")[0] in FORMULA_ROOMS and bool(numbers)
    return in_room or ".. math::" in (inspect.getdoc(function) or "")


FUNCTIONS = list(public_functions())
FORMULAS = [(name, function) for name, function in FUNCTIONS if is_formula(name, function)]


def section(doc: str, title: str) -> str:
    match = re.search(rf"{title}\n-+\n(.*?)(?=\n\w[\w ]*\n-{{3,}}|\Z)", doc, re.DOTALL)
    return match[1] if match else ""


@pytest.mark.parametrize(("name", "function"), FUNCTIONS, ids=[n for n, _ in FUNCTIONS])
def test_a_public_function_says_more_than_its_name(name: str, function: Callable[..., object]) -> None:
    first = (inspect.getdoc(function) or "").split("\n")[0]
    said = set(re.findall(r"\w+", first.lower())) - set(name.lower().replace(".", "_").split("_"))
    assert len(said) >= 3, f"{name}: {first!r}"


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
    assert len(FORMULAS) >= 40
    assert len(FUNCTIONS) >= 200


def test_every_example_in_a_docstring_is_run() -> None:
    """Oracle: the folders in which tests are looked for, with docstrings among them."""
    root = Path(__file__).parents[2]
    options = tomllib.loads((root / "pyproject.toml").read_text("utf-8"))["tool"]["pytest"]["ini_options"]
    shown = {
        path.relative_to(root).parts[0]
        for path in root.glob("[!.]*/**/*.py")
        if "\n    >>> " in path.read_text("utf-8")
    }
    assert shown >= {"geometry", "server"}
    assert shown <= set(options["testpaths"])
    assert "--doctest-modules" in options["addopts"].split()
