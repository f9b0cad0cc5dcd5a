"""What a hole in the car's body asks of the plug that enters it: how long, how wide and how round it is."""

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.provenance import derived
from geometry.rules import Numbers

_ROOM_TO_ROUND_MM = 0.7
"""A corner radius closer than this to half the plug's width is made half the width: one step of an inch shop, and a little."""
_FIT = derived(
    "Worst case of measurement, growth and tolerance (ISO 2768-1 m); 1 mm is kept so that the plug finds its hole"
)
_WIDTH = ("pocket.hole_width_mm", "make.measured_with", "service.temperature_high_c")
_LENGTH = ("pocket.hole_length_mm", "make.measured_with", "service.temperature_high_c")


def most_play_mm(hole_mm: float) -> float:
    """How much a plug may play in a hole and still be located by it, [mm]: 3, or 0.15 of a large hole [own choice]."""
    return max(3.0, 0.15 * hole_mm)


def plug_numbers(d: Draft) -> Numbers:
    """The symbols of the bounds of a plug and of the shoulder around it."""
    hole = d.c.pocket
    return {
        "w_h": hole.hole_width_mm,
        "l_h": hole.hole_length_mm,
        "r_h": hole.corner_radius_mm,
        "d_h": hole.hole_depth_mm,
        "u": d.c.u,
        "g_hot": d.c.g_hot,
        "g_cold": d.c.g_cold,
        "tol": d.tol,
        "plug_w": _width_mm(d),
        "plug_l": d.plug_length_mm,
        "plug_r": d.plug_corner_radius_mm,
        "c_e": d.edge_chamfer_mm,
        "seat": d.seat_diameter_mm,
        "seat_length": d.seat_length_mm,
    }


def _width_mm(d: Draft) -> float:
    """The plug's width as it stands, or as it was given."""
    return d.plug_width_mm or d.c.measurements.fixed.given().get("plug_width_mm", 0.0)


def _width_leads(d: Draft) -> bool:
    """Whether a round plug is as long as a given width says, and not as wide as its length."""
    return "plug_width_mm" in d.c.measurements.fixed.given()


def _goes_in_mm(d: Draft, hole_mm: float) -> float:
    return (hole_mm - d.c.u) / (1 + d.c.g_hot) - 1.0 - d.tol


def _located_mm(d: Draft, hole_mm: float) -> float:
    return (hole_mm + d.c.u - most_play_mm(hole_mm)) / (1 + d.c.g_cold) + d.tol


@bound(
    "plug_length_mm",
    "upper",
    "The plug goes into its hole lengthwise when it is hot and wet and at its largest.",
    formula="(l_h - u) / (1 + g_hot) - 1.0 - tol",
    source=_FIT,
    needs=_LENGTH,
    numbers=plug_numbers,
)
def _length_goes_in(d: Draft) -> float | None:
    return None if d.c.pocket.is_round and _width_leads(d) else _goes_in_mm(d, d.c.pocket.hole_length_mm)


@bound(
    "plug_length_mm",
    "lower",
    "The plug is still located lengthwise when it is cold and at its smallest.",
    formula="(l_h + u - max(3, 0.15 * l_h)) / (1 + g_cold) + tol",
    source=_FIT,
    needs=_LENGTH,
    numbers=plug_numbers,
)
def _length_is_located(d: Draft) -> float | None:
    return None if d.c.pocket.is_round and _width_leads(d) else _located_mm(d, d.c.pocket.hole_length_mm)


@bound(
    "plug_length_mm",
    "upper",
    "A round plug is no longer than the width that was given.",
    formula="plug_w",
    source=derived("A round hole has one size"),
    needs=("pocket.hole_width_mm", "pocket.shape"),
    numbers=plug_numbers,
)
def _no_longer_than_wide(d: Draft) -> float | None:
    return _width_mm(d) if d.c.pocket.is_round and _width_leads(d) else None


@bound(
    "plug_length_mm",
    "lower",
    "A round plug is as long as the width that was given.",
    formula="plug_w",
    source=derived("A round hole has one size"),
    needs=("pocket.hole_width_mm", "pocket.shape"),
    numbers=plug_numbers,
)
def _as_long_as_wide(d: Draft) -> float | None:
    return _no_longer_than_wide(d)


@bound(
    "plug_width_mm",
    "upper",
    "The plug goes into its hole when it is hot and wet and at its largest.",
    formula="(w_h - u) / (1 + g_hot) - 1.0 - tol",
    source=_FIT,
    needs=_WIDTH,
    numbers=plug_numbers,
)
def _width_goes_in(d: Draft) -> float | None:
    return None if d.c.pocket.is_round and not _width_leads(d) else _goes_in_mm(d, d.c.pocket.hole_width_mm)


@bound(
    "plug_width_mm",
    "lower",
    "The plug is still located by its hole when it is cold and at its smallest.",
    formula="(w_h + u - max(3, 0.15 * w_h)) / (1 + g_cold) + tol",
    source=_FIT,
    needs=_WIDTH,
    numbers=plug_numbers,
)
def _width_is_located(d: Draft) -> float | None:
    return None if d.c.pocket.is_round and not _width_leads(d) else _located_mm(d, d.c.pocket.hole_width_mm)


@bound(
    "plug_width_mm",
    "upper",
    "A round plug is no wider than it is long.",
    formula="plug_l",
    source=derived("A round hole has one size"),
    needs=("pocket.hole_width_mm", "pocket.shape"),
    numbers=plug_numbers,
)
def _no_wider_than_long(d: Draft) -> float | None:
    return d.plug_length_mm if d.c.pocket.is_round else None


@bound(
    "plug_width_mm",
    "lower",
    "A round plug is as wide as it is long.",
    formula="plug_l",
    source=derived("A round hole has one size"),
    needs=("pocket.hole_width_mm", "pocket.shape"),
    numbers=plug_numbers,
)
def _as_wide_as_long(d: Draft) -> float | None:
    return d.plug_length_mm if d.c.pocket.is_round else None


def _half_mm(d: Draft) -> float:
    return min(d.plug_width_mm, d.plug_length_mm) / 2


def _rounder_mm(d: Draft) -> float:
    return d.c.pocket.corner_radius_mm + d.c.u + d.tol


def _has_round_ends(d: Draft) -> bool:
    """Whether the plug's ends are full half circles: in a round hole, and in one whose ends are nearly so."""
    return d.c.pocket.is_round or _rounder_mm(d) > _half_mm(d) - _ROOM_TO_ROUND_MM


@bound(
    "plug_corner_radius_mm",
    "lower",
    "The plug's corners are rounder than the hole's, so that its sides touch first.",
    formula="r_h + u + tol",
    source=derived("Worst case of measurement and tolerance (ISO 2768-1 m, radii)"),
    needs=("pocket.corner_radius_mm", "make.measured_with"),
    numbers=plug_numbers,
)
def _rounder_than_the_hole(d: Draft) -> float | None:
    return None if _has_round_ends(d) else _rounder_mm(d)


@bound(
    "plug_corner_radius_mm",
    "lower",
    "A round hole, or one with round ends, takes a plug whose ends are half circles.",
    formula="min(plug_w, plug_l) / 2",
    source=derived("Half circles of the same middle keep the same distance all round"),
    needs=("pocket.corner_radius_mm", "pocket.shape"),
    numbers=plug_numbers,
)
def _round_ends(d: Draft) -> float | None:
    return _half_mm(d) if _has_round_ends(d) else None


@bound(
    "plug_corner_radius_mm",
    "upper",
    "A corner is at most half a circle.",
    formula="min(plug_w, plug_l) / 2",
    source=derived("Plain geometry"),
    needs=("pocket.hole_width_mm",),
    numbers=plug_numbers,
)
def _at_most_half_a_circle(d: Draft) -> float:
    return _half_mm(d)
