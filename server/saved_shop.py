"""The shop's pages under a saved design's link: route card, inspection sheet and record, with the way back to the revision."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from urllib.parse import urlencode

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from server.documents import Pairs, query_pairs
from server.field_views import LinkView, with_units_spelled_out
from server.fields import FIELDS
from server.forms import FormReading, Units, read_form
from server.links import saved_address
from server.making_case import TITLES, Belongs, Case, Head, Kind, case_of
from server.making_inspection import InspectionPage, inspection_page
from server.making_record import RecordPage, record_page
from server.making_route import RoutePage, route_page
from server.making_views import Standing
from server.making_wear import KEY, Place, split_added, with_added
from server.readings_views import failed_standing
from server.saved_api import Letters, Secret
from server.saved_pages import PRIVATE, store_of
from server.saved_parts import shop_address
from server.sharing import opened
from server.store.database import Database
from server.store.designs import Revision
from server.store.exchange import readings_of
from server.store.keys import Kind as LinkKind
from server.store.links import Access
from server.templating import render
from server.working_out import reading_of_address

router = APIRouter(default_response_class=Response, include_in_schema=False)
ShopPage = RoutePage | InspectionPage | RecordPage
_NOT_KEPT = (
    "This link is for reading: readings typed here are judged for you and not kept. To keep them with the design, ask its owner for"
    " a link that may add to it."
)


@dataclass(frozen=True, slots=True)
class _Keeps:
    """How the holder of a link keeps readings in service."""

    words: str
    way: str
    where: str


_KEEPS: Mapping[LinkKind, _Keeps] = {
    "owner": _Keeps(
        "A day that you enter is judged and stands in this page’s address; the revision stays as it is until you save another.",
        "Save these readings as the next revision",
        "/change",
    ),
    "friend": _Keeps(
        "A day that you enter is judged and stands in this page’s address; the owner finds it when you send it as a proposal.",
        "Send these readings as a proposal",
        "/try",
    ),
}


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
        problems: dict[str, str] = {}
        if any(text.strip() for text in added.values()):
            reading, problems = with_added(reading, added)
            if not problems:
                place = _place(access, found, reading, own)
                return RedirectResponse(place.at_log(reading.typed[KEY]), 303, headers=PRIVATE)
        if kind == "inspection" and access.may_add:
            return RedirectResponse(shop_address(access, found.letters, kind, reading.units), 303, headers=PRIVATE)
        case = case_of(reading)
        if case is None:
            # Today's program has no such pad; the working sheet says why.
            return RedirectResponse(found.address, 303, headers=PRIVATE)
        made = _made(kind, case, added, problems, _place(access, found, reading, own))
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


def belonging(head: Head, access: Access, found: Revision, own: Mapping[str, str], kind: Kind) -> Head:
    """The head of a page that belongs to a revision: every way stays under the link, and one leads back."""
    here = shop_address(access, found.letters, kind)
    back = LinkView(f"Back to revision {found.letters}", saved_address(access.secret, found.letters))
    return replace(
        head,
        belongs=Belongs(back, found.letters),
        here=here,
        pages=tuple(
            (LinkView(words, shop_address(access, found.letters, k, head.units)), k == kind)
            for k, words in TITLES.items()
        ),
        units_links=tuple(
            LinkView(u, f"{here}?{urlencode(with_units_spelled_out(own, head.units, u) | {'units': u})}")
            for u in ("mm", "in")
        ),
    )


def _made(kind: Kind, case: Case, added: Mapping[str, str], problems: Mapping[str, str], place: Place) -> ShopPage:
    if kind == "route":
        return route_page(case)
    return inspection_page(case) if kind == "inspection" else record_page(case, added, problems, place)


def _place(access: Access, found: Revision, reading: FormReading, own: Mapping[str, str]) -> Place:
    """The place of a record under a link: its forms carry nothing that the revision holds."""
    here, here_units = shop_address(access, found.letters, "record"), {"units": reading.units}
    keeps = _KEEPS.get(access.kind)
    at = (
        f"{saved_address(access.secret, found.letters, keeps.where)}?{urlencode({KEY: own[KEY]})}"
        if keeps and KEY in own
        else ""
    )
    return Place(
        at_log=lambda log: f"{here}?{urlencode({**own, KEY: log, **here_units})}#dates",
        hidden=tuple({**own, **here_units}.items()),
        kept=keeps.words if keeps else _NOT_KEPT,
        save=LinkView(keeps.way, at) if keeps and at else None,
    )


def _under(page: ShopPage, access: Access, found: Revision, own: Mapping[str, str], kind: Kind) -> ShopPage:
    """The page with its ways under the link; its form carries nothing that the revision holds."""
    assert page.head is not None  # noqa: S101 - a page of a case has one
    head = belonging(page.head, access, found, own, kind)
    if isinstance(page, RoutePage):
        return replace(page, head=head, shop=replace(page.shop, hidden=(("units", head.units),)))
    if isinstance(page, InspectionPage):
        return replace(page, head=head, hidden=(("units", head.units),), kept=_NOT_KEPT)
    return replace(page, head=head)
