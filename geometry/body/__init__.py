"""The body between foot and head: what neither of them decides alone."""
