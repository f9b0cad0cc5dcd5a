"""This shop's machines as the operations need them: speeds that can be set, dials, and how deep a cut may go."""

from dataclasses import dataclass, replace
from math import ceil, floor

from geometry.conditions import Conditions
from geometry.dials import Slide, dial_infeed_mm, diameter_after_mm, pass_depths_mm
from geometry.document.shop import DIVISION_MM, FINISHING_MM, ROUGHING_MM, Shop
from geometry.finish import roughness_average_um
from geometry.machining import (
    cutting_speed_m_min,
    machine_speed_rpm,
    pass_time_min,
    spindle_speed_rpm,
    table_feed_mm_min,
)
from geometry.making.card import Axis, Cut, Pass
from geometry.making.cutting import (
    FINISH_FEED_MM_REV,
    ROUGH_FEED_MM_REV,
    SPEEDS,
    TOOTH_FEED_SOURCE,
    Speeds,
    tooth_feed_mm,
)
from geometry.materials import Family
from geometry.provenance import Source
from geometry.units import inch_to_mm

_HAIR = 1e-6
"""A whole number of lines that binary numbers make a hair more or less is that whole number."""
_NOTHING_MM = 1e-9
_LEAST_LINES = 2
"""A pass of fewer lines of the dial than this is set between the lines."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Machine:
    """What the shop sets and reads; lengths in mm."""

    lathe_rpm: tuple[float, ...]
    mill_rpm: tuple[float, ...]
    is_stepless: bool
    """A CNC machine sets any speed up to its fastest."""
    slide: Slide
    tool_name: str
    speeds: Speeds
    roughing_mm: float
    finishing_mm: float
    division_mm: float
    nose_radius_mm: float
    teeth: int

    @property
    def infeed_grid_mm(self) -> float:
        """The infeed that one line of the cross slide's dial stands for."""
        return self.division_mm if self.slide == "radius" else self.division_mm / 2

    @property
    def roughness_um(self) -> float:
        """Estimated average roughness of a finishing pass."""
        return roughness_average_um(feed_mm_rev=FINISH_FEED_MM_REV, nose_radius_mm=self.nose_radius_mm)

    def turning(self, diameter_mm: float, *, feed_mm_rev: float = ROUGH_FEED_MM_REV) -> Cut:
        """Speed and feed for turning or facing from a diameter."""
        return self._cut(diameter_mm, self.speeds.turning, self.lathe_rpm, feed_mm_rev=feed_mm_rev)

    def finishing(self, diameter_mm: float) -> Cut:
        """Speed and feed of a finishing pass at a diameter."""
        return self.turning(diameter_mm, feed_mm_rev=FINISH_FEED_MM_REV)

    def milling(self, cutter_mm: float) -> Cut:
        """Speed and table feed of an end mill."""
        plain = self._cut(cutter_mm, self.speeds.milling, self.mill_rpm, feed_mm_rev=None)
        feed = table_feed_mm_min(spindle_speed_rpm=plain.rpm, teeth=self.teeth, feed_mm_tooth=tooth_feed_mm(cutter_mm))
        return replace(plain, table_feed_mm_min=feed, source=TOOTH_FEED_SOURCE)

    def drilling(self, drill_mm: float, *, share: float, feed_mm_rev: float, source: Source) -> Cut:
        """Speed and feed of a drill, which turns at a share of an end mill's speed."""
        plain = self._cut(drill_mm, share * self.speeds.milling, self.mill_rpm, feed_mm_rev=feed_mm_rev)
        return replace(plain, source=source)

    def _cut(self, diameter_mm: float, speed: float, steps: tuple[float, ...], *, feed_mm_rev: float | None) -> Cut:
        wanted = spindle_speed_rpm(cutting_speed_m_min=speed, diameter_mm=diameter_mm)
        fastest = max(steps)
        found = min(wanted, fastest) if self.is_stepless else None
        found = found or machine_speed_rpm(wanted_rpm=wanted, machine_speeds_rpm=steps)
        rpm = min(steps) if found is None else found
        return Cut(
            wanted_speed_m_min=speed,
            diameter_mm=diameter_mm,
            wanted_rpm=wanted,
            rpm=rpm,
            speed_m_min=cutting_speed_m_min(spindle_speed_rpm=rpm, diameter_mm=diameter_mm),
            is_too_fast=found is None,
            feed_mm_rev=feed_mm_rev,
            source=self.speeds.source,
        )

    def diameter_passes(self, *, before_mm: float, after_mm: float, length_mm: float) -> tuple[Pass, ...]:
        """Passes that bring a diameter down, or a bore up, to its size over a length, the last one fine."""
        total = abs(before_mm - after_mm) / 2
        if total <= _NOTHING_MM:
            return ()
        axis: Axis = "diameter" if after_mm < before_mm else "bore"
        inwards = 1 if axis == "diameter" else -1
        made: list[Pass] = []
        size = before_mm
        for depth, is_last in _with_last(self.depths_mm(total, grid_mm=self.infeed_grid_mm)):
            new = after_mm if is_last else diameter_after_mm(diameter_mm=size, infeed_mm=inwards * depth)
            reading = abs(dial_infeed_mm(diameter_mm=before_mm, wanted_diameter_mm=new, slide=self.slide))
            made.append(
                self._pass(
                    axis,
                    made,
                    is_last=is_last,
                    before_mm=size,
                    after_mm=new,
                    infeed_mm=depth,
                    reading_mm=reading,
                    length_mm=length_mm,
                    diameter_mm=max(size, new),
                )
            )
            size = new
        return tuple(made)

    def length_passes(
        self, *, before_mm: float, after_mm: float, diameter_mm: float, inner_mm: float = 0.0
    ) -> tuple[Pass, ...]:
        """Facing passes that bring a length down, from a diameter in to another one, the last one fine."""
        total = before_mm - after_mm
        if total <= _NOTHING_MM:
            return ()
        made: list[Pass] = []
        length = before_mm
        for depth, is_last in _with_last(self.depths_mm(total, grid_mm=self.division_mm)):
            shorter = after_mm if is_last else length - depth
            radial = (diameter_mm - inner_mm) / 2
            made.append(
                self._pass(
                    "length",
                    made,
                    is_last=is_last,
                    before_mm=length,
                    after_mm=shorter,
                    infeed_mm=depth,
                    reading_mm=before_mm - shorter,
                    length_mm=radial,
                    diameter_mm=diameter_mm,
                )
            )
            length = shorter
        return tuple(made)

    def _pass(
        self,
        axis: Axis,
        made: list[Pass],
        *,
        is_last: bool,
        before_mm: float,
        after_mm: float,
        infeed_mm: float,
        reading_mm: float,
        length_mm: float,
        diameter_mm: float,
    ) -> Pass:
        """The pass after those that are made; ``diameter_mm`` is where its speed is reckoned, ``length_mm`` how far it cuts."""
        cut = self.finishing(diameter_mm) if is_last else self.turning(diameter_mm)
        return Pass(
            number=len(made) + 1,
            kind="finish" if is_last else "rough",
            axis=axis,
            before_mm=before_mm,
            after_mm=after_mm,
            infeed_mm=infeed_mm,
            dial_step_mm=reading_mm - (made[-1].dial_reading_mm if made else 0.0),
            dial_reading_mm=reading_mm,
            length_mm=length_mm,
            time_min=pass_time_min(
                length_mm=length_mm, feed_mm_rev=cut.feed_mm_rev or ROUGH_FEED_MM_REV, spindle_speed_rpm=cut.rpm
            ),
        )

    def depths_mm(self, total_mm: float, *, grid_mm: float, greatest_mm: float | None = None) -> tuple[float, ...]:
        """Depths of the passes: whole lines of the dial, all alike, but for the first, which takes the odd part, and the last.

        The odd part of a bar goes with the first cut, so that every later step of the dial is the same round figure. Where
        the cuts are finer than two lines of the dial, they are all alike and set between the lines.
        """
        greatest = self.roughing_mm if greatest_mm is None else greatest_mm
        finishing = min(self.finishing_mm, greatest)
        if total_mm <= finishing + _HAIR:
            return (total_mm,)
        plain = pass_depths_mm(total_mm=total_mm, greatest_depth_mm=greatest, finishing_depth_mm=finishing)
        roughing = total_mm - finishing
        deepest = floor(greatest / grid_mm + _HAIR)
        if deepest < _LEAST_LINES:
            return plain
        count = ceil(roughing / (deepest * grid_mm) - _HAIR)
        depth = min(deepest, ceil(roughing / count / grid_mm - _HAIR)) * grid_mm
        later = ceil(roughing / depth - _HAIR) - 1
        return (roughing - later * depth, *(depth,) * later, plain[-1])


def machine_of(conditions: Conditions, shop: Shop) -> Machine:
    """The shop's machines, for the material that is cut."""
    system = "inch" if conditions.is_inch else "metric"
    family: Family = conditions.material.family
    return Machine(
        lathe_rpm=shop.lathe_speeds_used_rpm,
        mill_rpm=shop.mill_speeds_used_rpm,
        is_stepless=conditions.process == "cnc",
        slide=shop.slide,
        tool_name="high-speed steel, ground sharp" if shop.tool == "hss" else "carbide insert, polished and sharp",
        speeds=SPEEDS[family, shop.tool],
        roughing_mm=ROUGHING_MM[system] if shop.largest_cut_mm is None else shop.largest_cut_mm,
        finishing_mm=FINISHING_MM[system],
        division_mm=DIVISION_MM[system] if conditions.process != "cnc" else inch_to_mm(0.0001),
        nose_radius_mm=shop.nose_radius_mm,
        teeth=shop.cutter_teeth,
    )


def _with_last(depths: tuple[float, ...]) -> list[tuple[float, bool]]:
    return [(depth, i == len(depths) - 1) for i, depth in enumerate(depths)]
