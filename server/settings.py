"""Everything about a running server that its owner may set, read once from the environment."""

import os
import re
from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import UTC, date, datetime
from typing import Any, Self

from geometry.errors import SeamrestError

PREFIX = "SEAMREST_"
_BASE = re.compile(r"https?://[A-Za-z0-9.\-\[\]:]+")


class SettingsError(SeamrestError):
    """An environment variable holds what it cannot hold; the message names it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """One server's settings; each is set by the variable of its name in capitals, such as ``SEAMREST_PORT``."""

    host: str = "127.0.0.1"
    """Where the server listens: by default for this machine alone; ``0.0.0.0`` for everybody who can reach it."""
    port: int = 8000
    """The port it listens on; 0 takes a free one."""
    kernel_workers: int = 2
    """How many processes build model files; each takes some 300 MB."""
    kernel_line: int = 64
    """How many requests for a model may wait while all of these are at work; more are told to come again."""
    kernel_timeout_s: float = 20.0
    """How long one model may take before its process is ended."""
    kernel_memory_mb: int = 1024
    """How much memory one model may take beyond what its process starts with."""
    drawing_workers: int = 2
    """How many processes draw, and set sheets for paper; each takes some 100 to 400 MB."""
    drawing_line: int = 64
    """How many requests for a drawing may wait while all of these are at work; more are told to come again."""
    drawing_timeout_s: float = 30.0
    """How long one drawing or one packet may take before its process is ended."""
    drawing_memory_mb: int = 1024
    """How much memory one of these may take beyond what it starts with; one that keeps a quarter of it is replaced by a fresh
    one. It counts addresses, of which the typesetter asks for more than it uses."""
    model_cache_folder: str = ""
    """A folder in which finished model files are kept, shared by all servers of one machine; empty for ``seamrest/models`` in
    the user's cache folder (``$XDG_CACHE_HOME``, else ``~/.cache``); ``none`` to keep none."""
    model_cache_mb: int = 200
    """How large that folder may grow; the files longest unused go first."""
    body_limit_bytes: int = 65536
    """The largest body of a request that is read; a full document is a few thousand bytes."""
    body_timeout_s: float = 60.0
    """How long the body of a request may take to arrive."""
    client_requests_per_minute: int = 3000
    """How many requests one client may send in a minute, static files aside; more are answered with 429 and the time to wait.
    0 for any number. Counted in the memory of each server process by itself, as are the next two."""
    client_models_per_minute: int = 300
    """How many of these may be for model files; 0 for any number."""
    client_changes_per_minute: int = 300
    """How many of these may save something; 0 for any number."""
    trusted_proxies: int = 0
    """How many proxies of one's own stand in front: so many entries from the end of ``X-Forwarded-For`` is the client. With 0
    the header is not believed, and behind a proxy all clients count as one."""
    database: str = ""
    """Where designs are saved: the path of an SQLite file, or ``postgresql://user@host/name``, which several servers may
    share; empty for ``seamrest/seamrest.sqlite3`` in the user's data folder (``$XDG_DATA_HOME``, else ``~/.local/share``)."""
    base_address: str = ""
    """How people reach this server, such as ``https://pads.example``: links to copy and preview pictures start with it;
    empty for the address that a request came to."""
    import_limit_bytes: int = 16_777_216
    """The largest file of saved designs that is taken in."""
    drawing_date: str = ""
    """The day on every drawing, such as ``2026-11-25``; empty for today (UTC). Set it for files equal byte for byte."""
    reload_templates: int = 0
    """1 while templates are worked on: each is read anew as soon as it has changed, without a restart."""

    @classmethod
    def from_environment(cls, environment: Mapping[str, str] | None = None) -> Self:
        """The settings that the environment holds; what it does not name keeps its default.

        Raises SettingsError for a name that is no setting, and for a value that cannot be.
        """
        found = os.environ if environment is None else environment
        known = {PREFIX + f.name.upper(): f for f in fields(cls)}
        values: dict[str, Any] = {}
        for name, text in found.items():
            if not name.startswith(PREFIX):
                continue
            if name not in known:
                raise SettingsError(f"{name} is not a setting; there are {', '.join(known)}.")
            values[known[name].name] = _read(name, text, type(known[name].default))
        return cls(**values)

    def drawing_day(self) -> date:
        """The day to put on a drawing made now."""
        return date.fromisoformat(self.drawing_date) if self.drawing_date else datetime.now(UTC).date()

    def __post_init__(self) -> None:
        for name in (
            "kernel_workers",
            "kernel_timeout_s",
            "kernel_memory_mb",
            "drawing_workers",
            "drawing_timeout_s",
            "drawing_memory_mb",
            "model_cache_mb",
            "body_limit_bytes",
            "body_timeout_s",
            "import_limit_bytes",
        ):
            if not getattr(self, name) > 0:
                raise SettingsError(f"{PREFIX}{name.upper()} is {getattr(self, name)}; it must be more than 0.")
        for name in (
            "kernel_line",
            "drawing_line",
            "client_requests_per_minute",
            "client_models_per_minute",
            "client_changes_per_minute",
            "trusted_proxies",
        ):
            if getattr(self, name) < 0:
                raise SettingsError(f"{PREFIX}{name.upper()} is {getattr(self, name)}; it must not be negative.")
        if not 0 <= self.port <= 65535:
            raise SettingsError(f"{PREFIX}PORT is {self.port}; it lies between 0 and 65535.")
        if self.reload_templates not in {0, 1}:
            raise SettingsError(f"{PREFIX}RELOAD_TEMPLATES is {self.reload_templates}; it is 0 or 1.")
        if self.drawing_date:
            _require_day(self.drawing_date)
        if self.base_address and not _BASE.fullmatch(self.base_address):
            raise SettingsError(
                f"{PREFIX}BASE_ADDRESS is “{self.base_address}”; it must be an address such as https://pads.example."
            )


def _read(name: str, text: str, kind: type) -> Any:
    try:
        return kind(text)
    except ValueError:
        raise SettingsError(
            f"{name} is “{text}”; it must be {'a whole number' if kind is int else 'a number'}."
        ) from None


def _require_day(text: str) -> None:
    try:
        date.fromisoformat(text)
    except ValueError:
        raise SettingsError(f"{PREFIX}DRAWING_DATE is “{text}”; it must be a day such as 2026-11-25.") from None
