"""What a drawing can refuse."""

from geometry.errors import SeamrestError


class SheetError(SeamrestError):
    """The sheet cannot be drawn: a fact is malformed, or the part fits no standard scale."""
