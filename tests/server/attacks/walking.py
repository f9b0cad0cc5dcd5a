"""Every address of the application, so that one that is added tomorrow is attacked as well."""

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from xml.etree import ElementTree

from fastapi import FastAPI
from fastapi.routing import iter_route_contexts

from server.app import create_app
from server.settings import Settings

BROKEN_OUT = "data-attack"
"""An attribute that stands in a page only if a text has become markup."""
PAYLOAD = f"\"'></title></textarea></script></svg><b {BROKEN_OUT} onclick=x>{{{{7*7}}}}"
SHORT_PAYLOAD = f"\"'><b {BROKEN_OUT}>"
_OUTSIDE = re.compile(r"\s*(javascript|data|vbscript)\s*:", re.IGNORECASE)
_ADDRESSES = {"href", "src", "action", "formaction", "xlink:href", "hx-get", "hx-post"}


def addresses(*, method: str, app: FastAPI | None = None) -> Iterator[str]:
    """The path of every route that takes a method, its parameters in braces."""
    # The database is never opened: only the routes are read.
    whole = app or create_app(Settings(database=":memory:", model_cache_folder="none"))
    for route in iter_route_contexts(whole.routes):
        if method in (route.methods or set()) and route.path is not None:
            yield route.path


def filled(path: str, /, **values: str) -> str:
    """A route's path with something in the place of each parameter."""
    return re.sub(r"{(\w+)(?::\w+)?}", lambda m: values.get(m[1], "A"), path)


class _Markup(HTMLParser):
    """Collects what in a page would run, and what a text has broken out into."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.tags = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags += 1
        named = dict(attrs)
        if tag == "script" and not (named.get("src") or "").startswith("/static/"):
            self.found.append("script")
        if tag in {"iframe", "object", "embed", "base", "style", "foreignobject"}:
            self.found.append(tag)
        for name, text in attrs:
            runs = name.startswith(("on", "hx-on", BROKEN_OUT)) or name == "style"
            if runs or (name in _ADDRESSES and _OUTSIDE.match(text or "")):
                self.found.append(f"{tag} {name}={text}")


def what_would_run(page: str) -> list[str]:
    """Scripts, handlers, styles and foreign frames in a page; a page without any tag is no page."""
    markup = _Markup()
    markup.feed(page)
    markup.close()
    assert markup.tags > 5, page[:200]
    return markup.found


def what_would_run_in_xml(picture: bytes) -> list[str]:
    """The same in an SVG picture, or in the XML of a model file; it must be well-formed."""
    # The files are our own; a document type, which could name other files, is refused first.
    assert b"<!DOCTYPE" not in picture
    found = []
    for element in ElementTree.fromstring(picture).iter():  # noqa: S314
        tag = element.tag.rpartition("}")[2].lower()
        if tag in {"script", "foreignobject", "style", "iframe", "set", "animate"}:
            found.append(tag)
        for name, text in element.attrib.items():
            bare = name.rpartition("}")[2].lower()
            if bare.startswith(("on", BROKEN_OUT)) or (bare == "href" and not text.startswith(("#", "data:image/"))):
                found.append(f"{tag} {bare}={text}")
    return found
