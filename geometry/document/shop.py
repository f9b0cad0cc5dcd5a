"""The machines and tools that the pad is made with: what turns a drawing into a route card for this very shop."""

import re
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, field_validator

from geometry.provenance import practice
from geometry.quantity import Group, Number, ShortText, chosen, measured
from geometry.units import inch_to_mm

LATHE_SPEEDS_RPM = (60.0, 100.0, 160.0, 250.0, 400.0, 630.0, 1000.0, 1600.0)
MILL_SPEEDS_RPM = (150.0, 250.0, 400.0, 630.0, 1000.0, 1600.0, 2500.0)
SPEEDS_SOURCE = practice("Series of a small lathe and of a small mill, as their gears and belts commonly give")
ROUGHING_MM = {"metric": 0.5, "inch": inch_to_mm(0.020)}
"""Roughing cuts of 0.020 in: common practice, no source."""
FINISHING_MM = {"metric": 0.1, "inch": inch_to_mm(0.005)}
"""Finishing cuts of 0.005 in, in turning and on the sides of a slot: common practice, no source."""
DIVISION_MM = {"metric": 0.05, "inch": inch_to_mm(0.001)}
"""What one line of a dial commonly stands for: common practice, no source."""
_MOST_SPEEDS = 40
_FASTEST_RPM = 60_000


def _listed(typed: object) -> object:
    """Speeds typed in one line, as numbers; anything else as it is, to be judged by the field."""
    if not isinstance(typed, str):
        return typed
    parts = [part for part in re.split(r"[;,\s]+", typed.strip()) if part]
    if not all(re.fullmatch(r"\d{1,6}(\.\d+)?", part) for part in parts):
        raise ValueError(f"“{typed[:40]}” is not a list of speeds such as 60; 100; 160.")
    return [float(part) for part in parts]


Speeds = Annotated[tuple[Number, ...], BeforeValidator(_listed)]


def _speeds(title: str, help: str) -> Any:
    return chosen(title, default=None, kind="text", unit="1/min", help=help)


class Shop(Group):
    """The machines and tools that the pad is made with; every field can be left out."""

    spindle_speeds_rpm: Speeds | None = _speeds(
        "Lathe's speeds",
        "Turns per minute that the lathe has, with a semicolon between. Left out: a small lathe's series.",
    )
    mill_speeds_rpm: Speeds | None = _speeds(
        "Mill's speeds",
        "Turns per minute that the mill has, with a semicolon between. Left out: a small mill's series.",
    )
    slide: Literal["radius", "diameter"] = chosen(
        "Cross slide's dial counts",
        default="radius",
        help="Its own travel (radius), or what comes off the diameter. Not known: advance it by 1, cut, and measure.",
    )
    tool: Literal["hss", "carbide"] = chosen(
        "Tools", default="hss", help="High-speed steel, ground sharp, or carbide inserts."
    )
    largest_cut_mm: Number | None = measured(
        "Deepest roughing cut",
        unit="mm",
        ge=0.05,
        le=6,
        default=None,
        help="How deep one turning cut may go, as infeed. A stiff lathe takes 4 mm in these plastics.",
        assumed="0.5 mm, or 0.020 in",
    )
    nose_radius_mm: Number = measured(
        "Nose radius of the finishing tool",
        unit="mm",
        ge=0.05,
        le=3,
        default=0.4,
        help="A rounder nose leaves a smoother surface.",
        assumed="0.4 mm",
    )
    kerf_mm: Number = measured(
        "Width of the saw cut",
        unit="mm",
        ge=0.3,
        le=6,
        default=1.5,
        help="Material lost at each saw cut. Band saws take 0.9 to 1.6 mm, circular saws more.",
        how="Measure the slot that the saw leaves in a piece of scrap.",
        assumed="1.5 mm",
    )
    slot_machine: Literal["mill", "vertical_slide", "none"] = chosen(
        "Milling is done on",
        default="mill",
        help="A milling machine, a vertical slide on the lathe, or nothing: then it is sawn and filed by hand.",
    )
    cutter_held_in: Literal["collet", "chuck"] = chosen(
        "End mills are held in",
        default="collet",
        help="A collet grips all round; a three-jaw chuck lets the cutter creep, so cuts stay light.",
    )
    cutter_teeth: int = measured(
        "Teeth of the end mill",
        unit="",
        ge=1,
        le=8,
        default=2,
        kind="count",
        help="Two or three leave room for plastic chips.",
        assumed="2",
    )
    cusp_limit_mm: Number = measured(
        "Ridge left for the file",
        unit="mm",
        ge=0.01,
        le=1,
        default=0.1,
        help="The corner radius is cut as straight facets; this is the tallest ridge between them that you want to file off.",
        assumed="0.1 mm",
    )
    bar_length_mm: Number = measured(
        "Length of bar that is sold",
        unit="mm",
        ge=50,
        le=6000,
        default=1000,
        help="For the comparison of one pad with several from one bar.",
        assumed="1000 mm",
    )
    price_per_m: Number | None = measured(
        "Price of the bar per metre",
        unit="",
        ge=0,
        le=100_000,
        default=None,
        kind="number",
        help="In your own money.",
        assumed="no price is given",
    )
    price_per_kg: Number | None = measured(
        "Price per kilogram",
        unit="",
        ge=0,
        le=100_000,
        default=None,
        kind="number",
        help="In your own money; of bar or of filament. The price per metre goes first.",
        assumed="no price is given",
    )
    currency: ShortText = chosen("Money", default="", kind="text", help="The sign printed beside a price.")
    layer_height_mm: Number = measured(
        "Layer height", unit="mm", ge=0.05, le=0.6, default=0.2, help="Of the print.", assumed="0.2 mm"
    )
    line_width_mm: Number = measured(
        "Width of a printed line", unit="mm", ge=0.2, le=1.5, default=0.45, help="Of the print.", assumed="0.45 mm"
    )
    walls: int = measured(
        "Walls of the print",
        unit="",
        ge=1,
        le=60,
        default=6,
        kind="count",
        help="How many lines the outside is thick.",
        assumed="6",
    )
    infill_percent: Number = measured(
        "Infill",
        unit="%",
        ge=0,
        le=100,
        default=100,
        kind="number",
        help="The checks are those of a solid print; anything less is weaker by an unknown amount.",
        assumed="100 %",
    )
    filament_diameter_mm: Number = measured(
        "Filament diameter", unit="mm", ge=1, le=4, default=1.75, help="As on its spool.", assumed="1.75 mm"
    )
    filament_density_g_cm3: Number | None = measured(
        "Filament density",
        unit="g/cm³",
        ge=0.3,
        le=10,
        default=None,
        kind="number",
        help="As on its data sheet.",
        assumed="that of the material's table",
    )
    flow_mm3_s: Number = measured(
        "Plastic laid down",
        unit="mm³/s",
        ge=0.5,
        le=60,
        default=6,
        kind="number",
        help="How much plastic the printer lays down, for the time.",
        assumed="6 mm³/s",
    )

    @field_validator("spindle_speeds_rpm", "mill_speeds_rpm")
    @classmethod
    def _usable(cls, speeds: tuple[float, ...] | None) -> tuple[float, ...] | None:
        if speeds is None:
            return None
        if not 1 <= len(speeds) <= _MOST_SPEEDS:
            raise ValueError(f"Give between 1 and {_MOST_SPEEDS} speeds, not {len(speeds)}.")
        wrong = [n for n in speeds if not 1 <= n <= _FASTEST_RPM]
        if wrong:
            raise ValueError(f"A speed of {wrong[0]:g} turns a minute is outside 1 to {_FASTEST_RPM}.")
        return tuple(sorted(set(speeds)))

    @property
    def lathe_speeds_used_rpm(self) -> tuple[float, ...]:
        """Speeds of the lathe, slowest first."""
        return self.spindle_speeds_rpm or LATHE_SPEEDS_RPM

    @property
    def mill_speeds_used_rpm(self) -> tuple[float, ...]:
        """Speeds of the machine that turns the end mill, slowest first; a vertical slide uses the lathe's spindle."""
        if self.slot_machine == "vertical_slide":
            return self.lathe_speeds_used_rpm
        return self.mill_speeds_rpm or MILL_SPEEDS_RPM
