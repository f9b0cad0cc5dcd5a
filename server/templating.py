"""Templates: escaped by default, and loud where a name is missing."""

import re
from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from jinja2.ext import Extension
from markupsafe import Markup

from server.links import static_url

TEMPLATES = Path(__file__).resolve().parent.parent / "templates"


class WithoutIndent(Extension):
    """Leaves the templates' own indentation out of what is sent; nothing here is printed as it is spaced."""

    def preprocess(self, source: str, name: str | None, filename: str | None = None) -> str:
        """The template without spaces at the beginning of its lines."""
        return re.sub(r"^[ \t]+", "", source, flags=re.MULTILINE)


def _environment() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        # What is kept is not made anew where its template changes, so none is asked for at every request whether it did.
        auto_reload=False,
        trim_blocks=True,
        lstrip_blocks=True,
        extensions=[WithoutIndent],
    )
    environment.globals |= {"static_url": static_url, "kept": kept}
    return environment


@lru_cache(maxsize=2048)
def kept(template: str, page: object, place: str = "") -> Markup:
    """A piece of a page that seldom changes: printed once for each content and place, then kept."""
    return Markup(_ENVIRONMENT.get_template(template).render(page=page, place=place))  # noqa: S704 - its texts are escaped


_ENVIRONMENT = _environment()


def render(template: str, page: object) -> str:
    """One page; its context is the only thing that its template knows."""
    return _ENVIRONMENT.get_template(template).render(page=page)
