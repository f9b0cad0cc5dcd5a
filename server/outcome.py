"""What becomes of what somebody typed: a design, a conflict, further problems, or neither yet."""

from dataclasses import replace

from geometry.design import design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from server.forms import FormReading
from server.present import Outcome


def outcome_of(reading: FormReading) -> Outcome:
    """The outcome of a reading; nothing is raised."""
    if reading.measurements is None:
        return Outcome(reading)
    try:
        return Outcome(reading, design=design_pad(reading.measurements))
    except NoPadFitsError as error:
        return Outcome(reading, conflict=error)
    except BadMeasurementsError as error:
        return Outcome(replace(reading, problems=(*reading.problems, *error.problems), measurements=None))
