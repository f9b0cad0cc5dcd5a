"""What is cut at the edges of a turned pad: the seat's corner, the edge breaks, and the cut that takes it off the bar."""

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.finish import facet_cusp_mm
from geometry.making.card import FIRST, Operation
from geometry.making.corner import facet_picture, facet_table, facets_for
from geometry.making.how_measured import skirt_gap_mm
from geometry.making.kit import CALIPER, FINE_FILE, RADIUS_GAUGE, SCRAPER, saw
from geometry.making.last_pass import by_dial
from geometry.making.machine import Machine
from geometry.making.stock import FACING_MM, SAW_ROOM_MM, StockPlan
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

CORNER_ROOM_MM = 2.0
"""What a pointed tool needs behind a corner to run out of the cut."""
MOST_SCRAPED_MM = 0.5
"""Up to here a corner is an edge to be broken by hand, and no arc to be cut; common practice, no source."""


def corner_operation(pad: Pad, c: Conditions, shop: Shop, m: Machine, *, holding: Sentence, set_up: int) -> Operation:
    """The seat's corner: one profile on a CNC lathe; else an edge broken by hand, a form tool behind a skirt, straight cuts."""
    if m.is_stepless:
        return _profiled(pad, m, holding, set_up)
    if pad.seat_corner_radius_mm <= MOST_SCRAPED_MM:
        return _scraped(pad, c, holding, set_up)
    if _is_behind_skirt(pad):
        return _formed(pad, c, m, holding, set_up)
    return _faceted(pad, c, shop, m, holding, set_up)


def _is_behind_skirt(pad: Pad) -> bool:
    """Whether a skirt stands where the compound slide would run out of the corner."""
    return pad.has_skirt and pad.foot_bottom_mm < pad.seat_corner_radius_mm + CORNER_ROOM_MM


def _profiled(pad: Pad, m: Machine, holding: Sentence, set_up: int) -> Operation:
    radius = pad.seat_corner_radius_mm
    tool = said(f"Profiling tool, {m.tool_name}")
    if _is_behind_skirt(pad):
        tool = said(f"Profiling tool, {m.tool_name}, no wider than {{gap}}", gap=skirt_gap_mm(pad))
    return Operation(
        title="Profile the seat's corner",
        set_up=set_up,
        holding=holding,
        tools=(tool, RADIUS_GAUGE),
        steps=(
            said("One arc of {radius}, from the seat's face to its side, nose radius compensated.", radius=radius),
            said("Rough it in cuts of {rough} or less, and finish in one.", rough=m.roughing_mm),
        ),
        cut=m.finishing(pad.seat_diameter_mm),
        leaves_mm={"seat_corner_radius_mm": radius},
        other_time_min=1.0,
    )


def _scraped(pad: Pad, c: Conditions, holding: Sentence, set_up: int) -> Operation:
    radius, across = pad.seat_corner_radius_mm, pad.seat_diameter_mm
    reach = "; behind the skirt, one whose blade is narrower than {gap}" if _is_behind_skirt(pad) else ""
    lengths = {"gap": skirt_gap_mm(pad)} if reach else {}
    return Operation(
        title="Break the seat's edge",
        set_up=set_up,
        holding=holding,
        tools=(said(f"{SCRAPER.template}{reach}", **lengths), CALIPER),
        steps=(
            said("Stop the spindle, isolate the lathe, and turn the chuck by hand."),
            said(
                "Break the edge between the seat's face and its side with a scraper: two or three light strokes all the way"
                " round, the blade at 45°, then one to each side of that, until it is round to about {radius}.",
                radius=radius,
            ),
            said(
                "It is even all round and has no burr: the seat's face begins {radius} inside the seat's {across}.",
                radius=radius,
                across=across,
            ),
        ),
        why=said("A burr would stand on the jack before the seat's face does."),
        watch=watch_for(c.material.family, "edges"),
        leaves_mm={"seat_corner_radius_mm": radius},
        other_time_min=2.0,
    )


def _formed(pad: Pad, c: Conditions, m: Machine, holding: Sentence, set_up: int) -> Operation:
    radius = pad.seat_corner_radius_mm
    return Operation(
        title="Cut the seat's corner radius",
        set_up=set_up,
        holding=holding,
        tools=(said("Form tool, ground hollow to {radius}, for the seat's corner", radius=radius), RADIUS_GAUGE),
        steps=(
            said(
                "The skirt leaves no room for straight cuts by the compound slide. Grind a tool hollow to {radius} against the"
                " gauge, what stands in the groove no wider than {gap}.",
                radius=radius,
                gap=skirt_gap_mm(pad),
            ),
            said(
                "Touch the seat's face and the seat's side with the two ends of the hollow, and set both dials to zero: the arc"
                " is full when both are back there. Plunge along the axis, slowly, and let the tool dwell for one turn."
            ),
            said(
                "A form tool cuts on its whole length: where it chatters, halve the speed. Blend the ends with grit on a stick;"
                " the gauge of {radius} shows no light.",
                radius=radius,
            ),
        ),
        cut=m.finishing(pad.seat_diameter_mm),
        watch=watch_for(c.material.family, "edges"),
        leaves_mm={"seat_corner_radius_mm": radius},
        other_time_min=25.0,
    )


def _faceted(pad: Pad, c: Conditions, shop: Shop, m: Machine, holding: Sentence, set_up: int) -> Operation:
    radius = pad.seat_corner_radius_mm
    count = facets_for(radius_mm=radius, cusp_limit_mm=shop.cusp_limit_mm)
    cusp = facet_cusp_mm(radius_mm=radius, facets=count)
    return Operation(
        title="Cut the seat's corner radius",
        set_up=set_up,
        holding=holding,
        tools=(said(f"Pointed tool, {m.tool_name}, on the compound slide"), FINE_FILE, RADIUS_GAUGE),
        steps=tuple(_facet_steps(radius, cusp, m)),
        why=said("The ridges stand outside the arc. Left on, they meet the jack before the seat face does."),
        cut=m.finishing(pad.seat_diameter_mm),
        tables=(facet_table(seat_diameter_mm=pad.seat_diameter_mm, radius_mm=radius, facets=count, slide=m.slide),),
        picture=facet_picture(radius_mm=radius, facets=count),
        watch=watch_for(c.material.family, "edges"),
        leaves_mm={"seat_corner_radius_mm": radius},
        other_time_min=4.0 * count + 5,
    )


def _facet_steps(radius: float, cusp: float, m: Machine) -> list[Sentence]:
    return [
        said("The rows go from the face round to the side. For each, swivel the compound to its angle from the axis."),
        said(
            "Swivelling moves the tool. So after it touch the finished side and set the cross dial to zero, touch the"
            " seat's face and set the lengthwise dial to zero, and lock the carriage where the row starts from the face,"
            " the compound's dial at zero."
        ),
        said(
            "Feed by the compound alone, from clear of the face outwards until the tool leaves the work: a row's line"
            " lies outside the arc along its whole length, so running past the row's end spoils nothing."
        ),
        said(
            "Take it in cuts of {rough} or less: begin with the cross dial near zero, and advance it between the cuts"
            " until it reads the row's figure for the start.",
            rough=m.roughing_mm,
        ),
        said(
            "Every cut then touches the true arc of {radius} from outside. Ridges up to {cusp} stand between the cuts.",
            radius=radius,
            cusp=cusp,
        ),
        said(
            "File the ridges off until the gauge of {radius} shows no light, at its ends or between: light at its ends means"
            " that a ridge still stands. Never file past the arc.",
            radius=radius,
        ),
        said(
            "A form tool or a corner-rounding cutter of {radius}, where you have one, does it in one cut instead: held in the tool"
            " post, its edge on centre height, plunged slowly until it just meets face and side.",
            radius=radius,
        ),
    ]


def edge_operation(
    pad: Pad, c: Conditions, m: Machine, *, title: str, across_mm: float, holding: Sentence, set_up: int
) -> Operation:
    """One 45° edge break of a turned edge."""
    size = pad.edge_chamfer_mm
    return Operation(
        title=title,
        set_up=set_up,
        holding=holding,
        tools=(said("Chamfering tool, 45°") if m.is_stepless else said("Tool ground to 45°, or a fine file"),),
        steps=(
            *by_dial(
                m, said("Touch the edge with the tool's slope, then feed in {size} by the lengthwise slide.", size=size)
            ),
            said("Leave a break of {size} × 45°.", size=size),
        ),
        cut=m.finishing(across_mm),
        watch=watch_for(c.material.family, "edges"),
        leaves_mm={"edge_chamfer_mm": size},
        other_time_min=1.5,
    )


def saw_off_operation(pad: Pad, c: Conditions, plan: StockPlan) -> Operation:
    """Part the turned pad from what only held it."""
    is_top_first = plan.order == "top_first"
    in_chuck = "The bar still in the chuck, the machine isolated from its supply, the saw's handle clear of the jaws; or the bar"
    held = "Out of the chuck, the stub" if is_top_first else in_chuck
    where = "Saw {height} from the top" if is_top_first else "Saw {height} from the foot"
    where += ", through the neck" if pad.has_plug and not is_top_first else ""
    room = " Keep {room} from the jaws." if not is_top_first else " The pad must not drop when it comes off."
    return Operation(
        title="Saw off the stub" if is_top_first else "Saw the pad off the bar",
        set_up=FIRST,
        holding=said(f"{held} in a vice with soft jaws."),
        tools=(saw(plan.kerf_mm),),
        steps=(
            said(
                f"{where}, so that {{spare}} is left to face.{room}",
                height=pad.overall_height_mm + FACING_MM,
                spare=FACING_MM,
                room=SAW_ROOM_MM,
            ),
        ),
        watch=watch_for(c.material.family, "saw"),
        other_time_min=4.0,
    )
