"""Placing the views on the sheet: the largest standard scale at which everything finds room."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field, replace
from functools import lru_cache
from itertools import chain, islice, product
from math import inf
from typing import Self

from geometry.drawing.arrangement import (
    Leeway,
    OtherViews,
    Placed,
    Sheets,
    arranged,
    right_limit_of,
    with_picture,
)
from geometry.drawing.blocks import section_block, with_told
from geometry.drawing.canvas import HASTY, MEASURED, PATIENT, Canvas
from geometry.drawing.details import Detail, details_of, lip_shows_in_corner
from geometry.drawing.errors import SheetError
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import PAPER_MM, Sheet
from geometry.drawing.main_plan import Plan, lip_needs_detail
from geometry.drawing.main_signs import wanted_signs
from geometry.drawing.main_view import SectionCanvases, trouble_of
from geometry.drawing.measures import measures
from geometry.drawing.model import Box, Drawing, Measure, PlacedView, shifted
from geometry.drawing.notes import OnLeader
from geometry.drawing.placing import NoRoomError
from geometry.drawing.scales import SCALES, Scale
from geometry.drawing.style import STYLE
from geometry.drawing.title_block import title_block
from geometry.pad import Pad

_DETAILS = ((STYLE.detail_radii_mm[0], False), (STYLE.detail_radii_mm[1], False), (STYLE.detail_radii_mm[1], True))
"""Radius of the details' windows, and whether words are kept above them."""
_MEASURED_TRIES = 3
_AT_FACE: frozenset[OnLeader] = frozenset({"seat texture"})
_LAST_READABLE = 0.5
_MUCH_TROUBLE = 8.0
"""Where more could not be helped, less room beside the section may yet leave room for a side view, which takes some of it."""


@lru_cache(maxsize=16)
def draw(pad: Pad, facts: SheetFacts) -> Drawing:
    """The pad's drawing: a buildable pad and the facts of its sheet, on one page.

    A sheet laid out a moment ago is kept: page, files and packet of a design ask for the same one.

    Raises SheetError where no standard scale leaves room.
    """
    shown = measures(pad, facts)
    sheets = Sheets(pad, facts)
    hasty = None
    for scale in SCALES:
        area = sheets.largest
        if pad.body_diameter_mm * scale.factor > area.width or pad.overall_height_mm * scale.factor > area.height:
            continue
        is_careful, found = _AtScale.of(pad, shown, sheets, scale).found()
        if found:
            this = scale, *found
            if is_careful:
                return _finished(pad, *this)
            # Rather at the next scale with good places for everything than here with any.
            hasty = hasty or this
        if hasty and scale.factor <= _LAST_READABLE:
            return _finished(pad, *hasty)
    if hasty:
        return _finished(pad, *hasty)
    raise SheetError("The pad is too large or too slender to be drawn on this paper at a standard scale.")


def _ways(pad: Pad, scale: Scale) -> Iterator[tuple[bool, Leeway]]:
    """What is tried at a scale: whether a narrow lip has a detail of its own, and what is allowed to find room.

    Where the next scale would make the slot too small to be seen, rather more leeway than that.
    """
    is_narrow, is_last = lip_needs_detail(pad, scale), scale.factor <= _LAST_READABLE
    for lip_apart in (True, False) if is_narrow else (False,):
        # In a narrow groove a leader seems to mean the groove's walls.
        if lip_apart or is_last or not (pad.has_skirt and is_narrow):
            yield lip_apart, Leeway()
        if is_last:
            yield lip_apart, Leeway(at_right=True)
            yield lip_apart, Leeway(at_right=True, crowded=True)


@dataclass(frozen=True, slots=True)
class _AtScale:
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

    def found(self) -> tuple[bool, tuple[Sheet, Placed] | None]:
        """All views in the first way in which all find good places, else in the first with any; None where there is none.

        And whether they are good places.
        """
        fallback = None
        for lip_apart, leeway in _ways(self.pad, self.scale):
            is_careful, found = self._in_one_way(lip_apart, leeway)
            if is_careful:
                return True, found
            fallback = fallback or found
        return False, fallback

    def _in_one_way(self, lip_apart: bool, leeway: Leeway) -> tuple[bool, tuple[Sheet, Placed] | None]:
        """All views with words where they like, or kept close to the section; the first with little trouble, else the least.

        And whether they were placed with care: in haste anything is taken that finds room.
        """
        least, fallback = inf, None
        for views in self._trials(lip_apart, leeway):
            found = views.in_haste()
            if found:
                # Where there is room, more care may leave fewer leaders in the way of other lines.
                careful = self._with_moved(views) or views.with_care()
                trouble = _trouble(careful) if careful else inf
                if careful and trouble <= _MUCH_TROUBLE:
                    return True, careful
                if fallback is None or trouble < least:
                    least, fallback = trouble, careful or found
        return least < inf, fallback

    def _with_moved(self, views: "_Views") -> tuple[Sheet, Placed] | None:
        """The same with what is in the way at the section left to other views; for those there may be more leeway."""
        free = replace(views, plan=replace(views.plan, may_move=True))
        found = free.with_care()
        if not found and self.scale.factor <= _LAST_READABLE:
            found = replace(free, leeway=Leeway(at_right=True, crowded=True)).with_care()
        return found

    def _trials(self, lip_apart: bool, leeway: Leeway) -> Iterator["_Views"]:
        """Views with large or small details, with more or less room for words beside the section."""
        pad, facts, scale = self.pad, self.sheets.facts, self.scale
        limits = (inf, right_limit_of(pad, self.sheets.largest, scale))
        windows_shared = (True, False) if pad.has_skirt and lip_apart else (True,)
        for shared, right_limit, (reach, narrow) in product(windows_shared, limits, _DETAILS):
            with suppress(NoRoomError):
                details = details_of(
                    pad, self.shown, scale, facts, reach_mm=reach, lip_apart=lip_apart, narrow=narrow, shared=shared
                )
                windows = tuple((detail.centre, detail.window_mm) for detail in details)
                plan = Plan(
                    unit=facts.figure_unit,
                    windows=windows,
                    right_limit=right_limit,
                    lip_apart=lip_apart,
                    run_out_apart=lip_shows_in_corner(details, pad),
                    is_printed=facts.as_printed,
                    located_by=facts.located_by,
                    critical=facts.critical,
                )
                yield _Views(self, plan, details, leeway)


def _trouble(found: tuple[Sheet, Placed]) -> float:
    """What could not be helped on all views of a sheet."""
    return sum(block.canvas.trouble for block, _ in found[1])


@dataclass(frozen=True, slots=True)
class _Views:
    """All views of a pad at one scale with certain details, to be placed about a section."""

    at: _AtScale
    plan: Plan
    details: tuple[Detail, ...]
    leeway: Leeway

    def sections(self, patience: int) -> SectionCanvases:
        """The section, placed with more or less care."""
        key, at = (self.plan, patience), self.at
        if key not in at.made:
            at.made[key] = SectionCanvases(at.pad, at.shown, at.scale, self.plan, patience=patience)
        return at.made[key]

    def in_haste(self) -> tuple[Sheet, Placed] | None:
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

    def with_care(self) -> tuple[Sheet, Placed] | None:
        """The views about the section that leaves least trouble and still finds room on the sheet."""
        failed: list[Canvas] = []
        for canvas in self._careful():
            if self._may_fit(canvas.box) and not any(_asks_no_more(other, canvas) for other in failed):
                with suppress(NoRoomError):
                    found = self.about(canvas)
                    if found:
                        return found
                    failed.append(canvas)
        return None

    def _careful(self) -> Iterator[Canvas]:
        """Sections placed with care, the least troubled first; those that took less care keep things nearer."""
        patient = self.sections(PATIENT).best()
        yield from patient[:1]
        yield from sorted([*patient[1:], *self.sections(MEASURED).best()], key=trouble_of)

    def about(self, canvas: Canvas) -> tuple[Sheet, Placed] | None:
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


def _finished(pad: Pad, scale: Scale, sheet: Sheet, projected: Placed) -> Drawing:
    """Everything moved to its place, and a picture of the whole where there is room."""
    placed = with_picture(pad, scale, projected, sheet)
    title_block(sheet, scale)
    views, dimensions = [], []
    for block, at in placed:
        views.append(PlacedView(block.view, at, block.scale))
        dimensions += [dimension.moved(at) for dimension in block.canvas.dimensions]
        sheet.texts += [text.moved(at) for text in block.canvas.texts]
        sheet.shapes += [shifted(shape, at) for shape in block.canvas.shapes]
    width, height = PAPER_MM[sheet.facts.paper]
    return Drawing(
        sheet.facts,
        width,
        height,
        sheet.frame,
        scale,
        tuple(views),
        tuple(dimensions),
        tuple(sheet.shapes),
        tuple(sheet.texts),
    )
