"""The shop's pages under a saved design's link: route card, inspection sheet and record, with the way back to the revision."""

from collections.abc import Mapping
from dataclasses import replace

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from server import links
from server.design_views import conflict_words
from server.documents import Pairs, query_pairs
from server.field_views import with_units_spelled_out
from server.fields import FIELDS
from server.forms import FormReading, Units, read_form
from server.making_case import Case, Kind, case_of
from server.making_inspection import InspectionPage, inspection_page
from server.making_record import RecordPage, record_page
from server.making_route import RoutePage, route_page
from server.making_shop import shop_form
from server.making_views import Standing
from server.making_wear import KEY, Place, split_added, with_added
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
    asked, added = split_added(query_pairs(request))

    def answer() -> Response:
        access, found = opened(store_of(request), secret, letters)
        reading, own = reading_with(found, asked)
        place, problems = record_place(access, found.letters, own, reading.units), dict[str, str]()
        if any(text.strip() for text in added.values()):
            reading, problems = with_added(reading, added)
            if not problems:
                return RedirectResponse(place.at_log(reading.typed[KEY]), 303, headers=PRIVATE)
        if kind == "inspection" and access.may_add:
            return RedirectResponse(shop_address(access, found.letters, kind, reading.units), 303, headers=PRIVATE)
        case = case_of(reading)
        if case is None and kind == "route" and own:
            return HTMLResponse(
                render("making/route.html", _asked_again(access, found, reading, own)), 422, headers=PRIVATE
            )
        if case is None:
            # Today's program has no such pad; the working sheet says why.
            return RedirectResponse(links.pad_address(reading.typed, units=reading.units), 303, headers=PRIVATE)
        made = _made(kind, case, added, problems, place)
        page = _marked(_under(made, access, found, own, kind), _failed(store_of(request), found, reading.units))
        status = 422 if reading.problems or problems else 200
        return HTMLResponse(render(f"making/{kind}.html", page), status, headers=PRIVATE)

    return await run_in_threadpool(answer)


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


def reading_with(found: Revision, asked: Pairs) -> tuple[FormReading, dict[str, str]]:
    """A revision's answers with those that an address adds or takes away, and the latter alone."""
    kept = reading_of_address(found.address)
    units: Units = next((u for u in ("mm", "in") for key, text in asked if (key, text) == ("units", u)), kept.units)
    own = {key: text for key, text in asked if key in FIELDS}
    typed = with_units_spelled_out(kept.typed, kept.units, units) | own
    return read_form([*((key, text) for key, text in typed.items() if text.strip()), ("units", units)]), own


def _made(kind: Kind, case: Case, added: Mapping[str, str], problems: Mapping[str, str], place: Place) -> ShopPage:
    if kind == "route":
        return route_page(case)
    return inspection_page(case) if kind == "inspection" else record_page(case, added, problems, place)


def _asked_again(access: Access, found: Revision, reading: FormReading, own: Mapping[str, str]) -> RoutePage:
    """The shop's questions alone, where answers of this address leave no pad to write a card for."""
    outcome = outcome_of(reading)
    form = shop_form(outcome.reading)
    asked = {field.key for group in form.groups for field in group.fields}
    troubles = [problem.message for problem in outcome.reading.problems if problem.field not in asked]
    if outcome.conflict:
        troubles.append(conflict_words(outcome.conflict, reading.units))
    head = head_as_saved(access, found, own, "route", reading.units)
    return RoutePage(
        head=head,
        shop=replace(form, hidden=(("units", head.units),), is_open=True),
        card=None,
        has_problem=True,
        back=head.back,
        caution_line=head.caution_line,
        troubles=tuple(troubles),
    )


def _under(page: ShopPage, access: Access, found: Revision, own: Mapping[str, str], kind: Kind) -> ShopPage:
    """The page with its ways under the link; its form carries nothing that the revision holds."""
    assert page.head is not None  # noqa: S101 - a page of a case has one
    head = belonging(page.head, access, found, own, kind)
    if isinstance(page, RoutePage):
        return replace(page, head=head, shop=replace(page.shop, hidden=(("units", head.units),)))
    if isinstance(page, InspectionPage):
        return replace(page, head=head, hidden=(("units", head.units),), kept=NOT_KEPT)
    return replace(page, head=head)
