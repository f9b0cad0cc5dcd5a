"""Everything of a design in one archive: each file under a name that says what it is, a README in plain words, and checksums."""

import hashlib
import json
import textwrap
import zipfile
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date
from io import BytesIO
from typing import Any

from geometry.cautions import ONE_LINE
from geometry.kinds import USUAL_FOOT, USUAL_HEAD
from geometry.model_label import ModelLabel, file_stem
from server.kind_words import STANDS, TAKES

_WIDTH = 78
_FILES = {
    "pdf": ("drawing.pdf", "The drawing on paper, with every size and its limits, for whoever makes it. Print it at 100 %."),
    "dxf": ("drawing.dxf", "The same drawing for a drawing program, in true size at the main scale, in mm."),
    "svg": ("drawing.svg", "The same drawing as a picture for a browser."),
    "step": ("model-exact.step", "The solid, exact, in mm (ISO 10303-21, AP214): for machining from a model."),
    "stl": ("model-triangles.stl", "The solid in triangles, in mm, at most 0.01 mm off: for looking at, and for printing."),
    "3mf": ("model-print.3mf", "The same triangles with their unit and material: for printing."),
    "glb": ("model-show.glb", "The same triangles in metres, y up: for showing it on a screen or in a room."),
    "packet.pdf": ("packet.pdf", "Everything on paper: drawing, calculation, route card, inspection sheet and lifting card."),
    "card.pdf": ("lifting-card.pdf", "One page for the garage wall."),
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Bundled:
    """What an archive is about: a design's document, the name that its files travel under, and the day of its drawing."""

    design: Mapping[str, Any]
    label: ModelLabel
    issued: date
    mark: str = ""
    """What must be said first of the finished part; empty where nothing must."""


def bundle_bytes(about: Bundled, files: Mapping[str, bytes]) -> bytes:
    """The archive of a design and its files by their endings; equal designs of one day give equal bytes."""
    stem = file_stem(about.label)
    named = {f"{stem}-{_FILES[ending][0]}": files[ending] for ending in _FILES if ending in files}
    named[f"{stem}-{_MEASUREMENTS[0]}"] = _json(about.design["measurements"])
    named[f"{stem}-{_DESIGN[0]}"] = _json(about.design)
    contents = {"README.txt": readme(about, files).encode(), **named}
    sums = "".join(f"{hashlib.sha256(content).hexdigest()}  {name}\n" for name, content in contents.items())
    return _zipped(
        {f"{stem}/{name}": content for name, content in {**contents, "SHA256SUMS": sums.encode()}.items()},
        about.issued,
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


def readme(about: Bundled, endings: Collection[str]) -> str:
    """What this is, what it is not, which file is for what, and every caution, in plain words."""
    design, label, stem = about.design, about.label, file_stem(about.label)
    title = design["title"] or "Lifting pad"
    unfit = "" if label.fit_to_make else "NOT FIT TO MAKE. An estimate fails: do not lift with this pad."
    kinds = design.get("measurements", {})
    what = (
        f"A lifting pad: a block that {STANDS[kinds.get('foot', USUAL_FOOT)]} of one jack and"
        f" {TAKES[kinds.get('head', USUAL_HEAD)]}. Design {label.design_id}, revision {label.revision}, of"
        f" {about.issued.isoformat()}; material: {label.material}. Made by Seamrest, engine {label.engine_version}, from the"
        " measurements in this folder."
    )
    fits = "It fits the jack and the car that were measured, and no other. Every size is in mm at 20 °C, the part as machined."
    checking = "SHA256SUMS has the digest of each file. To compare them, type in this folder: sha256sum -c SHA256SUMS"
    return (
        "\n\n".join(
            [
                f"{title}\n{'=' * len(title)}",
                *(_wrapped(words) for words in (about.mark, unfit) if words),
                _wrapped(design["verdict"]),
                _wrapped(ONE_LINE),
                _wrapped(what),
                _wrapped(fits),
                _heading("What must be known"),
                *(_wrapped(f"{caution['signal']}: {caution['text']}") for caution in design["cautions"]),
                _heading("The files"),
                *(
                    f"{stem}-{name}\n{_wrapped(words, '    ')}"
                    for name, words in (*_told(endings), _MEASUREMENTS, _DESIGN)
                ),
                _wrapped(checking),
            ]
        )
        + "\n"
    )


def _told(endings: Collection[str]) -> tuple[tuple[str, str], ...]:
    return tuple(told for ending, told in _FILES.items() if ending in endings)


def _heading(words: str) -> str:
    return f"{words}\n{'-' * len(words)}"


def _wrapped(words: str, indent: str = "") -> str:
    return textwrap.fill(words, _WIDTH, initial_indent=indent, subsequent_indent=indent, break_on_hyphens=False)
