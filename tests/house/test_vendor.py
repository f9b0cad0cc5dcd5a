"""Third-party files are what their lists say: each with origin, licence and the digest of its bytes."""

import hashlib
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
ROOMS = (ROOT / "static" / "vendor", ROOT / "tests" / "browser" / "vendor")
FILES = [path for room in ROOMS for path in sorted(room.glob("*.min.js"))]


def row_of(path: Path) -> list[str]:
    lines = (path.parent / "README.md").read_text("utf-8").splitlines()
    return next((line.split("|") for line in lines if line.startswith(f"| `{path.name}`")), [])


def test_both_rooms_have_files_to_look_at() -> None:
    assert {path.parent for path in FILES} == set(ROOMS)


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.name)
def test_a_third_party_file_has_the_digest_that_its_list_gives(path: Path) -> None:
    assert hashlib.sha256(path.read_bytes()).hexdigest() in "".join(row_of(path))


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.name)
def test_a_third_party_file_has_its_licence_beside_it(path: Path) -> None:
    named = re.findall(r"`([^`]*LICENSE[^`]*)`", "".join(row_of(path)))
    assert named
    assert all((path.parent / name).read_text("utf-8").strip() for name in named)
