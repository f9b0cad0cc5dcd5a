"""What the route card says: every step, every warning, every trouble, and nothing that the shop has no use for."""

import re

from geometry.making.wording import Sentence, said
from geometry.route import route_card
from tests.documents import sample, van
from tests.geometry.kinds_made import named, sentences
from tests.geometry.shops import card, job


def test_the_card_names_every_step_from_saw_to_rest() -> None:
    """Oracle: the steps that a fresh reader needs."""
    titles = " ".join(o.title for o in card(sample("tool_library_hatchback_stem")).operations).lower()
    for step in (
        "saw the blank",
        "face",
        "body",
        "stem",
        "seat",
        "corner",
        "flip",
        "run-out",
        "slot",
        "mouth",
        "deburr",
        "rest",
    ):
        assert step in titles


def test_the_part_that_only_serves_to_hold_is_part_of_the_blank() -> None:
    """Oracle: of the 1.5 mm on each end, which the step before names, no 29 mm can be cut away."""
    steps = [step.shown() for step in named(card(van()), "Saw the blank").steps]
    (stub,) = [step for step in steps if "only serves to hold it" in step]
    assert stub.startswith("Of the blank, ")


def test_nylon_is_said_to_string_slip_and_move() -> None:
    """Oracle: common practice, no source."""
    text = " ".join(s.shown() for s in sentences(card(van(make={"material": "pa66"}))))
    for word in ("strings", "slips in the jaws", "swells with heat", "gives under the jaws", "goes on moving"):
        assert word in text


def test_without_a_mill_the_slot_is_filed_and_judged_at_class_c() -> None:
    """Oracle: no end mill stands on the card, and the verdict on hand work does."""
    made = card(shop={"slot_machine": "none"})
    assert made.slot is None
    assert made.by_hand is not None
    assert "File the slot to the gauge" in [o.title for o in made.operations]


def test_a_vertical_slide_uses_the_lathes_speeds_and_light_cuts() -> None:
    """Oracle: the lathe's series; a quarter of the cutter deep."""
    made = card(shop={"slot_machine": "vertical_slide", "spindle_speeds_rpm": (120.0, 900.0)})
    assert made.slot is not None
    assert made.slot.cut.rpm == 900
    assert max(p.cut_deep_mm for p in made.slot.of("rough")) <= made.slot.cutter_mm / 4
    assert "Vertical slide" in made.set_ups[2].holding.shown()


def test_a_chuck_that_holds_an_end_mill_is_warned_of() -> None:
    """Oracle: end mills creep out of a three-jaw chuck (common practice, no source)."""
    text = " ".join(s.shown() for s in named(card(shop={"cutter_held_in": "chuck"}), "Cut the slot").steps)
    assert "creep out" in text


def test_a_cnc_sheet_has_zeros_and_tools_and_no_dials() -> None:
    """Oracle: three set-ups with a zero each, every tool once, no sentence about a dial."""
    made = card(make__process="cnc")
    assert [s.number for s in made.set_ups] == [1, 2, 3]
    assert len({t.name.shown() for t in made.tools}) == len(made.tools)
    assert {n for t in made.tools for n in t.operations} == set(range(1, len(made.operations) + 1))
    words = [s.shown() for o in made.operations for s in (*o.steps, *(said(t.title) for t in o.tables))]
    for by_hand in ("dial", "stop", "screw", "file held", "carriage"):
        assert not [w for w in words if re.search(rf"\b{by_hand}\b", w) and not w.startswith("Rough, stop")], by_hand


def test_a_bar_that_is_not_to_hand_is_said() -> None:
    """Oracle: the largest bar is thinner than the body and its allowance."""
    pad, conditions, shop = job()
    made = route_card(pad.with_(body_diameter_mm=170), conditions, shop)
    assert made.stock is not None
    assert not made.stock.bar_is_listed
    assert "No bar to hand" in made.troubles[0].shown()


def test_a_body_too_short_to_be_held_is_said() -> None:
    """Oracle: 6 mm of body less two edge breaks and the facing leave 3.25 mm."""
    pad, conditions, shop = job()
    flat = pad.with_(web_mm=pad.seat_length_mm + 3, slot_depth_mm=3)
    troubles = " ".join(s.shown() for s in route_card(flat, conditions, shop).troubles)
    assert "Only 3.25 mm of the body" in troubles


def test_hand_work_is_scribed_from_a_face_and_never_from_a_spindle() -> None:
    """Oracle: a bench has none; the lip of a pad with a stem stands stem and seat up from the foot."""
    document = sample("tool_library_hatchback_stem")
    document["make"] = document.get("make", {}) | {"process": "hand_tools"}
    made, (pad, _, _) = card(document), job(document)
    words = [s.shown() for s in sentences(made)]
    assert not [w for w in words if "spindle" in w.lower() or "axis of" in w.lower()]
    assert len(made.set_ups) == 2
    up = Sentence("{up} up from the foot", {"up": pad.stem_length_mm + pad.seat_length_mm}).shown()
    assert any(up in w for w in words)
