"""What must be said with every pad, whatever its numbers."""

from dataclasses import dataclass
from typing import Literal

from geometry.provenance import Source, derived, found, practice

SignalWord = Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
"""By their meaning in ANSI Z535.4: death or serious injury will, could; minor injury could; damage to property."""

ONE_LINE = (
    "Estimated, not tested. Never get under a car held by a jack: use stands at once. The vehicle's and the jack's manuals,"
    " local codes and licensed practice go first."
)
"""The caution line that stands on every page of every sheet."""


@dataclass(frozen=True, slots=True)
class Caution:
    """One sentence or two that a reader must see: signal word, hazard, how to avoid it, and why it is said."""

    signal: SignalWord
    text: str
    source: Source
    brief: str = ""
    """The same in few words for the drawing, where room is short; empty where the drawing can do without."""
    is_for_lifting: bool = False
    """Whether it tells how to lift, and so has no place on the card of a pad that must not be used."""


_JACK_GUIDE = found("Consumer product safety guidance on vehicle jacks, productsafety.gov.au")
ALWAYS = (
    Caution(
        "DANGER",
        "A car that slips off a jack kills. Never put any part of your body under a car that is held only by a jack.",
        found(
            "productsafety.gov.au jack page; WAC 296-307-22509(3): working under a load raised only with jacks is prohibited"
        ),
        brief="No part of your body under a car that is held only by a jack.",
    ),
    Caution(
        "WARNING",
        "Set support stands or ramps as soon as the car is up, and lower it onto them.",
        found(
            "29 CFR 1926.305(d)(1): after the load has been raised it shall be cribbed, blocked or otherwise secured at once"
        ),
        brief="Level ground, wheels chocked, park brake set; stands as soon as the car is up.",
        is_for_lifting=True,
    ),
    Caution(
        "WARNING",
        "This pad is estimated by calculation and not tested. Many jack manuals forbid anything between the jack and the car,"
        " and an accessory may need the jack to be retested: the vehicle's and the jack's manuals decide, and local codes and"
        " licensed practice go first.",
        found("AS 2615:2016 section 7: accessories added to a jack require retesting; common practice for the manuals"),
        brief="Estimated, not tested. The vehicle's and the jack's manuals, local codes and licensed practice go first.",
    ),
    Caution(
        "WARNING",
        "Lift only on hard, level ground, with the wheels that stay down chocked on both sides and the park brake set.",
        _JACK_GUIDE,
        is_for_lifting=True,
    ),
    Caution(
        "WARNING",
        "Lift only at the point that the vehicle's maker names in its manual.",
        _JACK_GUIDE,
        is_for_lifting=True,
    ),
    Caution("WARNING", "Never exceed the jack's rated load. Nobody and no pet stays in the car.", _JACK_GUIDE),
    Caution(
        "WARNING",
        "Lift in stages: the jack must be free to roll as the car swings. Look, lower and re-seat where pad or car shifts.",
        found("productsafety.gov.au jack page: the jack must be able to roll slightly"),
        is_for_lifting=True,
    ),
    Caution(
        "CAUTION",
        "First use: raise until the tyre just unloads, lower, look at the pad and at both faces that it touches, then lift.",
        practice("First-use routine of careful workshops"),
        is_for_lifting=True,
    ),
    Caution(
        "CAUTION",
        "Look at the pad before each use. Discard it when it is cracked, dished, swollen, or shows a white line,"
        " and after any shock.",
        derived("Signs of overload in plastics; inspection before each use as for jacks, 29 CFR 1926.305(d)(1)"),
        is_for_lifting=True,
    ),
    Caution(
        "WARNING",
        "Use one pad. Never stack pads or put anything above or below it.",
        derived("Each joint can slip"),
        is_for_lifting=True,
    ),
)
