"""How one thing is measured, and what leaving it out means: the piece of the page that a question's “how?” opens."""

from dataclasses import dataclass
from functools import lru_cache

from markupsafe import Markup

from server.fields import FormField
from server.how_to import HowPicture, picture_for
from server.left_out import LeftOut, is_optional, left_out
from server.shown import words_in
from server.templating import render


@dataclass(frozen=True, slots=True)
class HowView:
    """How one thing is measured, and what leaving it out means."""

    title: str
    how: str
    help: str
    picture: HowPicture | None
    """How it is measured, drawn."""
    assumed: str
    taken: str
    left_out: LeftOut | None


@lru_cache(maxsize=1024)
def explained(field: FormField, units: str, taken: str, *, foot: str, required: bool) -> Markup:
    """An explanation as the page prints it; most of them never change, and there are many on a sheet."""
    key = field.key
    view = HowView(
        field.title,
        printed(field.how, units),
        printed(field.help, units),
        picture_for(key, foot),
        "" if required else printed(field.assumed, units),
        taken,
        left_out(key) if is_optional(key) and not required else None,
    )
    return Markup(render("parts/how.html", view))  # noqa: S704 - the template escapes every text


@lru_cache(maxsize=512)
def printed(words: str, units: str) -> str:
    """Standing words of a field in the viewer's unit."""
    return words_in(words, units)
