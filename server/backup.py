"""``python -m server.backup save FILE`` and ``restore FILE``: everything that is saved, as one file, and back.

The database is the one that ``SEAMREST_DATABASE`` names. Saving disturbs no server that runs; a backup of one kind of
database can be restored into the other. Exit status: 0 done, 1 not done (and why), 2 for a wrong command or setting.
"""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from server.settings import Settings, SettingsError
from server.store.dump import restore, save
from server.store.errors import StoreError


def main(arguments: Sequence[str] | None = None) -> int:
    """Save or restore, and say what was done."""
    parser = argparse.ArgumentParser(prog="python -m server.backup", description="Save or restore all saved designs.")
    parser.add_argument("deed", choices=["save", "restore"], help="what to do")
    parser.add_argument("file", type=Path, help="the backup")
    chosen = parser.parse_args(arguments)
    try:
        setting = Settings.from_environment().database
        count = (save if chosen.deed == "save" else restore)(setting, chosen.file)
    except SettingsError as error:
        print(error, file=sys.stderr)
        return 2
    except StoreError as error:
        print(error, file=sys.stderr)
        return 1
    print(f"{'Saved' if chosen.deed == 'save' else 'Restored'} {count} rows.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
