"""One view with everything that belongs to it: what it covers on paper, and how near another may stand."""

from dataclasses import dataclass
from functools import cached_property
from math import inf

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.canvas import Canvas
from geometry.drawing.free_space import covered_by
from geometry.drawing.meeting import is_free
from geometry.drawing.model import Box, View
from geometry.drawing.scales import Scale

ROUND_VIEWS = frozenset({"top", "underside"})


@dataclass
class Block:
    """A view with its dimensions, marks and name, in paper mm about the view's origin; nothing is added to it any more."""

    view: View
    scale: Scale
    canvas: Canvas

    @cached_property
    def box(self) -> Box:
        """All that it covers."""
        return self.canvas.box

    @cached_property
    def covered(self) -> tuple[Box, ...]:
        """The same more closely: rectangles that together cover it, and leave free what others may stand in."""
        k, box = self.scale.factor, self.view.box
        whole = (
            () if self.view.name in ROUND_VIEWS else (Box(box.left * k, box.bottom * k, box.right * k, box.top * k),)
        )
        return (*whole, *covered_by(self.canvas))

    @cached_property
    def edges(self) -> NDArray[np.float64]:
        """Left, bottom, right and top of each of those."""
        return np.array([(box.left, box.bottom, box.right, box.top) for box in self.covered])

    @cached_property
    def _kept(self) -> tuple[Box, ...]:
        canvas = self.canvas
        return (*canvas.solids, *(text.box for text in canvas.texts), *(d.text.box for d in canvas.dimensions))

    def touches(self, box: Box) -> bool:
        """Whether anything of it reaches into a rectangle."""
        return any(box.meets(other) for other in self._kept) or not is_free(box, self.canvas.lines)

    def apart_from(self, other: "Block", gap_mm: float, *, upwards: bool) -> float:
        """How far another view's origin must be at least, above or at the right, to be clear of this one by a gap, mm.

        Each may reach into the other's empty corners.
        """
        low, far = (1, 3) if upwards else (0, 2)
        from_, to = (0, 2) if upwards else (1, 3)
        own, others = self.edges[:, None, :], other.edges[None, :, :]
        meet = (own[..., from_] < others[..., to] + gap_mm) & (others[..., from_] < own[..., to] + gap_mm)
        return float(np.where(meet, own[..., far] - others[..., low] + gap_mm, -inf).max())
