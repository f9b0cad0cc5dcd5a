"""Programs of other people read the model files: a slicer (Debian's prusa-slicer), and gmsh, which reads STEP by itself."""

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from geometry.model_process import write_models
from geometry.pad import Pad
from geometry.volume import volume_mm3
from tests.geometry.pads import LABEL, ORDINARY, STEMMED

PADS = {"ordinary": ORDINARY, "stemmed": STEMMED}
READ_STEP = """
import json, sys
import gmsh
gmsh.initialize()
gmsh.option.setNumber("General.Terminal", 0)
found = gmsh.model.occ.importShapes(sys.argv[1], highestDimOnly=False)
gmsh.model.occ.synchronize()
volumes = [tag for dimension, tag in found if dimension == 3]
print(json.dumps({
    "volumes": len(volumes),
    "box": gmsh.model.getBoundingBox(3, volumes[0]),
    "volume": gmsh.model.occ.getMass(3, volumes[0]),
    "name": gmsh.model.getEntityName(3, volumes[0]),
    "faces": len(gmsh.model.getEntities(2)),
}))
"""


def missing(what: str) -> None:
    """Where tests are required to run, a missing program is a failure and no excuse."""
    assert not os.environ.get("CI"), what
    pytest.skip(what)


@pytest.fixture(scope="module", params=PADS)
def pad(request: pytest.FixtureRequest) -> Pad:
    return PADS[request.param]


@pytest.fixture(scope="module")
def files(pad: Pad, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    return write_models(pad, LABEL, tmp_path_factory.mktemp("models"), ("step", "stl", "3mf"))


def slicer(*arguments: str | Path, home: Path) -> str:
    """What the slicer prints."""
    if not shutil.which("prusa-slicer"):
        missing("there is no prusa-slicer")
    done = subprocess.run(
        ["prusa-slicer", "--datadir", home, *arguments], capture_output=True, text=True, timeout=300, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def told(info: str) -> dict[str, str]:
    return {name: value.strip() for name, value in re.findall(r"^(\w+) = (.+)$", info, re.MULTILINE)}


@pytest.mark.parametrize("ending", ["stl", "3mf"])
def test_a_slicer_finds_one_closed_part_of_the_right_size(
    pad: Pad, files: dict[str, Path], ending: str, tmp_path: Path
) -> None:
    """Sizes to the hundredth of a millimetre; the volume less by what the triangles cut off the round: 0.1 %."""
    info = told(slicer("--info", files[ending], home=tmp_path))
    sizes = [float(info[f"size_{axis}"]) for axis in "xyz"]
    assert (info["manifold"], info["number_of_parts"]) == ("yes", "1")
    assert sizes == pytest.approx([pad.body_diameter_mm, pad.body_diameter_mm, pad.overall_height_mm], abs=0.02)
    assert float(info["volume"]) == pytest.approx(volume_mm3(pad), rel=1e-3)


@pytest.mark.full
@pytest.mark.parametrize("ending", ["stl", "3mf"])
def test_a_slicer_slices_it_to_its_full_height(pad: Pad, files: dict[str, Path], ending: str, tmp_path: Path) -> None:
    """Oracle: the highest layer in the machine's commands lies within one layer of the pad's height."""
    commands = tmp_path / "pad.gcode"
    slicer("--export-gcode", "--output", commands, files[ending], home=tmp_path)
    layers = [float(z) for z in re.findall(r"^;Z:([\d.]+)$", commands.read_text(), re.MULTILINE)]
    assert len(layers) > 50
    assert max(layers) == pytest.approx(pad.overall_height_mm, abs=0.31)


def test_a_second_reader_finds_the_same_solid_in_the_step_file(pad: Pad, files: dict[str, Path]) -> None:
    """In a process of its own: gmsh brings another build of the modelling kernel. Its volumes are good to 3 in 10 000."""
    done = subprocess.run(
        [sys.executable, "-c", READ_STEP, str(files["step"])], capture_output=True, text=True, timeout=120, check=False
    )
    if done.returncode and "import gmsh" in done.stderr:
        missing(f"gmsh cannot be loaded: {done.stderr.strip().splitlines()[-1]}")
    assert done.returncode == 0, done.stderr
    found = json.loads(done.stdout.splitlines()[-1])
    r = pad.body_diameter_mm / 2
    assert found["volumes"] == 1
    assert found["box"] == pytest.approx([-r, -r, -pad.stem_length_mm, r, r, pad.top_height_mm], abs=1e-3)
    assert found["volume"] == pytest.approx(volume_mm3(pad), rel=3e-4)
    assert found["name"].endswith(LABEL.product_name)
