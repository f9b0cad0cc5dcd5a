"""What a model file says about itself beside its shape, and what it is called; free of the modelling kernel."""

import re
import unicodedata
from dataclasses import dataclass
from typing import Literal

ModelFormat = Literal["step", "stl", "3mf", "glb"]

MODEL_FORMATS: tuple[ModelFormat, ...] = ("step", "stl", "3mf", "glb")
"""Every kind of model file, the exact one first."""

COLOUR = (0xE9 / 255, 0xDC / 255, 0xC3 / 255)
"""The pad's colour in models (red, green, blue): that of unfilled nylon, as on the drawing."""

FILES_VERSION = 1
"""Changes whenever the same pad and label would give other bytes in a file: kept files of another version are not used."""

_ASCII_FOR = str.maketrans("–—−⁄×", "---/x")
"""Signs that must not vanish: without the fraction's slash ½ would become 12."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ModelLabel:
    """The words that go into a model file."""

    design_id: str
    title: str
    revision: str
    material: str
    fit_to_make: bool
    engine_version: str

    @property
    def standing(self) -> str:
        """What is known of the design, in words for a file's header."""
        return "every estimate passes, not tested" if self.fit_to_make else "NOT-FIT: an estimate fails"

    @property
    def product_name(self) -> str:
        """The part's name in plain ASCII: design, revision and, where it is so, that it is not fit to make."""
        name = f"lifting pad {self.design_id} rev {self.revision or '-'}"
        return ascii_text(name if self.fit_to_make else f"{name} NOT-FIT")


def file_stem(label: ModelLabel) -> str:
    """The name of a design's files without their ending.

    >>> said = dict(design_id="k3f9", title="", revision="B", material="", engine_version="1")
    >>> file_stem(ModelLabel(**said, fit_to_make=False))
    'lifting-pad-k3f9-rev-b-NOT-FIT'
    """
    words = ["lifting-pad", _slug(label.design_id), *(["rev", _slug(label.revision)] if _slug(label.revision) else [])]
    return "-".join([word for word in words if word] + ([] if label.fit_to_make else ["NOT-FIT"]))


def ascii_text(text: str) -> str:
    """Text that every reader of a model file copes with: accents are dropped, control characters and quotes as well.

    >>> ascii_text("Vän “Ö” №7")
    'Van O No7'
    """
    plain = unicodedata.normalize("NFKD", text).translate(_ASCII_FOR).encode("ascii", "ignore").decode()
    return " ".join(re.sub(r"[^ -~]|['\"\\<>&]", " ", plain).split())


def _slug(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", ascii_text(text).lower()).strip("-")[:60]
