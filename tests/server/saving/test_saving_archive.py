"""All files of a saved revision in one archive, for whoever has any of its links."""

import hashlib
import json
import zipfile
from collections.abc import AsyncIterator, Iterator
from io import BytesIO

import pytest
from httpx import AsyncClient

from geometry.standing import DO_NOT_USE
from server.model_cache import open_cache
from server.workers import KernelPool
from tests.server.saving.asking import FAILING, at, inputs, links_of, page, save, send, words_of
from tests.server.saving.conftest import client_of
from tests.server.saving.test_saving_papers import TOO_BIG, by_an_older_engine, nothing_is_kept

pytestmark = pytest.mark.anyio
ENDINGS = ("svg", "pdf", "dxf", "step", "stl", "3mf", "glb", "packet.pdf", "card.pdf", "json")
NAMED = {"packet.pdf": "-packet.pdf", "card.pdf": "-lifting-card.pdf", "pdf": "-drawing.pdf", "json": "-design.json"}


@pytest.fixture(scope="module")
def kernel(tmp_path_factory: pytest.TempPathFactory) -> Iterator[KernelPool]:
    """One process that builds models, for all tests of this room; equal models are built once, as they are for people."""
    kept = open_cache(str(tmp_path_factory.mktemp("models")), max_bytes=2**30)
    pool = KernelPool(workers=1, timeout_s=120, cache=kept)
    pool.start()
    yield pool
    pool.stop()


@pytest.fixture
async def asking(setting: str, kernel: KernelPool) -> AsyncIterator[AsyncClient]:
    """A client of an application that builds models."""
    async with client_of(setting, kernel=kernel) as client:
        yield client


async def contents(client: AsyncClient, address: str) -> dict[str, bytes]:
    """The files of an archive by their names without the folder; each is as its digest says."""
    answer = await client.get(address)
    assert (answer.status_code, answer.headers["content-type"]) == (200, "application/zip"), answer.text
    with zipfile.ZipFile(BytesIO(answer.content)) as packed:
        assert packed.testzip() is None
        found = {name.partition("/")[2]: packed.read(name) for name in packed.namelist()}
    for line in found["SHA256SUMS"].decode().splitlines():
        digest, _, name = line.partition("  ")
        assert hashlib.sha256(found[name]).hexdigest() == digest
    return found


@pytest.mark.parametrize("kind", ["owner", "friend", "view"])
async def test_every_link_leads_to_one_archive_with_what_its_other_addresses_give(
    asking: AsyncClient, kind: str
) -> None:
    """Oracle: each file asked for by itself; the page has the way to the archive."""
    link = (await links_of(asking, await save(asking, title="Our van")))[kind]
    assert f'href="{link}.zip"' in await page(asking, link)
    found = await contents(asking, f"{link}.zip")
    for ending in ENDINGS:
        alone = (await asking.get(f"{link}.{ending}")).content
        if ending == "json":
            assert json.loads(found[only(found, NAMED[ending])]) == json.loads(alone)
        else:
            assert found[only(found, NAMED.get(ending, f".{ending}"))] == alone, ending
    assert len(found) == len(ENDINGS) + len(("README.txt", "SHA256SUMS", "measurements"))
    told = found["README.txt"].decode()
    assert [name for name in found if name not in told] == ["README.txt"]


def only(found: dict[str, bytes], end: str) -> str:
    (name,) = (name for name in found if name.endswith(end))
    return name


async def test_the_archive_of_a_later_revision_carries_its_letter_and_its_sizes(asking: AsyncClient) -> None:
    owner = await save(asking)
    await send(asking, "/saved", inputs=inputs(seam__height_mm=19), to=owner)
    first, second = [await contents(asking, at(owner, letters, ".zip")) for letters in "AB"]
    assert all("-rev-b-" in name for name in second if name.startswith("lifting-pad"))
    assert all("-rev-a-" in name for name in first if name.startswith("lifting-pad"))
    measured = [json.loads(files[only(files, "-measurements.json")])["seam"]["height_mm"] for files in (first, second)]
    assert measured[1] == 19
    assert measured[0] != 19


async def test_the_archive_of_a_pad_that_is_not_fit_is_given_to_who_has_seen_that(asking: AsyncClient) -> None:
    owner = await save(asking, FAILING)
    refused = await asking.get(f"{owner}.zip")
    assert refused.status_code == 409
    found = await contents(asking, refused.json()["confirm"])
    assert all("NOT-FIT" in name for name in found if name not in {"README.txt", "SHA256SUMS"})
    assert f'formaction="{owner}.zip"' in await page(asking, owner)


@pytest.mark.parametrize("engine", ["todays", "older"])
async def test_the_archive_of_a_failed_part_says_so_first(asking: AsyncClient, setting: str, engine: str) -> None:
    """A packet that was kept before the readings came does not say so, and is left out where no other can be made."""
    owner = await save(asking)
    await send(asking, f"{owner}/readings", **TOO_BIG)
    if engine == "older":
        by_an_older_engine(setting)
    found = await contents(asking, f"{owner}.zip")
    readme = words_of(found["README.txt"].decode())
    assert readme.index(DO_NOT_USE) < readme.index("Estimated, not tested")
    assert found[only(found, "-lifting-card.pdf")] == (await asking.get(f"{owner}.card.pdf")).content
    assert any(name.endswith("-packet.pdf") for name in found) is (engine == "todays")
    assert ("-packet.pdf" in readme) is (engine == "todays")


async def test_an_archive_of_what_nobody_drew_yet_is_whole_and_of_an_older_engine_has_no_sheets(
    asking: AsyncClient, setting: str
) -> None:
    owner = await save(asking)
    whole = await contents(asking, f"{owner}.zip")
    nothing_is_kept(setting)
    assert await contents(asking, f"{owner}.zip") == whole
    nothing_is_kept(setting)
    by_an_older_engine(setting)
    found = await contents(asking, f"{owner}.zip")
    assert set(whole) - set(found) == {only(whole, "-packet.pdf"), only(whole, "-lifting-card.pdf")}
    assert found[only(found, "-drawing.pdf")] == whole[only(whole, "-drawing.pdf")]
    assert "engine 0.1," in words_of(found["README.txt"].decode())
