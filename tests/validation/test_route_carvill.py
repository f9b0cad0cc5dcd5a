"""The route card against Carvill, Mechanical Engineer's Data Handbook, p. 176 (turning of plastics).

Carbide insert: nylon and acetal 175 m/min, polyethylene 160 m/min; feed 0.25 mm/rev; high-speed steel 50 m/min.
"""

import pytest

from geometry.making.machine import machine_of
from tests.geometry.shops import job

FAST = tuple(range(20, 3000))


@pytest.mark.parametrize(("material", "speed"), [("pa66", 175), ("pom_c", 175), ("uhmw_pe", 160), ("hdpe", 160)])
def test_an_insert_never_runs_faster_than_the_handbook_says(material: str, speed: float) -> None:
    """Oracle: the table's speed; the machine sets any whole number of turns, so that less than one turn is lost."""
    _, conditions, shop = job(make={"material": material}, shop={"tool": "carbide"})
    machine = machine_of(conditions, shop.model_copy(update={"spindle_speeds_rpm": FAST}))
    cut = machine.turning(80)
    assert cut.wanted_speed_m_min == speed
    assert speed - 0.26 < cut.speed_m_min <= speed


def test_roughing_feeds_a_quarter_of_a_millimetre_a_turn() -> None:
    """Oracle: 0.25 mm/rev."""
    _, conditions, shop = job()
    assert machine_of(conditions, shop).turning(80).feed_mm_rev == 0.25


def test_high_speed_steel_is_given_no_less_than_the_handbooks_speed() -> None:
    """Oracle: 50 m/min, the lowest of the published figures."""
    for material in ("pa66", "pom_c", "uhmw_pe", "pet_p"):
        _, conditions, shop = job(make={"material": material})
        assert machine_of(conditions, shop).speeds.turning >= 50
