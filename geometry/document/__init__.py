"""The groups of the measurement document that belong to no one kind of foot or head."""
