"""Every foot with every head: whatever is measured, there is a pad or a refusal that says why, and every estimate is made."""

from math import isnan
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.buildable import require_buildable
from geometry.design import Design, design_pad
from geometry.drawing.section_known import asked_of
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from geometry.volume import volume_mm3
from tests.documents import cars, services
from tests.drawing.kinds_on_paper import EVERY, document_of
from tests.examples import examples
from tests.geometry.section_cases import anything


@st.composite
def documents_of(draw: st.DrawFn, way: str, head: str) -> dict[str, Any]:
    """Any document of one way to stand and one to take the car: mostly around ordinary sizes, any field anywhere now and then."""
    told = document_of(way, head)
    for group, model in asked_of(told["foot"], told["head"]).groups.items():
        told[group] = {name: draw(_around(value)) for name, value in told[group].items()}
        odd = draw(st.sampled_from(["", "", "", *model.model_fields]))
        if odd:
            told[group][odd] = draw(anything(model.model_fields[odd]))
    material = draw(st.sampled_from(["pa66", "pa6_cast", "pom_c", "pet_p"]))
    return told | {"car": draw(cars()), "service": draw(services()), "make": {"material": material}}


def _around(value: Any) -> st.SearchStrategy[Any]:
    """A length within a fifth of an ordinary one; a choice or a count as it is."""
    if isinstance(value, str):
        return st.just(value)
    return st.floats(0.85 * value, 1.2 * value) if value > 6 else st.just(value)


def designed(document: dict[str, Any]) -> Design | None:
    """The pad; none where the document is refused or no pad fits, which is then said in whole sentences."""
    try:
        return design_pad(read_measurements(document))
    except BadMeasurementsError as error:
        assert all(p.field and p.message.rstrip().endswith((".", "”")) for p in error.problems), error
    except NoPadFitsError as error:
        assert error.lower.reason.endswith(".")
        assert error.upper.reason.endswith(".")
        assert f"{error.lower.value_mm:.2f} mm" in error.words
    return None


@pytest.mark.parametrize(("way", "head"), EVERY)
@examples(12, many=400)
@given(data=st.data())
def test_any_measurements_give_a_pad_or_say_why_not(way: str, head: str, data: st.DataObject) -> None:
    """Oracle: the ledger's own musts, what can be built, and a volume that is one."""
    design = designed(data.draw(documents_of(way, head)))
    if design is None:
        return
    require_buildable(design.pad)
    assert volume_mm3(design.pad) > 0
    assert not [name for name, entry in design.ledger.items() if entry.broken]
    assert design.pad.top_height_mm <= design.pad.seat_diameter_mm + 1e-6
    for check in design.checks:
        assert check.words
        assert not isnan(check.utilisation)
