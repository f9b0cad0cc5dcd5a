"""Figures of the shop for the eye: speeds, feeds, dial readings, times, prices, tables, each in the unit of its reader."""

from dataclasses import dataclass
from itertools import groupby

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.letters import lower_first
from geometry.making.card import Cut, Pass, Table
from geometry.making.slot_words import cell_words
from geometry.making.wording import Sentence, Units, feed_shown, speed_shown
from geometry.units import kg_to_pound, mm_to_inch
from server import shown

_INCHES_PER_FOOT = 12
_MM_PER_M = 1000.0
_MIN_PER_H = 60
_LONGEST_RUN = 10
"""More passes than this stand in two tables side by side."""
_PHONE_COLUMNS, _SHORT_HEAD = 7, 10
_AXIS_WORDS = {"diameter": "diameter", "bore": "bore", "length": "length still standing"}


@dataclass(frozen=True, slots=True)
class TableView:
    """A table of figures as printed."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]

    @property
    def fits_phone(self) -> bool:
        """Whether it stays a table on a phone: few columns with short headings."""
        return len(self.heads) <= _PHONE_COLUMNS and all(len(head) <= _SHORT_HEAD for head in self.heads)

    @property
    def cells(self) -> tuple[tuple[tuple[str, str], ...], ...]:
        """Every row as (heading, figure), for a narrow page where headings stand beside their figures."""
        return tuple(tuple(zip(self.heads, row, strict=True)) for row in self.rows)


@dataclass(frozen=True, slots=True)
class Eye:
    """Who reads: the viewer's unit, and that of the machine's dials."""

    units: Units
    dial: Units

    def says(self, sentence: Sentence) -> str:
        """A sentence with its lengths in the viewer's unit."""
        return sentence.shown(self.units)

    def length(self, value_mm: float) -> str:
        """A length with its unit."""
        return shown.length_with_unit(value_mm, self.units)

    def dial_reading(self, value_mm: float) -> str:
        """What a dial reads, finer than a line of it.

        >>> Eye("mm", "in").dial_reading(0.508), Eye("mm", "mm").dial_reading(0.1)
        ('0.02', '0.1')
        """
        return shown.plain(mm_to_inch(value_mm), 4) if self.dial == "in" else shown.plain(value_mm, 3)


def eye_of(conditions: Conditions, units: Units) -> Eye:
    """The reader of a card: dials count in the unit in which the shop rounds."""
    return Eye(units, "in" if conditions.is_inch else "mm")


def minutes(time_min: float) -> str:
    """A time as one says it, to five minutes where it is long.

    >>> minutes(0.4), minutes(12.4), minutes(177.9), minutes(120)
    ('under a minute', '12 min', '3 h', '2 h')
    """
    if time_min < 1:
        return "under a minute"
    if time_min < _MIN_PER_H:
        return f"{time_min:.0f} min"
    hours, rest = divmod(5 * round(time_min / 5), _MIN_PER_H)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def money(price: float | None, shop: Shop) -> str:
    """A price in the user's money; empty where none was given."""
    return "" if price is None else f"{shop.currency} {price:.2f}".strip()


def mass(mass_kg: float, units: str) -> str:
    """The mass of a piece of bar.

    >>> mass(0.7495, "mm"), mass(0.7495, "in")
    ('0.75 kg', '1.65 lb')
    """
    return f"{shown.plain(kg_to_pound(mass_kg), 2)} lb" if units == "in" else f"{shown.plain(mass_kg, 2)} kg"


def bar_length(length_mm: float, units: str) -> str:
    """The length of a bar as one orders it, or as a rule measures it.

    >>> bar_length(1000, "mm"), bar_length(1000, "in"), bar_length(1219.2, "in")
    ('1000 mm', '39.4 in', '48 in')
    """
    return f"{shown.plain(mm_to_inch(length_mm), 1)} in" if units == "in" else f"{shown.plain(length_mm, 1)} mm"


def long_length(length_mm: float, units: str) -> str:
    """A length that one paces off.

    >>> long_length(416_000, "mm"), long_length(416_000, "in")
    ('416 m', '1365 ft')
    """
    if units == "in":
        return f"{mm_to_inch(length_mm) / _INCHES_PER_FOOT:.0f} ft"
    return f"{length_mm / _MM_PER_M:.0f} m"


def speed_line(cut: Cut, eye: Eye) -> str:
    """What to set, and what was wanted."""
    at = f"at {eye.length(cut.diameter_mm)} across"
    wanted = f"wanted {cut.wanted_rpm:.0f} for {speed_shown(cut.wanted_speed_m_min, eye.units)}"
    line = f"{cut.rpm:.0f} turns a minute {at}; {wanted}, this makes {speed_shown(cut.speed_m_min, eye.units)}"
    return f"{line}. Even the slowest speed is faster than wanted" if cut.is_too_fast else line


def feed_line(cut: Cut, eye: Eye) -> str:
    """The feed of a cut; empty where it has none of its own."""
    if cut.table_feed_mm_min is not None:
        feed = f"{mm_to_inch(cut.table_feed_mm_min):.1f} in" if eye.units == "in" else f"{cut.table_feed_mm_min:.0f} mm"
        return f"table {feed} a minute"
    if cut.feed_mm_rev is None:
        return ""
    return f"{feed_shown(cut.feed_mm_rev, eye.units)} a turn"


def pass_tables(passes: tuple[Pass, ...], eye: Eye, *, has_dials: bool) -> tuple[TableView, ...]:
    """The passes of a turning operation, each with what the dial reads after it; long runs in halves, to stand side by side."""
    tables: list[TableView] = []
    dial = f", dial ({eye.dial})" if has_dials else ""
    for axis, found in groupby(passes, key=lambda p: p.axis):
        rows = list(found)
        for part in _halves(rows):
            more = ", further" if part[0] is not rows[0] else ""
            heads = ("pass", "cut", "from", "to", "deep", *(("dial by", "dial reads") if has_dials else ()))
            tables.append(
                TableView(
                    f"Passes{more}: {_AXIS_WORDS[axis]} ({eye.units}){dial}",
                    heads,
                    tuple(_pass_row(p, eye, has_dials=has_dials) for p in part),
                )
            )
    return tuple(tables)


def _halves(rows: list[Pass]) -> tuple[list[Pass], ...]:
    """Rows in one or two runs."""
    if len(rows) <= _LONGEST_RUN:
        return (rows,)
    half = (len(rows) + 1) // 2
    return rows[:half], rows[half:]


def _pass_row(p: Pass, eye: Eye, *, has_dials: bool) -> tuple[str, ...]:
    sizes = tuple(shown.length(x, eye.units) for x in (p.before_mm, p.after_mm))
    depth = eye.dial_reading(p.infeed_mm) if eye.dial == eye.units else shown.length(p.infeed_mm, eye.units)
    dials = (eye.dial_reading(p.dial_step_mm), eye.dial_reading(p.dial_reading_mm)) if has_dials else ()
    return (str(p.number), p.kind, *sizes, depth, *dials)


def table_view(table: Table, eye: Eye) -> TableView:
    """A table of the card; columns that a dial is set by are in the dial's unit."""
    heads = tuple(_head(title, unit, eye) for title, unit in table.columns)
    rows = tuple(
        tuple(_cell(value, title, unit, eye) for value, (title, unit) in zip(row, table.columns, strict=True))
        for row in table.rows
    )
    return TableView(table.title, heads, rows)


def _is_dial(title: str) -> bool:
    return "dial" in title.lower()


def _head(title: str, unit: str, eye: Eye) -> str:
    if not unit:
        return lower_first(title)
    return f"{lower_first(title)}, {(eye.dial if _is_dial(title) else eye.units) if unit == 'mm' else unit}"


def _cell(value: float | str, title: str, unit: str, eye: Eye) -> str:
    if isinstance(value, str):
        return cell_words(value)
    if unit == "mm":
        return eye.dial_reading(value) if _is_dial(title) else shown.length(value, eye.units)
    return shown.plain(value, 2)
