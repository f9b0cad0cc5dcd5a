"""A bore that takes a post: the pad's stem goes in, its shoulder stands on the bore's rim."""
