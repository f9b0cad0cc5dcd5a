"""Settings come from the environment, and a wrong one is named."""

import ast
import inspect
from dataclasses import fields
from datetime import UTC, date, datetime
from itertools import pairwise

import pytest

from server import settings
from server.settings import Settings, SettingsError


def test_an_empty_environment_gives_the_defaults() -> None:
    assert Settings.from_environment({"PATH": "/bin"}) == Settings()


def test_each_variable_sets_its_own_setting() -> None:
    found = Settings.from_environment(
        {"SEAMREST_PORT": "9000", "SEAMREST_KERNEL_TIMEOUT_S": "1.5", "SEAMREST_HOST": "::1"}
    )
    assert (found.port, found.kernel_timeout_s, found.host) == (9000, 1.5, "::1")


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("SEAMREST_PORT", "many"),
        ("SEAMREST_PORT", "70000"),
        ("SEAMREST_KERNEL_WORKERS", "0"),
        ("SEAMREST_KERNEL_TIMEOUT_S", "nan"),
        ("SEAMREST_BODY_LIMIT_BYTES", "-1"),
        ("SEAMREST_DRAWING_DATE", "tomorrow"),
        ("SEAMREST_RELOAD_TEMPLATES", "2"),
        ("SEAMREST_COLOUR", "blue"),
    ],
)
def test_a_wrong_variable_is_named(name: str, value: str) -> None:
    with pytest.raises(SettingsError, match=name):
        Settings.from_environment({name: value})


def test_drawings_carry_the_set_day_or_today() -> None:
    assert Settings(drawing_date="2026-11-25").drawing_day() == date(2026, 11, 25)
    before = datetime.now(UTC).date()
    assert before <= Settings().drawing_day() <= datetime.now(UTC).date()


def test_every_setting_is_explained_beside_its_name() -> None:
    """Oracle: the source; each field is followed by a sentence."""
    tree = ast.parse(inspect.getsource(settings))
    body = next(node.body for node in tree.body if isinstance(node, ast.ClassDef) and node.name == "Settings")
    explained = [
        ast.unparse(first.target)
        for first, second in pairwise(body)
        if isinstance(first, ast.AnnAssign) and isinstance(second, ast.Expr)
    ]
    assert explained == [f.name for f in fields(Settings)]
