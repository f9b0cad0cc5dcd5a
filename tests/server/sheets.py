"""The working sheet of typed answers, or of an example with some of them changed."""

from server.forms import read_form
from server.links import samples, typed_of_document
from server.outcome import outcome_of
from server.present import pad_page
from server.section_view import section_view
from server.sheet_context import PadPage

SAMPLES = {sample.key: sample for sample in samples()}


def page_of(typed: dict[str, str], units: str = "mm") -> PadPage:
    outcome = outcome_of(read_form([*typed.items(), ("units", units)]))
    return pad_page(outcome, section_view(outcome))


def sample_page(key: str, **more: str) -> PadPage:
    return page_of({**typed_of_document(SAMPLES[key].document), **{k.replace("__", "."): v for k, v in more.items()}})
