"""The tilt of a pad on its rim, and what it does to the stem."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from numpy.polynomial.legendre import leggauss

from geometry.checks import judge
from geometry.conditions import conditions_of
from geometry.feet.post.tilt import sway_mm
from geometry.measurements import read_measurements
from tests.geometry.feet.post_documents import posted, roomy_post_documents
from tests.geometry.sized import a_pad_for, judged


def test_an_ordinary_stem_keeps_its_play_as_the_seat_gives_way() -> None:
    check = judged(posted())["stem_tilt"]
    assert check.value == 0
    assert "takes nothing of the couple" in check.words


def test_a_stem_without_play_is_bent_by_hand() -> None:
    """Oracle: a cantilever whose end is moved by δ bends to σ = 3 E d δ/(2 l²), from M = 3 E I δ/l² and W = 2 I/d."""
    check = judged(posted(), stem_diameter_mm=34.6, stem_length_mm=40.0, web_mm=40.0)["stem_tilt"]
    assert check.finding is not None
    n = check.finding.numbers
    edge = min(n["F_d"] / n["A"] * n["k_e"], 1.5 * n["sigma_allow"])
    tilt = 1.1 * edge / n["E_hold"] * n["web"] / n["R"]
    held = tilt * n["length"] - (n["bore"] - n["u"] - (n["stem"] + n["tol"]) * (1 + n["g_hot"]))
    second_moment = 3.141592653589793 * n["stem"] ** 4 / 64
    moment = 3 * n["E_hold"] * second_moment * held / n["length"] ** 2
    assert check.value == pytest.approx(moment / (2 * second_moment / n["stem"]))
    assert "held back" in check.words


def test_the_sway_of_a_stem_is_that_of_an_integrated_cantilever() -> None:
    """Oracle: δ = ∫ q(s) s² (3 l − s)/(6 E I) ds over point loads q = 2 H s/l², by Gauss's quadrature."""
    force, stem, length, modulus = 1500.0, 30.0, 45.0, 2000.0
    x, w = leggauss(20)
    s = (x + 1) / 2 * length
    rigidity = modulus * 3.141592653589793 * stem**4 / 64
    expected = float((w * length / 2 * (2 * force * s / length**2) * s**2 * (3 * length - s) / (6 * rigidity)).sum())
    assert sway_mm(force_n=force, stem_mm=stem, length_mm=length, modulus_mpa=modulus) == pytest.approx(expected)


def test_a_long_stem_of_rubber_bends_out_of_the_way() -> None:
    """Polyurethane is offered for flat heads; on a post a stem of usual length is far too soft, and a short one is overloaded."""
    document = posted("cushion", pinned=False, make__material="pur_95")
    assert judged(document, stem_length_mm=51.0)["stem_sway"].verdict == "fail"
    assert judged(document)["post_side_load"].verdict == "fail"


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(roomy_post_documents(), st.floats(0.0, 0.5))
def test_a_thicker_stem_is_never_bent_less_by_the_tilt(document: dict[str, object], thicker: float) -> None:
    conditions, pad = conditions_of(read_measurements(document)), a_pad_for(document).pad
    thick = pad.with_(stem_diameter_mm=pad.stem_diameter_mm + thicker)
    before, after = ({c.code: c for c in judge(conditions, p)}["stem_tilt"] for p in (pad, thick))
    assert (after.value or 0.0) >= (before.value or 0.0) - 1e-9
