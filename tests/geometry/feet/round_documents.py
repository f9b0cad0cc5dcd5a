"""Documents of saddles and plates with every head: ordinary ones, and strategies over the whole domain."""

from typing import Any

from hypothesis import strategies as st

from tests.geometry.feet.post_documents import FACES, HEADS
from tests.geometry.heads.documents import documents_of

WAYS = ("land", "teeth", "edge", "ring", "recess")
"""Five ways in which a saddle or a plate takes a pad."""
SKIRTED = ("teeth", "edge")
_TEETH = {"between_teeth_mm": 76, "tooth_height_mm": 14, "over_teeth_mm": 100}
_TIPS = {"stands_on": "teeth", "teeth": 6, "tip_length_mm": 24, "tip_width_mm": 10}
JACKS: dict[str, dict[str, Any]] = {
    "land": _TEETH,
    "teeth": _TEETH | _TIPS,
    "edge": {"located_by": "edge", "plate_diameter_mm": 90, "free_edge_mm": 20},
    "ring": {"located_by": "ring", "plate_diameter_mm": 110, "ring_bore_mm": 80, "ring_height_mm": 8},
    "recess": {"located_by": "recess", "plate_diameter_mm": 110, "ring_bore_mm": 80, "ring_height_mm": 5},
}


def foot_of(way: str) -> str:
    """The kind of foot that takes a pad in this way."""
    return "saddle" if way in {"land", "teeth"} else "plate"


def standing(way: str, head: str = "slot", **changes: Any) -> dict[str, Any]:
    """An ordinary jack of this way; ``changes`` are dotted keys with ``__`` for the dot."""
    document: dict[str, Any] = {
        "foot": foot_of(way),
        "head": head,
        "jack": {**JACKS[way], "rated_load_kg": 2000, "rim_height_low_mm": 105},
        "car": {"gross_mass_kg": 1600},
    } | {group: dict(fields) for group, fields in FACES[head].items()}
    for key, value in changes.items():
        group, name = key.split("__")
        document.setdefault(group, {})[name] = value
    return document


def _tenths(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, max(low, high)).map(lambda x: min(max(low, high), max(low, round(x, 1))))


@st.composite
def _saddles(draw: st.DrawFn, way: str, *, usual: bool) -> dict[str, Any]:
    between = draw(_tenths(50, 85) if usual else _tenths(20, 200))
    height = draw(_tenths(8, 20) if usual else _tenths(2, 60))
    over = round(between + draw(_tenths(14, 36) if usual else _tenths(4, 200)), 1)
    jack = {"between_teeth_mm": between, "tooth_height_mm": height}
    if way == "teeth" or draw(st.booleans()):
        jack["over_teeth_mm"] = over
    if draw(st.booleans()):
        jack["tooth_root_radius_mm"] = draw(_tenths(0, min(20, height - 1)))
    if way == "land":
        if draw(st.booleans()):
            jack["land_hole_diameter_mm"] = draw(_tenths(3, min(150, between - 6.1)))
        return jack
    count = draw(st.integers(3, 8 if usual else 60))
    longest = 3.1 * over / count
    return jack | {
        "stands_on": "teeth",
        "teeth": count,
        "tip_length_mm": draw(_tenths(max(1, longest / 2) if usual else 1, min(120, longest))),
        "tip_width_mm": draw(_tenths(4 if usual else 0.5, min(60, (over - between) / 2))),
    }


@st.composite
def _plates(draw: st.DrawFn, way: str, *, usual: bool) -> dict[str, Any]:
    plate = draw(_tenths(60, 115) if usual else _tenths(24, 300))
    jack: dict[str, Any] = {"located_by": way, "plate_diameter_mm": plate}
    room = plate
    if way == "edge":
        jack["free_edge_mm"] = draw(_tenths(8, 40) if usual else _tenths(3, 100))
    else:
        room = draw(_tenths(48, plate - 4) if usual else _tenths(20, min(200, plate - 2.1)))
        jack |= {"ring_bore_mm": room, "ring_height_mm": draw(_tenths(3, 15) if usual else _tenths(2, 20))}
    if draw(st.booleans()):
        jack["plate_hole_diameter_mm"] = draw(_tenths(3, min(150, (room / 2 if usual else room - 6.1))))
    return jack


@st.composite
def documents(draw: st.DrawFn, *, usual: bool, ways: tuple[str, ...] = WAYS) -> dict[str, Any]:
    """A saddle or a plate in one of these ways with any head, in any service, material and process."""
    way = draw(st.sampled_from(ways))
    document = draw(documents_of(draw(st.sampled_from(HEADS)), usual=usual))
    jack = draw((_saddles if foot_of(way) == "saddle" else _plates)(way, usual=usual))
    low = draw(st.integers(80, 140)) if usual else draw(_tenths(80, 1500))
    return document | {
        "foot": foot_of(way),
        "jack": jack | {"rated_load_kg": draw(st.integers(100, 5000)), "rim_height_low_mm": low},
    }
