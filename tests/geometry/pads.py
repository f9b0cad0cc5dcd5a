"""Pads for tests: one ordinary pad, one with every feature large, and every pad that can be built at all."""

from hypothesis import assume
from hypothesis import strategies as st

from geometry.buildable import require_buildable
from geometry.errors import BadMeasurementsError
from geometry.model_label import ModelLabel
from geometry.pad import Pad

ORDINARY = Pad(
    seat_diameter_mm=67.2,
    seat_length_mm=13,
    seat_corner_radius_mm=4.5,
    stem_diameter_mm=0,
    stem_length_mm=0,
    body_diameter_mm=74,
    slot_width_mm=9,
    slot_depth_mm=15,
    web_mm=22,
    slot_corner_radius_mm=0.5,
    slot_mouth_chamfer_mm=1,
    edge_chamfer_mm=1,
)
STEMMED = ORDINARY.with_(stem_diameter_mm=12, stem_length_mm=8, slot_corner_radius_mm=2, slot_mouth_chamfer_mm=2)

_CUSHION = ORDINARY.with_(slot_width_mm=0, slot_depth_mm=0, slot_corner_radius_mm=0, slot_mouth_chamfer_mm=0)
_PLUG = _CUSHION.with_(plug_length_mm=36, plug_width_mm=20, plug_height_mm=14, plug_corner_radius_mm=5)
_RELIEF = {"relief_width_mm": 20.0, "relief_length_mm": 26.0, "relief_depth_mm": 9.0}
_PIN = {"stem_diameter_mm": 18.0, "stem_length_mm": 30.0, "cross_hole_diameter_mm": 6.0, "cross_hole_distance_mm": 20.0}
EVERY_KIND = {
    "recess": ORDINARY.with_(seat_recess_diameter_mm=24, seat_recess_depth_mm=5),
    "skirt": ORDINARY.with_(body_diameter_mm=84, skirt_bore_mm=74, skirt_length_mm=20),
    "short skirt": ORDINARY.with_(body_diameter_mm=84, skirt_bore_mm=74, skirt_length_mm=6),
    "stem with cross-hole": ORDINARY.with_(seat_diameter_mm=60, **_PIN),
    "flats": ORDINARY.with_(body_diameter_mm=84, flats_width_mm=70),
    "flats on a skirt": ORDINARY.with_(body_diameter_mm=96, flats_width_mm=80, skirt_bore_mm=74, skirt_length_mm=20),
    "offset slot": ORDINARY.with_(slot_offset_mm=14),
    "relief": ORDINARY.with_(**_RELIEF),
    "offset slot with relief": ORDINARY.with_(slot_offset_mm=10, **_RELIEF),
    "open relief": ORDINARY.with_(**{**_RELIEF, "relief_depth_mm": 18.0}),
    "crossed slots": ORDINARY.with_(cross_slot_width_mm=12),
    "crossed slots and flats": ORDINARY.with_(body_diameter_mm=84, flats_width_mm=70, cross_slot_width_mm=40),
    "cushion": _CUSHION,
    "plug": _PLUG,
    "round plug": _PLUG.with_(plug_length_mm=24, plug_width_mm=24, plug_corner_radius_mm=12),
    "plug and flats": _PLUG.with_(body_diameter_mm=84, flats_width_mm=70, plug_corner_radius_mm=0.6),
}
"""One pad for each thing that a pad may have, and for some that meet."""

LABEL = ModelLabel(
    design_id="k3f9wq2a",
    title="Vän, left front “point”",
    revision="B",
    material="PA66 (nylon), extruded",
    fit_to_make=True,
    engine_version="0.1.0",
)


def _mm(low: float, high: float) -> st.SearchStrategy[float]:
    """Lengths to the tenth, half and hundredth of a millimetre, as sizing, rounding of inches and people give them."""
    return st.integers(round(low * 100), round(max(low, high) * 100)).map(lambda hundredths: hundredths / 100)


@st.composite
def buildable_pads(draw: st.DrawFn) -> Pad:
    """Any pad that is one body: from a bottle cap to a dinner plate, sharp or round, with and without a stem."""
    seat = draw(_mm(15, 140))
    seat_length = draw(_mm(1, 40))
    edge, mouth = draw(st.just(1.0) | _mm(0, 4)), draw(st.just(1.0) | _mm(0, 4))
    body = seat + 2 * edge + draw(_mm(0.5, 60))
    slot = draw(_mm(1, body - 2 * (edge + mouth) - 1))
    depth = mouth + draw(_mm(0.5, 50))
    stem_length = draw(st.just(0.0) | _mm(0.5, 30))
    pad = Pad(
        seat_diameter_mm=seat,
        seat_length_mm=seat_length,
        seat_corner_radius_mm=draw(
            st.sampled_from([0.0, min(seat_length, seat / 4)]) | _mm(0, min(seat_length, seat / 4))
        ),
        stem_diameter_mm=draw(_mm(1, seat / 2 - 1)) if stem_length else 0.0,
        stem_length_mm=stem_length,
        body_diameter_mm=body,
        slot_width_mm=slot,
        slot_depth_mm=depth,
        web_mm=seat_length + edge + draw(_mm(0.01, 40)),
        slot_corner_radius_mm=draw(st.sampled_from([0.0, 0.5, slot / 2]) | _mm(0, slot / 2)),
        slot_mouth_chamfer_mm=mouth,
        edge_chamfer_mm=edge,
    )
    try:
        require_buildable(pad)
    except BadMeasurementsError:
        assume(False)
    return pad


FEET = ("plain", "stem", "pinned stem", "recess", "skirt", "skirt and stem", "skirt and recess")
HEADS = ("slot", "offset slot", "relief", "offset relief", "crossed slots", "cushion", "plug", "round plug")


@st.composite
def pads_of_any_kind(draw: st.DrawFn) -> Pad:
    """Any foot under any head, with and without flats: each dimension from next to nothing to as much as there is room for."""
    seat = draw(_mm(15, 140))
    edge = draw(st.just(1.0) | _mm(0, 3))
    length = draw(_mm(1, 40))
    corner = draw(st.sampled_from([0.0, min(length, seat / 4)]) | _mm(0, min(length, seat / 4)))
    foot = _foot(draw, draw(st.sampled_from(FEET)), (seat, seat - 2 * corner, length))
    widest = max(seat + 2 * edge, foot.get("skirt_bore_mm", 0.0) + 2 * edge + 1)
    body = widest + draw(_mm(2, 60))
    flats = draw(st.just(0.0) | _mm(widest + 1, max(widest + 1, body - 2 * edge - 1)))
    head = _head(draw, draw(st.sampled_from(HEADS)), flats or body, edge)
    web = max(length + edge, foot.get("seat_recess_depth_mm", 0.0)) + draw(_mm(1, 40))
    pad = Pad(
        seat_diameter_mm=seat,
        seat_length_mm=length,
        seat_corner_radius_mm=corner,
        body_diameter_mm=body,
        flats_width_mm=flats,
        web_mm=web,
        edge_chamfer_mm=edge,
        **foot,
        **head,
    )
    try:
        require_buildable(pad)
    except BadMeasurementsError:
        assume(False)
    return pad


def _foot(draw: st.DrawFn, kind: str, sizes: tuple[float, float, float]) -> dict[str, float]:
    """What the seat face and the lip face carry, on a seat of a diameter, a flat and a length."""
    seat, flat, length = sizes
    found: dict[str, float] = {}
    if "stem" in kind:
        stem = draw(_mm(2, flat - 0.5))
        found |= {"stem_diameter_mm": stem, "stem_length_mm": draw(_mm(0.5, 40))}
    if kind == "pinned stem":
        hole = draw(_mm(0.5, min(stem - 0.5, 15)))
        distance = hole / 2 + draw(_mm(0.25, 20))
        found |= {
            "cross_hole_diameter_mm": hole,
            "cross_hole_distance_mm": distance,
            "stem_length_mm": distance + hole / 2 + draw(_mm(0.25, 20)),
        }
    if "recess" in kind:
        found |= {"seat_recess_diameter_mm": draw(_mm(1, flat - 0.5)), "seat_recess_depth_mm": draw(_mm(0.1, 30))}
    if "skirt" in kind:
        found |= {"skirt_bore_mm": seat + draw(_mm(0.5, 40)), "skirt_length_mm": draw(_mm(0.2, length + 20))}
    return found


def _head(draw: st.DrawFn, kind: str, across: float, edge: float) -> dict[str, float]:
    """What the top carries, on a body that is so far across."""
    room = across - 2 * edge - 1
    if kind == "cushion":
        return {}
    if "plug" in kind:
        width = draw(_mm(2 * edge + 1, 0.7 * room))
        length = width if kind == "round plug" else draw(_mm(2 * edge + 1, 0.7 * room))
        radius = width / 2 if kind == "round plug" else draw(st.just(0.0) | _mm(0, min(width, length) / 2))
        height = edge + draw(_mm(0.5, 40))
        sizes = {"plug_width_mm": width, "plug_length_mm": length}
        return {**sizes, "plug_height_mm": height, "plug_corner_radius_mm": radius}
    mouth = draw(st.just(1.0) | _mm(0, 3))
    room -= 2 * mouth
    share = 1.0 if kind in {"slot", "offset slot"} else 0.6
    width = draw(_mm(1, max(1.0, share * room)))
    depth = mouth + draw(_mm(0.5, 50))
    offset = draw(_mm(0, max(0.0, room - width) / 3)) if "offset" in kind else 0.0
    crossed = draw(_mm(1, max(1.0, share * room))) if kind == "crossed slots" else 0.0
    narrow = min(width, crossed or width, 2 * (depth - mouth))
    slot = {
        "slot_width_mm": width,
        "slot_depth_mm": depth,
        "slot_offset_mm": offset,
        "cross_slot_width_mm": crossed,
        "slot_corner_radius_mm": draw(st.sampled_from([0.0, min(0.5, narrow / 2), narrow / 2]) | _mm(0, narrow / 2)),
        "slot_mouth_chamfer_mm": mouth,
    }
    if "relief" in kind:
        slot["relief_width_mm"] = width + 2 * mouth + draw(_mm(0.5, max(0.5, (room - width) / 2)))
        slot["relief_length_mm"] = draw(_mm(1, across / 2))
        slot["relief_depth_mm"] = draw(st.just(depth) | _mm(mouth + 0.1, depth) | _mm(depth + 0.1, depth + 1.3))
    return slot
