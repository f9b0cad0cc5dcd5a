"""Measurement documents of cushions and plugs for tests: ordinary ones, and strategies over their whole domain on any foot."""

from typing import Any

from hypothesis import assume
from hypothesis import strategies as st

from geometry.design import Design
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.kinds import FACE_GROUPS, FACES, JACKS
from geometry.materials import MATERIALS
from geometry.rules import Check
from tests.documents import cars, designed, services

CUP = {"cup_bore_mm": 84, "cup_depth_mm": 12, "rated_load_kg": 2000, "rim_height_low_mm": 105}
RAIL = {"face_width_mm": 60, "face_length_mm": 200, "face_height_mm": 210, "clear_beside_mm": 15}
POCKET = {"hole_width_mm": 40, "hole_depth_mm": 45, "rim_width_mm": 14, "rim_height_mm": 215}
OBLONG = {**POCKET, "shape": "rectangular", "hole_length_mm": 56, "corner_radius_mm": 6}


F_D = 1.2 * 0.6 * 1600 * 9.80665
"""Design force of their car of 1600 kg, N."""


def on_a_rail(**changes: Any) -> dict[str, Any]:
    """A cushion in an ordinary cup; ``changes`` are dotted keys with ``__`` for the dot."""
    return _changed({"head": "cushion", "jack": CUP, "rail": RAIL, "car": {"gross_mass_kg": 1600}}, changes)


def in_a_hole(**changes: Any) -> dict[str, Any]:
    """A round plug in an ordinary cup."""
    return _changed({"head": "plug", "jack": CUP, "pocket": POCKET, "car": {"gross_mass_kg": 1600}}, changes)


def in_an_oblong_hole(**changes: Any) -> dict[str, Any]:
    """A rectangular plug in an ordinary cup."""
    return _changed({"head": "plug", "jack": CUP, "pocket": OBLONG, "car": {"gross_mass_kg": 1600}}, changes)


def _changed(document: dict[str, Any], changes: dict[str, Any]) -> dict[str, Any]:
    copied = {key: dict(value) if isinstance(value, dict) else value for key, value in document.items()}
    for key, value in changes.items():
        group, _, name = key.partition("__")
        if name:
            copied.setdefault(group, {})[name] = value
        else:
            copied[group] = value
    return copied


def check(design: Design, code: str) -> Check:
    """What one check found."""
    return next(c for c in design.checks if c.code == code)


def designed_or_none(document: dict[str, Any]) -> Design | None:
    """The pad of a document; none where it is refused or no pad fits, which must then be said in words."""
    try:
        return designed(document)
    except (BadMeasurementsError, NoPadFitsError) as error:
        assert len(str(error)) > 20
        return None


_USUAL: dict[str, tuple[float, float]] = {
    "rated_load_kg": (1500, 5000),
    "rim_height_low_mm": (80, 140),
    "rim_height_high_mm": (330, 600),
    "saddle_tilt_deg": (0, 10),
    "cup_bore_mm": (50, 110),
    "cup_depth_mm": (5, 20),
    "cup_corner_radius_mm": (0, 4),
    "stem_hole_diameter_mm": (8, 24),
    "between_teeth_mm": (50, 110),
    "tooth_height_mm": (3, 15),
    "tooth_root_radius_mm": (0, 2),
    "over_teeth_mm": (112, 130),
    "plate_diameter_mm": (70, 130),
    "free_edge_mm": (8, 30),
    "ring_bore_mm": (50, 68),
    "ring_height_mm": (3, 15),
    "ring_corner_radius_mm": (0, 2),
    "post_bore_mm": (18, 40),
    "post_bore_depth_mm": (25, 90),
    "bore_rim_diameter_mm": (55, 100),
    "face_width_mm": (25, 120),
    "face_length_mm": (40, 400),
    "face_height_mm": (190, 320),
    "clear_beside_mm": (3, 60),
    "hole_width_mm": (20, 70),
    "hole_length_mm": (20, 80),
    "corner_radius_mm": (0, 10),
    "hole_depth_mm": (14, 90),
    "rim_width_mm": (3, 30),
    "rim_height_mm": (190, 320),
}
"""Where real jacks and cars lie: half of the documents are drawn there, so that most of those have a pad."""
_SELDOM = ("floor_boss", "face_height_flat", "rim_height_flat", "roll_in_obstacle")


def _fields(draw: st.DrawFn, model: Any, *, usual: bool) -> dict[str, Any]:
    """A group with every required field, and some of the others."""
    found: dict[str, Any] = {}
    for name, info in model.model_fields.items():
        seldom = usual and (name.startswith(_SELDOM) or name not in _USUAL)
        if not info.is_required() and (seldom or not draw(st.booleans())):
            continue
        low = next((m.ge for m in info.metadata if hasattr(m, "ge")), None)
        if low is None:
            found[name] = draw(st.sampled_from(info.annotation.__args__))
            continue
        high = next(m.le for m in info.metadata if hasattr(m, "le"))
        low, high = _USUAL.get(name, (low, high)) if usual else (low, high)
        found[name] = min(high, max(low, round(draw(st.floats(low, high)), 1)))
    return found


@st.composite
def documents_of(draw: st.DrawFn, head: str, *, usual: bool | None = None) -> dict[str, Any]:
    """A document with this head on any foot, in any service, material and process that its own rules let through."""
    is_usual = draw(st.booleans()) if usual is None else usual
    foot = draw(st.sampled_from(sorted(JACKS)))
    service = {} if is_usual and draw(st.booleans()) else draw(services())
    material = draw(st.sampled_from([key for key, entry in MATERIALS.items() if entry.refusal_in(head) is None]))
    turned = ["lathe_and_mill", "cnc", "hand_tools"]
    document: dict[str, Any] = {
        "foot": foot,
        "head": head,
        "jack": _fields(draw, JACKS[foot], usual=is_usual),
        FACE_GROUPS[head]: _fields(draw, FACES[head], usual=is_usual),
        "car": {"gross_mass_kg": draw(st.integers(900, 2300))} if is_usual else draw(cars()),
        "service": service,
        "make": {
            "material": material,
            "process": "printed" if MATERIALS[material].printed else draw(st.sampled_from(turned)),
            "step": draw(st.sampled_from(["metric", "inch"])),
            "body": draw(st.sampled_from(["round", "round", "two_flats"])),
            "measured_with": draw(st.sampled_from(["caliper", "rule"])),
        },
    }
    if is_usual and head == "plug" and draw(st.booleans()):
        document["pocket"] |= {"shape": "rectangular", "hole_length_mm": draw(st.integers(20, 80))}
    return document


@st.composite
def designs_of(draw: st.DrawFn, head: str) -> Design:
    """A pad with this head that fits somewhere."""
    found = designed_or_none(draw(documents_of(head, usual=True)))
    assume(found is not None)
    assert found is not None
    return found
