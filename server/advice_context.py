"""What the pages of advice print: typed pieces, all of them words and finished pictures."""

from dataclasses import dataclass

from markupsafe import Markup

from geometry.drawing.plots import Table
from server.field_views import LinkView


@dataclass(frozen=True, slots=True)
class PlotView:
    """A plot for a sheet and for a phone, and its table."""

    wide: Markup
    narrow: Markup
    table: Table


@dataclass(frozen=True, slots=True)
class CurveView:
    """How the load grows as the car rises."""

    plot: PlotView
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ComparisonRow:
    """One material in the user's own case."""

    name: str
    outcome: str
    body: str
    height: str
    governing: str
    remark: str
    choose: LinkView | None
    """The same job in this material; None for the one that is chosen, and for one that is refused."""
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class ComparisonView:
    """Every material."""

    rows: tuple[ComparisonRow, ...]


@dataclass(frozen=True, slots=True)
class InfluenceView:
    """What an error in one measurement does."""

    title: str
    error: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class SensitivityRow:
    """One governing check."""

    title: str
    words: str
    influences: tuple[InfluenceView, ...]


@dataclass(frozen=True, slots=True)
class SensitivityView:
    """What to measure most carefully."""

    rows: tuple[SensitivityRow, ...]


@dataclass(frozen=True, slots=True)
class RemedyView:
    """One change that was tried and helps."""

    apply: LinkView
    outcome: str


@dataclass(frozen=True, slots=True)
class Trouble:
    """One thing that fails, or is advised against, with the changes that mend it."""

    heading: str
    words: str
    remedies: tuple[RemedyView, ...]
    is_advice: bool = False


@dataclass(frozen=True, slots=True)
class RemediesView:
    """Computed changes."""

    troubles: tuple[Trouble, ...]
    words: str = ""
    """What to say where there is no trouble."""
