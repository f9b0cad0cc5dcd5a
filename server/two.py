"""Two ways side by side: a design, and the same job with some answers changed; what differs is marked."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from fastapi import APIRouter, Request
from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, Response

from geometry.cautions import ONE_LINE
from server import links
from server.choice_words import CHOICE_WORDS
from server.difference import Difference, difference
from server.documents import query_pairs
from server.fields import FIELDS
from server.forms import FormReading, read_form
from server.outcome import Outcome, outcome_of
from server.section_view import bare_picture
from server.shown import unit_of_field
from server.templating import render

router = APIRouter(include_in_schema=False)
OTHER = "other."
"""Before the key of an answer that the other way gives instead."""
LEFT_OUT = "-"
"""What is typed to leave an answer out of the other way."""
OFTEN_CHANGED = (
    "make.material",
    "make.process",
    "make.slots",
    "make.body",
    "fixed.body_diameter_mm",
    "fixed.web_mm",
    "fixed.slot_width_mm",
    "jack.cup_bore_mm",
    "jack.cup_depth_mm",
    "jack.rated_load_kg",
    "jack.rim_height_low_mm",
    "car.lift_needed_mm",
)


@dataclass(frozen=True, slots=True)
class Ask:
    """One answer that may be changed for the other way."""

    key: str
    name: str
    title: str
    unit: str
    here: str
    """The answer of the first way."""
    text: str
    """What was typed for the other one; empty where it stays."""
    options: tuple[tuple[str, str], ...]
    problem: str


@dataclass(frozen=True, slots=True)
class Way:
    """One of the two: what it looks like, what came of it, and where it can be changed further."""

    heading: str
    picture: Markup
    verdict: str
    is_fit: bool
    address: str
    problems: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TwoPage:
    """Both ways, what differs, and what may be changed."""

    ways: tuple[Way, Way]
    found: Difference | None
    """None while one of the two has no pad."""
    asks: tuple[Ask, ...]
    kept: tuple[tuple[str, str], ...]
    """The first way's answers, which the form sends along."""
    back: str
    caution_line: str = ONE_LINE


@router.get("/pad/two")
async def two(request: Request) -> Response:
    """A design and the same job done another way, side by side; keys that begin with “other.” are the changed answers."""
    return await run_in_threadpool(_answer, query_pairs(request))


def _answer(pairs: list[tuple[str, str]]) -> Response:
    changes = {key.removeprefix(OTHER): text for key, text in pairs if key.startswith(OTHER) and text.strip()}
    own = [(key, text) for key, text in pairs if not key.startswith(OTHER)]
    one = outcome_of(read_form(own))
    other = outcome_of(read_form([*_changed(one.reading, changes).items(), ("units", one.reading.units)]))
    page = TwoPage(
        ways=(_way("This design", one, "one"), _way("The other way", other, "other")),
        found=_found(one, other),
        asks=tuple(_asks(one.reading, other.reading, changes)),
        kept=(*one.reading.typed.items(), ("units", one.reading.units)),
        back=links.pad_address(one.reading.typed, units=one.reading.units),
    )
    return HTMLResponse(render("two.html", page), headers={"Cache-Control": "no-store"})


def _changed(reading: FormReading, changes: Mapping[str, str]) -> dict[str, str]:
    """The answers of the other way as typed."""
    typed = {**reading.typed, **changes}
    return {key: text for key, text in typed.items() if text.strip() != LEFT_OUT}


def _found(one: Outcome, other: Outcome) -> Difference | None:
    if one.design is None or other.design is None:
        return None
    return difference(one.design.to_dict(), other.design.to_dict(), one.reading.units)


def _way(heading: str, outcome: Outcome, prefix: str) -> Way:
    reading = outcome.reading
    return Way(
        heading,
        bare_picture(outcome, prefix),
        _verdict(outcome),
        outcome.state == "fit",
        links.pad_address(reading.typed, units=reading.units),
        tuple(problem.message for problem in reading.problems),
    )


def _verdict(outcome: Outcome) -> str:
    if outcome.design:
        return outcome.design.verdict_words
    if outcome.conflict:
        return f"No pad fits. {outcome.conflict.words}"
    missing = ", ".join(outcome.reading.fields[key].title for key in outcome.reading.missing)
    return f"Still to be measured: {missing}." if missing else "There is no pad yet."


def _asks(one: FormReading, other: FormReading, changes: Mapping[str, str]) -> Iterator[Ask]:
    """What people change most, and whatever else this address changes."""
    wrong = {problem.field: problem.message for problem in other.problems}
    for key in dict.fromkeys((*OFTEN_CHANGED, *(key for key in changes if key in FIELDS))):
        field = FIELDS[key]
        here = one.typed.get(key, "")
        words = CHOICE_WORDS.get(key, {})
        usual = str(field.default) if field.choices else ""
        yield Ask(
            key,
            OTHER + key,
            f"{field.title}, fixed" if key.startswith("fixed.") else field.title,
            unit_of_field(field.unit, field.kind, one.units),
            words.get(here or usual, here) or "left out",
            changes.get(key, ""),
            tuple((choice, words.get(choice, choice)) for choice in field.choices),
            wrong.get(key, "") if key in changes else "",
        )
