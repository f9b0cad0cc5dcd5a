"""Numbers that can exist and seldom do: a few words beside the field, asking whether it was measured that way. Never blocks.

The figures are common practice and have no source: they say what is usual on jacks and cars of ordinary size.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

Known = Mapping[str, float]
"""What is known so far, in mm, kg and plain numbers, by dotted key."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """One thing to look at again, at one field."""

    field: str
    is_odd: Callable[[Known], bool]
    """Asked only where everything in ``needs`` is known."""
    words: str
    """A sentence; ``{value}`` is the field's number."""
    needs: tuple[str, ...] = ()
    """Other fields that the question looks at."""


def _above(key: str, usual: float) -> Callable[[Known], bool]:
    return lambda known: known[key] > usual


def _below(key: str, usual: float) -> Callable[[Known], bool]:
    return lambda known: known[key] < usual


_BORE, _DEPTH, _RIM = "jack.cup_bore_mm", "jack.cup_depth_mm", "jack.rim_diameter_mm"
_LOW, _HIGH = "jack.rim_height_low_mm", "jack.rim_height_high_mm"
_THICK, _BARE, _HEIGHT = "seam.thickness_mm", "seam.bare_thickness_mm", "seam.height_mm"
_EDGE, _FLAT = "seam.edge_height_mm", "seam.edge_height_flat_mm"
_RATED, _GROSS = "jack.rated_load_kg", "car.gross_mass_kg"

DOUBTS: tuple[Doubt, ...] = (
    Doubt(_BORE, _above(_BORE, 130), "A bore of {value} mm is wide for a cup: is it the inside that was measured?"),
    Doubt(_BORE, _below(_BORE, 35), "A bore of {value} mm is narrow for a cup: is it the cup and not its hole?"),
    Doubt(_DEPTH, _above(_DEPTH, 30), "{value} mm is deep for a cup: down to its floor, or through a hole in it?"),
    Doubt(_DEPTH, _below(_DEPTH, 4), "A cup {value} mm deep hardly keeps a pad in: is it down to the floor?"),
    Doubt(
        _RIM,
        lambda known: known[_RIM] - known[_BORE] < 4,
        "A rim {value} mm across leaves less than 2 mm of wall: is it the outside that was measured?",
        (_BORE,),
    ),
    Doubt(_LOW, _above(_LOW, 220), "{value} mm is high for a rim: is the jack fully down?"),
    Doubt(_LOW, _below(_LOW, 60), "{value} mm is low for a rim: from the ground, or from the jack's frame?"),
    Doubt(
        _HIGH,
        lambda known: known[_HIGH] - known[_LOW] < 120,
        "{value} mm is little more than with the jack down: is it pumped all the way up?",
        (_LOW,),
    ),
    Doubt(_RATED, _below(_RATED, 900), "{value} kg is little for a jack: is it the plate's figure, in kilograms?"),
    Doubt(_RATED, _above(_RATED, 6000), "{value} kg is much for a jack: is it the plate's figure, in kilograms?"),
    Doubt(_THICK, _above(_THICK, 8), "A seam {value} mm thick is unusual: did you include the sill?"),
    Doubt(_THICK, _below(_THICK, 1.4), "{value} mm is thin for two sheets and their paint: is it the whole seam?"),
    Doubt(
        _BARE,
        lambda known: known[_BARE] == known[_THICK],
        "As thick as with its paint: is there none, nor sealer? Where there is, it carries nothing.",
        (_THICK,),
    ),
    Doubt("seam.sheets", _above("seam.sheets", 4), "{value} sheets are many: count them again at the bare edge."),
    Doubt(_HEIGHT, _above(_HEIGHT, 35), "A seam {value} mm tall is unusual: from the sill's underside, or higher up?"),
    Doubt(_HEIGHT, _below(_HEIGHT, 9), "A seam {value} mm tall is low: from the sill's underside to the very edge?"),
    Doubt(
        "seam.straight_length_mm",
        _below("seam.straight_length_mm", 50),
        "{value} mm is short: is there a longer straight part at the maker's lifting point?",
    ),
    Doubt(
        "seam.bow_mm",
        _above("seam.bow_mm", 2),
        "A seam bowed by {value} mm has been bent before: look whether it is sound.",
    ),
    Doubt(_EDGE, _above(_EDGE, 380), "{value} mm is high for a car on its wheels: is it still raised?"),
    Doubt(_EDGE, _below(_EDGE, 110), "{value} mm is low for a car on its wheels: is a tyre flat, or is it loaded?"),
    Doubt(
        _EDGE,
        lambda known: known[_EDGE] <= known[_LOW],
        "At {value} mm the seam stands no higher than the lowered rim: is all of it from the same ground?",
        (_LOW,),
    ),
    Doubt(
        _FLAT,
        lambda known: known[_EDGE] - known[_FLAT] > 120,
        "{value} mm is far below the height on full tyres: is it the same point?",
        (_EDGE,),
    ),
    Doubt(_GROSS, _below(_GROSS, 850), "{value} kg is light: is it the greatest permitted mass, and not an axle's?"),
    Doubt(_GROSS, _above(_GROSS, 3500), "{value} kg is heavy for a car: is it the vehicle's own plate, in kilograms?"),
    Doubt(
        "car.wheelbase_mm",
        lambda known: not 2000 <= known["car.wheelbase_mm"] <= 4000,
        "A wheelbase of {value} mm is unusual: hub to hub?",
    ),
    Doubt(
        "car.track_mm",
        lambda known: not 1200 <= known["car.track_mm"] <= 1900,
        "A track of {value} mm is unusual: tyre middle to tyre middle?",
    ),
)
"""Looked through in this order; of several at one field the first is said."""


def doubts_of(known: Known) -> dict[str, str]:
    """What to look at again, by field.

    >>> doubts_of({"seam.thickness_mm": 12.0, "jack.cup_bore_mm": 68.0})
    {'seam.thickness_mm': 'A seam 12 mm thick is unusual: did you include the sill?'}
    """
    found: dict[str, str] = {}
    for doubt in DOUBTS:
        if (
            doubt.field not in found
            and all(key in known for key in (doubt.field, *doubt.needs))
            and doubt.is_odd(known)
        ):
            found[doubt.field] = doubt.words.format(value=f"{known[doubt.field]:g}")
    return found
