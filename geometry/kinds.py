"""Which kinds of feet and heads there are, and which groups of the document each of them asks for."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from geometry.feet.cup.fields import CupFacts, CupJack
from geometry.feet.plate.fields import PlateFacts, PlateJack
from geometry.feet.post.fields import PostFacts, PostJack
from geometry.feet.saddle.fields import SaddleFacts, SaddleJack
from geometry.heads.cushion.fields import CushionFacts, FlatRail
from geometry.heads.plug.fields import PlugFacts, Pocket
from geometry.heads.slot.fields import SlotFacts, SlotSeam

FootKind = Literal["cup", "saddle", "plate", "post"]
HeadKind = Literal["slot", "cushion", "plug"]
AnyJack = CupJack | SaddleJack | PlateJack | PostJack
AnyCarFace = SlotSeam | FlatRail | Pocket
AnyFoot = CupFacts | SaddleFacts | PlateFacts | PostFacts
AnyHead = SlotFacts | CushionFacts | PlugFacts

JACKS: Mapping[str, type[AnyJack]] = MappingProxyType(
    {"cup": CupJack, "saddle": SaddleJack, "plate": PlateJack, "post": PostJack}
)
"""What is measured on the jack, by kind of foot; all of them are the document's group ``jack``."""
FACES: Mapping[str, type[AnyCarFace]] = MappingProxyType({"slot": SlotSeam, "cushion": FlatRail, "plug": Pocket})
"""What is measured on the car, by kind of head."""
FACE_GROUPS: Mapping[str, str] = MappingProxyType({"slot": "seam", "cushion": "rail", "plug": "pocket"})
"""The group of the document that holds it."""
USUAL_FOOT: FootKind = "cup"
USUAL_HEAD: HeadKind = "slot"


def kinds_in(document: Mapping[str, object]) -> tuple[str, str]:
    """The foot and the head that a document says; the usual one where it says none, or none that there is."""
    foot, head = document.get("foot"), document.get("head")
    return (
        foot if isinstance(foot, str) and foot in JACKS else USUAL_FOOT,
        head if isinstance(head, str) and head in FACES else USUAL_HEAD,
    )


def jack_model(foot: object) -> type[AnyJack]:
    """The fields of a kind of foot; those of the usual one where there is no such kind."""
    return JACKS.get(str(foot), CupJack)


def face_group(head: object) -> str:
    """The group of a kind of head; that of the usual one where there is no such kind."""
    return FACE_GROUPS.get(str(head), FACE_GROUPS[USUAL_HEAD])
