"""Templates: escaped by default, and loud where a name is missing."""

from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from server.links import static_url

TEMPLATES = Path(__file__).resolve().parent.parent / "templates"


def _environment() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals["static_url"] = static_url
    return environment


_ENVIRONMENT = _environment()


def render(template: str, page: object) -> str:
    """One page; its context is the only thing that its template knows."""
    return _ENVIRONMENT.get_template(template).render(page=page)
