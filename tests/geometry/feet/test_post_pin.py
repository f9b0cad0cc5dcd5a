"""The retaining pin of a post: it goes through, it carries nothing, and it stays in."""

import math
from collections.abc import Mapping
from itertools import product
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from numpy.polynomial.legendre import leggauss

from geometry.checks import judge
from geometry.conditions import conditions_of
from geometry.errors import NoPadFitsError
from geometry.feet.post.pin_strength import net_area_mm2, net_modulus_mm3
from geometry.feet.post.places import sag_mm
from geometry.measurements import read_measurements
from geometry.pad import Pad
from geometry.sizing import size
from tests.examples import examples
from tests.geometry.feet.post_documents import posted, roomy_post_documents
from tests.geometry.sized import a_pad_for, judged, sized


def test_the_hole_lies_where_the_pin_is() -> None:
    pad = size(conditions_of(read_measurements(posted()))).pad
    assert pad.cross_hole_distance_mm == 20.0
    assert pad.cross_hole_diameter_mm > 8.0 + 1


def test_without_a_pin_there_is_no_hole_and_nothing_to_judge() -> None:
    conditions = conditions_of(read_measurements(posted(pinned=False)))
    pad = size(conditions).pad
    verdicts = {c.code: c.verdict for c in judge(conditions, pad) if c.code.startswith("pin_")}
    assert not pad.has_cross_hole
    assert set(verdicts.values()) == {"not_applicable"}


def _gaps_mm(
    pad: Pad, jack: dict[str, float], numbers: Mapping[str, float], off: tuple[float, ...]
) -> tuple[float, float]:
    """What is left of the hole along the stem and across it, of one part on one jack, each off by its share, at some growth."""
    place, bore, size_off, hole_off, drill, heat = off
    u, g_hot, g_cold = numbers["u"], numbers["g_hot"], numbers["g_cold"]
    grown = 1 + (g_hot + g_cold) / 2 + heat * (g_hot - g_cold) / 2
    pin_middle, pin_radius = jack["pin_distance_mm"] + place * u, (jack["pin_diameter_mm"] + bore * u) / 2
    hole_radius = (pad.cross_hole_diameter_mm + size_off * numbers["tol"]) / 2 * grown
    hole_middle = (pad.cross_hole_distance_mm + hole_off * numbers["tol_x"]) * grown
    beside = abs(drill) * 0.3 * grown + numbers["play"] / 2 + pin_radius
    return hole_radius - abs(hole_middle - pin_middle) - pin_radius, hole_radius - beside


CORNERS = list(product((-1.0, 1.0), repeat=6))
"""Everything as far off as it may be, in every combination: on straight lines the worst case is one of these."""


@examples(60, many=2000)
@given(roomy_post_documents(), st.tuples(*(st.floats(-1, 1) for _ in range(6))))
def test_the_pin_lies_inside_its_hole_whatever_is_off(document: dict[str, Any], somewhere: tuple[float, ...]) -> None:
    """Oracle: geometry of one part and one jack, each off by some share of what it may be off, at some temperature."""
    assume("pin_diameter_mm" in document["jack"])
    pad = a_pad_for(document).pad
    found = {c.code: c for c in judge(conditions_of(read_measurements(document)), pad)}
    finding = found["pin_meets"].finding
    assert finding is not None
    numbers = {**finding.numbers, "play": max(0.0, found["post_fit_loose"].value or 0.0)}
    assert min(min(_gaps_mm(pad, document["jack"], numbers, off)) for off in (*CORNERS, somewhere)) >= -1e-9


def test_in_hard_frost_the_hole_is_wide_enough_below_the_pin() -> None:
    """Oracle: by hand; polyethylene at −50 °C is 70 K · 200e-6 = 1.4 % shorter, and a hole 60 mm down comes up by 0.84 mm."""
    frosty = posted(
        jack__post_bore_mm=45,
        jack__post_bore_depth_mm=180,
        jack__bore_rim_diameter_mm=100,
        jack__rim_height_low_mm=200,
        jack__pin_distance_mm=60,
        seam__edge_height_mm=330,
        car__gross_mass_kg=400,
        make__material="uhmw_pe",
        service__temperature_low_c=-50,
        service__temperature_high_c=20,
    )
    lower = sized(frosty).ledger["cross_hole_diameter_mm"].lower
    found = next(b.value for b in lower if "goes through" in b.reason)
    assert found == pytest.approx(0.2 + 2 * ((60 + 4 + 0.15 + 0.1) / (1 - 0.014) - 60 + 0.3), abs=1e-9)


def test_the_hole_allows_for_what_the_stem_sinks_under_the_tallest_pad() -> None:
    """Oracle: by hand; F_d on the rim's ring from 35 to 62 mm, 1.1 times squashed over a pad as tall as its seat is wide."""
    lower = sized(posted()).ledger["cross_hole_diameter_mm"].lower
    numbers = next(b for b in lower if "goes through" in b.reason).numbers
    pressure = 1.2 * 0.6 * 1500 * 9.80665 / (math.pi / 4 * (62**2 - 35**2))
    assert numbers["sink"] == pytest.approx(1.1 * pressure * 65.1 / (2500 * 0.83), rel=1e-9)


def test_a_hole_too_low_misses_the_pin_in_words() -> None:
    check = judged(posted(), cross_hole_distance_mm=23.0)["pin_meets"]
    assert check.verdict == "fail"
    assert "may miss its hole" in check.words


def test_a_hole_that_meets_the_pin_but_lets_it_carry_fails_in_words() -> None:
    """The hole leaves the pin some room, but not what the stem plays and sinks."""
    checks = judged(posted(), cross_hole_diameter_mm=9.3)
    assert checks["pin_meets"].verdict == "pass"
    assert checks["pin_free"].verdict == "fail"
    assert "thinner pin, or none" in checks["pin_free"].words


def test_a_pin_too_near_to_the_seat_has_no_pad() -> None:
    with pytest.raises(NoPadFitsError) as error:
        size(conditions_of(read_measurements(posted(jack__pin_distance_mm=6))))
    assert error.value.dimension == "cross_hole_diameter_mm"
    assert error.value.upper.field == "jack.pin_distance_mm"


def test_a_pin_too_near_to_the_bottom_has_no_pad() -> None:
    with pytest.raises(NoPadFitsError) as error:
        size(conditions_of(read_measurements(posted(jack__pin_distance_mm=70))))
    assert error.value.dimension == "stem_length_mm"
    assert "tear out" in error.value.words


@pytest.mark.parametrize(("stem", "hole"), [(30.0, 8.0), (34.3, 10.5), (20.0, 10.0)])
def test_the_net_section_is_less_than_there_is(stem: float, hole: float) -> None:
    """Oracle: area and modulus of the two segments beside the hole, by Gauss's quadrature across the stem."""
    x, w = leggauss(200)
    y = hole / 2 + (x + 1) / 2 * (stem / 2 - hole / 2)
    half = (stem**2 / 4 - y**2) ** 0.5
    weights = w * (stem / 2 - hole / 2) / 2
    area = float(2 * (weights * 2 * half).sum())
    modulus = float(2 * (weights * 2 * half**3 / 3).sum()) / (stem / 2)
    assert 0.90 * area <= net_area_mm2(stem_mm=stem, hole_mm=hole) <= area
    assert 0.55 * modulus <= net_modulus_mm3(stem_mm=stem, hole_mm=hole) <= modulus


def test_the_web_sags_as_the_energy_of_its_bending_says() -> None:
    """Oracle: Castigliano, w = 2 U/P, the moments of a disc on a ring under a point load integrated over it (ν = 0.4)."""
    force, radius, web, modulus, nu = 3000.0, 15.0, 20.0, 2000.0, 0.4
    x, w = leggauss(400)
    r = radius * ((x + 1) / 2) ** 3
    weights = w / 2 * radius * 3 * ((x + 1) / 2) ** 2
    along = force / (4 * math.pi) * (1 + nu) * np.log(radius / r)
    around = along + force / (4 * math.pi) * (1 - nu)
    bent = (along**2 + around**2 - 2 * nu * along * around) / (modulus * web**3 / 12)
    expected = float((weights * bent * 2 * math.pi * r).sum()) / force
    assert sag_mm(force_n=force, bore_mm=2 * radius, web_mm=web, modulus_mpa=modulus) == pytest.approx(
        expected, rel=1e-6
    )


def test_a_pin_near_the_end_of_a_stem_tears_out() -> None:
    check = judged(posted(), stem_length_mm=27.0)["pin_tear_out"]
    assert check.verdict == "fail"
    assert "stem below the pin's hole" in check.words
