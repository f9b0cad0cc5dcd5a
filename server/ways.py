"""The ways between the working sheet and the pages beside it: these carry the sheet's case, so that nobody loses it on the way."""

from dataclasses import dataclass
from urllib.parse import parse_qsl, urlencode

from server.documents import LONGEST_QUERY, Pairs
from server.field_views import LinkView, with_units_spelled_out
from server.forms import FormReading, Units, read_form
from server.links import pad_address

BACK_KEY = "back"
"""Under this key an address of a page beside the sheet holds the query of the sheet that it was reached from."""
_MOST_FIELDS = 200


@dataclass(frozen=True, slots=True)
class Ways:
    """Where to go from a page beside the sheet, in the units that it is read in."""

    sheet: str
    guide: str
    measure: str
    materials: str


def ways_of(case: FormReading, *, units: Units) -> Ways:
    """The ways from a case as its viewer reads it: back to its sheet, and to each page beside it, the case carried along.

    >>> ways_of(read_form([("jack.cup_bore_mm", "68"), ("units", "mm")]), units="in").sheet
    '/pad?jack.cup_bore_mm=68+mm&units=in'
    """
    sheet = _sheet(case, units)
    carried = _carried(sheet, units)
    return Ways(sheet, *(path + carried for path in ("/guide", "/measure", "/materials")))


def units_ways(case: FormReading, path: str) -> tuple[LinkView, ...]:
    """A page beside the sheet in either unit, its case kept."""
    return tuple(LinkView(wanted, path + _carried(_sheet(case, wanted), wanted)) for wanted in _UNITS)


def asked_beside(pairs: Pairs) -> tuple[FormReading, Units]:
    """The case that an address of a page beside the sheet carries, and the units that the page is wanted in.

    What is no field of a design is left out, so whatever the address says the way leads to our own sheet.
    """
    units = read_form([pair for pair in pairs if pair[0] == "units"]).units
    carried = next((text for key, text in pairs if key == BACK_KEY), "")
    try:
        inner = parse_qsl(carried, max_num_fields=_MOST_FIELDS)
    except ValueError:
        inner = []
    return read_form(inner or [("units", units)]), units


_UNITS: tuple[Units, ...] = ("mm", "in")


def _sheet(case: FormReading, units: Units) -> str:
    return pad_address(with_units_spelled_out(case.typed, case.units, units), units=units)


def _carried(sheet: str, units: Units) -> str:
    """A query with the sheet's own in it; without, where there is nothing to carry or it would be too long to be read."""
    query, bare = sheet.partition("?")[2], urlencode({"units": units} if units != "mm" else {})
    whole = "&".join(filter(None, (bare, urlencode({BACK_KEY: query}))))
    kept = whole if query != bare and len(whole) <= LONGEST_QUERY else bare
    return f"?{kept}" if kept else ""
