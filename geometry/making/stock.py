"""The blank: out of which bar, how long a piece, and how it is held first and last."""

from dataclasses import dataclass
from math import ceil
from typing import Literal

from geometry.body.bounds import STOCK_ALLOWANCE_MM
from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.bar import bar_mass_kg, price_of
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import derived, memory
from geometry.units import inch_to_mm

FACING_MM = 1.5
"""Allowed on each sawn face."""
FACING_SOURCE = derived("1 to 1.5 mm per face for a sawn bar; the bar itself from memory")
JAW_CLEARANCE_MM = 2.0
"""Between a tool and the jaws."""
LINE_MM, INCH_LINE_MM = 1.0, inch_to_mm(1 / 16)
"""A blank is marked by a line of a steel rule."""
SAW_ROOM_MM = 5.0
"""Between the jaws and a saw cut."""
LEAST_GRIP_MM = 10.0
LEAST_LAST_GRIP_MM = 5.0
"""Less finished body than this does not hold even for a facing cut."""
LEAST_GRIP_SHARE = 0.15
SAWN_STUB_MM = 4.0
"""A longer stub than this is sawn off before facing; a shorter one is faced away."""
REACH_SHARE = 1 / 3
"""Of what stands out of the jaws, this much at least stands in them."""
GRIP_SOURCE = memory(
    "Held on less than about a seventh of its diameter, or a third of what stands out, a disc is pushed out by the cut"
)

Order = Literal["top_first", "foot_first"]


@dataclass(frozen=True, slots=True, kw_only=True)
class StockPlan:
    """The blank and how it is held; lengths in mm."""

    bar_mm: float
    bar_is_listed: bool
    """Whether the shop has such a bar; else it is the smallest that would do."""
    order: Order
    why: Sentence
    blank_mm: float
    """Length to saw off."""
    kerf_mm: float
    stub_mm: float
    """Of the blank, what only serves to hold it and is cut away."""
    first_grip_mm: float
    first_reach_mm: float
    """How far the blank stands out of the jaws in the first set-up."""
    second_grip_mm: float
    """Length of finished cylinder in the jaws in the second set-up."""
    mass_kg: float
    price: float | None
    """In the user's money, saw cut included."""

    @property
    def is_stub_sawn(self) -> bool:
        """Whether the saw takes the stub off, rather than many facing cuts."""
        return self.order == "foot_first" or self.stub_mm > SAWN_STUB_MM + self.kerf_mm


def least_grip_mm(diameter_mm: float) -> float:
    """The shortest cylinder that holds a disc of a diameter while it is roughed: a judgement from memory."""
    return max(LEAST_GRIP_MM, LEAST_GRIP_SHARE * diameter_mm)


def stock_plan(pad: Pad, conditions: Conditions, shop: Shop) -> StockPlan:
    """Choose the bar, the order of the two set-ups and the length of the blank."""
    needed = pad.body_diameter_mm + STOCK_ALLOWANCE_MM
    bar = next((d for d in conditions.stock_mm if d >= needed), None)
    bar_mm = needed if bar is None else bar
    order = order_of(pad)
    held = (_top_first if order == "top_first" else _foot_first)(pad, bar_mm, conditions, shop)
    return StockPlan(
        bar_mm=bar_mm,
        bar_is_listed=bar is not None,
        order=order,
        why=held.why,
        blank_mm=held.blank_mm,
        kerf_mm=shop.kerf_mm,
        stub_mm=held.stub_mm,
        first_grip_mm=held.grip_mm,
        first_reach_mm=held.blank_mm - held.grip_mm,
        second_grip_mm=max(0.0, held.last_mm),
        mass_kg=bar_mass_kg(bar_mm, held.blank_mm, conditions),
        price=price_of(bar_mm, held.blank_mm + shop.kerf_mm, conditions, shop),
    )


def order_of(pad: Pad) -> Order:
    """Top first where the finished body then holds the pad well enough to turn its foot; else all that is round at once."""
    reach = pad.seat_length_mm + pad.foot_depth_mm + FACING_MM
    needed = max(least_grip_mm(pad.body_diameter_mm), reach * REACH_SHARE)
    return "top_first" if held_top_first_mm(pad) >= needed else "foot_first"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Held:
    """How a blank is held first and last, and how long that makes it; lengths in mm."""

    blank_mm: float
    grip_mm: float
    stub_mm: float
    last_mm: float
    why: Sentence


def _top_first(pad: Pad, bar_mm: float, conditions: Conditions, shop: Shop) -> _Held:
    plain = pad.overall_height_mm + 2 * FACING_MM
    out = FACING_MM + turned_top_first_mm(pad) + JAW_CLEARANCE_MM
    grip = max(least_grip_mm(bar_mm), out * REACH_SHARE, plain - out)
    blank, last = _by_rule_mm(out + grip, conditions), held_top_first_mm(pad)
    return _Held(
        blank_mm=blank,
        grip_mm=blank - out,
        stub_mm=blank - plain,
        last_mm=last,
        why=_why_top_first(pad, last),
    )


def _why_top_first(pad: Pad, grip_mm: float) -> Sentence:
    """Why the pad is held by its body and not by its foot."""
    straight = max(0.0, pad.seat_length_mm - pad.seat_corner_radius_mm)
    words = "The body is turned first and then holds the pad: {grip} of finished cylinder."
    if pad.has_skirt or straight >= least_grip_mm(pad.seat_diameter_mm):
        return said(words, grip=grip_mm)
    return said(
        f"{words} Of the seat's side only {{straight}} is straight: too little to turn the body by.",
        grip=grip_mm,
        straight=straight,
    )


def _foot_first(pad: Pad, bar_mm: float, conditions: Conditions, shop: Shop) -> _Held:
    reach = FACING_MM + turned_foot_first_mm(pad, shop.kerf_mm) + SAW_ROOM_MM
    blank = _by_rule_mm(reach + max(least_grip_mm(bar_mm), reach * REACH_SHARE), conditions)
    grip, last = blank - reach, held_foot_first_mm(pad)
    return _Held(
        blank_mm=blank,
        grip_mm=grip,
        stub_mm=grip + SAW_ROOM_MM + shop.kerf_mm,
        last_mm=last,
        why=said(
            "The body is short for what stands out of it. So everything round is turned before the pad is cut off the bar, and"
            " {grip} of the body then hold it for one light facing cut.",
            grip=last,
        ),
    )


def _by_rule_mm(length_mm: float, conditions: Conditions) -> float:
    """The next length that a rule has a line for; the jaws hold what is more."""
    line = INCH_LINE_MM if conditions.is_inch else LINE_MM
    return ceil(length_mm / line - 1e-9) * line


def turned_top_first_mm(pad: Pad) -> float:
    """Length that is turned to the body's diameter from the top, a skirt and what stands on the body included."""
    return pad.top_height_mm - pad.foot_bottom_mm + JAW_CLEARANCE_MM


def turned_foot_first_mm(pad: Pad, kerf_mm: float) -> float:
    """Length that is turned to the body's diameter from the foot: the pad, what is faced off its top, and the saw cut."""
    return pad.overall_height_mm + FACING_MM + kerf_mm


def held_top_first_mm(pad: Pad) -> float:
    """Length of finished body that holds the pad while its foot is cut: solid all through, so none of a skirt."""
    tool_room = max(0.0, pad.edge_chamfer_mm + JAW_CLEARANCE_MM - pad.skirt_length_mm)
    return pad.body_top_mm - pad.seat_length_mm - pad.edge_chamfer_mm - tool_room


def held_foot_first_mm(pad: Pad) -> float:
    """Length of finished body that holds the pad for the last facing cut, foot inwards: a skirt counts, on a plug of scrap."""
    facing = 0.0 if pad.has_plug else FACING_MM / 2
    return max(0.0, pad.body_top_mm - pad.foot_bottom_mm - 2 * pad.edge_chamfer_mm - facing)
