"""Where the figures of route card, inspection sheet and record come from, each source once, for the page and for paper."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.document.shop import SPEEDS_SOURCE, Shop
from geometry.inspection import INSTRUMENT_SOURCE
from geometry.making.bench import REST_SOURCE
from geometry.making.cutter import FORCE_SOURCE
from geometry.making.cutting import FINISH_FEED_SOURCE, ROUGH_FEED_SOURCE, SPEEDS, TOOTH_FEED_SOURCE
from geometry.making.facing import RUN_OUT_SOURCE
from geometry.making.kit import GRIT_SOURCE
from geometry.making.looks import LOOK_SOURCE
from geometry.making.printing import KNOCK_DOWN_SOURCE, ORIENTATION_SOURCE
from geometry.making.slot_plan import SHARES_SOURCE
from geometry.making.stock import FACING_SOURCE, GRIP_SOURCE
from geometry.making.turning import TIMES_SOURCE
from geometry.making.watch import sources_of
from geometry.provenance import Source, derived, practice
from geometry.readings import DECISION_SOURCE
from geometry.route import RouteCard
from geometry.service_life import DENT_SOURCE, GROOVE_SOURCE, LIMIT_SOURCE

CUTS_SOURCE = practice("Roughing cuts of 0.5 mm or 0.020 in, finishing cuts of 0.1 mm or 0.005 in, on a light lathe")
DIALS_SOURCE = practice("A line of a dial stands for 0.05 mm or 0.001 in")
INDICATED_SOURCE = practice("The pad stands true for the slot when an indicator reads even to 0.05 mm")
HANDS_SOURCE = practice("What a careful hand reads off a caliper, a micrometer and a rule on a finished part")
LIMITS_SOURCE = derived("Limits are the general tolerances of the drawing, ISO 2768-1 class m")
CALIPER_SOURCE = practice("A caliper on a worn part may be off by 0.05 mm; the limits allow for it")


def route_sources(card: RouteCard, c: Conditions, shop: Shop) -> Iterator[tuple[str, Source]]:
    """Everything that the card rests on and where it comes from, each once."""
    found = [*(_printed(card) if card.printing else _cut(card, c, shop))]
    found += [("What to watch for", source) for source in sources_of(c.material.family)]
    seen: set[Source] = set()
    for words, source in found:
        if source not in seen:
            seen.add(source)
            yield words, source


def _printed(card: RouteCard) -> Iterator[tuple[str, Source]]:
    yield "How it lies on the bed", ORIENTATION_SOURCE
    yield "What is taken off its strength", KNOCK_DOWN_SOURCE
    for words, _, source in card.printing.knock_downs if card.printing else ():
        yield words, source
    yield "Finish", GRIT_SOURCE
    yield "Rest before measuring", REST_SOURCE


def _cut(card: RouteCard, c: Conditions, shop: Shop) -> Iterator[tuple[str, Source]]:
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
    for operation in card.operations:
        yield from operation.sources
    yield "Finish", GRIT_SOURCE
    yield "Rest before measuring", REST_SOURCE
    yield "Times beside the cut", TIMES_SOURCE


def inspection_sources(c: Conditions) -> tuple[tuple[str, Source], ...]:
    """What the inspection sheet rests on."""
    return (
        ("Limits", LIMITS_SOURCE),
        ("Choice of instrument", INSTRUMENT_SOURCE),
        ("Uncertainty of a reading", HANDS_SOURCE),
        ("Inside, outside or in doubt", DECISION_SOURCE),
        ("Growth with temperature", c.material.expansion_per_k.source),
        ("Rest before measuring", REST_SOURCE),
    )


def record_sources(*, has_slot: bool = True) -> tuple[tuple[str, Source], ...]:
    """What the record in service rests on."""
    return (
        ("What to look for", LOOK_SOURCE),
        ("Wear", LIMIT_SOURCE),
        ("Groove", GROOVE_SOURCE) if has_slot else ("Dent", DENT_SOURCE),
        ("Reading it", CALIPER_SOURCE),
    )
