"""All views of a pad at one scale about its section, placed in haste or with care."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from itertools import chain, islice, product
from typing import Self

from geometry.drawing.arrangement import Placed, Sheets, arranged
from geometry.drawing.blocks import section_block, with_told
from geometry.drawing.canvas import HASTY, MEASURED, PATIENT, Canvas
from geometry.drawing.details import Detail
from geometry.drawing.frame import Sheet
from geometry.drawing.main_plan import Plan
from geometry.drawing.main_signs import wanted_signs
from geometry.drawing.main_view import SectionCanvases, trouble_of
from geometry.drawing.model import Box, Measure
from geometry.drawing.notes import OnLeader
from geometry.drawing.other_views import Leeway, OtherViews
from geometry.drawing.placing import NoRoomError
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE
from geometry.pad import Pad

_MEASURED_TRIES = 3
_FEW, _LITTLE_TROUBLE = 3, 4.0
"""So many sections are looked at for one about which what is placed later, like the letters of details, costs no more than this."""
_AT_FACE: frozenset[OnLeader] = frozenset({"seat texture"})
Found = tuple[Sheet, Placed]


@dataclass(frozen=True, slots=True)
class AtScale:
    """A pad at one main scale: what is the same in whichever way its views are tried is made once."""

    pad: Pad
    shown: dict[str, Measure]
    sheets: Sheets
    scale: Scale
    others: tuple[OtherViews, ...]
    """With everything, and with less."""
    made: dict[tuple[Plan, int], SectionCanvases] = field(default_factory=dict)

    @classmethod
    def of(cls, pad: Pad, shown: dict[str, Measure], sheets: Sheets, scale: Scale) -> Self:
        """Nothing tried yet."""
        fewer = {name: measure for name, measure in shown.items() if name != "relief_corner_radius_mm"}
        told = (shown, fewer) if len(fewer) < len(shown) else (shown,)
        return cls(pad, shown, sheets, scale, tuple(OtherViews(pad, each, sheets.facts, scale) for each in told))


def trouble_on(found: Found) -> float:
    """What could not be helped on all views of a sheet."""
    return sum(block.canvas.trouble for block, _ in found[1])


@dataclass(frozen=True, slots=True)
class Views:
    """All views of a pad at one scale with certain details, to be placed about a section."""

    at: AtScale
    plan: Plan
    details: tuple[Detail, ...]
    leeway: Leeway

    def sections(self, patience: int) -> SectionCanvases:
        """The section, placed with more or less care."""
        key, at = (self.plan, patience), self.at
        if key not in at.made:
            at.made[key] = SectionCanvases(at.pad, at.shown, at.scale, self.plan, patience=patience)
        return at.made[key]

    def in_haste(self) -> Found | None:
        """The views about any section that finds room on the sheet."""
        failed: list[Box] = []
        for canvas in chain(self.sections(HASTY).all(), islice(self.sections(MEASURED).all(), _MEASURED_TRIES)):
            box = canvas.box
            # What needs more room all round than another that found none will find none either.
            if not self._may_fit(box):
                if not failed:
                    return None
            elif not any(_is_within(other, box) for other in failed):
                with suppress(NoRoomError):
                    found = self.about(canvas)
                    if found:
                        return found
                failed.append(box)
        return None

    def _may_fit(self, section: Box) -> bool:
        """Whether the sheet is large enough for the section and the bare top view above or below it."""
        area = self.at.sheets.largest
        top = self.at.pad.body_diameter_mm * self.at.scale.factor
        return section.width <= area.width and section.height + STYLE.view_gap_mm + top <= area.height

    def with_care(self) -> Found | None:
        """The views about the section that leaves least trouble and still finds room on the sheet.

        About another one the letters of details may find better places.
        """
        best: tuple[float, Found] | None = None
        for canvas, found in islice(self._with_room(), _FEW):
            trouble = trouble_on(found)
            if best is None or trouble < best[0]:
                best = trouble, found
            if trouble - canvas.trouble <= _LITTLE_TROUBLE:
                break
        return best[1] if best else None

    def _with_room(self) -> Iterator[tuple[Canvas, Found]]:
        """Sections placed with care and the views about them, where all find room."""
        failed: list[Canvas] = []
        for canvas in self._careful():
            if self._may_fit(canvas.box) and not any(_asks_no_more(other, canvas) for other in failed):
                with suppress(NoRoomError):
                    found = self.about(canvas)
                    if found:
                        yield canvas, found
                    else:
                        failed.append(canvas)

    def _careful(self) -> Iterator[Canvas]:
        """Sections placed with care, the least troubled first; those that took less care keep things nearer."""
        patient = self.sections(PATIENT).best()
        yield from patient[:1]
        yield from sorted([*patient[1:], *self.sections(MEASURED).best()], key=trouble_of)

    def about(self, canvas: Canvas) -> Found | None:
        """The section and all views about it; raises NoRoomError where a detail's letter has no room."""
        pad, facts = self.at.pad, self.at.sheets.facts
        plain = section_block(pad, canvas, self.at.scale, self.details, name_aside=self.leeway.crowded)
        wanted = wanted_signs(pad, is_printed=facts.as_printed)
        # Roots on leaders or in a note, and the pocket's corners at the pocket too or only in a note.
        for signs, others in product((wanted, wanted & _AT_FACE) if wanted - _AT_FACE else (wanted,), self.at.others):
            section, told = with_told(pad, plain, facts.figure_unit, signs)
            found = arranged(others, self.at.sheets, section, self.details, told=told, leeway=self.leeway)
            if found:
                return found
        return None


def _asks_no_more(one: Canvas, other: Canvas) -> bool:
    """Whether a section needs no more room than another all round, and leaves no more to other views."""
    return one.moved <= other.moved and _is_within(one.box, other.box)


def _is_within(inner: Box, outer: Box) -> bool:
    return (
        outer.left <= inner.left
        and inner.right <= outer.right
        and outer.bottom <= inner.bottom
        and inner.top <= outer.top
    )
