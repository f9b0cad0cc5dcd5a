"""The guide as one typed context: made from the field list, the checks, the materials, the cautions and a worked example."""

from functools import cache

from geometry.cautions import ONE_LINE
from geometry.design import Design, design_pad
from geometry.making.looks import LOOK_SOURCE
from geometry.measurements import read_measurements
from geometry.provenance import Mark
from geometry.service_life import GROOVE_SOURCE, LIMIT_SOURCE, service_record
from server import measuring_sheet
from server.field_views import LinkView
from server.forms import Units, read_form
from server.guide_cautions import signals
from server.guide_checks import check_groups
from server.guide_context import (
    CheckGroupPart,
    DiscardPart,
    FamilyPart,
    FieldGroupPart,
    GuidePage,
    KindPart,
    StepPart,
    WordPart,
)
from server.guide_fields import field_groups, groups_asked_once
from server.guide_glossary import SOURCE, WORDS
from server.guide_kinds import FEET, HEADS, Kind
from server.guide_materials import families
from server.guide_words import LIFTING, MAKING, Step
from server.links import address_of_document, ready_sample, static_url
from server.ways import units_ways, ways_of

_CHOOSING = ("make", "own")
_KINDS = (LinkView("Which foot", "#which-foot"), LinkView("Which head", "#which-head"))
_MAKING = ("fixed", "shop", "as_made", "wear")
_MAKING_PAGES = (
    ("Its route card, each operation with its figures", "/route"),
    ("Its inspection sheet, each size with its limits", "/inspection"),
    ("Its record in service", "/record"),
)


def guide_page(units: Units) -> GuidePage:
    """The context of the guide."""
    sample, example, nothing = ready_sample(), _example(), read_form([])
    names = groups_asked_once()
    measuring = tuple(group for n in names if n not in {*_CHOOSING, *_MAKING} for group in field_groups(n, units))
    choosing, making = (
        tuple(group for n in names if n in some for group in field_groups(n, units)) for some in (_CHOOSING, _MAKING)
    )
    kinds, checks = families(units), check_groups(example, units)
    links = tuple(
        LinkView(words, address_of_document(sample.document, suffix, units=units)) for words, suffix in _MAKING_PAGES
    )
    return GuidePage(
        units=units,
        units_links=units_ways(nothing, "/guide"),
        ways=ways_of(nothing, units=units),
        contents=_contents(measuring, choosing, making, kinds, checks),
        measuring_cautions=measuring_sheet.CAUTIONS,
        tools=measuring_sheet.TOOLS,
        feet=_kinds(FEET),
        heads=_kinds(HEADS),
        measuring=measuring,
        choosing=choosing,
        families=kinds,
        checks=checks,
        making=_steps(MAKING),
        making_links=links,
        making_fields=making,
        lifting=_steps(LIFTING),
        cautions=signals(units),
        discard=_discard(example, units),
        record=links[-1].href,
        words=tuple(WordPart(w.id, w.word, w.meaning, f"#{w.see}" if w.see else "") for w in WORDS),
        words_source=str(SOURCE),
        practice=Mark.PRACTICE.words,
        marks=tuple((mark.value, mark.words) for mark in Mark),
        example=LinkView(sample.title, address_of_document(sample.document, units=units)),
        caution_line=ONE_LINE,
    )


@cache
def _example() -> Design:
    return design_pad(read_measurements(ready_sample().document))


def _steps(steps: tuple[Step, ...]) -> tuple[StepPart, ...]:
    return tuple(StepPart(s.title, s.words, static_url(f"guide/{s.picture}.svg") if s.picture else "") for s in steps)


def _kinds(kinds: tuple[Kind, ...]) -> tuple[KindPart, ...]:
    return tuple(
        KindPart(
            f"kind-{k.key}", k.title, k.take, k.leave, static_url(f"guide/{k.picture}.svg"), k.shown, f"#{k.group}"
        )
        for k in kinds
    )


def _contents(
    measuring: tuple[FieldGroupPart, ...],
    choosing: tuple[FieldGroupPart, ...],
    making: tuple[FieldGroupPart, ...],
    kinds: tuple[FamilyPart, ...],
    checks: tuple[CheckGroupPart, ...],
) -> tuple[tuple[LinkView, tuple[LinkView, ...]], ...]:
    """Every part of the page with what stands in it, in the order of the job."""

    def below(*groups: FieldGroupPart | FamilyPart | CheckGroupPart) -> tuple[LinkView, ...]:
        return tuple(LinkView(group.heading, f"#{group.id}") for group in groups)

    return (
        (LinkView("Measuring", "#measuring"), (*_KINDS, *below(*measuring))),
        (LinkView("Choosing a material", "#material"), below(*kinds, *choosing)),
        (LinkView("What each check means", "#checks"), below(*checks)),
        (LinkView("Making it", "#making"), below(*making)),
        (LinkView("Lifting with it", "#lifting"), (LinkView("Cautions", "#cautions"),)),
        (LinkView("When to discard it", "#discard"), ()),
        (LinkView("Words", "#words"), ()),
        (LinkView("Marks", "#marks"), ()),
    )


def _discard(example: Design, units: Units) -> DiscardPart:
    """What ends a pad, read off the example's record: words that hold for every pad, and what is measured on each."""
    record = service_record(example.pad, example.conditions)
    measured = tuple(f"{limit.title}: " for limit in record.limits)
    return DiscardPart(
        looks=tuple((look.what, look.then) for look in record.looks),
        at_once=tuple(s.shown(units) for s in record.discard_when if not s.template.startswith(measured)),
        wear=tuple((limit.title, limit.how.shown(units)) for limit in record.limits),
        sources=tuple(str(source) for source in (LOOK_SOURCE, LIMIT_SOURCE, GROOVE_SOURCE)),
    )
