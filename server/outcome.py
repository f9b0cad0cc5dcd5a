"""What becomes of what somebody typed: a design, a conflict, further problems, or neither yet."""

from dataclasses import dataclass
from typing import Literal

from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from server.forms import FormReading

State = Literal["start", "unfinished", "refused", "no_pad", "fit", "not_fit"]
"""How far the job has come: nothing typed, something missing, something wrong, nothing fits, a pad."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a reading: a design, a conflict, or neither yet."""

    reading: FormReading
    design: Design | None = None
    conflict: NoPadFitsError | None = None

    @property
    def state(self) -> State:
        """How far the job has come."""
        if self.conflict:
            return "no_pad"
        if self.design:
            return "fit" if self.design.fit_to_make else "not_fit"
        if self.reading.problems:
            return "refused"
        return "unfinished" if self.reading.typed else "start"


def outcome_of(reading: FormReading) -> Outcome:
    """The outcome of a reading; nothing is raised."""
    if reading.measurements is None:
        return Outcome(reading)
    try:
        return Outcome(reading, design=design_pad(reading.measurements))
    except NoPadFitsError as error:
        return Outcome(reading, conflict=error)
    except BadMeasurementsError as error:
        return Outcome(reading.refused(error.problems))
