"""What the words of a cup's rules are called on a flat plate: bare, in a ring, and in a recess."""

from collections.abc import Mapping
from types import MappingProxyType

_EVERYWHERE = {
    "of cup and": "of jack and",
    "jack's rim": "jack's head",
    "rim above ground": "jack's head above ground",
    "stem hole in the cup's floor": "hole in the plate",
}
TERMS: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "edge": {
            **_EVERYWHERE,
            "play of the seat in the cup": "play of the skirt around the plate",
            "cup depth": "depth of what it stands on below the head's top",
            "the stem hole": "the plate's hole",
            "in the cup": "on the plate",
            "cup's floor": "plate",
            "cup's rim": "plate",
            "cup": "plate",
        },
        "ring": {
            **_EVERYWHERE,
            "over the rim of": "over the plate of",
            "below the rim": "below the plate",
            "inside the cup's": "inside the ring's",
            "the pad stands on the floor": "the pad stands on the plate",
            "the cup's floor carries, not its rim": "the plate carries, not the ring",
            "on its floor": "inside it",
            "cup depth": "height of the ring",
            "outside diameter of the cup's rim": "diameter of the plate",
            "Cup's floor": "Plate",
            "cup's floor": "plate",
            "cup's rim": "ring's top",
            "off the rim": "off the ring's top",
            "above its rim": "above its top",
            "cup": "ring",
        },
        "recess": {
            **_EVERYWHERE,
            "over the rim of": "over the plate of",
            "below the rim": "below the plate",
            "outside diameter of the cup's rim": "diameter of the plate",
            "Cup's floor": "Recess's floor",
            "cup's rim": "plate around the recess",
            "off the rim": "off the plate around the recess",
            "its rim": "the plate around it",
            "cup": "recess",
        },
    }
)
"""By what locates the pad: words of shared rules, and what they are called there; longer words first."""
