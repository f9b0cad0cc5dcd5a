"""What is said of dials and of the last pass: on a machine wound by hand, and on one that is programmed."""

from geometry.making.machine import Machine
from geometry.making.wording import Sentence, said


def by_dial(machine: Machine, *sentences: Sentence) -> tuple[Sentence, ...]:
    """What is said only where slides are wound by hand."""
    return () if machine.is_stepless else sentences


def last_pass(machine: Machine, diameter_mm: float) -> tuple[Sentence, ...]:
    """How the last pass of a diameter is set."""
    if machine.is_stepless:
        return (
            said(
                "Rough, stop, let it cool, measure, and put the difference into the tool's wear offset: {size}.",
                size=diameter_mm,
            ),
        )
    dial = "its half" if machine.slide == "radius" else "the whole of it"
    return (
        said("After roughing stop, let it cool and measure."),
        said(
            f"Subtract {{size}} from what you measure; advance the dial by {dial} for the finishing pass.",
            size=diameter_mm,
        ),
    )
