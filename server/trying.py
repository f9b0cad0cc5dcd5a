"""A copy of a revision with other answers, worked out again: a friend sends it as a proposal, its owner saves it as the next."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import Response

from geometry.cautions import ONE_LINE
from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from geometry.variants import material_changes
from server import field_groups, links, saved_api
from server.difference import Difference, difference
from server.documents import query_pairs
from server.exchange import opened_for
from server.field_groups import FieldGroup
from server.field_views import FieldView, field_view, with_units_spelled_out
from server.fields import FIELDS
from server.making_wear import KEY as LOG
from server.saved_api import Letters, Secret
from server.saved_pages import UnusableError, fields_of, private_page, store_of
from server.saved_parts import Way, eye_units
from server.saving import LONGEST_NAME, LONGEST_REMARK, gone_to
from server.stand import JACK_UP, stand_for
from server.store.designs import Revision
from server.store.exchange import add_proposal
from server.store.links import Access
from server.working_out import changed_address, facts_of, plain_words, reading_of_address, whole_reading, worked_out

router = APIRouter(default_response_class=Response)
_Pairs = tuple[tuple[str, str], ...]
AT_HAND = (
    "make.material",
    "make.process",
    "make.step",
    "make.stock_diameters_mm",
    "make.cutter_diameters_mm",
)
"""What a friend may have otherwise than was thought."""


@dataclass(frozen=True, slots=True)
class Copy:
    """A copy with its changes, worked out."""

    inputs: str
    """The copy's address, to be sent back as a proposal or saved as a revision."""
    trouble: str
    verdict: str = ""
    difference: Difference | None = None
    design: Design | None = None


@dataclass(frozen=True, slots=True)
class Beside:
    """What was typed to go with a copy, and why the copy is not passed on yet."""

    words: str = ""
    """The note of an owner, the words of a friend."""
    name: str = ""
    problem: str = ""

    @classmethod
    def of(cls, sent: Mapping[str, str]) -> "Beside":
        """What a form or an address holds of it."""
        words = plain_words(sent.get("words", "") or sent.get("note", ""), LONGEST_REMARK)
        again = _WORKED_OUT_AGAIN if sent.get("again") else ""
        return cls(words, plain_words(sent.get("name", ""), LONGEST_NAME), again)


_WORKED_OUT_AGAIN = (
    "Nothing is sent yet: you had changed something since the copy was last worked out. Here it is worked out again; look at"
    " what came of it first."
)


@dataclass(frozen=True, slots=True)
class ChangePage:
    """A copy of a revision with everything that the working sheet asks, for its owner to save as the next one.

    The working sheet's own address must not hold an owner's secret, and without a script nothing else could carry it there
    and back. This page has it in its own address, as every page of the design, and hands it on in the body of a form.
    """

    title: str
    letters: str
    path: str
    back: Way
    groups: tuple[FieldGroup, ...]
    hidden: tuple[tuple[str, str], ...]
    """Readings in service that were all taken out: no question stands for them then."""
    came: Copy
    beside: Beside
    caution_line: str = ONE_LINE


@dataclass(frozen=True, slots=True)
class TryPage:
    """A copy of a revision's job with another bar, cutter or material, worked out again."""

    title: str
    letters: str
    path: str
    back: Way
    fields: tuple[FieldView, ...]
    hidden: tuple[tuple[str, str], ...]
    """The units, and readings in service that go with the proposal."""
    came: Copy
    beside: Beside
    caution_line: str = ONE_LINE


@router.get("/saved/{secret}/{letters}/try", include_in_schema=False)
async def try_it(request: Request, secret: Secret, letters: Letters) -> Response:
    """The copy, with what was changed in it so far; the revision itself stays as it is."""
    changes = {key: text for key, text in query_pairs(request) if key in (*AT_HAND, LOG)}
    wanted, beside = request.query_params.get("units", ""), Beside.of(request.query_params)

    def page() -> Response:
        access, found = opened_for(store_of(request), secret, letters, need="friend")
        inputs = changed_address(_in_units(found.address, wanted), tuple(_that_go_together(found, changes).items()))
        return private_page("try.html", _try_page(access, found, inputs, _log_in(changes), beside))

    return await run_in_threadpool(page)


def _try_page(access: Access, found: Revision, inputs: str, log: _Pairs, beside: Beside) -> TryPage:
    reading = reading_of_address(inputs)
    came = _came_of(found, inputs)
    at = links.saved_address(access.secret, found.letters)
    return TryPage(
        title=access.design.title or found.design["title"] or "Lifting pad",
        letters=found.letters,
        path=at,
        back=Way(f"Back to revision {found.letters}", at),
        fields=tuple(field_view(key, reading, {}) for key in AT_HAND),
        hidden=(("units", reading.units), *log),
        came=came,
        beside=beside,
    )


def _log_in(changes: Mapping[str, str]) -> _Pairs:
    """The readings in service among some changes."""
    return ((LOG, changes[LOG]),) if LOG in changes else ()


def _in_units(address: str, wanted: str) -> str:
    """The same measurements at an address in which bare numbers are read in the viewer's unit."""
    reading = reading_of_address(address)
    if wanted not in {"mm", "in"} or wanted == reading.units:
        return address
    return links.pad_address(with_units_spelled_out(reading.typed, reading.units, wanted), units=wanted)


def _came_of(found: Revision, inputs: str) -> Copy:
    """A copy worked out, beside the revision as saved."""
    try:
        _, measurements = whole_reading(inputs)
        design = design_pad(measurements)
    except BadMeasurementsError as error:
        return Copy(inputs, "; ".join(problem.message for problem in error.problems))
    except NoPadFitsError as error:
        return Copy(inputs, str(error))
    differs = difference(found.design, design.to_dict(), eye_units(facts_of(found)))
    return Copy(inputs, "", design.verdict_words, differs, design)


@router.get("/saved/{secret}/{letters}/change", include_in_schema=False)
async def change_it(request: Request, secret: Secret, letters: Letters) -> Response:
    """The copy with all its questions; nothing is saved by looking at it."""
    changes = {key: text for key, text in query_pairs(request) if key in FIELDS}
    beside = Beside.of(request.query_params)

    def page() -> Response:
        access, found = opened_for(store_of(request), secret, letters, need="owner")
        return private_page("change.html", _change_page(access, found, changes, beside))

    return await run_in_threadpool(page)


def _change_page(access: Access, found: Revision, changes: Mapping[str, str], beside: Beside) -> ChangePage:
    inputs = changed_address(found.address, tuple(_that_go_together(found, changes).items()))
    reading, came = reading_of_address(inputs), _came_of(found, inputs)

    def ask(*keys: str) -> tuple[FieldView, ...]:
        needed = field_groups.needed_in(reading)
        return tuple(field_view(key, reading, {}, needed) for key in keys)

    at = links.saved_address(access.secret, found.letters)
    stand = stand_for(reading)
    groups = (
        FieldGroup("jack", "The jack", "", ask(*stand.jack, "jack.rated_load_kg", JACK_UP), True),
        FieldGroup("seam", f"The car's {stand.car_heading}", "", ask(*stand.car, "car.gross_mass_kg"), True),
        field_groups.more("more-jack", "More about the jack", ask(*stand.more_jack)),
        field_groups.more("more-seam", f"More about the {stand.car_heading}", ask(*stand.more_car)),
        *field_groups.groups(reading, came.design, ask),
    )
    asked = {field.key for group in groups for field in group.fields}
    return ChangePage(
        title=access.design.title or found.design["title"] or "Lifting pad",
        letters=found.letters,
        path=at,
        back=Way(f"Back to revision {found.letters}", at),
        groups=groups,
        hidden=() if LOG in asked else _log_in(changes),
        came=came,
        beside=beside,
    )


def _that_go_together(found: Revision, changes: Mapping[str, str]) -> dict[str, str]:
    """The changes, and with another material what goes with it: its process, and the old rod's own figures."""
    typed = reading_of_address(found.address).typed
    # The usual answer of a choice is sent as nothing.
    usual = str(FIELDS["make.material"].default)
    material = (changes.get("make.material") or usual) if "make.material" in changes else ""
    was = found.document.get("make", {}).get("material", usual)
    # What is not printed and what is exclude each other; a process that was chosen by hand stays.
    is_by_hand = changes.get("make.process", "") != typed.get("make.process", "") and "make.process" in changes
    if not material or material == was:
        return dict(changes)
    try:
        follow = material_changes(read_measurements(found.document), material)
    except (KeyError, BadMeasurementsError):
        return dict(changes)
    added = {k: "" if v is None else str(v) for k, v in follow.items() if k != "make.process" or not is_by_hand}
    return {**changes, **added}


@router.post("/saved/{secret}/{letters}/proposals", **saved_api.PROPOSAL)
async def propose(request: Request, secret: Secret, letters: Letters) -> Response:
    """Put a copy, worked out again, beside the revision it was made from."""
    sent = await fields_of(request)
    beside, inputs = Beside.of(sent), sent.get("inputs", "")
    database, issued = store_of(request), request.app.state.settings.drawing_day()
    access, found = await run_in_threadpool(lambda: opened_for(database, secret, letters, need="friend"))

    def again(problem: str) -> Response:
        log = _log_in(reading_of_address(inputs).typed)
        page = _try_page(access, found, inputs, log, replace(beside, problem=problem))
        return private_page("try.html", page, 422)

    try:
        reading, measurements = whole_reading(inputs)
        kept = await run_in_threadpool(worked_out, reading, measurements, number=found.number, issued=issued)
    except (BadMeasurementsError, NoPadFitsError) as error:
        if isinstance(error, BadMeasurementsError) and any(p.field == "inputs" for p in error.problems):
            raise UnusableError(str(error)) from None
        return await run_in_threadpool(again, f"This cannot be worked out, so it was not sent: {error}")
    if kept.document == found.document:
        words = (
            "Nothing is different from the revision, so nothing was sent. Change the material, a bar or a cutter first."
        )
        return await run_in_threadpool(again, words)
    await run_in_threadpool(lambda: add_proposal(database, found.id, kept, name=beside.name, words=beside.words))
    return gone_to(secret, letters, "proposal")
