"""The lifting pad itself: measurements in, a judged pad, its drawing and its model out. Knows nothing of the web."""

ENGINE_VERSION = "0.5.0"
"""Changes whenever the same measurements would give another pad, ledger or verdict (a golden file of designs enforces it)."""

SCHEMA_VERSION = 1
"""The layout of the design document; later versions only add keys."""
