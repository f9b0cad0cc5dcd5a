"""Numbers that can exist and seldom do: a few words beside the field, asking whether it was measured that way. Never blocks.

The figures are common practice and have no source: they say what is usual on jacks and cars of ordinary size.
"""

from geometry.doubt import Doubt, Known, above, below
from geometry.feet_doubts import DOUBTS_OF_JACKS

_LOW = "jack.rim_height_low_mm"
_THICK, _BARE, _HEIGHT = "seam.thickness_mm", "seam.bare_thickness_mm", "seam.height_mm"
_FACE, _FACE_LONG, _BESIDE = "rail.face_width_mm", "rail.face_length_mm", "rail.clear_beside_mm"
_HOLE, _HOLE_LONG, _HOLE_DEEP = "pocket.hole_width_mm", "pocket.hole_length_mm", "pocket.hole_depth_mm"
_GROSS, _BASE, _TRACK = "car.gross_mass_kg", "car.wheelbase_mm", "car.track_mm"
_FOR_ITS_SIZE = "{value} kg is little for a car of this wheelbase: is it the whole vehicle's mass, and not an axle's?"
"""Permitted masses of cars are seldom below 320 kg for each square metre between the wheels, or 470 kg for each metre of wheelbase;
those of one axle are. Common practice, no source."""


def _heights(key: str, flat: str, what: str) -> tuple[Doubt, ...]:
    """What may be odd about how high the car's own part stands above the ground, on full tyres and on a flat one."""
    return (
        Doubt(key, above(key, 380), "{value} mm is high for a car on its wheels: is it still raised?"),
        Doubt(key, below(key, 110), "{value} mm is low for a car on its wheels: is a tyre flat, or is it loaded?"),
        Doubt(
            key,
            lambda known: known[key] <= known[_LOW],
            f"At {{value}} mm the {what} stands no higher than the lowered jack: is all of it from the same ground?",
            (_LOW,),
        ),
        Doubt(
            flat,
            lambda known: known[key] - known[flat] > 120,
            "{value} mm is far below the height on full tyres: is it the same point?",
            (key,),
        ),
    )


_OF_SEAM = (
    Doubt(_THICK, above(_THICK, 8), "A seam {value} mm thick is unusual: did you include the sill?"),
    Doubt(_THICK, below(_THICK, 1.4), "{value} mm is thin for two sheets and their paint: is it the whole seam?"),
    Doubt(
        _BARE,
        lambda known: known[_BARE] == known[_THICK],
        "As thick as with its paint: is there none, nor sealer? Where there is, it carries nothing.",
        (_THICK,),
    ),
    Doubt("seam.sheets", above("seam.sheets", 4), "{value} sheets are many: count them again at the bare edge."),
    Doubt(_HEIGHT, above(_HEIGHT, 35), "A seam {value} mm tall is unusual: from the sill's underside, or higher up?"),
    Doubt(_HEIGHT, below(_HEIGHT, 9), "A seam {value} mm tall is low: from the sill's underside to the very edge?"),
    Doubt(
        "seam.straight_length_mm",
        below("seam.straight_length_mm", 50),
        "{value} mm is short: is there a longer straight part at the maker's lifting point?",
    ),
    Doubt(
        "seam.bow_mm",
        above("seam.bow_mm", 2),
        "A seam bowed by {value} mm has been bent before: look whether it is sound.",
    ),
    *_heights("seam.edge_height_mm", "seam.edge_height_flat_mm", "seam"),
)
_OF_RAIL = (
    Doubt(_FACE, above(_FACE, 150), "A face {value} mm wide is unusual: is it across, and its rounded edges left out?"),
    Doubt(
        _FACE, below(_FACE, 20), "A face {value} mm wide is narrow: is it the flat of the rail, and not an edge of it?"
    ),
    Doubt(
        _FACE_LONG, below(_FACE_LONG, 40), "{value} mm is short: is there a longer flat at the maker's lifting point?"
    ),
    Doubt(
        _BESIDE,
        above(_BESIDE, 150),
        "{value} mm is much: is it the lowest thing beside the face, from the face's level?",
    ),
    *_heights("rail.face_height_mm", "rail.face_height_flat_mm", "face"),
)
_OF_POCKET = (
    Doubt(_HOLE, above(_HOLE, 80), "A hole {value} mm wide is unusual: is it the hole, and not its rim?"),
    Doubt(_HOLE, below(_HOLE, 15), "A hole {value} mm wide is small: is it for lifting, or for water to run out?"),
    Doubt(_HOLE_LONG, above(_HOLE_LONG, 130), "A hole {value} mm long is unusual: is it the hole, and not its rim?"),
    Doubt(
        _HOLE_LONG,
        lambda known: known[_HOLE_LONG] < known[_HOLE],
        "{value} mm along the car is less than across it: are the two exchanged?",
        (_HOLE,),
    ),
    Doubt(_HOLE_DEEP, above(_HOLE_DEEP, 150), "{value} mm is deep: is that the first thing that the rod meets?"),
    Doubt(_HOLE_DEEP, below(_HOLE_DEEP, 8), "{value} mm is shallow: does dirt or wax lie in the hole?"),
    Doubt(
        "pocket.rim_width_mm", above("pocket.rim_width_mm", 50), "A rim {value} mm wide is unusual: is all of it flat?"
    ),
    *_heights("pocket.rim_height_mm", "pocket.rim_height_flat_mm", "rim of the hole"),
)
_OF_CAR = (
    Doubt(_GROSS, below(_GROSS, 850), "{value} kg is light: is it the greatest permitted mass, and not an axle's?"),
    Doubt(
        _GROSS,
        lambda known: known[_GROSS] < 320 * known[_BASE] * known[_TRACK] / 1e6,
        _FOR_ITS_SIZE,
        (_BASE, _TRACK),
    ),
    Doubt(_GROSS, lambda known: known[_GROSS] < 470 * known[_BASE] / 1e3, _FOR_ITS_SIZE, (_BASE,)),
    Doubt(_GROSS, above(_GROSS, 3500), "{value} kg is heavy for a car: is it the vehicle's own plate, in kilograms?"),
    Doubt(
        _BASE,
        lambda known: not 2000 <= known[_BASE] <= 4000,
        "A wheelbase of {value} mm is unusual: hub to hub?",
    ),
    Doubt(
        _TRACK,
        lambda known: not 1200 <= known[_TRACK] <= 1900,
        "A track of {value} mm is unusual: tyre middle to tyre middle?",
    ),
)

DOUBTS: tuple[Doubt, ...] = (*DOUBTS_OF_JACKS, *_OF_SEAM, *_OF_RAIL, *_OF_POCKET, *_OF_CAR)
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
