"""Own oracle: a skirt that is pushed at its inside, by solid finite elements (scikit-fem 12, hexahedra of second order).

Half of the pad above the lip's face and of the skirt below it; the body is held well inside the root, the push is a cosine over
20° to each side of the middle and over the whole overlap. Before anything was adjusted the bending just below the root, read
as the slope of the stress through the wall, was 0.40 to 0.60 of what the program takes for skirts of 7 and 10 mm, and less for
longer ones: the ring carries as a tube, too, and the push lies nearer to the root than the skirt's end. A mesh of half the size
changed it by less than a hundredth, a push over 10° instead of 20° by 4 hundredths. The program stays on the careful side: where
the pad stands askew it is the skirt's end that is pushed.
"""

import numpy as np
import pytest
from skfem import Basis, BilinearForm, ElementHex2, ElementVector, FacetBasis, LinearForm, MeshHex, condense, solve
from skfem.helpers import ddot, div, sym_grad

from geometry.feet.skirt.wall import ROOT_FACTOR, root_stress_mpa
from tests.validation.fe import Array

POISSON, PUSHED = 0.4, np.radians(20)
MU, LAMBDA = 1 / (2 * (1 + POISSON)), POISSON / ((1 + POISSON) * (1 - 2 * POISSON))
HELD_INSIDE, GROOVE = 20.0, 2.0
"""Distance of the held face from the skirt's bore, and of the overlap's start from the root; mm."""
Skirt = tuple[float, float, float, float]
"""Bore, outside, length, and body above the lip's face; mm."""


@BilinearForm
def _stiffness(u, v, w):  # type: ignore[no-untyped-def]
    return 2 * MU * ddot(sym_grad(u), sym_grad(v)) + LAMBDA * div(u) * div(v)


def _mesh(skirt: Skirt) -> MeshHex:
    bore, outside, length, above = skirt
    r = np.concatenate([np.linspace(bore / 2 - HELD_INSIDE, bore / 2, 3), np.linspace(bore / 2, outside / 2, 3)[1:]])
    angle = np.radians(np.concatenate([np.linspace(0, 40, 6), np.linspace(40, 180, 5)[1:]]))
    z = np.concatenate([-length + np.linspace(0, length, 4), np.linspace(0, above, 3)[1:]])
    mesh = MeshHex.init_tensor(r, angle, z)
    middles = mesh.p[:, mesh.t].mean(axis=1)
    mesh = mesh.restrict(np.flatnonzero((middles[2] > 0) | (middles[0] > bore / 2)))
    radius, turned, level = mesh.p
    return MeshHex(np.array([radius * np.cos(turned), radius * np.sin(turned), level]), mesh.t)


def bending_per_newton(skirt: Skirt) -> float:
    """Bending stress through the wall just below its root, in the middle of the push, for a side load of 1."""
    bore, outside, length, _ = skirt
    mesh, element = _mesh(skirt), ElementVector(ElementHex2())
    basis = Basis(mesh, element, intorder=4)

    def pressed(x: Array) -> Array:
        turned = np.arctan2(x[1], x[0])
        return np.where((turned < PUSHED) & (x[2] < -GROOVE), np.cos(np.pi / 2 * turned / PUSHED), 0.0)

    @LinearForm
    def push(v, w):  # type: ignore[no-untyped-def]
        return pressed(w.x) * (v[0] * w.x[0] + v[1] * w.x[1]) / np.hypot(w.x[0], w.x[1])

    inside = mesh.facets_satisfying(lambda x: (np.hypot(x[0], x[1]) < 1.0001 * bore / 2) & (x[2] < -1e-6), True)
    held = mesh.facets_satisfying(lambda x: (np.hypot(x[0], x[1]) < bore / 2 - 0.9 * HELD_INSIDE) & (x[2] > 0), True)
    in_plane = mesh.facets_satisfying(lambda x: abs(x[1]) < 1e-6, True)
    force = push.assemble(FacetBasis(mesh, element, facets=inside, intorder=4))
    along_x = basis.project(lambda x: np.array([np.ones_like(x[0]), 0 * x[0], 0 * x[0]]))
    fixed = np.unique(np.concatenate([basis.get_dofs(held).all(), basis.get_dofs(in_plane).all(["u^2"])]))
    u = solve(*condense(_stiffness.assemble(basis), force / (2 * float(along_x @ force)), D=fixed))
    strain = basis.interpolate(u).grad
    stress = 2 * MU * strain[2, 2] + LAMBDA * (strain[0, 0] + strain[1, 1] + strain[2, 2])
    x, y, z = np.asarray(basis.global_coordinates())
    near = (z < 0) & (z > -length / 3) & (np.arctan2(y, x) < np.radians(8))
    slope = np.polyfit(np.hypot(x, y)[near], stress[near], 1)[0]
    return float(abs(slope)) * (outside - bore) / 4


@pytest.mark.parametrize("skirt", [(91.1, 117.0, 10.0, 13.0), (121.0, 146.0, 10.0, 13.0), (101.1, 126.0, 7.0, 13.0)])
def test_the_root_of_a_skirt_bends_less_than_it_is_sized_for_and_not_by_an_order(skirt: Skirt) -> None:
    """Oracle: the elements; the program's stress without its factor for the corner."""
    bore, outside, length, _ = skirt
    taken = root_stress_mpa(side_force_n=1.0, bore_mm=bore, length_mm=length, wall_mm=(outside - bore) / 2)
    found = bending_per_newton(skirt)
    assert found * ROOT_FACTOR < taken
    assert found * ROOT_FACTOR > 0.35 * taken
