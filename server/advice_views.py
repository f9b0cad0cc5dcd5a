"""Advice on a design in words: the curve, other materials, what matters, and what would help."""

from collections.abc import Mapping
from typing import Literal

from markupsafe import Markup

from geometry.calculation.pictures import clearance_plots_of, lift_plot_of, moment_bound_of
from geometry.comparison import MaterialRow, compare_materials
from geometry.design import Design
from geometry.drawing.plots import NARROW, WIDE, Plot
from geometry.errors import NoPadFitsError
from geometry.letters import lower_first
from geometry.making.own_words import car_words, jack_words
from geometry.measurements import Measurements
from geometry.remedies import Remedy, remedies_for_check, remedies_for_conflict
from geometry.rules import Check
from geometry.sensitivity import Sensitivity, sensitivities
from geometry.variants import Changes
from server import links, shown
from server.advice_context import (
    ComparisonRow,
    ComparisonView,
    CurveView,
    InfluenceView,
    PlotView,
    RemediesView,
    RemedyView,
    SensitivityRow,
    SensitivityView,
    Trouble,
)
from server.advice_words import error_words, remedy_words, sensitivity_words
from server.check_views import troubling
from server.design_views import conflict_words
from server.field_views import LinkView
from server.forms import FormReading, Units

MOST_TROUBLES = 4
"""For how many failing checks changes are computed; those that follow seldom need others."""


def changed(typed: Mapping[str, str], changes: Changes, units: Units) -> dict[str, str]:
    """What would be typed after some changes; a change to nothing takes an answer back."""
    document: dict[str, dict[str, object]] = {}
    for key, value in changes.items():
        group, _, name = key.partition(".")
        document.setdefault(group, {})[name] = value
    return {k: v for k, v in typed.items() if k not in changes} | links.typed_of_document(document, units=units)


def _applied(reading: FormReading, changes: Changes) -> str:
    return links.pad_address(changed(reading.typed, changes, reading.units), units=reading.units)


def comparison_view(measurements: Measurements, reading: FormReading) -> ComparisonView:
    """Every material for this case, the best first, each with the address that chooses it."""
    return ComparisonView(tuple(_comparison_row(row, reading) for row in compare_materials(measurements)))


_OUTCOMES: Mapping[Literal["passes", "fails", "no_pad", "refused"], str] = {
    "passes": "passes",
    "fails": "fails",
    "no_pad": "no pad fits",
    "refused": "not offered",
}


def _comparison_row(row: MaterialRow, reading: FormReading) -> ComparisonRow:
    design, units = row.design, reading.units
    address = LinkView("choose", _applied(reading, row.changes))
    words = row.words if design is None else (row.material.advice_in(design.measurements.head) or "")
    return ComparisonRow(
        name=row.material.name,
        outcome=_OUTCOMES[row.outcome],
        body=shown.length_with_unit(design.pad.body_diameter_mm, units) if design else "",
        height=shown.length_with_unit(design.pad.overall_height_mm, units) if design else "",
        governing=_governing(design.governing) if design else "",
        remark=conflict_words(row.conflict, units) if row.conflict else shown.words_in(words, units),
        choose=None if row.is_chosen or row.outcome == "refused" else address,
        is_chosen=row.is_chosen,
    )


def _governing(check: Check) -> str:
    return f"{lower_first(check.title)}, {shown.share(check.utilisation)}"


def sensitivity_of(design: Design, units: Units = "mm") -> SensitivityView:
    """What to measure most carefully for this design."""
    return sensitivity_view(sensitivities(design), units)


def sensitivity_view(found: tuple[Sensitivity, ...], units: Units = "mm") -> SensitivityView:
    """Sensitivities in words."""
    return SensitivityView(
        tuple(
            SensitivityRow(
                s.check.title,
                sensitivity_words(s, units),
                tuple(
                    InfluenceView(i.title, error_words(i, units), shown.share(i.before), shown.share(i.after))
                    for i in s.influences
                ),
            )
            for s in found
        )
    )


def remedies_of(reading: FormReading, design: Design | None, conflict: NoPadFitsError | None) -> RemediesView:
    """Computed changes for all that fails; where nothing does, for advice that is past its limit."""
    troubles: list[Trouble] = []
    if conflict is not None and reading.measurements is not None:
        found = remedies_for_conflict(reading.measurements, conflict)
        troubles.append(
            Trouble("Fitting a pad", conflict_words(conflict, reading.units), _remedies(reading, found, "a pad fits"))
        )
    if design is not None:
        troubles += [_trouble(reading, design, check) for check in troubling(design)[:MOST_TROUBLES]]
    is_judged = design is not None or conflict is not None
    words = (
        "Nothing fails." if is_judged else "There is no pad yet: the working sheet says what is still to be measured."
    )
    return RemediesView(tuple(troubles), words)


def _trouble(reading: FormReading, design: Design, check: Check) -> Trouble:
    is_advice = check.verdict == "advice"
    then = "this keeps within its limit" if is_advice else "this no longer fails"
    found = _remedies(reading, remedies_for_check(design, check), then)
    return Trouble(check.title, shown.check_words(check, reading.units), found, is_advice)


def _remedies(
    reading: FormReading, found: tuple[Remedy, ...], then: str = "this no longer fails"
) -> tuple[RemedyView, ...]:
    def link(remedy: Remedy) -> LinkView:
        return LinkView(remedy_words(remedy, reading.units, then=then), _applied(reading, remedy.changes))

    return tuple(RemedyView(link(remedy), _then(remedy.outcome)) for remedy in found)


def _then(outcome: str) -> str:
    """The verdict after a change; where something else still fails, that is said first."""
    return f"Mends this one, not the rest: {outcome}" if outcome.startswith("Do not make") else outcome


def plot_view(plot: Plot, narrow: Plot, prefix: str) -> PlotView:
    """A plot in both widths, with ids of its own."""
    wide, small = (p.svg(width=w, prefix=f"{prefix}-{n}") for p, w, n in ((plot, WIDE, "w"), (narrow, NARROW, "n")))
    return PlotView(Markup(wide), Markup(small), plot.table)  # noqa: S704 - drawn by our own code, which escapes


def curve_view(design: Design, units: Units) -> CurveView | None:
    """How the load grows as the car rises; None where the car's statics are not known."""
    curve = design.conditions.curve
    plot, narrow = (lift_plot_of(design, units=units, is_narrow=is_narrow) for is_narrow in (False, True))
    bound = moment_bound_of(design)
    if curve is None or plot is None or narrow is None or bound is None:
        return None
    car = car_words(design.conditions).name
    return CurveView(
        plot_view(plot, narrow, "curve"),
        (
            f"The force rises to {shown.force(curve.greatest_force_n, units)}, reached when the {car} has risen"
            f" {shown.length_with_unit(curve.plateau_rise_mm, units, digits=0)}. The pad is judged for that force, whatever lift"
            " is wanted.",
            f"Moments alone, without any spring, allow no more than {shown.force(bound, units)}.",
            f"For the wanted lift the {_raised(design)} must stand"
            f" {shown.length_with_unit(design.rim_height_needed_mm, units, digits=0)} above the ground.",
            "The springs are a guess, so the rise at which a wheel leaves is one, too; the greatest force is not.",
        ),
    )


def _raised(design: Design) -> str:
    """What of the jack is raised, as heights are measured to it."""
    top = jack_words(design.conditions).top
    return "jack's rim" if top == "rim" else top


def clearance_views(design: Design, units: Units) -> tuple[PlotView, ...]:
    """The least clearance of seat and slot against temperature, dry to soaked."""
    plots = clearance_plots_of(design, units=units)
    return tuple(plot_view(plot, plot, f"fit-{i}") for i, plot in enumerate(plots))
