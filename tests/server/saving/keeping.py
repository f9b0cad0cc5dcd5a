"""Something to keep: small stand-ins where no engine is needed."""

from typing import Any

from server.store.database import Database
from server.store.designs import Kept, add_design, add_revision
from server.store.links import Access, add_links, open_link


def kept(words: str = "as saved", **changes: Any) -> Kept:
    """A worked-out design that is small enough to read."""
    known: dict[str, Any] = {
        "document": {"title": words},
        "address": "/pad?jack.cup_bore_mm=68",
        "design": {"verdict": words, "pad": {"web_mm": 18.5}},
        "facts": {"title": words},
        "engine_version": "1",
        "files": {"svg": b"<svg/>", "pdf": b"%PDF-\x00\xff"},
    }
    return Kept(**known | changes)


def saved(database: Database, words: str = "as saved") -> tuple[str, str]:
    """A design with one revision: its id and its owner's secret."""
    with database.writing() as connection:
        design_id = add_design(connection, title="Van")
        add_revision(connection, design_id, kept(words), number=1, note="")
        return design_id, add_links(connection, design_id)


def access(database: Database, secret: str) -> Access:
    """What stands behind a secret."""
    with database.reading() as connection:
        return open_link(connection, secret)
