"""A plug: it enters a hole or pocket of the car's body, whose rim stands on the shoulder around it."""
