"""A machine that lacks a system library: what to install is said, and all that needs no kernel works."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
LACKING = 'raise ImportError("libGL.so.1: cannot open shared object file: No such file or directory")\n'
PROGRAM = """
import asyncio, json
from httpx import ASGITransport, AsyncClient
from server.app import create_app
from server.links import ready_sample
from server.settings import Settings

async def ask():
    app, page = create_app(Settings(kernel_workers=1, model_cache_folder="none")), ready_sample().address
    found = {}
    async with app.router.lifespan_context(app), AsyncClient(
        transport=ASGITransport(app=app), base_url="http://pads.test", follow_redirects=True
    ) as client:
        for ending in ("step", "zip", "json", "svg", "pdf"):
            answer = await client.get(page.replace("/pad?", f"/pad.{ending}?"))
            found[ending] = [answer.status_code, answer.json()["detail"] if answer.status_code != 200 else ""]
        turn = await client.get(page.replace("/pad?", "/pad/turn?"))
        sheet = await client.get(page)
        found["sheet"] = [sheet.status_code, sheet.text]
        found["turn"] = [turn.status_code, turn.text]
    return found

if __name__ == "__main__":
    print(json.dumps(asyncio.run(ask())))
"""


@pytest.fixture(scope="module")
def answers(tmp_path_factory: pytest.TempPathFactory) -> dict[str, tuple[int, str]]:
    """What a server says whose kernel cannot be loaded; a stand-in for the kernel fails as the real one does then."""
    room = tmp_path_factory.mktemp("lacking")
    (room / "OCP").mkdir()
    (room / "OCP" / "__init__.py").write_text(LACKING)
    (room / "program.py").write_text(PROGRAM)
    environment = os.environ | {"PYTHONPATH": f"{room}{os.pathsep}{ROOT}"}
    done = subprocess.run(
        [sys.executable, str(room / "program.py")],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    found: dict[str, tuple[int, str]] = json.loads(done.stdout)
    return found


@pytest.mark.parametrize("ending", ["step", "zip"])
def test_whoever_asks_for_a_model_is_told_what_to_install(answers: dict[str, tuple[int, str]], ending: str) -> None:
    status, words = answers[ending]
    assert status == 503
    assert "libGL.so.1" in words
    assert "apt-get install libgl1" in words


@pytest.mark.parametrize("ending", ["json", "svg", "pdf", "sheet", "turn"])
def test_all_that_needs_no_kernel_works(answers: dict[str, tuple[int, str]], ending: str) -> None:
    assert answers[ending][0] == 200


@pytest.mark.parametrize("name", ["sheet", "turn"])
def test_the_page_says_it_before_anybody_asks_for_a_model(answers: dict[str, tuple[int, str]], name: str) -> None:
    page = answers[name][1]
    assert "No models can be built on this machine yet." in page
    assert "apt-get install libgl1" in page
