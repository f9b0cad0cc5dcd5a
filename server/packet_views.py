"""The drawing's page in words: the picture, the choices of its viewer, its sizes as a table, and every sheet to take."""

from dataclasses import dataclass

from markupsafe import Markup

from geometry.cautions import ONE_LINE
from geometry.design import Design
from geometry.drawing.facts import CRITICAL_MARK, SheetFacts
from geometry.drawing.frame import NOT_FIT
from geometry.drawing.table import Row
from server import links
from server.drawn import DrawnSheet
from server.forms import FormReading
from server.viewing import View

LAYERS = (
    ("dimension", "Dimensions"),
    ("tolerance", "Tolerance frames, datums, surfaces"),
    ("hidden", "Hidden lines"),
    ("centre", "Centre lines"),
    ("hatch", "Hatching"),
    ("note", "Notes and title block words"),
)
"""What of the sheet can be put out of sight on the screen; cautions cannot."""
_SIZES = (("mm", "millimetres"), ("in", "inches"), ("dual", "both"))
_PROJECTIONS = (("first", "first angle"), ("third", "third angle"))
_PAPERS = (("A4", "A4"), ("letter", "US letter"))
_FILES = (
    ("/drawing.pdf", "Drawing, PDF", "in true size, to print"),
    ("/drawing.svg", "Drawing, SVG", "as a picture"),
    ("/drawing.dxf", "Drawing, DXF", "for another drawing program"),
    ("/drawing.png", "Drawing, PNG", "as a picture of dots"),
    ("/card.pdf", "Lifting card, PDF", "one page for the garage wall"),
    ("/gauge.pdf", "Gauge sheet, PDF", "in true size, to cut from card or film"),
    ("/gauge.svg", "Gauges, SVG", "side by side"),
    ("/gauge.dxf", "Gauges, DXF", "for a laser cutter"),
)


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing that may be chosen, with the address that chooses it."""

    words: str
    href: str
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class ChoiceGroup:
    """Choices of which one holds."""

    heading: str
    choices: tuple[Choice, ...]


@dataclass(frozen=True, slots=True)
class FileLink:
    """A sheet to take."""

    name: str
    words: str
    href: str


@dataclass(frozen=True, slots=True)
class DrawingPage:
    """The whole page."""

    title: str
    verdict: str
    unfit: str
    """Words over the picture of a pad that is not fit to make; empty otherwise."""
    back: str
    picture: Markup
    paper: str
    """``a4`` or ``letter``: the stylesheet prints each at its own size."""
    scale: str
    groups: tuple[ChoiceGroup, ...]
    layers: tuple[tuple[str, str], ...]
    rows: tuple[Row, ...]
    unit: str
    marked: str
    """What the mark before a size means; empty where none is marked."""
    packet: str
    files: tuple[FileLink, ...]
    caution_line: str


def drawing_page(design: Design, reading: FormReading, view: View, facts: SheetFacts, drawn: DrawnSheet) -> DrawingPage:
    """The context of the drawing's page."""
    typed, units = reading.typed, reading.units

    def address(suffix: str) -> str:
        return links.pad_address(typed, suffix, units=units, view=view.keys())

    def group(heading: str, key: str, offered: tuple[tuple[str, str], ...], holds: str) -> ChoiceGroup:
        chosen = tuple(
            Choice(
                words, links.pad_address(typed, "/drawing", units=units, view=view.keys(**{key: value})), value == holds
            )
            for value, words in offered
        )
        return ChoiceGroup(heading, chosen)

    return DrawingPage(
        title=facts.title,
        verdict=design.verdict_words,
        unfit="" if facts.fit_to_make else NOT_FIT,
        back=links.pad_address(typed, units=units),
        picture=Markup(drawn.picture),  # noqa: S704  our own drawing; what was typed is escaped by the library that writes it
        paper=facts.paper.lower(),
        scale=drawn.scale,
        groups=(
            group("Sizes in", "sizes", _SIZES, facts.units),
            group("Projection", "projection", _PROJECTIONS, facts.projection),
            group("Paper", "paper", _PAPERS, facts.paper),
        ),
        layers=LAYERS,
        rows=drawn.rows,
        unit={"mm": "mm", "in": "inches", "dual": "mm [inches]"}[facts.units],
        marked=f"{CRITICAL_MARK} An estimate depends on this size." if facts.critical else "",
        packet=address("/packet.pdf"),
        files=tuple(FileLink(name, words, address(suffix)) for suffix, name, words in _FILES),
        caution_line=ONE_LINE,
    )
