"""The calculation sheet as data: every number of a design with the line of arithmetic that it comes from."""
