"""The few sizes of a kept design that decide whether its pad goes where it should: what a saved page and a preview show first."""

from collections.abc import Mapping
from typing import Any

from geometry.kinds import USUAL_FOOT, USUAL_HEAD
from geometry.making.deciding import Deciding, deciding_sizes
from geometry.pad import Pad


def deciding_as_kept(design: Mapping[str, Any], pad: Pad) -> Deciding:
    """The sizes of a kept design's pad that decide, by the kinds of its foot and head."""
    understood = design.get("measurements", {})
    return deciding_sizes(understood.get("foot", USUAL_FOOT), understood.get("head", USUAL_HEAD), pad)
