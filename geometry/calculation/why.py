"""Why each dimension is what it is, in a sentence or two with its numbers."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from geometry.calculation.why_faces import FACE_PHRASES
from geometry.calculation.why_post import POST
from geometry.calculation.why_skirt import SKIRT
from geometry.design import Design, let_go
from geometry.errors import NoPadFitsError
from geometry.ledger import Bound, Entry
from geometry.rules import BoundRule, Numbers
from geometry.units import inch_to_mm

Phrase = Callable[["Told"], str]
_WET = {"dry": "dry", "room": "in room air", "soaked": "soaked"}
_CHAMFER = "it breaks the edge so that it neither cuts nor chips; the usual size"


class Told:
    """The numbers of one bound, in words."""

    def __init__(self, design: Design, bound: Bound, size_mm: float) -> None:
        self.design, self.bound, self.size_mm = design, bound, size_mm
        self.numbers: Numbers = bound.numbers

    def mm(self, symbol: str) -> str:
        """A length of the bound's formula."""
        return length(self.numbers[symbol])

    def measured(self, symbol: str, uncertainty: str = "u") -> str:
        """A measured length with its uncertainty."""
        return f"{self.mm(symbol)} ± {self.mm(uncertainty)}"

    def hot(self) -> str:
        """How much the size grows at the hottest and wettest."""
        c = self.design.conditions
        by = c.measurements.service
        growth = self.size_mm * c.g_hot
        verb = "grows" if growth >= 0 else "shrinks"
        return (
            f"{c.material.short_name} {verb} {length(abs(growth))} by {by.temperature_high_c:g} °C {_WET[by.wetness]}"
        )

    def cold(self) -> str:
        """How much it shrinks at the coldest."""
        c = self.design.conditions
        shrinkage = -self.size_mm * c.g_cold
        verb = "shrinks" if shrinkage >= 0 else "grows"
        low = f"{c.measurements.service.temperature_low_c:g}".replace("-", "−")
        return f"{c.material.short_name} {verb} {length(abs(shrinkage))} by {low} °C"


def length(value_mm: float) -> str:
    """A length inside a sentence, to a hundredth.

    >>> length(67.0), length(-0.234)
    ('67', '−0.23')
    """
    return f"{value_mm:.2f}".rstrip("0").rstrip(".").replace("-", "−")


def why(design: Design, entry: Entry) -> str:
    """The value, and the numbers that made it, in a sentence or two."""
    if entry.is_fixed:
        return f"{length(entry.value_mm)} because you fixed it{_free_words(design, entry)}."
    if entry.value_mm == 0:
        nothing = design.conditions.said("None: the cup has no hole that takes a stem.")
        return entry.notes[0] if entry.notes else nothing
    bound = entry.deciding
    if bound is None:
        return f"{length(entry.value_mm)} because {_CHAMFER}."
    phrase = design.conditions.said(PHRASES[phrase_key(bound.rule)](Told(design, bound, entry.value_mm)))
    return f"{length(entry.value_mm)} because {phrase}{_rounding(design, entry, bound)}."


def _free_words(design: Design, entry: Entry) -> str:
    """What the size would be if it were let go."""
    free = let_go(design, entry.dimension)
    if free is None:
        return ""
    if isinstance(free, NoPadFitsError):
        return "; let go, no pad would fit"
    size = getattr(free.pad, entry.dimension)
    return f"; let go, it would be {length(size)}" if size else "; let go, there would be none"


def _rounding(design: Design, entry: Entry, bound: Bound) -> str:
    """From the bound to the value."""
    if abs(bound.value - entry.value_mm) < 1e-6:
        return ""
    c, made = design.conditions, length(entry.value_mm)
    least = "at least" if bound.rule.side == "lower" else "at most"
    reached = f": {least} {bound.value:.3f}"
    if entry.dimension == "slot_width_mm" and c.slot_is_milled and entry.value_mm in c.cutters_mm:
        return f"{reached}, and {made} is the smallest end mill to hand that gives it"
    step = (_ROUNDS_IN if c.is_inch else _ROUNDS_MM).get(entry.dimension)
    if step and abs(bound.value - entry.value_mm) >= step:
        return f"{reached}. The sizes are found in rounds; an earlier round asked for {made}, and that is kept"
    return f"{reached}, rounded {'up' if bound.rule.side == 'lower' else 'down'} to {made}"


_ROUNDS_MM = {"web_mm": 0.5, "body_diameter_mm": 1.0}
_ROUNDS_IN = {"web_mm": inch_to_mm(0.025), "body_diameter_mm": inch_to_mm(1 / 32)}
"""The steps that web and body are rounded to: further from its bound, a value was settled in an earlier round."""


def phrase_key(rule: BoundRule) -> tuple[str, str]:
    """Under which key a bound has its phrase."""
    return rule.dimension, rule.formula


PHRASES: Mapping[tuple[str, str], Phrase] = MappingProxyType(
    {
        **SKIRT,
        **FACE_PHRASES,
        **POST,
        ("seat_diameter_mm", "(0.90 * cup_bore + u) / (1 + g_cold) + tol"): lambda b: (
            f"it must fill nine tenths of a cup of {b.measured('cup_bore')}, {b.cold()}, and it may be turned {b.mm('tol')} too"
            " small"
        ),
        ("seat_diameter_mm", "(cup_bore - u) / (1 + g_hot) - 0.20 - tol"): lambda b: (
            f"the cup is {b.measured('cup_bore')}, {b.hot()}, 0.2 is kept free, and it may be turned {b.mm('tol')} too large"
        ),
        ("seat_corner_radius_mm", "cup_corner + u + tol"): lambda b: (
            f"the cup's corner is {b.measured('cup_corner')} and the pad's may come out {b.mm('tol')} too sharp"
        ),
        ("seat_corner_radius_mm", "min(seat / 4, (seat - hole - 6) / 2)"): lambda b: (
            f"a seat of {b.mm('seat')} must keep a flat face"
        ),
        ("seat_recess_diameter_mm", "(boss_d + u + play + 1.0) / (1 + g_cold) + tol"): lambda b: (
            f"the boss on the cup's floor is {b.measured('boss_d')} wide, the seat may play {b.mm('play')}, and {b.cold()}."
            f" Besides, 1 is kept"
            f" free, and it may be turned {b.mm('tol')} too narrow"
        ),
        ("seat_recess_diameter_mm", "seat_flat - 6 - tol"): lambda b: (
            f"3 of face must stay on each side of a flat of {b.mm('seat_flat')}"
        ),
        ("seat_recess_depth_mm", "(boss + u + 1.0 + squash) / (1 + g_cold) + tol"): lambda b: (
            f"the boss stands {b.measured('boss')} high, the load squashes the seat by {b.mm('squash')}, and {b.cold()}."
            f" Besides, 1 is kept"
            f" free, and it may be turned {b.mm('tol')} too shallow"
        ),
        ("slot_offset_mm", "off"): lambda b: f"the seam passes {b.mm('off')} beside the jack's axis",
        ("cross_slot_width_mm", "slot"): lambda b: f"it takes the same seam as the first slot, {b.mm('slot')} wide",
        ("relief_width_mm", "max((t_l + u + bow + 1.0) / (1 + g_cold) + tol, slot + 2 * c_m + 1)"): lambda b: (
            f"the seam's thickest place is {b.measured('t_l')} thick and bowed {b.mm('bow')}, and {b.cold()}."
            f" Besides, 1 lets it go in, and the"
            f" pocket must be wider than a slot of {b.mm('slot')}"
        ),
        ("relief_length_mm", "(length_l + u + 6) / (1 + g_cold) + tol"): lambda b: (
            f"the place is {b.measured('length_l')} long, 3 at each end let the jack stand a little off, and {b.cold()}. It may be"
            f" cut {b.mm('tol')} too short"
        ),
        ("relief_depth_mm", "slot_depth + (drop + u + 1.0) / (1 + g_cold) + tol"): lambda b: (
            f"the slot is {b.mm('slot_depth')} deep, {b.mm('drop')} hangs below the seam's edge, 1 is kept free, and {b.cold()}. It"
            f" may be cut {b.mm('tol')} too shallow"
        ),
        ("relief_depth_mm", "slot_depth"): lambda b: f"it is as deep as the slot, {b.mm('slot_depth')}",
        ("flats_width_mm", "max(slot + 2 * slot_off + 24, seat + 4)"): lambda b: (
            f"a slot of {b.mm('slot')} needs walls of 12 and a seat of {b.mm('seat')} a lip"
            if b.numbers["slot"] > 0
            else f"a seat of {b.mm('seat')} needs a lip of 2 all round"
        ),
        ("body_diameter_mm", "flats + 4"): lambda b: f"flats {b.mm('flats')} apart are to be wide enough to hold it by",
        ("body_diameter_mm", "slot + 24 + 2 * slot_off"): lambda b: (
            f"a slot of {b.mm('slot')}, {b.mm('slot_off')} off the middle, needs 12 of wall on its thin side"
        ),
        ("body_diameter_mm", "2 * (sqrt((slot_off + relief / 2)**2 + (relief_l / 2)**2) + c_e + 6)"): lambda b: (
            f"a pocket of {b.mm('relief')} by {b.mm('relief_l')} keeps 6 of wall around it"
        ),
        ("body_diameter_mm", "sqrt((L_m + 2 * c_e)**2 + (slot + 2 * slot_off)**2)"): lambda b: (
            f"{b.mm('L_m')} of the seam's edge must be carried for it to leave no lasting mark, {b.mm('slot_off')} off the middle"
        ),
        ("web_mm", "recess_depth + 5"): lambda b: f"5 must stay over a recess {b.mm('recess_depth')} deep",
        (
            "web_mm",
            "recess_depth + sqrt(6 * P * ((1 + nu) * ln(a / b) + 1 - (1 - nu) * b**2 / (4 * a**2)) / (4 * pi) / sigma_allow)",
        ): lambda b: f"over a recess {b.mm('recess_depth')} deep it must bridge the boss without bending through",
        ("web_mm", "seat_length + relief_d - slot_depth + 4"): lambda b: (
            f"4 of floor must stay under a pocket {b.mm('relief_d')} deep, above a seat of {b.mm('seat_length')}"
        ),
        ("web_mm", "seat - above"): lambda b: (
            f"with {b.mm('above')} above what carries no pad is offered that is taller than its seat of {b.mm('seat')} is wide"
        ),
        ("seat_length_mm", "r + 1"): lambda b: f"it must be 1 longer than its corner radius of {b.mm('r')}",
        ("seat_length_mm", "(cup_depth + u + 0.5 + squash) / (1 + g_cold) + tol + tol_run"): lambda b: (
            f"the cup is {b.measured('cup_depth')} deep, the load squashes the seat by {b.mm('squash')}, and {b.cold()}."
            f" Besides, 0.5 keeps the"
            f" lip off the rim, it may be turned {b.mm('tol')} too short, and its lip may run out by {b.mm('tol_run')}"
        ),
        ("stem_diameter_mm", "6"): lambda b: "a thinner stem breaks off in the hand",
        ("stem_diameter_mm", "(hole - u) / (1 + g_hot) - tol - play - 1.0"): lambda b: (
            f"the hole is {b.measured('hole')}, the seat may play {b.mm('play')} in the cup, and {b.hot()}."
            f" Besides, 1 is kept free, and it may"
            f" be turned {b.mm('tol')} too thick"
        ),
        ("stem_length_mm", "5"): lambda b: "a shorter stem retains nothing",
        ("stem_length_mm", "(hole_depth - u - 1.5) / (1 + g_hot) - tol"): lambda b: (
            f"the hole is {b.measured('hole_depth')} deep, and {b.hot()}."
            f" Besides, 1.5 is kept free, and it may be turned {b.mm('tol')} too long"
        ),
        ("stem_length_mm", "stem"): lambda b: f"a stem longer than its {b.mm('stem')} of thickness only breaks sooner",
        ("slot_width_mm", "(t + u + bow + 0.6) / (1 + g_cold) + tol"): lambda b: (
            f"the seam is {b.measured('t')} thick and bowed {b.mm('bow')}, and {b.cold()}."
            f" Besides, 0.6 lets it go in, and the slot may be cut"
            f" {b.mm('tol')} too narrow"
        ),
        ("slot_width_mm", "(t - u + bow + max(2.5, t)) / (1 + g_hot) - tol"): lambda b: (
            f"the seam is {b.measured('t')} thick and bowed {b.mm('bow')}, and a wider slot would not keep it upright"
        ),
        ("slot_depth_mm", "0.5 * height"): lambda b: (
            f"half the seam's height of {b.mm('height')} is to be held at its sides"
        ),
        ("slot_depth_mm", "1.0 + c_m"): lambda b: f"1 of wall must guide the seam below a chamfer of {b.mm('c_m')}",
        ("slot_depth_mm", "(clear - u - 3.0) / (1 + g_hot) - tol - tol_par"): lambda b: (
            f"{b.measured('clear')} is free above the seam's edge, 3 is kept between wall and sill, and {b.hot()}."
            f" The slot may be cut"
            f" {b.mm('tol')} too deep, and its floor may slope by {b.mm('tol_par')}"
        ),
        ("web_mm", "10"): lambda b: "less under the slot is no web",
        (
            "web_mm",
            "sqrt(6 * P * ((1 + nu) * ln(a / b) + 1 - (1 - nu) * b**2 / (4 * a**2)) / (4 * pi) / sigma_allow)",
        ): lambda b: (
            f"{b.numbers['P']:.0f} N stand over a hole of {length(2 * b.numbers['a'])}, and the web must bridge it"
        ),
        ("web_mm", "(lift + edge - rim_high + cup_depth + u + 2 * u_g) / (1 + g_cold) + tol + tol_par"): lambda b: (
            f"the seam at {b.measured('edge', 'u_g')} must rise {b.mm('lift')} and the jack's rim reaches"
            f" {b.measured('rim_high', 'u_g')}"
        ),
        ("web_mm", "sqrt(3) * q / (2 * sigma_allow)"): lambda b: (
            f"the edge's {b.numbers['q']:.0f} N/mm must not punch through at {b.numbers['sigma_allow']:.1f} MPa"
        ),
        ("web_mm", "(cup_depth + u + 2.0) / (1 + g_cold) + tol + tol_par"): lambda b: (
            f"the cup is {b.measured('cup_depth')} deep, the seam's edge must run 2 above its rim, and {b.cold()}. It may be turned"
            f" {b.mm('tol')} too thin, and the slot's floor may slope by {b.mm('tol_par')}"
        ),
        ("web_mm", "seat_length + max(4, sqrt(3) * q / (2 * sigma_allow))"): lambda b: (
            f"the seat is {b.mm('seat_length')} long and above it the lip must carry the edge's {b.numbers['q']:.0f} N/mm at"
            f" {b.numbers['sigma_allow']:.1f} MPa"
        ),
        (
            "web_mm",
            "seat_length + (1.1 * q + sqrt((1.1 * q)**2 + 5.2 * sigma_allow * q * slot)) / (4 * sigma_allow)",
        ): lambda b: (
            f"the seat is {b.mm('seat_length')} long and above it the lip must not be bent through across a slot of"
            f" {b.mm('slot')} by the edge's {b.numbers['q']:.0f} N/mm"
        ),
        (
            "web_mm",
            "(edge - rim_low + cup_depth - u - 2 * u_g - 5 + obstacle) / (1 + g_hot) - tol - tol_d - tol_par - above",
        ): lambda b: f"the walls must pass under the seam's edge at {b.measured('edge', 'u_g')} as the jack rolls in",
        (
            "web_mm",
            "(edge_flat - rim_low + cup_depth - u - 2 * u_g - 5 + obstacle) / (1 + g_hot) - tol - tol_d - tol_par - above",
        ): lambda b: (
            f"the walls must pass under the seam's edge at {b.measured('edge_flat', 'u_g')} with the tyre flat"
        ),
        ("web_mm", "seat_flat - above"): lambda b: (
            f"the pad stays lower than its flat seat of {b.mm('seat_flat')} is wide"
        ),
        ("body_diameter_mm", "stock - 2"): lambda b: (
            f"the largest bar to hand is {b.mm('stock')} and 1 is turned off all round"
        ),
        ("body_diameter_mm", "seat + 4"): lambda b: f"the seat is {b.mm('seat')} and a lip of 2 stands out all round",
        ("body_diameter_mm", "slot + 24"): lambda b: (
            f"the slot is {b.mm('slot')} wide and a wall of 12 stands on each side"
        ),
        ("body_diameter_mm", "sqrt((L_m + 2 * c_e)**2 + slot**2)"): lambda b: (
            f"{b.mm('L_m')} of the seam's edge, or as much as fits, must be carried for it to leave no lasting mark"
        ),
        ("slot_corner_radius_mm", "0.3"): lambda b: "a radius of 0.3 keeps the wall's root from cracking",
        ("slot_corner_radius_mm", "0.1"): lambda b: "no end mill leaves a sharper corner",
        ("slot_corner_radius_mm", "((slot - tol_slot) * (1 + g_cold) - t - u - bow) / 2"): lambda b: (
            f"the slot may be {b.mm('tol_slot')} too narrow for a seam of {b.measured('t')}, and its edge must stand flat beside"
            " the radius"
        ),
        ("slot_corner_radius_mm", "0.5"): lambda b: "0.5 is enough for the wall's root",
    }
)
"""For every bound, what follows “because”; keyed by dimension and formula."""
