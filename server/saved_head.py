"""The head of a page of the shop under a saved design's link: every way stays there, and one leads back to the revision."""

from collections.abc import Mapping
from dataclasses import replace
from urllib.parse import urlencode

from geometry import ENGINE_VERSION
from geometry.cautions import ONE_LINE
from geometry.drawing.frame import NOT_FIT
from server.field_views import LinkView, with_units_spelled_out
from server.forms import Units
from server.links import saved_address
from server.making_case import TITLES, Belongs, Head, Kind
from server.saved_parts import shop_address
from server.store.designs import Revision
from server.store.links import Access


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


def head_as_saved(access: Access, found: Revision, own: Mapping[str, str], kind: Kind, units: Units) -> Head:
    """The head of a page of a revision as it was saved: nothing is sized again."""
    design: Mapping[str, object] = found.design
    is_fit = bool(design["fit_to_make"])
    head = Head(
        kind=TITLES[kind],
        title=access.design.title or str(design["title"] or "Lifting pad"),
        identity=f"revision {found.letters}, design {design['design_id']}, engine {found.engine_version or ENGINE_VERSION}",
        verdict=str(design["verdict"]),
        unfit="" if is_fit else f"{NOT_FIT}.",
        standing=None,
        back=found.address,
        pages=(),
        data=saved_address(access.secret, found.letters, ".json"),
        units=units,
        units_links=(),
        caution_line=ONE_LINE,
        here="",
    )
    return belonging(head, access, found, own, kind)
