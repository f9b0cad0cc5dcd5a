"""The pad in use and the water that it takes up: its limits condemn no sound part for it, and it hides no worn one."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.errors import NoPadFitsError
from geometry.pad import Pad
from geometry.service_life import service_record
from geometry.spread import Spread
from geometry.wear_kinds import WORN
from tests.documents import sample
from tests.drawing.kinds_on_paper import EVERY, document_of
from tests.geometry.shops import job, jobs
from tests.geometry.test_service_life import growth_by_water


def assert_no_sound_part_is_condemned(pad: Pad, conditions: Conditions) -> None:
    """A part anywhere in its tolerance, with no water in it or with all that its case allows, is read inside what condemns
    growing and closing."""
    water = growth_by_water(conditions)
    for limit in service_record(pad, conditions).limits:
        tolerance = Spread().of(pad, limit.dimension)
        for size in (limit.now_mm - tolerance, limit.now_mm, limit.now_mm + tolerance):
            for read in (size, size * (1 + water)):
                sign = 1 if limit.direction == "up" else -1
                assert limit.kind in WORN or sign * read <= sign * limit.limit_mm + 1e-9


@settings(max_examples=25, deadline=None)
@given(jobs(), st.sampled_from(["dry", "room", "soaked"]))
def test_water_that_the_design_counts_on_condemns_no_sound_part(
    work: tuple[Pad, Conditions, Shop], wetness: str
) -> None:
    """Oracle: the table's own growth for each per cent of water, put onto every size that the drawing lets pass."""
    document = work[1].measurements.model_dump(mode="json", exclude_none=True)
    document["service"]["wetness"] = wetness
    try:
        pad, conditions, _ = job(document)
    except NoPadFitsError:
        assume(False)
    assert_no_sound_part_is_condemned(pad, conditions)


@pytest.mark.parametrize("wetness", ["dry", "room", "soaked"])
@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_a_nylon_pad_of_every_kind_may_take_up_its_water(foot: str, head: str, wetness: str) -> None:
    """Oracle: 0.0030 for each per cent of water, put onto every size that the drawing lets pass."""
    document = document_of(foot, head) | {"make": {"material": "pa66"}, "service": {"wetness": wetness}}
    assert_no_sound_part_is_condemned(*job(document)[:2])


def test_a_cast_nylon_seat_of_room_air_is_not_called_swollen_and_one_that_jams_when_warm_is() -> None:
    """Oracle: by hand, between teeth 76 ± 0.1 apart. 2.2 % of water makes ⌀75.0, the upper limit of ⌀74.7 ± 0.3, into 75.50; at
    40 °C, 20 K of 85e-6, a seat that is read as 75.70 is 75.83, nearer than 0.1 to the 75.9 that is there."""
    limit = service_record(*job(sample("brass_band_van_toothed_saddle"))[:2]).limit("seat_swollen")
    assert 75.0 * (1 + 2.2 * 0.003) < limit.limit_mm < 75.70
    assert 75.70 * (1 + 20 * 85e-6) > 76 - 0.1 - 0.1
    assert "0.49 mm is water that it may take up" in limit.words.shown()


def test_water_never_hides_a_seat_that_is_too_thin_when_dry() -> None:
    """Oracle: a seat read at its limit with all its water in it, brought back to the size as machined, against where it fails."""
    pad, conditions, _ = job(sample("brass_band_van_toothed_saddle"))
    for kind in ("seat_worn", "seat_short", "slot_closed"):
        limit = service_record(pad, conditions).limit(kind)
        assert limit.fails_mm is not None
        assert limit.limit_mm / (1 + growth_by_water(conditions)) >= limit.fails_mm - 1e-9
