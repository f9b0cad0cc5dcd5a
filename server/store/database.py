"""One database: SQLite in a file without any set-up, or PostgreSQL by its address; opened when first needed."""

import os
import sqlite3
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, DatabaseError, DataError, IntegrityError, InterfaceError, ProgrammingError

from server.store.errors import StoreUnavailableError
from server.store.migrations import NEWEST, migrate, version_of

_WAIT_MS = 10_000
"""How long a process waits for another that is writing."""
_AGAIN_MS = 50
_WRITES = {"seamrest_writes": True}
_UNAVAILABLE = "What is saved cannot be reached at the moment. Nothing was changed; try again in a minute."


def default_file() -> Path:
    """Where designs are kept unless a setting says otherwise: the user's data folder, by the XDG base directory rules."""
    data = os.environ.get("XDG_DATA_HOME", "")
    home = Path(data) if data.startswith("/") else Path.home() / ".local" / "share"
    return home / "seamrest" / "seamrest.sqlite3"


class Database:
    """One database by its setting: a file's path, ``postgresql://…``, or nothing for the default file."""

    def __init__(self, setting: str = "") -> None:
        self.setting = setting
        self._engine: Engine | None = None
        self._opening = threading.Lock()

    @property
    def engine(self) -> Engine:
        """The open database, brought to the newest schema."""
        with self._opening:
            if self._engine is None:
                self._engine = self._open()
            return self._engine

    def _open(self) -> Engine:
        engine = engine_of(self.setting)
        try:
            with readable(engine) as connection:
                has_newest = version_of(connection) == NEWEST
            if not has_newest:
                with writable(engine) as connection:
                    migrate(connection)
        except BaseException:
            engine.dispose()
            raise
        return engine

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A connection that sees one state of the database."""
        with readable(self.engine) as connection:
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """A connection whose changes are all kept, for good, when the block ends, or not at all."""
        with writable(self.engine) as connection:
            yield connection

    def close(self) -> None:
        """Let go of all connections; the next use opens anew."""
        with self._opening:
            if self._engine is not None:
                self._engine.dispose()
                self._engine = None


def engine_of(setting: str) -> Engine:
    """An engine that is not yet connected.

    Raises StoreUnavailableError for an address that names no database that is known here.
    """
    if "://" not in setting:
        return _sqlite(Path(setting) if setting else default_file())
    try:
        url = make_url(setting)
    except ArgumentError:
        url = None
    if url is None or url.get_backend_name() != "postgresql":
        raise StoreUnavailableError("SEAMREST_DATABASE must be the path of a file or start with postgresql://.")
    # Values never get into a log, whatever fails.
    return create_engine(
        url.set(drivername="postgresql+psycopg"),
        hide_parameters=True,
        pool_pre_ping=True,
        connect_args={"connect_timeout": 5, "application_name": "seamrest"},
    )


_KEPT_NOWHERE = ":memory:"
"""SQLite's own name for a database that ends with its connection: of use in tests alone."""


def _sqlite(file: Path) -> Engine:
    try:
        if str(file) != _KEPT_NOWHERE:
            file.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            # What is kept is nobody else's business on this machine.
            os.close(os.open(file, os.O_CREAT | os.O_RDWR, 0o600))
    except OSError as error:
        raise StoreUnavailableError(f"The database {file} cannot be opened: {error.strerror}.") from error
    engine = create_engine(f"sqlite:///{file}", hide_parameters=True, connect_args={"timeout": _WAIT_MS / 1000})
    event.listen(engine, "connect", _prepare)
    event.listen(engine, "begin", _begin)
    return engine


def _prepare(connection: Any, _: Any) -> None:
    """Settings of each connection to SQLite; FULL, so that what was acknowledged outlives a loss of power."""
    # The driver would begin transactions where it likes; _begin does it where we like.
    connection.isolation_level = None
    connection.execute(f"PRAGMA busy_timeout={_WAIT_MS}")
    _write_ahead(connection)
    for pragma in ("synchronous=FULL", "foreign_keys=ON"):
        connection.execute(f"PRAGMA {pragma}")


def _write_ahead(connection: Any) -> None:
    """Write ahead; where several processes change a new file over at once, SQLite refuses some at once instead of waiting."""
    give_up = time.monotonic() + _WAIT_MS / 1000
    while True:
        try:
            connection.execute("PRAGMA journal_mode=WAL")
        except sqlite3.OperationalError as error:
            if time.monotonic() > give_up or "locked" not in str(error):
                raise
            time.sleep(_AGAIN_MS / 1000)
        else:
            return


def _begin(connection: Connection) -> None:
    """A transaction that will write asks for that at once: a later change of mind could not wait its turn."""
    writes = connection.get_execution_options().get("seamrest_writes", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


@contextmanager
def readable(engine: Engine) -> Iterator[Connection]:
    """A connection that sees one state of the database and writes nothing."""
    options = {"isolation_level": "REPEATABLE READ"} if engine.dialect.name == "postgresql" else {}
    with _in_words(), engine.connect().execution_options(**options) as connection, connection.begin():
        yield connection


@contextmanager
def writable(engine: Engine) -> Iterator[Connection]:
    """A connection whose changes are kept together or not at all."""
    with _in_words(), engine.connect().execution_options(**_WRITES) as connection, connection.begin():
        yield connection


@contextmanager
def _in_words() -> Iterator[None]:
    """A database that does not answer, or cannot write, in words; what is our own mistake stays an error."""
    try:
        yield
    except (ProgrammingError, IntegrityError, DataError):
        raise
    except (DatabaseError, InterfaceError) as error:
        raise StoreUnavailableError(_UNAVAILABLE) from error
