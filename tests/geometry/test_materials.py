"""The material table."""

import pytest

from geometry.allowables import allowable_mpa, holding_modulus_mpa
from geometry.errors import BadMeasurementsError
from geometry.materials import MATERIALS, PROPERTIES, SLOT_MATERIALS, Material, material
from geometry.provenance import Mark
from tests.house.test_words import PROMISES

KEYS = [
    "pa66", "pa6_cast", "pom_c", "pom_h", "uhmw_pe", "hdpe", "pet_p", "pur_90", "pur_95", "rubber_60", "rubber_70",
    "pla", "petg", "abs", "pa_cf", "hardwood_end_grain", "aluminium",
]  # fmt: skip


def test_the_table_lists_every_material_in_its_order() -> None:
    """Oracle: the list of materials of the specification."""
    assert list(MATERIALS) == KEYS
    assert all(entry.key == key for key, entry in MATERIALS.items())


def test_an_unknown_material_is_refused_beside_its_field() -> None:
    with pytest.raises(BadMeasurementsError, match=r"make.material: There is no material “lead”; choose from pa66"):
        material("lead")


@pytest.mark.parametrize("entry", MATERIALS.values(), ids=KEYS)
def test_every_property_says_where_it_comes_from(entry: Material) -> None:
    """A bare key such as "m9" is no source; a value from memory says so, a found one does not."""
    origins = [held.source for held in entry.sourced().values()] + [published.source for published in entry.extra]
    assert all(len(origin.text) > 6 for origin in origins)
    assert not [origin for origin in origins if origin.mark is Mark.FOUND and origin.text.startswith("From memory")]
    assert not [origin for origin in origins if origin.mark in (Mark.OWN, Mark.RECOMPUTED, Mark.COMPUTED)]


@pytest.mark.parametrize("entry", MATERIALS.values(), ids=KEYS)
def test_no_material_promises_anything(entry: Material) -> None:
    """Oracle: the words that a pad must never wear."""
    words = (entry.name, entry.short_name, entry.slot_refusal or "", entry.slot_advice or "", *entry.notes)
    assert [text for text in words if PROMISES.search(text) or "tested" in text] == []


@pytest.mark.parametrize("entry", MATERIALS.values(), ids=KEYS)
def test_notes_are_sentences(entry: Material) -> None:
    sentences = [*entry.notes, *filter(None, (entry.slot_refusal, entry.slot_advice))]
    assert sentences
    assert all(sentence[0].isupper() and sentence.endswith(".") for sentence in sentences)


def test_only_elastomers_are_refused_in_a_slotted_head() -> None:
    """Oracle: a seam's edge goes past 70 % strain in an elastomer."""
    refused = {key for key, entry in MATERIALS.items() if entry.slot_refusal}
    assert refused == {key for key, entry in MATERIALS.items() if entry.family == "elastomer"}
    assert refused == set(MATERIALS) - set(SLOT_MATERIALS) == {"pur_90", "pur_95", "rubber_60", "rubber_70"}
    assert all("70 % strain" in (MATERIALS[key].slot_refusal or "") for key in refused)


def test_only_aluminium_is_advised_against() -> None:
    assert [key for key, entry in MATERIALS.items() if entry.slot_advice] == ["aluminium"]
    assert "chips the seam" in str(MATERIALS["aluminium"].slot_advice)


def test_elastomers_alone_are_judged_by_strain() -> None:
    """Oracle: 10 % for minutes and 5 % overnight; stored under load is not offered."""
    for entry in MATERIALS.values():
        judged = (entry.strain_minutes, entry.strain_overnight)
        if entry.family != "elastomer":
            assert judged == (None, None)
            continue
        assert [held.value for held in judged if held] == [0.10, 0.05]
        assert entry.stress_stored_mpa is None
        assert entry.stress_minutes_mpa.value == pytest.approx(0.10 * entry.modulus_minutes_mpa.value, rel=1e-9)
        assert entry.stress_overnight_mpa.value == pytest.approx(0.05 * entry.modulus_minutes_mpa.value, rel=1e-9)


def test_stored_under_load_is_not_offered_where_a_print_creeps_or_rubber_sets() -> None:
    not_offered = {key for key, entry in MATERIALS.items() if entry.stress_stored_mpa is None}
    assert not_offered == {"pla", "petg", "pur_90", "pur_95", "rubber_60", "rubber_70"}
    for key in not_offered:
        asked = {"hold": "stored", "temperature_high_c": 23, "wetness": "room"}
        assert allowable_mpa(MATERIALS[key], **asked) is None  # type: ignore[arg-type]
        assert holding_modulus_mpa(MATERIALS[key], **asked) is None  # type: ignore[arg-type]


def test_printed_walls_may_use_less_than_solid_ones() -> None:
    """Solid stock has no layers; a print has them, and never gains by it."""
    for entry in MATERIALS.values():
        assert entry.printed == (entry.family == "printed") == (entry.layer_tension_factor is not None)
        assert 0 < entry.wall_stress_factor <= 1
        assert entry.printed or entry.wall_stress_factor == 1


def test_wood_stands_with_its_grain_upright() -> None:
    """Along the slot, the seam splits it."""
    assert any("never lay the grain along the slot" in note for note in MATERIALS["hardwood_end_grain"].notes)


def test_the_properties_are_those_with_a_source() -> None:
    assert set().union(*(entry.sourced() for entry in MATERIALS.values())) == set(PROPERTIES)
