"""Several pads from one bar: how much of it they take, what they cost, and how long they take."""

from dataclasses import dataclass

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.bar import bar_mass_kg, price_of
from geometry.making.card import Operation
from geometry.making.stock import StockPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """So many pads from one bar."""

    pads: int
    bar_used_mm: float
    mass_kg: float
    price: float | None
    time_min: float
    """Estimated, settings made once."""

    @property
    def time_each_min(self) -> float:
        """Estimated time for each pad."""
        return self.time_min / self.pads


def batch_of(pads: int, operations: tuple[Operation, ...], plan: StockPlan, c: Conditions, shop: Shop) -> Batch:
    """What so many pads take, made one after the other on the same settings."""
    used = bar_used_mm(plan, pads)
    return Batch(
        pads=pads,
        bar_used_mm=used,
        mass_kg=bar_mass_kg(plan.bar_mm, used, c),
        price=price_of(plan.bar_mm, used, c, shop),
        time_min=sum(o.setting_time_min + pads * o.each_time_min for o in operations),
    )


def bar_used_mm(plan: StockPlan, pads: int) -> float:
    """Length of bar for so many pads, saw cuts included; a bar held by its own end shares that end."""
    each = plan.blank_mm + plan.kerf_mm
    if plan.order == "top_first":
        return pads * each
    return pads * (each - plan.stub_mm) + plan.stub_mm


def pads_from_bar(plan: StockPlan, bar_length_mm: float) -> int:
    """How many pads a bar of a length gives."""
    count = 0
    # The last piece needs no saw cut of its own.
    while bar_used_mm(plan, count + 1) - plan.kerf_mm <= bar_length_mm:
        count += 1
    return count
