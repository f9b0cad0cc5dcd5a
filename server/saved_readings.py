"""The inspection sheet of a saved revision, whose readings are kept: limits beside the boxes, in the order of the first part."""

from dataclasses import dataclass, replace

from geometry.cautions import ONE_LINE
from geometry.conditions import conditions_of
from geometry.errors import BadMeasurementsError
from geometry.inspection import inspection_sheet
from geometry.measurements import read_measurements
from server.carried import AS_READ, Carried
from server.field_views import FieldView
from server.forms import FormReading
from server.making_case import SETS, Head
from server.making_inspection import LineView, about_set, lines_of
from server.saved_head import head_as_saved
from server.store.designs import Revision
from server.store.links import Access
from server.working_out import pad_of


@dataclass(frozen=True, slots=True)
class ReadingsPage:
    """The sheet with a box for every reading, and the button that keeps them."""

    head: Head
    action: str
    """Where the form is sent to, with what was typed on other pages."""
    back: str
    kept: str
    notes: tuple[str, ...]
    about: tuple[FieldView, ...]
    lines: tuple[LineView, ...]
    units: str
    name: str
    trouble: str
    wrong: tuple[FieldView, ...]
    """The boxes that hold what cannot be kept."""
    questions: tuple[str, ...]
    """What looks like a slip, and is not kept before somebody says that it is right."""
    caution_line: str = ONE_LINE


def readings_page(
    access: Access,
    found: Revision,
    form: FormReading,
    carried: Carried,
    *,
    trouble: str = "",
    questions: tuple[str, ...] = (),
) -> ReadingsPage:
    """The sheet with what was typed into it and on other pages of the shop, and what of it cannot be kept as it is."""
    head = head_as_saved(access, found, replace(carried, own={**carried.own, **form.typed}), "inspection")
    lines, notes, gone = _sheet(found, form)
    who = "whoever has a link to the design" if access.is_owner else "its owner"
    about = tuple(f for f in about_set(SETS[0], form) if not f.key.endswith(".sure"))
    return ReadingsPage(
        head=head,
        action=carried.on(head.here, form.units, without=AS_READ),
        back=head.back,
        kept=f"What you type here is judged and kept beside revision {found.letters}, where {who} finds it. Enter what you read"
        " off the part, not what the drawing says; what was not read may stay empty.",
        notes=notes,
        about=about,
        lines=lines,
        units=form.units,
        name=carried.name,
        trouble=trouble or gone,
        wrong=tuple(f for f in (*about, *(line.field for line in lines if line.field)) if f.problem),
        questions=questions,
    )


def _sheet(found: Revision, form: FormReading) -> tuple[tuple[LineView, ...], tuple[str, ...], str]:
    """The lines of the pad as saved, what to know before it is measured, and why there are none of either."""
    try:
        conditions = conditions_of(read_measurements(found.document))
    except BadMeasurementsError as error:
        return (
            (),
            (),
            f"No readings are judged: today's program does not take these measurements. {error.problems[0].message}",
        )
    sheet = inspection_sheet(pad_of(found.design), conditions)
    return lines_of(sheet, conditions, form, {}), tuple(note.shown(form.units) for note in sheet.notes), ""
