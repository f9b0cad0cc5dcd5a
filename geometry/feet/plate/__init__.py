"""A flat plate: a ring on it or a recess in it locates the pad, or a skirt that hangs around its edge."""
