"""The place of a record in service under a saved design's link: whoever may keep another day is led to where it is kept."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from urllib.parse import urlencode

from server.carried import AS_READ, NO_DAY, Carried
from server.field_views import LinkView
from server.links import saved_address
from server.making_wear import KEY, Place
from server.saved_parts import shop_address
from server.store.designs import Revision
from server.store.keys import Kind
from server.store.links import Access
from server.trying import AT_HAND
from server.working_out import reading_of_address

NOT_KEPT = (
    "This link is for reading: readings typed here are judged for you and not kept. To keep them with the design, ask its owner for"
    " a link that may add to it."
)


@dataclass(frozen=True, slots=True)
class _Keeps:
    """How the holder of a link keeps readings in service."""

    words: str
    way: str
    where: str


_KEEPS: Mapping[Kind, _Keeps] = {
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


def record_place(access: Access, found: Revision, carried: Carried) -> Place:
    """The place of a revision's record; its forms carry only what the address says beside the revision."""
    here, keeps, units = shop_address(access, found.letters, "record"), _KEEPS.get(access.kind), carried.units
    # An empty log is told as well: every entry that the revision holds was taken out.
    is_new = keeps is not None and KEY in carried.own

    def at_log(log: str) -> str:
        return replace(carried, own={**carried.own, KEY: log}).on(here, units) + "#dates"

    return Place(
        at_log=at_log,
        hidden=carried.hidden(has_day=False),
        day=tuple(carried.day.keys(units, units).items()),
        kept=keeps.words if keeps else NOT_KEPT,
        save=LinkView(keeps.way, _where_kept(access, found, carried)) if keeps and is_new else None,
    )


def _where_kept(access: Access, found: Revision, carried: Carried) -> str:
    """The copy of the revision with the answers of this address in it, as far as that page asks for them."""
    units = carried.units if not access.is_owner else reading_of_address(found.address).units
    keys = replace(carried, day=NO_DAY).keys(units, without=AS_READ)
    if access.is_owner:
        return f"{saved_address(access.secret, found.letters, '/change')}?{urlencode(keys)}"
    known = {key: text for key, text in keys.items() if key in (*AT_HAND, KEY)}
    return f"{saved_address(access.secret, found.letters, '/try')}?{urlencode(known | {'units': units})}"
