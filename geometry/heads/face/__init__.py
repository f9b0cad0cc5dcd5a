"""Heads on which a face of the car lies: rules shared by a flat cushion and by the shoulder around a plug."""
