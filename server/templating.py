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
        # None is asked for at every request whether it has changed, unless somebody works on them.
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


def read_changes() -> None:
    """From now on every template that has changed is read anew, and no piece is kept: for whoever works on them."""
    _ENVIRONMENT.auto_reload = True


def render(template: str, page: object) -> str:
    """One page; its context is the only thing that its template knows."""
    if _ENVIRONMENT.auto_reload:
        kept.cache_clear()
    return _ENVIRONMENT.get_template(template).render(page=page)
