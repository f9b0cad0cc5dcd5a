"""Every way in which a pad can stand and take the car, once: its document, its papers as text, and words that are not its own."""

import re
from collections.abc import Callable, Iterator, Mapping
from datetime import date
from functools import cache
from typing import Any

from geometry.calculation.as_data import sheet_data
from geometry.calculation.sheet import CalculationSheet
from geometry.design import Design, design_pad
from geometry.drawing.facts import SheetFacts
from geometry.drawing.svg import all_texts
from geometry.drawing.table import dimension_table
from geometry.measurements import read_measurements
from geometry.packet.calculation import calculation_data
from geometry.packet.card import card_data
from geometry.packet.cover import cover_data
from geometry.packet.gauge_outlines import gauges_of
from geometry.packet.making import inspection_data, making_data, source_rows
from geometry.packet.record import record_data
from geometry.sheet_facts import sheet_facts
from server.making_data import DATA
from tests.drawing.pads import laid_out
from tests.geometry.feet.post_documents import posted
from tests.geometry.feet.round_documents import WAYS, standing
from tests.geometry.heads.documents import OBLONG, on_a_rail

DAY = date(2026, 2, 3)
HEADS = ("slot", "cushion", "plug", "oblong")
FEET = ("cup", *WAYS, "post")


def document_of(foot: str, head: str) -> dict[str, Any]:
    """An ordinary document of one way to stand and one way to take the car; ``oblong`` is a rectangular plug."""
    kind = "plug" if head == "oblong" else head
    if foot == "post":
        document = posted(kind)
    elif foot == "cup":
        document = standing("ring", kind) | {"foot": "cup", "jack": on_a_rail()["jack"]}
    else:
        document = standing(foot, kind)
    if head == "oblong":
        document["pocket"] = dict(OBLONG)
    return document


EVERY = (*((foot, head) for foot in FEET for head in HEADS[:3]), ("cup", "oblong"), ("post", "oblong"))
"""Each way to stand with each head once, and a rectangular plug on two of them."""


@cache
def design_of(foot: str, head: str, **make: str) -> Design:
    """The pad of it, made in some way."""
    return design_pad(read_measurements(document_of(foot, head) | ({"make": make} if make else {})))


def facts_of(design: Design) -> SheetFacts:
    return sheet_facts(design, issued=DAY)


def drawn(design: Design, facts: SheetFacts) -> Any:
    """The words of the drawing and of its table of dimensions."""
    drawing = laid_out(design.pad, facts)
    rows = [row.words for row in dimension_table(drawing)]
    return [*rows, *(text.words for text in all_texts(drawing))]


def _gauges(design: Design, facts: SheetFacts, _: CalculationSheet) -> Any:
    return [[gauge.title, gauge.use] for gauge in gauges_of(design, facts.units)]


PAPERS: Mapping[str, Callable[[Design, SheetFacts, CalculationSheet], Any]] = {
    "cover": cover_data,
    "card": lambda design, facts, _: card_data(design, facts),
    "record": lambda design, facts, _: record_data(design, facts),
    "calculation": lambda _, facts, sheet: calculation_data(sheet, facts.units),
    "route": lambda design, facts, _: making_data(design, facts),
    "inspection": lambda design, facts, _: inspection_data(design, facts),
    "sources": lambda design, _, sheet: source_rows(design, sheet),
    "gauges": _gauges,
    "route.json": lambda design, _f, _s: DATA["route"](design),
    "inspection.json": lambda design, _f, _s: DATA["inspection"](design),
    "record.json": lambda design, _f, _s: DATA["record"](design),
    "calculation.json": lambda _d, _f, sheet: sheet_data(sheet),
}


def texts_in(thing: Any) -> Iterator[str]:
    """Every text that a reader of the data meets; of a picture its lettering and what it says to those who do not see it."""
    match thing:
        case str() if "<svg" in thing:
            yield from re.findall(r"aria-label=\"([^\"]*)\"", thing)
            yield from re.findall(r">([^<>]+)<", thing)
        case str():
            yield thing
        case Mapping():
            for value in thing.values():
                yield from texts_in(value)
        case tuple() | list():
            for value in thing:
                yield from texts_in(value)


FOREIGN: Mapping[str, frozenset[str]] = {
    r"\bcups?\b": frozenset({"cup"}),
    r"\b(?:tooth|teeth)(?:'s)?\b|\bland\b": frozenset({"land", "teeth"}),
    r"\b(?:cup's|jack's) rim\b|\boff the rim\b": frozenset({"cup"}),
    r"\brims?\b": frozenset({"cup", "post", "plug", "oblong"}),
    r"\brecess's\b": frozenset({"recess"}),
    r"\b(?:posts?|bore's rim)\b": frozenset({"post"}),
    r"\bseams?\b": frozenset({"slot"}),
    r"\bsills?\b": frozenset({"slot"}),
    r"\bslots?\b": frozenset({"slot"}),
    r"\bwall tops?\b|\bslot walls?\b": frozenset({"slot"}),
    r"\bcushions?\b": frozenset({"cushion"}),
    r"\bplugs?\b": frozenset({"plug", "oblong"}),
    r"\bskirts?\b": frozenset({"teeth", "edge"}),
}
"""Words, and the ways to stand or to take the car that they belong to; elsewhere they speak of something that is not there."""
FINE = re.compile(
    r"side skirts?|feed per tooth|\d teeth\b|tool post|pads?,? (?:and )?not a post|pad and not a post|never a post"
    r"|its lip or its skirt|\"(?:cup|rim)\"_|where a skirt goes around|end plug",
    re.IGNORECASE,
)
"""What holds such a word and means something else."""


def foreign_words(foot: str, head: str, text: str) -> list[str]:
    """The words of a text that belong to another kind."""
    left = FINE.sub("", text)
    return [
        found.group()
        for pattern, kinds in FOREIGN.items()
        if not kinds & {foot, head}
        for found in re.finditer(pattern, left, re.IGNORECASE)
    ]
