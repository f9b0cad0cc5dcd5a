"""The shop's questions: what it is made on, of which bar and with which cutters, and what the material costs."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from geometry.document.shop import LATHE_SPEEDS_RPM, MILL_SPEEDS_RPM
from geometry.kinds import USUAL_HEAD
from server.carried import NO_DAY, AnotherDay
from server.field_views import FieldView, field_view
from server.fields import FIELDS
from server.forms import FormReading
from server.making_case import hidden_of

_WAYS = ("make.process", "make.material")
_STOCK = (
    "make.stock_diameters_mm",
    "shop.bar_length_mm",
    "shop.kerf_mm",
    "shop.price_per_m",
    "shop.price_per_kg",
    "shop.currency",
)
_LATHE = (
    "shop.spindle_speeds_rpm",
    "shop.slide",
    "shop.tool",
    "shop.largest_cut_mm",
    "shop.nose_radius_mm",
    "shop.cusp_limit_mm",
)
_SLOT = (
    "shop.slot_machine",
    "make.cutter_diameters_mm",
    "shop.cutter_teeth",
    "shop.cutter_held_in",
    "shop.mill_speeds_rpm",
)
_HAND = ("make.stock_diameters_mm", "shop.kerf_mm", "shop.bar_length_mm", "shop.price_per_m", "shop.price_per_kg")
_PRINT = (
    "shop.layer_height_mm",
    "shop.line_width_mm",
    "shop.walls",
    "shop.infill_percent",
    "shop.filament_diameter_mm",
    "shop.filament_density_g_cm3",
    "shop.flow_mm3_s",
    "shop.price_per_kg",
    "shop.currency",
)
_ASSUMED = {
    "shop.spindle_speeds_rpm": "; ".join(f"{n:g}" for n in LATHE_SPEEDS_RPM),
    "shop.mill_speeds_rpm": "; ".join(f"{n:g}" for n in MILL_SPEEDS_RPM),
}


@dataclass(frozen=True, slots=True)
class QuestionGroup:
    """A few questions under one heading."""

    heading: str
    fields: tuple[FieldView, ...]


@dataclass(frozen=True, slots=True)
class ShopForm:
    """The short form at the top of the route card."""

    line: str
    groups: tuple[QuestionGroup, ...]
    hidden: tuple[tuple[str, str], ...]
    is_open: bool


def shop_form(reading: FormReading, day: AnotherDay = NO_DAY) -> ShopForm:
    """The questions that matter for the chosen way of making, and any other of the shop that was answered."""
    process = reading.typed.get("make.process", str(FIELDS["make.process"].default))
    plan: tuple[tuple[str, tuple[str, ...]], ...] = (("How", _WAYS),)
    if process == "printed":
        plan += (("The printer and its filament", _PRINT),)
    elif process == "hand_tools":
        plan += (("The bar", (*_HAND, "shop.currency")),)
    else:
        plan += (("The lathe", _LATHE), (_milled(reading), _SLOT), ("The bar", _STOCK))
    asked = {key for _, keys in plan for key in keys}
    others = tuple(key for key in reading.typed if key.startswith("shop.") and key not in asked)
    plan += (("Also given", others),) if others else ()
    groups = tuple(QuestionGroup(heading, tuple(ask(key, reading) for key in keys)) for heading, keys in plan)
    every = [field for group in groups for field in group.fields]
    return ShopForm(
        line=_line({field.key: field for field in every}, process),
        groups=groups,
        hidden=hidden_of(reading, frozenset(field.key for field in every), day),
        is_open=any(field.problem for field in every),
    )


def ask(key: str, reading: FormReading) -> FieldView:
    """One question, its answers in plain words."""
    view = field_view(key, reading, {})
    assumed = view.assumed or _ASSUMED.get(key, "")
    return replace(view, assumed=assumed, is_long=view.is_long or view.is_words)


def _milled(reading: FormReading) -> str:
    """What the end mill cuts, as a heading."""
    return {"plug": "The plug", "cushion": "Milling"}.get(reading.typed.get("head", USUAL_HEAD), "The slot")


def _line(fields: Mapping[str, FieldView], process: str) -> str:
    """The answers in one line."""
    said = [fields["make.process"].chosen_words, fields["make.material"].chosen_words]
    if process in {"lathe_and_mill", "cnc"}:
        said.append(f"{fields['shop.tool'].chosen_words} tools")
    if process == "lathe_and_mill":
        slot = fields["shop.slot_machine"].chosen_words
        said += [
            f"milling on {slot}",
            f"dial counts {fields['shop.slide'].chosen_words}",
        ]
    return "; ".join(said)
