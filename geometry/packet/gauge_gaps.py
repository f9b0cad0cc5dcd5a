"""Gap gauges: a pair for each round size that is filed by hand, and for a plug; the wide one goes over, the narrow one does not."""

from collections.abc import Iterator

from geometry.drawing.facts import Units
from geometry.making.gauge_limits import ROUND_SIZES, gauge_limits_mm, gauge_title
from geometry.making.how_measured import skirt_gap_mm
from geometry.packet.gauge_shapes import LEAST_CARD_MM, SHOULDER_MM, SKIRT_SHARE, Gauge, bridge
from geometry.packet.words import sizes
from geometry.pad import Pad

PAST_THE_MIDDLE_MM = 4.0
"""How far the legs of a gauge reach past the widest place of something round: chosen for card, no source."""
_ALL_ROUND = "Tried all round: a place where it stops is still too thick."
_ON_SHOULDER = "Its legs meet the shoulder as its bridge meets the plug's top: if not, measure the height."


def round_gauges(pad: Pad, units: Units) -> Iterator[Gauge]:
    """A pair for each of the diameters that are filed against a gauge; a seat inside a skirt is not filed."""
    for name in ROUND_SIZES:
        if getattr(pad, name) > 0 and not pad.has_skirt:
            yield from _pair(pad, name, units, getattr(pad, name) / 2 + PAST_THE_MIDDLE_MM, _ALL_ROUND)


def hidden_seat_gauges(pad: Pad, units: Units) -> Iterator[Gauge]:
    """A pair for a seat that stands inside a skirt, where few instruments reach; none where card would be too narrow."""
    leg = SKIRT_SHARE * skirt_gap_mm(pad)
    if pad.has_skirt and leg >= LEAST_CARD_MM:
        depth = pad.seat_length_mm + pad.foot_depth_mm + PAST_THE_MIDDLE_MM
        how = f"Its legs go up to the lip between seat and skirt. {_ALL_ROUND}"
        yield from _pair(pad, "seat_diameter_mm", units, depth, how, leg_mm=leg)


def plug_gauges(pad: Pad, units: Units) -> Iterator[Gauge]:
    """A pair for each width of a plug; the wide one sits on plug and shoulder at once."""
    if not pad.has_plug:
        return
    names = ("plug_width_mm",) if pad.plug_is_round else ("plug_width_mm", "plug_length_mm")
    tried = _ALL_ROUND if pad.plug_is_round else "Slid along from end to end."
    for name in names:
        yield from _pair(pad, name, units, pad.plug_height_mm, f"{tried} {_ON_SHOULDER}")


def _pair(pad: Pad, name: str, units: Units, depth_mm: float, how: str, leg_mm: float = SHOULDER_MM) -> Iterator[Gauge]:
    """The gauge at the high limit, which goes over, and the one at the low limit, which does not."""
    goes, stops = gauge_limits_mm(pad, name)
    key, title = f"gap_{name.removesuffix('_mm')}", gauge_title(name, pad)
    yield bridge(
        key, f"{title}: goes over", f"As wide as the high limit, {sizes(units, goes)}. {how}", goes, (depth_mm, leg_mm)
    )
    words = f"As wide as the low limit, {sizes(units, stops)}. It must not go over anywhere: where it does, too much is off."
    if stops > 0:
        yield bridge(f"{key}_low", f"{title}: does not go over", words, stops, (depth_mm, leg_mm))
