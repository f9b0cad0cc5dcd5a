"""The data addresses of a design: one query, nine files, and what is said where there is none."""

import asyncio
import json

import pytest
from httpx import AsyncClient

from geometry.design import design_pad
from geometry.measurements import read_measurements
from tests.documents import van
from tests.server.asking import (
    DRAWINGS,
    FAILING,
    FILES,
    FIRST_BYTES,
    FITTING,
    MEDIA_TYPES,
    MODELS,
    NO_PAD,
    address,
    differences,
    fields_of,
    problem,
)

pytestmark = pytest.mark.anyio


async def test_the_json_of_an_address_is_the_design_of_its_measurements(client: AsyncClient) -> None:
    """Oracle: the design computed without any web."""
    answer = await client.get(address(FITTING))
    expected = json.loads(json.dumps(design_pad(read_measurements(FITTING)).to_dict()))
    assert answer.headers["content-type"] == "application/json"
    assert differences(answer.json(), expected) == []


@pytest.mark.parametrize("ending", DRAWINGS)
async def test_a_drawing_has_its_media_type_its_name_and_its_content(client: AsyncClient, ending: str) -> None:
    answer = await client.get(address(FITTING, ending))
    identity = design_pad(read_measurements(FITTING)).design_id
    assert answer.status_code == 200
    assert answer.headers["content-type"].partition(";")[0] == MEDIA_TYPES[ending]
    assert answer.content.startswith(FIRST_BYTES[ending])
    place = "attachment" if ending == "dxf" else "inline"
    assert answer.headers["content-disposition"] == f'{place}; filename="lifting-pad-{identity}-rev-a.{ending}"'


@pytest.mark.parametrize("ending", DRAWINGS)
async def test_the_same_address_gives_the_same_drawing_byte_for_byte(client: AsyncClient, ending: str) -> None:
    first, second = [await client.get(address(FITTING, ending)) for _ in range(2)]
    assert first.content == second.content


async def test_drawings_asked_for_at_once_are_those_asked_for_one_by_one(client: AsyncClient) -> None:
    """The drawing library keeps settings and chance in global variables, which two drawings must not share."""
    asked = [address(document, ending) for ending in DRAWINGS for document in (FITTING, FAILING, van())]
    one_by_one = [(await client.get(one)).content for one in asked]
    at_once = await asyncio.gather(*(client.get(one) for one in asked))
    assert [answer.content for answer in at_once] == one_by_one


@pytest.mark.parametrize(("units", "shown", "other"), [("in", "inches", "mm"), ("mm", "mm", "inches")])
async def test_the_drawing_is_in_the_viewers_units(client: AsyncClient, units: str, shown: str, other: str) -> None:
    """Oracle: the note on the sheet that says its units in words."""
    text = (await client.get(address(van(), "dxf", units=units) + ("&units=mm" if units == "mm" else ""))).text
    assert f"Sizes in {shown}" in text
    assert f"Sizes in {other}" not in text


@pytest.mark.parametrize(("step", "shown"), [("inch", "inches"), ("metric", "mm")])
async def test_where_no_viewer_chose_the_drawing_is_in_the_units_of_the_shop(
    client: AsyncClient, step: str, shown: str
) -> None:
    assert f"Sizes in {shown}" in (await client.get(address(van(make__step=step), "dxf"))).text


@pytest.mark.parametrize("ending", DRAWINGS)
async def test_the_drawing_of_a_failed_design_is_given_and_says_so(client: AsyncClient, ending: str) -> None:
    answer = await client.get(address(FAILING, ending))
    assert answer.status_code == 200
    assert answer.headers["content-disposition"].endswith(f'-NOT-FIT.{ending}"')


@pytest.mark.parametrize("ending", FILES)
async def test_every_missing_measurement_is_named_with_how_to_measure_it(client: AsyncClient, ending: str) -> None:
    body = await problem(await client.get(f"/pad.{ending}?title=x"), status=422, kind="bad-measurements")
    assert {"jack.cup_bore_mm", "jack.cup_depth_mm", "seam.thickness_mm", "car.gross_mass_kg"} <= fields_of(body)
    bore = next(e for e in body["errors"] if e["field"] == "jack.cup_bore_mm")
    assert bore["value"] is None
    assert "still to be measured. Measure across the inside of the cup" in bore["message"]


@pytest.mark.parametrize("ending", FILES)
async def test_a_measurement_that_cannot_be_is_named_with_its_value(client: AsyncClient, ending: str) -> None:
    body = await problem(
        await client.get(address(van(seam__height_mm=500), ending)), status=422, kind="bad-measurements"
    )
    (error,) = body["errors"]
    assert (error["field"], error["value"]) == ("seam.height_mm", 500)
    assert "at most 120 mm" in error["message"]


async def test_an_unreadable_text_is_given_back_as_typed(client: AsyncClient) -> None:
    answer = await client.get("/pad.json", params={"jack.cup_bore_mm": "9**9**9"})
    body = await problem(answer, status=422, kind="bad-measurements")
    error = next(e for e in body["errors"] if e["field"] == "jack.cup_bore_mm")
    assert error["value"] == "9**9**9"


@pytest.mark.parametrize("key", ["jack.bore", "fixed", "version", "confirmed", "jack.cup_bore_mm "])
async def test_a_key_that_is_no_field_is_refused_by_name(client: AsyncClient, key: str) -> None:
    body = await problem(await client.get(address(van(), **{key: "1"})), status=422, kind="bad-measurements")
    assert fields_of(body) == {key}


async def test_a_key_given_twice_is_refused(client: AsyncClient) -> None:
    body = await problem(await client.get(address() + "&jack.cup_bore_mm=70"), status=422, kind="bad-measurements")
    assert fields_of(body) == {"jack.cup_bore_mm"}


@pytest.mark.parametrize("ending", FILES)
async def test_where_no_pad_fits_both_bounds_are_given_with_their_measurements(
    client: AsyncClient, ending: str
) -> None:
    """Oracle: an edge 5 mm above the rim leaves no room for a web of 19 mm (the sample's own title says so)."""
    body = await problem(await client.get(address(NO_PAD, ending)), status=422, kind="no-pad-fits")
    assert body["dimension"] == "web_mm"
    assert body["lower"]["value_mm"] > body["upper"]["value_mm"]
    assert body["lower"]["reason"] in body["words"]
    assert {body["lower"]["field"], body["upper"]["field"]} & {"seam.edge_height_mm", "jack.rim_height_low_mm"}


@pytest.mark.parametrize("fixed", [{"fixed__web_mm": 3}, {"fixed__body_diameter_mm": 20}])
async def test_fixed_dimensions_that_make_no_body_are_named(client: AsyncClient, fixed: dict[str, float]) -> None:
    body = await problem(await client.get(address(van(**fixed))), status=422, kind="bad-measurements")
    assert {field.partition(".")[0] for field in fields_of(body)} == {"fixed"}


@pytest.mark.parametrize("ending", MODELS)
async def test_the_model_of_a_failed_design_asks_for_a_confirmation(client: AsyncClient, ending: str) -> None:
    body = await problem(await client.get(address(FAILING, ending)), status=409, kind="not-fit")
    assert "Do not make" in body["verdict"]
    assert body["confirm"].startswith(f"/pad.{ending}?")
    assert body["confirm"].endswith("&confirm=not-fit")
    assert body["confirm"] in body["detail"]


async def test_nothing_else_can_be_confirmed(client: AsyncClient) -> None:
    body = await problem(await client.get(address(FAILING, "stl", confirm="yes")), status=422, kind="bad-measurements")
    assert fields_of(body) == {"confirm"}


async def test_an_address_beyond_all_measure_is_refused(client: AsyncClient) -> None:
    await problem(await client.get("/pad.json?title=" + "x" * 20_000), status=413, kind="too-large")
    await problem(await client.get("/pad.json?" + "a=1&" * 300), status=413, kind="too-large")


@pytest.mark.parametrize("query", ["%ff%fe=%ed%a0%80", "a=%00", "&&&", "=", "jack.cup_bore_mm=%F0%9F%9A%97"])
async def test_bytes_that_are_no_text_are_bad_measurements_and_nothing_worse(client: AsyncClient, query: str) -> None:
    await problem(await client.get(f"/pad.json?{query}"), status=422, kind="bad-measurements")
