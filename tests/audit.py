"""``python -m tests.audit``: asks the public lists of known holes about every package that is installed here.

Exit status 1 where a hole is known. Where no list can be reached, nothing is known, and that is what it says; with
``--required`` that is a failure too.
"""

import json
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

SERVICES = ("pypi", "osv")
"""Where pip-audit can ask: the package index itself, and the Open Source Vulnerabilities database."""
_LONGEST_S = 600


@dataclass(frozen=True, slots=True)
class Audit:
    """What one service said."""

    asked: int
    """Packages about which it had an answer."""
    unknown: int
    """Packages about which it had none."""
    holes: tuple[str, ...]

    def words(self, service: str) -> str:
        """For a person who reads the log."""
        if not self.asked:
            return f"{service}: could not be reached, or knows none of our packages; nothing is known from it."
        found = "no hole is known" if not self.holes else "HOLES ARE KNOWN:\n  " + "\n  ".join(self.holes)
        return f"{service}: {self.asked} packages asked about, {self.unknown} unknown to it: {found}."


def read(report: str) -> Audit:
    """A report of pip-audit in JSON; what is no report is an audit of nothing."""
    try:
        packages: list[dict[str, Any]] = json.loads(report)["dependencies"]
    except (ValueError, KeyError):
        packages = []
    answered = [p for p in packages if "vulns" in p]
    holes = [f"{p['name']} {p['version']}: {hole['id']}" for p in answered for hole in p["vulns"]]
    return Audit(len(answered), len(packages) - len(answered), tuple(holes))


def ask(service: str) -> Audit:
    """Have pip-audit ask one service about this environment; one that answers with an error has said nothing."""
    command = [sys.executable, "-m", "pip_audit", "--progress-spinner", "off", "--timeout", "10", "--format", "json"]
    try:
        done = subprocess.run(
            [*command, "--vulnerability-service", service],
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            check=False,
            timeout=_LONGEST_S,
        )
    except subprocess.TimeoutExpired:
        return read("")
    return read(done.stdout)


def outcome(audits: Sequence[Audit], *, is_required: bool) -> int:
    """The exit status: 1 for any known hole, and for not having been able to ask where that is required."""
    if any(audit.holes for audit in audits):
        return 1
    return 1 if is_required and not any(audit.asked for audit in audits) else 0


def main(arguments: Sequence[str]) -> int:
    """Ask each service in turn until one has answered."""
    audits: list[Audit] = []
    for service in SERVICES:
        audits.append(ask(service))
        print(audits[-1].words(service), flush=True)
        if audits[-1].asked:
            break
    else:
        print("THE DEPENDENCY AUDIT WAS NOT DONE. Run it where one of these can be reached: python -m tests.audit")
    return outcome(audits, is_required="--required" in arguments)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
