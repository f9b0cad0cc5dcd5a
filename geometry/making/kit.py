"""Tools that more than one operation uses, named alike so that the list of tools has each once."""

from geometry.making.wording import Sentence, said
from geometry.provenance import practice

ROOT_LEAST_MM, ROOT_MOST_MM, LEAD_IN_MM = 0.2, 0.4, 0.5
"""The drawing's own: the fillet at the root of a stem or a plug, and the break at the end of a stem."""

GRIT = "320 grit"
GRIT_SOURCE = practice("Finish with 320 grit")
INDICATOR = said("Dial indicator")
CALIPER = said("Caliper with depth rod")
RADIUS_GAUGE = said("Radius gauge")
GAUGES = said("Gauges cut out of the gauge sheet")
FINE_FILE = said("Fine file")
LARGE_FILE = said("Large flat file")
SCRAPER = said("Scraper or sharp knife")
RULE = said("Steel rule")
SQUARE = said("Square")
DIVIDERS = said("Dividers")
SCRIBER = said("Scriber")
GRIT_PAPER = said(f"{GRIT} paper")
FLAT_PLATE = said("Flat plate")


def knife_tool(tool: str, hand: str = "", *, cuts_root: bool = False) -> Sentence:
    """A knife tool; one that cuts the root of a stem or a plug is rounded as the drawing has it."""
    name = f"{hand} knife tool" if hand else "Knife tool"
    front = "" if hand else ", its front edge square to the axis"
    if not cuts_root:
        return said(f"{name}, {tool}{front}")
    return said(f"{name}, {tool}{front}, nose radius {{least}} to {{most}}", least=ROOT_LEAST_MM, most=ROOT_MOST_MM)


def root_words(where: str, tool: str = "tool's nose") -> Sentence:
    """What a tool leaves at a root that a side load bends."""
    return said(
        f"{where} the {tool} leaves a fillet of {{least}} to {{most}}: a sharper root starts a crack, a larger fillet"
        " keeps the faces apart.",
        least=ROOT_LEAST_MM,
        most=ROOT_MOST_MM,
    )


def saw(kerf_mm: float) -> Sentence:
    """The saw, with its cut."""
    return said("Saw, cut {kerf} wide", kerf=kerf_mm)
