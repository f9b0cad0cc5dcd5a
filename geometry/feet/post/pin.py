"""The retaining pin: where its hole goes through the stem, and that it meets the hole and carries nothing."""

from geometry.bound_rules import bound
from geometry.case import Case
from geometry.draft import Draft
from geometry.feet.post.fields import PostFacts
from geometry.feet.post.places import (
    LEAST_CROSS_HOLE,
    OFF_THE_MIDDLE_MM,
    least_cross_hole_mm,
    pin_numbers,
    pin_of,
    sag_mm,
)
from geometry.provenance import derived
from geometry.rules import Finding, Numbers, Pointless, check
from geometry.told import mm

_NEEDS = ("jack.pin_diameter_mm", "jack.pin_distance_mm", "jack.post_bore_mm", "make.measured_with")
_FIT = derived("Worst case of measurement, growth, play and tolerance (ISO 2768-1 m), the hole 0.3 mm off the middle")
NO_PIN = Pointless("No retaining pin goes through the stem.")


@bound(
    "cross_hole_diameter_mm",
    "lower",
    "The pin goes through when the seat stands on the bore's rim, and carries nothing when the load squashes the seat.",
    formula=LEAST_CROSS_HOLE,
    source=_FIT,
    needs=_NEEDS,
    numbers=pin_numbers,
)
def _pin_goes_through(d: Draft) -> float | None:
    return least_cross_hole_mm(d, tolerance_mm=d.tol) if pin_of(d) else None


@bound(
    "cross_hole_diameter_mm",
    "upper",
    "At least half of the stem's thickness stays beside the hole.",
    formula="stem / 2",
    source=derived("Two thirds of the area goes with a hole of half the thickness; more is no stem"),
    needs=("jack.pin_diameter_mm", "jack.post_bore_mm"),
    numbers=pin_numbers,
)
def _stem_stays_beside_the_hole(d: Draft) -> float | None:
    return d.stem_diameter_mm / 2 if pin_of(d) else None


@bound(
    "cross_hole_diameter_mm",
    "upper",
    "Between the hole and the seat 2 mm of stem stay.",
    formula="2 * (pin_x - 2)",
    source=derived("Least stem worth leaving above the hole"),
    needs=("jack.pin_distance_mm", "jack.pin_diameter_mm"),
    numbers=pin_numbers,
)
def _stem_stays_above_the_hole(d: Draft) -> float | None:
    bore = pin_of(d)
    return 2 * (bore.pin_distance_mm - 2) if bore else None


@bound(
    "cross_hole_distance_mm",
    "lower",
    "The hole lies where the pin is when the seat stands on the bore's rim, at 20 °C.",
    formula="pin_x",
    source=derived("The hole's clearance takes up the tolerance of the place, and growth"),
    needs=("jack.pin_distance_mm",),
    numbers=pin_numbers,
)
def _hole_is_where_the_pin_is(d: Draft) -> float | None:
    bore = pin_of(d)
    return bore.pin_distance_mm if bore else None


def pinned(k: Case) -> PostFacts | None:
    """The bore, where a pin and a hole for it are there to be judged."""
    foot = k.c.foot
    if not isinstance(foot, PostFacts) or foot.pin_diameter_mm <= 0:
        return None
    return foot if k.pad.has_cross_hole and k.pad.has_stem else None


def pinned_numbers(k: Case, bore: PostFacts) -> dict[str, float]:
    """Pin, hole, stem and what acts on them, as the formulas name them."""
    return {
        "pin": bore.pin_diameter_mm,
        "pin_x": bore.pin_distance_mm,
        "cross": k.pad.cross_hole_diameter_mm,
        "cross_x": k.pad.cross_hole_distance_mm,
        "tol": k.tolerance_mm("cross_hole_diameter_mm"),
        "tol_x": k.tolerance_mm("cross_hole_distance_mm"),
        "u": k.c.u,
        "g_hot": k.c.g_hot,
        "g_cold": k.c.g_cold,
        "play": max(0.0, k.foot.play_mm),
        "sink": sink_of(k),
        "stem": k.pad.stem_diameter_mm,
        "length": k.pad.stem_length_mm,
        "c_e": k.pad.edge_chamfer_mm,
        "H": k.c.side_force_n,
        "sigma_allow": k.c.allowable_mpa,
    }


def sink_of(k: Case) -> float:
    """How far the stem sinks under the load, [mm]: the seat squashed over the whole web, and the web's sag into the bore."""
    bore, web = k.c.foot.bore_mm, k.pad.web_mm
    pressed = 1.1 * min(k.foot.mean_mpa, k.c.allowable_mpa) * web / k.c.modulus_mpa
    return pressed + sag_mm(force_n=k.head.force_over_n(bore), bore_mm=bore, web_mm=web, modulus_mpa=k.c.modulus_mpa)


_ABOVE = "pin_x - pin / 2 - 1.5 * u - (cross_x + tol_x - (cross - tol) / 2) * (1 + g_hot)"
_BELOW = "(cross_x - tol_x + (cross - tol) / 2) * (1 + g_cold) - pin_x - pin / 2 - 1.5 * u"
_BESIDE = "((cross - tol) / 2 - 0.3) * (1 + g_cold) - pin / 2 - (u + play) / 2"


def _above_mm(n: Numbers) -> float:
    top = (n["cross_x"] + n["tol_x"] - (n["cross"] - n["tol"]) / 2) * (1 + n["g_hot"])
    return n["pin_x"] - n["pin"] / 2 - 1.5 * n["u"] - top


def _below_mm(n: Numbers) -> float:
    bottom = (n["cross_x"] - n["tol_x"] + (n["cross"] - n["tol"]) / 2) * (1 + n["g_cold"])
    return bottom - n["pin_x"] - n["pin"] / 2 - 1.5 * n["u"]


@check(
    "pin_meets",
    "Pin goes through its hole",
    formula=_ABOVE,
    limit_formula="0",
    unit="mm",
    sense="at_least",
    source=_FIT,
    needs=_NEEDS,
    place="stem",
)
def _pin_meets(k: Case) -> Finding | Pointless:
    bore = pinned(k)
    if bore is None:
        return NO_PIN
    n = pinned_numbers(k, bore)
    above, below = _above_mm(n), _below_mm(n)
    least, where = min((above, "over"), (below, "under"))
    return Finding(
        least,
        0.0,
        lambda: (
            f"With the seat on the bore's rim the hole leaves {mm(least, '.2f')} {where} the pin at worst."
            if least >= 0
            else f"With the seat on the bore's rim the pin may miss its hole by {mm(-least, '.2f')}."
        ),
        n,
        formula=_ABOVE if above <= below else _BELOW,
    )


@check(
    "pin_free",
    "Pin carries nothing",
    formula=f"{_ABOVE} - sink",
    limit_formula="0",
    unit="mm",
    sense="at_least",
    source=derived("Worst case of fit, with the whole web squashed (Hooke's law) and sagging into the bore"),
    needs=(*_NEEDS, "car.gross_mass_kg", "make.material"),
    place="stem",
)
def _pin_free(k: Case) -> Finding | Pointless:
    bore = pinned(k)
    if bore is None:
        return NO_PIN
    n = pinned_numbers(k, bore)
    above = _above_mm(n) - n["sink"]
    beside = ((n["cross"] - n["tol"]) / 2 - OFF_THE_MIDDLE_MM) * (1 + n["g_cold"])
    beside -= n["pin"] / 2 + (n["u"] + n["play"]) / 2
    least, where = min((above, "over"), (beside, "beside"))
    return Finding(
        least,
        0.0,
        lambda: (
            f"Under the load the stem sinks by {mm(n['sink'], '.2f')} and moves by its play: {mm(least, '.2f')} stay"
            f" free {where} the"
            " pin, which carries nothing."
            if least >= 0
            else f"Under the load the stem would press on the pin: {mm(-least, '.2f')} are missing {where} it, and a"
            " pin that carries"
            " shears the stem. Use a thinner pin, or none."
        ),
        n,
        formula=f"{_ABOVE} - sink" if above <= beside else _BESIDE,
    )
