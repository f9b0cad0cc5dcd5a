"""Sentences for the shop whose lengths are shown in the shop's own units."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from geometry.letters import lower_first
from geometry.told import told
from geometry.units import LengthUnit, Zone, in_unit, mm_to_inch

Units = LengthUnit
_FEED_STEP_MM = 0.005
_MM_PER_M, _INCHES_PER_FOOT = 1000.0, 12


def length_shown(length_mm: float, units: Units = "mm") -> str:
    """A length with its unit, to a hundredth of a millimetre or a thousandth of an inch; a limit is rounded to the part's side.

    >>> length_shown(67.2), length_shown(76.2, "in"), length_shown(-0.004), length_shown(Zone(0.6), "in")
    ('67.2 mm', '3.000 in', '0 mm', '0.0236 in')
    """
    if units == "in":
        digits = 4 if isinstance(length_mm, Zone) else 3
        return f"{in_unit(length_mm, 'in', digits):.{digits}f} in".replace("-0.000", "0.000")
    shown = f"{in_unit(length_mm, 'mm', 2):.2f}".rstrip("0").rstrip(".")
    return f"{'0' if shown == '-0' else shown} mm"


def feed_shown(feed_mm: float, units: Units = "mm") -> str:
    """A feed with its unit, as finely as it can be set: to 0.005 mm, or to a tenth of a thousandth of an inch.

    >>> feed_shown(0.0508), feed_shown(0.125), feed_shown(0.25), feed_shown(0.0508, "in")
    ('0.05 mm', '0.125 mm', '0.25 mm', '0.0020 in')
    """
    if units == "in":
        return f"{mm_to_inch(feed_mm):.4f} in"
    return f"{max(1, round(feed_mm / _FEED_STEP_MM)) * _FEED_STEP_MM:.3f}".rstrip("0") + " mm"


def speed_shown(speed_m_min: float, units: Units = "mm") -> str:
    """A cutting speed as the shop reckons it: in metres or in feet a minute.

    >>> speed_shown(120), speed_shown(121.92, "in")
    ('120 m/min', '400 ft/min')
    """
    if units == "in":
        return f"{mm_to_inch(speed_m_min * _MM_PER_M) / _INCHES_PER_FOOT:.0f} ft/min"
    return f"{speed_m_min:.0f} m/min"


@dataclass(frozen=True, slots=True)
class Sentence:
    """Words with lengths left open, so that one card serves a metric and an inch shop."""

    template: str
    lengths_mm: Mapping[str, float] = field(default_factory=dict)
    figures_mm: Mapping[str, str] = field(default_factory=dict)
    """How the sentence has a length in mm, where it rounds it in a way of its own."""

    def shown(self, units: Units = "mm") -> str:
        """The words with their lengths; a length below zero has the sign of a number, which is no hyphen.

        >>> said("It moved by {by}.", by=-0.4).shown()
        'It moved by −0.4 mm.'
        """
        shown = {k: length_shown(v, units).replace("-", "−") for k, v in self.lengths_mm.items()}
        if units == "mm":
            shown |= {k: f"{figures} mm" for k, figures in self.figures_mm.items()}
        return self.template.format_map(shown)

    def __str__(self) -> str:
        return self.shown()


def said(template: str, **lengths_mm: float) -> Sentence:
    """A sentence with lengths in braces, by name.

    >>> said("Let the bar stand out {reach}.", reach=35.0).shown("in")
    'Let the bar stand out 1.378 in.'
    """
    return Sentence(template, lengths_mm)


def said_of_marked(words: str) -> Sentence:
    """A sentence whose lengths are marked, as one with its lengths left open.

    >>> from geometry.told import mm
    >>> said_of_marked(f"It is {mm(12.7, '.2f')} {{deep}}.").shown(), said_of_marked(f"It is {mm(12.7)} deep.").shown("in")
    ('It is 12.70 mm {deep}.', 'It is 0.500 in deep.')
    """
    lengths: dict[str, float] = {}
    figures: dict[str, str] = {}

    def opened(length_mm: float, text: str) -> str:
        name = f"n{len(lengths)}"
        lengths[name], figures[name] = length_mm, text
        return f"{{{name}}}"

    template = told(words.replace("{", "{{").replace("}", "}}"), opened)
    return Sentence(template, lengths, figures)


def joined(sentences: Sequence[Sentence]) -> Sentence:
    """Several short sentences in one line, with semicolons between.

    >>> joined((said("Saw"), said("End mill {cutter}", cutter=6))).shown()
    'Saw; end mill 6 mm'
    """
    parts, lengths = [], {}
    for number, sentence in enumerate(sentences):
        words = sentence.template if number == 0 else lower_first(sentence.template)
        for name, length in sentence.lengths_mm.items():
            words = words.replace(f"{{{name}}}", f"{{{name}_{number}}}")
            lengths[f"{name}_{number}"] = length
        parts.append(words)
    return Sentence("; ".join(parts), lengths)
