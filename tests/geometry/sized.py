"""Documents as sized pads, and those pads judged, for tests that go over many documents."""

from typing import Any

from hypothesis import assume

from geometry.checks import judge
from geometry.conditions import conditions_of
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from geometry.rules import Check
from geometry.sizing import Sized, size


def sized(document: dict[str, Any]) -> Sized:
    """The pad of a document that has one."""
    return size(conditions_of(read_measurements(document)))


def sized_or_none(document: dict[str, Any]) -> Sized | None:
    """The sized pad; none where the document is refused or nothing fits, which must then be said in words."""
    try:
        return sized(document)
    except (NoPadFitsError, BadMeasurementsError) as error:
        assert len(str(error)) > 20
        return None


def a_pad_for(document: dict[str, Any]) -> Sized:
    """The sized pad of a drawn document; documents without one are drawn again."""
    made = sized_or_none(document)
    assume(made is not None)
    assert made is not None
    return made


def judged(document: dict[str, Any], **changes: float) -> dict[str, Check]:
    """The checks of the sized pad with some of its dimensions changed."""
    conditions = conditions_of(read_measurements(document))
    return {c.code: c for c in judge(conditions, size(conditions).pad.with_(**changes))}
