"""Tests of what is saved and shared."""
