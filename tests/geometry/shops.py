"""Shops and route cards for tests: any lathe and mill, and the card of a sized pad."""

from typing import Any

from hypothesis import assume
from hypothesis import strategies as st

from geometry.conditions import Conditions, conditions_of
from geometry.document.shop import Shop
from geometry.errors import NoPadFitsError
from geometry.measurements import read_measurements
from geometry.pad import Pad
from geometry.route import RouteCard, route_card
from geometry.sizing import size
from tests.documents import ordinary_documents, van


def shops() -> st.SearchStrategy[Shop]:
    """Lathes and mills of all kinds, fast and slow, stiff and slender, metric and inch."""
    speeds = st.lists(st.integers(30, 3000).map(float), min_size=1, max_size=10).map(tuple)
    return st.builds(
        Shop,
        spindle_speeds_rpm=st.none() | speeds,
        mill_speeds_rpm=st.none() | speeds,
        slide=st.sampled_from(["radius", "diameter"]),
        tool=st.sampled_from(["hss", "carbide"]),
        largest_cut_mm=st.none() | st.floats(0.05, 6),
        kerf_mm=st.floats(0.3, 6),
        slot_machine=st.sampled_from(["mill", "vertical_slide"]),
        cutter_held_in=st.sampled_from(["collet", "chuck"]),
        cusp_limit_mm=st.floats(0.01, 1),
        price_per_m=st.none() | st.floats(0, 500),
    )


@st.composite
def jobs(draw: st.DrawFn) -> tuple[Pad, Conditions, Shop]:
    """A sized pad with its conditions and a shop to make it in."""
    document = draw(ordinary_documents())
    document["make"]["step"] = draw(st.sampled_from(["metric", "inch"]))
    document["make"]["process"] = draw(st.sampled_from(["lathe_and_mill", "cnc"]))
    conditions = conditions_of(read_measurements(document))
    try:
        pad = size(conditions).pad
    except NoPadFitsError:
        assume(False)
    return pad, conditions, draw(shops())


def job(document: dict[str, Any] | None = None, **changes: Any) -> tuple[Pad, Conditions, Shop]:
    """The van's pad, or that of another document, in its own shop."""
    measurements = read_measurements(document or van(**changes))
    conditions = conditions_of(measurements)
    return size(conditions).pad, conditions, measurements.shop


def card(document: dict[str, Any] | None = None, **changes: Any) -> RouteCard:
    """The route card of ``job``."""
    return route_card(*job(document, **changes))
