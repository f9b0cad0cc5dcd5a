"""The web application, put together."""

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from functools import partial

from fastapi import FastAPI
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.responses import FileResponse, RedirectResponse

from geometry import ENGINE_VERSION
from geometry.errors import SeamrestError
from server import (
    advice,
    api,
    calculation,
    downloads,
    guide,
    how_made,
    making,
    materials_page,
    offline,
    packet,
    pages,
    turn,
    two,
)
from server.drawn import drawers
from server.limits import BodyTime, RateLimits
from server.links import static_file, static_url
from server.model_cache import open_cache
from server.once import Once
from server.openapi import describe
from server.packed import Packing
from server.problems import NOT_FOUND, AnsweredError, answer_error, answer_http_error
from server.protocol import HeadAsGet
from server.saved_app import BRINGS, add_saving, open_if_named
from server.security import AccessLog, ForgeryGuard, SecurityHeaders
from server.settings import Settings
from server.templating import read_changes
from server.uploads import BodyLimits
from server.workers import KernelPool

_DESCRIPTION = (
    "Designs and documents vehicle lifting pads from measurements of one jack and one car. Every figure is estimated, not"
    " tested. Lengths are in mm, masses in kg."
)
_A_YEAR = "public, max-age=31536000, immutable"
_ROOMS = (
    pages,
    turn,
    two,
    packet,
    making,
    how_made,
    calculation,
    advice,
    materials_page,
    guide,
    offline,
    downloads,
    api,
)
"""Each with the addresses that it answers; what is saved adds its own."""


def create_app(settings: Settings | None = None) -> FastAPI:
    """A server that can be started; without ``settings``, those of the environment."""
    chosen = settings or Settings.from_environment()
    # The interactive pages of the framework load scripts from elsewhere, which the content policy refuses.
    app = FastAPI(
        title="Seamrest",
        version=ENGINE_VERSION,
        description=_DESCRIPTION,
        docs_url=None,
        redoc_url=None,
        redirect_slashes=False,
        lifespan=_running,
    )
    app.state.settings = chosen
    if chosen.reload_templates:
        read_changes()
    kept = open_cache(chosen.model_cache_folder, max_bytes=chosen.model_cache_mb * 2**20)
    app.state.archives = Once(kept)
    app.state.kernel = KernelPool(
        workers=chosen.kernel_workers,
        line=chosen.kernel_line,
        timeout_s=chosen.kernel_timeout_s,
        memory_mb=chosen.kernel_memory_mb,
        cache=kept,
    )
    for room in _ROOMS:
        app.include_router(room.router)
    add_saving(app, chosen)
    app.add_api_route("/static/{path:path}", static, methods=["GET"], include_in_schema=False)
    app.add_api_route("/favicon.ico", icon, methods=["GET"], include_in_schema=False)
    app.add_exception_handler(SeamrestError, answer_error)
    app.add_exception_handler(HTTPException, answer_http_error)
    _guard(app, chosen)
    app.openapi = partial(describe, app)  # type: ignore[method-assign]  # the framework's own way to a schema of one's own
    return app


def _guard(app: FastAPI, chosen: Settings) -> None:
    """Put what every request and every answer passes around the pages."""
    # The last one added is the first that a request meets.
    app.add_middleware(Packing)
    app.add_middleware(BodyLimits, most_bytes=chosen.body_limit_bytes, larger={BRINGS: chosen.import_limit_bytes})
    app.add_middleware(BodyTime, seconds=chosen.body_timeout_s)
    for inner in (ForgeryGuard, HeadAsGet):
        app.add_middleware(inner)
    app.add_middleware(RateLimits, settings=chosen)
    for outer in (SecurityHeaders, AccessLog):
        app.add_middleware(outer)


@asynccontextmanager
async def _running(app: FastAPI) -> AsyncIterator[None]:
    """The processes for models and drawings live as long as the server."""
    kernel: KernelPool = app.state.kernel
    await run_in_threadpool(open_if_named, app)
    kernel.start()
    drawers.start(app.state.settings)
    try:
        yield
    finally:
        await app.state.later.stop()
        await run_in_threadpool(kernel.stop)
        await run_in_threadpool(drawers.stop)
        await run_in_threadpool(app.state.store.close)


async def static(path: str) -> FileResponse:
    """One static file; its address changes with its content, so it may be kept for good."""
    try:
        found = static_file(path)
    except (OSError, ValueError):
        # A name that no file can have: too long, or with a character that ends it.
        found = None
    if found is None:
        raise AnsweredError(NOT_FOUND, NOT_FOUND.meaning)
    return FileResponse(found, headers={"Cache-Control": _A_YEAR})


async def icon() -> RedirectResponse:
    """The icon, for what asks for it where icons used to be; its own address changes with its content, so this is not kept."""
    return RedirectResponse(static_url("icon.svg"), 307)
