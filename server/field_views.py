"""The questions of the sheet: each field of the document as the page asks it, with what was typed and what came of it."""

import re
from collections.abc import Iterable, Mapping, Set
from dataclasses import dataclass
from functools import lru_cache

from markupsafe import Markup

from geometry.kinds import USUAL_HEAD
from geometry.materials import SLOT_MATERIALS
from server.choice_words import words_of_answer
from server.explaining import explained, printed
from server.fields import FIELDS, FormField, fields_of
from server.forms import FormReading
from server.how_to import HowPicture, picture_for
from server.left_out import LeftOut, is_optional, left_out, taken_mm
from server.shown import length_with_unit, quantities_in, unit_of_field

_THREE_LINES = 28
"""Characters that two lines beside a box may not hold."""
_BARE_NUMBER = re.compile(r"[\d\s.,;/⁄½¼¾⅛⅜⅝⅞+−-]*[\d½¼¾⅛⅜⅝⅞]\s*")


@dataclass(frozen=True, slots=True)
class OptionView:
    """One answer of a choice; the usual one has no value, so that an address stays short."""

    value: str
    words: str
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class LinkView:
    """Words that lead somewhere."""

    words: str
    href: str


@dataclass(frozen=True, slots=True, eq=False)
class FieldView:
    """One question on the sheet; the same question in the same state is one object, and is known by that."""

    key: str
    id: str
    title: str
    unit: str
    text: str
    is_choice: bool
    is_words: bool
    """Whether words are wanted rather than a number."""
    is_long: bool
    """Whether several numbers are wanted."""
    is_required: bool
    balloon: int | None
    help: str
    how: str
    picture: HowPicture | None
    assumed: str
    """What is taken while it is left out; empty for required fields."""
    taken: str
    """What is taken here, where it is left out and the other answers say so."""
    left_out: LeftOut | None
    """What leaving it out costs; None for what is no measurement or is required."""
    echo: str
    problem: str
    doubt: str
    """What to look at again, though it can be."""
    options: tuple[OptionView, ...]
    explanation: Markup
    """What “how?” opens."""

    @property
    def note_id(self) -> str:
        """The id of the line below the field."""
        return f"{self.id}-note"

    @property
    def keyboard(self) -> str:
        """Which keyboard a phone shows: one with marks and letters where fractions, units, signs or lists are typed."""
        return "text" if self.is_words or self.is_long or self.unit in {"in", "lb"} else "decimal"

    @property
    def is_wordy(self) -> bool:
        """Whether its title takes three lines beside a box."""
        return len(self.title) > _THREE_LINES

    @property
    def is_open(self) -> bool:
        """Whether it still waits for a measurement."""
        return self.is_required and not self.text

    @property
    def left_out_words(self) -> str:
        """In one line, what is done without it; empty where it is given."""
        if self.text or not self.assumed:
            return ""
        if self.taken:
            return f"left out: {self.taken} is taken"
        missed = len(self.left_out.unchecked) if self.left_out else 0
        if missed:
            return "left out: one estimate is not made" if missed == 1 else f"left out: {missed} estimates are not made"
        return f"left out: {self.assumed}"

    @property
    def chosen_words(self) -> str:
        """The chosen answer, in words."""
        return next((option.words for option in self.options if option.is_chosen), self.text)


def field_id(key: str) -> str:
    """The id of a field's input, which balloons and messages link to.

    >>> field_id("jack.cup_bore_mm")
    'field-jack-cup_bore_mm'
    """
    return "field-" + key.replace(".", "-")


def title_of(key: str) -> str:
    """The title of a field, or its key where there is no such field."""
    return FIELDS[key].title if key in FIELDS else key


def link_to(key: str, on_sheet: Set[str], words: str = "") -> LinkView:
    """The way to a field, by its title unless other words are given; no way where the sheet does not ask for it."""
    return LinkView(words or title_of(key), f"#{field_id(key)}" if key in on_sheet else "")


def field_view(
    key: str,
    reading: FormReading,
    balloons: Mapping[str, int],
    needed: Iterable[str] = (),
    doubts: Mapping[str, str] | None = None,
) -> FieldView:
    """One field as the page asks it; ``needed`` names fields that are required here though the document allows to omit them."""
    units, text = reading.units, reading.typed.get(key, "")
    field = _field(key, reading.foot, reading.head)
    taken = None if text else taken_mm(key, reading.measurements)
    problem = " ".join(
        _beside(quantities_in(p.message, units), field.title) for p in reading.problems if p.field == key
    )
    return _view(
        key,
        reading.foot,
        reading.head,
        units,
        text,
        problem,
        doubt="" if problem or doubts is None else quantities_in(doubts.get(key, ""), units),
        echo=reading.echo.get(key, ""),
        taken="" if taken is None else length_with_unit(taken, units),
        required=field.required or key in needed,
        balloon=balloons.get(key),
    )


def _field(key: str, foot: str, head: str) -> FormField:
    """A field in the words of this foot and head; one that they do not ask for, in the usual ones."""
    return fields_of(foot, head).get(key, FIELDS[key])


def _beside(words: str, title: str) -> str:
    """The words of a problem where the title stands beside them.

    >>> _beside("Cup bore 4 mm cannot be right.", "Cup bore"), _beside("Cup bore is still to be measured.", "Cup bore")
    ('4 mm cannot be right.', 'Cup bore is still to be measured.')
    """
    rest = words.removeprefix(f"{title} ")
    return rest if rest[:1].isdigit() or rest.startswith("−") else words


@lru_cache(maxsize=2048)
def _view(
    key: str,
    foot: str,
    head: str,
    units: str,
    text: str,
    problem: str,
    *,
    doubt: str,
    echo: str,
    taken: str,
    required: bool,
    balloon: int | None,
) -> FieldView:
    """The same question, once for each way in which it can stand: while one box is typed in, the others stay as they are."""
    field = _field(key, foot, head)
    return FieldView(
        key=key,
        id=field_id(key),
        title=field.title,
        unit=unit_of_field(field.unit, field.kind, units),
        text=text,
        is_choice=field.kind == "choice",
        is_words=field.kind == "text",
        is_long=field.kind == "lengths",
        is_required=required,
        balloon=balloon,
        help=printed(field.help, units),
        how=printed(field.how, units),
        picture=picture_for(key, foot),
        assumed="" if required else printed(field.assumed, units),
        taken=taken,
        left_out=left_out(key) if is_optional(key) and not required else None,
        echo=echo,
        problem=problem,
        doubt=doubt,
        options=_options(field, text, has_slot=head == USUAL_HEAD),
        explanation=explained(field, units, taken, foot=foot, required=required),
    )


def _options(field: FormField, text: str, *, has_slot: bool) -> tuple[OptionView, ...]:
    if field.kind != "choice":
        return ()
    offered = SLOT_MATERIALS if field.key == "make.material" and has_slot else field.choices
    extra = (text,) if text and text not in offered else ()
    chosen = text or field.default
    return tuple(
        OptionView("" if answer == field.default else answer, words_of_answer(field.key, answer), answer == chosen)
        for answer in (*offered, *extra)
    )


def with_units_spelled_out(typed: Mapping[str, str], units: str, wanted: str) -> dict[str, str]:
    """What was typed, so that it means the same when bare numbers are read in other units.

    >>> with_units_spelled_out({"jack.cup_bore_mm": "68", "title": "van 7"}, "mm", "in")
    {'jack.cup_bore_mm': '68 mm', 'title': 'van 7'}
    >>> with_units_spelled_out({"jack.cup_bore_mm": "68 mm"}, "in", "mm")
    {'jack.cup_bore_mm': '68'}
    """
    return {key: _respelled(FIELDS[key], text, units, wanted) for key, text in typed.items()}


def _respelled(field: FormField, text: str, units: str, wanted: str) -> str:
    if field.kind not in {"length", "lengths", "mass"} or units == wanted:
        return text
    now, then = (unit_of_field(field.unit, field.kind, u) for u in (units, wanted))
    if _BARE_NUMBER.fullmatch(text):
        return f"{text.strip()} {now}"
    spelled = text.strip().removesuffix(then).rstrip()
    return spelled if spelled != text.strip() and _BARE_NUMBER.fullmatch(spelled) else text
