"""Feet: how a pad stands on a jack. Each kind is a room of its own."""
