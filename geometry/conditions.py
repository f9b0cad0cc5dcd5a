"""Everything that is known before a size is chosen: measurements as understood, the load, growth and allowables."""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import degrees, radians

from geometry import lift
from geometry.allowables import allowable_mpa, holding_modulus_mpa
from geometry.document.car import Car
from geometry.errors import BadMeasurementsError
from geometry.growth import cold_growth, hot_growth
from geometry.heads.cushion.fields import CushionFacts
from geometry.heads.plug.fields import PlugFacts
from geometry.heads.slot.fields import SlotFacts
from geometry.kinds import AnyFoot, AnyHead
from geometry.materials import Material
from geometry.measurements import Measurements
from geometry.side_load import assumed_lean_rad, side_force_n
from geometry.statics import LiftCurve, Vehicle, lift_curve


@dataclass(frozen=True)
class Conditions:
    """The case a pad is sized and judged for; mm, N, MPa, °C."""

    measurements: Measurements
    foot: AnyFoot
    head: AnyHead
    material: Material
    force_n: float
    design_force_n: float
    side_force_n: float
    lean_deg: float
    """How far the car leans at the wanted lift: by statics, else assumed."""
    pitch_deg: float | None
    """How far it pitches there; None without statics."""
    curve: LiftCurve | None
    u: float
    """Uncertainty of cup and seam, [mm]."""
    u_g: float
    """Uncertainty of heights above ground, [mm]."""
    g_hot: float
    g_cold: float
    allowable_mpa: float
    modulus_mpa: float
    """For the time the load stays."""
    stock_mm: tuple[float, ...]
    cutters_mm: tuple[float, ...]

    @property
    def seam(self) -> SlotFacts:
        """The seam of a slotted head; no other head may ask for it."""
        if not isinstance(self.head, SlotFacts):
            raise TypeError(f"a {self.head.kind} has no seam")
        return self.head

    @property
    def rail(self) -> CushionFacts:
        """The face on a flat cushion; no other head may ask for it."""
        if not isinstance(self.head, CushionFacts):
            raise TypeError(f"a {self.head.kind} has no face")
        return self.head

    @property
    def pocket(self) -> PlugFacts:
        """The hole that a plug enters; no other head may ask for it."""
        if not isinstance(self.head, PlugFacts):
            raise TypeError(f"a {self.head.kind} has no hole")
        return self.head

    @cached_property
    def rooms(self) -> frozenset[str]:
        """The rooms of feet and heads whose rules apply to this pad."""
        return self.foot.rooms | self.head.rooms

    def said(self, words: str) -> str:
        """Words of a rule that serves several kinds, in those of this pad's foot and head."""
        return self.head.said(self.foot.said(words))

    def own_keys(self, keys: tuple[str, ...]) -> tuple[str, ...]:
        """The measurements that a rule needs, by the keys of this pad's own kinds."""
        found = [self.head.keys.get(key, self.foot.own_key(key)) for key in keys]
        return tuple(dict.fromkeys(filter(None, found)))

    @cached_property
    def lift_needed_mm(self) -> float:
        """How far the seam must rise."""
        return self.measurements.car.lift_needed_mm

    @cached_property
    def is_inch(self) -> bool:
        """Whether sizes are rounded to inch steps."""
        return self.measurements.make.step == "inch"

    @cached_property
    def process(self) -> str:
        """How the pad is made."""
        return self.measurements.make.process

    @cached_property
    def rod_is_cut(self) -> bool:
        """Whether the pad is cut from a bar at all."""
        return self.process != "printed"

    @cached_property
    def slot_is_milled(self) -> bool:
        """Whether the slot is cut with an end mill."""
        return self.process in {"lathe_and_mill", "cnc"}


def conditions_of(measurements: Measurements) -> Conditions:
    """Resolve a document: defaults, load, growth, allowables.

    Raises BadMeasurementsError where the statics of the car cannot be.
    """
    service, make = measurements.service, measurements.make
    chosen = measurements.material_used()
    hot, hold, wet = service.temperature_high_c, service.hold, service.wetness
    force_n, curve = _force(measurements.car)
    lean_rad, pitch_deg = _lean(measurements.car, curve)
    design_force_n = lift.design_force_n(force_n)
    stress_mpa = allowable_mpa(chosen, hold=hold, temperature_high_c=hot, wetness=wet)
    modulus_mpa = holding_modulus_mpa(chosen, hold=hold, temperature_high_c=hot, wetness=wet)
    if stress_mpa is None or modulus_mpa is None:
        raise ValueError(f"{chosen.key} has no allowable for {hold}: the document should have been refused")
    return Conditions(
        measurements=measurements,
        foot=measurements.jack.facts(),
        head=measurements.face.facts(),
        material=chosen,
        force_n=force_n,
        design_force_n=design_force_n,
        side_force_n=side_force_n(design_force_n=design_force_n, lean_rad=lean_rad, ground=service.ground),
        lean_deg=degrees(lean_rad),
        pitch_deg=pitch_deg,
        curve=curve,
        u=make.uncertainty_used_mm,
        u_g=make.ground_uncertainty_mm,
        g_hot=hot_growth(chosen, temperature_high_c=hot, wetness=wet),
        g_cold=cold_growth(chosen, temperature_low_c=service.temperature_low_c),
        allowable_mpa=stress_mpa,
        modulus_mpa=modulus_mpa,
        stock_mm=make.stock_used_mm,
        cutters_mm=make.cutters_used_mm,
    )


def _force(car: Car) -> tuple[float, LiftCurve | None]:
    """The force at the lifting point, and the whole curve where the car's statics are known."""
    if car.load_source == "stated":
        return lift.weight_n(_known(car.load_kg)), None
    if car.load_source == "gross_mass":
        return lift.bound_from_gross_mass_n(_known(car.gross_mass_kg)), None
    curve = _curve(vehicle_of(car), car.lift_needed_mm)
    return curve.greatest_force_n, curve


@lru_cache(maxsize=32)
def _curve(vehicle: Vehicle, lift_needed_mm: float) -> LiftCurve:
    """The car's curve, which stays as it is while anything else is typed, compared or varied."""
    return lift_curve(vehicle, lift_needed_mm=lift_needed_mm)


def expected_force_n(car: Car) -> float | None:
    """What the car's mass says arrives at the sill, by statics where they are known; None where no mass is given."""
    if car.gross_mass_kg is None:
        return None
    try:
        return _curve(vehicle_of(car), car.lift_needed_mm).greatest_force_n
    except (ValueError, BadMeasurementsError):
        return lift.bound_from_gross_mass_n(car.gross_mass_kg)


def vehicle_of(car: Car) -> Vehicle:
    """The car as its statics need it."""
    return Vehicle(
        mass_kg=_known(car.gross_mass_kg),
        front_share=_known(car.front_share),
        wheelbase_mm=_known(car.wheelbase_mm),
        track_mm=_known(car.track_mm),
        point_behind_front_axle_mm=_known(car.point_behind_front_axle_mm),
        point_from_centreline_mm=_known(car.point_from_centreline_mm),
        cg_offset_mm=car.cg_offset_mm,
        ride_frequency_hz=car.ride_frequency_hz,
    )


def _lean(car: Car, curve: LiftCurve | None) -> tuple[float, float | None]:
    """Lean in radians and pitch in degrees at the wanted lift."""
    if curve is None:
        return assumed_lean_rad(car.lift_needed_mm), None
    point = curve.at(car.lift_needed_mm)
    return radians(abs(point.roll_deg)), abs(point.pitch_deg)


def _known(value: float | None) -> float:
    """A number that the document's own rules have made sure of."""
    if value is None:
        raise ValueError("the document should have been refused: a measurement of the car is missing")
    return value
