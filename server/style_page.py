"""Every part of the pages once, in all its states, in our own words: a page for those who build on it."""

from dataclasses import dataclass

from fastapi import APIRouter
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, Response

from geometry.cautions import ONE_LINE
from geometry.drawing.section_known import BALLOONS
from geometry.plausible import doubts_of
from server.check_views import CheckGroup, CheckView
from server.design_views import CautionGroup, DimensionView
from server.field_views import FieldView, field_view
from server.forms import read_form
from server.links import Sample, samples, typed_of_document
from server.outcome import outcome_of
from server.present import pad_page
from server.section_view import MarkView, SectionView, section_view
from server.sheet_context import PadPage, Verdict
from server.templating import render

router = APIRouter(include_in_schema=False)
_STATES = (
    ("still to measure", "jack.cup_bore_mm", ""),
    ("answered", "jack.cup_depth_mm", "12"),
    ("answered in another unit, with what was understood", "seam.height_mm", '13/16"'),
    ("may be left out", "jack.rim_diameter_mm", ""),
    ("can be, and is unusual", "seam.thickness_mm", "12"),
    ("cannot be", "seam.edge_height_mm", "7"),
    ("a choice", "make.material", ""),
    ("several numbers", "make.stock_diameters_mm", "100; 120"),
)
"""One field in each state, and what was typed into it."""


@dataclass(frozen=True, slots=True)
class StylePage:
    """One of each part."""

    fields: tuple[tuple[str, FieldView], ...]
    verdicts: tuple[tuple[str, Verdict], ...]
    checks: tuple[CheckGroup, ...]
    dimensions: tuple[DimensionView, ...]
    cautions: tuple[CautionGroup, ...]
    marks: tuple[MarkView, ...]
    section: SectionView
    caution_line: str


@router.get("/style")
async def style() -> Response:
    """The page of parts."""
    return await run_in_threadpool(lambda: HTMLResponse(render("style.html", style_page())))


def style_page() -> StylePage:
    """Fields from a form of their own; verdicts, checks, sizes and cautions from the ready examples."""
    reading = read_form([(key, text) for _, key, text in _STATES if text])
    doubts = doubts_of({"seam.thickness_mm": 12.0})
    sheets = {sheet.state: sheet for sheet in (_sheet_of(sample) for sample in samples())}
    unfit = sheets["not_fit"]
    return StylePage(
        fields=tuple((words, field_view(key, reading, BALLOONS, (), doubts)) for words, key, _ in _STATES),
        verdicts=tuple((state, sheet.verdict) for state, sheet in sheets.items()),
        checks=(CheckGroup("One of each verdict", _one_of_each(unfit), False),),
        dimensions=sheets["fit"].dimensions[:1],
        cautions=tuple(CautionGroup(g.signal, g.sentences[:1]) for g in sheets["fit"].cautions),
        marks=unfit.section.marks[:1],
        section=sheets["fit"].section,
        caution_line=ONE_LINE,
    )


def _sheet_of(sample: Sample) -> PadPage:
    outcome = outcome_of(read_form(list(typed_of_document(sample.document).items())))
    return pad_page(outcome, section_view(outcome))


def _one_of_each(sheet: PadPage) -> tuple[CheckView, ...]:
    """The first check of every verdict."""
    found: dict[str, CheckView] = {}
    for check in (check for group in sheet.checks for check in group.checks):
        found.setdefault(check.verdict, check)
    return tuple(found.values())
