"""For one rounding step, the units that somebody types in change nothing."""

from decimal import Decimal
from typing import Any

import pytest
from httpx import AsyncClient
from hypothesis import given
from hypothesis import strategies as st

from server.fields import FIELDS
from server.links import pad_address, typed_of_document
from tests.documents import documents, ordinary_documents, van
from tests.examples import examples
from tests.server.asking import differences

pytestmark = pytest.mark.anyio

_STEP_IN, _STEP_MM = Decimal("0.005"), Decimal("0.127")
"""The same length, exactly, as 1 inch = 25.4 mm."""
_POUND_KG = Decimal("0.45359237")


def spelled(document: dict[str, Any], *, is_inch: bool, says_unit: bool) -> dict[str, str]:
    """What one types for a document whose lengths are whole steps and whose masses are whole pounds."""
    typed = typed_of_document(document)
    for key in typed:
        kind = FIELDS[key].kind
        if kind not in {"length", "mass"}:
            continue
        step, house, imperial = (_STEP_MM, "mm", "in") if kind == "length" else (_POUND_KG, "kg", "lb")
        count = int(Decimal(typed[key]) / step)
        amount = count * ((_STEP_IN if kind == "length" else 1) if is_inch else step)
        typed[key] = f"{amount} {imperial if is_inch else house}" if says_unit else str(amount)
    return typed


@examples(50, many=1500)
@given(st.one_of(ordinary_documents(), documents()))
async def test_the_same_lengths_in_millimetres_and_inches_give_the_same_answer(
    client: AsyncClient, document: dict[str, Any]
) -> None:
    """Oracle: exact decimal arithmetic; the design, or the refusal, must agree to 1e-9."""
    in_mm = pad_address(spelled(document, is_inch=False, says_unit=True), ".json", units="in")
    in_inch = pad_address(spelled(document, is_inch=True, says_unit=True), ".json")
    bare = pad_address(spelled(document, is_inch=True, says_unit=False), ".json", units="in")
    first, *others = [await client.get(address) for address in (in_mm, in_inch, bare)]
    for other in others:
        assert other.status_code == first.status_code
        assert differences(first.json(), other.json()) == []


async def test_the_step_of_the_shop_is_what_decides_the_rounding(client: AsyncClient) -> None:
    """Oracle: a metric pad has a web in halves of a millimetre, an inch pad one in steps of 0.025 in."""
    metric, inch = [
        (await client.get(pad_address(typed_of_document(van(make__step=step)), ".json"))).json()["pad"]["web_mm"]
        for step in ("metric", "inch")
    ]
    assert metric * 2 == pytest.approx(round(metric * 2), abs=1e-9)
    assert inch / 0.635 == pytest.approx(round(inch / 0.635), abs=1e-9)
    assert metric != inch
