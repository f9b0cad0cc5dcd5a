"""What every kind of head can say of the load: what checks of the foot and of the whole ask it."""

from abc import ABC, abstractmethod
from dataclasses import dataclass
from math import pi

from geometry.geometrical import FLOOR_PARALLELISM
from geometry.heads.face.lip import LipLoad
from geometry.pad import Pad
from geometry.spread import Spread


@dataclass(frozen=True, kw_only=True)
class HeadLoading(ABC):
    """How far the face that carries may be from where it is drawn, and how the load spreads from it; mm, MPa."""

    web_tolerance_mm: float
    depth_tolerance_mm: float
    """Of what stands above that face: the slot's walls, or a plug; 0 where nothing does."""
    floor_parallelism_mm: float
    """How much higher or lower the face may be at one end than where it was measured."""
    pressure_mpa: float
    indentation_mm: float
    """How far the car sinks into the face that carries."""

    @abstractmethod
    def force_over_n(self, diameter_mm: float) -> float:
        """The part of the design load, [N], that stands over a round hollow of this diameter in the middle of the seat."""


@dataclass(frozen=True, kw_only=True)
class FaceLoading(HeadLoading):
    """A face of the car on a face of the pad, the load spread evenly between them; mm², N."""

    area_mm2: float
    """Where the two faces meet."""
    contact_width_mm: float
    """How wide the two faces meet, across the car."""
    off_centre_mm: float
    """How far off the pad's middle the car's face may arrive."""
    lip: LipLoad
    """What presses beyond the seat; never more than the pad's face passes on."""
    design_force_n: float

    def force_over_n(self, diameter_mm: float) -> float:
        """The pressure on the hollow's area, as if the faces met all over it; never more than the whole load."""
        over = self.pressure_mpa * pi / 4 * diameter_mm**2
        return min(over, self.design_force_n)


def top_tolerance_mm(pad: Pad, spread: Spread) -> float:
    """Plus and minus, [mm], of what stands above the face that carries."""
    if pad.has_plug:
        return spread.of(pad, "plug_height_mm")
    return spread.of(pad, "slot_depth_mm") if pad.has_slot else 0.0


def face_parallelism_mm(spread: Spread) -> float:
    """Zone, [mm], that the face that carries may fill about its height over the seat face."""
    return spread.zone_mm(FLOOR_PARALLELISM)
