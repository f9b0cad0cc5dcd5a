"""Where a number or a formula comes from, and how far it may be trusted; carried beside every value."""

from dataclasses import dataclass
from enum import StrEnum


class Mark(StrEnum):
    """How a value was obtained. The mark travels with the value into every sheet."""

    FOUND = "F"
    MEMORY = "M"
    RECOMPUTED = "V"
    DERIVED = "D"
    COMPUTED = "C"
    PRACTICE = "P"
    OWN = "U"

    @property
    def words(self) -> str:
        """What a reader of a sheet is told about a value with this mark."""
        return _WORDS[self]


_WORDS = {
    Mark.FOUND: "published, text read",
    Mark.MEMORY: "from memory, unconfirmed",
    Mark.RECOMPUTED: "from memory, recomputed independently",
    Mark.DERIVED: "derived for this project",
    Mark.COMPUTED: "computed with a general-purpose package",
    Mark.PRACTICE: "common practice, no source",
    Mark.OWN: "your own value",
}


@dataclass(frozen=True, slots=True)
class Source:
    """One origin: its mark and, in words, the publication, the derivation or the package."""

    mark: Mark
    text: str

    def __str__(self) -> str:
        return f"{self.text} [{self.mark.value}: {self.mark.words}]"


@dataclass(frozen=True, slots=True)
class Sourced:
    """A number that knows its unit and its origin."""

    value: float
    unit: str
    source: Source


def derived(text: str) -> Source:
    """A source for our own reasoning."""
    return Source(Mark.DERIVED, text)


def memory(text: str) -> Source:
    """A source for what was remembered and not checked."""
    return Source(Mark.MEMORY, text)


def found(text: str) -> Source:
    """A source for what was read in a publication."""
    return Source(Mark.FOUND, text)


def recomputed(text: str) -> Source:
    """A source for what was remembered and then confirmed by an independent calculation."""
    return Source(Mark.RECOMPUTED, text)


def practice(text: str) -> Source:
    """A source for a fact of the trade that nobody publishes."""
    return Source(Mark.PRACTICE, text)
