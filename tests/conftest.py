"""What holds for every test."""

import os
from collections.abc import Iterator

import pytest
from hypothesis import settings

from tests.examples import LONG_RUNS, is_for_long_runs

# How long one example takes says nothing on a machine that is busy with other tests.
settings.register_profile("seamrest", deadline=None)
settings.register_profile(LONG_RUNS, deadline=None)
settings.load_profile("seamrest")


def pytest_configure(config: pytest.Config) -> None:
    """Before any test is read: how many examples each gets."""
    if is_for_long_runs(config.getoption("markexpr")):
        settings.load_profile(LONG_RUNS)


@pytest.fixture(scope="session", autouse=True)
def _no_model_outlives_the_tests(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """A model kept by an earlier run would hide what this one builds; processes that tests start inherit the folder."""
    before = os.environ.get("XDG_CACHE_HOME")
    os.environ["XDG_CACHE_HOME"] = str(tmp_path_factory.mktemp("cache"))
    yield
    if before is None:
        del os.environ["XDG_CACHE_HOME"]
    else:
        os.environ["XDG_CACHE_HOME"] = before
