"""The lathe work: two set-ups, of which the second holds on the finished body."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation
from geometry.making.kit import CALIPER, INDICATOR
from geometry.making.last_pass import by_dial, by_measure
from geometry.making.machine import Machine
from geometry.making.recess import recess_operation
from geometry.making.shoulders import PASS_MIN, seat_operation, stem_operation
from geometry.making.stock import FACING_MM, JAW_CLEARANCE_MM, StockPlan
from geometry.making.turned_edges import corner_operation, edge_operation, saw_off_operation
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import practice

CLAMPING_MIN = 4.0
TIMES_SOURCE = practice("Times beside the cut are judged from an unhurried small shop")
RUN_OUT_BAR_MM = 0.5
RUN_OUT_FINISHED_MM = 0.05
RUN_OUT_SOURCE = practice("Run-out that a careful three-jaw set-up reaches with a packing of paper")
_LENGTHWISE = said(
    "The lengthwise slide is the compound, set along the axis, with the carriage locked; or the carriage, where it has a"
    " dial or an indicator."
)


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
        yield self.face_blank("Face the top")
        yield self.turn_body(length_mm=body + JAW_CLEARANCE_MM)
        yield self.break_edge("Break the top edge", self.first_hold(), 1)
        yield self.flip()
        yield self.face_to_height(
            "Face the foot to height",
            before_mm=plain - FACING_MM,
            across_mm=self.plan.bar_mm,
            from_steps=said(
                "Measure with the depth rod from the end to the jaws' steps, which the top lies against, before the last"
                " pass, and set that pass by it: {height}.",
                height=self.pad.overall_height_mm,
            ),
            why=said("The whole height is measured from the finished top, which lies against the jaws."),
        )
        yield from self.foot(self.second_hold(), set_up=2, start_mm=self.plan.bar_mm)

    def _foot_first(self) -> Iterator[Operation]:
        pad = self.pad
        yield self.face_blank("Face the foot")
        yield self.turn_body(length_mm=pad.overall_height_mm + FACING_MM + self.plan.kerf_mm)
        yield from self.foot(self.first_hold(), set_up=1, start_mm=pad.body_diameter_mm)
        yield saw_off_operation(pad, self.c, self.plan)
        yield self.flip()
        yield self.face_to_height(
            "Face the top to height",
            before_mm=pad.overall_height_mm + FACING_MM,
            across_mm=pad.body_diameter_mm,
            from_steps=said(
                "Measure with the depth rod from the end to the jaws' steps, which the lip lies against, before the last"
                " pass, and set that pass by it: {body}, which makes the whole height {height}.",
                body=pad.top_height_mm - pad.seat_length_mm,
                height=pad.overall_height_mm,
            ),
            why=said("Only this light cut is left, so the short body can hold it."),
        )
        yield self.break_edge("Break the top edge", self.second_hold(), 2)

    def foot(self, holding: Sentence, *, set_up: int, start_mm: float) -> Iterator[Operation]:
        """Stem, seat, corner and lip, with the foot outwards."""
        pad, c, m = self.pad, self.c, self.m
        if pad.has_stem:
            yield stem_operation(pad, c, m, holding=holding, set_up=set_up, start_mm=start_mm)
        yield seat_operation(pad, c, m, holding=holding, set_up=set_up, start_mm=start_mm)
        if pad.seat_corner_radius_mm > 0:
            yield corner_operation(pad, c, self.shop, m, holding=holding, set_up=set_up)
        if pad.has_recess:
            yield recess_operation(pad, c, m, holding=holding, set_up=set_up)
        if pad.edge_chamfer_mm > 0:
            yield self.break_edge("Break the lip's edge", holding, set_up)

    def break_edge(self, title: str, holding: Sentence, set_up: int) -> Operation:
        """One edge break."""
        return edge_operation(self.pad, self.c, self.m, title=title, holding=holding, set_up=set_up)

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
            else "foot inwards and free between the jaws, lip against the jaws' steps"
        )
        return said(
            f"Three-jaw chuck on the finished body, {end}, {{grip}} in the jaws, with paper under them.",
            grip=self.plan.second_grip_mm,
        )

    def flip(self) -> Operation:
        """Turn the pad round and make it run true."""
        end = "top" if self.plan.order == "top_first" else "lip"
        return Operation(
            title="Flip, and indicate the run-out",
            set_up=2,
            holding=self.second_hold(),
            tools=(INDICATOR, said("Packing paper")),
            steps=(
                said("Wrap the body in one turn of paper and grip it lightly."),
                said(f"Tap it back against the jaws' steps until no feeler goes between the {end} and them."),
                said(
                    f"Where the steps are not {{grip}} deep, put three equal parallels between the {end} and the chuck's"
                    " face instead, measure to them, and take them out before the spindle turns.",
                    grip=self.plan.second_grip_mm,
                ),
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

    def face_blank(self, title: str) -> Operation:
        """Face the first end of the sawn blank."""
        plain = self.plan.blank_mm
        return self._face(
            title,
            self.first_hold(),
            1,
            before_mm=plain,
            after_mm=plain - FACING_MM,
            across_mm=self.plan.bar_mm,
            first=(
                said("Where the bar is too thick for the jaws, turn the jaws round."),
                said(
                    "Turn the spindle by hand with the indicator on the bar: up to {limit} of run-out does no"
                    " harm here.",
                    limit=RUN_OUT_BAR_MM,
                ),
                *by_dial(self.m, _LENGTHWISE),
            ),
        )

    def face_to_height(
        self, title: str, *, before_mm: float, across_mm: float, from_steps: Sentence, why: Sentence
    ) -> Operation:
        """Face the second end, which makes the height."""
        sawn = said("A sawn end is not exact: measure, and where the table says otherwise add or leave out a pass.")
        return self._face(
            title,
            self.second_hold(),
            2,
            before_mm=before_mm,
            after_mm=self.pad.overall_height_mm,
            across_mm=across_mm,
            last=(*by_dial(self.m, sawn), from_steps),
            why=why,
            leaves={"overall_height_mm": self.pad.overall_height_mm},
        )

    def _face(
        self,
        title: str,
        holding: Sentence,
        set_up: int,
        *,
        before_mm: float,
        after_mm: float,
        across_mm: float,
        first: tuple[Sentence, ...] = (),
        last: tuple[Sentence, ...] = (),
        why: Sentence | None = None,
        leaves: dict[str, float] | None = None,
    ) -> Operation:
        passes = self.m.length_passes(before_mm=before_mm, after_mm=after_mm, diameter_mm=across_mm)
        touch = said("Touch the end where it stands out furthest, and set the lengthwise dial to zero.")
        return Operation(
            title=title,
            set_up=set_up,
            holding=holding,
            tools=(said(f"Facing tool, {self.m.tool_name}"), INDICATOR if set_up == 1 else CALIPER),
            steps=(
                *first,
                said("Set the tool on centre height."),
                *by_dial(self.m, touch),
                said("Face from the outside in, by the passes below, to the middle: no pip may stay."),
                *last,
            ),
            why=why,
            cut=self.m.turning(across_mm),
            finish_cut=self.m.finishing(across_mm),
            passes=passes,
            watch=watch_for(self.c.material.family, "turn", key=self.c.material.key),
            leaves_mm=leaves or {},
            roughness_um=self.m.roughness_um,
            other_time_min=CLAMPING_MIN * (set_up == 1) + PASS_MIN * len(passes),
        )

    def turn_body(self, *, length_mm: float) -> Operation:
        """Turn the body to size in one go."""
        pad, bar = self.pad, self.plan.bar_mm
        passes = self.m.diameter_passes(before_mm=bar, after_mm=pad.body_diameter_mm, length_mm=length_mm)
        nose = self.m.nose_radius_mm
        how = "Turn up to {length} from the faced end." if self.m.is_stepless else _STOP
        return Operation(
            title="Turn the body",
            set_up=1,
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
                *by_measure(self.m, pad.body_diameter_mm),
            ),
            cut=self.m.turning(bar),
            finish_cut=self.m.finishing(pad.body_diameter_mm),
            passes=passes,
            watch=watch_for(self.c.material.family, "turn", "finish", key=self.c.material.key),
            leaves_mm={"body_diameter_mm": pad.body_diameter_mm},
            roughness_um=self.m.roughness_um,
            other_time_min=PASS_MIN * len(passes) + 2,
        )


_STOP = "Set the carriage's stop so that the tool ends {length} from the faced end."
