"""Own oracle: the web over the stem hole as a thick round block, by axisymmetric finite elements (scikit-fem 12), and the
thin plate under a line load by Morley's plate elements.

The program takes a thin disc that the hole's edge simply supports, ν = 0.4, with the load on a patch of half the hole. Before
anything was adjusted, for holes of 12 to 30 mm in a seat of 60 mm and webs of 0.25 to 1.7 times the hole's radius, the
tension in the middle was 0.64 to 1.00 of the formula where the whole seat face is held, and 0.80 to 0.95 where only the
hole's edge carries. Up to four times the radius it stays within 6 % above, at stresses a hundred times smaller than in the
thin web. A line load along the whole diameter of a thin disc gives 0.87 of the patch. So the formula is an upper bound for
webs up to 1.7 times the hole's radius, and right to a tenth beyond.
"""

from functools import cache

import numpy as np
import pytest
from skfem import (
    Basis,
    BilinearForm,
    ElementTriMorley,
    ElementTriP2,
    ElementVector,
    FacetBasis,
    InteriorFacetBasis,
    LinearForm,
    MeshTri,
    condense,
    solve,
)
from skfem.helpers import dd, ddot, div, eye, sym_grad, trace

from geometry.seat import disc_bending_mpa
from tests.validation.fe import Array

SEAT_RADIUS, POISSON = 30.0, 0.4
MU, LAMBDA = 1 / (2 * (1 + POISSON)), POISSON / ((1 + POISSON) * (1 - 2 * POISSON))


@BilinearForm
def _stiffness(u, v, w):  # type: ignore[no-untyped-def]
    r = w.x[0]
    hoop_u, hoop_v = u[0] / r, v[0] / r
    shape = 2 * MU * (ddot(sym_grad(u), sym_grad(v)) + hoop_u * hoop_v)
    return 2 * np.pi * r * (shape + LAMBDA * (div(u) + hoop_u) * (div(v) + hoop_v))


@cache
def tension_in_the_middle(hole: float, web: float, *, whole_face: bool) -> float:
    """Stress across the axis on the underside over the hole, for 1 N on a patch of half the hole."""
    a = hole / 2
    inner, outer = a - np.geomspace(a / 2, 0.02 * a, 16), a + np.geomspace(0.02 * a, SEAT_RADIUS - a, 14)
    mesh = MeshTri.init_tensor(
        np.concatenate([np.linspace(0, a / 2, 9)[:-1], inner, [a], outer]), np.linspace(0, web, 17)
    )
    element = ElementVector(ElementTriP2())
    basis = Basis(mesh, element, intorder=5)
    patch = FacetBasis(mesh, element, facets=mesh.facets_satisfying(lambda x: np.isclose(x[1], web) & (x[0] < a / 2)))

    @LinearForm
    def load(v, w):  # type: ignore[no-untyped-def]
        return -v[1] * 2 * np.pi * w.x[0] / (np.pi * (a / 2) ** 2)

    reach = SEAT_RADIUS if whole_face else 1.045 * a
    stands = mesh.facets_satisfying(lambda x: np.isclose(x[1], 0) & (x[0] > a) & (x[0] < reach))
    axis = mesh.facets_satisfying(lambda x: np.isclose(x[0], 0))
    held = np.concatenate([basis.get_dofs(stands).all(["u^2"]), basis.get_dofs(axis).all(["u^1"])])
    u = solve(*condense(_stiffness.assemble(basis), load.assemble(patch), D=np.unique(held)))
    x, field = np.asarray(basis.global_coordinates()), basis.interpolate(u)
    g, hoop = field.grad, np.asarray(field)[0] / x[0]
    across = LAMBDA * (g[0, 0] + g[1, 1] + hoop) + 2 * MU * g[0, 0]
    near = (x[1] < web / 16) & (x[0] < 0.15 * a)
    return float(np.polyfit(x[1][near], across[near], 1)[1])


def _formula(hole: float, web: float) -> float:
    return disc_bending_mpa(force_n=1, support_radius_mm=hole / 2, patch_radius_mm=hole / 4, thickness_mm=web)


@pytest.mark.parametrize("whole_face", [True, False])
@pytest.mark.parametrize(("hole", "web"), [(12, 3), (12, 6), (12, 10), (20, 10), (20, 15), (30, 6), (30, 15), (30, 25)])
def test_the_disc_is_an_upper_bound_for_webs_up_to_1_7_radii(hole: float, web: float, whole_face: bool) -> None:
    """Oracle: the elements, 0.60 to 1.00 of the formula."""
    assert 0.6 <= tension_in_the_middle(hole, web, whole_face=whole_face) / _formula(hole, web) <= 1.005


@pytest.mark.parametrize(("hole", "web"), [(12, 15), (12, 25), (20, 25), (20, 40), (30, 40)])
def test_the_disc_is_right_to_a_tenth_for_webs_up_to_four_radii(hole: float, web: float) -> None:
    """Oracle: the elements on a seat face held all over, the worse support there."""
    assert 0.85 <= tension_in_the_middle(hole, web, whole_face=True) / _formula(hole, web) <= 1.10


def test_the_patch_stands_for_a_line_load_across_the_hole() -> None:
    """Oracle: Morley's plate, a line load along the whole diameter of a simply supported disc, total 1: its moment across the
    line in the middle is 13 % below the patch's: the patch errs on the careful side."""
    mesh = MeshTri.init_circle(5)
    basis = Basis(mesh, ElementTriMorley(), intorder=4)

    @BilinearForm
    def bending(u, v, w):  # type: ignore[no-untyped-def]
        curvature = dd(u)
        moment = (1 - POISSON) * curvature + POISSON * eye(trace(curvature), 2)
        return ddot(moment, dd(v))

    line = InteriorFacetBasis(
        mesh, ElementTriMorley(), facets=np.flatnonzero(abs(mesh.p[1, mesh.facets]).max(axis=0) < 1e-9)
    )

    @LinearForm
    def load(v, w):  # type: ignore[no-untyped-def]
        return 0.5 * v

    @LinearForm
    def even(v, w):  # type: ignore[no-untyped-def]
        return v / np.pi

    x = np.asarray(basis.global_coordinates())
    middle, stiff = np.hypot(x[0], x[1]) < 0.08, bending.assemble(basis)

    def moment_across(force: Array) -> float:
        c = basis.interpolate(solve(*condense(stiff, force, D=basis.get_dofs().all(["u"])))).hess
        return -float((c[1, 1] + POISSON * c[0, 0])[middle].mean())

    assert moment_across(even.assemble(basis)) == pytest.approx((3 + POISSON) / (16 * np.pi), rel=0.005)
    across = moment_across(load.assemble(line))
    patch = _formula(2, 1) / 6
    assert 0.85 * patch <= across <= patch
