"""What the template of the guide prints: typed pieces, all words and typeset formulas."""

from dataclasses import dataclass

from markupsafe import Markup

from server.field_views import LinkView
from server.how_to import HowPicture
from server.ways import Ways


@dataclass(frozen=True, slots=True)
class FieldPart:
    """One field of the document: how it is measured, why, and what is taken without it."""

    id: str
    also_ids: tuple[str, ...]
    """Further ids where one question is asked several times."""
    key: str
    title: str
    balloon: int | None
    how: str
    why: str
    without: str
    answers: tuple[str, ...]
    can_be: str
    """Between which bounds it can exist; empty where it is no number."""
    picture: HowPicture | None
    checks: tuple[LinkView, ...]


@dataclass(frozen=True, slots=True)
class FieldGroupPart:
    """Fields under one heading."""

    id: str
    heading: str
    words: str
    fields: tuple[FieldPart, ...]


@dataclass(frozen=True, slots=True)
class KindPart:
    """One kind of foot or head: where it is taken, and where it is not."""

    id: str
    title: str
    take: str
    leave: str
    picture: str
    """The address of its drawing."""
    shown: str
    """What the drawing shows."""
    questions: str
    """The way to what is measured for it."""


@dataclass(frozen=True, slots=True)
class MeaningView:
    """One symbol of a formula."""

    symbol: Markup
    meaning: str
    unit: str


@dataclass(frozen=True, slots=True)
class CheckPart:
    """One check: what it is for, how it is reckoned, and on what it rests."""

    id: str
    code: str
    title: str
    purpose: str
    kind: str
    """Whether it can stand in the way of a pad."""
    formula: Markup
    limit: Markup
    sign: str
    unit: str
    meanings: tuple[MeaningView, ...]
    needs: tuple[LinkView, ...]
    example: str
    mark: str
    source: str


@dataclass(frozen=True, slots=True)
class CheckGroupPart:
    """Checks of one place on the pad."""

    id: str
    heading: str
    checks: tuple[CheckPart, ...]


@dataclass(frozen=True, slots=True)
class MaterialPart:
    """One material with a few figures and its notes."""

    id: str
    name: str
    use: str
    figures: tuple[tuple[str, str], ...]
    notes: tuple[str, ...]
    more: str


@dataclass(frozen=True, slots=True)
class FamilyPart:
    """Materials of one kind, and what the table says they are good and bad at."""

    id: str
    heading: str
    good_at: str
    bad_at: str
    materials: tuple[MaterialPart, ...]


@dataclass(frozen=True, slots=True)
class CautionPart:
    """One caution with its source."""

    text: str
    source: str
    when: str
    """In which case it is said; empty where it is said with every pad."""


@dataclass(frozen=True, slots=True)
class SignalPart:
    """Cautions under one signal word."""

    signal: str
    cautions: tuple[CautionPart, ...]


@dataclass(frozen=True, slots=True)
class StepPart:
    """One step of a job."""

    title: str
    words: str
    picture: str
    """The address of its drawing; empty where words are enough."""


@dataclass(frozen=True, slots=True)
class WordPart:
    """One word of the trade."""

    id: str
    word: str
    meaning: str
    see: str


@dataclass(frozen=True, slots=True)
class DiscardPart:
    """When a pad is done with."""

    looks: tuple[tuple[str, str], ...]
    at_once: tuple[str, ...]
    wear: tuple[tuple[str, str], ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class GuidePage:
    """The whole guide."""

    units: str
    units_links: tuple[LinkView, ...]
    ways: Ways
    contents: tuple[tuple[LinkView, tuple[LinkView, ...]], ...]
    measuring_cautions: tuple[str, ...]
    tools: str
    feet: tuple[KindPart, ...]
    heads: tuple[KindPart, ...]
    measuring: tuple[FieldGroupPart, ...]
    choosing: tuple[FieldGroupPart, ...]
    families: tuple[FamilyPart, ...]
    checks: tuple[CheckGroupPart, ...]
    making: tuple[StepPart, ...]
    making_links: tuple[LinkView, ...]
    making_fields: tuple[FieldGroupPart, ...]
    lifting: tuple[StepPart, ...]
    cautions: tuple[SignalPart, ...]
    discard: DiscardPart
    record: str
    words: tuple[WordPart, ...]
    words_source: str
    practice: str
    marks: tuple[tuple[str, str], ...]
    example: LinkView
    caution_line: str
