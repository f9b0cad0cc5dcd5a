"""``python -m server`` starts the server and says where it is."""

import argparse
import logging
import socket
import sys
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace

import uvicorn

from server.app import create_app
from server.links import ready_sample
from server.saved_app import open_if_named
from server.settings import Settings, SettingsError
from server.store.errors import StoreError

_CLOSING_S = 5


def main(arguments: Sequence[str] | None = None) -> int:
    """Serve until a signal asks to stop; requests that are being answered are answered first."""
    try:
        settings = _settings(arguments)
    except SettingsError as error:
        print(error, file=sys.stderr)
        return 2
    try:
        listening = socket.create_server((settings.host, settings.port), family=_family(settings.host), backlog=128)
        # The event loop does this only for sockets that it opened itself; what it accepts here inherits it. Without it the
        # second part of an answer waits some 40 ms for the other side to say that it has the first.
        listening.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    except OSError as error:
        print(f"Cannot listen on {settings.host} port {settings.port}: {error.strerror}.", file=sys.stderr)
        return 1
    app = create_app(settings)
    try:
        open_if_named(app)
    except StoreError as error:
        print(error, file=sys.stderr)
        return 1
    _log_to_stderr()
    server = uvicorn.Server(
        uvicorn.Config(
            app,
            # The log of requests is our own: uvicorn's would print whole addresses.
            access_log=False,
            log_config=None,
            log_level="warning",
            server_header=False,
            # Who asks is told by SEAMREST_TRUSTED_PROXIES alone, never by a header that anybody may send.
            proxy_headers=False,
            timeout_graceful_shutdown=_CLOSING_S,
        )
    )
    _greet(listening, settings.host)
    # After it has closed, uvicorn raises the signal again that asked it to.
    with suppress(KeyboardInterrupt):
        server.run(sockets=[listening])
    return 0


def _settings(arguments: Sequence[str] | None) -> Settings:
    """The environment's settings, overruled by the command line."""
    given = Settings.from_environment()
    parser = argparse.ArgumentParser(prog="python -m server", description="Serve Seamrest in a browser.")
    parser.add_argument("--host", default=given.host, help="where to listen (default %(default)s)")
    parser.add_argument(
        "--port", type=int, default=given.port, help="the port (default %(default)s; 0 takes a free one)"
    )
    chosen = parser.parse_args(arguments)
    return replace(given, host=chosen.host, port=chosen.port)


def _log_to_stderr() -> None:
    """Our own lines, and what goes wrong elsewhere."""
    logging.basicConfig(level=logging.WARNING, format="%(asctime)s %(name)s %(message)s", stream=sys.stderr)
    logging.getLogger("seamrest").setLevel(logging.INFO)
    # The drawing library warns of header variables that it leaves out on purpose, with every drawing.
    logging.getLogger("ezdxf").setLevel(logging.ERROR)


def _family(host: str) -> socket.AddressFamily:
    return socket.AF_INET6 if ":" in host else socket.AF_INET


def _greet(listening: socket.socket, host: str) -> None:
    """Where to look, and at what."""
    shown = {"0.0.0.0": "127.0.0.1", "::": "::1"}.get(host, host)  # noqa: S104  compared, not listened on
    shown = f"[{shown}]" if ":" in shown else shown
    address = f"http://{shown}:{listening.getsockname()[1]}"
    print(f"Seamrest is at {address}", f"A worked example: {address}{ready_sample().address}", sep="\n", flush=True)


if __name__ == "__main__":
    sys.exit(main())
