"""Which measurements each check rests on: a rule that several kinds share names them by the cup's or the seam's own."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

import geometry.checks  # noqa: F401 - registers every check
from geometry.conditions import Conditions, conditions_of
from geometry.measurements import read_measurements
from geometry.rules import CHECK_RULES, CheckRule
from server.guide_cautions import example_documents
from server.links import samples


def rests_on(rule: CheckRule) -> tuple[str, ...]:
    """What a check rests on, by the dotted keys of every foot and head that it judges."""
    return _keys_by_check()[rule.code]


def checks_on(key: str) -> tuple[CheckRule, ...]:
    """The checks that rest on a measurement, in the order of their register."""
    return tuple(rule for rule in CHECK_RULES.values() if key in rests_on(rule))


@cache
def _keys_by_check() -> Mapping[str, tuple[str, ...]]:
    """By check: its needs in the words of each example that it judges, in the order of the examples."""
    cases = tuple(_cases())
    return {
        rule.code: tuple(dict.fromkeys(key for c in cases if rule.applies(c.rooms) for key in c.own_keys(rule.needs)))
        for rule in CHECK_RULES.values()
    }


def _cases() -> Iterator[Conditions]:
    documents: tuple[Mapping[str, Any], ...] = (
        *(document for _, document in example_documents()),
        *(sample.document for sample in samples()),
    )
    for document in documents:
        yield conditions_of(read_measurements(document))
