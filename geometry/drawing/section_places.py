"""Which measurement of another foot or head is drawn where a cup or a seam has its own."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.feet.plate.fields import RING_KEYS
from geometry.feet.post.fields import PostFacts
from geometry.feet.saddle.fields import LAND_KEYS
from geometry.heads.cushion.fields import CushionFacts
from geometry.heads.plug.fields import PlugFacts
from geometry.kinds import USUAL_HEAD

_FEET: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "saddle": LAND_KEYS,
        "plate": RING_KEYS,
        # What the rules of a cup take for its bore is the rim here, which the picture has already.
        "post": {**PostFacts.keys, "jack.cup_bore_mm": ""},
    }
)
_HEADS: Mapping[str, Mapping[str, str]] = MappingProxyType({"cushion": CushionFacts.keys, "plug": PlugFacts.keys})


def own_key(foot: str, head: str, key: str) -> str:
    """The key that stands in the place of a cup's or a seam's; empty where this foot or head has nothing there.

    >>> own_key("post", "slot", "jack.rim_diameter_mm"), own_key("cup", "plug", "seam.height_mm")
    ('jack.bore_rim_diameter_mm', 'pocket.hole_depth_mm')
    >>> own_key("post", "slot", "jack.cup_bore_mm")
    ''
    """
    if key.startswith("jack."):
        return _FEET.get(foot, {}).get(key, key)
    return key if head == USUAL_HEAD else _HEADS[head].get(key, "")
