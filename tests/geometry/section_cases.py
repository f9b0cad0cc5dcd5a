"""Documents of every kind for the tests of the section: unfinished, complete, with a pad and without."""

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, get_args

from hypothesis import strategies as st
from pydantic.fields import FieldInfo

from geometry.design import design_pad
from geometry.drawing.section import Section, section_of_conflict, section_of_design, section_of_partial
from geometry.drawing.section_known import GROUPS, asked_of
from geometry.drawing.section_layout import lay_out
from geometry.drawing.section_page import Page
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.kinds import FACES, JACKS
from geometry.measurements import read_measurements

SAMPLES = Path(__file__).parents[2] / "sample_data"
_DRAWN = {
    "jack": (
        "cup_bore_mm",
        "cup_depth_mm",
        "cup_corner_radius_mm",
        "rim_diameter_mm",
        "stem_hole_diameter_mm",
        "stem_hole_depth_mm",
        "rim_height_low_mm",
    ),
    "seam": (
        "thickness_mm",
        "bare_thickness_mm",
        "height_mm",
        "edge_height_mm",
        "clear_outboard_mm",
        "clear_inboard_mm",
    ),
}
_OPTIONS = {
    "jack": ("floor_boss_height_mm", "floor_boss_diameter_mm"),
    "seam": ("offset_mm", "local_thickness_mm", "local_drop_mm", "local_length_mm"),
}
"""What not every job has."""


def _within_bounds(group: str, name: str) -> st.SearchStrategy[float]:
    bounds = {type(bound).__name__: bound for bound in GROUPS[group].model_fields[name].metadata}
    return st.floats(bounds["Ge"].ge, bounds["Le"].le)


def unfinished_documents() -> st.SearchStrategy[dict[str, dict[str, float]]]:
    """Any of the measurements that the section shows, over everything that its field allows."""
    return _documents({group: (*names, *_OPTIONS[group]) for group, names in _DRAWN.items()})


def _documents(drawn: Mapping[str, Sequence[str]]) -> st.SearchStrategy[dict[str, dict[str, float]]]:
    groups = {
        group: st.fixed_dictionaries({}, optional={name: _within_bounds(group, name) for name in names})
        for group, names in drawn.items()
    }
    groups["seam"] = st.builds(
        lambda fields, sheets: fields | sheets,
        groups["seam"],
        st.fixed_dictionaries({}, optional={"sheets": st.integers(1, 6)}),
    )
    return st.fixed_dictionaries(groups)


@st.composite
def _optional_fields(draw: st.DrawFn) -> dict[str, dict[str, Any]]:
    """Boss, slot off the middle, pocket, second slot and flats, as far as they go together and mostly fit a sample."""
    told: dict[str, dict[str, Any]] = {"jack": {}, "seam": {}, "make": {}}
    if draw(st.booleans()):
        told["jack"] = {
            "floor_boss_height_mm": draw(st.floats(0.5, 12)),
            "floor_boss_diameter_mm": draw(st.floats(3, 30)),
            "stem_hole_diameter_mm": None,
            "stem_hole_depth_mm": None,
        }
    if draw(st.booleans()):
        told["make"] |= {"body": "two_flats"}
    if draw(st.booleans()):
        told["make"] |= {"slots": "crossed"}
        told["seam"] = {"offset_mm": 0, "local_thickness_mm": None, "local_drop_mm": None, "local_length_mm": None}
        return told
    if draw(st.booleans()):
        told["seam"] |= {"offset_mm": draw(st.floats(0, 40))}
    if draw(st.booleans()):
        told["seam"] |= {
            "local_length_mm": draw(st.floats(1, 40)),
            "local_thickness_mm": draw(st.floats(4, 14)),
            "local_drop_mm": draw(st.floats(0, 12)),
        }
    return told


def document(sample: str) -> dict[str, Any]:
    """A sample's document."""
    told: dict[str, Any] = json.loads((SAMPLES / f"{sample}.json").read_text(encoding="utf-8"))
    return told


_OF_A_CUP = [p.stem for p in sorted(SAMPLES.glob("*.json")) if not {"foot", "head"} & document(p.stem).keys()]
"""Samples of a seam on a cup: their fields are changed one by one; other kinds have fields of their own."""


def section_of(told: dict[str, Any]) -> Section:
    """The section of a whole document, with or without a pad; of an unfinished one where it cannot be."""
    try:
        measurements = read_measurements(told)
        design = design_pad(measurements)
    except NoPadFitsError as error:
        return section_of_conflict(measurements, error)
    except BadMeasurementsError:
        return section_of_partial(told)
    return section_of_design(measurements, design.pad, design.checks)


@st.composite
def sections(draw: st.DrawFn) -> Section:
    """Sections of unfinished documents, and of complete ones around a sample with any drawn field changed."""
    if draw(st.booleans()):
        return section_of_partial(draw(unfinished_documents()))
    told = document(draw(st.sampled_from(_OF_A_CUP)))
    for changes in (
        (draw(_documents(_DRAWN)), draw(_optional_fields())) if draw(st.booleans()) else (draw(_optional_fields()),)
    ):
        for group, values in changes.items():
            told[group] = told.get(group, {}) | values
    if draw(st.booleans()):
        told["jack"] = told["jack"] | {"rim_height_low_mm": 60.0, "cup_bore_mm": draw(st.floats(40, 100))}
        told["seam"] = told["seam"] | {"edge_height_mm": 300.0}
    return section_of(told)


@st.composite
def sections_of_any_kind(draw: st.DrawFn) -> Section:
    """Sections of documents with any foot and head, any of their fields given, anywhere within what the field allows."""
    foot, head = draw(st.sampled_from(sorted(JACKS))), draw(st.sampled_from(sorted(FACES)))
    told: dict[str, Any] = {"foot": foot, "head": head, "car": {"gross_mass_kg": 1500.0}}
    for group, model in asked_of(foot, head).groups.items():
        told[group] = {
            name: draw(anything(info))
            for name, info in model.model_fields.items()
            if info.is_required() or draw(st.booleans())
        }
        if draw(st.booleans()):
            told[group] = {name: value for name, value in told[group].items() if draw(st.booleans())}
    return section_of(told)


def anything(info: FieldInfo) -> st.SearchStrategy[Any]:
    """Any answer that a field allows."""
    bounds = {type(bound).__name__: bound for bound in info.metadata}
    if "Ge" not in bounds:
        return st.sampled_from(get_args(info.annotation))
    extra = info.json_schema_extra
    is_count = isinstance(extra, dict) and extra["kind"] == "count"
    low, high = bounds["Ge"].ge, bounds["Le"].le
    return st.integers(low, high) if is_count else st.floats(low, high)


def page_of(section: Section, *, width: int = 1080) -> Page:
    """The section laid out as it would be written."""
    return lay_out(section.scene, section.pointers, section.troubles, units="mm", width=width, typed={}, lit=None)
