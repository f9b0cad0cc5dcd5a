"""From what somebody typed to what is kept: the design worked out today."""

import json
import re
from collections.abc import Sequence
from dataclasses import asdict, fields
from datetime import date
from typing import Any
from urllib.parse import parse_qsl, urlsplit

from geometry import ENGINE_VERSION
from geometry.design import Design, design_pad
from geometry.drawing.facts import Projection, SheetFacts
from geometry.drawing.facts import Units as SheetUnits
from geometry.errors import BadMeasurementsError, NoPadFitsError, Problem
from geometry.measurements import Measurements, read_measurements
from geometry.model_label import ModelLabel
from geometry.pad import DIMENSIONS, Pad
from geometry.sheet_facts import sheet_facts
from server import links
from server.documents import LONGEST_QUERY, read_whole_form
from server.forms import FormReading, Units, read_form
from server.store.designs import Kept, Revision, as_json
from server.store.keys import letters_of

_MOST_FIELDS = 200
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069]")
"""Characters that show nothing, or turn what follows them round."""


def plain_words(text: str, longest: int) -> str:
    """Words that somebody sent, without characters that show nothing, and not longer than they may be."""
    return _CONTROL.sub("", text.replace("\r\n", "\n")).strip()[:longest].strip()


def reading_of_address(address: str) -> FormReading:
    """The form behind a working sheet's address, or behind its query alone."""
    try:
        query = urlsplit(address).query if address.startswith(("/", "http")) else address
        pairs = parse_qsl(query[:LONGEST_QUERY], keep_blank_values=True, max_num_fields=_MOST_FIELDS)
    except ValueError:
        words = "This is no address of a working sheet; copy it whole."
        raise BadMeasurementsError((Problem("inputs", address[:80], words),)) from None
    return read_form(pairs)


def whole_reading(address: str) -> tuple[FormReading, Measurements]:
    """The form behind an address that must be complete.

    Raises BadMeasurementsError naming what is wrong or missing.
    """
    reading = reading_of_address(address)
    pairs = [*reading.typed.items(), *((("units", reading.units),) if reading.units_chosen else ())]
    if reading.problems:
        raise BadMeasurementsError(reading.problems)
    return read_whole_form(pairs)


def worked_out(reading: FormReading, measurements: Measurements, *, number: int, issued: date) -> Kept:
    """What a revision of that number keeps of a form; its drawing and sheets come later.

    Raises NoPadFitsError, BadMeasurementsError.
    """
    units = reading.units if reading.units_chosen else None
    design, facts = _work_out(measurements, units=units, letters=letters_of(number), issued=issued)
    return _kept(design, facts, links.pad_address(reading.typed, units=reading.units))


def drawn_nothing(measurements: Measurements, *, letters: str, issued: date) -> Kept:
    """What a revision keeps of measurements without anything typed; its drawing is made when it is asked for.

    Raises NoPadFitsError, BadMeasurementsError.
    """
    design, facts = _work_out(measurements, units=None, letters=letters, issued=issued)
    return _kept(design, facts, links.address_of_document(given_document(measurements)))


def given_document(measurements: Measurements) -> dict[str, Any]:
    """The measurement document with the answers that were given, in mm and kg."""
    given = measurements.model_dump(mode="json", exclude_unset=True)
    return {"version": measurements.version} | {name: value for name, value in given.items() if value != {}}


def _kept(design: Design, facts: SheetFacts, address: str) -> Kept:
    return Kept(
        # As given, not as understood: an answer that was left out is not the same as its usual one given.
        document=given_document(design.measurements),
        address=address,
        design=design.to_dict(),
        facts=asdict(facts),
        engine_version=ENGINE_VERSION,
    )


def _work_out(
    measurements: Measurements, *, units: Units | None, letters: str, issued: date
) -> tuple[Design, SheetFacts]:
    design = design_pad(measurements)
    return design, sheet_facts(design, issued=issued, units=units, revision=letters)


def pad_of(design: dict[str, Any] | Any) -> Pad:
    """The pad of a kept design, as it was saved: nothing is sized again.

    What an older program did not know yet, its pads do not have.
    """
    return Pad(**{name: design["pad"][name] for name in DIMENSIONS if name in design["pad"]})


def facts_of(
    revision: Revision, *, units: SheetUnits | None = None, projection: Projection | None = None
) -> SheetFacts:
    """What a kept drawing says beside its sizes, in the viewer's units and projection; what it was saved with else."""
    known = {f.name for f in fields(SheetFacts)}
    said = {name: value for name, value in revision.facts.items() if name in known}
    said["cautions"] = tuple((signal, words) for signal, words in said["cautions"])
    said["critical"] = tuple(said.get("critical", ()))
    chosen = {name: value for name, value in (("units", units), ("projection", projection)) if value}
    return SheetFacts(**said | chosen)


def label_of(revision: Revision) -> ModelLabel:
    """The name under which the model files of a revision travel."""
    return ModelLabel(
        design_id=revision.design["design_id"],
        title=revision.design["title"],
        revision=revision.letters,
        material=revision.design["material"]["name"],
        fit_to_make=revision.design["fit_to_make"],
        engine_version=revision.engine_version,
    )


def design_today(revision: Revision) -> Design | None:
    """What today's engine makes of a revision's measurements; None where it is the engine that made the revision.

    Raises what the front door raises where today's engine finds no pad, or cannot read the document any more.
    """
    if revision.engine_version == ENGINE_VERSION:
        return None
    return design_pad(read_measurements(revision.document))


def design_as_saved(revision: Revision) -> Design | None:
    """The design of a revision with everything that sheets are made of; None where today's engine is not its own."""
    if revision.engine_version != ENGINE_VERSION:
        return None
    try:
        design = design_pad(read_measurements(revision.document))
    except (BadMeasurementsError, NoPadFitsError):
        return None
    return design if json.loads(as_json(design.to_dict())) == revision.design else None


def changed_address(address: str, changes: Sequence[tuple[str, str]]) -> str:
    """A working sheet's address with some answers changed; an empty one is taken back."""
    reading = reading_of_address(address)
    return links.pad_address(reading.typed | dict(changes), units=reading.units)
