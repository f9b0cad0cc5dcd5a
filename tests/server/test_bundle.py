"""Everything of a design in one archive: complete, told in plain words, checked by other programs, equal byte for byte."""

import json
import re
import shutil
import subprocess
import zipfile
from dataclasses import replace
from datetime import date
from io import BytesIO
from pathlib import Path

import pytest
from httpx import AsyncClient

from geometry.design import Design, design_pad
from geometry.errors import ModelError
from geometry.measurements import read_measurements
from geometry.sheet_facts import model_label
from server.app import create_app
from server.bundle import Bundled, bundle_bytes, readme
from server.drawn import drawers
from tests.server.asking import DRAWINGS, FAILING, FITTING, MODELS, address, problem
from tests.server.conftest import SETTINGS
from tests.server.test_models import client_at

pytestmark = pytest.mark.anyio
DAY = date(2026, 2, 3)
STAND_INS = {ending: f"the {ending} file".encode() for ending in (*DRAWINGS, *MODELS)}


@pytest.fixture(scope="module")
def design() -> Design:
    return design_pad(read_measurements(FITTING))


def bundled(design: Design, issued: date = DAY) -> bytes:
    """The archive of a design with something small in place of every drawing and model."""
    return bundle_bytes(told(design, issued), STAND_INS)


def told(design: Design, issued: date = DAY) -> Bundled:
    return Bundled(design=design.to_dict(), label=model_label(design), issued=issued)


def contents(archive: bytes) -> dict[str, bytes]:
    """The files of an archive by their names without the folder."""
    with zipfile.ZipFile(BytesIO(archive)) as packed:
        assert packed.testzip() is None
        return {name.partition("/")[2]: packed.read(name) for name in packed.namelist()}


async def test_the_archive_holds_what_the_addresses_give(client_with_models: AsyncClient) -> None:
    """Oracle: every drawing and model asked for by itself."""
    answer = await client_with_models.get(address(FITTING, "zip"))
    assert (answer.status_code, answer.headers["content-type"]) == (200, "application/zip")
    files = contents(answer.content)
    for ending in (*DRAWINGS, *MODELS):
        alone = (await client_with_models.get(address(FITTING, ending))).content
        assert [content for name, content in files.items() if name.endswith(f".{ending}")] == [alone]
    assert len(files) == 11


async def test_a_document_gives_the_same_archive_as_its_address(client_with_models: AsyncClient) -> None:
    by_body = await client_with_models.post("/api/pad.zip", json=FITTING)
    by_address = await client_with_models.get(address(FITTING, "zip"))
    assert by_body.status_code == 200
    assert by_body.content == by_address.content
    assert by_body.headers["content-disposition"] == by_address.headers["content-disposition"]


async def test_the_archive_of_a_failed_design_is_given_to_who_has_seen_that(client_with_models: AsyncClient) -> None:
    refusal = await problem(await client_with_models.get(address(FAILING, "zip")), status=409, kind="not-fit")
    answer = await client_with_models.get(refusal["confirm"])
    assert answer.headers["content-disposition"].endswith('-NOT-FIT-all-files.zip"')
    files = contents(answer.content)
    assert all("NOT-FIT" in name for name in files if name not in {"README.txt", "SHA256SUMS"})
    assert "NOT FIT TO MAKE" in files["README.txt"].decode()


def test_another_program_finds_every_digest_right(design: Design, tmp_path: Path) -> None:
    """Oracle: sha256sum of the GNU coreutils."""
    if not shutil.which("sha256sum"):
        pytest.skip("there is no sha256sum")
    files = contents(bundled(design))
    for name, content in files.items():
        (tmp_path / name).write_bytes(content)
    checked = subprocess.run(
        ["sha256sum", "--strict", "-c", "SHA256SUMS"], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert checked.returncode == 0, checked.stderr
    assert checked.stdout.count(": OK") == len(files) - 1


def test_equal_designs_of_one_day_give_equal_bytes(design: Design) -> None:
    again = design_pad(read_measurements(FITTING))
    assert bundled(design) == bundled(again)
    assert bundled(design) != bundled(design, date(2026, 2, 4))


def test_names_are_plain_and_all_in_one_folder(design: Design) -> None:
    """Letters, digits, points and hyphens: what every system takes; whoever unpacks it gets one folder."""
    with zipfile.ZipFile(BytesIO(bundled(design))) as packed:
        names = packed.namelist()
    assert {name.partition("/")[0] for name in names} == {f"lifting-pad-{design.design_id}-rev-a"}
    assert all(re.fullmatch(r"[A-Za-z0-9.-]+/[A-Za-z0-9.-]+", name) for name in names)


def test_the_measurements_in_the_archive_give_the_same_design_again(design: Design) -> None:
    files = contents(bundled(design))
    document = json.loads(next(content for name, content in files.items() if name.endswith("-measurements.json")))
    assert design_pad(read_measurements(document)).design_id == design.design_id


@pytest.mark.parametrize("document", [FITTING, FAILING])
def test_the_readme_says_the_verdict_every_caution_and_every_file(document: dict[str, object]) -> None:
    design = design_pad(read_measurements(document))
    text = readme(told(design), STAND_INS)
    flat = " ".join(text.split())
    assert " ".join(design.verdict_words.split()) in flat
    assert all(" ".join(f"{caution.signal}: {caution.text}".split()) in flat for caution in design.cautions)
    names = contents(bundled(design))
    assert all(name in text for name in names if name != "README.txt")
    assert max(len(line) for line in text.splitlines()) <= 78


async def test_an_archive_that_was_made_is_not_made_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second server shares the folder, and whatever it were to draw or build would fail; inches are another archive."""
    settings = replace(SETTINGS, model_cache_folder=str(tmp_path / "models"))
    first, second = create_app(settings), create_app(settings)
    async with first.router.lifespan_context(first), client_at(first) as client:
        made = await client.get(address(FITTING, "zip"))

    async def broken(*_: object) -> None:
        raise ModelError("something was drawn again")

    monkeypatch.setattr(drawers, "drawings", broken)
    async with client_at(second) as client:
        kept, in_inches = [await client.get(address(FITTING, "zip", units)) for units in ("mm", "in")]
    assert (made.status_code, kept.content) == (200, made.content)
    assert in_inches.status_code == 500
