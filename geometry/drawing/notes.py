"""What the sheet says in words of the whole part: units, general tolerances, edges, surfaces, marking, load."""

from geometry.drawing.facts import CRITICAL_MARK, SheetFacts, Units
from geometry.drawing.geometrical import OTHER_ROUGHNESS_UM, SEAT_ROUGHNESS_UM
from geometry.drawing.measures import length_words
from geometry.fits import linear_tolerance_mm, radius_tolerance_mm

MARKING = ("Mark drawing number", "and date here, at most", "{depth} deep")
"""Stands on a leader at the body, in lines; a note where no leader finds room."""
_MARKING_DEPTH_MM = 0.3
_OUTER_EDGE_MM, _INNER_CORNER_MM = 0.3, 0.4
"""Edges in the way of ISO 13715 (from memory): an outer edge loses at most this, an inner corner keeps at most this. Judged:
a light break by hand, and the nose of a common turning tool."""
_LEAD_IN_MM, _ROOT_LEAST_MM = 0.5, 0.2
"""The stem's end finds its hole, and its root has no sharp notch; judged."""
_RUN_OUT_MM = 0.2
_SQUARE_MM = ((100.0, 0.4), (None, 0.6))
"""Class K of ISO 2768-2:1989 (withdrawn; from memory) for the sizes of such a part: (up to, zone); run-out has one value."""


def note_words(
    facts: SheetFacts,
    *,
    has_stem: bool = False,
    has_slot: bool = True,
    has_plug: bool = False,
    marking: bool = False,
    seat: bool = False,
) -> tuple[str, ...]:
    """The general notes of the sheet; marking and the seat's texture only where no sign at the part says them."""
    unit = {"mm": "mm", "in": "inches", "in_fraction": "inches", "dual": "mm [inches]"}[facts.units]
    job = {"mm": "mm", "in": "inches"}[facts.job_units]
    converted = "" if unit.startswith(job) else f", converted from {job}"
    words = (
        f"Sizes in {unit}{converted}. {facts.moisture[:1].upper()}{facts.moisture[1:]}, {facts.temperature}.",
        f"Unless stated ISO\u00a02768-mK: {_tolerance_words(facts.units)}",
        _edge_words(facts.units, has_stem=has_stem, has_plug=has_plug),
        *(
            (f"Seat face Ra\u00a0{SEAT_ROUGHNESS_UM}\u00a0µm, where nothing is shown {OTHER_ROUGHNESS_UM}.",)
            if seat
            else ()
        ),
        *((f"{CRITICAL_MARK} An estimate depends on this size: measure and record it.",) if facts.critical else ()),
        *(
            (f"{' '.join(marking_words(facts.units, has_slot=has_slot)).replace(' here', ' on the body')}.",)
            if marking
            else ()
        ),
        *(
            (f"Load used in the estimates: about {_about_kn(facts.design_load_n)} kN, not tested.",)
            if facts.fit_to_make
            else ()
        ),
    )
    return tuple(note.replace(" °C", "\u00a0°C") for note in words)


def marking_words(units: Units, *, has_slot: bool) -> tuple[str, ...]:
    """What is marked on the part, where and how deep."""
    *lines, last = (line.format(depth=length_words(_MARKING_DEPTH_MM, _plain_units(units))) for line in MARKING)
    return (*lines, f"{last}, not in the slot" if has_slot else last)


def _about_kn(force_n: float) -> str:
    """Three figures: nobody knows it better.

    >>> _about_kn(10153.0), _about_kn(4943.0)
    ('10.2', '4.94')
    """
    return f"{force_n / 1000:.3g}"


def _plain_units(units: Units) -> Units:
    """One unit where a note has room for one: decimals, and mm on a sheet that has both."""
    return "mm" if units in ("mm", "dual") else "in"


def _edge_words(units: Units, *, has_stem: bool, has_plug: bool) -> str:
    def size(length_mm: float) -> str:
        return length_words(length_mm, _plain_units(units))

    stem = (
        f"; stem end {size(_LEAD_IN_MM)}\u00a0×\u00a045° as a lead-in,"
        f" stem root R{size(_ROOT_LEAST_MM)} to R{size(_INNER_CORNER_MM)}"
    )
    plug = f"; plug root R{size(_ROOT_LEAST_MM)} to R{size(_INNER_CORNER_MM)}"
    return (
        f"Edges, ISO\u00a013715: outer −{size(_OUTER_EDGE_MM)}, no burr; inner corners R{size(_INNER_CORNER_MM)}\u00a0max"
        f"{stem if has_stem else ''}{plug if has_plug else ''}."
    )


def _tolerance_words(units: Units) -> str:
    """The rows of ISO 2768 that such a part needs, for a reader who has no copy."""

    def size(length_mm: float) -> str:
        return length_words(length_mm, _plain_units(units))

    def zones(rows: tuple[tuple[float | None, float], ...]) -> str:
        limits = ((f"to\u00a0{size(upper)}" if upper else "above", zone) for upper, zone in rows)
        return ", ".join(f"{limit}\u00a0{size(zone)}" for limit, zone in limits)

    lengths = ", ".join(
        f"to\u00a0{size(upper)}\u00a0±{size(linear_tolerance_mm(upper))}" for upper in (6, 30, 120, 400)
    )
    radii = ", ".join(f"to\u00a0{size(upper)}\u00a0±{size(radius_tolerance_mm(upper))}" for upper in (3, 6))
    return (
        f"lengths {lengths}; outer radii, chamfers {radii}, above\u00a0±{size(radius_tolerance_mm(7))}; angles\u00a0±1°;"
        f" run-out\u00a0{size(_RUN_OUT_MM)}; square {zones(_SQUARE_MM)}."
    )
