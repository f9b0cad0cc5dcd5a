"""Cards of every kind of pad, for tests: one card of each kind, and jobs over all of them."""

from itertools import groupby

from hypothesis import strategies as st

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation, Pass
from geometry.making.machine import Machine, machine_of
from geometry.making.wording import Sentence
from geometry.pad import Pad
from geometry.route import RouteCard, route_card
from tests.geometry.pads import EVERY_KIND, pads_of_any_kind
from tests.geometry.shops import job, shops

Job = tuple[Pad, Conditions, Shop]
CONDITIONS = {
    (process, step): job(make={"process": process, "step": step})[1]
    for process in ("lathe_and_mill", "cnc")
    for step in ("metric", "inch")
}


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    """A pad of any kind in any shop; of the conditions only stock, cutters, material and process matter here."""
    return draw(pads_of_any_kind()), draw(st.sampled_from(list(CONDITIONS.values()))), draw(shops())


def machine(process: str = "lathe_and_mill") -> Machine:
    return machine_of(CONDITIONS[process, "metric"], Shop())


def made(name: str, **shop: object) -> RouteCard:
    """The card of one kind of pad."""
    return route_card(EVERY_KIND[name], CONDITIONS["lathe_and_mill", "metric"], Shop.model_validate(shop))


def titles(card: RouteCard) -> list[str]:
    return [o.title for o in card.operations]


def sentences(card: RouteCard) -> list[Sentence]:
    """Every sentence of a card."""
    found = [*card.troubles, *(s for each in card.set_ups for s in (each.holding, each.datum))]
    for o in card.operations:
        found += [o.holding, o.tool, *o.steps, *o.watch, *([o.why] if o.why else [])]
    return found


def named(card: RouteCard, title: str) -> Operation:
    return next(o for o in card.operations if o.title == title)


def runs(operation: Operation) -> list[list[Pass]]:
    """The passes of an operation, those along one axis together."""
    return [list(passes) for _, passes in groupby(operation.passes, key=lambda p: p.axis)]
