"""The assembled section on the working sheet: one picture for wide screens and one for phones."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from geometry.drawing import section_layout, section_svg, section_words
from geometry.drawing.section import Section, section_of_conflict, section_of_design, section_of_partial
from geometry.drawing.section_page import Page
from geometry.drawing.section_rows import hundredths, in_even_rows, unplaced
from server.outcome import Outcome

_WIDE, _PHONE = 638, 390
_LINK = re.compile(r"</?a\b[^>]*>")
OUTBOARD = "seam.clear_outboard_mm"
"""The one measurement of the car that stands on the jack's side of the wide picture."""


@dataclass(frozen=True, slots=True)
class MarkView:
    """The words beside a lettered mark of the wide picture."""

    mark: str
    words: str
    numbers: str
    at: int
    is_left: bool


@dataclass(frozen=True, slots=True)
class SectionView:
    """The assembled section for two widths, and at which hundredth of the wide one's height each balloon stands."""

    wide: Markup
    phone: Markup
    heights: Mapping[str, int]
    marks: tuple[MarkView, ...]

    @property
    def jack_top(self) -> int:
        """Where the jack's column begins."""
        return self._top(is_left=True)

    @property
    def car_top(self) -> int:
        """Where the car's column begins."""
        return self._top(is_left=False)

    @property
    def outboard_is_first(self) -> bool:
        """Whether the car's one question on the jack's side stands above all of the jack's."""
        return self.heights.get(OUTBOARD, 100) < self.jack_top

    def _top(self, *, is_left: bool) -> int:
        questions = [at for key, at in self.heights.items() if key.startswith("jack.") == is_left and key != OUTBOARD]
        return min(questions + [mark.at for mark in self.marks if mark.is_left == is_left])


def section_view(outcome: Outcome) -> SectionView:
    """The pictures of what is known so far, and where the balloons of the wide one stand."""
    section, units, typed = _section(outcome), outcome.reading.units, outcome.reading.typed
    loose = section_layout.lay_out(
        section.scene,
        section.pointers,
        section.troubles,
        units=units,
        width=_WIDE,
        typed=typed,
        lit=None,
        heights=unplaced,
    )
    # The words of marks stand beside them, where the other rows have their questions.
    notes = tuple(note for note in loose.notes if note.endswith("listed below."))
    # Rows stand at whole hundredths of the height, so it must be known before they are found.
    whole = replace(loose, notes=notes, height=loose.ground_y + (44 if notes else 20))
    wide = in_even_rows(whole, whole.frame.at((0, section.scene.top))[1])
    phone = section_layout.lay_out(
        section.scene, section.pointers, section.troubles, units=units, width=_PHONE, typed=typed, lit=None
    )
    at, described = hundredths(wide), _described(section, outcome)
    return SectionView(
        wide=_picture(section, wide, outcome, "wide", described),
        phone=_picture(section, phone, outcome, "phone", described),
        heights={item.pointer.field: at[item.mark] for item in wide.placed if item.pointer},
        marks=tuple(
            MarkView(item.mark, item.spot.words, item.spot.numbers(units), at[item.mark], item.is_left)
            for item in wide.placed
            if item.spot
        ),
    )


def bare_picture(outcome: Outcome, prefix: str) -> Markup:
    """The picture alone, without balloons that lead to questions; ``prefix`` keeps its ids apart from others on the page."""
    section, units, typed = _section(outcome), outcome.reading.units, outcome.reading.typed
    page = section_layout.lay_out(section.scene, (), section.troubles, units=units, width=_PHONE, typed=typed, lit=None)
    # The marks lead to the checks of a working sheet, which this page is not.
    return Markup(_LINK.sub("", _picture(section, page, outcome, prefix, _described(section, outcome))))  # noqa: S704 - our own drawing, links taken out


def _section(outcome: Outcome) -> Section:
    reading = outcome.reading
    if outcome.design:
        return section_of_design(outcome.design.measurements, outcome.design.pad, outcome.design.checks)
    if outcome.conflict and reading.measurements:
        return section_of_conflict(reading.measurements, outcome.conflict)
    return section_of_partial(reading.document)


def _described(section: Section, outcome: Outcome) -> str:
    """The section in words."""
    return section_words.description(section.scene, section.pointers, section.troubles, units=outcome.reading.units)


def _picture(section: Section, page: Page, outcome: Outcome, prefix: str, description: str) -> Markup:
    """One picture, its ids apart from those of the other on the page, every measurement's dimension line in it unseen."""
    units, typed = outcome.reading.units, outcome.reading.typed
    svg = section_svg.svg_of(
        page,
        section.shapes,
        title=section_words.title(section.scene),
        description=description,
        units=units,
        typed=typed,
        lit=None,
        lit_span=None,
        prefix=prefix,
    )
    unseen = "".join(
        f'<g visibility="hidden" data-field="{pointer.field}">{section_svg.dimension_line(pointer.span, page.frame)}</g>'
        for pointer in section.pointers
    )
    ground = f'<path class="ground" d="M{-_WIDE} {page.ground_y:g}H{2 * _WIDE}"/>' if prefix == "wide" else ""
    svg = svg.replace("</svg>", f"{ground}{unseen}</svg>")
    for name in ("balloon", "trouble"):
        svg = svg.replace(f'id="{name}-', f'id="{prefix}-{name}-')
    return Markup(svg)  # noqa: S704 - written by our own drawing code, which escapes every text
