"""The user's own material figures."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.errors import BadMeasurementsError
from geometry.materials import MATERIALS, PROPERTIES, Material
from geometry.own_values import OWN_RANGES, with_own_values
from geometry.provenance import Mark

materials = st.sampled_from(list(MATERIALS.values()))


def _numbers(entry: Material) -> dict[str, float]:
    return {name: held.value for name, held in entry.sourced().items()}


def test_every_property_has_a_range_in_its_own_unit() -> None:
    assert tuple(OWN_RANGES) == PROPERTIES
    units = {(name, held.unit) for entry in MATERIALS.values() for name, held in entry.sourced().items()}
    assert units == {(name, allowed.unit) for name, allowed in OWN_RANGES.items()}


def test_own_values_are_used_and_marked() -> None:
    own = with_own_values(MATERIALS["pom_c"], {"stress_minutes_mpa": 28, "expansion_per_k": 100e-6})
    assert own.stress_minutes_mpa.value == 28
    assert {key for key, held in own.sourced().items() if held.source.mark is Mark.OWN} == {
        "stress_minutes_mpa",
        "expansion_per_k",
    }
    assert own.stress_minutes_mpa.unit == "MPa"
    assert MATERIALS["pom_c"].stress_minutes_mpa.value == 30


@given(entry=materials)
def test_the_tables_own_values_may_be_entered_as_ones_own(entry: Material) -> None:
    """No range for own values shuts out the table itself."""
    assert _numbers(with_own_values(entry, _numbers(entry))) == _numbers(entry)


@pytest.mark.parametrize(
    ("key", "values", "words"),
    [
        ("pom_c", {"strength": 1.0}, "own.strength: There is no property “strength”"),
        ("pom_c", {"key": 1.0}, "own.key: There is no property “key”"),
        ("pom_c", {"expansion_per_k": 115.0}, "own.expansion_per_k: 115 1/K is outside 0 to 0.0005 1/K"),
        ("pom_c", {"modulus_minutes_mpa": float("nan")}, "own.modulus_minutes_mpa: nan MPa is outside"),
        ("pom_c", {"stress_minutes_mpa": float("inf")}, "own.stress_minutes_mpa: inf MPa is outside"),
        ("pom_c", {"stress_minutes_mpa": 12.0}, "stress_overnight_mpa 17 is more than stress_minutes_mpa 12"),
        ("pom_c", {"stress_stored_mpa": 18.0}, "own.stress_stored_mpa: stress_stored_mpa 18 is more than"),
        ("pa66", {"water_room_percent": 9.0}, "own.water_room_percent: water_room_percent 9 is more than"),
        ("pla", {"stress_stored_mpa": 2.0}, "stress_stored_mpa is not offered for printed PLA"),
        ("pom_c", {"layer_tension_factor": 0.5}, "layer_tension_factor is not offered for acetal"),
    ],
)
def test_own_values_that_cannot_be_are_refused(key: str, values: dict[str, float], words: str) -> None:
    with pytest.raises(BadMeasurementsError) as refused:
        with_own_values(MATERIALS[key], values, field="own")
    assert words in str(refused.value)


def test_every_wrong_own_value_is_named_at_once() -> None:
    with pytest.raises(BadMeasurementsError) as refused:
        with_own_values(MATERIALS["pom_c"], {"wet_factor": 2, "temperature_max_c": -5})
    assert [problem.field for problem in refused.value.problems] == [
        "make.own_values.wet_factor",
        "make.own_values.temperature_max_c",
    ]
