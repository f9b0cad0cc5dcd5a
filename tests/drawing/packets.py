"""What the tests of packet, card and gauges print, and how they read it back: by poppler and other programs."""

import subprocess
from datetime import date
from pathlib import Path
from typing import Any

from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.packet import card_pdf
from geometry.sheet_facts import sheet_facts
from tests.documents import designed, sample

DAY = date(2026, 2, 3)
VAN, STEM, INCH, NOT_FIT_PAD, PRINTED = (
    "mobile_library_van",
    "tool_library_hatchback_stem",
    "allotment_estate_inch_shop",
    "repair_cafe_people_carrier",
    "choir_minibus_printed",
)
FITTING = (VAN, STEM, INCH)
UNFIT = (NOT_FIT_PAD, PRINTED)


def design_of(name: str, **groups: Any) -> tuple[Design, SheetFacts]:
    """A sample's design with some groups of its document given, and the facts of its sheets."""
    design = designed(sample(name) | groups)
    return design, sheet_facts(design, issued=DAY)


def run(*command: str | Path) -> str:
    """What a program prints."""
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def squeezed(words: str) -> str:
    """Words with single blanks; poppler breaks lines where the page does."""
    return " ".join(words.split())


def pages_of(path: Path) -> list[str]:
    """The text of each page, as poppler finds it."""
    return [squeezed(page) for page in run("pdftotext", path, "-").split("\f")[:-1]]


def pages_in(content: bytes, folder: Path) -> list[str]:
    """The same of a PDF that lies in no file yet."""
    path = folder / "sheet.pdf"
    path.write_bytes(content)
    return pages_of(path)


def card_pages(folder: Path, design: Design, facts: SheetFacts) -> list[str]:
    """The text of each page of a lifting card, of which there should be one."""
    return pages_in(card_pdf(design, facts), folder)
