"""Trouble shown where it occurs: which stretch of the section a failed check or a conflict concerns."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite

from geometry.drawing.section_lettering import quantity_words
from geometry.drawing.section_scene import Scene
from geometry.errors import NoPadFitsError
from geometry.outline import Point
from geometry.rules import Check, Sense
from geometry.units import LengthUnit

PLACE_OF_DIMENSION = {
    "seat_diameter_mm": "seat_side",
    "seat_length_mm": "lip",
    "seat_corner_radius_mm": "seat_corner",
    "stem_diameter_mm": "stem",
    "stem_length_mm": "stem",
    "body_diameter_mm": "body",
    "slot_width_mm": "slot_side",
    "slot_depth_mm": "wall_top",
    "web_mm": "web",
    "slot_corner_radius_mm": "slot_floor",
    "slot_mouth_chamfer_mm": "wall_top",
    "edge_chamfer_mm": "wall_top",
    "seat_recess_diameter_mm": "recess",
    "seat_recess_depth_mm": "recess",
    "skirt_bore_mm": "rim",
    "skirt_length_mm": "rim",
    "cross_hole_diameter_mm": "stem",
    "cross_hole_distance_mm": "stem",
    "flats_width_mm": "body",
    "slot_offset_mm": "slot_offset",
    "cross_slot_width_mm": "slot_side",
    "relief_width_mm": "pocket",
    "relief_length_mm": "pocket",
    "relief_depth_mm": "pocket",
    "plug_length_mm": "wall_top",
    "plug_width_mm": "wall_top",
    "plug_height_mm": "wall_top",
    "plug_corner_radius_mm": "wall_top",
}
_PLACE_OF_CHECK = {"boss_clear": "recess", "relief_clear": "pocket", "slot_offset_fit": "slot_offset"}
"""Checks about something that the place of their rule says too little about."""
LEFT_PLACES = frozenset({"seat", "recess", "seat_side", "seat_corner", "stem", "lip", "cup", "rim"})
"""Trouble with the jack's side of the pad is told on the left, with the car's on the right."""


@dataclass(frozen=True, slots=True)
class TroubleSpot:
    """One thing that is wrong, and where on the section."""

    place: str
    words: str
    """A few words: what it concerns."""
    value: float
    limit: float
    unit: str
    sense: Sense
    is_conflict: bool = False
    """Whether ``value`` and ``limit`` are the least and the most between which nothing fits."""
    dimension: str = ""
    """The pad's dimension in conflict."""

    @property
    def is_left(self) -> bool:
        """Whether it is told on the left."""
        return self.place in LEFT_PLACES

    def numbers(self, units: LengthUnit) -> str:
        """What was found and what would do, in words."""
        if self.is_conflict:
            least, most = (quantity_words(v, self.unit, units) for v in (self.value, self.limit))
            return f"at least {least}, at most {most}: no room"
        limit = quantity_words(self.limit, self.unit, units)
        wanted = f"{'at most' if self.sense == 'at_most' else 'at least'} {limit}"
        wanted = wanted.replace(" ", "\N{NO-BREAK SPACE}")
        return f"{quantity_words(self.value, self.unit, units)}, {wanted}" if isfinite(self.value) else wanted


def spots_of_checks(checks: Iterable[Check]) -> tuple[TroubleSpot, ...]:
    """The checks that fail, as spots, in their order."""
    return tuple(
        TroubleSpot(
            _PLACE_OF_CHECK.get(c.code, c.rule.place),
            c.title,
            c.finding.value,
            c.finding.limit,
            c.rule.unit,
            c.rule.sense,
        )
        for c in checks
        if c.verdict == "fail" and c.finding
    )


def spot_of_conflict(error: NoPadFitsError) -> TroubleSpot:
    """The conflict as a spot, at the dimension between whose bounds nothing fits."""
    title = error.dimension.removesuffix("_mm").replace("_", " ").capitalize()
    return TroubleSpot(
        PLACE_OF_DIMENSION.get(error.dimension, "body"),
        title,
        error.lower.value_mm,
        error.upper.value_mm,
        "mm",
        "at_least",
        is_conflict=True,
        dimension=error.dimension,
    )


@dataclass(frozen=True, slots=True)
class Band:
    """A textured stretch of the section, and the point on it that the arrow meets."""

    low: Point
    high: Point
    at: Point
    levels: tuple[tuple[Point, Point], ...] = ()
    """Lines that show two bounds between which nothing fits."""


def band_of(spot: TroubleSpot, scene: Scene) -> Band:
    """Where a spot lies, on the side on which it is told."""
    band = _conflict_band(spot, scene) if spot.is_conflict else None
    band = band or _band(spot.place, scene)
    return _mirrored(band) if spot.is_left else band


def _conflict_band(spot: TroubleSpot, s: Scene) -> Band | None:
    """Two level lines for a height, two upright ones for a width; None where lines would say nothing."""
    k, pad = s.unit_mm, s.pad
    first, second = spot.value, spot.limit
    if spot.dimension in {"web_mm", "seat_length_mm", "slot_depth_mm"}:
        if spot.dimension == "slot_depth_mm":
            first, second = pad.web_mm + first, pad.web_mm + second
        first, second = (min(max(y, s.ground), s.top) for y in (first, second))
        near, far = s.body + k, s.body + 7 * k
        low, high = min(first, second), max(first, second)
        lines = tuple(((near, y), (far, y)) for y in (first, second))
        return Band((near + k, low), (far - k, high), (far - k, (low + high) / 2), lines)
    if spot.dimension in {"seat_diameter_mm", "body_diameter_mm", "slot_width_mm"}:
        middle = s.middle if spot.dimension == "slot_width_mm" else 0.0
        first, second = (min(max(middle + x / 2, middle), s.reach) for x in (first, second))
        y = {"seat_diameter_mm": s.depth / 2, "body_diameter_mm": (pad.seat_length_mm + s.wall_top) / 2}.get(
            spot.dimension, (s.edge + s.wall_top) / 2
        )
        low, high = min(first, second), max(first, second)
        lines = tuple(((x, y - 4 * k), (x, y + 4 * k)) for x in (first, second))
        return Band((low, y - 3 * k), (high, y + 3 * k), (high, y), lines)
    return None


def _band(place: str, s: Scene) -> Band:
    """The stretch that a place names, on the right half; the body's side where the name is new."""
    found = _jack_bands(s) | _car_bands(s)
    k = s.unit_mm
    return found.get(place) or _box(s.side - 3 * k, s.pad.seat_length_mm, s.side, s.wall_top)


def _jack_bands(s: Scene) -> dict[str, Band]:
    """Where the pad meets the cup."""
    k, p = s.unit_mm, s.pad
    seat, lip, radius, stem = p.seat_diameter_mm / 2, p.seat_length_mm, p.seat_corner_radius_mm, p.stem_diameter_mm / 2
    flat = max(p.seat_flat_diameter_mm / 2, k)
    return {
        "seat": Band((max(s.hole, 0.15 * flat), -0.8 * k), (max(flat, s.hole), 0.8 * k), (0.7 * flat, 0)),
        "recess": _recess(s),
        "seat_side": _box(min(seat, s.bore), min(s.corner, s.depth), max(seat, s.bore), s.depth),
        "seat_corner": _box(seat - radius, 0, seat, radius),
        "stem": _box(stem, -max(p.stem_length_mm, 2 * k), max(s.hole, stem), -0.5 * k),
        "lip": _box(min(seat, s.body), min(lip, s.depth), max(seat, s.body), max(lip, s.depth)),
        "rim": _box(s.rim - 6 * k, min(s.depth, s.edge), s.rim, max(s.depth, s.edge)),
        "cup": _box(s.rim - 8 * k, s.under, s.rim, 0),
    }


def _recess(s: Scene) -> Band:
    """The gap between a boss and the recess over it, or where they would be."""
    k, p = s.unit_mm, s.pad
    recess = p.seat_recess_diameter_mm / 2 or s.boss + 2 * k
    high = max(p.seat_recess_depth_mm, s.boss_height, 2 * k)
    return _box(min(s.boss, recess), 0, max(s.boss, recess), high)


def _car_bands(s: Scene) -> dict[str, Band]:
    """Where the pad meets the seam and the sill."""
    k, p, m = s.unit_mm, s.pad, s.middle
    half, slot = s.thickness / 2, p.slot_width_mm / 2
    left, right = m - half, m + half
    side = m + slot
    wall, level = (side + s.side) / 2, min(s.sill, s.inboard)
    return {
        "web": _box(m + 0.4 * slot, min(p.seat_length_mm, s.edge), side + 6 * k, s.edge),
        "slot_floor": Band((left - k, s.edge - 2 * k), (right + k, s.edge), (right + k, s.edge - 1.4 * k)),
        "slot_side": _box(m + min(half, slot), s.edge, m + max(slot, half), s.wall_top),
        "slot_offset": _offset(s),
        "pocket": _pocket(s),
        "wall": _box(side, s.edge - k, min(side + 4 * k, s.side), s.edge + 4 * k),
        "wall_top": _box(wall - 3 * k, min(s.wall_top, level), wall + 5 * k, max(s.wall_top, level)),
        "seam_edge": Band((left, s.edge), (right, s.edge + 2 * k), (right, s.edge + 1.4 * k)),
        "seam_strip": _box(left, min(s.wall_top, s.sill - k), right, s.sill),
    }


def _offset(s: Scene) -> Band:
    """Between the middle of the slot and where the seam passes, both beside the axis."""
    wanted = s.known.offset_mm or 0.0
    low, high = min(wanted, s.middle), min(max(wanted, s.middle), s.reach)
    lines = tuple(((x, s.wall_top - 3 * s.unit_mm), (x, s.wall_top + 3 * s.unit_mm)) for x in (low, high))
    return Band((low, s.edge), (high, s.wall_top), (high, (s.edge + s.wall_top) / 2), lines)


def _pocket(s: Scene) -> Band:
    """The gap between the seam where it is not plain and the pocket around it, or where they would be."""
    p, k = s.pad, s.unit_mm
    thick, wide = s.thickest / 2, p.relief_width_mm / 2 or p.slot_width_mm / 2 + k
    floor = min(p.body_top_mm - (p.relief_depth_mm or p.slot_depth_mm), s.edge - s.hanging)
    return _box(s.middle + min(thick, wide), floor, s.middle + max(thick, wide), s.wall_top)


def _box(left: float, low: float, right: float, high: float) -> Band:
    return Band((left, low), (right, high), ((left + 3 * right) / 4, (low + high) / 2))


def _mirrored(band: Band) -> Band:
    def over(point: Point) -> Point:
        return -point[0], point[1]

    levels = tuple((over(a), over(b)) for a, b in band.levels)
    return Band((-band.high[0], band.low[1]), (-band.low[0], band.high[1]), over(band.at), levels)
