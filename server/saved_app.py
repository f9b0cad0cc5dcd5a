"""Saving and sharing as one part of the application: its addresses, its database, its errors in words."""

from fastapi import FastAPI

from server import exchange, own_files, saved_looking, saved_shop, saving, sharing, trying
from server.saved_drawing import LaterDrawing
from server.saved_pages import answer_store_error
from server.settings import Settings
from server.store.database import Database
from server.store.errors import StoreError

ROUTERS = (
    saving.router,
    sharing.router,
    exchange.router,
    saved_shop.router,
    saved_looking.router,
    trying.router,
    own_files.router,
)
BRINGS = "/mine/import"
"""The one address that takes large files."""


def add_saving(app: FastAPI, settings: Settings) -> None:
    """Put saving and sharing into an application; the database is opened when it is first needed."""
    app.state.store = Database(settings.database)
    app.state.later = LaterDrawing(app.state.store)
    for router in ROUTERS:
        app.include_router(router)
    app.add_exception_handler(StoreError, answer_store_error)


def open_if_named(app: FastAPI) -> None:
    """Open a database that a setting names, so that a wrong name is seen at the start and not at the first save."""
    if app.state.settings.database:
        with app.state.store.reading():
            pass
