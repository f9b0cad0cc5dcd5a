"""A saved design in words: what a machinist needs first, then what others added. Nothing is sized again."""

from collections.abc import Collection, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from typing import Any

from geometry import ENGINE_VERSION
from geometry.cautions import ONE_LINE
from geometry.drawing.facts import Projection, SheetFacts
from geometry.drawing.facts import Units as SheetUnits
from geometry.drawing.figures import length_words, limit_words
from geometry.drawing.measures import measures
from geometry.drawing.size_writer import GENERAL
from geometry.drawing.table import words_of
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.kinds import USUAL_FOOT, USUAL_HEAD
from geometry.making.how_measured import measured_names
from server import shown
from server.deciding import deciding_as_kept
from server.difference import difference
from server.kind_words import MADE, STANDS, TAKES
from server.links import CONFIRM_KEY, CONFIRM_NOT_FIT, saved_address
from server.readings_views import failed_standing, outside_in, reading_view
from server.saved_context import SavedPage, SizeView, TodayView
from server.saved_papers import papers_of
from server.saved_parts import (
    RemarkView,
    Viewer,
    Way,
    by_words,
    compare_address,
    day_words,
    entry_view,
    eye_units,
    files_of,
    kept_cautions,
    making_of,
    models_of,
    proposal_view,
)
from server.store.designs import Entry, Revision
from server.store.exchange import Proposal, Reading, Remark
from server.store.keys import letters_of
from server.store.links import Access
from server.working_out import design_today, facts_of, pad_of

_UNITS_WORDS: Mapping[SheetUnits, str] = {"mm": "mm", "in": "inch", "in_fraction": "inch, 64ths", "dual": "both"}
_PROJECTION_WORDS: Mapping[Projection, str] = {"first": "first angle", "third": "third angle"}
SAID = {
    "saved": "Saved. The links below lead to it; whoever has one needs no account.",
    "same": "Nothing has changed since this revision, so no new one was saved.",
    "remark": "The remark is kept.",
    "readings": "The readings are judged and kept.",
    "proposal": "The proposal is kept beside the design, which itself has not changed.",
    "renamed": "Title and note are changed.",
    "struck": "The set is struck out. It stays there, marked, and decides nothing any more.",
    "ended-friend": "The friend link is taken back: whoever has it opens nothing any more.",
    "ended-view": "The link for reading is taken back: whoever has it opens nothing any more.",
    "renewed-friend": "There is a new friend link; one that was there before opens nothing any more.",
    "renewed-view": "There is a new link for reading; one that was there before opens nothing any more.",
    "renewed-owner": "All three links are new. The old ones open nothing any more; keep this page's address.",
    "brought": "Taken in from a file, and worked out anew here.",
}
"""What a page says after something was sent from it, by the word in its address."""
_SAID_OF: Mapping[str, Way] = {
    "saved": Way("See the links", "#links"),
    "remark": Way("See the remarks", "#remarks"),
    "readings": Way("See what they say of the part", "#readings"),
    "proposal": Way("See the proposals", "#proposals"),
    "struck": Way("See the readings", "#readings"),
    "renewed-friend": Way("See the links", "#links"),
    "renewed-view": Way("See the links", "#links"),
    "renewed-owner": Way("See the links", "#links"),
}
"""Where on the page that stands of which it speaks; a page of several thousand pixels is long on a phone."""


@dataclass(frozen=True, slots=True)
class Beside:
    """What stands beside a revision in the database."""

    entries: Sequence[Entry]
    remarks: Sequence[Remark]
    readings: Sequence[Reading]
    proposals: Sequence[Proposal]
    kept: Set[str]
    """The endings of the files that were kept with the revision."""


def saved_page(access: Access, revision: Revision, beside: Beside, viewer: Viewer, said: str) -> SavedPage:
    """The context of a revision's page."""
    secret, letters, design = access.secret, revision.letters, revision.design
    sizes = measured_names(pad_of(design))
    facts = facts_of(revision, units=viewer.units, projection=viewer.projection)
    eye = eye_units(facts)
    at = saved_address(secret, letters)
    failed = failed_standing(revision, beside.readings, eye)
    return SavedPage(
        title=access.design.title or design["title"] or "Lifting pad",
        design_note=access.design.note,
        letters=letters,
        kind=access.kind,
        is_owner=access.is_owner,
        may_add=access.may_add,
        here=viewer.at(secret, letters),
        saved_line=f"Revision {letters}, saved {day_words(revision.created_at)}. Design {design['design_id']}.",
        note=revision.note,
        verdict=design["verdict"],
        is_fit=design["fit_to_make"],
        standing=failed,
        what=_what(revision, facts),
        said=SAID.get(said, ""),
        said_of=_SAID_OF.get(said),
        came=_came(beside) if access.is_owner else (),
        outside=_outside(beside.readings, sizes),
        newer=_newer(access, revision, beside.entries),
        today=_today(access, revision, eye),
        units=_units(access, letters, facts, viewer),
        projections=_projections(access, letters, facts, viewer),
        needs=_needs(revision, facts, eye),
        sizes=_sizes(revision, facts),
        tolerance=f"{GENERAL} (medium) for every size that carries no tolerance of its own. Sizes at 20 °C.",
        drawing=saved_address(secret, letters, ".svg", **viewer.keys()),
        look_closely=viewer.at(secret, letters, "/drawing"),
        files=files_of(access, letters, viewer),
        papers=papers_of(access, revision, viewer, beside.kept, failed),
        models=models_of(access, letters),
        confirm=(CONFIRM_KEY, CONFIRM_NOT_FIT),
        making=making_of(access, letters, viewer, eye),
        has_typed=bool(viewer.carried.keys("mm")),
        remark=viewer.at(secret, letters, "/remarks"),
        sheet=revision.address,
        try_it=saved_address(secret, letters, "/try", units=eye if viewer.units else ""),
        entries=tuple(entry_view(access, e, letters) for e in beside.entries),
        remarks=tuple(RemarkView(by_words(r.name or r.kind, r.created_at), r.words) for r in beside.remarks),
        proposals=tuple(proposal_view(access, letters, p) for p in beside.proposals),
        readings=tuple(reading_view(r, by_words(r.name, r.created_at), eye, sizes) for r in beside.readings),
        take_readings=viewer.carried.on(
            saved_address(secret, letters, "/readings", units=eye if viewer.units else ""), eye
        ),
        cautions=kept_cautions(design["cautions"]),
        caution_line=ONE_LINE,
        path=at,
        design_path=saved_address(secret),
    )


def _what(revision: Revision, facts: SheetFacts) -> str:
    """What the part is, in a sentence or two."""
    document = revision.document
    foot, head = document.get("foot", USUAL_FOOT), document.get("head", USUAL_HEAD)
    process = document.get("make", {}).get("process", "")
    return (
        f"A lifting pad goes between a jack and a car. This one {STANDS[foot]} and {TAKES[head]}. It is"
        f" {MADE.get(process, MADE['lathe_and_mill'])} from {facts.material}."
    )


def _came(beside: Beside) -> tuple[Way, ...]:
    """What came since the revision was saved: how much of each kind, and where it stands."""
    found = (
        (len(beside.readings), "set of readings", "sets of readings", "#readings"),
        (len(beside.proposals), "proposal", "proposals", "#proposals"),
        (len(beside.remarks), "remark", "remarks", "#remarks"),
    )
    return tuple(Way(f"{n} {one if n == 1 else many}", place) for n, one, many, place in found if n)


def _outside(kept: Sequence[Reading], of: Collection[str]) -> tuple[str, ...]:
    """The sizes outside their limits in the newest set that was not struck out."""
    standing = [reading.readings for reading in kept if "struck" not in reading.readings]
    return outside_in(standing[-1], of) if standing else ()


def _newer(access: Access, revision: Revision, entries: Sequence[Entry]) -> Way | None:
    newest = max(entry.number for entry in entries)
    if newest == revision.number:
        return None
    letters = letters_of(newest)
    words = f"A newer revision exists: {letters}. This page shows {revision.letters} as it was saved."
    return Way(words, saved_address(access.secret, letters))


def _today(access: Access, revision: Revision, eye: str) -> TodayView | None:
    """Whether today's program would come to something else."""
    by = f"Saved by version {revision.engine_version} of the calculation; today's is {ENGINE_VERSION}."
    try:
        today = design_today(revision)
    except NoPadFitsError as error:
        return TodayView(f"{by} Today's finds no pad for these measurements: {error.words}", "")
    except BadMeasurementsError as error:
        return TodayView(f"{by} Today's does not take these measurements: {error.problems[0].message}", "")
    if today is None:
        return None
    found = difference(revision.design, today.to_dict(), eye)
    if found.is_nothing:
        return None
    words = f"{by} It would come out differently today: {len(found.sizes)} sizes and {len(found.estimates)} estimates."
    return TodayView(words, compare_address(access, revision.letters, "today"))


def _units(access: Access, letters: str, facts: SheetFacts, viewer: Viewer) -> tuple[Way, ...]:
    return tuple(
        Way(words, viewer.at(access.secret, letters, units=units), units == facts.units)
        for units, words in _UNITS_WORDS.items()
    )


def _projections(access: Access, letters: str, facts: SheetFacts, viewer: Viewer) -> tuple[Way, ...]:
    return tuple(
        Way(words, viewer.at(access.secret, letters, projection=p), p == facts.projection)
        for p, words in _PROJECTION_WORDS.items()
    )


def _needs(revision: Revision, facts: SheetFacts, eye: str) -> tuple[tuple[str, str], ...]:
    """What to have ready before the first cut."""
    design = revision.design
    across, tall = (design["pad"][name] for name in ("body_diameter_mm", "overall_height_mm"))
    return (
        ("Stock", stock_words(design, eye)),
        ("Material", facts.material),
        ("Its state", facts.moisture),
        ("Finished size", f"⌀{length_words(across, facts.units)} × {length_words(tall, facts.units)}"),
        ("Mass", f"about {shown.mass(facts.mass_kg, eye)}"),
    )


def stock_words(design: Mapping[str, Any], eye: str) -> str:
    """The bar that the pad comes out of, as the estimate of that name found it."""
    check = next((c for c in design["checks"] if c["code"] == "stock"), None)
    if check is None or check["limit"] is None or check["verdict"] not in {"pass", "fail"}:
        return check["words"] if check else "not judged"
    if check["verdict"] == "fail":
        return str(check["words"])
    return f"bar of {shown.length_with_unit(check['limit'], eye)}"


def _sizes(revision: Revision, facts: SheetFacts) -> tuple[SizeView, ...]:
    pad = pad_of(revision.design)
    # All of them are critical: a mark before each would say nothing.
    found = measures(pad, replace(facts, critical=()))
    return tuple(
        SizeView(
            words_of(name, found),
            why,
            found[name].words,
            *limit_words(found[name], facts.units),
        )
        for name, why in deciding_as_kept(revision.design, pad)
    )
