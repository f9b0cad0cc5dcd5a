"""The offline command: files, words and exit status."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.documents import SAMPLES, van

ROOT = SAMPLES.parent


def run(document: Path, out: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "geometry", str(document), "--out", str(out)],
        capture_output=True,
        text=True,
        cwd=ROOT,
        env=os.environ | {"PYTHONIOENCODING": "utf-8"},
        check=False,
        timeout=180,
    )


def test_a_good_design_gives_all_its_files(tmp_path: Path) -> None:
    done = run(SAMPLES / "mobile_library_van.json", tmp_path)
    assert done.returncode == 0, done.stderr
    assert {path.suffix for path in tmp_path.iterdir()} == {".json", ".step", ".stl", ".svg", ".dxf", ".pdf"}
    assert "governing first" in done.stdout
    design = json.loads(next(tmp_path.glob("*.json")).read_text())
    assert design["fit_to_make"] is True


def test_a_failing_design_exits_with_1_and_says_so_in_its_file_names(tmp_path: Path) -> None:
    done = run(SAMPLES / "repair_cafe_people_carrier.json", tmp_path)
    assert done.returncode == 1, done.stderr
    assert done.stdout.startswith("Do not make: ")
    assert all("NOT-FIT" in path.name for path in tmp_path.iterdir())


def test_bad_input_exits_with_2_and_names_field_and_number(tmp_path: Path) -> None:
    document = tmp_path / "bad.json"
    document.write_text(json.dumps(van(seam__height_mm=400)))
    done = run(document, tmp_path / "out")
    assert done.returncode == 2
    assert "seam.height_mm" in done.stderr
    assert "400" in done.stderr
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("text", ["", "[1]", "{", '{"jack": NaN}', "[" * 100_000])
def test_what_is_no_document_exits_with_2(tmp_path: Path, text: str) -> None:
    document = tmp_path / "bad.json"
    document.write_text(text)
    done = run(document, tmp_path / "out")
    assert done.returncode == 2
    assert "Traceback" not in done.stderr


def test_no_pad_exits_with_3_and_names_both_bounds_numbers_and_fields(tmp_path: Path) -> None:
    done = run(SAMPLES / "rowing_club_trailer_car_no_pad.json", tmp_path)
    assert done.returncode == 3
    for needed in ("19.50 mm", "−2.63 mm".replace("−", "-"), "jack.cup_depth_mm", "seam.edge_height_mm"):
        assert needed in done.stderr


def test_an_unwritable_folder_exits_with_4(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    done = run(SAMPLES / "mobile_library_van.json", tmp_path / "file" / "out")
    assert done.returncode == 4
    assert "Traceback" not in done.stderr
