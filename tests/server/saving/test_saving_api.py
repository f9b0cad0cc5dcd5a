"""The description of the addresses of saved designs: every example works, and every answer is one that is described."""

from collections.abc import Iterator
from typing import Any

import pytest
from httpx import AsyncClient, Response

from server.links import samples
from server.saved_api import FILE_EXAMPLES
from tests.server.saving.asking import save, send
from tests.server.saving.test_saving_files import exported, upload

pytestmark = pytest.mark.anyio
NEEDS_MODELS = {"A.step", "A.stl", "A.3mf", "A.glb", "A.zip"}


@pytest.fixture
def setting(tmp_path: Any) -> str:
    """One database is enough: nothing here depends on its kind."""
    return str(tmp_path / "designs.sqlite3")


async def described(client: AsyncClient) -> dict[str, Any]:
    paths: dict[str, Any] = (await client.get("/openapi.json")).json()["paths"]
    return paths


def forms_of(paths: dict[str, Any]) -> Iterator[tuple[str, dict[str, str], set[str]]]:
    """Every form that is described: its address, its example, and the statuses of its answers."""
    for path, methods in paths.items():
        content = methods.get("post", {}).get("requestBody", {}).get("content", {})
        if form := content.get("application/x-www-form-urlencoded"):
            yield path, form["example"], set(methods["post"]["responses"])


def assert_described(answer: Response, statuses: set[str]) -> None:
    assert str(answer.status_code) in statuses, answer.text


async def test_what_is_saved_is_described_for_programs(asking: AsyncClient) -> None:
    paths = await described(asking)
    saved = {"/saved", "/saved/{secret}", "/saved/{secret}/{name}", "/saved/{secret}/title", "/saved/{secret}/links"}
    beside = {f"/saved/{{secret}}/{{letters}}/{x}" for x in ("remarks", "readings", "proposals", "difference")}
    files = {"/mine", "/mine/export", "/mine/import", "/pad.document.json", "/pad/document"}
    assert saved | beside | files <= paths.keys()
    for path in saved | beside | files:
        (told,) = paths[path].values()
        assert told["summary"]
        assert "HTTPValidationError" not in str(told)


async def test_every_form_does_with_its_example_what_its_description_says(asking: AsyncClient) -> None:
    """Oracle: every example is taken, and leads to a page that shows it; the links are replaced last."""
    owner = await save(asking)
    secret = owner.split("/")[2]
    found = sorted(forms_of(await described(asking)), key=lambda form: form[0].endswith("/links"))
    assert len(found) == 7
    for path, example, statuses in found:
        address = path.format(secret=secret, letters="A") if "{" in path else path
        sent = {k: text.replace("A" * 22, secret) for k, text in example.items()}
        answer = await send(asking, address, **sent)
        assert answer.status_code == (200 if path == "/mine/export" else 303), f"{path}: {answer.text}"
        assert_described(answer, statuses)
        if answer.status_code == 303:
            assert (await asking.get(answer.headers["location"], follow_redirects=True)).status_code == 200


async def test_every_refusal_of_a_form_is_described(asking: AsyncClient) -> None:
    owner = await save(asking)
    secret = owner.split("/")[2]
    for path, _, statuses in forms_of(await described(asking)):
        for known, fields in ((secret, {"x": "y"}), ("B" * 22, {"words": "x"}), (secret, {"words": "x" * 70_000})):
            address = path.format(secret=known, letters="A") if "{" in path else path
            assert_described(await send(asking, address, **fields), statuses)


async def test_every_file_that_is_named_as_an_example_is_there(asking: AsyncClient) -> None:
    secret = (await save(asking)).split("/")[2]
    named = (await described(asking))["/saved/{secret}/{name}"]["get"]["parameters"]
    examples = next(p["examples"] for p in named if p["name"] == "name")
    assert set(examples) == set(FILE_EXAMPLES)
    for name in set(examples) - NEEDS_MODELS:
        assert (await asking.get(f"/saved/{secret}/{name}")).status_code == 200


async def test_files_go_up_as_described(asking: AsyncClient) -> None:
    paths = await described(asking)
    owner = await save(asking)
    document = (await asking.get(f"{owner}.document.json")).content
    for path, content in (("/mine/import", await exported(asking, owner)), ("/pad/document", document)):
        body = paths[path]["post"]["requestBody"]["content"]["multipart/form-data"]["schema"]
        assert list(body["properties"]) == ["file"]
        assert_described(await upload(asking, path, content), set(paths[path]["post"]["responses"]))


async def test_a_document_of_an_address_is_described_with_every_field(asking: AsyncClient) -> None:
    told = (await described(asking))["/pad.document.json"]["get"]
    assert not [p["name"] for p in told["parameters"] if p["required"]]
    example = {p["name"]: p["example"] for p in told["parameters"] if "example" in p}
    document = (await asking.get("/pad.document.json", params=example)).json()
    assert document["jack"]["cup_bore_mm"] == samples()[0].document["jack"]["cup_bore_mm"]
    refused = await asking.get("/pad.document.json?jack.cup_bore_mm=abc")
    assert_described(refused, set(told["responses"]))
