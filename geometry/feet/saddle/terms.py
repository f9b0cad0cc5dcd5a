"""What the words of a cup's and a plate's rules are called on a toothed saddle: between its teeth, and on their tips."""

from collections.abc import Mapping
from types import MappingProxyType

LAND_TERMS: Mapping[str, str] = MappingProxyType(
    {
        "of cup and": "of jack and",
        "rim above ground": "teeth's tips above ground",
        "stem hole in the cup's floor": "hole in the saddle's land",
        "over the rim of": "over teeth of",
        "below the rim": "below the teeth",
        "inside the cup's": "inside the teeth's roots",
        "rounder than the cup's": "rounder than the teeth's roots",
        "sharper than the cup's": "sharper than the teeth's roots",
        "the pad stands on the floor": "the pad stands on the land",
        "not its rim": "not the teeth",
        "the cup is": "the ring of teeth is",
        "the cup's corner is": "the radius at the teeth's roots is",
        "the cup's corner": "the roots of the teeth",
        "on its floor": "on the land",
        "Cup's floor": "Saddle's land",
        "touches the cup's": "touches the teeth",
        "cup bore": "distance between the teeth",
        "cup depth": "height of the teeth",
        "corner radius of the cup": "radius at the teeth's roots",
        "outside diameter of the cup's rim": "distance over the teeth",
        "cup's floor": "saddle's land",
        "cup's rim": "teeth's tips",
        "off the rim": "off the teeth's tips",
        "above its rim": "above the teeth's tips",
        "jack's rim": "teeth's tips",
        "into the cup": "in between the teeth",
        "Look into": "Look in between",
        "in the cup": "between the teeth",
        "fills at least nine tenths of the cup": "fills at least nine tenths of the ring of teeth",
        "the cup's": "the teeth's",
        "cup": "ring of teeth",
    }
)
"""Between the teeth: words of a cup's rules, and what they are called here; longer words first."""
TIP_TERMS: Mapping[str, str] = MappingProxyType(
    {
        "of cup and": "of jack and",
        "rim above ground": "teeth's tips above ground",
        "stem hole in the cup's floor, 0 for none": "distance between the teeth",
        "play of the seat in the cup": "play of the skirt around the teeth",
        "cup depth": "depth of what it stands on below the head's top",
        "jack's rim": "teeth's tips",
        "Web over a hollow in the seat": "Web between the teeth",
        "within the plate's edge: its burr carries": "within the outside of the teeth: their burrs carry",
        "the plate's edge": "the teeth",
        "outside diameter of the plate": "distance over the teeth",
        "the stem hole": "the gap between the teeth",
        "in the cup": "on the teeth",
        "cup's floor": "teeth's tips",
        "cup's rim": "teeth's tips",
        "the cup": "the saddle",
        "cup": "saddle",
    }
)
"""On the teeth: words of a cup's and a plate's rules."""
