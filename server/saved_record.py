"""The place of a record in service under a saved design's link: whoever may keep another day is led to where it is kept."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from server.field_views import LinkView
from server.forms import Units
from server.links import saved_address
from server.making_wear import KEY, Place
from server.saved_parts import shop_address
from server.store.keys import Kind
from server.store.links import Access

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


def record_place(access: Access, letters: str, own: Mapping[str, str], units: Units) -> Place:
    """The place of a revision's record; its forms carry only what the address says beside the revision."""
    here, carried = shop_address(access, letters, "record"), {**own, "units": units}
    keeps, save = _KEEPS.get(access.kind), None
    if keeps and KEY in own:
        # An empty log is told as well: every entry that the revision holds was taken out.
        at = f"{saved_address(access.secret, letters, keeps.where)}?{urlencode({KEY: own[KEY]})}"
        save = LinkView(keeps.way, at)
    return Place(
        at_log=lambda log: f"{here}?{urlencode(carried | {KEY: log})}#dates",
        hidden=tuple(carried.items()),
        kept=keeps.words if keeps else NOT_KEPT,
        save=save,
    )
