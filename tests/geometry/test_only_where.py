"""What only one answer of a choice has a use for: with the other answers it changes nothing, so nobody need measure it."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from annotated_types import Ge

from geometry.design import design_pad
from geometry.errors import BadMeasurementsError
from geometry.kinds import FACES, JACKS, face_group
from geometry.measurements import read_measurements
from geometry.pad import Pad
from geometry.quantity import Group

SAMPLES = Path(__file__).parents[2] / "sample_data"
KINDS = (
    "puppet_theatre_van_plate_edge",
    "bell_ringers_wagon_plate_ring",
    "brass_band_van_toothed_saddle",
    "seed_library_estate_teeth_only",
    "lifeguard_station_pickup_round_plug",
)


def groups_of(told: dict[str, Any]) -> Iterator[tuple[str, type[Group]]]:
    yield "jack", JACKS[told.get("foot", "cup")]
    yield face_group(told.get("head", "slot")), FACES[told.get("head", "slot")]


def outcome_of(told: dict[str, Any]) -> tuple[Pad, list[tuple[object, ...]]]:
    design = design_pad(read_measurements(told))
    return design.pad, [(c.code, c.verdict, c.value, c.limit, c.words, c.needs) for c in design.checks]


@pytest.mark.parametrize("key", KINDS)
def test_what_no_answer_asks_for_changes_no_size_and_no_estimate(key: str) -> None:
    """Oracle: the design of the same sample, measured with and without it."""
    told = json.loads((SAMPLES / f"{key}.json").read_text("utf-8"))
    tried = 0
    for group, model in groups_of(told):
        for name, info in model.model_fields.items():
            if not model.asks_for(name, told[group]):
                least = next(float(str(bound.ge)) for bound in info.metadata if isinstance(bound, Ge))
                without = {k: v for k, v in told[group].items() if k != name}
                assert outcome_of(told | {group: without | {name: least + 1}}) == outcome_of(told | {group: without}), (
                    name
                )
                tried += 1
    assert tried


def test_a_choice_that_is_not_answered_is_the_usual_one() -> None:
    plate = JACKS["plate"]
    assert plate.asks_for("free_edge_mm", {})
    assert not plate.asks_for("ring_bore_mm", {})
    assert plate.asks_for("ring_bore_mm", {"located_by": "recess"})
    assert plate.asks_for("plate_diameter_mm", {"located_by": "recess"})


def test_what_an_answer_makes_necessary_is_refused_without_it_and_nothing_else_is() -> None:
    """Oracle: the document itself: a sample without the measurement is refused for it, or is taken."""
    tried = 0
    for key in KINDS:
        told = json.loads((SAMPLES / f"{key}.json").read_text("utf-8"))
        for group, model in groups_of(told):
            for name in (n for n, info in model.model_fields.items() if not info.is_required() and n in told[group]):
                without = told | {group: {k: v for k, v in told[group].items() if k != name}}
                try:
                    read_measurements(without)
                    is_refused = False
                except BadMeasurementsError as error:
                    is_refused = any(p.field == f"{group}.{name}" for p in error.problems)
                assert is_refused == model.needs(name, told[group]), (key, name)
                tried += is_refused
    assert tried >= 5
