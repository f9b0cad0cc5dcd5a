"""How a viewer wants the sheets of a design: sizes in mm, inches or both, the projection, the paper."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from datetime import date
from typing import get_args

from geometry.design import Design
from geometry.drawing.facts import Paper, Projection, SheetFacts
from geometry.drawing.facts import Units as Sizes
from geometry.errors import BadMeasurementsError, Problem
from geometry.sheet_facts import sheet_facts
from server.documents import Pairs
from server.forms import FormReading

CHOICES: Mapping[str, tuple[str, ...]] = {
    "sizes": get_args(Sizes),
    "projection": get_args(Projection),
    "paper": get_args(Paper),
}
"""The keys of an address that are the viewer's own, each with what may be said; left out, the shop's custom holds."""
_LONGEST_SHOWN = 40


@dataclass(frozen=True, slots=True)
class View:
    """One viewer's choices; None where nothing was chosen."""

    sizes: Sizes | None = None
    projection: Projection | None = None
    paper: Paper | None = None

    def keys(self, **changed: str) -> dict[str, str]:
        """What an address says of these choices, some of them changed."""
        return {key: text for key, text in (asdict(self) | changed).items() if text}


def split_view(pairs: Pairs) -> tuple[Pairs, View]:
    """The pairs that describe the design, and the viewer's choices.

    Raises BadMeasurementsError where a choice is none of those offered, or is made twice.
    """
    said: dict[str, str] = {}
    problems = []
    for key, text in ((key, text) for key, text in pairs if key in CHOICES and text):
        offered = CHOICES[key]
        if key in said:
            problems.append(Problem(key, text, f"“{key}” is chosen twice; leave one out."))
        elif text not in offered:
            words = f"“{text[:_LONGEST_SHOWN]}” is not offered as {key}; choose {' or '.join(offered)}."
            problems.append(Problem(key, text[:_LONGEST_SHOWN], words))
        said[key] = text
    if problems:
        raise BadMeasurementsError(tuple(problems))
    return [pair for pair in pairs if pair[0] not in CHOICES], View(**said)  # type: ignore[arg-type]  # looked up above


def facts_of_view(design: Design, reading: FormReading, view: View, *, issued: date) -> SheetFacts:
    """What a sheet says, as its viewer wants it; what was not chosen follows the shop that makes the pad."""
    units = view.sizes or (reading.units if reading.units_chosen else None)
    facts = sheet_facts(design, issued=issued, units=units, projection=view.projection)
    return replace(facts, paper=view.paper) if view.paper else facts
