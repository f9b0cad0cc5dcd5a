"""Doubts about what was measured on a jack, one group for each kind of foot; common practice, no source."""

from geometry.doubt import Doubt, above, around, below

_BORE, _DEPTH, _RIM = "jack.cup_bore_mm", "jack.cup_depth_mm", "jack.rim_diameter_mm"
_LOW, _HIGH = "jack.rim_height_low_mm", "jack.rim_height_high_mm"
_TEETH, _TALL, _OVER = "jack.between_teeth_mm", "jack.tooth_height_mm", "jack.over_teeth_mm"
_LONG, _WIDE, _LAND_HOLE = "jack.tip_length_mm", "jack.tip_width_mm", "jack.land_hole_diameter_mm"
_PLATE, _RING, _RING_HIGH, _FREE = (
    "jack.plate_diameter_mm",
    "jack.ring_bore_mm",
    "jack.ring_height_mm",
    "jack.free_edge_mm",
)
_POST, _POST_DEEP, _POST_RIM = "jack.post_bore_mm", "jack.post_bore_depth_mm", "jack.bore_rim_diameter_mm"
_PIN, _PIN_LOW = "jack.pin_diameter_mm", "jack.pin_distance_mm"
_RATED = "jack.rated_load_kg"

_OF_CUP = (
    Doubt(_BORE, above(_BORE, 130), "A bore of {value} mm is wide for a cup: is it the inside that was measured?"),
    Doubt(_BORE, below(_BORE, 35), "A bore of {value} mm is narrow for a cup: is it the cup and not its hole?"),
    Doubt(_DEPTH, above(_DEPTH, 30), "{value} mm is deep for a cup: down to its floor, or through a hole in it?"),
    Doubt(_DEPTH, below(_DEPTH, 4), "A cup {value} mm deep hardly keeps a pad in: is it down to the floor?"),
    around(
        _RIM,
        _BORE,
        least=4,
        words="A rim {value} mm across leaves less than 2 mm of wall: is it the outside that was measured?",
    ),
)
_OF_SADDLE = (
    Doubt(_TEETH, above(_TEETH, 130), "{value} mm is wide between teeth: is it from inside to inside?"),
    Doubt(
        _TEETH,
        below(_TEETH, 35),
        "{value} mm is narrow between teeth: across the middle, and not from one to the next?",
    ),
    Doubt(_TALL, above(_TALL, 30), "Teeth {value} mm high are unusual: down to the land, or into a hole in it?"),
    Doubt(_TALL, below(_TALL, 4), "Teeth {value} mm high are low: is it down to the land?"),
    around(
        _OVER,
        _TEETH,
        least=8,
        words="{value} mm over the teeth leaves them less than 4 mm wide: is it from outside to outside?",
    ),
    Doubt("jack.teeth", above("jack.teeth", 16), "{value} teeth are many: count them again, from a mark."),
    Doubt(_LONG, above(_LONG, 60), "{value} mm is long for one tooth: is it the flat of its tip, around the ring?"),
    Doubt(_WIDE, above(_WIDE, 25), "{value} mm is wide for a tip: is it its flat alone, without the slopes beside it?"),
    Doubt(
        _LAND_HOLE,
        lambda known: known[_LAND_HOLE] > 0.7 * known[_TEETH],
        "A hole of {value} mm leaves a narrow ring of land: is it the hole, and not the land?",
        (_TEETH,),
    ),
)
_OF_PLATE = (
    Doubt(_PLATE, above(_PLATE, 160), "A plate of {value} mm is wide: is it the plate, and not what carries it?"),
    Doubt(_PLATE, below(_PLATE, 40), "A plate of {value} mm is small: right across, from edge to edge?"),
    Doubt(_FREE, below(_FREE, 6), "{value} mm leaves a skirt little to hang around: is it down from the plate's top?"),
    Doubt(
        _FREE, above(_FREE, 60), "{value} mm is much for a plate's edge: does nothing stand out beside it before that?"
    ),
    Doubt(_RING, above(_RING, 130), "A ring or recess of {value} mm is wide: is it the inside that was measured?"),
    Doubt(_RING, below(_RING, 35), "A ring or recess of {value} mm is narrow: is it not the plate's hole?"),
    Doubt(
        _RING,
        lambda known: known[_PLATE] - known[_RING] < 6,
        "{value} mm leaves less than 3 mm of plate around it: is it the inside that was measured?",
        (_PLATE,),
    ),
    Doubt(
        _RING_HIGH, above(_RING_HIGH, 30), "{value} mm is much for a ring or recess: is it from its floor to its top?"
    ),
    Doubt(_RING_HIGH, below(_RING_HIGH, 3), "{value} mm hardly keeps a pad in its place: is it down to the floor?"),
)
_OF_POST = (
    Doubt(_POST, above(_POST, 60), "A bore of {value} mm is wide for a post: is it the inside of the tube?"),
    Doubt(
        _POST, below(_POST, 15), "A bore of {value} mm is narrow for a post: is it the bore, and not a screw's hole?"
    ),
    Doubt(
        _POST_DEEP,
        above(_POST_DEEP, 200),
        "{value} mm is deep for a bore: is it the bore alone, and not what lies below it?",
    ),
    Doubt(
        _POST_DEEP,
        below(_POST_DEEP, 15),
        "A bore {value} mm deep hardly keeps a stem in: is there dirt at its bottom?",
    ),
    around(
        _POST_RIM,
        _POST,
        least=8,
        words="A rim of {value} mm is less than 4 mm wide around its bore: is it the outside?",
    ),
    Doubt(
        _POST_RIM,
        above(_POST_RIM, 130),
        "{value} mm is wide for a bore's rim: is all of it flat, and as high as the rest?",
    ),
    Doubt(_PIN, above(_PIN, 14), "{value} mm is thick for a retaining pin: is it the pin, and not its head?"),
    Doubt(_PIN, below(_PIN, 3), "{value} mm is thin for a retaining pin: is it the pin, and not what keeps it in?"),
    Doubt(_PIN_LOW, above(_PIN_LOW, 80), "{value} mm is far down for a pin: from the rim, or from the ground?"),
    Doubt(
        _PIN_LOW,
        lambda known: known[_PIN_LOW] < 1.5 * known[_PIN],
        "{value} mm is close under the rim: is it to the middle of the pin's hole?",
        (_PIN,),
    ),
)
_OF_ANY_JACK = (
    Doubt(_LOW, above(_LOW, 220), "{value} mm is high for a jack: is it fully down?"),
    Doubt(_LOW, below(_LOW, 60), "{value} mm is low for a jack: from the ground, or from its frame?"),
    Doubt(
        _HIGH,
        lambda known: known[_HIGH] - known[_LOW] < 120,
        "{value} mm is little more than with the jack down: is it pumped all the way up?",
        (_LOW,),
    ),
    Doubt(_RATED, below(_RATED, 900), "{value} kg is little for a jack: is it the plate's figure, in kilograms?"),
    Doubt(_RATED, above(_RATED, 6000), "{value} kg is much for a jack: is it the plate's figure, in kilograms?"),
)
DOUBTS_OF_JACKS = (*_OF_CUP, *_OF_SADDLE, *_OF_PLATE, *_OF_POST, *_OF_ANY_JACK)
"""Looked through in this order."""
