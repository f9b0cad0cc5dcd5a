"""A part whose readings say that it must not be used: the mark on every sheet that could be taken for its own."""

from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.packet.paper import Data
from geometry.standing import PartStanding, part_standing


def failed_part(design: Design) -> PartStanding | None:
    """How the part stands whose readings are in a design's document; None where none were taken or it may be used."""
    found = part_standing(design)
    return found if found is not None and found.mark else None


def banner_of(failed: PartStanding | None, facts: SheetFacts) -> Data:
    """What stands over every page of a failed part, in place of the words over a pad that is not fit to make."""
    if failed is None:
        return {}
    return {"not_fit": failed.mark, "not_fit_words": f"{failed.words} {facts.not_fit_words}".strip()}
