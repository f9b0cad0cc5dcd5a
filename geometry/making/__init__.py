"""How the pad is made: operations, passes, tools and times as data."""
