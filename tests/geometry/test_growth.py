"""How far heat and water make a pad larger."""

from hypothesis import given
from hypothesis import strategies as st

from geometry.growth import Wetness, cold_growth, growth, hot_growth, water_percent
from geometry.materials import MATERIALS, Material

WETNESSES: tuple[Wetness, ...] = ("dry", "room", "soaked")
materials = st.sampled_from(list(MATERIALS.values()))
wetnesses = st.sampled_from(WETNESSES)
temperatures = st.floats(-60, 150)


@given(entry=materials, first=temperatures, second=temperatures, wetness=wetnesses)
def test_a_warmer_pad_is_never_smaller(entry: Material, first: float, second: float, wetness: Wetness) -> None:
    low, high = sorted((first, second))
    assert cold_growth(entry, temperature_low_c=low) <= cold_growth(entry, temperature_low_c=high)
    assert cold_growth(entry, temperature_low_c=low) <= hot_growth(entry, temperature_high_c=high, wetness=wetness)


@given(entry=materials, temperature=temperatures)
def test_a_wetter_pad_is_never_smaller(entry: Material, temperature: float) -> None:
    grown = [hot_growth(entry, temperature_high_c=temperature, wetness=wetness) for wetness in WETNESSES]
    assert grown == sorted(grown)


@given(entry=materials, wetness=wetnesses)
def test_a_dry_pad_at_twenty_degrees_is_as_machined(entry: Material, wetness: Wetness) -> None:
    assert growth(entry, temperature_c=20, water_percent=0) == 0
    water = water_percent(entry, wetness=wetness)
    assert hot_growth(entry, temperature_high_c=20, wetness=wetness) == growth(
        entry, temperature_c=20, water_percent=water
    )
