"""What the drawing says of surfaces; the geometrical tolerances that it draws are those that the checks allow for."""

SEAT_ROUGHNESS_UM, FLOOR_ROUGHNESS_UM, OTHER_ROUGHNESS_UM = "3.2", "3.2", "6.3"
"""Greatest Ra of the seat face, the slot floor and the rest, µm: chosen for this project, within a plain lathe's reach."""
