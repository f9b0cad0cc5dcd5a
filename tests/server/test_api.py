"""The interface for programs: strict documents in, designs and files out, and a description that is true."""

import json
from typing import Any

import pytest
from fastapi import FastAPI
from httpx import AsyncClient
from hypothesis import given
from hypothesis import strategies as st

from server.app import create_app
from server.fields import FIELDS, FormField
from server.links import samples
from server.problems import KINDS
from server.settings import Settings
from tests.documents import documents, van
from tests.examples import examples
from tests.server.asking import DRAWINGS, FAILING, FITTING, MEDIA_TYPES, MODELS, NO_PAD, address, fields_of, problem

pytestmark = pytest.mark.anyio
_JSON = {"content-type": "application/json"}


@pytest.mark.parametrize("sample", samples(), ids=lambda s: s.key)
async def test_a_document_and_its_address_give_the_same_answer(client: AsyncClient, sample: Any) -> None:
    by_body = await client.post("/api/pad", json=sample.document)
    by_address = await client.get(sample.address.replace("/pad?", "/pad.json?"))
    assert by_body.status_code == by_address.status_code
    assert by_body.json() == by_address.json()


@pytest.mark.parametrize("ending", DRAWINGS)
async def test_a_document_gives_the_same_drawing_as_its_address(client: AsyncClient, ending: str) -> None:
    by_body = await client.post(f"/api/pad.{ending}?units=in", json=FITTING)
    by_address = await client.get(address(FITTING, ending, units="in"))
    assert by_body.content == by_address.content
    assert by_body.headers["content-type"] == by_address.headers["content-type"]


@pytest.mark.parametrize("ending", MODELS)
async def test_the_model_of_a_failed_document_says_how_to_confirm(client: AsyncClient, ending: str) -> None:
    body = await problem(await client.post(f"/api/pad.{ending}", json=FAILING), status=409, kind="not-fit")
    assert body["confirm"] == f"/api/pad.{ending}?confirm=not-fit"


async def test_a_document_without_a_pad_is_answered_with_both_bounds(client: AsyncClient) -> None:
    body = await problem(await client.post("/api/pad", json=NO_PAD), status=422, kind="no-pad-fits")
    assert body["lower"].keys() == body["upper"].keys() == {"value_mm", "reason", "field"}


async def test_an_empty_document_is_told_each_measurement_that_it_lacks(client: AsyncClient) -> None:
    body = await problem(await client.post("/api/pad", json={}), status=422, kind="bad-measurements")
    assert len(body["errors"]) == 8
    assert "jack.cup_bore_mm" in fields_of(body)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"jack__bore": 1}, "jack.bore"),
        ({"colour": "red"}, "colour"),
        ({"jack__cup_bore_mm": "68"}, "jack.cup_bore_mm"),
        ({"seam__sheets": True}, "seam.sheets"),
        ({"seam": 7}, "seam"),
        ({"car": None}, "car"),
        ({"make__cutter_diameters_mm": ["10"]}, "make.cutter_diameters_mm"),
        ({"make__material": {"a": 1}}, "make.material"),
        ({"version": 2}, "version"),
        ({"title": "x" * 100}, "title"),
    ],
)
async def test_a_wrong_key_or_kind_of_value_is_named(client: AsyncClient, change: dict[str, Any], field: str) -> None:
    body = await problem(await client.post("/api/pad", json=van(**change)), status=422, kind="bad-measurements")
    assert fields_of(body) == {field}


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity", "1e999", "9" * 5000, "1e308", "-0.0001"])
async def test_a_number_beyond_all_measure_is_named_with_its_field(client: AsyncClient, number: str) -> None:
    body = json.dumps(van()).replace('"cup_bore_mm": 68', f'"cup_bore_mm": {number}')
    answer = await client.post("/api/pad", content=body, headers=_JSON)
    found = await problem(answer, status=422, kind="bad-measurements")
    assert fields_of(found) == {"jack.cup_bore_mm"}


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"{",
        b"[]",
        b"null",
        b"7",
        b"\xff\xfe{}",
        b"\xef\xbb\xbf{}",
        b'{"title":"a","title":"b"}',
        b'{"title":"\\ud800"}',
        b'{"\\udfff":1}',
        b"[" * 60_000,
        b'{"a":' * 12_000,
    ],
    ids=range(12),
)
async def test_a_body_that_is_no_object_is_refused_in_words(client: AsyncClient, body: bytes) -> None:
    answer = await client.post("/api/pad", content=body, headers=_JSON)
    await problem(answer, status=422, kind="unreadable-document")


@pytest.mark.parametrize("kind", ["", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data"])
async def test_a_body_that_is_not_said_to_be_json_is_not_read(client: AsyncClient, kind: str) -> None:
    answer = await client.post("/api/pad", content=json.dumps(van()), headers={"content-type": kind})
    await problem(answer, status=415, kind="not-json")


async def test_json_may_say_its_character_set(client: AsyncClient) -> None:
    headers = {"content-type": "Application/JSON; charset=utf-8"}
    assert (await client.post("/api/pad", content=json.dumps(van()), headers=headers)).status_code == 200


async def test_fields_of_the_document_have_no_place_in_the_address(client: AsyncClient) -> None:
    answer = await client.post("/api/pad.svg?jack.cup_bore_mm=70&units=cubits", json=van())
    assert fields_of(await problem(answer, status=422, kind="bad-measurements")) == {"jack.cup_bore_mm", "units"}


_ANY_JSON = st.recursive(
    st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=20),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=10), inner, max_size=4),
    max_leaves=10,
)


@examples(80, many=2000)
@given(document=documents(), key=st.sampled_from(sorted(FIELDS)), value=_ANY_JSON)
async def test_no_value_in_any_field_is_an_error_of_ours(
    client: AsyncClient, document: dict[str, Any], key: str, value: object
) -> None:
    group, _, name = key.rpartition(".")
    changed = {**document, group: {**document.get(group, {}), name: value}} if group else {**document, name: value}
    answer = await client.post("/api/pad", content=json.dumps(changed), headers=_JSON)
    assert answer.status_code in {200, 422}


_NUMBERS = [field for field in FIELDS.values() if field.at_least is not None and field.at_most is not None]


@pytest.mark.parametrize(
    "field",
    _NUMBERS,
    ids=[f.key for f in _NUMBERS],
)
async def test_every_number_is_answered_at_the_ends_of_what_can_exist(client: AsyncClient, field: FormField) -> None:
    group, _, name = field.key.partition(".")
    for value in (field.at_least, field.at_most):
        for document in (van(), FITTING):
            changed = {**document, group: {**document.get(group, {}), name: value}}
            assert (await client.post("/api/pad", json=changed)).status_code in {200, 422}


async def test_the_schema_describes_every_field_with_its_unit_and_how_to_measure_it(client: AsyncClient) -> None:
    answer = await client.get("/api/schema")
    schema = answer.json()
    assert answer.headers["content-type"] == "application/schema+json"
    bore = schema["$defs"]["CupJack"]["properties"]["cup_bore_mm"]
    assert (bore["title"], bore["unit"], bore["minimum"], bore["maximum"]) == ("Cup bore", "mm", 20, 200)
    assert "two directions" in bore["how"]
    assert len(schema["examples"]) == len(samples())


def application() -> FastAPI:
    """An application that is not started."""
    return create_app(Settings())


async def test_the_description_names_every_address_with_examples(client: AsyncClient) -> None:
    """Oracle: the addresses that the project promises."""
    described = (await client.get("/openapi.json")).json()["paths"]
    promised = {f"/pad.{ending}" for ending in MEDIA_TYPES} | {f"/api/pad.{e}" for e in MEDIA_TYPES if e != "json"}
    assert promised | {"/api/pad", "/api/schema", "/healthz", "/problems/{name}"} <= described.keys()
    body = described["/api/pad.step"]["post"]["requestBody"]["content"]["application/json"]
    assert body["examples"]["mobile_library_van"]["value"] == FITTING
    named = {p["name"] for p in described["/pad.step"]["get"]["parameters"]}
    assert named == set(FIELDS) | {"units", "confirm"}


def test_every_reference_in_the_description_leads_somewhere() -> None:
    described = application().openapi()
    text = json.dumps(described)
    for name in {part.split('"')[0] for part in text.split("#/components/schemas/")[1:]}:
        assert name in described["components"]["schemas"]


@pytest.mark.parametrize("name", KINDS)
async def test_every_kind_of_problem_is_explained_at_its_address(client: AsyncClient, name: str) -> None:
    answer = await client.get(KINDS[name].address)
    assert answer.status_code == 200
    assert KINDS[name].meaning in answer.text


async def test_an_unknown_kind_of_problem_is_not_found(client: AsyncClient) -> None:
    await problem(await client.get("/problems/bad-weather"), status=404, kind="not-found")


async def test_health_says_that_the_server_answers_and_with_which_engine(client: AsyncClient) -> None:
    from geometry import ENGINE_VERSION

    assert (await client.get("/healthz")).json() == {"status": "answers", "engine_version": ENGINE_VERSION}
