"""How every sheet for paper is set: data as JSON, the shipped font alone, a fixed day, tags for readers of the screen."""

import json
import re
from collections.abc import Iterable, Mapping
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import typst
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

from geometry.cautions import ONE_LINE
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import NOT_FIT
from geometry.drawing.lettering import FONT_DIRECTORY, FONT_FAMILY, FONT_FILE
from geometry.drawing.model import Text
from geometry.drawing.pdf import placed_text

Data = dict[str, Any]
_HERE = Path(__file__).parent
_LONGEST_WORD = 24
_UNKNOWN = "\ufffd"
_UNIT = re.compile(r"(?<=\d) (?=(?:mm|MPa|kN|N|kg|lbf|lb|in|min|µm|°C|%)(?![\w]))")


def pdf_of(template: str, facts: SheetFacts, title: str, data: Mapping[str, Any]) -> bytes:
    """A PDF/UA-1 document of one template; nothing of ``data`` is ever read as source."""
    whole = _common(facts, title) | dict(data)
    inputs = {"sheet": kept_together(printable(json.dumps(whole, ensure_ascii=False)))}
    made = _compiler(template).compile(format="pdf", pdf_standards="ua-1", sys_inputs=inputs)
    if not isinstance(made, bytes):
        raise TypeError(f"{template} gave no document")
    return made


def _breakable(words: str) -> str:
    """The words with places to break in those that are longer than a line may be."""
    return re.sub(rf"\S{{{_LONGEST_WORD}}}", "\\g<0>\u200b", words)


def kept_together(text: str) -> str:
    """The text with every number held to its unit, so that no line breaks between them.

    >>> kept_together("A web of 20.5 mm under 9.7 kN") == "A web of 20.5\\u00a0mm under 9.7\\u00a0kN"
    True
    """
    return _UNIT.sub("\u00a0", text)


def printable(text: str) -> str:
    """The text with a sign in place of every character that the shipped font cannot print.

    >>> printable("Van, left 車 point")
    'Van, left \ufffd point'
    """
    return text if text.isascii() else "".join(c if ord(c) in _characters() else _UNKNOWN for c in text)


@cache
def _characters() -> frozenset[int]:
    """Every character that the shipped font has."""
    with TTFont(FONT_DIRECTORY / FONT_FILE, lazy=True) as font:
        return frozenset(font.getBestCmap()) | {ord("\n")}


@cache
def _compiler(template: str) -> typst.Compiler:
    """A compiler keeps its font from one document to the next; no font of the machine is looked at."""
    return typst.Compiler(_HERE / template, font_paths=[FONT_DIRECTORY], ignore_system_fonts=True)


def _common(facts: SheetFacts, title: str) -> Data:
    """What every page says."""
    day = date.fromisoformat(facts.date)
    return {
        "name": title,
        "document_title": f"{title}: {facts.title}, design {facts.design_id}",
        "title": _breakable(facts.title),
        "identity": f"Design {facts.design_id}, revision {facts.revision}, {facts.date}",
        "author": facts.creator,
        "date": [day.year, day.month, day.day],
        "paper": "a4" if facts.paper == "A4" else "us-letter",
        "font": FONT_FAMILY,
        "caution_line": ONE_LINE,
        "not_fit": "" if facts.fit_to_make else NOT_FIT,
        "not_fit_words": facts.not_fit_words,
    }


def placed_page(*, width_mm: float, height_mm: float, picture: str, texts: Iterable[Text], alt: str) -> Data:
    """A page in true size: its lines as a picture, every word as text at its place."""
    return {
        "width": width_mm,
        "height": height_mm,
        "picture": picture,
        "alt": alt,
        "texts": [placed_text(text, height_mm) for text in texts],
    }
