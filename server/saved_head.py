"""The head of a page of the shop under a saved design's link: every way stays there, and one leads back to the revision."""

from collections.abc import Mapping
from dataclasses import replace

from geometry import ENGINE_VERSION
from geometry.cautions import ONE_LINE
from geometry.drawing.frame import NOT_FIT
from server.carried import Carried
from server.field_views import LinkView
from server.forms import Units
from server.links import saved_address
from server.making_case import TITLES, Belongs, Head, Kind, pending_way
from server.saved_parts import shop_address
from server.store.designs import Revision
from server.store.links import Access


def belonging(head: Head, access: Access, found: Revision, carried: Carried, kind: Kind) -> Head:
    """The head of a page that belongs to a revision: every way stays under the link and takes along what was typed."""
    here = shop_address(access, found.letters, kind)
    revision = carried.on(saved_address(access.secret, found.letters), "mm", has_units=False)
    back = LinkView(f"Back to revision {found.letters}", revision)

    def way(to: Kind, units: Units) -> str:
        return carried.on(shop_address(access, found.letters, to, units), units)

    return replace(
        head,
        belongs=Belongs(back, found.letters),
        here=here,
        pages=tuple((LinkView(words, way(k, carried.units)), k == kind) for k, words in TITLES.items()),
        units_links=tuple(LinkView(u, way(kind, u)) for u in _UNITS),
        pending=pending_way(kind, way("record", carried.units)) if carried.day.texts else None,
    )


_UNITS: tuple[Units, ...] = ("mm", "in")


def head_as_saved(access: Access, found: Revision, carried: Carried, kind: Kind) -> Head:
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
        units=carried.units,
        units_links=(),
        caution_line=ONE_LINE,
        here="",
    )
    return belonging(head, access, found, carried, kind)
