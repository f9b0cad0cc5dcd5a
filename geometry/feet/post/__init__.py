"""A bore that takes a post: the pad's stem goes in, its seat stands on the bore's rim."""
