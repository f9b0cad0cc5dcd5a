"""What shop and garage call the jack's head and the car's lifting point, by kind of foot and head."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from geometry.conditions import Conditions
from geometry.feet.facts import FootFacts
from geometry.feet.plate.fields import PlateFacts
from geometry.feet.saddle.fields import SaddleFacts
from geometry.pad import Pad


@dataclass(frozen=True, slots=True, kw_only=True)
class JackWords:
    """One way in which a jack takes a pad, in pieces of sentences."""

    head: str
    """What is looked at and wiped."""
    top: str
    """What heights above the ground are measured to."""
    put: str
    """How the pad is put there; ``{stem}`` for a stem that goes along, without its full stop."""
    free: str
    """What stays off the pad, or how it hangs, once it stands there."""
    goes: str
    """How one says that it goes there by itself."""
    into: str
    """What a gauge of the pad is tried in or on."""
    mark: str
    """What may leave a mark on the lip that must not be there."""
    read: str
    """Which size is then measured, and what must not touch."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CarWords:
    """One way in which a pad takes the car, in pieces of sentences."""

    name: str
    edge: str
    """What heights above the ground are measured to."""
    carries: str
    """What of the pad it comes to stand on."""
    lies: str
    """How the pad is turned to it."""
    top: str
    """What stands highest of the pad."""
    passes: str
    """What passes under what as the jack is rolled in."""
    stands: str
    """Until when the jack is raised at first."""
    seen: str
    """What one sees then."""


_READ_LIP = "Measure the seat's length; the lip must not touch."
_READ_SKIRT = "Measure the seat's length and the skirt; only the seat may stand on anything."
JACKS: Mapping[str, JackWords] = MappingProxyType(
    {
        "cup": JackWords(
            head="cup",
            top="cup's rim",
            put="Wipe the cup. Drop the pad in: seat on the cup's floor{stem}, lip off the rim",
            free="its lip stays off the rim",
            goes="drops into the cup",
            into="into the cup",
            mark="A mark of the rim on the lip",
            read=_READ_LIP,
        ),
        "land": JackWords(
            head="saddle",
            top="teeth's tips",
            put="Wipe the saddle. Drop the pad in between the teeth: seat on the land{stem}, lip off the teeth",
            free="its lip stays off the teeth",
            goes="drops in between the teeth",
            into="in between the teeth",
            mark="A mark of the teeth on the lip",
            read=_READ_LIP,
        ),
        "teeth": JackWords(
            head="saddle",
            top="teeth's tips",
            put="Wipe the teeth. Set the pad on them: seat on their tips, skirt around them",
            free="its skirt hangs free around them",
            goes="goes on over the teeth",
            into="onto the teeth",
            mark="A mark of the saddle on the skirt's end or under the lip",
            read=_READ_SKIRT,
        ),
        "edge": JackWords(
            head="plate",
            top="plate",
            put="Wipe the plate. Set the pad on it: seat on the plate{stem}, skirt around its edge",
            free="its skirt hangs free around the edge",
            goes="goes on over the plate",
            into="onto the plate",
            mark="A mark of the jack on the skirt's end or under the lip",
            read=_READ_SKIRT,
        ),
        "ring": JackWords(
            head="plate",
            top="ring's top",
            put="Wipe the plate. Drop the pad into the ring: seat on the plate{stem}, lip off the ring",
            free="its lip stays off the ring",
            goes="drops into the ring",
            into="into the ring",
            mark="A mark of the ring on the lip",
            read=_READ_LIP,
        ),
        "recess": JackWords(
            head="plate",
            top="plate",
            put="Wipe the recess. Drop the pad in: seat on its floor{stem}, lip off the plate around it",
            free="its lip stays off the plate around it",
            goes="drops into the recess",
            into="into the recess",
            mark="A mark of the plate on the lip",
            read=_READ_LIP,
        ),
        "post": JackWords(
            head="bore",
            top="bore's rim",
            put="Wipe the bore and its rim. Drop the stem in: seat on the rim all round{stem}",
            free="its stem hangs free",
            goes="drops into the bore",
            into="into the bore",
            mark="A mark of anything else than the bore's rim under the lip",
            read=_READ_LIP,
        ),
    }
)
_CARS: Mapping[str, CarWords] = MappingProxyType(
    {
        "slot": CarWords(
            name="seam",
            edge="seam's edge",
            carries="slot's floor",
            lies="the slot lies along the seam",
            top="wall tops",
            passes="The walls pass under the seam's edge.",
            stands="the seam stands on the slot's floor",
            seen="Look in from both ends: the seam is in the slot all along, the sill is clear of both walls.",
        ),
        "cushion": CarWords(
            name="face",
            edge="face",
            carries="pad's top",
            lies="the face lies flat on its top",
            top="top",
            passes="The pad passes under the face.",
            stands="the face lies on the pad's top",
            seen="Look from all sides: the face lies flat and over the pad's middle, and the pad touches nothing beside it.",
        ),
        "plug": CarWords(
            name="hole's rim",
            edge="hole's rim",
            carries="shoulder",
            lies="the plug goes into the hole",
            top="top of the plug",
            passes="The plug passes under the hole's rim.",
            stands="the plug is in the hole and the hole's rim lies on the shoulder",
            seen="Look from all sides: it lies on the shoulder all round, and carries on nothing else.",
        ),
    }
)


def way_of(foot: FootFacts) -> str:
    """The kind of foot, and of a saddle or a plate the way in which it takes the pad."""
    if isinstance(foot, SaddleFacts):
        return "teeth" if foot.on_teeth else "land"
    return foot.located_by if isinstance(foot, PlateFacts) else foot.kind


def jack_words(c: Conditions) -> JackWords:
    """The words of this pad's jack."""
    return JACKS[way_of(c.foot)]


def car_words(c: Conditions) -> CarWords:
    """The words of this pad's lifting point."""
    return _CARS[c.head.kind]


def cracks_at(c: Conditions, pad: Pad) -> str:
    """Where a white line or a crack shows first, from what carries the car down."""
    if pad.has_slot:
        return "foot of the slot's walls"
    if pad.has_plug:
        return "foot of the plug"
    return {"seat": "lip around the seat", "skirt": "root of the skirt", "stem": "root of the stem"}[c.foot.locates]
