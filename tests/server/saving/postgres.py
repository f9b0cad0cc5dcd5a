"""A real PostgreSQL for the tests, started from the machine's own package and gone afterwards."""

import os
import pwd
import shutil
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import psycopg
import pytest


def program(name: str) -> str | None:
    """One of PostgreSQL's programs; Debian keeps them out of the usual path."""
    kept = sorted(Path("/usr/lib/postgresql").glob(f"*/bin/{name}"))
    return str(kept[-1]) if kept else shutil.which(name)


def unprivileged() -> list[str]:
    """What starts a program as somebody else where we are root, which PostgreSQL refuses to run as."""
    if os.geteuid() != 0:
        return []
    return ["setpriv", "--reuid=nobody", "--regid=nogroup", "--clear-groups"]


@contextmanager
def running() -> Iterator[str]:
    """A server of its own in a folder of its own, reached through a socket there; gives the folder."""
    initdb, postgres = program("initdb"), program("postgres")
    if not initdb or not postgres:
        # Where tests are required to run, a missing database is a failure and no excuse.
        assert not os.environ.get("CI"), "PostgreSQL is not installed"
        pytest.skip("PostgreSQL is not installed")
    folder = Path(tempfile.mkdtemp(prefix="pg-", dir="/tmp"))
    try:
        if os.geteuid() == 0:
            nobody = pwd.getpwnam("nobody")
            os.chown(folder, nobody.pw_uid, nobody.pw_gid)
        made = [initdb, "-D", str(folder / "data"), "-U", "postgres", "--auth=trust", "--encoding=UTF8", "--no-sync"]
        subprocess.run(unprivileged() + made, check=True, capture_output=True, cwd=folder)
        options = [
            "-c",
            "listen_addresses=",
            "-c",
            "fsync=off",
            "-c",
            "full_page_writes=off",
            "-c",
            "max_connections=100",
        ]
        server = subprocess.Popen(
            [*unprivileged(), postgres, "-D", str(folder / "data"), "-k", str(folder), *options],
            cwd=folder,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        try:
            wait_for(folder)
            yield str(folder)
        finally:
            server.terminate()
            server.wait(120)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def wait_for(folder: Path) -> None:
    """Until the server answers."""
    until = time.monotonic() + 120
    while True:
        try:
            psycopg.connect(host=str(folder), user="postgres", dbname="postgres").close()
        except psycopg.OperationalError:
            assert time.monotonic() < until, "PostgreSQL did not start"
            time.sleep(0.1)
        else:
            return


@contextmanager
def fresh(folder: str, name: str) -> Iterator[str]:
    """An empty database on that server; gives the setting that names it."""
    with psycopg.connect(host=folder, user="postgres", dbname="postgres", autocommit=True) as connection:
        connection.execute(f'CREATE DATABASE "{name}"'.encode())
    # It goes with the whole server; to drop it would cost a second.
    yield f"postgresql://postgres@/{name}?host={folder}"
