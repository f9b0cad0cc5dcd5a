"""How often a property of something expensive is tried: a few times in every run, many times in the long runs.

What costs less than some milliseconds an example says ``settings(max_examples=…)`` itself.
"""

from collections.abc import Callable
from typing import Any, TypeVar

import pytest
from hypothesis import HealthCheck, Phase, settings

Test = TypeVar("Test", bound=Callable[..., Any])
LONG_RUNS = "long runs"
"""The name of hypothesis's profile where the long runs were asked for."""


def is_for_long_runs(markers: str) -> bool:
    """Whether pytest's ``-m`` asks for the long runs."""
    words = markers.split()
    return "full" in words and "not full" not in " ".join(words)


def examples(few: int, *, many: int, shrinks: bool = True) -> Callable[[Test], Test]:
    """So few examples, however long one of them takes; in the long runs, to which the test then belongs, so many.

    ``shrinks`` says whether what fails is made simpler before it is shown: of a whole sheet that takes minutes. What is not
    is also the same few in every run: how well a sheet is laid out is told by many, and those are new in each long run.
    """
    phases = [phase for phase in settings().phases if shrinks or phase not in (Phase.shrink, Phase.explain)]
    if settings.get_current_profile_name() != LONG_RUNS:
        return settings(
            max_examples=few, suppress_health_check=list(HealthCheck), phases=phases, derandomize=not shrinks
        )
    tried = settings(max_examples=many, suppress_health_check=list(HealthCheck), phases=phases)

    def of_the_long_runs(test: Test) -> Test:
        marked: Test = pytest.mark.full(tried(test))
        return marked

    return of_the_long_runs
