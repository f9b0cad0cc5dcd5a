"""Imports go down or stay on their floor, never up, and never in a circle (DEVELOPERS.md, the map)."""

import ast
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

from geometry.kinds import FACES, JACKS

ROOT = Path(__file__).parents[2]
FLOORS: dict[str, int] = {
    "geometry": 0,
    "geometry.units": 0,
    "geometry.errors": 0,
    "geometry.provenance": 0,
    "geometry.formulas": 0,
    "geometry.letters": 0,
    "geometry.told": 0,
    "geometry.quantity": 1,
    "geometry.series": 1,
    "geometry.materials": 1,
    "geometry.own_values": 1,
    "geometry.feet": 1,
    "geometry.feet.facts": 1,
    "geometry.feet.jack": 1,
    "geometry.heads": 1,
    "geometry.heads.facts": 1,
    "geometry.heads.car": 1,
    "geometry.own_terms": 0,
    **{f"geometry.feet.{kind}{room}": 1 for kind in JACKS for room in ("", ".fields")},
    "geometry.feet.plate.terms": 1,
    "geometry.feet.saddle.terms": 1,
    **{f"geometry.heads.{kind}{room}": 1 for kind in FACES for room in ("", ".fields")},
    "geometry.kinds": 1,
    "geometry.document": 1,
    "geometry.document.as_made": 1,
    "geometry.document.car": 1,
    "geometry.document.fixed": 1,
    "geometry.document.make": 1,
    "geometry.document.own": 1,
    "geometry.document.service": 1,
    "geometry.document.shop": 1,
    "geometry.document.wear": 1,
    "geometry.refusals": 1,
    "geometry.measurements": 1,
    "geometry.following_sizes": 1,
    "geometry.pad": 1,
    "geometry.buildable": 1,
    "geometry.model_label": 1,
    "geometry.design": 4,
    "geometry.standing": 4,
    "geometry.sheet_facts": 4,
    "geometry.variants": 4,
    "geometry.comparison": 4,
    "geometry.sensitivity": 4,
    "geometry.remedies": 4,
    "geometry.__main__": 5,
    **dict.fromkeys(
        (
            "geometry.ledger",
            "geometry.choosing",
            "geometry.sizing",
            "geometry.checks",
            "geometry.cautions",
            "geometry.case_cautions",
            "geometry.route",
            "geometry.inspection",
            "geometry.readings",
            "geometry.as_made",
            "geometry.service_life",
            "geometry.worn",
            "geometry.solid",
            "geometry.exports",
            "geometry.mesh",
            "geometry.threemf",
            "geometry.model_process",
        ),
        3,
    ),
}
"""Every room that is not on floor 2; drawing and making are on 3, the calculation on 4, the packet on 5, the web on 6."""
KERNEL_ROOMS = {"geometry.solid", "geometry.exports"}
KERNEL = {"cadquery", "OCP"}


def floor_of(module: str) -> int:
    if module.startswith("server"):
        return 6
    if module.startswith("geometry.packet"):
        return 5
    if module.startswith("geometry.calculation"):
        return 4
    if module.startswith(("geometry.drawing", "geometry.making")):
        return 3
    return FLOORS.get(module, 2)


def modules() -> dict[str, Path]:
    found = {}
    for package in ("geometry", "server"):
        for path in sorted((ROOT / package).rglob("*.py")):
            parts = path.relative_to(ROOT).with_suffix("").parts
            found[".".join(parts[:-1] if parts[-1] == "__init__" else parts)] = path
    return found


def imports_of(path: Path, known: dict[str, Path]) -> set[str]:
    """Every module that a file imports at run time; an import for type checking only is left out."""
    tree = ast.parse(path.read_text())
    skipped = {
        id(inner)
        for node in ast.walk(tree)
        if isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING"
        for inner in ast.walk(node)
    }
    names: set[str] = set()
    for node in ast.walk(tree):
        if id(node) in skipped:
            continue
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            inner_names = {f"{node.module}.{alias.name}" for alias in node.names}
            names |= {name for name in inner_names if name in known} or {node.module}
    return names


MODULES = modules()


@pytest.mark.parametrize("module", MODULES)
def test_no_import_goes_up(module: str) -> None:
    for imported in imports_of(MODULES[module], MODULES) & MODULES.keys():
        assert floor_of(imported) <= floor_of(module), f"{module} on floor {floor_of(module)} imports {imported}"


def test_no_circles() -> None:
    graph = {name: imports_of(path, MODULES) & MODULES.keys() - {name} for name, path in MODULES.items()}
    assert len(list(TopologicalSorter(graph).static_order())) >= len(MODULES)


def test_every_listed_room_exists() -> None:
    assert set(FLOORS) <= set(MODULES)


def test_geometry_knows_nothing_of_the_web() -> None:
    for name, path in MODULES.items():
        if name.startswith("geometry"):
            roots = {imported.partition(".")[0] for imported in imports_of(path, MODULES)}
            assert not roots & {"server", "fastapi", "starlette", "uvicorn", "jinja2"}, name


def test_only_two_rooms_import_the_kernel() -> None:
    users = {n for n, p in MODULES.items() if {i.partition(".")[0] for i in imports_of(p, MODULES)} & KERNEL}
    assert users == KERNEL_ROOMS


def test_checks_never_import_sizing() -> None:
    assert "geometry.sizing" not in imports_of(MODULES["geometry.checks"], MODULES)


def test_the_inch_is_defined_in_one_room() -> None:
    holders = {
        name
        for name, path in MODULES.items()
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.Constant) and node.value in {25.4, 0.45359237}
    }
    assert holders <= {"geometry.units"}
