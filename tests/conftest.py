"""What holds for every test."""

import os
from collections.abc import Iterator

import pytest
from hypothesis import settings

# How long one example takes says nothing on a machine that is busy with other tests.
settings.register_profile("seamrest", deadline=None)
settings.load_profile("seamrest")


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
