"""Gauges of what was measured: the hollow, plate or bore of the jack, and the hole in the car's body, in true size."""

from collections.abc import Iterator

from geometry.design import Design
from geometry.drawing.facts import Units
from geometry.heads.plug.fields import PlugFacts
from geometry.making.own_words import way_of
from geometry.outline import Outline, corner, polyline
from geometry.packet.gauge_shapes import HANDLE_MM, SHOULDER_MM, Gauge, bridge, closed
from geometry.packet.words import sizes

BOSS_GAP_MM = 1.0
"""Left free around and above a boss on the cup's floor: chosen for card, no source."""
DEEPEST_MM = 30.0
"""A bore or a hole is tried no deeper than this: chosen for card, no source."""
_AGAIN = "where light shows, or it will not go {way}, measure again before cutting anything."
_HOLLOWS = {
    "cup": ("Cup gauge: into the jack's cup", "The cup", "in the cup", "Floor, walls and rim"),
    "land": (
        "Saddle gauge: in between the jack's teeth",
        "The room between the teeth",
        "between the teeth",
        "Land, teeth and their tips",
    ),
    "ring": ("Ring gauge: into the ring on the plate", "The ring", "in the ring", "Plate, ring and the ring's top"),
    "recess": (
        "Recess gauge: into the plate's recess",
        "The recess",
        "in the recess",
        "Floor, side and the plate around it",
    ),
}
"""By the way in which a seat goes in: title, what was measured, where the gauge stands, and what it meets."""


def jack_gauge(design: Design, units: Units) -> Gauge:
    """The gauge of the jack's side: of a hollow for the seat, a plate or teeth for a skirt, or a bore for the stem."""
    foot = design.conditions.foot
    if foot.locates == "skirt":
        return _around(design, units)
    if foot.locates == "stem":
        return _bore(design, units)
    key = foot.own_key("jack.cup_corner_radius_mm").removeprefix("jack.")
    return cup_gauge(
        bore_mm=foot.bore_mm,
        depth_mm=foot.depth_mm,
        corner_radius_mm=foot.corner_radius_mm,
        units=units,
        corner_is_measured=getattr(design.measurements.jack, key, None) is not None,
        boss_mm=(foot.boss_diameter_mm, foot.boss_height_mm) if foot.boss_height_mm > 0 else None,
        way=way_of(foot),
    )


def cup_gauge(
    *,
    bore_mm: float,
    depth_mm: float,
    corner_radius_mm: float,
    units: Units,
    corner_is_measured: bool = True,
    boss_mm: tuple[float, float] | None = None,
    way: str = "cup",
) -> Gauge:
    """The hollow as measured, with shoulders that meet its top and a notch over a boss (width, height)."""
    title, measured, within, meets = _HOLLOWS[way]
    doubt = "" if corner_is_measured else " assumed: measure it"
    boss = (
        f" The notch clears the boss of {sizes(units, *boss_mm)} by {sizes(units, BOSS_GAP_MM)} all round: where it touches,"
        " measure the boss again."
        if boss_mm
        else ""
    )
    use = (
        f"{measured} as measured: across and depth {sizes(units, bore_mm, depth_mm)}; corner R"
        f" {sizes(units, corner_radius_mm)}{doubt}. Stand it {within}, across and along. {meets} should meet it all at once;"
        f" {_AGAIN.format(way='in')}{boss}"
    )
    return _hollow("cup", title, use, (bore_mm, depth_mm, corner_radius_mm), boss_mm)


def _hollow(
    key: str,
    title: str,
    use: str,
    size_mm: tuple[float, float, float],
    boss_mm: tuple[float, float] | None = None,
) -> Gauge:
    """A piece that fills a hollow (across, depth, corner radius), its shoulders on what is around it."""
    (across, depth, radius), notch, roof = size_mm, 0.0, 0.0
    half = across / 2
    if boss_mm:
        notch, roof = min(boss_mm[0] / 2 + BOSS_GAP_MM, half - radius), boss_mm[1] + BOSS_GAP_MM
    out, top = half + SHOULDER_MM, max(depth, roof) + HANDLE_MM
    right: Outline = (
        *polyline([(0, roof), (notch, roof), (notch, 0), (half - radius, 0)]),
        *corner((half - radius, 0), (half, radius), (half - radius, radius)),
        *polyline([(half, radius), (half, depth), (out, depth), (out, top), (0, top)]),
    )
    outline, halved = closed(right)
    return Gauge(key, title, use, outline, halved)


def _around(design: Design, units: Units) -> Gauge:
    """A bridge over the plate or over the teeth as measured."""
    foot = design.conditions.foot
    plain = way_of(foot) == "edge"
    what, over = ("plate", "the plate") if plain else ("saddle", "the teeth")
    use = (
        f"{'The plate' if plain else 'The teeth'} as measured: {sizes(units, foot.bore_mm)} across, free for"
        f" {sizes(units, foot.free_edge_mm)} below. Put it over {over}, in two directions. Both legs should touch and its"
        f" bridge lie on {over}; {_AGAIN.format(way='over')}"
    )
    depth = min(foot.free_edge_mm, DEEPEST_MM)
    return bridge(what, f"{what.capitalize()} gauge: over {over}", use, foot.bore_mm, (depth, SHOULDER_MM))


def _bore(design: Design, units: Units) -> Gauge:
    """A tongue as wide as the bore as measured."""
    foot = design.conditions.foot
    depth = DEEPEST_MM if foot.hole_depth_mm is None else min(foot.hole_depth_mm, DEEPEST_MM)
    use = (
        f"The bore as measured: {sizes(units, foot.bore_mm)} across, tried {sizes(units, depth)} deep. Stand it in the bore,"
        " in two directions. Both sides should touch and its shoulders lie on the bore's rim;"
        f" {_AGAIN.format(way='in')}"
    )
    return _hollow("bore", "Bore gauge: into the jack's bore", use, (foot.bore_mm, depth, 0.0))


def car_gauges(design: Design, units: Units) -> Iterator[Gauge]:
    """A tongue for each way across the hole in the body as measured; nothing for a seam or a face."""
    hole = design.conditions.head
    if not isinstance(hole, PlugFacts):
        return
    depth = min(hole.hole_depth_mm, DEEPEST_MM)
    ways = [("across the hole", hole.hole_width_mm)]
    if not hole.is_round:
        ways.append(("along the hole", hole.hole_length_mm))
    for number, (way, across) in enumerate(ways):
        use = (
            f"The hole in the body as measured: {sizes(units, across)} {way}, tried {sizes(units, depth)} deep. Both sides"
            f" should touch and its shoulders meet the hole's rim; {_AGAIN.format(way='in')}"
        )
        yield _hollow(f"hole_{number + 1}", f"Hole gauge: {way}", use, (across, depth, 0.0))
