"""The README's commands for saved designs do what it says of them."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from server.settings import Settings
from server.store.database import Database, default_file, engine_of
from tests.server.saving.keeping import access, saved

ROOT = Path(__file__).parents[3]
README = (ROOT / "README.md").read_text()


def commands(name: str) -> str:
    found = re.search(rf"<!-- {name} -->\n```sh\n(.*?)```", README, re.DOTALL)
    assert found, name
    return found[1]


def test_a_backup_taken_as_the_readme_says_gives_a_database_in_which_the_links_work(tmp_path: Path) -> None:
    """Oracle: the owner's link of the first database opens the design in the second."""
    first = Database(str(tmp_path / "first.sqlite3"))
    _, secret = saved(first, "Van")
    first.close()
    script = commands("backup").replace(".venv/bin/python", sys.executable)
    script = script.replace("designs.backup", str(tmp_path / "designs.backup"))
    script = script.replace("restored.sqlite3", str(tmp_path / "restored.sqlite3"))
    environment = os.environ | {"SEAMREST_DATABASE": first.setting}
    done = subprocess.run(["sh", "-ec", script], cwd=ROOT, env=environment, capture_output=True, text=True, check=True)
    assert re.fullmatch(r"Saved (\d+) rows\.\nRestored \1 rows\.\n", done.stdout)
    second = Database(str(tmp_path / "restored.sqlite3"))
    assert access(second, secret).is_owner
    second.close()


def test_the_readmes_settings_of_several_servers_are_settings_and_name_a_database() -> None:
    given = dict(re.findall(r"(SEAMREST_\w+)=(\S+)", commands("servers")))
    chosen = Settings.from_environment(given)
    assert (chosen.database, chosen.base_address) == (given["SEAMREST_DATABASE"], given["SEAMREST_BASE_ADDRESS"])
    assert engine_of(chosen.database).dialect.name == "postgresql"


def test_the_readme_names_the_file_that_is_taken_without_a_setting(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("XDG_DATA_HOME", raising=False)
    monkeypatch.setenv("HOME", "/home/ada")
    assert f"`{str(default_file()).replace('/home/ada', '~')}`" in README
