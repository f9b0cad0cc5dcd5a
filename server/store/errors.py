"""What can go wrong with what is kept.

::

    StoreError
    ├── StoreUnavailableError  the database cannot be reached or written now
    ├── SchemaError            the database was made by a newer program, or holds something else
    ├── NoSuchLinkError        nothing was ever at this address
    ├── TakenBackError         its owner took this link back
    ├── NoSuchRevisionError    the design has no such revision, or the revision no such thing beside it
    ├── NewerRevisionError     somebody saved in the meantime
    ├── FullError              as much is kept there as may be
    └── BackupError            a backup cannot be read or written, or there is no room for it
"""

from geometry.errors import SeamrestError


class StoreError(SeamrestError):
    """Something about what is kept; the message can be shown to people."""


class StoreUnavailableError(StoreError):
    """The database cannot be reached or written now."""


class SchemaError(StoreError):
    """The database was made by a newer program, or holds something else."""


class NoSuchLinkError(StoreError):
    """Nothing was ever at this address."""

    def __init__(self) -> None:
        super().__init__("There is no saved design at this address. Check that the whole link was copied.")


class TakenBackError(StoreError):
    """The owner of the design took this link back."""

    def __init__(self) -> None:
        super().__init__("The owner of this design has taken this link back. Ask them for a new one.")


class NoSuchRevisionError(StoreError):
    """The design has no such revision, or the revision has no such thing beside it."""


class NewerRevisionError(StoreError):
    """Somebody saved a revision in the meantime; nothing was written."""

    def __init__(self, newest: int) -> None:
        self.newest = newest
        super().__init__("Somebody has saved a newer revision in the meantime.")


class FullError(StoreError):
    """As much is kept there as may be."""


class BackupError(StoreError):
    """A backup cannot be read or written, or the database is not empty."""
