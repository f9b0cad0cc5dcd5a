"""What is measured on a car that is lifted by a welded seam under its sill."""

from dataclasses import dataclass
from typing import ClassVar, Self

from pydantic import StrictInt, model_validator

from geometry.errors import Problem
from geometry.heads.car import higher_on_a_flat_tyre
from geometry.heads.facts import HeadFacts
from geometry.quantity import Group, Number, measured, problem_if, refuse

ASSUMED_SHEET_MM = 0.7
ASSUMED_PAINT_MM = 1.0
ASSUMED_YIELD_MPA = 140.0
"""Design floor for DC01–DC05 (EN 10130, from memory); common sill steels are stronger."""


@dataclass(frozen=True, kw_only=True)
class SlotFacts(HeadFacts):
    """The seam as understood: every default filled in, lengths in mm, yield in MPa."""

    kind: ClassVar[str] = "slot"
    group: ClassVar[str] = "seam"

    thickness_mm: float
    sheets: int
    bare_thickness_mm: float
    edge_thickness_mm: float
    yield_mpa: float
    yield_is_assumed: bool
    height_mm: float
    straight_length_mm: float
    straight_is_assumed: bool
    bow_mm: float
    clear_outboard_mm: float
    clear_inboard_mm: float
    offset_mm: float = 0.0
    """How far the seam passes beside the jack's axis."""
    local_length_mm: float = 0.0
    """Length of the place where the seam is thicker or something hangs below its edge; 0 where it is plain."""
    local_thickness_mm: float = 0.0
    """The seam's thickness there."""
    local_drop_mm: float = 0.0
    """How far something hangs below the seam's edge there."""

    @property
    def least_clear_mm(self) -> float:
        """Room above the seam's edge before something else of the car is met."""
        return min(self.height_mm, self.clear_outboard_mm, self.clear_inboard_mm)


class SlotSeam(Group):
    """The seam that stands in the slot, and the car around it."""

    thickness_mm: Number = measured(
        "Seam thickness",
        unit="mm",
        ge=0.6,
        le=15,
        balloon=True,
        help="The slot must be wide enough for the seam with its paint and sealer.",
        how="Close the caliper on the seam, paint and sealer and all, in several places along the point; write down the thickest.",
    )
    sheets: StrictInt = measured(
        "Sheets in the seam",
        unit="",
        ge=1,
        le=6,
        default=2,
        kind="count",
        help="Several thin sheets buckle sooner than one thick one.",
        how="Look at the seam's edge with a torch and count the layers.",
        assumed="2 sheets",
    )
    bare_thickness_mm: Number | None = measured(
        "Steel only",
        unit="mm",
        ge=0.4,
        le=15,
        default=None,
        balloon=True,
        help="Paint and sealer carry nothing.",
        how="Measure where the paint is thin, or take off about 1 mm for paint and sealer.",
        assumed="the thickness less 1 mm, at least 0.7 mm a sheet",
    )
    edge_thickness_mm: Number | None = measured(
        "Steel at the lowest edge",
        unit="mm",
        ge=0.4,
        le=15,
        default=None,
        help="Where one sheet stands lower than the others, it alone presses into the slot's floor.",
        how="Look along the edge from below. Where all sheets end level, leave this out. Else measure the steel of those that"
        " reach the lowest line, across, without paint.",
        assumed="all sheets end level",
    )
    yield_mpa: Number | None = measured(
        "Yield strength of the seam's steel",
        unit="MPa",
        ge=50,
        le=1800,
        default=None,
        kind="number",
        help="How much the seam itself carries before it bends.",
        how="Only from the maker's body repair data; leave it out otherwise.",
        assumed="140 MPa, the design floor of soft body sheet",
    )
    height_mm: Number = measured(
        "Seam height",
        unit="mm",
        ge=1,
        le=120,
        balloon=True,
        help="The slot must be shallower than the seam is tall, or the sill is crushed.",
        how="Measure from the sill's underside down to the seam's edge.",
    )
    straight_length_mm: Number = measured(
        "Straight length",
        unit="mm",
        ge=10,
        le=2000,
        default=120,
        help="Only the straight, unbroken part of the edge carries.",
        how="Hold a straight edge along the seam at the lifting point; measure the part without notch, joggle or bend.",
        assumed="120 mm",
    )
    bow_mm: Number = measured(
        "Bow",
        unit="mm",
        ge=0,
        le=8,
        default=0.3,
        help="A bent seam needs a wider slot.",
        how="Hold a straight edge along the seam over the width of the pad and measure the widest gap.",
        assumed="0.3 mm",
    )
    edge_height_mm: Number = measured(
        "Seam edge above ground",
        unit="mm",
        ge=40,
        le=1500,
        balloon=True,
        help="Jack and pad must pass under it.",
        how="With the car on its wheels on level ground, measure from the ground to the seam's edge.",
    )
    edge_height_flat_mm: Number | None = measured(
        "Seam edge above ground, tyre flat",
        unit="mm",
        ge=10,
        le=1500,
        default=None,
        help="The pad is wanted most when a tyre is flat.",
        how="Measure it with the tyre let down, or subtract what the wheel drops.",
        assumed="nothing; whether the pad goes under with a flat tyre is then not checked",
    )
    clear_outboard_mm: Number | None = measured(
        "Clear height outboard",
        unit="mm",
        ge=0,
        le=400,
        default=None,
        balloon=True,
        help="A side skirt or cover may hang lower than the sill.",
        how="Measure from the seam's edge up to the lowest thing outside the seam, within 75 mm.",
        assumed="the seam's height",
    )
    clear_inboard_mm: Number | None = measured(
        "Clear height inboard",
        unit="mm",
        ge=0,
        le=400,
        default=None,
        balloon=True,
        help="A floor rib, pipe or cable inside the seam must not be touched.",
        how="Measure from the seam's edge up to the lowest thing inside the seam, within 75 mm.",
        assumed="the seam's height",
    )
    roll_in_obstacle_mm: Number | None = measured(
        "Lowest thing on the way in",
        unit="mm",
        ge=-400,
        le=400,
        default=None,
        help="The pad passes under the bodywork before it reaches the seam.",
        how="Measure from the level of the seam's edge: up is positive, a thing that hangs lower than the edge is negative.",
        assumed="nothing hangs lower than the seam's edge",
    )

    offset_mm: Number = measured(
        "Seam beside the jack's axis",
        unit="mm",
        ge=0,
        le=40,
        default=0,
        help="Where the jack cannot stand centred under the seam, the slot is cut off the pad's middle. The further off, the"
        " more it tips the pad: stand the jack centred wherever it can be.",
        how="With the jack as near as it comes, measure from the middle of its head to the seam.",
        assumed="the jack stands centred under the seam",
    )
    local_thickness_mm: Number | None = measured(
        "Thickest place near the point",
        unit="mm",
        ge=0.5,
        le=40,
        default=None,
        help="A local doubler or weld makes the seam thicker: the slot gets a pocket there, the pad stands with its middle on it.",
        how="Close the caliper on the doubler or the weld, paint and sealer and all.",
        assumed="the seam is as thick everywhere as at the point",
    )
    local_drop_mm: Number | None = measured(
        "What hangs below the seam's edge",
        unit="mm",
        ge=0,
        le=40,
        default=None,
        help="A drain lip or bracket below the edge would carry the car: the slot's floor is opened there.",
        how="Hold a straight edge along the seam's edge and measure how far the thing hangs below it.",
        assumed="nothing hangs below the edge",
    )
    local_length_mm: Number | None = measured(
        "Length of that place along the seam",
        unit="mm",
        ge=1,
        le=150,
        default=None,
        help="The pocket must be longer than it, and each millimetre carries less.",
        how="Measure along the seam from where it starts to where it ends.",
        assumed="there is no such place",
    )

    @model_validator(mode="after")
    def _must_exist(self) -> Self:
        bare, edge, flat = self.bare_thickness_mm, self.edge_thickness_mm, self.edge_height_flat_mm
        steel = self._bare()
        refuse(
            "seam",
            problem_if(
                bare is not None and bare > self.thickness_mm,
                "bare_thickness_mm",
                bare,
                f"{bare} mm of steel is more than the whole seam's {self.thickness_mm:g} mm with paint. Measure both again.",
            ),
            problem_if(
                edge is not None and edge > steel,
                "edge_thickness_mm",
                edge,
                f"{edge} mm at the lowest edge is more than the {steel:g} mm of steel in the seam. Measure both again.",
            ),
            higher_on_a_flat_tyre("edge_height_flat_mm", flat, self.edge_height_mm, "edge"),
        )
        refuse("seam", *self._local_problems())
        return self

    def _local_problems(self) -> tuple[Problem | None, ...]:
        """What cannot be about a place where the seam is not plain."""
        thick, drop, length = self.local_thickness_mm, self.local_drop_mm, self.local_length_mm
        return (
            problem_if(
                length is None and (thick is not None or bool(drop)),
                "local_length_mm",
                None,
                "Length of that place along the seam is still to be measured: the pocket must clear it.",
            ),
            problem_if(
                length is not None and thick is None and not drop,
                "local_length_mm",
                length,
                f"A place {length or 0:g} mm long is either thicker than the seam or hangs below its edge: say by how much.",
            ),
            problem_if(
                thick is not None and thick < self.thickness_mm,
                "local_thickness_mm",
                thick,
                f"The thickest place, {thick or 0:g} mm, cannot be thinner than the seam's {self.thickness_mm:g} mm. Measure"
                " again.",
            ),
        )

    def _bare(self) -> float:
        least = max(ASSUMED_SHEET_MM * self.sheets, self.thickness_mm - ASSUMED_PAINT_MM)
        return min(self.thickness_mm, least) if self.bare_thickness_mm is None else self.bare_thickness_mm

    def facts(self) -> SlotFacts:
        """The seam with every default filled in."""
        bare = self._bare()
        return SlotFacts(
            thickness_mm=self.thickness_mm,
            sheets=self.sheets,
            bare_thickness_mm=bare,
            edge_thickness_mm=bare if self.edge_thickness_mm is None else self.edge_thickness_mm,
            yield_mpa=self.yield_mpa or ASSUMED_YIELD_MPA,
            yield_is_assumed=self.yield_mpa is None,
            height_mm=self.height_mm,
            straight_length_mm=self.straight_length_mm,
            straight_is_assumed="straight_length_mm" not in self.model_fields_set,
            bow_mm=self.bow_mm,
            edge_height_mm=self.edge_height_mm,
            edge_height_flat_mm=self.edge_height_flat_mm,
            clear_outboard_mm=self.height_mm if self.clear_outboard_mm is None else self.clear_outboard_mm,
            clear_inboard_mm=self.height_mm if self.clear_inboard_mm is None else self.clear_inboard_mm,
            roll_in_obstacle_mm=self.roll_in_obstacle_mm,
            offset_mm=self.offset_mm,
            local_length_mm=self.local_length_mm or 0.0,
            local_thickness_mm=self.local_thickness_mm or 0.0,
            local_drop_mm=self.local_drop_mm or 0.0,
        )
