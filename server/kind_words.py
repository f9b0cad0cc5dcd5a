"""What each kind of jack's head and of lifting point is called in a sentence about the pad."""

from collections.abc import Mapping
from types import MappingProxyType

STANDS: Mapping[str, str] = MappingProxyType(
    {
        "cup": "stands in the cup",
        "saddle": "stands on the saddle",
        "plate": "stands on the plate",
        "post": "stands on the bore's rim",
    }
)
"""Continues “the pad …” or “the seat …”, by kind of foot."""
TAKES: Mapping[str, str] = MappingProxyType(
    {
        "slot": "takes the welded seam under the sill in its slot",
        "cushion": "carries the car by a plate or frame rail on its flat top",
        "plug": "enters a hole of the car's body with its plug",
    }
)
"""Continues “the pad …”, by kind of head."""
MADE: Mapping[str, str] = MappingProxyType(
    {
        "lathe_and_mill": "turned and milled",
        "cnc": "turned and milled",
        "printed": "printed",
        "hand_tools": "made with hand tools",
    }
)
"""Continues “it is …”, by way of making."""
AROUND: Mapping[str, str] = MappingProxyType(
    {"slot": "with jack, seam and sill", "cushion": "with jack and car", "plug": "with jack and car"}
)
"""What the turning view can show beside the pad."""
