"""The route card in words: stock, set-ups and operations in order, tools, price and time, and where its figures come from."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from markupsafe import Markup

from geometry.cautions import ONE_LINE
from geometry.design import Design
from geometry.letters import upper_first
from geometry.making.card import Operation
from geometry.making.how_measured import left_sizes
from geometry.making.set_ups import set_up_heading
from geometry.making.sources import route_sources
from geometry.pad import DIMENSIONS, Pad
from geometry.route import RouteCard, route_card
from server import links, shown
from server.carried import NO_DAY, AnotherDay
from server.forms import FormReading
from server.making_case import Case, Head, head_of
from server.making_pictures import picture_svg
from server.making_route_parts import (
    HandView,
    batch_rows,
    hand_view,
    print_rows,
    stock_rows,
)
from server.making_shop import ShopForm, shop_form
from server.making_shown import (
    Eye,
    TableView,
    bar_length,
    eye_of,
    feed_line,
    minutes,
    pass_tables,
    speed_line,
    table_view,
)

_PLACES = "in section with the levels of its passes, and above it each place of the cutter in order, with its distance from the"
_PICTURES = {
    "Cut the slot": f"The slot {_PLACES} centre line",
    "Cut the second slot": f"The second slot {_PLACES} centre line",
    "Cut the relief pocket": f"The pocket {_PLACES} centre line",
    "Cut the seat's corner radius": "The seat's corner in section: the true arc thin, the straight cuts thick, each with its"
    " number and the compound's angle",
}


@dataclass(frozen=True, slots=True)
class OperationView:
    """One operation as printed."""

    number: int
    id: str
    title: str
    time: str
    facts: tuple[tuple[str, str], ...]
    """Holding, tool, speed, feed, depth and passes, surface."""
    why: str
    steps: tuple[str, ...]
    tables: tuple[TableView, ...]
    picture: Markup | None
    watch: tuple[str, ...]
    leaves: str


@dataclass(frozen=True, slots=True)
class SetUpView:
    """Operations of one clamping."""

    heading: str
    holding: str
    datum: str
    operations: tuple[OperationView, ...]


@dataclass(frozen=True, slots=True)
class ToolView:
    """One tool of the list."""

    number: str
    name: str
    operations: str


@dataclass(frozen=True, slots=True)
class CardView:
    """The card itself."""

    summary: str
    troubles: tuple[str, ...]
    stock: tuple[tuple[str, str], ...]
    printing: tuple[tuple[str, str], ...]
    knock_downs: tuple[tuple[str, str, str], ...]
    set_ups: tuple[SetUpView, ...]
    tools: tuple[ToolView, ...]
    by_hand: HandView | None
    batches: TableView | None
    bar_line: str
    sources: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class RoutePage:
    """The route card's page; without a card where the shop's answers do not go together."""

    head: Head | None
    shop: ShopForm
    card: CardView | None
    has_problem: bool
    back: str
    caution_line: str
    troubles: tuple[str, ...] = ()
    """Why there is no card, beside what stands beside its field."""


def route_page(case: Case) -> RoutePage:
    """The context of the page."""
    design, reading = case.design, case.reading
    card = route_card(design.pad, design.conditions, design.measurements.shop)
    form = shop_form(reading, case.day)
    head = head_of(case, "route", title=card.title)
    return RoutePage(
        head=head,
        shop=form,
        card=card_view(card, design, reading),
        has_problem=form.is_open,
        back=head.back,
        caution_line=head.caution_line,
    )


def card_view(card: RouteCard, design: Design, reading: FormReading) -> CardView:
    """The card in the viewer's unit."""
    eye = eye_of(design.conditions, reading.units)
    shop = design.measurements.shop
    plan = card.printing
    pads = "1 pad" if card.pads_from_bar == 1 else f"{card.pads_from_bar or 'no'} pads"
    left = f"A bar of {bar_length(shop.bar_length_mm, eye.units)} gives {pads}." if card.stock else ""
    return CardView(
        summary=_summary(card),
        troubles=tuple(eye.says(trouble) for trouble in card.troubles),
        stock=stock_rows(card.stock, shop, eye) if card.stock else (),
        printing=print_rows(plan, design.pad, shop, eye) if plan else (),
        knock_downs=tuple((w, f"{factor:g} of it is left", str(s)) for w, factor, s in plan.knock_downs)
        if plan
        else (),
        set_ups=tuple(_set_ups(card, design, eye)),
        tools=tuple(
            ToolView(str(t.number), eye.says(t.name), ", ".join(str(n) for n in t.operations)) for t in card.tools
        ),
        by_hand=hand_view(card.by_hand, design.pad) if card.by_hand else None,
        batches=batch_rows(card.batches, shop, eye) if card.batches else None,
        bar_line=left,
        sources=tuple((w, str(s)) for w, s in route_sources(card, design.conditions, shop)),
    )


def _summary(card: RouteCard) -> str:
    """Material, number of operations and time in a line."""
    cutting = sum(o.cutting_time_min for o in card.operations)
    beside = f", {minutes(cutting)} of it cutting" if cutting else ""
    count = f" {len(card.operations)} operations, estimated" if card.stock else " Estimated"
    return f"{upper_first(card.material)}.{count} {minutes(card.time_min)} for one pad{beside}."


def _set_ups(card: RouteCard, design: Design, eye: Eye) -> Iterator[SetUpView]:
    """Operations under the clamping that they share, in order."""
    numbered = [(i, o) for i, o in enumerate(card.operations, start=1)]
    process = design.conditions.process
    known = {s.number: s for s in card.set_ups}
    for set_up, rows in groupby(numbered, key=lambda row: row[1].set_up):
        found = list(rows)
        holding = eye.says(found[0][1].holding)
        entry = known.get(set_up)
        yield SetUpView(
            heading=set_up_heading(set_up, design.pad, process),
            holding=holding,
            datum=eye.says(entry.datum) if entry else "",
            operations=tuple(_operation(i, o, holding, design, eye) for i, o in found),
        )


def _operation(number: int, o: Operation, holding: str, design: Design, eye: Eye) -> OperationView:
    has_dials = design.conditions.process != "cnc"
    tables = [*pass_tables(o.passes, eye, has_dials=has_dials)]
    tables += [table_view(table, eye) for table in o.tables]
    prefix = f"operation-{number}"
    picture = picture_svg(o.picture, title=_PICTURES[o.title], prefix=prefix, units=eye.units) if o.picture else None
    return OperationView(
        number=number,
        id=prefix,
        title=o.title,
        time=_time(o),
        facts=tuple(_facts(o, holding, eye)),
        why=eye.says(o.why) if o.why else "",
        steps=tuple(eye.says(step) for step in o.steps),
        tables=tuple(tables),
        picture=picture,
        watch=tuple(eye.says(words) for words in o.watch),
        leaves=_leaves(o, design.pad, eye),
    )


def _time(o: Operation) -> str:
    setting = f", {minutes(o.setting_time_min)} of it once for a run" if o.setting_time_min else ""
    return f"about {minutes(o.time_min)}{setting}"


def _facts(o: Operation, holding: str, eye: Eye) -> Iterator[tuple[str, str]]:
    own = eye.says(o.holding)
    yield "Holding", "As this set-up says." if own == holding else own
    yield "Tool", eye.says(o.tool)
    if o.cut:
        yield "Speed", f"{speed_line(o.cut, eye)}."
        if o.finish_cut and o.finish_cut.rpm != o.cut.rpm:
            yield "Speed to finish", f"{speed_line(o.finish_cut, eye)}."
        feeds = [("roughing " if o.finish_cut else "") + feed_line(o.cut, eye)]
        feeds += [f"finishing {feed_line(o.finish_cut, eye)}"] if o.finish_cut else []
        yield "Feed", f"{'; '.join(feed for feed in feeds if feed)}."
    if o.passes:
        deepest = max(p.infeed_mm for p in o.passes)
        count = f"{len(o.passes)} passes" if len(o.passes) > 1 else "One pass"
        yield "Depth", f"{count}, up to {eye.length(deepest)} deep."
    if o.roughness_um:
        yield (
            "Surface",
            f"Ra {shown.plain(o.roughness_um, 1)} µm in theory, from feed and nose alone; plastic is left rougher.",
        )


def _leaves(o: Operation, pad: Pad, eye: Eye) -> str:
    """The sizes that are finished after an operation."""
    if set(DIMENSIONS) <= set(o.leaves_mm):
        return "every size of the pad"
    return "; ".join(f"{words} {eye.length(size)}" for words, size in left_sizes(o.leaves_mm, pad))


def ask_again(reading: FormReading, day: AnotherDay = NO_DAY) -> RoutePage | None:
    """The shop's questions alone, where their answers do not go together; None where anything else is wrong."""
    form = shop_form(reading, day)
    asked = {field.key for group in form.groups for field in group.fields}
    if reading.missing or not reading.problems or not all(p.field in asked for p in reading.problems):
        return None
    back = links.pad_address(reading.typed, units=reading.units)
    return RoutePage(head=None, shop=form, card=None, has_problem=True, back=back, caution_line=ONE_LINE)
