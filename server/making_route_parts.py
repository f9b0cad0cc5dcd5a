"""Parts of the route card in words: bar, print, what hand work is good for, batches, and the list of sources."""

from dataclasses import dataclass

from geometry.document.shop import Shop
from geometry.letters import lower_first
from geometry.making.batch import Batch
from geometry.making.hand_verdict import HandVerdict
from geometry.making.how_measured import dimension_title, measured_names
from geometry.making.printing import PrintPlan
from geometry.making.stock import StockPlan
from geometry.pad import Pad
from server import shown
from server.check_views import verdict_words
from server.making_shown import Eye, TableView, bar_length, long_length, mass, minutes, money


@dataclass(frozen=True, slots=True)
class HandView:
    """What hand work is good for."""

    words: str
    dimensions: str
    """What is only held to class c."""
    still: tuple[tuple[str, str], ...]
    """The checks that depend on a tolerance and still pass, with how."""
    failing: tuple[tuple[str, str], ...]


def stock_rows(plan: StockPlan, shop: Shop, eye: Eye) -> tuple[tuple[str, str], ...]:
    """The bar, the blank, and how it is held first and last."""
    price = money(plan.price, shop)
    order = "The top first, then the foot." if plan.order == "top_first" else "The foot first, then the top."
    rows = [
        ("Bar", f"{eye.length(plan.bar_mm)} across{'' if plan.bar_is_listed else ', which is not to hand'}"),
        ("Blank", f"{eye.length(plan.blank_mm)} long, and {eye.length(plan.kerf_mm)} for the saw"),
    ]
    if plan.stub_mm > 0:
        rows.append(("Of that only to hold it", eye.length(plan.stub_mm)))
    rows.append(("Mass of the blank", f"about {mass(plan.mass_kg, eye.units)}"))
    if price:
        rows.append(("Price of the blank", f"about {price}, saw cut included"))
    return (*rows, ("Order", f"{order} {eye.says(plan.why)}"))


def print_rows(plan: PrintPlan, pad: Pad, shop: Shop, eye: Eye) -> tuple[tuple[str, str], ...]:
    """The print and what it takes."""
    infill = f"{plan.infill_percent:g} %, {'solid' if plan.is_solid else 'not solid'}"
    # Where printing is not advisable, the card says so before anything else.
    rows = [("Statement", plan.words)] if plan.is_advisable else []
    rows += [
        ("Orientation", eye.says(plan.orientation)),
        ("Layers", f"{plan.layers}, each {eye.length(plan.layer_height_mm)} high"),
        ("Walls", f"{plan.walls}, {eye.length(plan.wall_mm)} thick together"),
        ("Infill", infill),
        ("Keeps its shape up to", f"{plan.temperature_max_c:g} °C"),
        (
            "A slot wall may use" if pad.has_slot else "Across its layers it may use",
            f"{shown.share(plan.wall_strength_share)} of the stress allowed along the layers",
        ),
        ("Filament", f"about {shown.mass(plan.mass_kg, eye.units)}, {long_length(plan.filament_mm, eye.units)}"),
    ]
    price = money(plan.price, shop)
    rows += [("Price", f"about {price}")] if price else []
    return (*rows, ("Time at the printer", f"about {minutes(plan.time_min)}"))


def hand_view(verdict: HandVerdict, pad: Pad) -> HandView:
    """Which checks a pad made by hand still meets at class c."""
    made = (name for name in measured_names(pad) if name in verdict.dimensions)
    return HandView(
        words=verdict.words,
        dimensions=", ".join(lower_first(dimension_title(name, pad)) for name in made),
        still=tuple((c.title, verdict_words(c)) for c in verdict.still_met),
        failing=tuple((c.title, verdict_words(c)) for c in verdict.newly_failing),
    )


def batch_rows(batches: tuple[Batch, ...], shop: Shop, eye: Eye) -> TableView:
    """One pad beside three from one bar."""
    has_price = any(b.price is not None for b in batches)
    heads = ("pads", "bar used", "mass of bar", *(("price",) if has_price else ()), "time", "time for each")
    rows = tuple(
        (
            "one pad" if b.pads == 1 else f"{b.pads} pads from one bar",
            bar_length(b.bar_used_mm, eye.units),
            mass(b.mass_kg, eye.units),
            *((money(b.price, shop),) if has_price else ()),
            minutes(b.time_min),
            minutes(b.time_each_min),
        )
        for b in batches
    )
    return TableView("One pad, or several from one bar", heads, rows)
