"""Bodies that are small and want to become large: nothing is unpacked, and nothing large is held."""

import gzip
import io
import json
import re
import time
import zipfile
import zlib
from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from httpx import AsyncClient

from server.settings import Settings
from tests.server.asking import problem

pytestmark = pytest.mark.anyio

_UNPACKED = 200 * 2**20
_ZEROS = b" " * 2**20


def _gzipped() -> bytes:
    """Some 200 kB that unpack to 200 MB."""
    packed = io.BytesIO()
    with gzip.GzipFile(fileobj=packed, mode="wb") as file:
        for _ in range(_UNPACKED // len(_ZEROS)):
            file.write(_ZEROS)
    return packed.getvalue()


def _zipped() -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive, archive.open("designs.json", "w") as file:
        for _ in range(_UNPACKED // len(_ZEROS)):
            file.write(_ZEROS)
    return packed.getvalue()


BOMBS = {"gzip": _gzipped, "zip": _zipped}


def forget_peak() -> float:
    """Let the system measure the peak anew (proc(5), clear_refs); gives what is in use now, in MB."""
    Path("/proc/self/clear_refs").write_text("5")
    return peak_mb()


def peak_mb() -> float:
    """The most memory that this process has had in use since."""
    return int(re.findall(r"VmHWM:\s+(\d+) kB", Path("/proc/self/status").read_text())[0]) / 1024


def test_the_peak_is_seen() -> None:
    """Else the tests below would prove nothing."""
    before = forget_peak()
    assert len(b" " * (100 * 2**20)) > 0
    assert peak_mb() - before > 90
    assert forget_peak() - before < 50


@pytest.mark.parametrize("kind", BOMBS)
async def test_a_file_that_would_unpack_to_much_is_refused_in_words_and_never_unpacked(
    asking: AsyncClient, kind: str
) -> None:
    """Oracle: the memory of this process, which holds less than a quarter of what the file would become."""
    bomb = BOMBS[kind]()
    assert len(bomb) < 2**20
    before = forget_peak()
    for name in ("designs.json", f"designs.json.{kind}"):
        answer = await asking.post("/mine/import", files={"file": (name, bomb, f"application/{kind}")})
        assert answer.status_code == 422
        assert "The file cannot be read" in answer.text
    assert peak_mb() - before < _UNPACKED / 2**20 / 4


@pytest.mark.parametrize("said", ["gzip", "deflate", "br", "zstd", "gzip, gzip"])
@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("/api/pad", "application/json"),
        ("/saved", "application/x-www-form-urlencoded"),
        ("/mine/import", "multipart/form-data; boundary=b"),
        ("/pad/document", "multipart/form-data; boundary=b"),
    ],
)
async def test_a_body_that_says_it_is_packed_is_refused(asking: AsyncClient, path: str, kind: str, said: str) -> None:
    packed = gzip.compress(b" " * 2**25) if "gzip" in said else zlib.compress(b" " * 2**25)
    before = forget_peak()
    answer = await asking.post(path, content=packed, headers={"content-type": kind, "content-encoding": said})
    assert answer.status_code in {415, 422}
    assert peak_mb() - before < 30


@pytest.mark.parametrize(
    "body",
    [
        b"[" * 50_000,
        b'{"a":' * 10_000,
        b'{"a":' + b"9" * 60_000 + b"}",
        b'{"a":1e' + b"9" * 60_000 + b"}",
        b'{"jack":{"cup_bore_mm":' + b"9" * 5000 + b"}}",
        json.dumps({f"k{n}": 0 for n in range(4000)}).encode(),
        b'{"title":"' + b"\\u0041" * 10_000 + b'"}',
    ],
    ids=["lists", "objects", "digits", "exponent", "length", "fields", "escapes"],
)
async def test_a_document_that_costs_more_than_it_weighs_is_refused_at_once(asking: AsyncClient, body: bytes) -> None:
    """Oracle: the clock; the quickest of three, since the machine may be busy with other work."""
    times = []
    for _ in range(3):
        began = time.perf_counter()
        answer = await asking.post("/api/pad", content=body, headers={"content-type": "application/json"})
        times.append(time.perf_counter() - began)
        assert answer.status_code == 422
    assert min(times) < 0.5


async def test_a_file_of_designs_that_is_too_large_is_refused_without_being_held(asking: AsyncClient) -> None:
    """Oracle: 413 for twice the limit, whether or not it says how large it is."""
    most = Settings().import_limit_bytes
    head = b'--b\r\ncontent-disposition: form-data; name="file"; filename="a.json"\r\n\r\n'

    async def dripping() -> AsyncIterator[bytes]:
        yield head
        for _ in range(2 * most // len(_ZEROS)):
            yield _ZEROS

    kind = {"content-type": "multipart/form-data; boundary=b"}
    await problem(await asking.post("/mine/import", content=dripping(), headers=kind), status=413, kind="too-large")
    said = kind | {"content-length": str(2 * most)}
    await problem(await asking.post("/mine/import", content=head, headers=said), status=413, kind="too-large")
