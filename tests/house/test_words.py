"""No word that the product can show claims more than an estimate."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CLAIMS = re.compile(
    r"\brated\b(?! load)|\bcertifi|\bcapacity\b|\bSWL\b|\bWLL\b|\bproof[- ]?test|\bcompl(?:y|ies) with\b|\bCE[- ]mark|\bUKCA\b"
    r"|\bsafe to\b|\bsafely\b|\bis safe\b|\buniversal\b|\bguarantee",
    re.IGNORECASE,
)
"""What a lifting pad made at home is not; "rated load" is the jack's, by its maker."""
PROMISES = re.compile(
    r"\b(?:rated(?! load)|certified|capacity|swl|wll|proof.tested|complies|universal|safe|holds)\b", re.IGNORECASE
)
"""Words that sentences about a pad must do without, though code and stylesheets may have their use for them."""
SHOWN = sorted(
    path
    for folder, endings in {
        "geometry": {".py", ".toml", ".typ"},
        "server": {".py"},
        "templates": {".html", ".jinja", ".svg"},
        "static": {".js", ".css"},
        "sample_data": {".json"},
    }.items()
    for path in (ROOT / folder).rglob("*")
    if path.suffix in endings and ".min." not in path.name
)


def words_of(path: Path) -> list[str]:
    """The text of a file that can reach a person; of Python, every string that is no docstring."""
    text = path.read_text(encoding="utf-8")
    if path.suffix != ".py":
        return [text]
    tree = ast.parse(text)
    silent = {
        id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }
    return [
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in silent
    ]


@pytest.mark.parametrize("path", SHOWN, ids=lambda p: str(p.relative_to(ROOT)))
def test_no_shown_word_claims_more_than_an_estimate(path: Path) -> None:
    found = [match[0] for words in words_of(path) for match in CLAIMS.finditer(words)]
    assert not found


@pytest.mark.parametrize("words", ["It holds.", "certified, too", "“safe”", "load CAPACITY: 2 t", "proof-tested"])
def test_a_promise_would_be_found(words: str) -> None:
    assert PROMISES.search(words)
    assert not PROMISES.search("the jack's rated load; threshold; a household; unsafe")


@pytest.mark.parametrize(
    "claim", ["rated for 2 t", "a certified pad", "load capacity 900 kg", "safe to work under", "universal pad"]
)
def test_a_claim_would_be_found(claim: str) -> None:
    assert CLAIMS.search(claim)


def test_the_jacks_rated_load_may_be_named() -> None:
    assert not CLAIMS.search("the jack's rated load")
