"""The lathe work: two set-ups, of which the second holds on the finished body."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.finish import facet_cusp_mm
from geometry.making.card import Operation, Pass
from geometry.making.corner import facet_picture, facet_table, facets_for
from geometry.making.machine import Machine
from geometry.making.stock import FACING_MM, JAW_CLEARANCE_MM, SAW_ROOM_MM, StockPlan
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import practice

SETTING_MIN = 10.0
"""Setting a tool or a slide, once for a run of pads: judged, not measured."""
CLAMPING_MIN = 4.0
PASS_MIN = 0.3
"""Winding back and setting the dial between passes."""
TIMES_SOURCE = practice("Times beside the cut are judged from an unhurried small shop")
RUN_OUT_BAR_MM = 0.5
RUN_OUT_FINISHED_MM = 0.05
RUN_OUT_SOURCE = practice("Run-out that a careful three-jaw set-up reaches with a packing of paper")


@dataclass(frozen=True, slots=True)
class Lathe:
    """Writes the operations of the lathe for one pad."""

    pad: Pad
    c: Conditions
    shop: Shop
    plan: StockPlan
    m: Machine

    def operations(self) -> tuple[Operation, ...]:
        """All lathe work in order, from the sawn blank to the turned pad without its slot."""
        rows = self._top_first() if self.plan.order == "top_first" else self._foot_first()
        return tuple(rows)

    def _top_first(self) -> Iterator[Operation]:
        body = self.pad.top_height_mm - self.pad.seat_length_mm
        plain = self.plan.blank_mm
        yield self.face("Face the top", self.first_hold(), 1, plain, plain - FACING_MM, why=None)
        yield self.turn_body(self.first_hold(), length_mm=body + JAW_CLEARANCE_MM, set_up=1)
        yield self.break_edge("Break the top edge", self.first_hold(), 1)
        yield self.flip()
        yield self.face(
            "Face the foot to height",
            self.second_hold(),
            2,
            plain - FACING_MM,
            self.pad.overall_height_mm,
            why=said("The whole height is measured from the finished top, which lies against the jaws."),
        )
        yield from self.foot(self.second_hold(), set_up=2)

    def _foot_first(self) -> Iterator[Operation]:
        pad, plain = self.pad, self.plan.blank_mm
        yield self.face("Face the foot", self.first_hold(), 1, plain, plain - FACING_MM, why=None)
        yield self.turn_body(
            self.first_hold(), length_mm=pad.overall_height_mm + FACING_MM + self.plan.kerf_mm, set_up=1
        )
        yield from self.foot(self.first_hold(), set_up=1, from_body=True)
        yield self.saw_off()
        yield self.flip()
        yield self.face(
            "Face the top to height",
            self.second_hold(),
            2,
            pad.overall_height_mm + FACING_MM,
            pad.overall_height_mm,
            why=said("Only this light cut is left, so the short body can hold it."),
        )
        yield self.break_edge("Break the top edge", self.second_hold(), 2)

    def foot(self, holding: Sentence, *, set_up: int, from_body: bool = False) -> Iterator[Operation]:
        """Stem, seat, corner and lip, with the foot outwards."""
        start = self.pad.body_diameter_mm if from_body else self.plan.bar_mm
        if self.pad.has_stem:
            yield self.stem(holding, set_up, start)
        yield self.seat(holding, set_up, start)
        if self.pad.seat_corner_radius_mm > 0:
            yield self.corner(holding, set_up)
        if self.pad.edge_chamfer_mm > 0:
            yield self.break_edge("Break the lip's edge", holding, set_up)

    def first_hold(self) -> Sentence:
        """The sawn blank in the chuck."""
        return said(
            "Three-jaw chuck on the raw bar: {grip} in the jaws, {reach} standing out.",
            grip=self.plan.first_grip_mm,
            reach=self.plan.first_reach_mm,
        )

    def second_hold(self) -> Sentence:
        """The finished body in the chuck."""
        end = (
            "top against the jaws' steps"
            if self.plan.order == "top_first"
            else "foot inwards and free between the jaws, lip against their faces"
        )
        return said(
            f"Three-jaw chuck on the finished body, {end}, {{grip}} in the jaws, with paper under them.",
            grip=self.plan.second_grip_mm,
        )

    def flip(self) -> Operation:
        """Turn the pad round and make it run true."""
        return Operation(
            title="Flip, and indicate the run-out",
            set_up=2,
            holding=self.second_hold(),
            tool=said("Dial indicator on the cross slide"),
            steps=(
                said("Wrap the body in one turn of paper and grip it lightly."),
                said("Tap it back against the jaws until no feeler goes between."),
                said(
                    "Turn the spindle by hand with the indicator on the body close to the jaws: tap it until it"
                    " runs true to {limit}.",
                    limit=RUN_OUT_FINISHED_MM,
                ),
                said("Tighten no more than the cut needs, and indicate once more."),
            ),
            why=self.plan.why,
            watch=watch_for(self.c.material.family, "hold"),
            other_time_min=CLAMPING_MIN + 4,
        )

    def face(
        self, title: str, holding: Sentence, set_up: int, before_mm: float, after_mm: float, why: Sentence | None
    ) -> Operation:
        """Face an end down to a length."""
        across = self.plan.bar_mm if set_up == 1 or self.plan.order == "top_first" else self.pad.body_diameter_mm
        passes = self.m.length_passes(before_mm=before_mm, after_mm=after_mm, diameter_mm=across)
        is_height = abs(after_mm - self.pad.overall_height_mm) < 1e-9
        steps = [
            *self.by_dial(said("Touch the end with the tool and set the dial of the lengthwise slide to zero.")),
            said("Face from the outside in, by the passes below, to the middle: no pip may stay."),
        ]
        if set_up == 1:
            steps.insert(
                0,
                said(
                    "Turn the spindle by hand with the indicator on the bar: up to {limit} of run-out does no"
                    " harm here.",
                    limit=RUN_OUT_BAR_MM,
                ),
            )
        if is_height:
            steps.append(
                said("Measure the height before the last pass and set that pass by it: {height}.", height=after_mm)
            )
        return Operation(
            title=title,
            set_up=set_up,
            holding=holding,
            tool=said(f"Facing tool, {self.m.tool_name}, on centre height"),
            steps=tuple(steps),
            why=why,
            cut=self.m.turning(across),
            finish_cut=self.m.finishing(across),
            passes=passes,
            watch=watch_for(self.c.material.family, "turn", key=self.c.material.key),
            leaves_mm={"overall_height_mm": after_mm} if is_height else {},
            roughness_um=self.m.roughness_um,
            other_time_min=CLAMPING_MIN * (set_up == 1) + PASS_MIN * len(passes),
        )

    def turn_body(self, holding: Sentence, *, length_mm: float, set_up: int) -> Operation:
        """Turn the body to size in one go."""
        pad, bar = self.pad, self.plan.bar_mm
        passes = self.m.diameter_passes(before_mm=bar, after_mm=pad.body_diameter_mm, length_mm=length_mm)
        return Operation(
            title="Turn the body",
            set_up=set_up,
            holding=holding,
            tool=said(f"Right-hand turning tool, {self.m.tool_name}, small nose radius"),
            steps=(
                said("Set the stop so that the tool ends {length} from the faced end.", length=length_mm),
                *self.by_dial(
                    said("Touch the bar and set the cross dial to zero."),
                    said(
                        "Bars differ from their nominal size: measure after the first pass, and where the table says"
                        " otherwise"
                        " add or leave out a pass."
                    ),
                ),
                *self.by_measure(pad.body_diameter_mm),
            ),
            cut=self.m.turning(bar),
            finish_cut=self.m.finishing(pad.body_diameter_mm),
            passes=passes,
            watch=watch_for(self.c.material.family, "turn", "finish", key=self.c.material.key),
            leaves_mm={"body_diameter_mm": pad.body_diameter_mm},
            roughness_um=self.m.roughness_um,
            other_time_min=PASS_MIN * len(passes) + 2,
        )

    def by_dial(self, *sentences: Sentence) -> tuple[Sentence, ...]:
        """What is said only where slides are wound by hand."""
        return () if self.m.is_stepless else sentences

    def by_measure(self, diameter_mm: float) -> tuple[Sentence, ...]:
        """How the last pass is set."""
        if self.m.is_stepless:
            return (
                said(
                    "Rough, stop, let it cool, measure, and put the difference into the tool's wear offset: {size}.",
                    size=diameter_mm,
                ),
            )
        dial = "its half" if self.m.slide == "radius" else "the whole of it"
        return (
            said("After roughing stop, let it cool and measure."),
            said(
                f"Subtract {{size}} from what you measure; advance the dial by {dial} for the finishing pass.",
                size=diameter_mm,
            ),
        )

    def shoulder(self, *, start_mm: float, size_mm: float, length_mm: float) -> tuple[tuple[Pass, ...], Sentence]:
        """Passes down to a shoulder, roughed by turning or by facing, whichever takes fewer, with the words for it."""
        spare = self.m.finishing_mm
        rough = size_mm + 2 * spare
        turned = self.m.diameter_passes(before_mm=start_mm, after_mm=size_mm, length_mm=length_mm)
        faced = self.m.length_passes(before_mm=length_mm, after_mm=0.0, diameter_mm=start_mm, inner_mm=rough)
        if len(faced) + 1 >= len(turned):
            return turned, said(
                "Rough along by the passes below, each ending {spare} short of the shoulder. With the"
                " finishing pass go on to the"
                " shoulder and draw the tool straight out: that cuts its face.",
                spare=spare,
            )
        side = self.m.diameter_passes(before_mm=rough, after_mm=size_mm, length_mm=length_mm)
        passes = tuple(replace(p, number=n) for n, p in enumerate((*faced, *side), start=1))
        return passes, said(
            "Rough by facing the shoulder back by the passes below, each from the outside in to a"
            " diameter of {rough}; the figures are"
            " what still stands before the shoulder. Then finish the side in one pass along.",
            rough=rough,
        )

    def seat(self, holding: Sentence, set_up: int, start_mm: float) -> Operation:
        """The seat's diameter and its length to the lip."""
        pad = self.pad
        stop = pad.seat_length_mm + (pad.stem_length_mm if pad.has_stem else 0.0)
        return self._down_to_shoulder(
            "Turn the seat",
            holding,
            set_up,
            start_mm=start_mm,
            size_mm=pad.seat_diameter_mm,
            length_mm=pad.seat_length_mm,
            stop=said("The shoulder is the lip's face, {stop} from the end of the work.", stop=stop),
            last=said("Leave no fillet under the lip larger than the tool's nose."),
            leaves={"seat_diameter_mm": pad.seat_diameter_mm, "seat_length_mm": pad.seat_length_mm},
        )

    def stem(self, holding: Sentence, set_up: int, start_mm: float) -> Operation:
        """The stem; its shoulder is the seat's face."""
        pad = self.pad
        return self._down_to_shoulder(
            "Turn the stem",
            holding,
            set_up,
            start_mm=start_mm,
            size_mm=pad.stem_diameter_mm,
            length_mm=pad.stem_length_mm,
            stop=said("The shoulder is the seat's face, {stop} from the end of the work.", stop=pad.stem_length_mm),
            last=said(
                "The load stands on the seat's face: square to the axis, no pip, no groove. Break the stem's"
                " end with a file."
            ),
            leaves={"stem_diameter_mm": pad.stem_diameter_mm, "stem_length_mm": pad.stem_length_mm},
        )

    def _down_to_shoulder(
        self,
        title: str,
        holding: Sentence,
        set_up: int,
        *,
        start_mm: float,
        size_mm: float,
        length_mm: float,
        stop: Sentence,
        last: Sentence,
        leaves: dict[str, float],
    ) -> Operation:
        passes, how = self.shoulder(start_mm=start_mm, size_mm=size_mm, length_mm=length_mm)
        return Operation(
            title=title,
            set_up=set_up,
            holding=holding,
            tool=said(f"Knife tool, {self.m.tool_name}, its front edge square to the axis"),
            steps=(
                stop,
                *self.by_dial(said("Touch the outside and the end of the work, and set both dials to zero.")),
                how,
                *self.by_measure(size_mm),
                last,
            ),
            cut=self.m.turning(start_mm),
            finish_cut=self.m.finishing(size_mm),
            passes=passes,
            watch=watch_for(self.c.material.family, "turn", "finish", key=self.c.material.key),
            leaves_mm=leaves,
            roughness_um=self.m.roughness_um,
            other_time_min=PASS_MIN * len(passes) + 2,
        )

    def corner(self, holding: Sentence, set_up: int) -> Operation:
        """The seat's corner radius: straight cuts, then the file; one profile on a CNC lathe."""
        pad, radius = self.pad, self.pad.seat_corner_radius_mm
        if self.m.is_stepless:
            return Operation(
                title="Profile the seat's corner",
                set_up=set_up,
                holding=holding,
                tool=said(f"Profiling tool, {self.m.tool_name}"),
                steps=(
                    said(
                        "One arc of {radius}, from the seat's face to its side, nose radius compensated.", radius=radius
                    ),
                ),
                cut=self.m.finishing(pad.seat_diameter_mm),
                leaves_mm={"seat_corner_radius_mm": radius},
                other_time_min=1.0,
            )
        count = facets_for(radius_mm=radius, cusp_limit_mm=self.shop.cusp_limit_mm)
        cusp = facet_cusp_mm(radius_mm=radius, facets=count)
        return Operation(
            title="Cut the seat's corner radius",
            set_up=set_up,
            holding=holding,
            tool=said(
                f"Sharp pointed tool, {self.m.tool_name}, on the compound slide; then a fine file and the radius gauge"
            ),
            steps=(
                said(
                    "Touch the finished seat and set the cross dial to zero; touch the face and set the"
                    " lengthwise dial to zero."
                ),
                said(
                    "For each row of the table swivel the compound to its angle from the axis, set the tool to"
                    " the row's start, and"
                    " feed the compound by hand to the row's end. Take it in light cuts of {rough} or less.",
                    rough=self.m.roughing_mm,
                ),
                said(
                    "Every cut touches the true arc of {radius} from outside. Ridges up to {cusp} stand between"
                    " the cuts.",
                    radius=radius,
                    cusp=cusp,
                ),
                said(
                    "File the ridges off until the gauge of {radius} fits without a gap in its middle; never file"
                    " past the arc.",
                    radius=radius,
                ),
            ),
            why=said(
                "The ridges stand outside the arc. Left on, they meet the cup's corner before the seat meets its floor."
            ),
            cut=self.m.finishing(pad.seat_diameter_mm),
            tables=(
                facet_table(seat_diameter_mm=pad.seat_diameter_mm, radius_mm=radius, facets=count, slide=self.m.slide),
            ),
            picture=facet_picture(radius_mm=radius, facets=count),
            watch=watch_for(self.c.material.family, "edges"),
            leaves_mm={"seat_corner_radius_mm": radius},
            other_time_min=3.0 * count + 5,
        )

    def break_edge(self, title: str, holding: Sentence, set_up: int) -> Operation:
        """One 45° edge break of the body."""
        size = self.pad.edge_chamfer_mm
        return Operation(
            title=title,
            set_up=set_up,
            holding=holding,
            tool=said("Tool ground to 45°, or a file held at 45°"),
            steps=(
                *self.by_dial(said("Touch the edge, then feed in {size} square to either face.", size=size)),
                said("Leave a break of {size} × 45°.", size=size),
            ),
            cut=self.m.finishing(self.pad.body_diameter_mm),
            watch=watch_for(self.c.material.family, "edges"),
            leaves_mm={"edge_chamfer_mm": size},
            other_time_min=1.5,
        )

    def saw_off(self) -> Operation:
        """Part the turned pad from the bar."""
        return Operation(
            title="Saw the pad off the bar",
            set_up=1,
            holding=said("The bar still in the chuck, spindle locked; or the bar in a vice with soft jaws."),
            tool=said("Fine saw"),
            steps=(
                said(
                    "Saw {height} from the foot, so that {spare} is left to face. Keep {room} from the jaws.",
                    height=self.pad.overall_height_mm + FACING_MM,
                    spare=FACING_MM,
                    room=SAW_ROOM_MM,
                ),
            ),
            watch=watch_for(self.c.material.family, "saw"),
            other_time_min=4.0,
        )
