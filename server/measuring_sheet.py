"""The measuring sheet: paper to take to the car, with the same balloons, names and order as the working sheet."""

from collections.abc import Mapping
from dataclasses import dataclass

from fastapi import APIRouter, Request
from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, Response

from geometry.cautions import ONE_LINE
from geometry.drawing.section import section_of_partial, to_svg
from server import field_groups
from server.choice_words import words_of_answer
from server.documents import query_pairs
from server.field_views import FieldView, LinkView, field_view
from server.forms import FormReading, Units, read_form
from server.shown import counted
from server.stand import JACK_UP, stand_for, stand_of
from server.templating import render
from server.ways import asked_beside, units_ways, ways_of

router = APIRouter(include_in_schema=False)
CAUTIONS = (
    "Measure with the car on its wheels on level ground, parked, in gear or with the brake set. Nothing here is measured"
    " under a raised car.",
    "Keep hands and head out from under the sill while the jack carries anything. The jack is pumped up for its own"
    " measurement with nothing on it.",
    "Use only the lifting point that the vehicle's maker names in its manual.",
)
"""What holds while one measures; facts of the trade, no source."""
TOOLS = "Caliper, rule or tape, straight edge, torch, a few coins or a radius card, a rag, a pencil."


@dataclass(frozen=True, slots=True)
class SheetPart:
    """Some of the measurements, in the order in which they are taken."""

    heading: str
    fields: tuple[FieldView, ...]


@dataclass(frozen=True, slots=True)
class MeasuringPage:
    """The whole sheet."""

    section: Markup
    kinds: str
    """For which jack and which lifting point it is."""
    parts: tuple[SheetPart, ...]
    cautions: tuple[str, ...]
    tools: str
    units: str
    units_links: tuple[LinkView, ...]
    back: str
    asked: frozenset[str]
    """What the working sheet asks for as its choices stand; the other boxes wait for a choice about jack and car."""
    caution_line: str

    @property
    def needed(self) -> str:
        """How many boxes make a first pad, in a word."""
        return counted(sum(field.is_required for part in self.parts for field in part.fields))


@router.get("/measure")
async def measuring_sheet(request: Request) -> Response:
    """The sheet, empty; of its address the units matter, and the case to go back to."""
    case, units = asked_beside(query_pairs(request))
    return await run_in_threadpool(lambda: HTMLResponse(render("measure.html", measuring_page(units, case))))


def measuring_page(units: Units, case: FormReading | None = None) -> MeasuringPage:
    """The context of the sheet: every number that the working sheet asks of jack and car, and the way back to ``case``."""
    case = case or read_form([("units", units)])
    foot, head = case.foot, case.head
    choices = [(key, case.typed[key]) for key in stand_of(foot, head).kinds if key in case.typed]
    reading = read_form([("units", units), *choices])
    # On paper all is asked: what keeps a pad in its place is seen at the jack, with the sheet in hand.
    stand = stand_of(foot, head)
    section = section_of_partial({"foot": foot, "head": head}, asks_all=True)

    def part(heading: str, *keys: str) -> SheetPart:
        return SheetPart(heading, tuple(_field(key, reading, stand.balloons) for key in keys))

    return MeasuringPage(
        section=Markup(to_svg(section, units=units, width=600)),  # noqa: S704 - our own drawing
        kinds=f"{words_of_answer('foot', foot)}; {words_of_answer('head', head)}",
        parts=(
            part("The jack", *stand.jack, "jack.rated_load_kg", JACK_UP),
            part("More about the jack", *stand.more_jack),
            part("The car", *stand.car, "car.gross_mass_kg"),
            part(f"More about the {stand.car_heading}", *stand.more_car),
        ),
        cautions=CAUTIONS,
        tools=TOOLS,
        units=units,
        units_links=units_ways(case, "/measure"),
        back=ways_of(case, units=units).sheet,
        asked=field_groups.keys_on_sheet((), stand_for(case)),
        caution_line=ONE_LINE,
    )


def _field(key: str, reading: FormReading, balloons: Mapping[str, int]) -> FieldView:
    return field_view(key, reading, balloons, field_groups.needed_in(reading))
