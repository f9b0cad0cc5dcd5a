"""Models by a process of their own: files, names, and words for what goes wrong there."""

import subprocess
import sys
from pathlib import Path

import pytest

from geometry import model_process
from geometry.errors import BadMeasurementsError, KernelMissingError, ModelError
from geometry.model_label import ModelLabel, ascii_text, file_stem
from geometry.model_process import write_models
from tests.geometry.pads import LABEL, ORDINARY


def labelled(**changes: object) -> ModelLabel:
    """The tests' label with some words changed."""
    words = {name: getattr(LABEL, name) for name in ModelLabel.__slots__}
    return ModelLabel(**words | changes)


def stand_in(monkeypatch: pytest.MonkeyPatch, folder: Path, body: str) -> None:
    """Put another package in the place of the kernel's bindings for the processes to come."""
    package = folder / "OCP"
    package.mkdir()
    (package / "__init__.py").write_text(body)
    monkeypatch.setenv("PYTHONPATH", str(folder))


def test_the_asked_files_stand_in_the_folder_under_names_that_say_what_they_are(tmp_path: Path) -> None:
    """The folder is made; nothing unfinished is left in it."""
    paths = write_models(ORDINARY, LABEL, tmp_path / "out", ["step", "stl", "3mf"])
    assert {name: path.name for name, path in paths.items()} == {
        "step": "lifting-pad-k3f9wq2a-rev-b.step",
        "stl": "lifting-pad-k3f9wq2a-rev-b.stl",
        "3mf": "lifting-pad-k3f9wq2a-rev-b.3mf",
    }
    assert sorted(paths.values()) == sorted((tmp_path / "out").iterdir())
    assert paths["step"].read_bytes().startswith(b"ISO-10303-21;")


def test_a_missing_system_library_is_named_with_what_to_install(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A stand-in for the kernel's bindings fails as they do on a bare system."""
    stand_in(monkeypatch, tmp_path, "raise ImportError('libGL.so.1: cannot open shared object file')")
    with pytest.raises(KernelMissingError, match="apt-get install libgl1"):
        write_models(ORDINARY, LABEL, tmp_path, ["step"])


def test_another_reason_for_a_missing_kernel_is_passed_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The words of the failed import are in the message."""
    stand_in(monkeypatch, tmp_path, "raise ImportError('built for another Python')")
    with pytest.raises(KernelMissingError, match="built for another Python"):
        write_models(ORDINARY, LABEL, tmp_path, ["step"])


def test_a_process_that_dies_is_a_model_error_with_its_last_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A stand-in ends the process while the kernel loads."""
    stand_in(monkeypatch, tmp_path, "import os, sys\nprint('last words', file=sys.stderr, flush=True)\nos.abort()")
    with pytest.raises(ModelError, match="code -6: last words"):
        write_models(ORDINARY, LABEL, tmp_path, ["step"])


def test_a_process_that_hangs_is_given_up(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A stand-in sleeps while the kernel loads."""
    stand_in(monkeypatch, tmp_path, "import time\ntime.sleep(60)")
    with pytest.raises(ModelError, match="after 1 s"):
        write_models(ORDINARY, LABEL, tmp_path, ["step"], timeout_s=1)


def test_a_folder_that_cannot_be_made_is_a_model_error(tmp_path: Path) -> None:
    """A file stands where the folder should be."""
    (tmp_path / "taken").write_text("")
    with pytest.raises(ModelError, match="taken"):
        write_models(ORDINARY, LABEL, tmp_path / "taken", ["step"])


def test_an_impossible_pad_is_refused_without_a_process(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A web thinner than the seat is long."""
    monkeypatch.setattr(model_process, "_ask", None)
    with pytest.raises(BadMeasurementsError, match="web_mm"):
        write_models(ORDINARY.with_(web_mm=12), LABEL, tmp_path, ["step"])


def test_the_caller_does_not_load_the_kernel(tmp_path: Path) -> None:
    """A fresh interpreter writes a file and lists its modules."""
    code = (
        "import sys; from pathlib import Path; from geometry.model_process import write_models;"
        "from tests.geometry.pads import LABEL, ORDINARY;"
        f"write_models(ORDINARY, LABEL, Path({str(tmp_path)!r}), ['step']);"
        "print([m for m in sys.modules if m.split('.')[0] in ('OCP', 'cadquery')])"
    )
    root = Path(model_process.__file__).parent.parent
    done = subprocess.run([sys.executable, "-c", code], cwd=root, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


@pytest.mark.parametrize(
    ("changes", "stem"),
    [
        ({}, "lifting-pad-k3f9wq2a-rev-b"),
        ({"revision": ""}, "lifting-pad-k3f9wq2a"),
        ({"fit_to_make": False}, "lifting-pad-k3f9wq2a-rev-b-NOT-FIT"),
        ({"revision": "../..", "design_id": "a/b\0c"}, "lifting-pad-a-b-c"),
    ],
)
def test_a_file_name_is_a_slug(changes: dict[str, object], stem: str) -> None:
    """Lower-case letters, digits and hyphens; only the warning shouts."""
    assert file_stem(labelled(**changes)) == stem


def test_words_for_files_are_printable_ascii() -> None:
    """Accents go, quotes and line breaks become spaces."""
    assert ascii_text("Škoda’s “left”\nfront\t½–1 \x00end") == "Skodas left front 1/2-1 end"
