"""Every address is made in one room: designs, examples and static files."""

from pathlib import Path
from urllib.parse import parse_qsl, urlsplit

import pytest
from hypothesis import given

from geometry.measurements import read_measurements
from server import links
from server.forms import read_form
from tests.documents import documents, van


def test_an_address_holds_the_fields_in_the_order_of_the_document() -> None:
    typed = {"make.material": "pa66", "seam.thickness_mm": '1/8"', "jack.cup_bore_mm": "2 5/8 in"}
    assert links.pad_address(typed, ".step", units="in", confirmed=True) == (
        "/pad.step?jack.cup_bore_mm=2+5/8+in&seam.thickness_mm=1/8%22&make.material=pa66&units=in&confirm=not-fit"
    )


def test_fields_not_given_leave_no_trace_in_an_address() -> None:
    assert links.pad_address({"title": " ", "jack.cup_bore_mm": ""}) == "/pad"


def test_numbers_of_a_document_are_written_short_and_exact() -> None:
    address = links.address_of_document(van(jack__cup_bore_mm=68.0, seam__bow_mm=0.00001, car__gross_mass_kg=1600.25))
    assert "cup_bore_mm=68&" in address
    assert "bow_mm=0.00001&" in address
    assert "gross_mass_kg=1600.25" in address


@pytest.mark.parametrize("units", ["mm", "in"])
@given(document=documents())
def test_the_address_of_a_document_is_read_as_that_document(units: str, document: dict[str, object]) -> None:
    """Oracle: the document's own reader."""
    address = links.address_of_document(document, units=units)
    form = read_form(parse_qsl(urlsplit(address).query))
    assert form.measurements == read_measurements(document)
    assert form.units == units


def test_every_example_has_a_title_and_an_address_that_is_read_as_its_document() -> None:
    assert len(links.samples()) >= 6
    for sample in links.samples():
        form = read_form(parse_qsl(urlsplit(sample.address).query))
        assert form.measurements == read_measurements(sample.document)
        assert sample.title == sample.document["title"]
    assert links.ready_sample() in links.samples()


@pytest.fixture
def static_room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of static files of its own."""
    room = tmp_path / "static"
    (room / "vendor").mkdir(parents=True)
    (room / "style.css").write_text("a{}")
    (room / "vendor" / "thing-1.2.3.min.js").write_text("1")
    (tmp_path / "secret.txt").write_text("s")
    monkeypatch.setattr(links, "STATIC", room)
    return room


def test_our_own_static_files_carry_the_hash_of_their_content(static_room: Path) -> None:
    """Oracle: sha256 of "a{}", by the coreutils tool."""
    first = links.static_url("style.css")
    assert first == "/static/style.5f546eb4606b.css"
    assert links.static_file(first.removeprefix("/static/")) == static_room / "style.css"


def test_a_changed_file_has_another_address_and_the_old_one_is_gone(static_room: Path) -> None:
    first = links.static_url("style.css")
    (static_room / "style.css").write_text("b{}")
    assert links.static_url("style.css") != first
    assert links.static_file(first.removeprefix("/static/")) is None


def test_files_of_others_keep_the_version_in_their_name(static_room: Path) -> None:
    assert links.static_url("vendor/thing-1.2.3.min.js") == "/static/vendor/thing-1.2.3.min.js"
    assert links.static_file("vendor/thing-1.2.3.min.js") == static_room / "vendor" / "thing-1.2.3.min.js"


@pytest.mark.parametrize("asked", ["../secret.txt", "style.css", "vendor", "", "nothing.css", "style.000000000000.css"])
def test_nothing_but_the_files_at_their_addresses_is_given_out(static_room: Path, asked: str) -> None:
    assert links.static_file(asked) is None
