"""What the templates of the working sheet print: typed pieces, all of them words, addresses and finished pictures."""

from dataclasses import dataclass

from geometry.cautions import ONE_LINE
from server.check_views import CheckGroup
from server.design_views import CautionGroup, ConflictView, DimensionView
from server.field_groups import FieldGroup
from server.field_views import FieldView, LinkView
from server.making_views import SheetMaking
from server.outcome import State
from server.section_view import OUTBOARD, SectionView
from server.sheet_files import FileView
from server.turn_view import TurnView


@dataclass(frozen=True, slots=True)
class Verdict:
    """The outcome in one or two sentences."""

    headline: str
    beside: str
    """What else to know at once; may be empty."""
    short: str = ""
    """The same in fewer words, for the edge of a phone; empty where there are few."""

    @property
    def at_the_edge(self) -> str:
        """What stands at the bottom edge of a phone."""
        return self.short or self.headline


@dataclass(frozen=True, slots=True, kw_only=True)
class PadPage:
    """The working sheet."""

    state: State
    has_welcome: bool = False
    job: FieldView
    units: str
    units_links: tuple[LinkView, ...]
    measure: str
    """The address of the measuring sheet."""
    elsewhere: tuple[LinkView, ...]
    """The other pages that this one leads to."""
    samples: tuple[LinkView, ...]
    section: SectionView
    kinds: tuple[FieldView, ...]
    """What the jack carries with and what the car is lifted by."""
    jack: tuple[FieldView, ...]
    seam: tuple[FieldView, ...]
    jack_mass: FieldView
    jack_up: FieldView
    car_mass: FieldView
    not_here: str
    """Which of the numbered measurements this jack has no use for; empty where all are asked."""
    more_jack: FieldGroup
    more_seam: FieldGroup
    groups: tuple[FieldGroup, ...]
    hidden: tuple[tuple[str, str], ...]
    problems: tuple[LinkView, ...]
    doubts: tuple[LinkView, ...]
    """Numbers that can be and seldom are; they stand in nobody's way."""
    missing: tuple[LinkView, ...]
    verdict: Verdict
    conflict: ConflictView | None = None
    dimensions: tuple[DimensionView, ...] = ()
    pad_line: str = ""
    checks: tuple[CheckGroup, ...] = ()
    load: tuple[tuple[str, str], ...] = ()
    calculation: str = ""
    """The address of every line of the calculation; empty where there is no pad."""
    changes: str = ""
    """The address of computed changes that would help; empty where nothing can be computed yet."""
    changes_way: str = ""
    """Where the estimates lead to those changes: to their place on this sheet, or to a page; empty where nothing is past its
    limit."""
    beside: str = ""
    """The address of what is computed from many designs at once; empty where there is no pad."""
    turn: TurnView | None = None
    """The pad to turn in the hand; None where there is no pad."""
    no_models: str = ""
    """What keeps this machine from building models, and what to install; empty where nothing does."""
    drawing: str = ""
    drawing_page: str = ""
    """The address where the drawing can be looked at closely; empty where there is no pad."""
    save: str
    """Where the design is saved, and links to it are made."""
    fixed: tuple[LinkView, ...]
    """The sizes that somebody fixed, each with the way to its box."""
    all_let_go: str
    """The address without any fixed size; empty where none is fixed."""
    inch_steps: str = ""
    """The same job in inch steps, for one who reads inches; empty where it is so, or not wanted."""
    making: SheetMaking | None = None
    files: tuple[FileView, ...] = ()
    models: tuple[FileView, ...] = ()
    typed: tuple[tuple[str, str], ...]
    cautions: tuple[CautionGroup, ...] = ()
    caution_line: str = ONE_LINE

    @property
    def kinds_line(self) -> str:
        """What the jack carries with and what the car is lifted by, in a line."""
        chosen = {field.key: field.chosen_words for field in self.kinds}
        return f"{chosen['foot']}; {chosen['head']}"

    @property
    def kinds_are_unusual(self) -> bool:
        """Whether the jack is not one with a cup, or the car is not lifted by its seam."""
        return any(field.text for field in self.kinds)

    @property
    def outboard(self) -> str:
        """The one measurement of the car that stands on the jack's side of a wide picture."""
        return OUTBOARD

    @property
    def is_fit(self) -> bool:
        """Whether model files may be taken without a confirmation."""
        return self.state == "fit"
