"""What the template of a saved design prints: typed pieces, all of them words."""

from dataclasses import dataclass

from server import shown
from server.design_views import CautionGroup
from server.making_views import Standing
from server.readings_views import ReadingView
from server.saved_papers import Papers
from server.saved_parts import EntryView, FileView, ProposalView, RemarkView, Way
from server.store.keys import Kind


@dataclass(frozen=True, slots=True)
class SizeView:
    """One of the sizes that decide, with its limits."""

    title: str
    why: str
    nominal: str
    lower: str
    upper: str


@dataclass(frozen=True, slots=True)
class TodayView:
    """What today's program would make of it."""

    words: str
    compare: str
    """Where the two stand side by side; empty where there is nothing to compare with."""


@dataclass(frozen=True, slots=True)
class SavedPage:
    """One revision of a saved design, for the holder of one link."""

    title: str
    design_note: str
    letters: str
    kind: Kind
    is_owner: bool
    may_add: bool
    here: str
    saved_line: str
    note: str
    verdict: str
    is_fit: bool
    standing: Standing | None
    """How the finished part stands where it must not be used."""
    what: str
    """What the part is and what it is made of, for one who sees such a thing for the first time."""
    said: str
    said_of: Way | None
    """Where on the page it stands."""
    came: tuple[Way, ...]
    """For the owner: what others put beside this revision since it was saved."""
    outside: tuple[str, ...]
    """What was read outside its limits, which is said before all else."""
    newer: Way | None
    today: TodayView | None
    units: tuple[Way, ...]
    projections: tuple[Way, ...]
    needs: tuple[tuple[str, str], ...]
    sizes: tuple[SizeView, ...]
    tolerance: str
    drawing: str
    look_closely: str
    """Where the drawing can be enlarged."""
    files: tuple[FileView, ...]
    papers: Papers
    models: tuple[FileView, ...]
    confirm: tuple[str, str]
    making: tuple[Way, ...]
    has_typed: bool
    """Whether this address carries what was typed on those pages and is not kept."""
    remark: str
    """Where a remark is sent to."""
    sheet: str
    try_it: str
    entries: tuple[EntryView, ...]
    remarks: tuple[RemarkView, ...]
    proposals: tuple[ProposalView, ...]
    readings: tuple[ReadingView, ...]
    take_readings: str
    cautions: tuple[CautionGroup, ...]
    caution_line: str
    path: str
    """The address that forms of this revision are sent below."""
    design_path: str

    @property
    def sizes_counted(self) -> str:
        """How many sizes decide, in a word."""
        return shown.counted(len(self.sizes))
