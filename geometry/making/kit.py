"""Tools that more than one operation uses, named alike so that the list of tools has each once."""

from geometry.making.wording import Sentence, said
from geometry.provenance import practice

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


def saw(kerf_mm: float) -> Sentence:
    """The saw, with its cut."""
    return said("Saw, cut {kerf} wide", kerf=kerf_mm)
