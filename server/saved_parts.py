"""Parts of a saved design's page: ways, files, lists, and what a viewer chooses."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import get_args
from urllib.parse import urlencode

from geometry.drawing.facts import Projection, SheetFacts
from geometry.drawing.facts import Units as SheetUnits
from server.carried import NOTHING, Carried, carried_in
from server.design_views import SIGNAL_WORDS, CautionGroup
from server.forms import Units
from server.links import saved_address
from server.making_case import TITLES
from server.making_case import Kind as ShopKind
from server.store.designs import Entry
from server.store.exchange import Proposal
from server.store.links import Access


@dataclass(frozen=True, slots=True)
class Way:
    """Words that lead somewhere."""

    words: str
    href: str
    is_here: bool = False
    note: str = ""
    """What one finds there."""


@dataclass(frozen=True, slots=True)
class Viewer:
    """How somebody wants to see the sizes; what they do not choose is as saved."""

    units: SheetUnits | None = None
    projection: Projection | None = None
    carried: Carried = NOTHING
    """What was typed on the pages of the shop, its bare numbers in mm."""

    @classmethod
    def of(cls, query: Mapping[str, str]) -> "Viewer":
        """The choices in an address; what is none of them counts as not chosen."""
        units = next((u for u in get_args(SheetUnits) if u == query.get("units")), None)
        projection = next((p for p in get_args(Projection) if p == query.get("projection")), None)
        return cls(units, projection, carried_in(query.items()))

    def at(self, secret: str, letters: str, suffix: str = "", **changes: str) -> str:
        """The address of a page of the revision with these choices, and with what was typed."""
        return self.carried.on(saved_address(secret, letters, suffix, **self.keys(**changes)), "mm", has_units=False)

    def keys(self, **changes: str) -> dict[str, str]:
        """The choices as keys of an address."""
        return {"units": self.units or "", "projection": self.projection or ""} | changes


@dataclass(frozen=True, slots=True)
class FileView:
    """One file to take."""

    name: str
    words: str
    href: str


@dataclass(frozen=True, slots=True)
class EntryView:
    """One line in the list of revisions."""

    letters: str
    href: str
    line: str
    note: str
    compare: str
    is_here: bool


@dataclass(frozen=True, slots=True)
class RemarkView:
    """A remark with who and when."""

    by: str
    words: str


@dataclass(frozen=True, slots=True)
class ProposalView:
    """A proposal with its verdict, its difference and the way to its working sheet."""

    by: str
    words: str
    verdict: str
    compare: str
    sheet: str


def eye_units(facts: SheetFacts) -> Units:
    """The units of figures in a sentence: a sheet may show both, a sentence shows one."""
    return "in" if facts.units in {"in", "in_fraction"} else "mm"


def day_words(moment: datetime) -> str:
    """A moment as a day and a time, in UTC."""
    return f"{moment.day} {moment:%B %Y, %H:%M} UTC"


def by_words(name: str, moment: datetime) -> str:
    """Who and when."""
    return f"{name or 'Somebody'}, {day_words(moment)}"


def compare_address(access: Access, letters: str, with_: str) -> str:
    """Where a revision stands beside another, a proposal, or what today's program makes of it."""
    return saved_address(access.secret, letters, "/difference") + "?" + urlencode({"with": with_})


def files_of(access: Access, letters: str, viewer: Viewer) -> tuple[FileView, ...]:
    """The drawing and the data of a revision."""
    drawn = tuple(
        FileView(name, words, saved_address(access.secret, letters, ending, **viewer.keys()))
        for name, words, ending in (
            ("PDF", "the drawing on paper", ".pdf"),
            ("DXF", "the drawing for another drawing program", ".dxf"),
            ("SVG", "the drawing as a picture", ".svg"),
        )
    )
    coded = saved_address(access.secret, letters, ".pdf", **viewer.keys(code="yes"))
    data = (
        FileView("PDF, code", "the drawing with a code that leads a camera to this page", coded),
        FileView("JSON", "everything that was worked out, as data", saved_address(access.secret, letters, ".json")),
        FileView(
            "Measurements", "the document to open elsewhere", saved_address(access.secret, letters, ".document.json")
        ),
    )
    return drawn + data


def models_of(access: Access, letters: str) -> tuple[FileView, ...]:
    """The models of a revision, and the archive that holds them."""
    return tuple(
        FileView(name, words, saved_address(access.secret, letters, ending))
        for name, words, ending in (
            ("STEP", "the exact solid, for machining", ".step"),
            ("STL", "the solid in triangles", ".stl"),
            ("3MF", "the solid in triangles, with its unit, for printing", ".3mf"),
            ("ZIP", "all of it in one archive, with a text that says what each file is for", ".zip"),
        )
    )


def shop_address(access: Access, letters: str, kind: ShopKind, units: str = "") -> str:
    """Where a page of the shop stands under a link; the inspection sheet of one who may add is the one that keeps."""
    name = "readings" if kind == "inspection" and access.may_add else kind
    return saved_address(access.secret, letters, f"/{name}", units=units)


def making_of(access: Access, letters: str, viewer: Viewer, eye: Units) -> tuple[Way, ...]:
    """The pages of the shop for a revision, each with what it tells; what was typed on them goes along."""
    keeps = "every limit with a box for what you read" + (", which is kept here" if access.may_add else "")
    words: Mapping[ShopKind, str] = {
        "route": "stock, tools, and every operation in order",
        "inspection": keeps,
        "record": "what to look for in use, and how far it may wear",
    }
    units, on = eye if viewer.units else "", viewer.carried.on
    return tuple(Way(TITLES[k], on(shop_address(access, letters, k, units), eye), note=words[k]) for k in TITLES)


def entry_view(access: Access, entry: Entry, here: str) -> EntryView:
    """One line in the list of revisions."""
    return EntryView(
        letters=entry.letters,
        href=saved_address(access.secret, entry.letters),
        line=f"{day_words(entry.created_at)}. {entry.verdict}",
        note=entry.note,
        compare="" if entry.letters == here else compare_address(access, here, entry.letters),
        is_here=entry.letters == here,
    )


def proposal_view(access: Access, letters: str, proposal: Proposal) -> ProposalView:
    """A proposal as it stands beside its revision."""
    return ProposalView(
        by=by_words(proposal.name, proposal.created_at),
        words=proposal.words,
        verdict=proposal.design["verdict"],
        compare=compare_address(access, letters, proposal.id),
        sheet=proposal.address,
    )


def kept_cautions(kept: Sequence[Mapping[str, str]]) -> tuple[CautionGroup, ...]:
    """The cautions as saved, the gravest first."""
    found = ((signal, tuple(c["text"] for c in kept if c["signal"] == signal)) for signal in SIGNAL_WORDS)
    return tuple(CautionGroup(signal, sentences) for signal, sentences in found if sentences)
