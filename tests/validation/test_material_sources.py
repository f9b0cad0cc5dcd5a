"""The material table against the publications that it was drawn from.

Sources that were read: Laird Plastics "Nylon 101"; Toray Amilan technical pages 001 and 003; Engineering Plastics
Handbook Table 5.5 p. 91; POM-C rod sheet (Scribd 479235228); POM-C moulding sheet (happylibnet 2094609); POM copolymer
sheet (Scribd 752449843); PET-P sheet (Scribd 502740848), Novaplas Global and Sterling Plastics pages; Engineers Edge
table; greensutra.in and e-uparts.com tables; Intech Power note on moisture; engdatabase.com after the USDA Wood
Handbook; filament-db wiki. What is from memory is called so in the tests.
"""

import math

import pytest

from geometry.allowables import holding_modulus_mpa
from geometry.materials import MATERIALS
from geometry.provenance import Mark

CREEP_RATIO = {
    "pa66": 0.45, "pa6_cast": 0.45, "pom_c": 0.46, "pom_h": 0.50, "uhmw_pe": 0.25, "hdpe": 0.25, "pet_p": 0.6,
    "pla": 0.3, "petg": 0.35, "abs": 0.4, "pa_cf": 0.4, "hardwood_end_grain": 0.6,
}  # fmt: skip
"""E(1000 h)/E(short); POM-C published (happylibnet 2094609), the others from memory."""


@pytest.mark.parametrize(
    ("key", "expansion_e6", "swell", "room", "soaked", "limit_c"),
    [
        ("pa66", 90, 0.0030, 2.5, 7.5, 80),
        ("pa6_cast", 85, 0.0030, 2.2, 6.5, 90),
        ("pom_c", 115, 0.0025, 0.2, 0.8, 90),
        ("pom_h", 100, 0.0025, 0.2, 0.7, 90),
        ("uhmw_pe", 200, 0, 0, 0, 80),
        ("hdpe", 150, 0, 0, 0, 80),
        ("pet_p", 70, 0.0030, 0.25, 0.5, 100),
    ],
)
def test_growth_and_limits_are_those_of_the_design_basis(
    key: str, expansion_e6: float, swell: float, room: float, soaked: float, limit_c: float
) -> None:
    """Oracle: the project's growth table, chosen inside the published ranges."""
    entry = MATERIALS[key]
    assert entry.expansion_per_k.value * 1e6 == pytest.approx(expansion_e6, abs=1e-9)
    assert entry.swell_per_percent.value == swell
    assert (entry.water_room_percent.value, entry.water_soaked_percent.value) == (room, soaked)
    assert entry.temperature_max_c.value == limit_c


@pytest.mark.parametrize(
    ("key", "minutes", "overnight", "stored", "modulus"),
    [
        ("pa66", 25, 14, 11, 1400),
        ("pa6_cast", 25, 14, 11, 1400),
        ("pom_c", 30, 17, 13, 2500),
        ("pom_h", 35, 21, 17, 2800),
        ("uhmw_pe", 8, 3, 2, 500),
        ("hdpe", 9, 3.5, 2, 700),
        ("pet_p", 40, 28, 24, 3000),
        ("pla", 8, 3, None, 1500),
        ("petg", 8, 3.5, None, 1100),
        ("abs", 8, 4, 2.5, 1200),
        ("pa_cf", 15, 8, 6, 1500),
        ("hardwood_end_grain", 15, 10, 9, 7000),
        ("aluminium", 120, 120, 120, 68900),
    ],
)
def test_stresses_and_stiffness_are_those_of_the_design_basis(
    key: str, minutes: float, overnight: float, stored: float | None, modulus: float
) -> None:
    """Oracle: the project's table of allowables, derived from the published strengths tested further down."""
    entry = MATERIALS[key]
    assert (entry.stress_minutes_mpa.value, entry.stress_overnight_mpa.value) == (minutes, overnight)
    assert (entry.stress_stored_mpa.value if entry.stress_stored_mpa else None) == stored
    assert entry.modulus_minutes_mpa.value == modulus


@pytest.mark.parametrize("key", CREEP_RATIO)
def test_an_overnight_stress_follows_the_power_law_of_creep(key: str) -> None:
    """σ(24 h) = σ(min) c^0.68, rounded down to a whole or a half MPa; 0.68 = 3.4 of 5 decades from 0.01 h to 1000 h."""
    assert math.log10(24 / 0.01) / math.log10(1000 / 0.01) == pytest.approx(0.68, abs=0.005)
    lowered = MATERIALS[key].stress_minutes_mpa.value * CREEP_RATIO[key] ** 0.68
    assert MATERIALS[key].stress_overnight_mpa.value in (math.floor(lowered), math.floor(2 * lowered) / 2)


@pytest.mark.parametrize("key", sorted(CREEP_RATIO.keys() - {"pla", "petg", "abs"}))
def test_a_stored_stress_follows_the_creep_ratio(key: str) -> None:
    """σ(1000 h) = σ(min) c, rounded down. PLA and PETG are not offered; ABS is set lower by judgement, tested below."""
    stored = MATERIALS[key].stress_stored_mpa
    assert stored is not None
    lowered = MATERIALS[key].stress_minutes_mpa.value * CREEP_RATIO[key]
    assert stored.value == math.floor(lowered + 1e-9)


def test_stored_abs_is_set_lower_than_the_rule_by_judgement() -> None:
    """8 MPa × 0.4 = 3.2 MPa by the rule; its source text says that judgement went lower."""
    stored = MATERIALS["abs"].stress_stored_mpa
    assert stored is not None
    assert stored.value < 8 * 0.4
    assert "judgement" in stored.source.text


@pytest.mark.parametrize(
    ("key", "two_percent_mpa", "lowest_strength_mpa", "step_mpa"),
    [
        ("pa66", 28, 55, 5),
        ("pa6_cast", 64, 55, 5),
        ("pom_c", 40, 64, 5),
        ("pom_h", 49, 72, 5),
        ("uhmw_pe", 10.5, 17, 1),
        ("hdpe", math.inf, 18.6, 1),
        ("pet_p", 64, 85.5, 5),
        ("aluminium", math.inf, 240, 5),
    ],
)
def test_a_stress_for_minutes_is_half_the_yield_or_two_percent_strain(
    key: str, two_percent_mpa: float, lowest_strength_mpa: float, step_mpa: float
) -> None:
    """Yields: happylibnet 2094609 (POM-C 64), Engineering Plastics Handbook (POM-H 72), Sterling (PET-P 85.5),
    greensutra.in (HDPE 18.6 crushing), memory (the rest). Printed rows and wood are set lower by judgement."""
    governing = min(two_percent_mpa, lowest_strength_mpa / 2)
    assert MATERIALS[key].stress_minutes_mpa.value == math.floor(governing / step_mpa) * step_mpa


@pytest.mark.parametrize(
    ("key", "lowest_strength_mpa"),
    [("pla", 50), ("petg", 40), ("abs", 35), ("pa_cf", 27.5), ("hardwood_end_grain", 41.8)],
)
def test_rows_set_by_judgement_stay_well_below_the_published_strength(key: str, lowest_strength_mpa: float) -> None:
    """Compression: PLA, PETG, ABS, PA-CF (50 MPa dry × 0.55) from memory; bur oak along the grain, engdatabase.com."""
    assert MATERIALS[key].stress_minutes_mpa.value <= 0.55 * lowest_strength_mpa


def test_stored_acetal_is_no_stiffer_than_its_published_creep_modulus() -> None:
    """POM-C moulding sheet (happylibnet 2094609): 2500 MPa at 1 h, 1300 MPa at 1000 h, tensile modulus 2850 MPa."""
    entry = MATERIALS["pom_c"]
    published = {(row.name, row.condition): row.value for row in entry.extra if "happylibnet" in row.source.text}
    ratio = published["tensile creep modulus", "1000 h"] / published["tensile modulus", ""]
    assert ratio == pytest.approx(0.46, abs=0.005)
    stored = holding_modulus_mpa(entry, hold="stored", temperature_high_c=23, wetness="room")
    assert stored is not None
    assert stored <= 1300
    assert stored / entry.modulus_minutes_mpa.value == pytest.approx(ratio, abs=0.03)


@pytest.mark.parametrize(("key", "limit_c"), [("pla", 50), ("petg", 60), ("abs", 80), ("pa_cf", 80)])
def test_printed_parts_stop_at_the_published_temperature(key: str, limit_c: float) -> None:
    """filament-db wiki on GitHub (hyiger/filament-db), FDM appendices."""
    assert MATERIALS[key].temperature_max_c.value == limit_c
    assert MATERIALS[key].temperature_max_c.source.mark is Mark.FOUND


@pytest.mark.parametrize(("key", "along_layers_mpa"), [("pla", 50), ("petg", 35), ("abs", 28), ("pa_cf", 60 * 0.55)])
def test_a_printed_wall_may_use_half_the_strength_across_layers(key: str, along_layers_mpa: float) -> None:
    """Across = 0.4 × along (memory) × 0.8 voids. Along: PLA from the filament-db wiki, others from memory.
    PA-CF goes by the lower of this and 20 MPa measured across layers × 0.55 damp (memory)."""
    across_mpa = min(0.4 * along_layers_mpa, 20 * 0.55 if key == "pa_cf" else math.inf)
    entry = MATERIALS[key]
    allowed = entry.wall_stress_factor * entry.stress_minutes_mpa.value
    assert allowed == pytest.approx(0.5 * 0.8 * across_mpa, abs=0.06)


@pytest.mark.parametrize(
    ("family", "friction"), [("polyethylene", 0.10), ("acetal", 0.20), ("nylon", 0.25), ("polyester", 0.20)]
)
def test_friction_is_the_guess_of_the_design_basis(family: str, friction: float) -> None:
    """From memory; every other family 0.15."""
    guessed = {entry.assumed_friction.value for entry in MATERIALS.values() if entry.family == family}
    others = ("elastomer", "printed", "wood", "aluminium")
    assert guessed == {friction}
    assert {entry.assumed_friction.value for entry in MATERIALS.values() if entry.family in others} == {0.15}


@pytest.mark.parametrize(
    ("keys", "softening"),
    [(("pa66", "pa6_cast", "pom_c", "pom_h", "pet_p"), 0.010), (("uhmw_pe", "hdpe"), 0.013), (("aluminium",), 0.0)],
)
def test_softening_is_the_slope_of_the_design_basis(keys: tuple[str, ...], softening: float) -> None:
    """From memory, unconfirmed."""
    assert {MATERIALS[key].softening_per_k.value for key in keys} == {softening}


def test_only_nylon_and_wood_lose_strength_when_soaked() -> None:
    """0.65 for nylons from memory; wood 3560 psi green (memory) to 7440 psi dry (bio.net quoting the Wood Handbook)."""
    weakened = {key: entry.wet_factor.value for key, entry in MATERIALS.items() if entry.wet_factor.value < 1}
    assert weakened == {"pa66": 0.65, "pa6_cast": 0.65, "pa_cf": 0.65, "hardwood_end_grain": 0.45}
    assert weakened["hardwood_end_grain"] <= 3560 / 7440


@pytest.mark.parametrize(
    ("key", "gent_mpa", "shore_a"),
    [("pur_90", 20.8, 90), ("pur_95", 43.8, 95), ("rubber_60", 3.6, 60), ("rubber_70", 5.5, 70)],
)
def test_an_elastomers_modulus_agrees_with_its_hardness(key: str, gent_mpa: float, shore_a: float) -> None:
    """Gent 1958: 0.0981 (56 + 7.62336 A)/(0.137505 (254 − 2.54 A)) MPa, constants from memory; rubber within 30 %."""
    gent = 0.0981 * (56 + 7.62336 * shore_a) / (0.137505 * (254 - 2.54 * shore_a))
    assert gent == pytest.approx(gent_mpa, abs=0.05)
    assert gent_mpa in {row.value for row in MATERIALS[key].extra}
    assert MATERIALS[key].modulus_minutes_mpa.value == pytest.approx(gent, rel=0.3)


@pytest.mark.parametrize(
    ("key", "name", "condition", "value", "publisher"),
    [
        ("pa66", "compressive stress", "dry, 10 % strain, ASTM D695", 86.2, "Laird"),
        ("pa66", "tensile modulus", "2.5 % water", 1500, "Toray"),
        ("pom_c", "tensile yield", "", 67, "Scribd 479235228"),
        ("pom_c", "compressive stress", "10 % strain, ASTM D695", 110, "Polytech"),
        ("pom_h", "tensile yield", "", 72, "Engineering Plastics Handbook"),
        ("hdpe", "tensile yield", "", 22, "greensutra"),
        ("pet_p", "compressive stress", "2 % strain, ISO 604", 64, "Novaplas"),
        ("pet_p", "tensile yield", "", 85.5, "Sterling"),
        (
            "hardwood_end_grain",
            "crushing strength",
            "along the grain, sugar maple, 12 % moisture",
            54.0,
            "Wood Handbook",
        ),
        ("hardwood_end_grain", "modulus", "along the grain, bur oak, 12 % moisture", 7100, "Wood Handbook"),
    ],
)
def test_published_figures_stand_beside_their_publisher(
    key: str, name: str, condition: str, value: float, publisher: str
) -> None:
    """Oracle: the figures as read in each publication."""
    rows = [row for row in MATERIALS[key].extra if (row.name, row.condition, row.value) == (name, condition, value)]
    assert any(publisher in row.source.text and row.source.mark is Mark.FOUND for row in rows)
