"""What must be said of one pad: what is said of all, and what its own case, its foot and its head add."""

from geometry.cautions import ALWAYS, Caution
from geometry.conditions import Conditions, expected_force_n
from geometry.feet.post.fields import PostFacts
from geometry.letters import upper_first
from geometry.pad import Pad
from geometry.provenance import Mark, Source, derived, found, memory, practice


def cautions_for(conditions: Conditions, pad: Pad | None) -> tuple[Caution, ...]:
    """Everything that must be said about this pad: what always holds, then what its own case adds."""
    return (*ALWAYS, *_of_the_case(conditions, pad), *_of_the_foot(conditions), *_of_the_head(conditions))


_HOLD = Caution(
    "WARNING",
    "Ageing under a long load was asked for. That is no leave to leave a car on a jack: set it on stands at once.",
    derived("The longer hold only lowers the stress that the plastic is given"),
)
_STUCK = Caution(
    "WARNING",
    "The jack was said not to roll. The car then drags it sideways as it rises: find ground on which it rolls.",
    found("productsafety.gov.au jack page: the jack must be able to roll slightly"),
    is_for_lifting=True,
)


def _of_the_case(c: Conditions, pad: Pad | None) -> list[Caution]:
    """What the load, the place, the user's own figures, the material and the jack's hole need to be said."""
    service = c.measurements.service
    said = [_HOLD] if service.hold != "minutes" else []
    said += _of_the_load(c)
    said += [_STUCK] if service.ground == "stuck" else []
    said += [*_of_own_values(c), *_of_the_material(c)]
    if pad is not None and c.foot.locates == "seat" and c.foot.hole_diameter_mm > 0 and not pad.has_stem:
        said.append(_no_room_for_a_stem(c))
    return said


def _of_the_load(c: Conditions) -> list[Caution]:
    """That a load was stated, and that it may be too low."""
    car = c.measurements.car
    if car.load_source != "stated":
        return []
    stated = Caution(
        "WARNING",
        f"The load of {car.load_kg:g} kg was stated, not computed, and is not checked.",
        derived("A stated load is taken as it is"),
    )
    return [stated, *_stated_too_low(c)]


def _of_own_values(c: Conditions) -> list[Caution]:
    """That figures of the material are the user's."""
    own = c.measurements.own
    if not own.given():
        return []
    where = f" ({own.sheet})" if own.sheet else ""
    return [
        Caution(
            "NOTICE",
            f"Some values of the material were entered by the user from a data sheet{where}; they are not checked.",
            Source(Mark.OWN, "Entered by the user"),
            brief=f"Material values entered by the user{where}.",
        )
    ]


def _of_the_material(c: Conditions) -> list[Caution]:
    """What the material does to this head, and what water does to it."""
    advised = c.material.advice_in(c.head.kind)
    said = [Caution("WARNING", advised, derived("A hard pad on a thin seam"), brief=advised)] if advised else []
    if c.material.family in {"nylon", "printed"} and c.measurements.service.wetness != "soaked":
        said.append(_takes_up_water(c))
    return said


def _no_room_for_a_stem(c: Conditions) -> Caution:
    """What is left to keep a pad in place over a small hole."""
    wall = {"saddle": "the teeth", "plate": c.foot.said("the cup's wall")}.get(c.foot.kind, "the cup's wall")
    hole = {"saddle": "The land's hole", "plate": "The plate's hole"}.get(c.foot.kind, "The cup's hole")
    return Caution(
        "NOTICE",
        f"{hole} is too small for a stem worth making: nothing but {wall} keeps the pad in place.",
        derived("Least stem 6 mm across and 5 mm long"),
    )


def _takes_up_water(c: Conditions) -> Caution:
    """What swelling asks for; rod is cut dry, and of a print there is nothing to cut."""
    name = upper_first(c.material.short_name)
    is_cut = c.material.family != "printed"
    dry, brief = (" machine it dry,", "Machine dry stock; discard") if is_cut else ("", "Discard")
    return Caution(
        "NOTICE",
        f"{name} takes up water:{dry} keep it out of puddles, and discard it swollen.",
        memory("Water uptake of polyamides; stock that is moist when cut shrinks as it dries"),
        brief=f"{brief} the pad when it is swollen.",
    )


def _stated_too_low(c: Conditions) -> list[Caution]:
    """A warning where a car's mass is known too and says that more may arrive at the sill."""
    expected = expected_force_n(c.measurements.car)
    if expected is None or expected <= c.force_n:
        return []
    return [
        Caution(
            "WARNING",
            f"The stated load gives {c.force_n / 1000:.1f} kN, but a car of {c.measurements.car.gross_mass_kg:g} kg may put"
            f" {expected / 1000:.1f} kN on one sill point. State where the lower load comes from, or use the mass.",
            derived("Both wheels of a side off the ground: the sill carries more than half the car"),
        )
    ]


_ON_LAND = Caution(
    "WARNING",
    "Set the pad down between the teeth until it stands on the land and does not rock. A pad that rides on one tooth is carried"
    " by that tooth: take it off and look for what lies under it.",
    derived("The land carries, the teeth only locate"),
    is_for_lifting=True,
)
_ON_TEETH = Caution(
    "WARNING",
    "The teeth mark the pad. Turn it to its old marks, look at them before each use, and discard it when one is deeper than 1 mm,"
    " cracked or ragged. Where the saddle has a land to stand on, use that instead.",
    derived("Grooves of teeth are where a crack starts"),
    brief="Look at the teeth's marks before each use; discard when deeper than 1 mm.",
    is_for_lifting=True,
)
_SKIRT = Caution(
    "WARNING",
    "The skirt only keeps the pad in the middle. Before the lift see that the seat stands flat and the skirt hangs free all"
    " round; grit under the seat or a skirt that rides on an edge tips the pad or bursts the skirt.",
    derived("A skirt is no face to stand on"),
    is_for_lifting=True,
)

_POST = Caution(
    "WARNING",
    "Use no post where the bore is worn oval, its rim is bent, sharp or hardly wide enough to stand on, or its edge is not broken:"
    " a sharp edge rides on the stem's root. The seat must stand flat on the bore's rim before the lift.",
    derived("The rim carries, the stem only locates"),
    brief="The seat stands flat on the bore's rim; no post in a bore worn oval.",
    is_for_lifting=True,
)
_LOOSE = Caution(
    "CAUTION",
    "Take the pad out before the jack is moved about or carried: a stem that catches breaks, and a loose pad falls out.",
    practice("Loose parts are not left on a jack"),
)
_PIN = Caution(
    "WARNING",
    "The pin only keeps the stem from falling or being pulled out; it carries nothing. Where it turns hard, with the load on or"
    " off, something is wrong: lower, take it out, and look at the stem's hole.",
    derived("A pin that carries shears the stem across its hole"),
    brief="The pin retains and carries nothing: it must turn freely.",
)


def _of_the_foot(c: Conditions) -> list[Caution]:
    """What a foot of this kind needs to be said."""
    on_skirt = c.foot.locates == "skirt"
    if isinstance(c.foot, PostFacts):
        return [_POST, _LOOSE, *([_PIN] if c.foot.pin_diameter_mm else [])]
    if c.foot.kind == "saddle":
        return [_ON_TEETH, _SKIRT] if on_skirt else [_ON_LAND]
    return [_SKIRT] if on_skirt else []


_FLAT = Caution(
    "WARNING",
    "Nothing but friction keeps the car on a flat top. Use it only on a level, bare or firmly painted face, and never on one that"
    " is wet, icy, oily, soft with underseal, round or sloping.",
    derived("A flat head without guidance at its sides slides once the side load is more than friction"),
    brief="Only friction keeps the car on the flat top: dry, clean, level faces only.",
    is_for_lifting=True,
)
_RUBBERY = Caution(
    "CAUTION",
    "Wipe oil, fuel and brake fluid off at once. Discard the pad when it is cut, sticky, swollen or hard, or keeps a dent the next"
    " day; in frost it is stiffer and slides sooner.",
    memory("Ageing of polyurethane by fluids, and its stiffening in the cold"),
    brief="Discard the pad when it is cut, sticky, swollen or keeps a dent.",
)
_NAMED_HOLE = Caution(
    "WARNING",
    "Use a plug only in a hole that the vehicle's manual names as a lifting point. Drain holes, tool holes and thin-walled pockets"
    " look alike, and their sheet folds under a car.",
    derived("What the sheet around a hole stands cannot be seen from outside"),
    brief="Only in a hole that the vehicle's manual names as a lifting point.",
    is_for_lifting=True,
)
_RIM_FLAT = Caution(
    "WARNING",
    "Before the lift see that the plug is in its hole and the rim lies on the shoulder all round. A plug that stands on the hole's"
    " edge slips in with a jerk or tears the sheet.",
    derived("The shoulder carries, the plug only keeps it there"),
    is_for_lifting=True,
)


def _of_the_head(c: Conditions) -> list[Caution]:
    """What a head of this kind needs to be said, and above all when not to use it."""
    if c.head.kind == "plug":
        return [_NAMED_HOLE, _RIM_FLAT]
    if c.head.kind == "cushion":
        return [_FLAT, *([_RUBBERY] if c.material.family == "elastomer" else [])]
    return []
