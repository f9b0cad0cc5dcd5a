"""Materials grow, weigh and swell within what is published (sources in geometry/materials.toml)."""

import pytest

from geometry.growth import Wetness, growth, hot_growth
from geometry.materials import MATERIALS
from geometry.own_values import with_own_values

SEAT_MM = 68.0


@pytest.mark.parametrize(
    ("key", "lowest_e6", "highest_e6"),
    [
        ("pa66", 80, 99),
        ("pa6_cast", 80, 90),
        ("pom_c", 110, 120),
        ("pom_h", 95, 110),
        ("uhmw_pe", 200, 200),
        ("hdpe", 59, 200),
        ("pet_p", 60, 80),
        ("pur_90", 150, 200),
        ("pur_95", 150, 200),
        ("rubber_60", 160, 220),
        ("rubber_70", 160, 220),
        ("pla", 70, 90),
        ("petg", 60, 70),
        ("abs", 75, 95),
        ("pa_cf", 60, 100),
        ("hardwood_end_grain", 25, 50),
        ("aluminium", 23.6, 23.6),
    ],
)
def test_expansion_lies_inside_the_published_range(key: str, lowest_e6: float, highest_e6: float) -> None:
    """Laird (PA66), Scribd 479235228, 752449843 (POM-C), Scribd 502740848 (PET-P), greensutra.in (HDPE); memory."""
    assert lowest_e6 - 1e-9 <= MATERIALS[key].expansion_per_k.value * 1e6 <= highest_e6 + 1e-9


@pytest.mark.parametrize(
    ("key", "lowest", "highest"),
    [
        ("pa66", 1.14, 1.15),
        ("pa6_cast", 1.14, 1.16),
        ("pom_c", 1.39, 1.41),
        ("pom_h", 1.41, 1.43),
        ("uhmw_pe", 0.93, 0.94),
        ("hdpe", 0.952, 0.97),
        ("pet_p", 1.39, 1.41),
        ("pur_90", 1.10, 1.26),
        ("pur_95", 1.10, 1.26),
        ("rubber_60", 1.1, 1.2),
        ("rubber_70", 1.1, 1.2),
        ("pla", 1.24, 1.24),
        ("petg", 1.27, 1.27),
        ("abs", 1.03, 1.06),
        ("pa_cf", 1.06, 1.2),
        ("hardwood_end_grain", 0.63, 0.68),
        ("aluminium", 2.70, 2.70),
    ],
)
def test_density_lies_inside_the_published_range(key: str, lowest: float, highest: float) -> None:
    """Laird (PA66), Engineers Edge (PA6, PE), Scribd 479235228, happylibnet 2094609 (POM-C), e-uparts.com (ABS)."""
    assert lowest <= MATERIALS[key].density_g_cm3.value <= highest


@pytest.mark.parametrize("key", ["pa66", "pa6_cast"])
def test_nylon_swells_inside_the_published_slopes(key: str) -> None:
    """Intech Power note: 2 % at 9 % water and 3.5 % at 7 %, a bracket of 0.22 to 0.50 % per 1 %."""
    per_percent = 100 * MATERIALS[key].swell_per_percent.value
    assert 2 / 9 <= per_percent <= 3.5 / 7


@pytest.mark.parametrize("key", sorted(MATERIALS.keys() - {"hardwood_end_grain"}))
def test_nothing_swells_by_more_than_the_water_that_it_takes_up(key: str) -> None:
    """Water at 1 g/cm³ fills its own volume: at most density/3 per 1 %, 0.38 % for nylon (own bound)."""
    entry = MATERIALS[key]
    assert 100 * entry.swell_per_percent.value <= entry.density_g_cm3.value / 3
    assert pytest.approx(0.38, abs=0.005) == MATERIALS["pa66"].density_g_cm3.value / 3


def test_wood_swells_across_the_grain_as_far_as_maple_shrinks() -> None:
    """engdatabase.com after the Wood Handbook: maple shrinks 9.9 % tangentially; fibre saturation 30 % from memory."""
    assert MATERIALS["hardwood_end_grain"].swell_per_percent.value == pytest.approx(0.099 / 30, abs=5e-5)


@pytest.mark.parametrize(
    ("key", "wetness", "lowest", "highest"),
    [
        ("pa66", "room", 0.6, 0.75),
        ("pa66", "soaked", 2.0, 2.6),
        ("pa6_cast", "room", 0.5, 0.7),
        ("pa6_cast", "soaked", 1.7, 2.2),
        ("pom_c", "room", 0.05, 0.05),
        ("pom_c", "soaked", 0.2, 0.2),
        ("pet_p", "soaked", 0.15, 0.15),
    ],
)
def test_swelling_at_the_stated_wetness_matches_the_ranges_from_memory(
    key: str, wetness: Wetness, lowest: float, highest: float
) -> None:
    """Linear swelling in % at 23 °C/50 % and saturated, from memory."""
    grown = 100 * hot_growth(MATERIALS[key], temperature_high_c=20, wetness=wetness)
    assert lowest - 1e-9 <= grown <= highest + 1e-9


@pytest.mark.parametrize(
    ("wetness", "water_percent", "swelling_percent", "grown_mm"), [("room", 2.5, 0.6, 0.41), ("soaked", 7.5, 2.6, 1.77)]
)
def test_a_nylon_seat_of_68_mm_grows_by_water(
    wetness: Wetness, water_percent: float, swelling_percent: float, grown_mm: float
) -> None:
    """Worked for the project: 68 mm at 0.6 % (room air) and at 2.6 % (saturated)."""
    own = with_own_values(MATERIALS["pa66"], {"swell_per_percent": swelling_percent / 100 / water_percent})
    assert SEAT_MM * hot_growth(own, temperature_high_c=20, wetness=wetness) == pytest.approx(grown_mm, abs=0.005)


@pytest.mark.parametrize(
    ("key", "expansion_e6", "grown_mm"), [("pa66", 80, 0.22), ("pom_c", 110, 0.30), ("uhmw_pe", 200, 0.54)]
)
def test_a_seat_of_68_mm_grows_by_40_kelvin(key: str, expansion_e6: float, grown_mm: float) -> None:
    """Worked for the project at the lowest usual expansion; the design's own expansion is never lower."""
    own = with_own_values(MATERIALS[key], {"expansion_per_k": expansion_e6 * 1e-6})
    assert SEAT_MM * growth(own, temperature_c=60, water_percent=0) == pytest.approx(grown_mm, abs=0.005)
    assert SEAT_MM * growth(MATERIALS[key], temperature_c=60, water_percent=0) >= grown_mm - 0.005
