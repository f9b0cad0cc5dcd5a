"""Measurement documents for tests: one ordinary one, and strategies over the whole input domain."""

import json
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from geometry.design import Design, design_pad
from geometry.document.car import Car
from geometry.document.service import Service
from geometry.feet.cup.fields import CupJack
from geometry.heads.slot.fields import SlotSeam
from geometry.materials import MATERIALS, SLOT_MATERIALS
from geometry.measurements import Measurements, read_measurements
from geometry.quantity import Group

SAMPLES = Path(__file__).parent.parent / "sample_data"


def van(**changes: Any) -> dict[str, Any]:
    """The eight required measurements of an ordinary van; ``changes`` are dotted keys with ``__`` for the dot."""
    document: dict[str, Any] = {
        "jack": {"cup_bore_mm": 68, "cup_depth_mm": 12, "rated_load_kg": 2000, "rim_height_low_mm": 105},
        "seam": {"thickness_mm": 3.2, "height_mm": 20, "edge_height_mm": 190},
        "car": {"gross_mass_kg": 1600},
    }
    for key, value in changes.items():
        group, _, name = key.partition("__")
        if name:
            document.setdefault(group, {})[name] = value
        else:
            document[group] = value
    return document


def sample(name: str) -> dict[str, Any]:
    """A sample document by its file name without ending."""
    document: dict[str, Any] = json.loads((SAMPLES / f"{name}.json").read_text())
    return document


def _within(
    group: type[Group], name: str, least: float | None = None, most: float | None = None
) -> st.SearchStrategy[float]:
    """Values of a field over its whole domain, or the part of it between ``least`` and ``most``."""
    info = group.model_fields[name]
    low = next(m.ge for m in info.metadata if hasattr(m, "ge"))
    high = next(m.le for m in info.metadata if hasattr(m, "le"))
    low, high = max(low, low if least is None else least), min(high, high if most is None else most)
    return st.floats(low, max(low, high), allow_nan=False).map(lambda x: min(high, max(low, round(x, 2))))


@st.composite
def jacks(draw: st.DrawFn) -> dict[str, Any]:
    """A jack over the whole domain of its fields."""
    bore = draw(_within(CupJack, "cup_bore_mm"))
    depth = draw(_within(CupJack, "cup_depth_mm"))
    low = draw(_within(CupJack, "rim_height_low_mm", least=depth + 1))
    jack = {
        "cup_bore_mm": bore,
        "cup_depth_mm": depth,
        "rated_load_kg": draw(_within(CupJack, "rated_load_kg")),
        "rim_height_low_mm": low,
    }
    optional = {
        "cup_corner_radius_mm": _within(CupJack, "cup_corner_radius_mm", most=min(depth - 1, bore / 2)),
        "rim_diameter_mm": _within(CupJack, "rim_diameter_mm", least=bore),
        "rim_height_high_mm": _within(CupJack, "rim_height_high_mm", least=low + 10),
        "saddle_tilt_deg": _within(CupJack, "saddle_tilt_deg"),
        "stem_hole_depth_mm": _within(CupJack, "stem_hole_depth_mm"),
    }
    if bore > 10:
        optional["stem_hole_diameter_mm"] = _within(CupJack, "stem_hole_diameter_mm", most=bore - 6)
    return jack | draw(st.fixed_dictionaries({}, optional=optional))


@st.composite
def seams(draw: st.DrawFn) -> dict[str, Any]:
    """A seam over the whole domain of its fields."""
    thickness = draw(_within(SlotSeam, "thickness_mm"))
    edge = draw(_within(SlotSeam, "edge_height_mm"))
    seam = {
        "thickness_mm": thickness,
        "height_mm": draw(_within(SlotSeam, "height_mm")),
        "edge_height_mm": edge,
    }
    optional = {
        "sheets": st.integers(1, 6),
        "bare_thickness_mm": _within(SlotSeam, "bare_thickness_mm", most=thickness),
        "yield_mpa": _within(SlotSeam, "yield_mpa"),
        "straight_length_mm": _within(SlotSeam, "straight_length_mm"),
        "bow_mm": _within(SlotSeam, "bow_mm"),
        "edge_height_flat_mm": _within(SlotSeam, "edge_height_flat_mm", most=edge),
        "clear_outboard_mm": _within(SlotSeam, "clear_outboard_mm"),
        "clear_inboard_mm": _within(SlotSeam, "clear_inboard_mm"),
        "roll_in_obstacle_mm": _within(SlotSeam, "roll_in_obstacle_mm"),
    }
    return seam | draw(st.fixed_dictionaries({}, optional=optional))


@st.composite
def cars(draw: st.DrawFn) -> dict[str, Any]:
    """A car by mass, by a stated load, or by its statics."""
    lift = {"lift_needed_mm": draw(_within(Car, "lift_needed_mm"))}
    source = draw(st.sampled_from(["gross_mass", "stated", "statics"]))
    if source == "stated":
        return lift | {"load_source": source, "load_kg": draw(_within(Car, "load_kg"))}
    car = lift | {"load_source": source, "gross_mass_kg": draw(_within(Car, "gross_mass_kg"))}
    if source == "gross_mass":
        return car
    base, track = draw(_within(Car, "wheelbase_mm")), draw(_within(Car, "track_mm"))
    return car | {
        "front_share": draw(_within(Car, "front_share")),
        "wheelbase_mm": base,
        "track_mm": track,
        "point_behind_front_axle_mm": draw(_within(Car, "point_behind_front_axle_mm", most=base)),
        "point_from_centreline_mm": draw(_within(Car, "point_from_centreline_mm", least=210, most=0.7 * track)),
        "cg_offset_mm": draw(_within(Car, "cg_offset_mm")),
        "ride_frequency_hz": draw(_within(Car, "ride_frequency_hz")),
    }


@st.composite
def services(draw: st.DrawFn) -> dict[str, Any]:
    """Temperatures, wetness, ground and hold."""
    low = draw(_within(Service, "temperature_low_c"))
    return {
        "temperature_low_c": low,
        "temperature_high_c": draw(_within(Service, "temperature_high_c", least=low)),
        "wetness": draw(st.sampled_from(["dry", "room", "soaked"])),
        "ground": draw(st.sampled_from(["rolls", "stuck"])),
        "hold": draw(st.sampled_from(["minutes", "overnight", "stored"])),
    }


@st.composite
def makes(draw: st.DrawFn, hold: str = "minutes") -> dict[str, Any]:
    """Material, process, rounding and instruments that go together."""
    keys = [k for k in SLOT_MATERIALS if hold != "stored" or MATERIALS[k].stress_stored_mpa is not None]
    key = draw(st.sampled_from(keys))
    turned = ["lathe_and_mill", "cnc", "hand_tools"]
    return {
        "material": key,
        "process": "printed" if MATERIALS[key].printed else draw(st.sampled_from(turned)),
        "step": draw(st.sampled_from(["metric", "inch"])),
        "measured_with": draw(st.sampled_from(["caliper", "rule"])),
    }


@st.composite
def documents(draw: st.DrawFn) -> dict[str, Any]:
    """Any document that the rules of the fields let through."""
    service = draw(services())
    return {
        "jack": draw(jacks()),
        "seam": draw(seams()),
        "car": draw(cars()),
        "service": service,
        "make": draw(makes(hold=service["hold"])),
    }


@st.composite
def roomy_documents(draw: st.DrawFn) -> dict[str, Any]:
    """Documents over the whole domain, moved to where most have a pad: a high car, a cup of ordinary size, a straight seam."""
    document = draw(documents())
    jack, seam = document["jack"], document["seam"]
    jack["cup_bore_mm"] = draw(_within(CupJack, "cup_bore_mm", least=45, most=110))
    jack["cup_depth_mm"] = draw(_within(CupJack, "cup_depth_mm", most=25))
    jack["cup_corner_radius_mm"] = draw(_within(CupJack, "cup_corner_radius_mm", most=min(6, jack["cup_depth_mm"] - 1)))
    jack["rim_height_low_mm"] = draw(_within(CupJack, "rim_height_low_mm", least=40, most=200))
    jack.pop("rim_diameter_mm", None)
    jack.pop("rim_height_high_mm", None)
    if jack.get("stem_hole_diameter_mm", 0) > jack["cup_bore_mm"] / 2:
        del jack["stem_hole_diameter_mm"]
    for key in ("clear_outboard_mm", "clear_inboard_mm", "edge_height_flat_mm", "roll_in_obstacle_mm"):
        seam.pop(key, None)
    seam["height_mm"] = draw(_within(SlotSeam, "height_mm", least=10, most=40))
    seam["bow_mm"] = draw(_within(SlotSeam, "bow_mm", most=1.5))
    seam["edge_height_mm"] = jack["rim_height_low_mm"] + draw(st.floats(60, 300).map(round))
    return document


@st.composite
def ordinary_documents(draw: st.DrawFn) -> dict[str, Any]:
    """Documents near real jacks and cars, most of which have a pad."""
    depth = draw(st.floats(5, 20).map(lambda x: round(x, 1)))
    height = draw(st.floats(14, 30).map(lambda x: round(x, 1)))
    document: dict[str, Any] = {
        "jack": {
            "cup_bore_mm": draw(st.floats(50, 110).map(lambda x: round(x, 1))),
            "cup_depth_mm": depth,
            "cup_corner_radius_mm": draw(st.floats(0, min(5, depth - 1)).map(lambda x: round(x, 1))),
            "rated_load_kg": 3000,
            "rim_height_low_mm": draw(st.floats(80, 130).map(round)),
        },
        "seam": {
            "thickness_mm": draw(st.floats(1.6, 7).map(lambda x: round(x, 1))),
            "height_mm": height,
            "edge_height_mm": draw(st.floats(190, 300).map(round)),
        },
        "car": {"gross_mass_kg": draw(st.floats(950, 2300).map(round))},
        "make": {"material": draw(st.sampled_from(["pa66", "pa6_cast", "pom_c", "pom_h", "pet_p", "uhmw_pe"]))},
    }
    if draw(st.booleans()):
        document["jack"]["stem_hole_diameter_mm"] = draw(st.floats(10, 30).map(lambda x: round(x, 1)))
    return document


def understood(document: dict[str, Any]) -> Measurements:
    """The document as the program understands it."""
    return Measurements.model_validate(document)


def designed(document: dict[str, Any]) -> Design:
    """The design of a document that has a pad."""
    return design_pad(read_measurements(document))
