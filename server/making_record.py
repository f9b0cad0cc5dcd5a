"""The record in service in words: what to look for before use, how far the pad may wear, and what was read on which day."""

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from geometry.making.looks import sketch_svg
from geometry.making.sources import record_sources
from geometry.making.wording import Units
from geometry.service_life import ServiceRecord, WearLimit
from geometry.standing import record_of
from geometry.worn import judge_worn, limits_of, title_of
from server import shown
from server.field_views import LinkView
from server.making_case import Case, Head, head_of
from server.making_views import in_units
from server.making_wear import AddView, Place, WornView, add_view, place_of, worn_view

EMPTY_ROWS = 14
"""Lines of the dated table: about a year of monthly looks, and one sheet of paper."""


@dataclass(frozen=True, slots=True)
class LookView:
    """One thing to look for."""

    sketch: Markup
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
    """Empty for a pad or a part that fails: it is not used at all."""
    discard: tuple[str, ...]
    kept: str
    """What becomes of readings in service."""
    save: LinkView | None
    """Where they are kept; None where this reader keeps none."""
    worn: WornView
    """What was read in service, as it stands in the address."""
    add: AddView
    columns: tuple[str, ...]
    """Of the lines to be filled in by hand."""
    rows: range
    sources: tuple[tuple[str, str], ...]


def record_page(case: Case, problems: Mapping[str, str] | None = None, place: Place | None = None) -> RecordPage:
    """The context of the page, with the case's other day as typed and what of it cannot be.

    Without a ``place`` the record stands at its design's own address.
    """
    place = place or place_of(case.reading, case.day)
    record, is_measured = record_of(case.design)
    units, head = case.reading.units, head_of(case, "record")
    worn = judge_worn(case.design.measurements.wear.entries(), record, case.design.conditions.material)
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
        basis=basis if record.limits else "There are no limits of wear for what must not be used at all.",
        looks=tuple(
            LookView(Markup(sketch_svg(look)), look.what, look.then)  # noqa: S704 - drawn by our own code
            for look in record.looks
        ),
        wear=tuple(_wear(limit, units) for limit in record.limits),
        discard=_discard(record, units),
        kept=place.kept,
        save=place.save,
        worn=worn_view(worn, case.reading, record, place),
        add=add_view(case.reading, case.day.texts, problems or {}, record, place),
        columns=_columns(record, units) if record.limits else (),
        rows=range(EMPTY_ROWS),
        sources=tuple((words, str(source)) for words, source in record_sources(has_slot=record.has_slot)),
    )


def _wear(limit: WearLimit, units: Units) -> WearView:
    more = "more" if limit.direction == "up" else "less"
    why = limit.words.shown(units).partition(". ")[2]
    at = shown.length_with_unit(limit.limit_mm, units)
    by = shown.length_with_unit(limit.away_mm, units)
    return WearView(
        title=limit.title,
        now=shown.length_with_unit(limit.now_mm, units),
        limit=f"{more} than {at}, {by} from now",
        why=why,
        how=limit.how.shown(units),
    )


def _discard(record: ServiceRecord, units: Units) -> tuple[str, ...]:
    """When to discard besides what is measured, whose limits stand in a table of their own."""
    measured = tuple(f"{limit.title}: " for limit in record.limits)
    return tuple(in_units(s, units) for s in record.discard_when if not s.template.startswith(measured))


def _columns(record: ServiceRecord, units: Units) -> tuple[str, ...]:
    """The heads of the empty table, each with its limit."""
    return ("Date", *(_column(title_of(n, record), *ends, units) for n, ends in limits_of(record).items()), *_SEEN)


_SEEN = ("No crack, no white line", "By, and remarks")


def _column(title: str, low: WearLimit | None, high: WearLimit | None, units: Units) -> str:
    ends = [shown.length(limit.limit_mm, units) for limit in (low, high) if limit]
    words = " to ".join(ends) if low and high else f"not {'under' if low else 'over'} {ends[0]}"
    return f"{title}, {units}: {words}"
