"""How near the solid is to the kernel's own limit, and how long each file takes: ``python -m tests.bench.bench_solid``.

The twin makes the same part with bare kernel calls and literal coordinates; both are built in turn in one run, so that
whatever else the machine does falls on both.
"""

import time
from collections.abc import Callable
from functools import partial
from statistics import median

from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakeWire
from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism, BRepPrimAPI_MakeRevol
from OCP.GC import GC_MakeArcOfCircle
from OCP.gp import gp_Ax1, gp_Dir, gp_Pnt, gp_Vec
from OCP.TopAbs import TopAbs_ShapeEnum
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS_Face, TopoDS_Shape

from geometry.exports import mesh_of, model_bytes, require_sound, solid_volume_mm3, step_bytes
from geometry.mesh import stl_bytes
from geometry.solid import build_solid
from geometry.threemf import threemf_bytes
from tests.geometry.pads import LABEL, ORDINARY

ROUNDS = 40
GOAL = 1.15
Steps = tuple[tuple[float, ...], ...]

TURNED: Steps = (
    (0, 0), (29.1, 0), (32.281980515, 1.318019485, 33.6, 4.5), (33.6, 13), (36, 13), (37, 14), (37, 36), (36, 37), (0, 37),
)  # fmt: skip
SLOT: Steps = (
    (-5.5, 37), (-4.5, 36), (-4.5, 22.5), (-4.353553391, 22.146446609, -4, 22), (4, 22),
    (4.353553391, 22.146446609, 4.5, 22.5), (4.5, 36), (5.5, 37), (5.5, 38), (-5.5, 38),
)  # fmt: skip
"""ORDINARY by hand: the next corner as (r, z), or an arc as (r, z on the way, r, z at its end)."""


def bare_twin() -> TopoDS_Shape:
    """The same part by kernel calls alone."""
    turned = BRepPrimAPI_MakeRevol(_face(TURNED, 0), gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1))).Shape()
    slot = BRepPrimAPI_MakePrism(_face(SLOT, -38), gp_Vec(0, 76, 0)).Shape()
    return TopExp_Explorer(BRepAlgoAPI_Cut(turned, slot).Shape(), TopAbs_ShapeEnum.TopAbs_SOLID).Current()


def _face(steps: Steps, y: float) -> TopoDS_Face:
    wire = BRepBuilderAPI_MakeWire()
    last = gp_Pnt(steps[0][0], y, steps[0][1])
    for step in (*steps[1:], steps[0]):
        end = gp_Pnt(step[-2], y, step[-1])
        if len(step) == 4:
            edge = BRepBuilderAPI_MakeEdge(GC_MakeArcOfCircle(last, gp_Pnt(step[0], y, step[1]), end).Value())
        else:
            edge = BRepBuilderAPI_MakeEdge(last, end)
        wire.Add(edge.Edge())
        last = end
    return BRepBuilderAPI_MakeFace(wire.Wire(), True).Face()


def milliseconds(work: Callable[[], object]) -> float:
    """How long one call takes."""
    started = time.perf_counter()
    work()
    return 1000 * (time.perf_counter() - started)


def build_times_ms() -> tuple[list[float], list[float]]:
    """Ours and the twin's, in turn."""
    pairs = [(milliseconds(lambda: build_solid(ORDINARY)), milliseconds(bare_twin)) for _ in range(ROUNDS)]
    return [ours for ours, _ in pairs], [twin for _, twin in pairs]


def file_times_ms() -> dict[str, float]:
    """The median time of each step from a fresh solid to a file: a shape keeps its mesh, so each round builds anew."""
    times: dict[str, list[float]] = {}
    for _ in range(ROUNDS):
        solid = build_solid(ORDINARY)
        mesh = mesh_of(build_solid(ORDINARY))
        steps: dict[str, Callable[[], object]] = {
            "checks of the solid": partial(require_sound, solid, ORDINARY),
            "STEP written": partial(step_bytes, solid, LABEL),
            "triangles": partial(mesh_of, solid),
            "STL written": partial(stl_bytes, mesh, LABEL),
            "3MF written": partial(threemf_bytes, mesh, LABEL),
            "all of STEP, from pad to bytes": partial(model_bytes, ORDINARY, LABEL, "step"),
            "all of STL, from pad to bytes": partial(model_bytes, ORDINARY, LABEL, "stl"),
            "all of 3MF, from pad to bytes": partial(model_bytes, ORDINARY, LABEL, "3mf"),
        }
        for name, work in steps.items():
            times.setdefault(name, []).append(milliseconds(work))
    return {name: median(values) for name, values in times.items()}


def figures() -> dict[str, str]:
    """Each figure with its value, ready to print; a twin that is another part proves nothing, and is an error."""
    if abs(solid_volume_mm3(bare_twin()) / solid_volume_mm3(build_solid(ORDINARY)) - 1) > 1e-6:
        raise AssertionError("the twin is another part")
    ours, twin = build_times_ms()
    ratio = median(one / other for one, other in zip(ours, twin, strict=True))
    return {
        "solid built": f"{median(ours):.1f} ms",
        "the same by bare kernel calls": f"{median(twin):.1f} ms",
        f"median ratio of the two, built in turn (goal {GOAL})": f"{ratio:.3f}",
        **{name: f"{time_ms:.1f} ms" for name, time_ms in file_times_ms().items()},
    }


if __name__ == "__main__":
    for name, value in figures().items():
        print(f"{name:62} {value:>10}")
