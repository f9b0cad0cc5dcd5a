"""Model files through the whole application: real ones from the kernel's processes, and what is said when they fail."""

import struct
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

import pytest
from fastapi import FastAPI
from httpx import ASGITransport, AsyncClient

from geometry.design import design_pad
from geometry.errors import KernelMissingError, ModelError, SeamrestError
from geometry.measurements import read_measurements
from geometry.model_label import ModelFormat, ModelLabel
from geometry.pad import Pad
from geometry.volume import volume_mm3
from server.app import create_app
from server.processes import BusyError, NoAnswerError, ProcessDiedError, ProcessTimeoutError
from tests.documents import van
from tests.server.asking import FAILING, FIRST_BYTES, FITTING, MEDIA_TYPES, MODELS, address, problem
from tests.server.conftest import SETTINGS

pytestmark = pytest.mark.anyio
ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize("ending", MODELS)
async def test_a_model_has_its_media_type_its_name_and_its_content(
    client_with_models: AsyncClient, ending: str
) -> None:
    answer = await client_with_models.get(address(FITTING, ending))
    identity = design_pad(read_measurements(FITTING)).design_id
    assert answer.status_code == 200, answer.text
    assert answer.headers["content-type"] == MEDIA_TYPES[ending]
    assert answer.headers["content-disposition"] == f'attachment; filename="lifting-pad-{identity}-rev-a.{ending}"'
    assert answer.content.startswith(FIRST_BYTES.get(ending, b""))


async def test_the_stl_encloses_the_volume_of_the_designed_pad(client_with_models: AsyncClient) -> None:
    """Oracle: the closed form of the pad's volume, against the divergence theorem over the file's triangles."""
    content = (await client_with_models.get(address(FITTING, "stl"))).content
    (count,) = struct.unpack_from("<I", content, 80)
    volume = 0.0
    for index in range(count):
        ax, ay, az, bx, by, bz, cx, cy, cz = struct.unpack_from("<9f", content, 84 + 50 * index + 12)
        volume += (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6
    assert len(content) == 84 + 50 * count
    assert volume == pytest.approx(volume_mm3(design_pad(read_measurements(FITTING)).pad), rel=2e-3)


@pytest.mark.parametrize("ending", MODELS)
async def test_a_document_gives_the_same_model_as_its_address(client_with_models: AsyncClient, ending: str) -> None:
    by_body = await client_with_models.post(f"/api/pad.{ending}", json=FITTING)
    by_address = await client_with_models.get(address(FITTING, ending))
    assert by_body.status_code == 200
    assert by_body.content == by_address.content


@pytest.mark.parametrize("ending", MODELS)
async def test_a_confirmed_model_of_a_failed_design_says_not_fit_in_name_and_header(
    client_with_models: AsyncClient, ending: str
) -> None:
    refusal = await problem(await client_with_models.get(address(FAILING, ending)), status=409, kind="not-fit")
    answer = await client_with_models.get(refusal["confirm"])
    assert answer.status_code == 200
    assert answer.headers["content-disposition"].endswith(f'-NOT-FIT.{ending}"')
    # A 3MF file is a compressed archive; its own tests read what it says.
    assert ending == "3mf" or b"NOT-FIT" in answer.content[:3000]


async def test_a_confirmed_document_gives_its_model(client_with_models: AsyncClient) -> None:
    answer = await client_with_models.post("/api/pad.stl?confirm=not-fit", json=FAILING)
    assert answer.status_code == 200
    assert answer.content.startswith(b"lifting pad")
    assert b"NOT-FIT" in answer.content[:80]


async def test_confirming_a_design_without_failures_changes_nothing(client_with_models: AsyncClient) -> None:
    plain, confirmed = [
        await client_with_models.get(address(FITTING, "stl", **more)) for more in ({}, {"confirm": "not-fit"})
    ]
    assert plain.content == confirmed.content
    assert "NOT-FIT" not in confirmed.headers["content-disposition"]


@pytest.mark.parametrize("ending", ["step", "stl"])
async def test_a_warm_model_takes_less_than_a_second(client_with_models: AsyncClient, ending: str) -> None:
    await client_with_models.get(address(FITTING, ending))
    began = time.perf_counter()
    answer = await client_with_models.get(address(FITTING, ending))
    assert answer.status_code == 200
    assert time.perf_counter() - began < 1


class FailingKernel:
    """Stands for model processes in trouble."""

    def __init__(self, error: SeamrestError) -> None:
        self.error = error

    async def model(self, pad: Pad, label: ModelLabel, model_format: ModelFormat) -> bytes:
        """Fail as told."""
        raise self.error


def client_of(kernel: object) -> AsyncClient:
    """A client of an application with another kernel."""
    app = create_app(SETTINGS)
    app.state.kernel = kernel
    return client_at(app)


def client_at(app: FastAPI) -> AsyncClient:
    """A client of an application."""
    return AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test")


@pytest.mark.parametrize("kind", [BusyError, ProcessTimeoutError, ProcessDiedError])
async def test_a_kernel_in_trouble_is_said_with_a_time_to_come_again(kind: type[NoAnswerError]) -> None:
    async with client_of(FailingKernel(kind("The line is full."))) as client:
        answer = await client.get(address(FITTING, "step"))
    body = await problem(answer, status=503, kind="busy")
    assert body["detail"] == "The line is full."
    assert int(answer.headers["retry-after"]) > 0


async def test_a_missing_system_library_is_named() -> None:
    async with client_of(FailingKernel(KernelMissingError("Install libgl1."))) as client:
        answer = await client.post("/api/pad.3mf", json=FITTING)
    assert (await problem(answer, status=503, kind="kernel-missing"))["detail"] == "Install libgl1."
    assert int(answer.headers["retry-after"]) > 0


async def test_a_model_that_the_kernel_refuses_is_our_fault_in_words() -> None:
    async with client_of(FailingKernel(ModelError("The body is not valid."))) as client:
        await problem(await client.get(address(FITTING, "stl")), status=500, kind="no-model")


async def test_design_and_drawing_never_ask_the_kernel() -> None:
    """Their kernel would fail, so an answer proves that it was not asked."""
    async with client_of(FailingKernel(ModelError("asked"))) as client:
        for ending in ("json", "svg", "dxf", "pdf"):
            assert (await client.get(address(FITTING, ending))).status_code == 200


async def test_a_model_that_was_kept_is_given_without_the_kernel(tmp_path: Path) -> None:
    """The second server shares the folder, and its processes were never started; other formats and pads need them."""
    settings = replace(SETTINGS, model_cache_folder=str(tmp_path / "models"))
    first, second = create_app(settings), create_app(settings)
    async with first.router.lifespan_context(first), client_at(first) as client:
        built = await client.get(address(FITTING, "step"))
    async with client_at(second) as client:
        kept, *others = [
            await client.get(address(document, ending))
            for document, ending in ((FITTING, "step"), (FITTING, "stl"), (van(), "step"))
        ]
    assert (built.status_code, kept.content) == (200, built.content)
    assert [other.status_code for other in others] == [500, 500]


_WITHOUT_KERNEL = """
import asyncio, sys
from httpx import ASGITransport, AsyncClient
from server.app import create_app
from server.links import ready_sample

async def ask():
    page = ready_sample().address
    async with AsyncClient(transport=ASGITransport(app=create_app()), base_url="http://pads.test") as client:
        addresses = [page, "/", "/pad", "/api/schema", "/openapi.json"]
        addresses += [page.replace("/pad?", f"/pad.{ending}?") for ending in ("json", "svg", "dxf", "pdf")]
        for address in addresses:
            answer = await client.get(address, follow_redirects=True)
            assert answer.status_code == 200, (address, answer.text[:500])

asyncio.run(ask())
print(sorted({"cadquery", "OCP", "geometry.solid", "geometry.exports"} & set(sys.modules)))
"""


def test_the_web_process_never_loads_the_kernel() -> None:
    done = subprocess.run(
        [sys.executable, "-c", _WITHOUT_KERNEL], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert (done.stdout, done.returncode) == ("[]\n", 0), done.stderr
