"""What the guide says in its own words: what each check is for, how a lift goes, how a pad is made."""

from collections.abc import Mapping
from dataclasses import dataclass

from geometry.materials import Family

PURPOSES: Mapping[str, str] = {
    "boss_clear": "A pad that stands on a bolt head rocks on one point instead of standing on the cup's floor.",
    "relief_clear": "A doubler or a drain lip that touches the pocket takes the load where nothing is meant to carry.",
    "slot_offset_fit": "A slot beside the seam makes the pad lean in the cup before anything is lifted.",
    "slenderness": "A tall, narrow pad tips out of its cup before anything breaks; a low one cannot.",
    "entry_height": "Cup and pad together must roll in under the seam while the car still stands on its wheels.",
    "entry_height_flat": "With the tyre flat the seam hangs lower, and that is when a pad is wanted most.",
    "lift_height": "A jack that runs out of travel leaves the wheel on the ground.",
    "jack_rating": "What arrives at the sill must not be more than the jack's maker allows for the jack.",
    "temperature": "Plastic goes soft in heat long before it melts: think of a dark boot in summer.",
    "stock": "The pad can only be turned from a bar that is thicker than its body.",
    "cutter": "A slot can be milled only with an end mill that is no wider than the slot.",
    "seam_lean": "As one side rises the car leans; a seam without room to lean pries at the slot's walls.",
    "saddle_pitch": "A car that pitches tilts its seam along the slot, and one end of the slot then carries it all.",
    "cup_floor_bearing": "The seat face carries the whole load; off centre, one edge of it carries more than its share.",
    "web_bending": "Over a hole in the cup's floor the web has nothing under it and bends like the lid of a tin.",
    "tipping": "A side load at the top moves the load's line outwards; near the edge of the seat the pad tips.",
    "tip_bearing": "Teeth carry on their tips alone, and the tooth on the loaded side takes most: narrow tips cut into plastic.",
    "skirt_fit_tight": "Cold and dry, the skirt must still go on by hand and come off again.",
    "skirt_fit_loose": "Hot and wet, a skirt with much play lets the pad stand off the middle.",
    "skirt_overlap": "A skirt that hardly reaches over the edge lets the pad slip off it.",
    "skirt_clear": "The seat face carries: a skirt that meets an arm or a weld first is burst by the load.",
    "skirt_root": "The car leans as it rises and pushes the pad sideways: the skirt must not break off at its root.",
    "seat_fit_tight": "Hot and wet, the seat must still drop into the cup by hand and come out again.",
    "seat_fit_loose": "Cold and dry, a seat with much play stands askew and is pressed at one edge.",
    "stem_clear": "The stem only keeps the pad from falling out: it must touch neither wall nor bottom of its hole.",
    "lip_gap": "If the lip rests on the rim, the rim carries the load as a knife edge and the seat face none of it.",
    "corner_clear": "A pad whose corner is sharper than the cup's rides on the cup's radius instead of its floor.",
    "arm_clear": "A body much wider than the rim may meet the jack's arm or lugs as the jack rises.",
    "cup_floor_flat": "A bolt head or grit under the seat face splits plastic that a flat floor would not.",
    "post_fit_tight": "Hot and wet, the stem must still go into its bore by hand and come out again.",
    "post_fit_loose": "A stem with much play lets the pad shift at once by all of it when the car pushes sideways.",
    "post_bottom": "A stem that stands on the bottom of its bore carries the load on its end, and the seat none of it.",
    "post_guided": "A short stem tilts in its bore as far as its play lets it.",
    "post_side_load": "The stem alone keeps the pad from sliding off the bore's rim: the side load bends it below the seat.",
    "stem_tilt": "The seat gives way more on its loaded side: a stem without play would be bent over with it.",
    "stem_sway": "A stem of something soft bends out of the way of the side load, and the pad walks off the bore's rim.",
    "post_bearing": "The bore's wall must not dent the stem's side, or its play grows with each lift.",
    "rim_face": "Pushed to one side, the seat must still stand on the bore's rim all round.",
    "rim_thin": "A thin edge under a load that moves cuts like a blade, however little it presses on paper.",
    "web_punching": "Over the bore the web has nothing under it: the load must not push a plug out of it.",
    "pin_meets": "The holes of tube and stem must line up while the seat stands on the bore's rim, or the pin cannot go in.",
    "pin_free": "A pin that touches carries some of the load on a small place, and the stem breaks across its hole.",
    "pin_bearing": "Pulled at, the pin must not dent the wall of its hole.",
    "pin_tear_out": "Pulled at, the pin must not tear out of the stem's end.",
    "stem_net_section": "A hole takes away much of a stem, just where the side load bends it.",
    "slot_floor_bearing": "The seam's edge is narrow: if it presses too hard it cuts into the slot's floor like a blade.",
    "slot_floor_marking": "Well before the edge cuts in it leaves a mark that stays, and a marked floor wears sooner.",
    "lip_shear": "Where the seam runs on beyond the seat, the lip below it must not be sheared off.",
    "lip_bending": "Where the seam runs on beyond the seat, the lip below it must not break downwards.",
    "web_shear": "The seam must not punch through what stands under it.",
    "wall_bending": "A car that moves sideways pushes at the top of a slot wall and bends it at its foot.",
    "slot_fit_tight": "Cold and at its narrowest, the slot must still take the seam with its paint and its bow.",
    "slot_fit_loose": "Hot and at its widest, the slot must still keep the seam upright.",
    "sill_clear": "The walls must end below the sill: if they touch, they dent it and the seam no longer carries.",
    "rim_clear": "The seam runs on past the pad; there it must stay above the cup's steel rim.",
    "slot_slide": "The slot is open at both ends: only friction, chocks and brake keep the seam from sliding along it.",
    "slot_end_foul": "A notch, a step or a bend that stands in the slot rests on a wall or carries nothing.",
    "cutter_reach": "A thin end mill that reaches deep bends away, chatters, and leaves a slot that is not straight.",
    "frost": "In hard frost some plastics crack from a sharp corner at a shock that they take when warm.",
    "cushion_bearing": "A flat face that presses too hard leaves its print in the top and sinks further at each lift.",
    "cushion_strain": "Rubber that gives way too far creeps out sideways, and the car goes with it.",
    "cushion_marking": "A face narrower than the top presses hardest under its edges, and they leave marks first.",
    "cushion_slide": "A flat top guides nothing: only friction keeps the car where it was set down.",
    "cushion_clear": "Pipes and cables beside a rail must not be what the pad lifts.",
    "face_lip_shear": "What stands out beyond the seat has nothing under it and must not be sheared off.",
    "face_lip_bending": "The lip around the seat is bent down by what presses on it, like a shelf.",
    "face_centring": "A flat face is set on the pad by eye; far off the middle it tips the pad out of its place.",
    "face_rim_clear": "A face that sinks onto the steel rim is dented by it, and the pad carries nothing any more.",
    "face_lean": "As one side rises the car leans; a hard, level top then carries it on one edge.",
    "plug_shoulder_bearing": "The rim carries the car on the shoulder; too narrow a ring of it digs in.",
    "plug_fit_tight": "Hot and wet, the plug must still find its hole as the jack is pumped up.",
    "plug_fit_loose": "A plug with much play lets the car shift before anything stops it.",
    "plug_corner_clear": "A corner sharper than the hole's wedges the plug in and lifts the car by its corners.",
    "plug_clear_above": "A plug that touches what is above it pushes through thin sheet, and the rim no longer carries.",
    "plug_reach": "A plug that is too short slips out as the car swings.",
    "plug_rim": "Many holes in a body are drains or were made for a tool, and their sheet folds under a car.",
    "plug_shear": "What pushes the car sideways must not push the plug off its shoulder.",
    "plug_bending": "A tall, thin plug breaks at its root, and it breaks without warning.",
    "seam_crush": "The pad may be strong enough and the car's own seam still give at its edge.",
    "seam_bending": "Between sill and slot the seam is a strip of sheet; a side load folds it.",
    "seam_buckling": "A thin strip under pressure from its edge buckles sideways before the steel yields.",
}
"""By check: what goes wrong where it fails, or what it keeps from going wrong."""

FAMILIES: Mapping[Family, str] = {
    "acetal": "Acetal",
    "nylon": "Nylon",
    "polyester": "Polyester rod",
    "polyethylene": "Polyethylene",
    "printed": "Printed plastics",
    "wood": "Hardwood",
    "aluminium": "Aluminium",
    "elastomer": "Rubber and polyurethane",
}
"""The families in the order in which a maker would look at them."""


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a job, and the drawing that shows it where there is one."""

    title: str
    words: str
    picture: str = ""


LIFTING = (
    Step(
        "Read first",
        "The vehicle's manual says where the car may be lifted, and the jack's manual what may stand on its head. Where one of"
        " them forbids a pad, there is none.",
    ),
    Step(
        "Make the car stay",
        "Hard, level ground. Park brake set, gear or parking position in, the wheels that stay down chocked before and behind."
        " Everybody out, pets too.",
        "chocked",
    ),
    Step(
        "Look at the pad",
        "Go through “Before each use” below. Read the pad's number: it is for this jack and this car and no other.",
    ),
    Step(
        "Seat the pad",
        "Wipe the seat and what it stands on. Set the pad down by hand: it stands flat and does not rock, on the cup's floor, the"
        " land, the plate or the bore's rim, or on all teeth alike. Its lip stays off the rim, a skirt hangs free all round, and a"
        " retaining pin turns freely. Turn a slot along the seam.",
        "seated",
    ),
    Step(
        "Meet the car",
        "Roll the jack in and raise it by hand until pad and car meet. A seam's edge stands on the slot's floor: look along the"
        " slot from both ends, the sill is clear of both wall tops. A flat face lies on the middle of a cushion, both of them dry."
        " A plug is in its hole, and the rim lies on the shoulder all round. Nothing else is caught.",
        "met",
    ),
    Step(
        "Unload the tyre, and stop",
        "Raise until the tyre just bulges less. Stop and look at jack, pad and car where they meet. The first time, lower again"
        " and look at all three before you lift for good.",
    ),
    Step(
        "Lift in stages",
        "A few strokes, then look. The jack has to roll a little as the car swings: let it. Where pad or car has shifted,"
        " lower, seat it again, and start anew.",
    ),
    Step(
        "Stands at once",
        "Set stands where the vehicle's maker allows them and lower the car onto them. Only then is there work to be done."
        " No part of you goes under a car that stands on a jack.",
        "stands",
    ),
    Step(
        "Down again",
        "Raise off the stands, take them away, lower slowly. Take the pad out, wipe it, look at it, and write down what you saw.",
    ),
)
"""A lift from beginning to end: common practice, no source; what the law and published guidance say is in the cautions."""

MAKING = (
    Step("Saw and face", "Saw the blank a little long. Facing: one end is turned flat, square to the bar's axis."),
    Step(
        "Turn the body and the seat",
        "A stem is turned first, a skirt is bored out or cut free by a groove around the seat. Roughing cuts first. Let the blank"
        " cool before the finishing cuts: plastic that is warm is larger than it will be.",
    ),
    Step(
        "Round the seat's corner",
        "Straight facets along the radius, then a file. The corner may be rounder than drawn by its tolerance, never sharper than"
        " that of the cup, the ring or the teeth's roots. On teeth, a bare plate or a bore's rim there is none to be cleared.",
    ),
    Step(
        "Part off, turn round, face the top",
        "Parting: a narrow tool cuts the pad off the bar. Measure web and height from the seat face.",
    ),
    Step(
        "Cut the slot or the plug",
        "Clamp on the seat, not across the slot. In passes, then a light finishing pass on each side; the floor last. A round plug"
        " is turned when the top is faced, a rectangular one milled; a cushion is left plain.",
    ),
    Step(
        "Break the edges, measure, mark",
        "Every outer edge and the slot's mouth. Measure it cool. Write its number on it.",
    ),
)
"""How a pad is turned and milled, in short: common practice, no source; the route card has each operation with its figures."""
