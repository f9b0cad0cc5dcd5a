"""DEVELOPERS.md is the map: every room in one line, as its own first line says it; README and map name what exists.

``python -m tests.house.test_map`` writes the rooms' lines anew.
"""

import ast
import re
from pathlib import Path

import pytest

import geometry.checks  # noqa: F401 - registers every check
from geometry.rules import CHECK_RULES
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


if __name__ == "__main__":
    text = MAP.read_text()
    for begin, end, made in ((BEGIN, END, rooms()), ("<!-- checks -->", "<!-- end of checks -->", checks())):
        table = "| code | what is asked | where |\n|---|---|---|\n" if "checks" in begin else ""
        text = f"{text[: text.index(begin) + len(begin)]}\n{table}{made.strip()}\n{text[text.index(end) :]}"
    MAP.write_text(text)
