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
