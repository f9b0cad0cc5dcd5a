"""The record in service in words: what to look for before use, how far the pad may wear, and an empty table for the dates."""

from dataclasses import dataclass

from geometry.as_made import judge_as_made
from geometry.design import Design
from geometry.making.wording import Units
from geometry.service_life import (
    GROOVE_SOURCE,
    LIMIT_SOURCE,
    LOOK_SOURCE,
    ServiceRecord,
    WearLimit,
    service_record,
)
from server import shown
from server.making_case import Case, Head, head_of
from server.making_views import in_units, sets_of

EMPTY_ROWS = 14
"""Lines of the dated table: about a year of monthly looks, and one sheet of paper."""


@dataclass(frozen=True, slots=True)
class LookView:
    """One thing to look for."""

    place: str
    """Which sketch shows it."""
    what: str
    then: str


@dataclass(frozen=True, slots=True)
class WearView:
    """One reading in service and the value at which the pad is discarded."""

    title: str
    now: str
    limit: str
    why: str
    how: str


@dataclass(frozen=True, slots=True)
class RecordPage:
    """What stays with the pad."""

    head: Head
    back: str
    caution_line: str
    basis: str
    """Whether the limits are those of the pad as drawn or of the part as measured."""
    looks: tuple[LookView, ...]
    wear: tuple[WearView, ...]
    """Empty for a pad or a part that fails: a limit beyond which it fails says nothing then."""
    discard: tuple[str, ...]
    columns: tuple[str, ...]
    rows: range
    sources: tuple[tuple[str, str], ...]


def record_page(case: Case) -> RecordPage:
    """The context of the page."""
    record, is_measured = record_of(case.design)
    units, head = case.reading.units, head_of(case, "record")
    is_failed = not case.design.fit_to_make or (head.standing is not None and head.standing.is_failed)
    basis = (
        "Limits are computed for the part as measured, and for what was not read as drawn."
        if is_measured
        else "Limits are computed for the pad as drawn. Enter readings on the inspection sheet, and they are those of"
        " your part."
    )
    return RecordPage(
        head=head,
        back=head.back,
        caution_line=head.caution_line,
        basis="There are no limits of wear for what must not be used at all." if is_failed else basis,
        looks=tuple(LookView(look.place, look.what, look.then) for look in record.looks),
        wear=() if is_failed else tuple(_wear(limit, units) for limit in record.limits),
        discard=_discard(record, units),
        columns=_columns(record, units),
        rows=range(EMPTY_ROWS),
        sources=(
            ("What to look for", str(LOOK_SOURCE)),
            ("Wear", str(LIMIT_SOURCE)),
            ("Groove", str(GROOVE_SOURCE)),
        ),
    )


def record_of(design: Design) -> tuple[ServiceRecord, bool]:
    """The record of the part as measured where it was, else of the pad as drawn, and which of the two."""
    made = judge_as_made(design.pad, design.conditions, sets_of(design))
    is_measured = made.pad is not design.pad and any(j.is_taken for j in made.judged)
    if is_measured:
        return service_record(made.pad, design.conditions, made.spread), True
    return service_record(design.pad, design.conditions), False


def _wear(limit: WearLimit, units: Units) -> WearView:
    more = "more" if limit.direction == "up" else "less"
    why = limit.words.shown(units).partition(". ")[2]
    at = shown.length_with_unit(limit.limit_mm, units)
    by = shown.length_with_unit(limit.allowed_mm, units)
    return WearView(
        title=limit.title,
        now=shown.length_with_unit(limit.now_mm, units),
        limit=f"{more} than {at}, {by} from now" if limit.allowed_mm > 0 else f"{more} than {at}: nothing is left",
        why=why,
        how=limit.how.shown(units),
    )


def _discard(record: ServiceRecord, units: Units) -> tuple[str, ...]:
    """When to discard besides what is measured, whose limits stand in a table of their own."""
    measured = tuple(f"{limit.title}: " for limit in record.limits)
    return tuple(in_units(s, units) for s in record.discard_when if not s.template.startswith(measured))


def _columns(record: ServiceRecord, units: Units) -> tuple[str, ...]:
    """The heads of the empty table, each with its limit."""
    groove, worn, swollen, short, wide, closed = (
        shown.length(record.limit(kind).limit_mm, units)
        for kind in ("groove", "seat_worn", "seat_swollen", "seat_short", "slot_wide", "slot_closed")
    )
    return (
        "Date",
        f"Web over the groove, {units}: not under {groove}",
        f"Seat diameter, {units}: {worn} to {swollen}",
        f"Seat length, {units}: not under {short}",
        f"Slot width, {units}: {closed} to {wide}",
        "No crack, no white line",
        "By, and remarks",
    )
