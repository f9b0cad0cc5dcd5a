"""Small finite-element models for the validation tests: plane and axisymmetric elasticity on graded triangles."""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import Delaunay, cKDTree
from skfem import (
    Basis,
    BilinearForm,
    ElementTriP2,
    ElementVector,
    FacetBasis,
    LinearForm,
    MeshTri,
    condense,
    solve,
)
from skfem.helpers import ddot, div, sym_grad

Array = NDArray[np.float64]
Size = Callable[[Array], Array]
"""Wanted element size at points of shape (n, 2)."""


def walk(corners: Array, size: Size) -> Array:
    """Points along a closed polygon, as far apart as ``size`` says."""
    points = []
    for start, end in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        length, at = float(np.hypot(*(end - start))), 0.0
        stations = [0.0]
        while at < length:
            at += float(size((start + (end - start) * at / length)[None])[0])
            stations.append(at)
        shares = np.array(stations) / stations[-1]
        points.append(start + (end - start) * shares[:-1, None])
    return np.concatenate(points)


def arc(centre: tuple[float, float], radius: float, degrees: tuple[float, float], pieces: int) -> Array:
    """Points on an arc, both ends included."""
    angles = np.radians(np.linspace(*degrees, pieces + 1))
    return np.column_stack([centre[0] + radius * np.cos(angles), centre[1] + radius * np.sin(angles)])


def _inside(points: Array, polygon: Array) -> NDArray[np.bool_]:
    """Even-odd rule."""
    odd = np.zeros(len(points), dtype=bool)
    for (x1, y1), (x2, y2) in zip(polygon, np.roll(polygon, -1, axis=0), strict=True):
        if y1 != y2:
            crosses = (y1 > points[:, 1]) != (y2 > points[:, 1])
            odd ^= crosses & (points[:, 0] < x1 + (points[:, 1] - y1) * (x2 - x1) / (y2 - y1))
    return odd


def _scattered(low: Array, high: Array, size: Size) -> Array:
    """Centres of squares that are split until none is larger than wanted."""
    side = float(max(high - low))
    cells, found = np.array([(low + high) / 2]), []
    while len(cells):
        fine = size(cells) >= side
        found.append(cells[fine])
        coarse, side = cells[~fine], side / 2
        cells = np.concatenate([coarse + side / 2 * np.array(s) for s in ((-1, -1), (-1, 1), (1, -1), (1, 1))])
    return np.concatenate(found)


def graded_mesh(corners: Array, size: Size) -> MeshTri:
    """Triangles of a polygon, graded by ``size``."""
    boundary = walk(corners, size)
    middle = _scattered(boundary.min(axis=0), boundary.max(axis=0), size)
    middle = middle[_inside(middle, boundary)]
    middle = middle[cKDTree(boundary).query(middle)[0] > 0.55 * size(middle)]
    points = np.concatenate([boundary, middle])
    triangles = Delaunay(points).simplices
    kept = triangles[_inside(points[triangles].mean(axis=1), boundary)]
    mesh = MeshTri(np.ascontiguousarray(points.T), np.ascontiguousarray(kept.T))
    x, y = boundary.T
    polygon_area = 0.5 * abs(float(np.dot(x, np.roll(y, 1)) - np.dot(y, np.roll(x, 1))))
    (a, b, c) = points[kept[:, 0]], points[kept[:, 1]], points[kept[:, 2]]
    areas = 0.5 * abs((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0])
    assert abs(areas.sum() / polygon_area - 1) < 1e-3, "the triangles do not fill the polygon"
    return mesh


class Plane:
    """Plane elasticity with quadratic triangles; thickness 1."""

    def __init__(self, mesh: MeshTri, *, modulus: float, poisson: float, strain: bool = True) -> None:
        self.mesh = mesh
        self.mu = modulus / (2 * (1 + poisson))
        lam = modulus * poisson / ((1 + poisson) * (1 - 2 * poisson))
        self.lam = lam if strain else 2 * lam * self.mu / (lam + 2 * self.mu)
        self.element = ElementVector(ElementTriP2())
        self.basis = Basis(mesh, self.element, intorder=4)
        self.load = np.zeros(self.basis.N)

    def push(self, where: Callable[[Array], Array], traction: Callable[[Array], tuple[Array, Array]]) -> None:
        """Add a traction on the facets whose middles ``where`` picks."""
        edge = FacetBasis(self.mesh, self.element, facets=self.mesh.facets_satisfying(where), intorder=4)

        @LinearForm
        def pushed(v, w):  # type: ignore[no-untyped-def]
            fx, fy = traction(w.x)
            return fx * v[0] + fy * v[1]

        self.load += pushed.assemble(edge)

    def solve(self, held: NDArray[np.int64]) -> Array:
        """Displacements with some degrees of freedom held."""
        mu, lam = self.mu, self.lam

        @BilinearForm
        def stiffness(u, v, w):  # type: ignore[no-untyped-def]
            return 2 * mu * ddot(sym_grad(u), sym_grad(v)) + lam * div(u) * div(v)

        return np.asarray(solve(*condense(stiffness.assemble(self.basis), self.load, D=held)), dtype=float)

    def held(self, where: Callable[[Array], Array], *parts: str) -> NDArray[np.int64]:
        """Degrees of freedom on the facets that ``where`` picks: ``u^1`` along x, ``u^2`` along y."""
        dofs = self.basis.get_dofs(self.mesh.facets_satisfying(where))
        return np.asarray(np.concatenate([dofs.all([part]) for part in parts]), dtype=np.int64)

    def edge_stress(self, u: Array, where: Callable[[Array], Array]) -> tuple[Array, Array]:
        """Stress along the boundary at the facets that ``where`` picks: places (2, n) and values (n)."""
        edge = FacetBasis(self.mesh, self.element, facets=self.mesh.facets_satisfying(where), intorder=2)
        s = self._stress(edge.interpolate(u).grad)
        nx, ny = np.asarray(edge.normals)
        tangential = ny**2 * s[0] + nx**2 * s[1] - 2 * nx * ny * s[2]
        x = np.asarray(edge.global_coordinates())
        return x.reshape(2, -1), tangential.ravel()

    def stress(self, u: Array) -> tuple[Array, Array]:
        """Places (2, n) and stresses (σx, σy, τ; n) at the integration points."""
        x = np.asarray(self.basis.global_coordinates())
        return x.reshape(2, -1), self._stress(self.basis.interpolate(u).grad).reshape(3, -1)

    def _stress(self, g: Array) -> Array:
        volume = self.lam * (g[0, 0] + g[1, 1])
        return np.array([volume + 2 * self.mu * g[0, 0], volume + 2 * self.mu * g[1, 1], self.mu * (g[0, 1] + g[1, 0])])
