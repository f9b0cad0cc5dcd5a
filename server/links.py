"""All links of the program: the addresses of designs, of their files, of examples and of static files."""

import hashlib
import json
import os
import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache, lru_cache
from pathlib import Path
from typing import Any
from urllib.parse import quote_plus, urlencode

from server.fields import FIELDS

ROOT = Path(__file__).resolve().parent.parent
STATIC = ROOT / "static"
SAMPLES = ROOT / "sample_data"
READY_SAMPLE = "mobile_library_van"
"""The example that a newcomer is shown first."""
CONFIRM_KEY, CONFIRM_NOT_FIT = "confirm", "not-fit"
"""What an address says whose reader has seen that an estimate fails and wants the model nevertheless."""
_PLACES = {key: place for place, key in enumerate(FIELDS)}
_HASH_LENGTH = 12
_HAS_VERSION = re.compile(r"-\d+\.\d+")
_HASHED = re.compile(rf"(?P<stem>.+)\.(?P<hash>[0-9a-f]{{{_HASH_LENGTH}}})(?P<ending>\.[^./]+)")


@dataclass(frozen=True, slots=True)
class Sample:
    """One worked example."""

    key: str
    title: str
    document: dict[str, Any]
    address: str


def pad_address(
    typed: Mapping[str, str],
    suffix: str = "",
    *,
    units: str = "mm",
    confirmed: bool = False,
    view: Mapping[str, str] | None = None,
) -> str:
    """The address of a design, its texts as typed, in the order of the document; ``suffix`` is that of a file.

    ``view`` holds what its viewer chose of the sheets: sizes, projection, paper.

    >>> pad_address({"seam.thickness_mm": '1/8"', "jack.cup_bore_mm": "68"}, ".step")
    '/pad.step?jack.cup_bore_mm=68&seam.thickness_mm=1/8%22'
    """
    pairs = [(key, typed[key]) for key in sorted(typed.keys() & FIELDS.keys(), key=_PLACES.__getitem__)]
    pairs = [(key, text) for key, text in pairs if text.strip()]
    pairs += [("units", units)] if units != "mm" else []
    pairs += list((view or {}).items())
    pairs += [(CONFIRM_KEY, CONFIRM_NOT_FIT)] if confirmed else []
    query = "&".join(f"{_in_query(key)}={_in_query(text)}" for key, text in pairs)
    return f"/pad{suffix}?{query}" if query else f"/pad{suffix}"


@lru_cache(maxsize=4096)
def _in_query(text: str) -> str:
    """A key or a text as it stands in an address; a page says most of them many times."""
    return quote_plus(text, safe="/,:")


def address_of_document(document: Mapping[str, Any], suffix: str = "", *, units: str = "mm") -> str:
    """The address of a document: its numbers in mm and kg, written as short as they can be.

    >>> address_of_document({"jack": {"cup_bore_mm": 68.0}, "make": {"cutter_diameters_mm": [10, 12.5]}})
    '/pad?jack.cup_bore_mm=68&make.cutter_diameters_mm=10%3B+12.5'
    """
    return pad_address(typed_of_document(document, units=units), suffix, units=units)


def typed_of_document(document: Mapping[str, Any], *, units: str = "mm") -> dict[str, str]:
    """What one would type for a document; with ``units`` of ``in``, lengths and masses carry their unit."""
    flat: dict[str, Any] = {}
    for name, value in document.items():
        flat |= {f"{name}.{part}": v for part, v in value.items()} if isinstance(value, Mapping) else {name: value}
    texts = {}
    for key, field in FIELDS.items():
        if flat.get(key) is not None:
            unit = f" {field.unit}" if units != "mm" and field.kind in {"length", "mass", "lengths"} else ""
            texts[key] = _text(flat[key], unit)
    return texts


def _text(value: object, unit: str) -> str:
    if isinstance(value, list | tuple):
        return "; ".join(_text(part, unit) for part in value)
    if isinstance(value, int | float) and not isinstance(value, bool):
        # The shortest digits that give the same number again, never with an exponent.
        return f"{Decimal(repr(value)):f}".removesuffix(".0") + unit
    return str(value)


def save_address(typed: Mapping[str, str], *, units: str = "mm") -> str:
    """Where the design of a working sheet is saved.

    >>> save_address({"jack.cup_bore_mm": "68"})
    '/save?jack.cup_bore_mm=68'
    """
    return pad_address(typed, units=units).replace("/pad", "/save", 1)


def saved_address(secret: str, letters: str = "", suffix: str = "", **keys: str) -> str:
    """An address of a saved design: of its newest revision, or of one with these letters, or of a file or page of that.

    >>> saved_address("s3cret", "B", ".svg", units="in")
    '/saved/s3cret/B.svg?units=in'
    """
    path = f"/saved/{secret}/{letters}{suffix}".rstrip("/")
    known = {key: text for key, text in keys.items() if text}
    return f"{path}?{urlencode(known)}" if known else path


@cache
def samples() -> tuple[Sample, ...]:
    """The worked examples, in the order of their file names."""
    found = []
    for path in sorted(SAMPLES.glob("*.json")):
        document = json.loads(path.read_text("utf-8"))
        found.append(Sample(path.stem, document.get("title", path.stem), document, address_of_document(document)))
    return tuple(found)


def ready_sample() -> Sample:
    """The example to start with."""
    return next(sample for sample in samples() if sample.key == READY_SAMPLE)


def static_url(name: str) -> str:
    """The address of a static file; our own carry a hash of their content, others their version in their name."""
    if _HAS_VERSION.search(name):
        return f"/static/{name}"
    path = f"{STATIC}/{name}"
    stem, dot, ending = name.rpartition(".")
    return f"/static/{stem}.{_content_hash(path, os.stat(path).st_mtime_ns)}{dot}{ending}"


def static_file(asked: str) -> Path | None:
    """The file behind the part of an address after ``/static/``; None where there is none or its content is another."""
    match = _HASHED.fullmatch(asked)
    name = f"{match['stem']}{match['ending']}" if match else asked
    path = (STATIC / name).resolve()
    if not path.is_relative_to(STATIC) or not path.is_file() or static_url(name) != f"/static/{asked}":
        return None
    return path


@lru_cache(maxsize=256)
def _content_hash(path: str, _changed_ns: int) -> str:
    return hashlib.sha256(Path(path).read_bytes()).hexdigest()[:_HASH_LENGTH]
