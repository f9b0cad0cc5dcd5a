"""Figures from the user's own data sheet, in place of the table's."""

from typing import Any

from geometry.own_values import OWN_RANGES
from geometry.quantity import Group, Number, ShortText, chosen, measured

MICRO = 1e-6


def _figure(title: str, key: str, *, unit: str | None = None, scale: float = 1.0, help: str) -> Any:
    allowed = OWN_RANGES[key]
    return measured(
        title,
        unit=allowed.unit if unit is None else unit,
        ge=allowed.low / scale,
        le=allowed.high / scale,
        default=None,
        kind="number",
        help=help,
        how="Read it from the data sheet of the very rod you buy.",
        assumed="the table's value",
    )


class OwnValues(Group):
    """Properties of the chosen material that are known better than the table knows them."""

    sheet: ShortText = chosen(
        "Your data sheet", default="", kind="text", help="Its name or number, printed beside the values."
    )
    stress_minutes_mpa: Number | None = _figure(
        "Stress allowed for minutes",
        "stress_minutes_mpa",
        help="Lower of the stress at about 2 % strain and half the yield, at the moisture of use. Not the breaking strength.",
    )
    stress_overnight_mpa: Number | None = _figure(
        "Stress allowed overnight", "stress_overnight_mpa", help="From the creep curves of the data sheet, at 24 hours."
    )
    stress_stored_mpa: Number | None = _figure(
        "Stress allowed for storage",
        "stress_stored_mpa",
        help="From the creep curves of the data sheet, at 1000 hours.",
    )
    modulus_minutes_mpa: Number | None = _figure(
        "Modulus", "modulus_minutes_mpa", help="Tensile modulus at the moisture of use."
    )
    density_g_cm3: Number | None = _figure("Density", "density_g_cm3", help="For the mass on the drawing.")
    expansion_um_per_m_k: Number | None = _figure(
        "Thermal expansion", "expansion_per_k", unit="10⁻⁶/K", scale=MICRO, help="Linear, between 23 and 60 °C."
    )
    water_room_percent: Number | None = _figure(
        "Water taken up in room air", "water_room_percent", help="At 23 °C and 50 % relative humidity, by mass."
    )
    water_soaked_percent: Number | None = _figure(
        "Water taken up when soaked", "water_soaked_percent", help="Saturated in water, by mass."
    )
    swell_per_percent: Number | None = _figure(
        "Swelling for each per cent of water", "swell_per_percent", help="As a ratio of length: about 0.003 for nylon."
    )
    temperature_max_c: Number | None = _figure(
        "Greatest temperature", "temperature_max_c", help="Long-term service temperature in air."
    )

    def given(self) -> dict[str, float]:
        """The properties that were entered, by the names and in the units of the material table."""
        entered = {name: value for name, value in vars(self).items() if value is not None and name != "sheet"}
        if "expansion_um_per_m_k" in entered:
            entered["expansion_per_k"] = entered.pop("expansion_um_per_m_k") * MICRO
        return entered
