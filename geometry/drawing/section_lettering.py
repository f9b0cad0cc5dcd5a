"""How long words may become in whatever sans-serif font the page is read in, and numbers in the viewer's unit."""

from typing import Literal

from geometry.units import LengthUnit, mm_to_inch

_THOUSANDTHS_OF_EM = {
    278: "'ijl", 295: "IJ", 318: " ,.’", 337: "/:;\\|", 352: "f", 361: "-", 393: "()[]t", 411: "r!", 460: '"', 500: "*_`°–",
    525: "sz", 557: "cL?", 579: "kF", 592: "vxy", 615: "oaeTYP⌀", 636: "hnuSbdgpqE0123456789$", 656: "K", 686: "AVXZB",
    698: "RC", 752: "UNH", 787: "DGOQ&", 838: "w#+<=>~−≥≤×", 863: "M", 989: "Wm%½", 1000: "@…",
}  # fmt: skip
"""Advance widths of DejaVu Sans in groups, the widest of each: one of the broadest fonts a page falls back to."""
_WIDTH = {character: width / 1000 for width, characters in _THOUSANDTHS_OF_EM.items() for character in characters}
BOLD = 1.16
"""How much broader the bold cut may be."""


def text_width(words: str, size: float) -> float:
    """Length of a line of text of a font size, estimated from above; unknown characters count as a full square."""
    return size * sum(_WIDTH.get(character, 1.0) for character in words)


def cut(words: str, *, size: float, width: float) -> str:
    """The words, with an ellipsis in place of what would not fit."""
    if text_width(words, size) <= width:
        return words
    while words and text_width(words + "…", size) > width:
        words = words[:-1]
    return words.rstrip() + "…"


def wrapped(words: str, *, size: float, width: float, most: int) -> tuple[str, ...]:
    """The words in at most so many lines; the last is cut where they are too long."""
    lines: list[str] = []
    rest = words.split()
    while rest and len(lines) < most - 1:
        count = 1
        while count < len(rest) and text_width(" ".join(rest[: count + 1]), size) <= width:
            count += 1
        lines.append(cut(" ".join(rest[:count]), size=size, width=width))
        rest = rest[count:]
    return (*lines, cut(" ".join(rest), size=size, width=width)) if rest else tuple(lines)


def length_words(value_mm: float, units: LengthUnit) -> str:
    """A length for the eye, with its unit.

    >>> length_words(68.0, "mm"), length_words(-2.928, "mm"), length_words(38.1, "in")
    ('68 mm', '−2.93 mm', '1.5 in')
    """
    value, places = (value_mm, 2) if units == "mm" else (mm_to_inch(value_mm), 3)
    return f"{_plain(value, places)} {units}"


def quantity_words(value: float, unit: str, units: LengthUnit) -> str:
    """Any figure of a check for the eye: lengths in the viewer's unit, others as they are."""
    if unit == "mm":
        return length_words(value, units)
    places: Literal[0, 1, 2] = 0 if abs(value) >= 100 else 1 if abs(value) >= 10 else 2
    shown = _plain(value, places)
    return shown if unit in {"", "–"} else f"{shown}{'' if unit == '°' else ' '}{unit}"


def _plain(value: float, places: int) -> str:
    text = f"{value:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in {"-0", ""} else text.replace("-", "−")
