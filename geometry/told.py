"""Lengths inside a sentence, marked with their value: the sentence is written once, in mm, and can be shown in any unit.

A marked length is a value, and how the sentence has it in mm, between characters that no text of ours holds (Unicode's
private use area). Whoever shows a sentence takes the marks away, by one of the functions here.
"""

import re
from collections.abc import Callable

_OPEN, _AS_WRITTEN, _CLOSE = "\ue000", "\ue001", "\ue002"
_MARKED = re.compile(f"{_OPEN}([^{_AS_WRITTEN}]*){_AS_WRITTEN}([^{_CLOSE}]*) mm{_CLOSE}")
_MARKS = re.compile(f"{_OPEN}[^{_AS_WRITTEN}]*{_AS_WRITTEN}|{_CLOSE}")


def mm(length_mm: float, form: str = "g") -> str:
    """A length with its unit, marked with its value; ``form`` is how a format string would write it.

    >>> unmarked(f"The slot leaves the seam {mm(0.4567, '.2f')}; {mm(0.2)} is needed.")
    'The slot leaves the seam 0.46 mm; 0.2 mm is needed.'
    """
    return f"{_OPEN}{float(length_mm)!r}{_AS_WRITTEN}{length_mm:{form}} mm{_CLOSE}"


def unmarked(words: str) -> str:
    """The sentence as it is written, its lengths in mm."""
    return _MARKS.sub("", words) if _OPEN in words else words


def told(words: str, shown: Callable[[float, str], str]) -> str:
    """The sentence with every length as ``shown`` tells it, from its value in mm and the figures that the sentence has for it.

    >>> told(f"Only {mm(25.4, '.1f')} of 96 N/mm", lambda length_mm, figures: f"{length_mm / 25.4:g} in")
    'Only 1 in of 96 N/mm'
    """
    return _MARKED.sub(lambda found: shown(float(found[1]), found[2]), words)
