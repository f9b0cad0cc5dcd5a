"""What is cut at the edges of a turned pad: the seat's corner, the edge breaks, and the cut that takes it off the bar."""

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.finish import facet_cusp_mm
from geometry.making.card import Operation
from geometry.making.corner import facet_picture, facet_table, facets_for
from geometry.making.kit import FINE_FILE, RADIUS_GAUGE, saw
from geometry.making.last_pass import by_dial
from geometry.making.machine import Machine
from geometry.making.stock import FACING_MM, SAW_ROOM_MM, StockPlan
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad


def corner_operation(pad: Pad, c: Conditions, shop: Shop, m: Machine, *, holding: Sentence, set_up: int) -> Operation:
    """The seat's corner radius: straight cuts, then the file; one profile on a CNC lathe."""
    return _profiled(pad, m, holding, set_up) if m.is_stepless else _faceted(pad, c, shop, m, holding, set_up)


def _profiled(pad: Pad, m: Machine, holding: Sentence, set_up: int) -> Operation:
    radius = pad.seat_corner_radius_mm
    return Operation(
        title="Profile the seat's corner",
        set_up=set_up,
        holding=holding,
        tools=(said(f"Profiling tool, {m.tool_name}"), RADIUS_GAUGE),
        steps=(
            said("One arc of {radius}, from the seat's face to its side, nose radius compensated.", radius=radius),
            said("Rough it in cuts of {rough} or less, and finish in one.", rough=m.roughing_mm),
        ),
        cut=m.finishing(pad.seat_diameter_mm),
        leaves_mm={"seat_corner_radius_mm": radius},
        other_time_min=1.0,
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
        why=said(
            "The ridges stand outside the arc. Left on, they meet the cup's corner before the seat meets its floor."
        ),
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
    ]


def edge_operation(pad: Pad, c: Conditions, m: Machine, *, title: str, holding: Sentence, set_up: int) -> Operation:
    """One 45° edge break of the body."""
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
        cut=m.finishing(pad.body_diameter_mm),
        watch=watch_for(c.material.family, "edges"),
        leaves_mm={"edge_chamfer_mm": size},
        other_time_min=1.5,
    )


def saw_off_operation(pad: Pad, c: Conditions, plan: StockPlan) -> Operation:
    """Part the turned pad from the bar."""
    return Operation(
        title="Saw the pad off the bar",
        set_up=1,
        holding=said(
            "The bar still in the chuck, the machine isolated from its supply, the saw's handle clear of the jaws;"
            " or the bar in a vice with soft jaws."
        ),
        tools=(saw(plan.kerf_mm),),
        steps=(
            said(
                "Saw {height} from the foot, so that {spare} is left to face. Keep {room} from the jaws.",
                height=pad.overall_height_mm + FACING_MM,
                spare=FACING_MM,
                room=SAW_ROOM_MM,
            ),
        ),
        watch=watch_for(c.material.family, "saw"),
        other_time_min=4.0,
    )
