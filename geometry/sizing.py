"""Sizing: every dimension of a pad is chosen in its order, each inside an interval with reasons."""

from collections.abc import Mapping
from dataclasses import dataclass

import geometry.body.bounds
import geometry.body.flats
import geometry.feet.cup.boss
import geometry.feet.cup.bounds
import geometry.feet.plate.bounds
import geometry.feet.post.bounds
import geometry.feet.post.pin
import geometry.feet.saddle.bounds
import geometry.feet.skirt.bounds
import geometry.heads.cushion.bounds
import geometry.heads.face.bounds
import geometry.heads.plug.bounds
import geometry.heads.plug.height
import geometry.heads.plug.shoulder
import geometry.heads.slot.around
import geometry.heads.slot.bounds
import geometry.heads.slot.options  # noqa: F401 - importing these rooms registers their bounds
from geometry.buildable import require_buildable
from geometry.choosing import Chooser, rules_of
from geometry.conditions import Conditions
from geometry.draft import STANDARD_CHAMFER_MM
from geometry.errors import BadMeasurementsError, NoPadFitsError, Problem
from geometry.feet.cup.bounds import LEAST_STEM_DIAMETER_MM, LEAST_STEM_LENGTH_MM
from geometry.habits import EPS_MM, clean
from geometry.ledger import Ledger
from geometry.pad import Pad
from geometry.units import inch_to_mm

MOST_ROUNDS = 60
"""Ordinary cases settle in two or three rounds. Web and body only grow, in steps, and the floor's strength caps the edge's load, so
far fewer than this are ever needed; a test asks for the ledger to hold at the end."""
STANDARD_CHAMFER_INCH_SHOP_MM = inch_to_mm(0.040)
_SKIRT = ("skirt_bore_mm", "skirt_length_mm")
_NO_STEM = "None: the skirt keeps the pad in its place."
_NO_STEM_LENGTH = "None, as there is no stem."
_PIN = ("cross_hole_diameter_mm", "cross_hole_distance_mm")
_PLUG = ("plug_length_mm", "plug_width_mm", "plug_height_mm", "plug_corner_radius_mm")


@dataclass(frozen=True, slots=True)
class Sized:
    """A pad with the ledger that it came from."""

    pad: Pad
    ledger: Ledger


def size(conditions: Conditions) -> Sized:
    """Choose every dimension.

    Raises NoPadFitsError where an interval is empty, BadMeasurementsError where fixed dimensions make no body.
    """
    fixed = conditions.measurements.fixed.given()
    _refuse_strangers(fixed, conditions)
    sizer = _free_sizer_that_agrees(conditions, fixed) or _Sizer(conditions, fixed)
    if not sizer.is_done:
        sizer.run()
    pad = sizer.draft.pad()
    require_buildable(pad)
    return Sized(pad, sizer.ledger(pad.present, fixed))


_STANDARD = ("slot_mouth_chamfer_mm", "edge_chamfer_mm")


def _refuse_strangers(fixed: Mapping[str, float], c: Conditions) -> None:
    """Refuse dimensions of features that a pad for this foot and head does not have."""
    problems = tuple(
        Problem(
            f"fixed.{name}",
            value,
            f"A pad for this jack and this lifting point has no {name.removesuffix('_mm').replace('_', ' ')}. Let it go.",
        )
        for name, value in fixed.items()
        if value > 0 and name not in _STANDARD and not rules_of(c.rooms)[name]
    )
    if problems:
        raise BadMeasurementsError(problems)


def _free_sizer_that_agrees(conditions: Conditions, fixed: Mapping[str, float]) -> "_Sizer | None":
    """A sizing with web or body left free that arrives at their fixed values by itself.

    Web and body are found in rounds, each from the other; fixing one at the value that the rounds arrive at must change
    nothing, so the rounds are asked first.
    """
    both = [name for name in ("web_mm", "body_diameter_mm") if name in fixed]
    attempts: list[list[str]] = [both] + ([[both[0]], [both[1]]] if len(both) == 2 else [])
    for freed in attempts if both else []:
        sizer = _Sizer(conditions, {k: v for k, v in fixed.items() if k not in freed})
        try:
            sizer.run()
        except NoPadFitsError:
            continue
        if all(abs(getattr(sizer.draft, name) - fixed[name]) < EPS_MM for name in freed):
            return sizer
    return None


class _Sizer(Chooser):
    """One run through the ledger: what is chosen in which order."""

    is_done = False

    def run(self) -> None:
        """Choose every dimension in order."""
        d, c = self.draft, self.draft.c
        chamfer_mm = STANDARD_CHAMFER_INCH_SHOP_MM if c.is_inch else STANDARD_CHAMFER_MM
        d.edge_chamfer_mm = self.fixed.get("edge_chamfer_mm", chamfer_mm)
        self.choose_foot()
        if c.head.kind == "slot":
            d.slot_mouth_chamfer_mm = self.fixed.get("slot_mouth_chamfer_mm", chamfer_mm)
            self.choose_slot()
        self.choose_all_asked(*_PLUG, "flats_width_mm")
        self.choose_web_and_body()
        self.is_done = True

    def choose_foot(self) -> None:
        """What stands on the jack and keeps the pad there."""
        for name in ("seat_diameter_mm", "seat_corner_radius_mm", "seat_length_mm"):
            self.choose(name)
        self.choose_all_asked(*_SKIRT, "seat_recess_diameter_mm", "seat_recess_depth_mm")
        c = self.draft.c
        if c.foot.locates == "stem":
            self.choose("stem_diameter_mm")
            self.choose("stem_length_mm")
        elif self.takes_a_stem or {"stem_diameter_mm", "stem_length_mm"} & self.fixed.keys():
            self.choose_stem()
        elif c.foot.locates == "skirt":
            self.note("stem_diameter_mm", _NO_STEM)
            self.note("stem_length_mm", _NO_STEM_LENGTH)
        self.choose_all_asked(*_PIN)

    def choose_slot(self) -> None:
        """The slot, and what makes it more than one straight cut through the middle."""
        self.choose("slot_width_mm")
        self.choose_all_asked("slot_offset_mm", "cross_slot_width_mm")
        self.choose("slot_depth_mm")
        self.choose("slot_corner_radius_mm")
        self.choose_all_asked("relief_width_mm", "relief_length_mm", "relief_depth_mm")

    @property
    def takes_a_stem(self) -> bool:
        """Whether a hole under the seat can take one beside what locates the pad."""
        return self.draft.c.foot.locates == "seat" and self.draft.c.foot.hole_diameter_mm > 0

    def choose_stem(self) -> None:
        """A stem, or none where none worth making fits."""
        least = {"stem_diameter_mm": LEAST_STEM_DIAMETER_MM, "stem_length_mm": LEAST_STEM_LENGTH_MM}
        if 0 in {self.fixed.get(name) for name in least}:
            return
        try:
            if self.takes_a_stem:
                self.choose("stem_diameter_mm")
                self.choose("stem_length_mm")
                return
            words = self.draft.c.said("the cup has no hole for one.")
        except NoPadFitsError as error:
            words = error.words
        asked = least.keys() & self.fixed.keys()
        for name, value in least.items():
            setattr(self.draft, name, self.fixed.get(name, value) if asked else 0.0)
        self.note("stem_diameter_mm", f"A stem was asked for all the same: {words}" if asked else f"No stem: {words}")

    def choose_web_and_body(self) -> None:
        """Web and body in rounds; where the web has no room, a shallower slot makes some."""
        first_depth = self.draft.slot_depth_mm
        try:
            self.rounds()
        except NoPadFitsError as error:
            if error.dimension != "web_mm" or "slot_depth_mm" in self.fixed or self.draft.c.head.kind != "slot":
                raise
            self.lower_the_slot(error)
            self.note(
                "slot_depth_mm",
                f"Lowered from {first_depth:g} to {self.draft.slot_depth_mm:g} mm so that the web has room: {error.words}",
            )

    def lower_the_slot(self, error: NoPadFitsError) -> None:
        """Take the first slot depth that leaves the web room; raise the first conflict where none does."""
        lowest = max(b.value for b in self.bounds("slot_depth_mm") if b.rule.side == "lower" and b.rule.must)
        while self.draft.slot_depth_mm - self.steps[1] >= lowest - EPS_MM:
            self.draft.slot_depth_mm = clean(self.draft.slot_depth_mm - self.steps[1])
            try:
                self.choose("slot_corner_radius_mm")
                self.choose_where_asked("relief_depth_mm")
                self.rounds()
            except NoPadFitsError:
                continue
            return
        raise error

    def rounds(self) -> None:
        """Web from body and body from web until neither moves; neither ever falls."""
        d = self.draft
        d.web_mm = d.body_diameter_mm = d.edge_force_n_per_mm = 0.0
        self.choose("web_mm")
        self.choose("body_diameter_mm", musts_only=True)
        for _ in range(MOST_ROUNDS):
            before = d.web_mm, d.body_diameter_mm
            d.load_the_edge()
            self.choose("web_mm", at_least=before[0])
            self.choose("body_diameter_mm", at_least=before[1])
            if (d.web_mm, d.body_diameter_mm) == before:
                break
        d.load_the_edge()
