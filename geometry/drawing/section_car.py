"""The car in the section, as outlines in model mm: the seam's sheets, their paint, and the sill above them."""

from collections.abc import Iterator
from dataclasses import replace

from geometry.drawing.section_scene import Scene
from geometry.drawing.section_shape import Kind, Shape
from geometry.outline import Arc, Outline, Point, moved, polyline


def car(scene: Scene) -> Iterator[Shape]:
    """The room that the car takes up above its lowest surfaces, cut off at the top of the picture."""
    k, x, top = scene.unit_mm, scene.step, scene.top - 6 * scene.unit_mm
    left, right = scene.middle - x, scene.middle + x
    under = [
        (-scene.reach, scene.outboard),
        (left - k, scene.outboard),
        (left + k, scene.sill),
        (right - k, scene.sill),
    ]
    corners = [
        (-scene.reach, top),
        *under,
        (right + k, scene.inboard),
        (scene.reach, scene.inboard),
        (scene.reach, top),
    ]
    yield Shape("car", polyline(corners), is_closed=True)
    zigzag = [
        (-scene.reach - 2 * k, 0),
        (0.4 * x, 0),
        (0.4 * x + k, 2 * k),
        (0.4 * x + 3 * k, -2 * k),
        (0.4 * x + 4 * k, 0),
    ]
    yield Shape("break", polyline([(x, top + y) for x, y in [*zigzag, (scene.reach + 2 * k, 0)]]))


def thick_place(scene: Scene) -> Iterator[Shape]:
    """What makes the seam thicker in the cut, on both sides of it, and what hangs below its edge."""
    more, top = (scene.thickest - scene.thickness) / 2, scene.sill - _bend(scene)
    if more > 0:
        for side in (-1, 1):
            x = scene.middle + side * (scene.thickness + more) / 2
            yield Shape("seam", polyline([(x, scene.edge), (x, top)]), width_mm=more)
    if scene.hanging:
        ends: list[Point] = [(scene.middle, scene.edge - scene.hanging), (scene.middle, scene.edge)]
        yield Shape("seam", polyline(ends), width_mm=scene.bare)


def paint(scene: Scene) -> Iterator[Shape]:
    """The coat on both sides of the bare seam."""
    coat = (scene.thickness - scene.bare) / 2
    if coat <= 0:
        return
    top = scene.sill - _bend(scene)
    for side in (-1, 1):
        near, far = scene.middle + side * scene.bare / 2, scene.middle + side * scene.thickness / 2
        corners: list[Point] = [(near, scene.edge), (far, scene.edge), (far, top), (near, top), (near, scene.edge)]
        yield Shape("paint", polyline(corners), is_closed=True, is_ghost=_seam_is_ghost(scene))


def _bend(scene: Scene) -> float:
    """Inside radius with which a sheet turns from the seam into the sill."""
    return min(2.5 * scene.unit_mm, 0.4 * (scene.sill - scene.edge))


def _seam_is_ghost(scene: Scene) -> bool:
    return scene.known.thickness_mm is None or scene.known.height_mm is None


def sheets(scene: Scene) -> Iterator[Shape]:
    """The seam's sheets side by side, each turning into the sill on its own side."""
    outer = (scene.sheets + 1) // 2
    for side, count, level in ((-1, outer, scene.outboard), (1, scene.sheets - outer, scene.inboard)):
        for index in range(max(count, 1)):
            for shape in _sheet(scene, side, index, level, stands=index < count):
                yield replace(shape, outline=moved(shape.outline, scene.middle))


def _sheet(scene: Scene, side: int, index: int, level: float, *, stands: bool) -> Iterator[Shape]:
    """One sheet, seen from the seam's middle: its straight part in the seam, and its way into the sill.

    Only the outermost runs on to the picture's side.
    """
    thin, is_ghost, k = scene.bare / scene.sheets, _seam_is_ghost(scene), scene.unit_mm
    x = scene.bare / 2 - thin * (index + 0.5) if stands else 0.0
    y = scene.sill + thin * (index + 0.5)
    bend = min(_bend(scene) + thin * (index + 0.5), y - scene.edge)
    if stands:
        yield _sided("seam", polyline([(x, scene.edge), (x, y - bend)]), side, thin, is_ghost)
        way: Outline = (Arc((x, y - bend), (x + bend, y), (x + bend, y - bend)),)
    else:
        way = polyline([(x, y), (x + bend, y)])
    start = x + bend
    if index:
        way = (*way, *polyline([(start, y), (max(start, 0.75 * scene.step), y)]))
    else:
        beside, reach = level + thin / 2, scene.reach - side * scene.middle
        points: list[Point] = [(start, y), (max(start, scene.step - k), y), (max(start, scene.step) + k, beside)]
        points.append((reach, beside))
        if side < 0:
            points.append((reach, scene.top - 6 * k))
        way = (*way, *polyline(points))
    yield _sided("sill", way, side, thin, is_ghost)


def _sided(kind: Kind, outline: Outline, side: int, width_mm: float, is_ghost: bool) -> Shape:
    """The same on the left where ``side`` is negative."""
    turned = outline if side > 0 else tuple(piece.mirrored() for piece in outline)
    return Shape(kind, turned, is_ghost=is_ghost, width_mm=width_mm)
