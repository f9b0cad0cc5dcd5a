"""The log: one line for a request, in a shape that programs read, without anything that opens something."""

import logging
import re

import pytest
from httpx import AsyncClient

from tests.server.attacks.walking import addresses, filled

pytestmark = pytest.mark.anyio

LINE = re.compile(r"(GET|POST) /[!-~…]* [1-5]\d\d \d+\.\d ms")
SECRET = "pV3xq0Zt9Kd_7Yw-2LmN8a"  # noqa: S105  made up
ROUTES = [(method, path) for method in ("GET", "POST") for path in addresses(method=method)]


async def test_every_address_writes_one_line_without_the_secret_in_it(
    asking: AsyncClient, caplog: pytest.LogCaptureFixture
) -> None:
    """Oracle: the secret in every part of every path, in query, body, cookie and headers, against all that is logged."""
    with caplog.at_level(logging.DEBUG):
        for method, path in ROUTES:
            await asking.request(
                method,
                f"{filled(path, secret=SECRET, letters=SECRET, name=SECRET, path=f'x/{SECRET}')}?title={SECRET}",
                content=f"to=/saved/{SECRET}&words={SECRET}",
                headers={
                    "content-type": "application/x-www-form-urlencoded",
                    "referer": f"http://pads.test/saved/{SECRET}/A",
                    "cookie": f"a={SECRET}",
                    "authorization": f"Bearer {SECRET}",
                    "user-agent": SECRET,
                },
            )
    ours = [record.getMessage() for record in caplog.records if not record.name.startswith(("httpx", "httpcore"))]
    lines = [record.getMessage() for record in caplog.records if record.name == "seamrest.access"]
    assert len(lines) == len(ROUTES)
    assert [line for line in lines if not LINE.fullmatch(line)] == []
    assert [line for line in ours if SECRET in line and not line.split()[1].startswith("/static/")] == []


@pytest.mark.parametrize("path", ["/a%0aGET%20/b%20200%201.0%20ms", "/%1b[31m", "/" + "a/" * 500, "/%e2%80%ae"])
async def test_no_address_writes_a_second_line_or_a_sign_of_the_terminal(
    asking: AsyncClient, caplog: pytest.LogCaptureFixture, path: str
) -> None:
    with caplog.at_level(logging.INFO, "seamrest.access"):
        await asking.get(path)
    lines = [record.getMessage() for record in caplog.records if record.name == "seamrest.access"]
    assert len(lines) == 1
    assert LINE.fullmatch(lines[0])
    assert len(lines[0]) < 250
