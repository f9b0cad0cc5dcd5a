"""The shop's pages under a saved design's link: route card, inspection sheet and record, with the way back to the revision."""

from collections.abc import Mapping
from dataclasses import replace

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from server import links
from server.carried import NO_DAY, Carried, carried_in
from server.design_views import conflict_words
from server.documents import Pairs, query_pairs
from server.field_views import with_units_spelled_out
from server.forms import FormReading, Units, read_form
from server.making_case import Case, Kind, case_of
from server.making_inspection import InspectionPage, asked_on, inspection_page
from server.making_record import RecordPage, record_page
from server.making_route import RoutePage, route_page
from server.making_shop import ShopForm, shop_form
from server.making_views import Standing
from server.making_wear import KEY, Place, with_added
from server.outcome import outcome_of
from server.readings_views import failed_standing
from server.saved_api import Letters, Secret
from server.saved_head import belonging, head_as_saved
from server.saved_pages import PRIVATE, store_of
from server.saved_parts import shop_address
from server.saved_record import NOT_KEPT, record_place
from server.sharing import opened
from server.store.database import Database
from server.store.designs import Revision
from server.store.exchange import readings_of
from server.store.links import Access
from server.templating import render
from server.working_out import reading_of_address

router = APIRouter(default_response_class=Response, include_in_schema=False)
ShopPage = RoutePage | InspectionPage | RecordPage


@router.get("/saved/{secret}/{letters}/route")
async def saved_route(request: Request, secret: Secret, letters: Letters) -> Response:
    """The route card of a revision; the address may hold answers about the reader's own shop."""
    return await _page(request, secret, letters, "route")


@router.get("/saved/{secret}/{letters}/inspection")
async def saved_inspection(request: Request, secret: Secret, letters: Letters) -> Response:
    """The inspection sheet of a revision; whoever may keep readings is led to the one that keeps them."""
    return await _page(request, secret, letters, "inspection")


@router.get("/saved/{secret}/{letters}/record")
async def saved_record(request: Request, secret: Secret, letters: Letters) -> Response:
    """The record in service of a revision."""
    return await _page(request, secret, letters, "record")


async def _page(request: Request, secret: str, letters: str, kind: Kind) -> Response:
    asked = query_pairs(request)

    def answer() -> Response:
        access, found = opened(store_of(request), secret, letters)
        reading, carried = reading_with(found, asked)
        problems = dict[str, str]()
        if kind == "record" and carried.day.is_to_be_entered:
            reading, problems = with_added(reading, carried.day.texts)
            if not problems:
                place = record_place(access, found, replace(carried, day=NO_DAY))
                return RedirectResponse(place.at_log(reading.typed[KEY]), 303, headers=PRIVATE)
        if kind == "inspection" and access.may_add:
            at = carried.on(shop_address(access, found.letters, kind, reading.units), reading.units)
            return RedirectResponse(at, 303, headers=PRIVATE)
        case = case_of(reading, carried.day)
        if case is None:
            return _without_a_pad(kind, access, found, reading, carried)
        made = _made(kind, case, problems, record_place(access, found, carried))
        page = _marked(_under(made, access, found, carried, kind), _failed(store_of(request), found, reading.units))
        status = 422 if reading.problems or problems else 200
        return HTMLResponse(render(f"making/{kind}.html", page), status, headers=PRIVATE)

    return await run_in_threadpool(answer)


def _without_a_pad(kind: Kind, access: Access, found: Revision, reading: FormReading, carried: Carried) -> Response:
    """Where answers of the address leave no pad, the shop's questions under the link; else what the program of today says."""
    if not carried.own:
        return RedirectResponse(links.pad_address(reading.typed, units=reading.units), 303, headers=PRIVATE)
    if kind != "route":
        at = carried.on(shop_address(access, found.letters, "route", reading.units), reading.units)
        return RedirectResponse(at, 303, headers=PRIVATE)
    page = _asked_again(access, found, reading, carried)
    return HTMLResponse(render("making/route.html", page), 422, headers=PRIVATE)


def _failed(database: Database, found: Revision, units: Units) -> Standing | None:
    """How the part stands by the readings that are kept beside the revision, where these say that it must not be used."""
    with database.reading() as connection:
        kept = readings_of(connection, found.id)
    return failed_standing(found, kept, units)


def _marked(page: ShopPage, failed: Standing | None) -> ShopPage:
    """The page with the mark of a part that must not be used, as the revision's own page has it."""
    if failed is None or page.head is None:
        return page
    head = replace(page.head, standing=failed)
    if isinstance(page, InspectionPage):
        return replace(page, head=head, shows_standing=page.outcome is None or page.outcome.outcome != "do_not_use")
    return replace(page, head=head)


def reading_with(found: Revision, asked: Pairs) -> tuple[FormReading, Carried]:
    """A revision's answers with those that an address adds or takes away, and what the address carries beside the revision."""
    kept = reading_of_address(found.address)
    units: Units = next((u for u in ("mm", "in") for key, text in asked if (key, text) == ("units", u)), kept.units)
    as_kept, sent = with_units_spelled_out(kept.typed, kept.units, units), carried_in(asked, units)
    # What a form sends as the revision has it adds nothing to an address, and takes nothing away.
    own = {key: text for key, text in sent.own.items() if text.strip() != as_kept.get(key, "").strip()}
    typed = as_kept | own
    reading = read_form([*((key, text) for key, text in typed.items() if text.strip()), ("units", units)])
    return reading, replace(sent, own=own)


def _made(kind: Kind, case: Case, problems: Mapping[str, str], place: Place) -> ShopPage:
    if kind == "route":
        return route_page(case)
    return inspection_page(case) if kind == "inspection" else record_page(case, problems, place)


def _asked_again(access: Access, found: Revision, reading: FormReading, carried: Carried) -> RoutePage:
    """The shop's questions alone, where answers of this address leave no pad to write a card for."""
    outcome = outcome_of(reading)
    form = shop_form(outcome.reading)
    asked = {field.key for group in form.groups for field in group.fields}
    troubles = [problem.message for problem in outcome.reading.problems if problem.field not in asked]
    if outcome.conflict:
        troubles.append(conflict_words(outcome.conflict, reading.units))
    head = head_as_saved(access, found, carried, "route")
    return RoutePage(
        head=head,
        shop=replace(_carrying(form, carried), is_open=True),
        card=None,
        has_problem=True,
        back=head.back,
        caution_line=head.caution_line,
        troubles=tuple(troubles),
    )


def _carrying(form: ShopForm, carried: Carried) -> ShopForm:
    """The shop's questions in a form that takes along what was typed elsewhere, and nothing that the revision holds."""
    return replace(form, hidden=carried.hidden(field.key for group in form.groups for field in group.fields))


def _under(page: ShopPage, access: Access, found: Revision, carried: Carried, kind: Kind) -> ShopPage:
    """The page with its ways under the link; its form carries nothing that the revision holds."""
    assert page.head is not None  # noqa: S101 - a page of a case has one
    head = belonging(page.head, access, found, carried, kind)
    if isinstance(page, RoutePage):
        return replace(page, head=head, shop=_carrying(page.shop, carried))
    if isinstance(page, InspectionPage):
        return replace(page, head=head, hidden=carried.hidden(asked_on(page)), kept=NOT_KEPT)
    return replace(page, head=head)
