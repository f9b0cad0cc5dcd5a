"""Templates: read once and kept, or, for whoever works on them, read anew as soon as one has changed."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from httpx import ASGITransport, AsyncClient
from jinja2 import DictLoader, FileSystemLoader

from server import templating
from server.app import create_app
from server.settings import Settings

pytestmark = pytest.mark.anyio


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A folder of templates in place of our own; afterwards nothing of it is left in memory."""
    environment = templating._ENVIRONMENT
    monkeypatch.setattr(environment, "loader", FileSystemLoader(tmp_path))
    monkeypatch.setattr(environment, "auto_reload", False)
    write(tmp_path, "piece.html", "before", at=1)
    write(tmp_path, "whole.html", '{{ kept("piece.html", page) }}', at=1)
    templating.kept.cache_clear()
    yield tmp_path
    templating.kept.cache_clear()


def write(folder: Path, name: str, text: str, *, at: int) -> None:
    (folder / name).write_text(text)
    os.utime(folder / name, (at, at))


@pytest.mark.parametrize(("setting", "shown"), [(0, "before"), (1, "after")])
def test_a_changed_template_is_read_anew_where_the_setting_asks_for_it(folder: Path, setting: int, shown: str) -> None:
    """Oracle: the text that stands in the file when the page is asked for; a piece that is kept is written anew as well."""
    create_app(Settings(database=":memory:", reload_templates=setting))
    assert templating.render("whole.html", "page") == "before"
    write(folder, "piece.html", "after", at=2)
    assert templating.render("whole.html", "page") == shown


async def test_no_template_is_looked_at_twice_the_normal_way(monkeypatch: pytest.MonkeyPatch) -> None:
    """Oracle: with a loader that knows no template any more the page is the same, to the letter."""
    app = create_app(Settings(database=":memory:"))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        first = (await client.get("/pad?jack.cup_bore_mm=68")).text
        monkeypatch.setattr(templating._ENVIRONMENT.loader, "get_source", DictLoader({}).get_source)
        assert (await client.get("/pad?jack.cup_bore_mm=68")).text == first
