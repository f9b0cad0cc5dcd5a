"""Models by a process of their own: its caller never loads the modelling kernel, and outlives whatever the kernel does.

``python -m geometry.model_process`` reads one request from its standard input and answers there with one line of JSON.
"""

import json
import os
import subprocess
import sys
from collections.abc import Callable, Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any

from geometry.buildable import require_buildable
from geometry.errors import KernelMissingError, ModelError, SeamrestError
from geometry.model_label import ModelFormat, ModelLabel, file_stem
from geometry.pad import DIMENSIONS, Pad

ModelBuilder = Callable[[Pad, ModelLabel, ModelFormat], bytes]

_ROOT = Path(__file__).resolve().parent.parent
_PACKAGE_OF_LIBRARY = {"libGL.so.1": "libgl1", "libX11.so.6": "libx11-6"}
"""The Debian and Ubuntu packages of the libraries that the kernel looks for and a bare system lacks."""


def write_models(
    pad: Pad, label: ModelLabel, folder: Path, formats: Sequence[ModelFormat], timeout_s: float = 120
) -> dict[str, Path]:
    """Write the asked files into a folder, whole or not at all, and return their paths by format.

    Raises BadMeasurementsError where the dimensions are no single body, KernelMissingError where a system library
    lacks, ModelError where the kernel fails, dies or hangs.
    """
    require_buildable(pad)
    request = {
        "pad": {name: getattr(pad, name) for name in DIMENSIONS},
        "label": asdict(label),
        "folder": str(folder.resolve()),
        "formats": list(formats),
    }
    answer = _ask(json.dumps(request), timeout_s)
    if "error" in answer:
        raise (KernelMissingError if answer["error"] == "kernel_missing" else ModelError)(answer["words"])
    return {name: Path(path) for name, path in answer["files"].items()}


def load_model_builder() -> ModelBuilder:
    """Load the modelling kernel into this process; KernelMissingError says what to install where it cannot be."""
    try:
        from geometry.exports import model_bytes  # noqa: PLC0415  the kernel takes a second and 300 MB: only where wanted
    except ImportError as error:
        raise KernelMissingError(_missing_words(str(error))) from error
    return model_bytes


def _missing_words(cause: str) -> str:
    """What a person can do about a kernel that does not load."""
    for library, package in _PACKAGE_OF_LIBRARY.items():
        if library in cause:
            return (
                f"The modelling kernel needs the system library {library}."
                f" On Debian or Ubuntu install it, as root, with: apt-get install {package}"
            )
    return f"The modelling kernel cannot be loaded: {cause}. Install the program's requirements again."


def _ask(request: str, timeout_s: float) -> dict[str, Any]:
    """Run one request in a new process."""
    command = [sys.executable, "-m", "geometry.model_process"]
    try:
        done = subprocess.run(
            command,
            input=request,
            capture_output=True,
            encoding="utf-8",
            errors="replace",
            timeout=timeout_s,
            cwd=_ROOT,
            check=False,
        )
    except subprocess.TimeoutExpired:
        raise ModelError(f"The model was not ready after {timeout_s:g} s, and was given up.") from None
    try:
        answer: dict[str, Any] = json.loads(done.stdout.splitlines()[-1])
    except (IndexError, ValueError):
        tail = (done.stderr.strip().splitlines() or ["it said nothing"])[-1]
        raise ModelError(f"The modelling process ended with code {done.returncode}: {tail}") from None
    return answer


def _answer(request: dict[str, Any]) -> dict[str, Any]:
    """Do what one request asks."""
    try:
        build = load_model_builder()
        pad, label, folder = Pad(**request["pad"]), ModelLabel(**request["label"]), Path(request["folder"])
        return {
            "files": {form: str(_write(folder, form, label, build(pad, label, form))) for form in request["formats"]}
        }
    except KernelMissingError as error:
        return {"error": "kernel_missing", "words": str(error)}
    except (SeamrestError, OSError) as error:
        return {"error": "model", "words": str(error)}


def _write(folder: Path, form: ModelFormat, label: ModelLabel, content: bytes) -> Path:
    """Write one file under its name; a reader never sees half of it."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{file_stem(label)}.{form}"
    unfinished = path.with_suffix(f".{os.getpid()}.part")
    unfinished.write_bytes(content)
    unfinished.replace(path)
    return path


if __name__ == "__main__":
    print(json.dumps(_answer(json.load(sys.stdin))))
