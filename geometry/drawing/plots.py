"""The two plots of a calculation: force against rise, and clearance against temperature; each with its table in words."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from geometry import formulas
from geometry.drawing.charts import Axis, Band, Chart, Marker, Series
from geometry.drawing.charts_svg import svg_of
from geometry.growth import Wetness, growth, water_percent
from geometry.materials import Material
from geometry.outline import Point
from geometry.statics import WHEELS, LiftCurve
from geometry.units import LengthUnit, mm_to_inch

WIDE, NARROW = 720.0, 358.0
"""The two widths that plots are made for, in page units: a sheet and a phone."""
_PATTERNS = ("9 4", "2 3", "14 4 2 4", "6 3 1 3 1 3")
"""One for each wheel, told apart in grey."""
_SHOWN_UP_TO = 1.6
"""A rated load further above the greatest force than this is named below the picture instead of flattening it."""
_STEPS = 8
_LEAST_SPAN_K = 10.0
_WETNESS: tuple[tuple[Wetness, str], ...] = (("dry", "dry"), ("room", "in room air"), ("soaked", "soaked"))


@dataclass(frozen=True, slots=True)
class Table:
    """The same in numbers, for who reads instead of looking."""

    caption: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Plot:
    """A chart with its table."""

    chart: Chart
    table: Table

    def svg(self, *, width: float = WIDE, prefix: str) -> str:
        """The picture in some width; ``prefix`` keeps its ids apart from those of others on a page."""
        return svg_of(self.chart, width=width, prefix=prefix)


def lift_plot(
    curve: LiftCurve, *, rated_load_n: float, lift_needed_mm: float, units: LengthUnit = "mm", is_narrow: bool = False
) -> Plot:
    """Force at the lifting point and what each wheel still carries, against the rise of the seam."""
    greatest = curve.greatest_force_n
    is_shown = rated_load_n <= _SHOWN_UP_TO * greatest
    end = max(lift_needed_mm, 450.0, curve.points[-1].rise_mm)
    highest = max(greatest, *curve.points[0].wheel_loads_n, rated_load_n if is_shown else 0.0)
    force = Series(
        "force at the seam" if is_narrow else "force at the lifting point", tuple(_curve_points(curve, units)), "", 2.6
    )
    wheels = tuple(_wheel(curve, i, units) for i in range(len(WHEELS)))
    rated = Series(
        f"the jack's rated load, {_kn(rated_load_n)} kN",
        ((0.0, rated_load_n / 1000), (_length(end, units), rated_load_n / 1000)),
        "18 5",
        1.0,
    )
    leaves = tuple(
        Marker(f"{w.wheel} wheel leaves, {_shown(w.rise_mm, units)} {units}", _length(w.rise_mm, units))
        for w in curve.wheels_leave
    )
    wanted = Marker(f"wanted lift, {_shown(lift_needed_mm, units)} {units}", _length(lift_needed_mm, units))
    notes = () if is_shown else (f"The jack's rated load, {_kn(rated_load_n)} kN, lies above.",)
    chart = Chart(
        title="Force against rise",
        description=_lift_words(curve, rated_load_n=rated_load_n, lift_needed_mm=lift_needed_mm, units=units),
        x=Axis(f"rise of the seam, {units}", 0.0, _length(end, units)),
        y=Axis("force, kN", 0.0, 1.12 * highest / 1000),
        series=(force, *wheels, *((rated,) if is_shown else ())),
        markers=(*leaves, wanted),
        notes=notes,
    )
    return Plot(chart, _lift_table(curve, units))


def _curve_points(curve: LiftCurve, units: LengthUnit) -> Sequence[Point]:
    return [(_length(p.rise_mm, units), p.force_n / 1000) for p in curve.points]


def _wheel(curve: LiftCurve, wheel: int, units: LengthUnit) -> Series:
    """What one wheel carries, up to where it leaves the ground."""
    points: list[Point] = []
    for p in curve.points:
        points.append((_length(p.rise_mm, units), p.wheel_loads_n[wheel] / 1000))
        if p.wheel_loads_n[wheel] <= 0:
            break
    return Series(f"{WHEELS[wheel]} wheel", tuple(points), _PATTERNS[wheel])


def _lift_words(curve: LiftCurve, *, rated_load_n: float, lift_needed_mm: float, units: LengthUnit) -> str:
    leaves = ", ".join(f"the {w.wheel} wheel leaves at {_shown(w.rise_mm, units)} {units}" for w in curve.wheels_leave)
    at = curve.at(lift_needed_mm)
    return (
        f"The force at the lifting point rises to {_kn(curve.greatest_force_n)} kN, reached at"
        f" {_shown(curve.plateau_rise_mm, units)} {units}; {leaves or 'no wheel leaves the ground'}. At the wanted lift of"
        f" {_shown(lift_needed_mm, units)} {units} it is {_kn(at.force_n)} kN. The jack's rated load is {_kn(rated_load_n)} kN."
        " The same stands in the table below."
    )


def _lift_table(curve: LiftCurve, units: LengthUnit) -> Table:
    head = (f"rise, {units}", "force, N", *(f"{wheel}, N" for wheel in WHEELS), "roll, °", "pitch, °")
    rows = tuple(
        (
            formulas.shown(_length(p.rise_mm, units)),
            *(formulas.shown(x) for x in (p.force_n, *p.wheel_loads_n, p.roll_deg, p.pitch_deg)),
        )
        for p in curve.points
    )
    return Table("Force at the lifting point and wheel loads against the rise of the seam", head, rows)


_CLEARANCES = {
    "seat": "Clearance of the seat in the cup",
    "skirt": "Clearance of the skirt",
    "stem": "Clearance of the stem in the bore",
    "slot": "Side play of the seam in the slot",
    "plug": "Play of the plug in its hole",
}


def clearance_plot(
    which: Literal["seat", "skirt", "stem", "slot", "plug"],
    *,
    clearance_mm: Callable[[float], float],
    needed_mm: float,
    material: Material,
    temperature_low_c: float,
    temperature_high_c: float,
    units: LengthUnit = "mm",
) -> Plot:
    """The least clearance of a fit against temperature, dry to soaked; ``clearance_mm`` gives it for a growth."""
    low, high = temperature_low_c, temperature_high_c
    if high - low < _LEAST_SPAN_K:
        low, high = (low + high - _LEAST_SPAN_K) / 2, (low + high + _LEAST_SPAN_K) / 2
    temperatures = [low + (high - low) * i / _STEPS for i in range(_STEPS + 1)]

    def least(wetness: Wetness) -> tuple[Point, ...]:
        water = water_percent(material, wetness=wetness)
        grown = ((t, growth(material, temperature_c=t, water_percent=water)) for t in temperatures)
        return tuple((t, _length(clearance_mm(g), units)) for t, g in grown)

    lines = {wetness: least(wetness) for wetness, _ in _WETNESS}
    needed = _length(needed_mm, units)
    series = _wet_series(lines, material)
    values = [y for line in series for _, y in line.points] + [needed, 0.0]
    room = 0.12 * (max(values) - min(values) or 1.0)
    what = _CLEARANCES[which]
    needed_line = Series(f"needed, {_fine(needed_mm, units)} {units}", ((low, needed), (high, needed)), "18 5", 1.0)
    chart = Chart(
        title=f"{what} against temperature",
        description=_clearance_words(what, lines, needed, units),
        x=Axis("temperature of the pad, °C", low, high),
        y=Axis(
            f"least {'play' if which in {'slot', 'plug'} else 'clearance'}, {units}",
            min(values) - room,
            max(values) + room,
        ),
        series=(*series, needed_line),
        bands=(Band(lines["dry"], lines["soaked"]),),
    )
    return Plot(chart, _clearance_table(what, lines, temperatures, needed, units))


def _wet_series(lines: dict[Wetness, tuple[Point, ...]], material: Material) -> tuple[Series, ...]:
    """Dry and soaked, and room air between them where it can be told apart; one line for what takes up no water."""
    if material.swell_per_percent.value * material.water_soaked_percent.value == 0:
        return (Series("dry or soaked: it takes up no water", lines["dry"], "", 2.2),)
    patterns = {"dry": "", "room": "6 3", "soaked": "14 4 2 4"}
    return tuple(Series(words, lines[wet], patterns[wet], 1.8) for wet, words in _WETNESS)


def _clearance_words(what: str, lines: dict[Wetness, tuple[Point, ...]], needed: float, units: LengthUnit) -> str:
    ends = [(words, lines[wet][0], lines[wet][-1]) for wet, words in _WETNESS]
    told = "; ".join(
        f"{words} {_places(a[1], units)} {units} at {_minus(f'{a[0]:g}')} °C and {_places(b[1], units)} {units} at"
        f" {_minus(f'{b[0]:g}')} °C"
        for words, a, b in ends
    )
    return f"{what} with everything against you: {told}. Needed are {_places(needed, units)} {units}."


def _clearance_table(
    what: str,
    lines: dict[Wetness, tuple[Point, ...]],
    temperatures: Sequence[float],
    needed: float,
    units: LengthUnit,
) -> Table:
    head = ("temperature, °C", *(f"{words}, {units}" for _, words in _WETNESS), f"needed, {units}")
    rows = tuple(
        (
            _minus(f"{t:g}"),
            *(_places(lines[wet][i][1], units) for wet, _ in _WETNESS),
            _places(needed, units),
        )
        for i, t in enumerate(temperatures)
    )
    return Table(f"{what}, at its least, against temperature", head, rows)


def _length(value_mm: float, units: LengthUnit) -> float:
    return mm_to_inch(value_mm) if units == "in" else value_mm


def _shown(value_mm: float, units: LengthUnit) -> str:
    """A rise for the eye: whole millimetres or hundredths of an inch."""
    return _minus(f"{_length(value_mm, units):.{2 if units == 'in' else 0}f}")


def _fine(value_mm: float, units: LengthUnit) -> str:
    return _places(_length(value_mm, units), units)


def _places(value: float, units: LengthUnit) -> str:
    return _minus(f"{value:.{4 if units == 'in' else 2}f}")


def _kn(force_n: float) -> str:
    return _minus(f"{force_n / 1000:.2f}")


def _minus(text: str) -> str:
    return text.replace("-", "−")
