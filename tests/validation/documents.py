"""Documents for tests that go over the whole input domain; made up, of no real car or jack."""

from typing import Any

from hypothesis import strategies as st

from geometry.materials import MATERIALS, SLOT_MATERIALS


def _between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False).map(lambda x: round(x, 3))


@st.composite
def jacks(draw: st.DrawFn) -> dict[str, Any]:
    """A cup of any size, with or without a hole."""
    bore, depth, low = draw(_between(28, 140)), draw(_between(2, 45)), draw(_between(60, 250))
    jack = {
        "cup_bore_mm": bore,
        "cup_depth_mm": depth,
        "cup_corner_radius_mm": draw(st.none() | _between(0, max(0.0, min(depth - 1, bore / 5)))),
        "rim_diameter_mm": draw(st.none() | _between(bore + 1, bore + 40)),
        "stem_hole_diameter_mm": draw(st.none() | _between(3, bore / 2)),
        "stem_hole_depth_mm": draw(st.none() | _between(1, 60)),
        "rated_load_kg": draw(_between(500, 5000)),
        "rim_height_low_mm": max(low, depth + 5),
        "rim_height_high_mm": draw(st.none() | _between(320, 700)),
        "saddle_tilt_deg": draw(_between(0, 10)),
    }
    return {key: value for key, value in jack.items() if value is not None}


@st.composite
def seams(draw: st.DrawFn) -> dict[str, Any]:
    """A seam that leaves some room for a slot."""
    thickness, edge = draw(_between(1.2, 9)), draw(_between(140, 500))
    bare = draw(st.none() | _between(0.45 * thickness, thickness))
    seam = {
        "thickness_mm": thickness,
        "sheets": draw(st.integers(1, 5)),
        "bare_thickness_mm": bare,
        "edge_thickness_mm": draw(st.none() | _between(0.4, 0.45 * thickness)),
        "yield_mpa": draw(st.none() | _between(120, 600)),
        "height_mm": draw(_between(6, 45)),
        "straight_length_mm": draw(_between(10, 400)),
        "bow_mm": draw(_between(0, 2)),
        "edge_height_mm": edge,
        "edge_height_flat_mm": draw(st.none() | _between(edge - 90, edge)),
        "clear_inboard_mm": draw(st.none() | _between(6, 80)),
        "clear_outboard_mm": draw(st.none() | _between(6, 80)),
        "roll_in_obstacle_mm": draw(st.none() | _between(-60, 60)),
    }
    return {key: value for key, value in seam.items() if value is not None}


@st.composite
def cars(draw: st.DrawFn) -> dict[str, Any]:
    """A load from each of the three sources."""
    lift = draw(_between(20, 300))
    match draw(st.sampled_from(("gross_mass", "stated", "statics"))):
        case "stated":
            return {"load_source": "stated", "load_kg": draw(_between(100, 2500)), "lift_needed_mm": lift}
        case "gross_mass":
            return {"gross_mass_kg": draw(_between(500, 4000)), "lift_needed_mm": lift}
    return {
        "load_source": "statics",
        "gross_mass_kg": draw(_between(500, 4000)),
        "front_share": draw(_between(0.4, 0.65)),
        "wheelbase_mm": draw(_between(2000, 3600)),
        "track_mm": draw(_between(1250, 1800)),
        "point_behind_front_axle_mm": draw(_between(300, 1900)),
        "point_from_centreline_mm": draw(_between(550, 850)),
        "lift_needed_mm": lift,
    }


@st.composite
def services(draw: st.DrawFn) -> dict[str, Any]:
    """Any weather, any ground, any time under load that the material allows."""
    return {
        "temperature_low_c": draw(_between(-40, 20)),
        "temperature_high_c": draw(_between(20, 80)),
        "wetness": draw(st.sampled_from(("dry", "room", "soaked"))),
        "ground": draw(st.sampled_from(("rolls", "stuck"))),
        "hold": draw(st.sampled_from(("minutes", "minutes", "overnight"))),
    }


@st.composite
def makes(draw: st.DrawFn) -> dict[str, Any]:
    """Any material for a slot with a process that suits it."""
    key = draw(st.sampled_from(SLOT_MATERIALS))
    processes = ("printed",) if MATERIALS[key].printed else ("lathe_and_mill", "cnc", "hand_tools")
    make = {
        "material": key,
        "process": draw(st.sampled_from(processes)),
        "step": draw(st.sampled_from(("metric", "inch"))),
        "measured_with": draw(st.sampled_from(("caliper", "rule"))),
        "uncertainty_mm": draw(st.none() | _between(0.01, 0.6)),
        "ground_uncertainty_mm": draw(_between(0, 6)),
    }
    return {name: value for name, value in make.items() if value is not None}


@st.composite
def fixings(draw: st.DrawFn) -> dict[str, float]:
    """Mostly nothing, sometimes one or two dimensions held at values of the user's own."""
    choices = {
        "seat_diameter_mm": _between(30, 120),
        "seat_length_mm": _between(6, 40),
        "body_diameter_mm": _between(60, 150),
        "slot_width_mm": _between(2, 20),
        "slot_depth_mm": _between(4, 30),
        "web_mm": _between(8, 80),
        "slot_corner_radius_mm": _between(0.1, 1.5),
        "edge_chamfer_mm": _between(0, 2),
        "slot_mouth_chamfer_mm": _between(0, 3),
    }
    names = draw(
        st.lists(st.sampled_from(sorted(choices)), max_size=2, unique=True) if draw(st.booleans()) else st.just([])
    )
    return {name: draw(choices[name]) for name in names}


@st.composite
def documents(draw: st.DrawFn) -> dict[str, Any]:
    """A whole document; it may still be refused, or find no pad."""
    return {
        "jack": draw(jacks()),
        "seam": draw(seams()),
        "car": draw(cars()),
        "service": draw(services()),
        "make": draw(makes()),
        "fixed": draw(fixings()),
    }
