"""What the sheet must say beside the pad's own dimensions."""

from dataclasses import dataclass
from typing import Literal

from geometry.drawing.errors import SheetError

Units = Literal["mm", "in", "in_fraction", "dual"]
"""``in_fraction`` is inches in 64ths wherever a size is one, in decimals elsewhere."""
Unit = Literal["mm", "in"]
FigureUnit = Literal["mm", "in", "[in]"]
"""The same where inches may stand among metric figures, and are in brackets then."""
Projection = Literal["first", "third"]
Paper = Literal["A4", "A3", "letter", "tabloid"]

CRITICAL_MARK = "◆"
"""Stands before a size that an estimate depends on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFacts:
    """Title block, notes and cautions of one drawing; everything is shown as given."""

    title: str
    design_id: str
    revision: str
    date: str
    """ISO 8601 day of issue, such as ``2026-11-25``: given, so that the same design gives the same bytes."""
    material: str
    mass_kg: float
    design_load_n: float
    """The estimated greatest load; the sheet says that it is not tested."""
    moisture: str
    """At which temperature and moisture the sizes hold, what it is made from and how."""
    temperature: str
    creator: str
    """The program that drew it; who answers for it signs by hand."""
    owner: str
    cautions: tuple[tuple[str, str], ...]
    """(signal word, sentence), gravest first."""
    fit_to_make: bool
    not_fit_words: str = ""
    units: Units = "mm"
    job_units: Unit = "mm"
    """In which the part was sized; the other is converted, and rounded to what its tolerance needs."""
    as_printed: bool = False
    """Built up in layers: no surface has the roughness of a cut one."""
    projection: Projection = "first"
    paper: Paper = "A4"
    saved_address: str | None = None
    """Where the design is kept, drawn as a code to point a camera at; no box without."""
    critical: tuple[str, ...] = ()
    """Names of the dimensions that an estimate depends on: marked on the sheet."""
    located_by: str = "seat_diameter_mm"
    """Name of the diameter that keeps the pad in its place: slot, plug and lip are toleranced about its axis."""
    created_by: str = ""
    approved_by: str = ""
    """Persons (ISO 7200): left open for a pen where nobody is named."""

    @property
    def one_unit(self) -> Unit:
        """The unit of what has room for one, such as frames, chamfers and notes: of a sheet with both the ruling one."""
        return self.job_units if self.units == "dual" else "mm" if self.units == "mm" else "in"

    @property
    def figure_unit(self) -> FigureUnit:
        """The same at the views, where inches beside metric figures are in brackets everywhere."""
        return "[in]" if self.units == "dual" and self.job_units == "in" else self.one_unit

    def __post_init__(self) -> None:
        day = self.date.split("-")
        if [len(part) for part in day] != [4, 2, 2] or not all(part.isdigit() for part in day):
            raise SheetError(f"“{self.date}” is not a day such as 2026-11-25.")
