"""An app that listens on a free port, in a thread of this process: for tests and benches that ask as a browser does."""

import socket
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager

import uvicorn
from starlette.types import ASGIApp


@contextmanager
def listening(app: ASGIApp) -> Iterator[str]:
    """The address at which the app answers until the block is left."""
    with socket.create_server(("127.0.0.1", 0)) as door:
        # As the server itself does: else the second part of an answer waits 40 ms for the first to be acknowledged.
        door.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        server = uvicorn.Server(uvicorn.Config(app, log_level="error", lifespan="on"))
        thread = threading.Thread(target=server.run, kwargs={"sockets": [door]}, daemon=True)
        thread.start()
        until = time.monotonic() + 30
        while not server.started:
            assert time.monotonic() < until, "the server did not start"
            time.sleep(0.05)
        yield f"http://127.0.0.1:{door.getsockname()[1]}"
        server.should_exit = True
        thread.join(15)
