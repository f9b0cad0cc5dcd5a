"""The audit of dependencies can fail, and says so when it could not ask."""

import json
from typing import Any

import pytest

from tests.audit import Audit, outcome, read

CLEAN = {"name": "one", "version": "1.0", "vulns": []}
HOLED = {"name": "two", "version": "2.0", "vulns": [{"id": "PYSEC-0000-1", "fix_versions": ["2.1"]}]}
UNKNOWN = {"name": "three", "skip_reason": "not found"}


def report(*packages: dict[str, Any]) -> str:
    return json.dumps({"dependencies": packages, "fixes": []})


def test_a_known_hole_fails_the_audit_and_is_named() -> None:
    found = read(report(CLEAN, HOLED, UNKNOWN))
    assert found == Audit(2, 1, ("two 2.0: PYSEC-0000-1",))
    assert outcome([found], is_required=False) == 1
    assert "two 2.0: PYSEC-0000-1" in found.words("pypi")


def test_packages_without_a_hole_pass() -> None:
    found = read(report(CLEAN, UNKNOWN))
    assert (found.asked, found.holes, outcome([found], is_required=True)) == (1, (), 0)


@pytest.mark.parametrize("said", ["", "Traceback", "{}", report(UNKNOWN, UNKNOWN)])
def test_a_service_that_could_not_be_asked_is_no_pass(said: str) -> None:
    """Its words claim nothing; where the audit is required, it fails."""
    found = read(said)
    assert "nothing is known from it" in found.words("osv")
    assert (outcome([found], is_required=False), outcome([found], is_required=True)) == (0, 1)
