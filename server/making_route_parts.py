"""Parts of the route card in words: bar, print, what hand work is good for, batches, and the list of sources."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.design import Design
from geometry.document.shop import SPEEDS_SOURCE, Shop
from geometry.inspection import dimension_title
from geometry.making.bench import REST_SOURCE
from geometry.making.cutter import FORCE_SOURCE
from geometry.making.cutting import FINISH_FEED_SOURCE, ROUGH_FEED_SOURCE, SPEEDS, TOOTH_FEED_SOURCE
from geometry.making.hand_verdict import HandVerdict
from geometry.making.kit import GRIT_SOURCE
from geometry.making.printing import KNOCK_DOWN_SOURCE, ORIENTATION_SOURCE, PrintPlan
from geometry.making.slot_plan import SHARES_SOURCE
from geometry.making.stock import FACING_SOURCE, GRIP_SOURCE, Batch, StockPlan
from geometry.making.turning import RUN_OUT_SOURCE, TIMES_SOURCE
from geometry.making.watch import sources_of
from geometry.pad import Pad
from geometry.provenance import Source, practice
from geometry.route import RouteCard
from server import shown
from server.check_views import verdict_words
from server.making_shown import Eye, TableView, long_length, mass, minutes, money

CUTS_SOURCE = practice("Roughing cuts of 0.5 mm or 0.020 in, finishing cuts of 0.1 mm or 0.005 in, on a light lathe")
DIALS_SOURCE = practice("A line of a dial stands for 0.05 mm or 0.001 in")
INDICATED_SOURCE = practice("The pad stands true for the slot when an indicator reads even to 0.05 mm")


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


def print_rows(plan: PrintPlan, shop: Shop, eye: Eye) -> tuple[tuple[str, str], ...]:
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
        ("A slot wall may use", f"{shown.share(plan.wall_strength_share)} of the stress allowed along the layers"),
        ("Filament", f"about {shown.mass(plan.mass_kg, eye.units)}, {long_length(plan.filament_mm, eye.units)}"),
    ]
    price = money(plan.price, shop)
    rows += [("Price", f"about {price}")] if price else []
    return (*rows, ("Time at the printer", f"about {minutes(plan.time_min)}"))


def hand_view(verdict: HandVerdict, pad: Pad) -> HandView:
    """Which checks a pad made by hand still meets at class c."""
    made = (name for name in verdict.dimensions if getattr(pad, name) > 0)
    return HandView(
        words=verdict.words,
        dimensions=", ".join(shown.lower_first(dimension_title(name)) for name in made),
        still=tuple((c.rule.title, verdict_words(c)) for c in verdict.still_met),
        failing=tuple((c.rule.title, verdict_words(c)) for c in verdict.newly_failing),
    )


def batch_rows(batches: tuple[Batch, ...], shop: Shop, eye: Eye) -> TableView:
    """One pad beside three from one bar."""
    has_price = any(b.price is not None for b in batches)
    heads = ("pads", "bar used", "mass of bar", *(("price",) if has_price else ()), "time", "time for each")
    rows = tuple(
        (
            "one pad" if b.pads == 1 else f"{b.pads} pads from one bar",
            eye.length(b.bar_used_mm),
            mass(b.mass_kg, eye.units),
            *((money(b.price, shop),) if has_price else ()),
            minutes(b.time_min),
            minutes(b.time_each_min),
        )
        for b in batches
    )
    return TableView("One pad, or several from one bar", heads, rows)


def sources(card: RouteCard, design: Design) -> Iterator[tuple[str, str]]:
    """Everything that the card rests on and where it comes from, each once."""
    found = _printed(card) if card.printing else _cut(card, design)
    seen: set[str] = set()
    for words, source in found:
        if str(source) not in seen:
            seen.add(str(source))
            yield words, str(source)
    for source in sources_of(design.conditions.material.family):
        if str(source) not in seen:
            seen.add(str(source))
            yield "What to watch for", str(source)


def _printed(card: RouteCard) -> Iterator[tuple[str, Source]]:
    yield "How it lies on the bed", ORIENTATION_SOURCE
    yield "What is taken off its strength", KNOCK_DOWN_SOURCE
    for words, _, source in card.printing.knock_downs if card.printing else ():
        yield words, source
    yield "Finish", GRIT_SOURCE
    yield "Rest before measuring", REST_SOURCE


def _cut(card: RouteCard, design: Design) -> Iterator[tuple[str, Source]]:
    shop, c = design.measurements.shop, design.conditions
    yield "Facing allowance", FACING_SOURCE
    if any(o.cut for o in card.operations):
        yield "Cutting speeds", SPEEDS[c.material.family, shop.tool].source
        yield "Roughing feed", ROUGH_FEED_SOURCE
        yield "Finishing feed", FINISH_FEED_SOURCE
        yield "Depth of cut", CUTS_SOURCE
        yield "Dials", DIALS_SOURCE
        yield "Least grip", GRIP_SOURCE
        yield "Run-out", RUN_OUT_SOURCE
        if shop.spindle_speeds_rpm is None or shop.mill_speeds_rpm is None:
            yield "Speeds of the machines, where none are given", SPEEDS_SOURCE
    if card.slot:
        yield "Feed of the end mill", TOOTH_FEED_SOURCE
        yield "Depth and overlap of the slot's passes", SHARES_SOURCE
        yield "Bend of the cutter", FORCE_SOURCE
        yield "Standing true", INDICATED_SOURCE
    yield "Finish", GRIT_SOURCE
    yield "Rest before measuring", REST_SOURCE
    yield "Times beside the cut", TIMES_SOURCE
