"""Everything of a design in one archive: each file under a name that says what it is, a README in plain words, and checksums."""

import hashlib
import json
import textwrap
import zipfile
from collections.abc import Mapping
from datetime import date
from io import BytesIO

from geometry import ENGINE_VERSION
from geometry.cautions import ONE_LINE
from geometry.design import Design
from geometry.model_label import ModelLabel, file_stem
from geometry.sheet_facts import model_label

_WIDTH = 78
_FILES = {
    "pdf": ("drawing.pdf", "The drawing on paper, with every size and its limits, for whoever makes it. Print it at 100 %."),
    "dxf": ("drawing.dxf", "The same drawing for a drawing program, in true size at the main scale, in mm."),
    "svg": ("drawing.svg", "The same drawing as a picture for a browser."),
    "step": ("model-exact.step", "The solid, exact, in mm (ISO 10303-21, AP214): for machining from a model."),
    "stl": ("model-triangles.stl", "The solid in triangles, in mm, at most 0.01 mm off: for looking at, and for printing."),
    "3mf": ("model-print.3mf", "The same triangles with their unit and material: for printing."),
    "glb": ("model-show.glb", "The same triangles in metres, y up: for showing it on a screen or in a room."),
}  # fmt: skip
_MEASUREMENTS = (
    "measurements.json",
    "What was measured, in mm and kg. Feed it to the program again to get this design, or to change it.",
)
_DESIGN = ("design.json", "The whole design as data: every size with its reasons, every estimate, every caution.")


def archive_name(label: ModelLabel) -> str:
    """What the archive is called.

    >>> said = dict(design_id="k3f9", title="", revision="B", material="", engine_version="1")
    >>> archive_name(ModelLabel(**said, fit_to_make=True))
    'lifting-pad-k3f9-rev-b-all-files.zip'
    """
    return f"{file_stem(label)}-all-files.zip"


def bundle_bytes(design: Design, files: Mapping[str, bytes], *, issued: date) -> bytes:
    """The archive of a design and its drawings and models by their endings; equal designs of one day give equal bytes."""
    stem = file_stem(model_label(design))
    named = {f"{stem}-{_FILES[ending][0]}": files[ending] for ending in _FILES}
    named[f"{stem}-{_MEASUREMENTS[0]}"] = _json(design.understood)
    named[f"{stem}-{_DESIGN[0]}"] = _json(design.to_dict())
    contents = {"README.txt": readme(design, issued=issued).encode(), **named}
    sums = "".join(f"{hashlib.sha256(content).hexdigest()}  {name}\n" for name, content in contents.items())
    return _zipped(
        {f"{stem}/{name}": content for name, content in {**contents, "SHA256SUMS": sums.encode()}.items()}, issued
    )


def _json(document: object) -> bytes:
    return (json.dumps(document, allow_nan=False, ensure_ascii=False, indent=2) + "\n").encode("utf-8", "replace")


def _zipped(contents: Mapping[str, bytes], issued: date) -> bytes:
    archive = BytesIO()
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in contents.items():
            about = zipfile.ZipInfo(name, (issued.year, issued.month, issued.day, 0, 0, 0))
            # By themselves these tell on which system the archive was made, and who may read what comes out of it.
            about.create_system, about.external_attr = 3, 0o644 << 16
            packed.writestr(about, content, zipfile.ZIP_DEFLATED)
    return archive.getvalue()


def readme(design: Design, *, issued: date) -> str:
    """What this is, what it is not, which file is for what, and every caution, in plain words."""
    label = model_label(design)
    stem = file_stem(label)
    title = design.measurements.title or "Lifting pad"
    unfit = (
        [_wrapped("NOT FIT TO MAKE. An estimate fails: do not lift with this pad.")] if not design.fit_to_make else []
    )
    about = (
        f"A lifting pad: a block that stands in the cup of one jack and takes the welded seam under the sill of one car in"
        f" its slot. Design {label.design_id}, revision {label.revision}, of {issued.isoformat()}; material: {label.material}."
        f" Made by Seamrest, engine {ENGINE_VERSION}, from the measurements in this folder."
    )
    fits = "It fits the jack and the car that were measured, and no other. Every size is in mm at 20 °C, the part as machined."
    checking = "SHA256SUMS has the digest of each file. To compare them, type in this folder: sha256sum -c SHA256SUMS"
    return (
        "\n\n".join(
            [
                f"{title}\n{'=' * len(title)}",
                *unfit,
                _wrapped(design.verdict_words),
                _wrapped(ONE_LINE),
                _wrapped(about),
                _wrapped(fits),
                _heading("What must be known"),
                *(_wrapped(f"{caution.signal}: {caution.text}") for caution in design.cautions),
                _heading("The files"),
                *(
                    f"{stem}-{name}\n{_wrapped(words, '    ')}"
                    for name, words in (*_FILES.values(), _MEASUREMENTS, _DESIGN)
                ),
                _wrapped(checking),
            ]
        )
        + "\n"
    )


def _heading(words: str) -> str:
    return f"{words}\n{'-' * len(words)}"


def _wrapped(words: str, indent: str = "") -> str:
    return textwrap.fill(words, _WIDTH, initial_indent=indent, subsequent_indent=indent, break_on_hyphens=False)
