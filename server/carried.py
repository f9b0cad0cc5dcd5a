"""What was typed on the pages of the shop and is kept nowhere yet: it goes along on every way from one of them to another."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from urllib.parse import urlencode

from geometry.document.wear import DIMENSION_OF
from server.field_views import with_units_spelled_out
from server.fields import FIELDS
from server.forms import Units

ADDED = "added."
"""What stands before the keys of another day's readings in service."""
_LATER = f"{ADDED}later"
"""Says that such a day was typed, and that nobody asked to enter it yet."""
NAME = "name"
"""The reader's own name, beside readings that are kept."""
AS_READ = "as_made."
"""Sizes in service are read as those of the new part are: in the viewer's unit, one or several."""

Pairs = Iterable[tuple[str, str]]


@dataclass(frozen=True, slots=True)
class AnotherDay:
    """Readings of another day as typed, by what they read; what was left empty is left out."""

    texts: Mapping[str, str] = field(default_factory=dict)
    is_to_be_entered: bool = False
    """Whether they were sent to be judged, rather than carried along."""

    def keys(self, units: Units, wanted: Units) -> dict[str, str]:
        """The keys of an address that carries them, typed in one unit, to be read in another."""
        found = {f"{ADDED}{word}": _respelled(word, text, units, wanted) for word, text in self.texts.items()}
        return found | ({_LATER: "yes"} if found else {})


NO_DAY = AnotherDay()


def _respelled(word: str, text: str, units: Units, wanted: Units) -> str:
    """A size of another day, so that it means the same where bare numbers are read in other units.

    >>> _respelled("web", "18.4", "mm", "in"), _respelled("wall", "clean", "mm", "in")
    ('18.4 mm', 'clean')
    """
    if word not in DIMENSION_OF:
        return text
    return next(iter(with_units_spelled_out({f"{AS_READ}{DIMENSION_OF[word]}": text}, units, wanted).values()))


def split_added(pairs: Pairs) -> tuple[list[tuple[str, str]], AnotherDay]:
    """The pairs of an address without another day's readings, and those.

    >>> split_added([("units", "in"), ("added.web", ".725"), ("added.at", "")])
    ([('units', 'in')], AnotherDay(texts={'web': '.725'}, is_to_be_entered=True))
    """
    known = list(pairs)
    sent = {key.removeprefix(ADDED): text for key, text in known if key.startswith(ADDED) and text.strip()}
    is_later = sent.pop(_LATER.removeprefix(ADDED), "") != ""
    return [pair for pair in known if not pair[0].startswith(ADDED)], AnotherDay(sent, bool(sent) and not is_later)


@dataclass(frozen=True, slots=True)
class Carried:
    """What an address under a saved design's link says beside the revision itself."""

    own: Mapping[str, str] = field(default_factory=dict)
    """Answers as typed; an empty one takes back what the revision holds."""
    day: AnotherDay = NO_DAY
    name: str = ""
    units: Units = "mm"
    """In which bare numbers are meant."""

    def keys(self, units: Units, *, without: str = "") -> dict[str, str]:
        """The keys of an address that is read in ``units``; without the answers of one group, and the name beside them."""
        own = {key: text for key, text in self.own.items() if not (without and key.startswith(without))}
        name = {NAME: self.name} if self.name and not without else {}
        return with_units_spelled_out(own, self.units, units) | self.day.keys(self.units, units) | name

    def on(self, path: str, units: Units, *, without: str = "", has_units: bool = True) -> str:
        """A path with everything that is carried; as it is where nothing is."""
        keys = self.keys(units, without=without)
        return _with(path, keys | ({"units": units} if has_units else {})) if keys else path

    def hidden(self, asked: Iterable[str] = (), *, has_day: bool = True) -> tuple[tuple[str, str], ...]:
        """What a form has to carry along that asks for some answers, or for another day, itself."""
        kept = (self if has_day else replace(self, day=NO_DAY)).keys(self.units)
        known = frozenset(asked)
        return (*((key, text) for key, text in kept.items() if key not in known), ("units", self.units))


NOTHING = Carried()


def carried_in(query: Pairs, units: Units = "mm") -> Carried:
    """What a query carries, as it stands there."""
    rest, day = split_added(query)
    own = {key: text for key, text in rest if key in FIELDS}
    return Carried(own, day, next((text for key, text in rest if key == NAME), ""), units)


def _with(path: str, keys: Mapping[str, str]) -> str:
    """An address with further keys, each once."""
    bare, _, query = path.partition("?")
    before = [part for part in query.split("&") if part and part.partition("=")[0] not in keys]
    return f"{bare}?{'&'.join((*before, urlencode(keys)))}"
