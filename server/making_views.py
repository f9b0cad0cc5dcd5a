"""What other pages say of the making of a pad: the way to the shop's pages, and how the part that was made stands."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from geometry.design import Design
from geometry.making.wording import Sentence, Units
from geometry.route import route_card
from geometry.standing import DO_NOT_USE, MADE_WRONG, part_standing
from server import links, shown
from server.field_views import LinkView
from server.making_shown import eye_of, long_length, mass, minutes, money
from server.sheet_files import sibling


@dataclass(frozen=True, slots=True)
class Standing:
    """What readings say of the part that was made."""

    mark: str
    """The words to mark page and paper with; empty where the part did not fail."""
    words: str
    """The outcome in a sentence, or why the part is marked."""
    reasons: tuple[str, ...]

    @property
    def is_failed(self) -> bool:
        """Whether the part must not be used."""
        return bool(self.mark)


@dataclass(frozen=True, slots=True)
class HowMade:
    """How the pad is made, in a few lines."""

    title: str
    lines: tuple[str, ...]
    troubles: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SheetMaking:
    """What a working sheet says of the making of its pad before any card is written."""

    address: str
    """Where a few lines of the card are to be had."""
    pages: tuple[LinkView, ...]
    standing: Standing | None


def as_made_standing(design: Design, units: str = "mm") -> Standing | None:
    """What the readings of a design's document say of its part, new and in service; None where nothing was read."""
    found = part_standing(design)
    if found is None:
        return None
    return Standing(found.mark, found.words, tuple(in_units(s, "in" if units == "in" else "mm") for s in found.reasons))


def in_units(sentence: Sentence, units: Units) -> str:
    """A sentence in the viewer's unit, the lengths that an estimate's own words hold included."""
    return shown.words_in(sentence.shown(units), units)


def kept_standing(outcome: str, words: str, reasons: Sequence[str]) -> Standing:
    """The same for readings that were judged when they were kept.

    >>> kept_standing("do_not_use", "Do not use this part.", ["Slot width: too wide."]).mark
    'DO NOT USE THIS PART'
    """
    is_failed = outcome == "do_not_use"
    return Standing(DO_NOT_USE if is_failed else "", MADE_WRONG if is_failed else words, tuple(reasons))


def sheet_making(design: Design, typed: Mapping[str, str], units: str) -> SheetMaking:
    """The way to everything about the making of a design; ``typed`` is what stands in its address."""
    own = links.pad_address(typed, units=units)
    return SheetMaking(sibling(own, "/how-made"), making_links(own), as_made_standing(design, units))


def how_made(design: Design, units: str) -> HowMade:
    """The making of a design in a few lines, taken from its whole card."""
    card = route_card(design.pad, design.conditions, design.measurements.shop)
    eye = eye_of(design.conditions, "in" if units == "in" else "mm")
    shop = design.measurements.shop
    lines = []
    if card.stock:
        price = money(card.stock.price, shop)
        lines.append(
            f"From {eye.length(card.stock.bar_mm)} bar, {eye.length(card.stock.blank_mm)} long, about"
            f" {mass(card.stock.mass_kg, units)}{f', {price}' if price else ''}."
        )
    if card.printing:
        long = long_length(card.printing.filament_mm, units)
        lines.append(f"About {shown.mass(card.printing.mass_kg, units)} of filament, {long}.")
    count = len(card.operations)
    lines.append(f"{count} operations, estimated {minutes(card.time_min)} for one pad.")
    return HowMade(
        title=card.title,
        lines=tuple(lines),
        troubles=tuple(eye.says(trouble) for trouble in card.troubles),
    )


def making_links(own: str) -> tuple[LinkView, ...]:
    """The way from a design's address to the three pages of the shop; nothing is computed."""
    pages = (
        ("Route card: every cut in order", "/route"),
        ("Inspection sheet, and the part as made", "/inspection"),
        ("Record in service, and when to discard it", "/record"),
    )
    return tuple(LinkView(words, sibling(own, suffix)) for words, suffix in pages)
