"""The lathe work: two set-ups, of which the second holds on the finished body."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import FIRST, SECOND, Operation
from geometry.making.facing import (
    CLAMPING_MIN,
    RUN_OUT_FINISHED_MM,
    face_to_height,
    facing_operation,
    first_face,
)
from geometry.making.foot import foot_operations, recess_operation
from geometry.making.foot_cuts import foot_cuts, makes_seat_face
from geometry.making.kit import CALIPER, INDICATOR
from geometry.making.last_pass import by_dial, last_pass
from geometry.making.limits import limit_sentence
from geometry.making.machine import Machine
from geometry.making.plug_turned import boss_mm, neck_operation, plug_step
from geometry.making.shoulders import PASS_MIN, step_operation
from geometry.making.stock import StockPlan, turned_foot_first_mm, turned_top_first_mm
from geometry.making.turned_edges import corner_operation, edge_operation, saw_off_operation
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import practice

TIMES_SOURCE = practice("Times beside the cut are judged from an unhurried small shop")
_STOP = "Set the carriage's stop so that the tool ends {length} from the faced end."


@dataclass(frozen=True, slots=True)
class Lathe:
    """Writes the operations of the lathe for one pad."""

    pad: Pad
    c: Conditions
    shop: Shop
    plan: StockPlan
    m: Machine

    def operations(self) -> tuple[Operation, ...]:
        """All lathe work in order, from the sawn blank to the turned pad without what is milled into it."""
        return tuple(self._top_first() if self.plan.order == "top_first" else self._foot_first())

    def _top_first(self) -> Iterator[Operation]:
        pad, c, m, hold = self.pad, self.c, self.m, self.first_hold()
        yield facing_operation(first_face("Face the top", hold, self.plan, m), pad, c, m)
        yield self.turn_body(length_mm=turned_top_first_mm(pad))
        if pad.has_plug:
            yield step_operation(plug_step(pad), c, m, holding=hold, set_up=FIRST)
            yield from self.break_plug_edge(hold, FIRST)
        yield from self.break_edge("Break the top edge", hold, FIRST)
        if self.plan.is_stub_sawn:
            yield saw_off_operation(pad, c, self.plan)
        yield self.flip()
        is_seat_face = not pad.has_slot and not any(makes_seat_face(pad, cut) for cut in foot_cuts(pad))
        facing = face_to_height(
            pad,
            self.plan,
            m,
            holding=self.second_hold(),
            left_out_mm=pad.plug_height_mm,
            across_mm=self.plan.bar_mm,
            leaves=("overall_height_mm", *(("web_mm",) if is_seat_face else ())),
        )
        yield facing_operation(facing, pad, c, m)
        yield from self.foot(self.second_hold(), set_up=SECOND, start_mm=self.plan.bar_mm)

    def _foot_first(self) -> Iterator[Operation]:
        pad, c, m, hold = self.pad, self.c, self.m, self.first_hold()
        yield facing_operation(first_face("Face the foot", hold, self.plan, m), pad, c, m)
        yield self.turn_body(length_mm=turned_foot_first_mm(pad, self.plan.kerf_mm))
        yield from self.foot(hold, set_up=FIRST, start_mm=pad.body_diameter_mm)
        if pad.has_plug:
            yield neck_operation(pad, c, self.plan, m, holding=hold)
            yield from self.break_edge("Break the top edge", hold, FIRST)
        yield saw_off_operation(pad, c, self.plan)
        yield self.flip()
        made = {"overall_height_mm": True, "plug_height_mm": pad.has_plug, "web_mm": not (pad.has_plug or pad.has_slot)}
        facing = face_to_height(
            pad,
            self.plan,
            m,
            holding=self.second_hold(),
            left_out_mm=pad.overall_height_mm - pad.top_height_mm + pad.foot_bottom_mm,
            across_mm=boss_mm(pad) if pad.has_plug else pad.body_diameter_mm,
            leaves=tuple(name for name, is_made in made.items() if is_made),
        )
        yield facing_operation(facing, pad, c, m)
        if pad.has_plug:
            yield from self.break_plug_edge(self.second_hold(), SECOND)
        else:
            yield from self.break_edge("Break the top edge", self.second_hold(), SECOND)

    def foot(self, holding: Sentence, *, set_up: int, start_mm: float) -> Iterator[Operation]:
        """Stem, seat, skirt, corner, recess and lip, with the foot outwards."""
        pad, c, m = self.pad, self.c, self.m
        yield from foot_operations(
            pad, c, m, holding=holding, set_up=set_up, start_mm=start_mm, is_top_done=self.plan.order == "top_first"
        )
        if pad.seat_corner_radius_mm > 0:
            yield corner_operation(pad, c, self.shop, m, holding=holding, set_up=set_up)
        if pad.has_recess:
            yield recess_operation(pad, c, m, holding=holding, set_up=set_up)
        yield from self.break_edge(f"Break the {'skirt' if pad.has_skirt else 'lip'}'s edge", holding, set_up)

    def break_edge(self, title: str, holding: Sentence, set_up: int) -> Iterator[Operation]:
        """One edge break of the body, where it has any."""
        yield from self._broken(title, self.pad.body_diameter_mm, holding, set_up)

    def break_plug_edge(self, holding: Sentence, set_up: int) -> Iterator[Operation]:
        """The edge break of a round plug's top; any other plug gets its own when its sides are milled."""
        if self.pad.plug_is_round:
            yield from self._broken("Break the plug's edge", self.pad.plug_width_mm, holding, set_up)

    def _broken(self, title: str, across_mm: float, holding: Sentence, set_up: int) -> Iterator[Operation]:
        if self.pad.edge_chamfer_mm > 0:
            yield edge_operation(
                self.pad, self.c, self.m, title=title, across_mm=across_mm, holding=holding, set_up=set_up
            )

    def first_hold(self) -> Sentence:
        """The sawn blank in the chuck."""
        return said(
            "Three-jaw chuck on the raw bar: {grip} in the jaws, {reach} standing out.",
            grip=self.plan.first_grip_mm,
            reach=self.plan.first_reach_mm,
        )

    def second_hold(self) -> Sentence:
        """The finished body in the chuck."""
        pad = self.pad
        end = f"{self.inner_face()} against the jaws' steps"
        if self.plan.order == "foot_first":
            end = f"foot inwards and free between the jaws, {end}"
        elif pad.has_plug:
            end = f"plug inwards and free between the jaws, {end}"
        return said(
            f"Three-jaw chuck on the finished body, {end}, {{grip}} in the jaws, with paper under them.",
            grip=self.plan.second_grip_mm,
        )

    def inner_face(self) -> str:
        """Which face lies against the jaws in the second set-up."""
        if self.plan.order == "top_first":
            return "shoulder" if self.pad.has_plug else "top"
        return "skirt's end" if self.pad.has_skirt else "lip"

    def flip(self) -> Operation:
        """Turn the pad round and make it run true."""
        return Operation(
            title="Flip, and indicate the run-out",
            set_up=SECOND,
            holding=self.second_hold(),
            tools=(INDICATOR, said("Packing paper")),
            steps=tuple(self._flip_steps()),
            why=self.plan.why,
            watch=watch_for(self.c.material.family, "hold"),
            other_time_min=CLAMPING_MIN + 4,
        )

    def _flip_steps(self) -> Iterator[Sentence]:
        pad, end = self.pad, self.inner_face()
        inwards = pad.plug_height_mm if self.plan.order == "top_first" else pad.foot_bottom_mm + pad.foot_depth_mm
        if pad.has_skirt and self.plan.order == "foot_first":
            yield said(
                "The jaws would press the skirt in: turn a ring of scrap that just slides into its {bore} and over what stands in"
                " it, and put it in under the jaws.",
                bore=pad.skirt_bore_mm,
            )
        yield said("Wrap the body in one turn of paper and grip it lightly.")
        yield said(f"Tap it back against the jaws' steps until no feeler goes between the {end} and them.")
        yield said(
            f"Where the steps are not {{grip}} deep, or leave no room for the {{inwards}} that stand inwards of the {end}, put"
            " three equal parallels between it and the chuck's face instead, measure to them, and take them out before the"
            " spindle turns."
            if inwards > 0
            else f"Where the steps are not {{grip}} deep, put three equal parallels between the {end} and the chuck's face"
            " instead, measure to them, and take them out before the spindle turns.",
            grip=self.plan.second_grip_mm,
            inwards=inwards,
        )
        yield said(
            "Turn the spindle by hand with the indicator on the body close to the jaws: tap it until it runs true to {limit}.",
            limit=RUN_OUT_FINISHED_MM,
        )
        yield said("Tighten no more than the cut needs, and indicate once more.")

    def turn_body(self, *, length_mm: float) -> Operation:
        """Turn the body to size in one go."""
        pad, bar = self.pad, self.plan.bar_mm
        passes = self.m.diameter_passes(before_mm=bar, after_mm=pad.body_diameter_mm, length_mm=length_mm)
        nose = self.m.nose_radius_mm
        how = "Turn up to {length} from the faced end." if self.m.is_stepless else _STOP
        return Operation(
            title="Turn the body",
            set_up=FIRST,
            holding=self.first_hold(),
            tools=(said(f"Right-hand turning tool, {self.m.tool_name}, nose radius {{nose}}", nose=nose), CALIPER),
            steps=(
                said(how, length=length_mm),
                *by_dial(
                    self.m,
                    said("Touch the bar and set the cross dial to zero."),
                    said(
                        "Bars differ from their nominal size: measure after the first pass, and where the table says"
                        " otherwise add or leave out a pass."
                    ),
                ),
                *last_pass(self.m, pad.body_diameter_mm),
                limit_sentence(pad, "body_diameter_mm", "The body"),
            ),
            cut=self.m.turning(bar),
            finish_cut=self.m.finishing(pad.body_diameter_mm),
            passes=passes,
            watch=watch_for(self.c.material.family, "turn", "finish", key=self.c.material.key),
            leaves_mm={"body_diameter_mm": pad.body_diameter_mm},
            roughness_um=self.m.roughness_um,
            other_time_min=PASS_MIN * len(passes) + 2,
        )
