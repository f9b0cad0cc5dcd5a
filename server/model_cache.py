"""Model files kept on disk, so that the same file is not built twice: bounded, shared by processes, never half a file."""

import hashlib
import json
import os
import secrets
import time
from contextlib import suppress
from dataclasses import asdict
from functools import cache
from pathlib import Path

from geometry import ENGINE_VERSION
from geometry.model_label import FILES_VERSION, ModelFormat, ModelLabel
from geometry.pad import DIMENSIONS, Pad

NO_CACHE = "none"
_DIGEST_BYTES = 32
_ABANDONED_S = 3600
"""An unfinished file older than this belongs to a process that is gone."""


def cache_key(pad: Pad, label: ModelLabel, model_format: ModelFormat) -> str:
    """A name for one file that no other content shares: everything that goes into it, the engine's version included."""
    content = [FILES_VERSION, model_format, asdict(label), {name: float(getattr(pad, name)) for name in DIMENSIONS}]
    return hashlib.sha256(json.dumps(content, sort_keys=True).encode()).hexdigest()


def content_key(kind: str, content: object) -> str:
    """A name for a file made of data alone, and by this very program: another version of it does not use what was kept."""
    whole = [kind, ENGINE_VERSION, FILES_VERSION, sources_digest(), content]
    return hashlib.sha256(json.dumps(whole, sort_keys=True).encode("utf-8", "replace")).hexdigest()


@cache
def sources_digest() -> str:
    """The digest of every file of the program that may change what it writes."""
    digest = hashlib.sha256()
    root = Path(__file__).parent.parent
    for path in sorted(path for room in ("geometry", "server") for path in (root / room).rglob("*.*")):
        if path.suffix in {".py", ".toml", ".typ", ".ttf"}:
            digest.update(path.relative_to(root).as_posix().encode() + path.read_bytes())
    return digest.hexdigest()


def open_cache(folder: str, *, max_bytes: int) -> "ModelCache | None":
    """The cache of a setting: a folder's path, empty for the user's own, ``none`` for none."""
    if folder == NO_CACHE:
        return None
    return ModelCache(Path(folder) if folder else default_folder(), max_bytes=max_bytes)


def default_folder() -> Path:
    """Where model files are kept unless a setting says otherwise: the user's cache folder, by the XDG base directory rules."""
    named = os.environ.get("XDG_CACHE_HOME", "")
    home = Path(named) if named.startswith("/") else Path.home() / ".cache"
    return home / "seamrest" / "models"


class ModelCache:
    """A folder of model files; the ones longest unused go first when it grows past its size.

    Each file starts with the digest of the rest, so that what a crash or a bad disk left behind is never served. A disk
    that is full or read-only costs speed, not answers.
    """

    def __init__(self, folder: Path, *, max_bytes: int = 200 * 2**20) -> None:
        self._folder, self._max_bytes = folder, max_bytes

    def get(self, key: str) -> bytes | None:
        """The kept content, or None."""
        path = self._path(key)
        try:
            stored = path.read_bytes()
        except OSError:
            return None
        digest, content = stored[:_DIGEST_BYTES], stored[_DIGEST_BYTES:]
        if hashlib.sha256(content).digest() != digest:
            path.unlink(missing_ok=True)
            return None
        with suppress(OSError):
            os.utime(path)
        return content

    def put(self, key: str, content: bytes) -> None:
        """Keep a content; readers see it whole or not at all, whoever else writes the same at that moment."""
        if _DIGEST_BYTES + len(content) > self._max_bytes:
            return
        unfinished = self._folder / f"{key}.{secrets.token_hex(8)}.part"
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            unfinished.write_bytes(hashlib.sha256(content).digest() + content)
            unfinished.replace(self._path(key))
        except OSError:
            with suppress(OSError):
                unfinished.unlink(missing_ok=True)
        self._trim()

    def _path(self, key: str) -> Path:
        return self._folder / f"{key}.model"

    def _trim(self) -> None:
        """Remove the files longest unused until the rest fits, and what dead processes left unfinished."""
        kept = []
        for path in self._folder.glob("*.*"):
            # Another process may remove any of them at any moment.
            with suppress(OSError):
                about = path.stat()
                if path.suffix == ".model":
                    kept.append((about.st_mtime_ns, about.st_size, path))
                elif about.st_mtime < time.time() - _ABANDONED_S:
                    path.unlink()
        total = sum(size for _, size, _ in kept)
        for _, size, path in sorted(kept):
            if total <= self._max_bytes:
                break
            with suppress(OSError):
                path.unlink()
            total -= size
