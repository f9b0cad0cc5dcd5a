"""What was measured, given, chosen or assumed, each with its uncertainty."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, Literal

from geometry import formulas
from geometry.calculation.book import Book
from geometry.calculation.face_symbols import head_symbols
from geometry.calculation.foot_symbols import foot_symbols
from geometry.calculation.uncertain import uncertainty_words
from geometry.conditions import Conditions
from geometry.heads.plug.fields import PlugFacts
from geometry.letters import lower_first, upper_first
from geometry.provenance import Mark, Source, derived, memory, practice
from geometry.quantity import Group

Origin = Literal["measured", "given", "chosen", "assumed", "left out"]


@dataclass(frozen=True, slots=True)
class Input:
    """One answer of the measurement document, as understood."""

    key: str
    title: str
    symbol: str
    """Its symbol in the formulas; empty where none uses it."""
    words: str
    """The value with its unit."""
    uncertainty: str
    """How far it may be off, with its unit; empty where none enters the calculation."""
    origin: Origin
    remark: str
    """What was assumed and why; empty otherwise."""

    @property
    def where_from(self) -> str:
        """The origin, and what was assumed."""
        return f"{self.origin}: {self.remark}" if self.remark else self.origin


@dataclass(frozen=True, slots=True)
class _Known:
    symbol: str
    value: Callable[[Conditions], float | None]
    default_formula: str = ""


GROUPS = ("jack", "seam", "rail", "pocket", "car", "service", "make", "own", "fixed")
"""The groups of the document that a pad is sized and judged by."""
_GIVEN = Source(Mark.OWN, "Measured or given by you")
_KNOWN: Mapping[str, _Known] = MappingProxyType(
    {
        "jack.cup_bore_mm": _Known("cup_bore", lambda c: c.foot.bore_mm),
        "jack.cup_depth_mm": _Known("cup_depth", lambda c: c.foot.depth_mm),
        "jack.cup_corner_radius_mm": _Known("cup_corner", lambda c: c.foot.corner_radius_mm, "min(5, cup_depth / 2)"),
        "jack.rim_diameter_mm": _Known("rim_d", lambda c: c.foot.rim_diameter_mm),
        "jack.stem_hole_diameter_mm": _Known("hole", lambda c: c.foot.hole_diameter_mm),
        "jack.stem_hole_depth_mm": _Known("hole_depth", lambda c: c.foot.hole_depth_mm),
        "jack.rated_load_kg": _Known("m_r", lambda c: c.foot.rated_load_kg),
        "jack.rim_height_low_mm": _Known("rim_low", lambda c: c.foot.rim_height_low_mm),
        "jack.rim_height_high_mm": _Known("rim_high", lambda c: c.foot.rim_height_high_mm),
        "jack.saddle_tilt_deg": _Known("tilt", lambda c: c.foot.saddle_tilt_deg),
        "jack.floor_boss_height_mm": _Known("boss", lambda c: c.foot.boss_height_mm),
        "jack.floor_boss_diameter_mm": _Known("boss_d", lambda c: c.foot.boss_diameter_mm or None),
        "seam.thickness_mm": _Known("t", lambda c: c.seam.thickness_mm),
        "seam.sheets": _Known("n_s", lambda c: float(c.seam.sheets)),
        "seam.bare_thickness_mm": _Known(
            "t_bare", lambda c: c.seam.bare_thickness_mm, "min(t, max(0.7 * n_s, t - 1.0))"
        ),
        "seam.edge_thickness_mm": _Known("t_b", lambda c: c.seam.edge_thickness_mm, "t_bare"),
        "seam.yield_mpa": _Known("f_y", lambda c: c.seam.yield_mpa),
        "seam.height_mm": _Known("height", lambda c: c.seam.height_mm),
        "seam.straight_length_mm": _Known("straight", lambda c: c.seam.straight_length_mm),
        "seam.bow_mm": _Known("bow", lambda c: c.seam.bow_mm),
        "seam.edge_height_mm": _Known("edge", lambda c: c.seam.edge_height_mm),
        "seam.edge_height_flat_mm": _Known("edge_flat", lambda c: c.seam.edge_height_flat_mm),
        "seam.clear_outboard_mm": _Known("clear_out", lambda c: c.seam.clear_outboard_mm, "height"),
        "seam.clear_inboard_mm": _Known("clear_in", lambda c: c.seam.clear_inboard_mm, "height"),
        "seam.roll_in_obstacle_mm": _Known("roll_in", lambda c: c.seam.roll_in_obstacle_mm),
        "seam.offset_mm": _Known("off", lambda c: c.seam.offset_mm),
        "seam.local_thickness_mm": _Known(
            "t_l",
            lambda c: max(c.seam.local_thickness_mm, c.seam.thickness_mm) if c.seam.local_length_mm else None,
            "t",
        ),
        "seam.local_drop_mm": _Known("drop", lambda c: c.seam.local_drop_mm if c.seam.local_length_mm else None),
        "seam.local_length_mm": _Known("length_l", lambda c: c.seam.local_length_mm or None),
        "car.gross_mass_kg": _Known("m", lambda c: c.measurements.car.gross_mass_kg),
        "car.load_kg": _Known("m_s", lambda c: c.measurements.car.load_kg),
        "car.front_share": _Known("f_front", lambda c: c.measurements.car.front_share),
        "car.wheelbase_mm": _Known("base", lambda c: c.measurements.car.wheelbase_mm),
        "car.track_mm": _Known("track", lambda c: c.measurements.car.track_mm),
        "car.point_behind_front_axle_mm": _Known("x_j", lambda c: c.measurements.car.point_behind_front_axle_mm),
        "car.point_from_centreline_mm": _Known("s_j", lambda c: c.measurements.car.point_from_centreline_mm),
        "car.cg_offset_mm": _Known("e_cg", lambda c: c.measurements.car.cg_offset_mm),
        "car.ride_frequency_hz": _Known("f_ride", lambda c: c.measurements.car.ride_frequency_hz),
        "car.lift_needed_mm": _Known("lift", lambda c: c.lift_needed_mm),
        "service.temperature_low_c": _Known("T_low", lambda c: c.measurements.service.temperature_low_c),
        "service.temperature_high_c": _Known("T_high", lambda c: c.measurements.service.temperature_high_c),
        "make.uncertainty_mm": _Known("u", lambda c: c.u),
        "make.ground_uncertainty_mm": _Known("u_g", lambda c: c.u_g),
    }
)
_KEYS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        known.symbol: tuple(key for key, other in _KNOWN.items() if other.symbol == known.symbol)
        for known in _KNOWN.values()
    }
)
"""The measurements that each symbol stands for."""
_STATICS_ONLY = frozenset(
    f"car.{name}"
    for name in ("front_share", "wheelbase_mm", "track_mm", "point_behind_front_axle_mm", "point_from_centreline_mm")
) | {"car.cg_offset_mm", "car.ride_frequency_hz"}
_ASSUMED_SOURCES: Mapping[str, Source] = MappingProxyType(
    {
        "seam.yield_mpa": memory("Assumed: design floor of soft body sheet, DC01–DC05 of EN 10130"),
        "car.ride_frequency_hz": memory("Assumed: usual ride frequency of a car"),
        "make.uncertainty_mm": practice("What a careful hand reads off the instrument on a car"),
        "make.ground_uncertainty_mm": practice("What a careful hand measures above an uneven floor"),
    }
)


def write_inputs(book: Book, c: Conditions) -> tuple[Input, ...]:
    """Every answer that this case uses, in the order of the document; those with symbols as lines, too."""
    book.open("inputs")
    return tuple(_inputs(book, c))


def _inputs(book: Book, c: Conditions) -> Iterator[Input]:
    symbols = {key: _constant(*known) for key, known in {**foot_symbols(c), **head_symbols(c)}.items()}
    for group_name in GROUPS:
        group = getattr(c.measurements, group_name)
        for name in type(group).model_fields if group is not None else ():
            key = f"{group_name}.{name}"
            found = _input(book, c, key, group, symbols.get(key, _KNOWN.get(key))) if _is_used(key, c) else None
            if found:
                yield found


def _input(book: Book, c: Conditions, key: str, group: Group, known: _Known | None) -> Input | None:
    """One answer, its number written as a line where it has a symbol; None where there is nothing to say of it."""
    group_name, _, name = key.partition(".")
    info, value = type(group).model_fields[name], getattr(group, name)
    extra: dict[str, Any] = info.json_schema_extra  # type: ignore[assignment]  # written by ``measured`` and ``chosen``
    is_given = name in group.model_fields_set and value is not None
    if known is None and not is_given and _belongs_elsewhere(group_name, extra["kind"]):
        return None
    number, assumed = known.value(c) if known else None, _assumed_words(key, extra, c)
    if known and number is not None:
        _write(book, key, known, number, is_given=is_given, assumed=assumed)
    return Input(
        key,
        _title(info.title or key, c),
        known.symbol if known and number is not None else "",
        _words(key, value, number, extra["unit"], c),
        uncertainty_words(key, c) if number is not None else "",
        _origin(extra["kind"], is_given=is_given, is_known=number is not None or known is None),
        "" if is_given else assumed,
    )


def _belongs_elsewhere(group_name: str, kind: str) -> bool:
    """Whether what was left out is not missed: another way of standing on such a jack asks for it, or nobody has to give it."""
    return group_name in {"own", "fixed"} or (group_name == "jack" and kind != "choice")


def is_assumed(symbol: str, c: Conditions) -> bool:
    """Whether nobody gave a symbol's number: what it stands for was asked and left out, and something was taken instead."""
    own = {**foot_symbols(c), **head_symbols(c)}
    keys = [key for key in _KEYS.get(symbol, ()) if key not in own]
    keys += [key for key, (its_symbol, _) in own.items() if its_symbol == symbol]
    given = [_is_given(key, c) for key in keys]
    return False in given and True not in given


def _is_given(key: str, c: Conditions) -> bool | None:
    """Whether somebody gave an answer; None where this foot and this head are not asked for it."""
    group_name, _, name = key.partition(".")
    group = getattr(c.measurements, group_name)
    if group is None or name not in vars(group):
        return None
    return name in group.model_fields_set and getattr(group, name) is not None


def _title(title: str, c: Conditions) -> str:
    """What was asked, in the words of the pad's kinds where the question is that of every kind."""
    return upper_first(c.said(lower_first(title)))


def _constant(symbol: str, number: float | None) -> _Known:
    """A symbol whose number is known already."""
    return _Known(symbol, lambda _: number)


def _is_used(key: str, c: Conditions) -> bool:
    """Whether this case looks at an answer at all."""
    source = c.measurements.car.load_source
    if key == "make.slots":
        return c.head.kind == "slot"
    if key in _STATICS_ONLY:
        return source == "statics"
    if key == "car.load_kg":
        return source == "stated"
    return not (key == "car.gross_mass_kg" and source == "stated" and c.measurements.car.gross_mass_kg is None)


def _assumed_words(key: str, extra: Mapping[str, Any], c: Conditions) -> str:
    """What is taken where nothing was measured: what the question says, but for a hole whose shape says more."""
    if key == "pocket.corner_radius_mm" and isinstance(c.head, PlugFacts) and c.head.is_round:
        return "half the hole's width: the hole is round"
    return str(extra.get("assumed", ""))


def _write(book: Book, key: str, known: _Known, number: float, *, is_given: bool, assumed: str) -> None:
    source = _GIVEN if is_given else _ASSUMED_SOURCES.get(key, derived(f"Assumed: {assumed}"))
    formula = "" if is_given else known.default_formula
    book.write(known.symbol, number, formula=formula, source=source, remark="" if is_given else f"assumed: {assumed}")


def _origin(kind: str, *, is_given: bool, is_known: bool) -> Origin:
    if kind in {"choice", "text", "lengths"}:
        return "chosen" if is_given else "assumed"
    if not is_given:
        return "assumed" if is_known else "left out"
    return "given" if kind in {"mass", "number"} else "measured"


def _words(key: str, value: object, number: float | None, unit: str, c: Conditions) -> str:
    if key == "make.material":
        return c.material.name
    if key == "make.stock_diameters_mm":
        return _series(c.stock_mm) if c.rod_is_cut else "none needed"
    if key == "make.cutter_diameters_mm":
        return _series(c.cutters_mm) if c.slot_is_milled else "none needed"
    if key == "jack.stem_hole_diameter_mm" and value is None:
        return "none"
    if number is None and isinstance(value, float | int) and not isinstance(value, bool):
        number = float(value)
    if number is not None:
        return f"{formulas.shown(number)} {unit}".strip()
    return str(value).replace("_", " ") if value not in {None, ""} else "none"


def _series(lengths_mm: tuple[float, ...]) -> str:
    return "; ".join(formulas.shown(x) for x in lengths_mm) + " mm"
