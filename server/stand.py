"""What is asked of a jack and a car, beside the picture and below it: by kind of foot and head, and by the answers given so far."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache

from geometry.drawing.section_known import asked_of
from geometry.kinds import USUAL_FOOT, USUAL_HEAD, face_group
from geometry.letters import lower_first
from server.fields import FormField, fields_of, models_of
from server.forms import FormReading

MASSES = ("jack.rated_load_kg", "car.gross_mass_kg")
JACK_UP = "jack.rim_height_high_mm"
"""Asked of every jack beside its rated load, though it can be left out: on the measuring sheet it comes next, and without it
nobody knows whether the car rises as far as is wanted."""
_MORE_JACK = (
    "jack.stem_hole_depth_mm",
    "jack.saddle_tilt_deg",
    "jack.floor_boss_height_mm",
    "jack.floor_boss_diameter_mm",
)
_MORE_SEAM = (
    "seam.sheets",
    "seam.edge_thickness_mm",
    "seam.yield_mpa",
    "seam.straight_length_mm",
    "seam.bow_mm",
    "seam.edge_height_flat_mm",
    "seam.roll_in_obstacle_mm",
    "seam.offset_mm",
    "seam.local_thickness_mm",
    "seam.local_drop_mm",
    "seam.local_length_mm",
)


@dataclass(frozen=True, slots=True)
class Stand:
    """What is asked of jack and car where a pad has this foot and head; dotted keys in the order in which they are asked."""

    kinds: tuple[str, ...]
    """What the jack carries with and what the car is lifted by, each with the choice that goes with it."""
    jack: tuple[str, ...]
    """What balloons point at."""
    car: tuple[str, ...]
    more_jack: tuple[str, ...]
    more_car: tuple[str, ...]
    car_heading: str
    balloons: Mapping[str, int]
    unused: tuple[str, ...] = ()
    """What balloons would point at if another answer had been chosen."""

    @property
    def keys(self) -> tuple[str, ...]:
        """All of them."""
        return (*self.kinds, *self.jack, JACK_UP, *self.car, *self.more_jack, *self.more_car)


_HEADINGS: Mapping[str, str] = {"slot": "seam", "cushion": "face", "plug": "hole"}


@cache
def stand_of(foot: str = USUAL_FOOT, head: str = USUAL_HEAD) -> Stand:
    """The questions of a foot and a head."""
    balloons, fields, group = asked_of(foot, head).balloons, fields_of(foot, head), face_group(head)

    def rest(group: str) -> tuple[str, ...]:
        return tuple(
            key
            for key, f in fields.items()
            if f.group == group and key not in {*balloons, *MASSES, JACK_UP} and f.kind != "choice"
        )

    def choices(group: str) -> tuple[str, ...]:
        return tuple(key for key, f in fields.items() if f.group == group and f.kind == "choice")

    return Stand(
        kinds=("foot", *choices("jack"), "head", *choices(group)),
        jack=tuple(key for key in balloons if key.startswith("jack.")),
        car=tuple(key for key in balloons if not key.startswith("jack.")),
        more_jack=_MORE_JACK if foot == USUAL_FOOT else rest("jack"),
        more_car=_MORE_SEAM if head == USUAL_HEAD else rest(group),
        car_heading=_HEADINGS[head],
        balloons=balloons,
    )


def stand_for(reading: FormReading) -> Stand:
    """The same for the answers given so far: without what they have no use for."""
    stand, models = stand_of(reading.foot, reading.head), models_of(reading.foot, reading.head)
    answers = answers_by_group(reading.typed)

    def is_used(key: str) -> bool:
        group, _, name = key.partition(".")
        return models[group].asks_for(name, answers.get(group, {}))

    def used(keys: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(key for key in keys if is_used(key))

    return replace(
        stand,
        jack=used(stand.jack),
        car=used(stand.car),
        more_jack=used(stand.more_jack),
        more_car=used(stand.more_car),
        unused=tuple(key for key in (*stand.jack, *stand.car) if not is_used(key)),
    )


def answers_by_group(typed: Mapping[str, str]) -> Mapping[str, Mapping[str, str]]:
    """What was typed, by group and name."""
    answers: dict[str, dict[str, str]] = {}
    for key, text in typed.items():
        group, _, name = key.partition(".")
        answers.setdefault(group, {})[name] = text
    return answers


def not_here(stand: Stand, fields: Mapping[str, FormField]) -> str:
    """Which balloons are not asked here, so that nobody looks for their numbers; empty where all are."""
    told = "; ".join(f"{stand.balloons[key]} {lower_first(fields[key].title)}" for key in stand.unused)
    return f"Not on this jack: {told}." if told else ""
