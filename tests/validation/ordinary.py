"""Ordinary jobs, drawn at random from a fixed seed: what most people would bring, and nobody's car in particular."""

from random import Random
from typing import Any

from geometry.design import Design, design_pad
from geometry.errors import NoPadFitsError
from geometry.measurements import read_measurements

NYLON_ACETAL_PET = ("pa66", "pa6_cast", "pom_c", "pom_h", "pet_p")
POLYETHYLENE = ("uhmw_pe", "hdpe")


def ordinary_document(rng: Random, material: str) -> dict[str, Any]:
    """One job; ranges of seams from the reference values (2 to 4 sheets of 0.7 to 1.5 mm, paint 0.3 to 1.0 mm, 12 to 20 mm
    high), masses of cars as agreed for ordinary inputs, cups as trolley jacks have them (from memory)."""
    sheets = rng.randint(2, 4)
    steel = min(4.0, max(1.6, sheets * rng.uniform(0.7, 1.5)))
    low = rng.uniform(75, 140)
    return {
        "jack": {
            "cup_bore_mm": round(rng.uniform(50, 90), 1),
            "cup_depth_mm": round(rng.uniform(6, 18), 1),
            "rated_load_kg": rng.choice((2000, 2500, 3000)),
            "rim_height_low_mm": round(low),
            "rim_height_high_mm": round(rng.uniform(380, 520)),
        },
        "seam": {
            "sheets": sheets,
            "bare_thickness_mm": round(steel, 2),
            "thickness_mm": round(steel + rng.uniform(0.3, 1.0), 2),
            "height_mm": round(rng.uniform(12, 20), 1),
            "edge_height_mm": round(rng.uniform(160, 240)),
        },
        "car": {"gross_mass_kg": round(rng.uniform(950, 2300)), "lift_needed_mm": round(rng.uniform(80, 180))},
        "service": {
            "temperature_low_c": round(rng.uniform(-15, 5)),
            "temperature_high_c": round(rng.uniform(25, 45)),
            "wetness": rng.choice(("dry", "room")),
        },
        "make": {"material": material},
    }


def ordinary_designs(material: str, count: int, seed: int = 1) -> list[Design | None]:
    """Designs of ``count`` ordinary jobs in one material; None where no pad fits."""
    rng = Random(seed)  # noqa: S311 - repeatable test data, no secret
    found: list[Design | None] = []
    for _ in range(count):
        try:
            found.append(design_pad(read_measurements(ordinary_document(rng, material))))
        except NoPadFitsError:
            found.append(None)
    return found
