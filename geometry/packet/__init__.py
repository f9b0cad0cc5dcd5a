"""Sheets for paper."""
