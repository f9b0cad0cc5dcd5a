"""Heads: how a pad takes the car. Each kind is a room of its own."""
