"""DEVELOPERS.md is the map: every room in one line, as its own first line says it; README and map name what exists.

``python -m tests.house.test_map`` writes the rooms' lines anew.
"""

import ast
import inspect
import re
from collections.abc import Iterable, Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from starlette.routing import Route

import geometry.checks  # noqa: F401 - registers every check
from geometry.rules import CHECK_RULES
from server.app import create_app
from server.settings import Settings
from tests.house.test_floors import MODULES, floor_of

ROOT = Path(__file__).parents[2]
MAP = ROOT / "DEVELOPERS.md"
BEGIN, END = "<!-- rooms -->", "<!-- end of rooms -->"
FLOOR_TITLES = {
    0: "Floor 0: numbers and words",
    1: "Floor 1: the input document, materials, the pad's dimensions",
    2: "Floor 2: formulas, and all that is special to one kind of foot or head",
    3: "Floor 3: the ledger, the checks, drawing and solid",
    4: "Floor 4: the front door, and what is computed from whole designs",
    5: "Floor 5: the offline command",
    6: "The web: no arithmetic on dimensions",
}


def first_line(path: Path) -> str:
    return (ast.get_docstring(ast.parse(path.read_text())) or "").split("\n")[0].rstrip(":")


def rooms() -> str:
    lines = []
    for floor, title in FLOOR_TITLES.items():
        lines += [f"### {title}", "", "| room | what it knows |", "|---|---|"]
        here = [(name, path) for name, path in MODULES.items() if floor_of(name) == floor]
        lines += [f"| `{path.relative_to(ROOT)}` | {first_line(path)} |" for _, path in here] + [""]
    return "\n".join(lines)


def test_the_map_has_every_room_in_its_own_words() -> None:
    text = MAP.read_text()
    written = text[text.index(BEGIN) + len(BEGIN) : text.index(END)].strip()
    assert written == rooms().strip(), "run: python -m tests.house.test_map"


def test_readme_opens_with_the_job_and_carries_both_commands() -> None:
    text = (ROOT / "README.md").read_text()
    assert text.startswith("# Seamrest\n\nYou lift your own car")
    for tag, end in (("run", ".venv/bin/python -m server"), ("test", ".venv/bin/pytest")):
        block = re.search(rf"<!-- {tag} -->\n```sh\n(.*?)```", text, re.DOTALL)
        assert block, tag
        assert block[1].strip().endswith(end)


def test_readme_tells_of_changes() -> None:
    changes = (ROOT / "README.md").read_text().partition("## Changes\n")[2].strip().splitlines()
    assert changes
    assert all(re.match(r"- (NEW|CHANGE|FIX): ", line) or line.startswith("  ") for line in changes)


@pytest.mark.parametrize("code", CHECK_RULES)
def test_every_check_is_named_in_the_map(code: str) -> None:
    assert f"`{code}`" in MAP.read_text()


def checks() -> str:
    return "\n".join(f"| `{rule.code}` | {rule.title} | {rule.find.__module__} |" for rule in CHECK_RULES.values())


def settings() -> str:
    """Every setting with its default, as its own words in server/settings.py say it."""
    tree = ast.parse((ROOT / "server" / "settings.py").read_text())
    body = next(node.body for node in tree.body if isinstance(node, ast.ClassDef) and node.name == "Settings")
    lines = []
    for node, said in pairwise(body):
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name) and node.value is not None:
            assert isinstance(said, ast.Expr), f"{node.target.id} is not explained"
            words = " ".join(ast.literal_eval(said.value).split())
            default = ast.literal_eval(node.value) if isinstance(node.value, ast.Constant) else ast.unparse(node.value)
            lines.append(
                f"| `SEAMREST_{node.target.id.upper()}` | {default if default != '' else '(empty)'} | {words} |"
            )
    return "\n".join(lines)


def test_every_setting_stands_in_the_readme() -> None:
    assert settings() in (ROOT / "README.md").read_text(), "run: python -m tests.house.test_map"


def routes_of(routes: Iterable[object]) -> Iterator[Route]:
    """Every route, those of included routers as well."""
    for route in routes:
        inner = getattr(route, "original_router", None)
        if inner is not None:
            yield from routes_of(inner.routes)
        elif isinstance(route, Route):
            yield route


def addresses() -> str:
    """Every address with what it answers, as the function behind it says."""
    app = create_app(Settings(database=":memory:", model_cache_folder="none"))
    rows = set()
    for route in routes_of(app.routes):
        ending = route.path.rpartition(".")[2] if "." in route.path else "JSON"
        by_itself = (
            "The description of this interface" if "openapi" in route.path else f"The {ending.upper()} of the design"
        )
        words = (inspect.getdoc(route.endpoint) or by_itself).split("\n")[0].rstrip(".:")
        rows.add(f"| `{route.path}` | {', '.join(sorted((route.methods or set()) - {'HEAD'}))} | {words} |")
    return "\n".join(sorted(rows))


def test_every_address_stands_in_the_map() -> None:
    assert addresses() in MAP.read_text(), "run: python -m tests.house.test_map"


if __name__ == "__main__":
    readme = (ROOT / "README.md").read_text()
    begin, end = "<!-- settings -->", "<!-- end of settings -->"
    table = f"| variable | default | what it sets |\n|---|---|---|\n{settings()}"
    readme = f"{readme[: readme.index(begin) + len(begin)]}\n{table}\n{readme[readme.index(end) :]}"
    (ROOT / "README.md").write_text(readme)
    text = MAP.read_text()
    heads = {
        "<!-- checks -->": "| code | what is asked | where |\n|---|---|---|\n",
        "<!-- addresses -->": "| address | method | what it answers |\n|---|---|---|\n",
    }
    for begin, end, made in (
        (BEGIN, END, rooms()),
        ("<!-- checks -->", "<!-- end of checks -->", checks()),
        ("<!-- addresses -->", "<!-- end of addresses -->", addresses()),
    ):
        table = heads.get(begin, "")
        text = f"{text[: text.index(begin) + len(begin)]}\n{table}{made.strip()}\n{text[text.index(end) :]}"
    MAP.write_text(text)
