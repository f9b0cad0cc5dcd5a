"""Every setting is set by some test that looks at what it does; README's table of them is made from the settings themselves."""

import re
from dataclasses import fields
from pathlib import Path

import pytest

from server.settings import PREFIX, Settings

TESTS = Path(__file__).parents[1]


@pytest.mark.parametrize("name", [field.name for field in fields(Settings)])
def test_every_setting_is_set_by_a_test_of_what_it_does(name: str) -> None:
    """Oracle: the tests' own text, without the tests of how settings are read."""
    set_there = re.compile(rf"\b{name}=|\"{name}\": |{PREFIX}{name.upper()}\b")
    found = [
        path
        for path in (TESTS / "server").rglob("test_*.py")
        if path.name != "test_settings.py" and set_there.search(path.read_text("utf-8"))
    ]
    found += [path for path in (TESTS / "server").rglob("conftest.py") if set_there.search(path.read_text("utf-8"))]
    assert found
