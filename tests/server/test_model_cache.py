"""Kept files: the same bytes or nothing, within a bound, whoever else writes at that moment."""

import asyncio
import os
from concurrent.futures import ProcessPoolExecutor
from dataclasses import fields
from multiprocessing import get_context
from pathlib import Path

import pytest

from geometry.model_label import ModelFormat, ModelLabel
from geometry.pad import DIMENSIONS, Pad
from server import model_cache
from server.model_cache import ModelCache, cache_key, content_key, default_folder, open_cache
from server.once import Once
from server.workers import KernelPool
from tests.geometry.pads import LABEL, ORDINARY

KEY = "a" * 64
OTHER = "b" * 64


def test_what_was_put_comes_back_after_a_restart(tmp_path: Path) -> None:
    """Another object on the same folder reads it; an unknown key is nothing."""
    ModelCache(tmp_path / "cache").put(KEY, b"solid")
    assert ModelCache(tmp_path / "cache").get(KEY) == b"solid"
    assert ModelCache(tmp_path / "cache").get(OTHER) is None


@pytest.mark.parametrize("damage", [b"", b"x" * 10, b"\0" * 37])
def test_a_damaged_file_is_never_served(tmp_path: Path, damage: bytes) -> None:
    """Cut short, overwritten or zeroed on disk: it is gone, and the place can be filled again."""
    cache = ModelCache(tmp_path)
    cache.put(KEY, b"solid")
    next(tmp_path.iterdir()).write_bytes(damage)
    assert cache.get(KEY) is None
    cache.put(KEY, b"solid")
    assert cache.get(KEY) == b"solid"


def test_the_longest_unused_file_goes_first(tmp_path: Path) -> None:
    """Three files of 100 bytes and their digests where two have room; the first was read last."""
    cache = ModelCache(tmp_path, max_bytes=300)
    for age, name in ((30, "1"), (20, "2")):
        cache.put(name, bytes(100))
        path = tmp_path / f"{name}.model"
        os.utime(path, (path.stat().st_atime - age, path.stat().st_mtime - age))
    assert cache.get("1")
    cache.put("3", bytes(100))
    assert [cache.get(name) is not None for name in "123"] == [True, False, True]


def test_the_folder_never_outgrows_its_bound(tmp_path: Path) -> None:
    """Fifty files of 100 bytes against 1000; one larger than the whole is not kept at all."""
    cache = ModelCache(tmp_path, max_bytes=1000)
    for i in range(50):
        cache.put(str(i), bytes(100))
    cache.put("huge", bytes(1000))
    assert 800 < sum(path.stat().st_size for path in tmp_path.iterdir()) <= 1000
    assert cache.get("huge") is None


def test_what_a_dead_process_left_unfinished_is_cleared_away(tmp_path: Path) -> None:
    """An hour is long past for the one, not for the other."""
    for name, age in (("old.part", 7200), ("new.part", 0)):
        (tmp_path / name).write_bytes(b"half")
        stamp = (tmp_path / name).stat().st_mtime - age
        os.utime(tmp_path / name, (stamp, stamp))
    ModelCache(tmp_path).put(KEY, b"solid")
    assert sorted(path.name for path in tmp_path.iterdir()) == [f"{KEY}.model", "new.part"]


def test_a_folder_that_cannot_be_written_costs_no_answer(tmp_path: Path) -> None:
    """A file stands where the folder should be: nothing is kept, nothing is raised."""
    (tmp_path / "taken").write_text("")
    cache = ModelCache(tmp_path / "taken")
    cache.put(KEY, b"solid")
    assert cache.get(KEY) is None


def hammer(folder: str, seed: int) -> int:
    """Write and read two keys many times; how many reads gave anything but one writer's whole content."""
    cache = ModelCache(Path(folder), max_bytes=450_000)
    wrong = 0
    for i in range(60):
        key = (KEY, OTHER)[(i + seed) % 2]
        cache.put(key, bytes([seed]) * 200_000)
        found = cache.get(key)
        wrong += found is not None and (len(found) != 200_000 or len(set(found)) != 1)
    return wrong


def test_concurrent_writers_never_mix(tmp_path: Path) -> None:
    """Four processes on the same two names."""
    with ProcessPoolExecutor(4, mp_context=get_context("forkserver")) as pool:
        assert list(pool.map(hammer, [str(tmp_path)] * 4, range(4))) == [0, 0, 0, 0]
    assert not list(tmp_path.glob("*.part"))


def test_every_dimension_and_every_word_makes_another_key() -> None:
    """The engine's version is one of the words; a whole number and its float are the same dimension."""
    keys = {cache_key(ORDINARY, LABEL, "step"), cache_key(ORDINARY, LABEL, "stl")}
    keys |= {cache_key(ORDINARY.with_(**{name: 1.25}), LABEL, "step") for name in DIMENSIONS}
    words = {field.name: getattr(LABEL, field.name) for field in fields(ModelLabel)}
    keys |= {cache_key(ORDINARY, ModelLabel(**words | {name: "other"}), "step") for name in words}
    assert len(keys) == 2 + len(DIMENSIONS) + len(words)
    assert cache_key(ORDINARY.with_(web_mm=22.0), LABEL, "step") == cache_key(ORDINARY, LABEL, "step")


def stamped(_pad: Pad, _label: ModelLabel, _format: ModelFormat) -> bytes:
    """A builder whose answers differ from call to call."""
    return os.urandom(16)


@pytest.mark.anyio
async def test_a_pool_builds_a_file_once(tmp_path: Path) -> None:
    """The second request gets the first one's bytes, from a second pool too; another format is built."""
    answers = []
    for _ in range(2):
        pool = KernelPool(workers=1, build=stamped, cache=ModelCache(tmp_path))
        pool.start()
        answers += [await pool.model(ORDINARY, LABEL, form) for form in ("step", "step", "stl")]
        pool.stop()
    assert len(set(answers)) == 2
    assert answers[0] != answers[2]


def test_without_a_setting_files_are_kept_in_the_users_cache_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    """Oracle: the XDG base directory specification; a relative XDG_CACHE_HOME is to be ignored."""
    monkeypatch.setenv("HOME", "/home/somebody")
    for given, expected in (
        ("/var/caches", "/var/caches/seamrest/models"),
        ("", "/home/somebody/.cache/seamrest/models"),
        ("caches", "/home/somebody/.cache/seamrest/models"),
    ):
        monkeypatch.setenv("XDG_CACHE_HOME", given)
        assert str(default_folder()) == expected


def test_the_setting_names_a_folder_or_none(tmp_path: Path) -> None:
    cache = open_cache(str(tmp_path / "own"), max_bytes=1000)
    assert cache is not None
    cache.put(KEY, b"solid")
    assert (tmp_path / "own" / f"{KEY}.model").exists()
    assert open_cache("none", max_bytes=1000) is None


def test_what_is_made_of_data_is_named_by_all_of_it_and_by_the_program(monkeypatch: pytest.MonkeyPatch) -> None:
    """Other data, another kind, another engine and other sources each give another name; the same gives the same."""
    data = {"a": 1, "b": ["ü", 2.5]}
    keys = [content_key("zip", data), content_key("zip", data | {"a": 2}), content_key("other", data)]
    assert content_key("zip", {"b": ["ü", 2.5], "a": 1}) == keys[0]
    monkeypatch.setattr(model_cache, "ENGINE_VERSION", "another")
    keys.append(content_key("zip", data))
    monkeypatch.undo()
    monkeypatch.setattr(model_cache, "sources_digest", lambda: "another")
    keys.append(content_key("zip", data))
    assert len(set(keys)) == 5


@pytest.mark.anyio
async def test_what_many_ask_for_at_once_is_made_once_and_kept(tmp_path: Path) -> None:
    made: list[int] = []

    async def make() -> bytes:
        made.append(1)
        await asyncio.sleep(0.05)
        return b"content"

    once = Once(ModelCache(tmp_path))
    assert set(await asyncio.gather(*(once.file("key", make) for _ in range(20)))) == {b"content"}
    assert await Once(ModelCache(tmp_path)).file("key", make) == b"content"
    assert len(made) == 1
