"""A straight slot across the pad: a welded seam stands upright in it, its edge on the slot's floor."""
