"""Text becomes measurements: what people type, what is refused, and what is said early."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.measurements import read_measurements
from server.fields import FIELDS
from server.forms import FormReading, read_form
from server.links import typed_of_document
from tests.documents import documents, van


def reading(units: str = "", **typed: str) -> FormReading:
    """A form with some fields typed; ``__`` stands for the dot."""
    pairs = [(key.replace("__", "."), text) for key, text in typed.items()]
    return read_form([*pairs, *([("units", units)] if units else [])])


def message(form: FormReading, key: str) -> str:
    """The one thing that is said about a field."""
    (found,) = [p.message for p in form.problems if p.field == key]
    return found


@pytest.mark.parametrize(
    ("text", "value_mm", "echo"),
    [
        ("68", 68.0, None),
        ("68.5 mm", 68.5, None),
        ("1-1/2 in", 38.1, "1-1/2 in = 38.10 mm"),
        ('2 5/8"', 66.675, '2 5/8" = 66.675 mm'),
        ("2½ in", 63.5, "2½ in = 63.50 mm"),
        ("68,5", 68.5, "68,5 mm = 68.50 mm"),
        ("6.8 cm", 68.0, "6.8 cm = 68.00 mm"),
    ],
)
def test_a_length_is_read_as_people_type_it(text: str, value_mm: float, echo: str | None) -> None:
    """Oracle: 1 inch = 25.4 mm exactly, by hand."""
    form = reading(jack__cup_bore_mm=text)
    assert form.document == {"jack": {"cup_bore_mm": pytest.approx(value_mm, abs=1e-12)}}
    assert form.echo.get("jack.cup_bore_mm") == echo
    assert not form.problems


def test_a_bare_number_means_inches_and_pounds_for_a_viewer_of_inches() -> None:
    """Oracle: 2.5 in = 63.5 mm; 3500 lb = 1587.573295 kg (1 lb = 0.45359237 kg exactly)."""
    form = reading("in", jack__cup_bore_mm="2.5", car__gross_mass_kg="3500")
    assert form.document["jack"]["cup_bore_mm"] == pytest.approx(63.5, abs=1e-12)
    assert form.document["car"]["gross_mass_kg"] == pytest.approx(1587.573295, abs=1e-9)
    assert form.echo == {"jack.cup_bore_mm": "2.5 in = 63.50 mm", "car.gross_mass_kg": "3500 lb = 1587.57 kg"}


@pytest.mark.parametrize(("text", "said"), [("1/8 in", "3.175"), ("5/32 in", "3.969"), ("0.05 in", "1.27")])
def test_the_echo_of_an_inch_is_exact_to_a_thousandth_of_a_millimetre(text: str, said: str) -> None:
    """Oracle: 25.4 / 8 = 3.175; 5 * 25.4 / 32 = 3.96875; 0.05 * 25.4 = 1.27."""
    assert reading(seam__thickness_mm=text).echo["seam.thickness_mm"] == f"{text} = {said} mm"


@pytest.mark.parametrize(("text", "pounds"), [("2 ton", "4000 lb"), ("1-1/2 tons", "3000 lb")])
def test_tons_are_refused_with_what_they_would_be_in_pounds(text: str, pounds: str) -> None:
    """Oracle: a short ton is 2000 lb, a long ton 2240 lb."""
    said = message(reading("in", jack__rated_load_kg=text), "jack.rated_load_kg")
    assert f"short tons, {pounds}" in said


def test_a_typed_unit_wins_over_the_viewers_units() -> None:
    form = reading("in", jack__cup_bore_mm="68 mm", car__gross_mass_kg="1600 kg")
    assert form.document == {"jack": {"cup_bore_mm": 68.0}, "car": {"gross_mass_kg": 1600.0}}


def test_millimetres_are_said_in_inches_to_one_who_reads_inches() -> None:
    """Oracle: 68 / 25.4 = 2.677."""
    assert reading("in", jack__cup_bore_mm="68 mm").echo == {"jack.cup_bore_mm": "68 mm = 2.677 in"}
    assert not reading("mm", jack__cup_bore_mm="68 mm").echo


def test_an_empty_text_beside_a_given_one_is_no_second_answer() -> None:
    form = read_form([("jack.cup_bore_mm", ""), ("jack.cup_bore_mm", "68")])
    assert form.typed == {"jack.cup_bore_mm": "68"}
    assert not form.problems


def test_a_number_may_carry_the_unit_of_its_field() -> None:
    form = reading(jack__saddle_tilt_deg="3°", service__temperature_low_c="−5 °C", car__ride_frequency_hz="1,4 Hz")
    assert form.document == {
        "jack": {"saddle_tilt_deg": 3.0},
        "service": {"temperature_low_c": -5.0},
        "car": {"ride_frequency_hz": 1.4},
    }
    assert not form.problems


@pytest.mark.parametrize("text", ["-20", "−20 mm", "- 2 cm"])
def test_a_length_that_may_be_negative_is_read_with_its_sign(text: str) -> None:
    assert reading(seam__roll_in_obstacle_mm=text).document == {"seam": {"roll_in_obstacle_mm": -20.0}}


def test_a_length_that_cannot_be_negative_is_refused_with_its_sign() -> None:
    assert "“-20” is not a length" in message(reading(jack__cup_bore_mm="-20"), "jack.cup_bore_mm")


@pytest.mark.parametrize(
    ("text", "values_mm"),
    [
        ("20; 25; 30", [20, 25, 30]),
        ("20 25,5 30", [20, 25.5, 30]),
        ("20, 25, 30", [20, 25, 30]),
        ("20\n25\n30", [20, 25, 30]),
        ("1 1/2 in 2 in 40 mm", [38.1, 50.8, 40]),
        ("1/4 3/8 1/2 in", [6.35, 9.525, 12.7]),
        ("20", [20]),
    ],
)
def test_a_list_of_lengths_is_read_with_any_clear_separator(text: str, values_mm: list[float]) -> None:
    """Oracle: by hand; a comma between digits is a decimal comma, a unit of the last alone is that of all."""
    form = reading(make__cutter_diameters_mm=text)
    assert form.document["make"]["cutter_diameters_mm"] == pytest.approx(values_mm, abs=1e-12)


@pytest.mark.parametrize("text", ["20,25,30", "20 and 30", "20 30 x", "20; -3", "1e2 30"])
def test_a_list_that_could_be_misread_is_refused_whole(text: str) -> None:
    form = reading(make__cutter_diameters_mm=text)
    assert "Put a semicolon between the lengths." in message(form, "make.cutter_diameters_mm")
    assert "make" not in form.document


def test_what_is_counted_must_be_a_whole_number() -> None:
    assert reading(seam__sheets="3").document == {"seam": {"sheets": 3}}
    assert "“2.5” is not a whole number" in message(reading(seam__sheets="2.5"), "seam.sheets")


def test_an_empty_form_misses_the_eight_measurements_and_has_no_problem() -> None:
    """Oracle: the eight required numbers of the engineering basis, in the order of the document."""
    form = read_form([])
    assert form.missing == (
        "jack.cup_bore_mm",
        "jack.cup_depth_mm",
        "jack.rated_load_kg",
        "jack.rim_height_low_mm",
        "seam.thickness_mm",
        "seam.height_mm",
        "seam.edge_height_mm",
        "car.gross_mass_kg",
    )
    assert (form.problems, form.document, form.typed, form.measurements) == ((), {}, {}, None)


@pytest.mark.parametrize(
    ("source", "asked"),
    [
        ("stated", {"car.load_kg"}),
        ("statics", {"car.gross_mass_kg", "car.front_share", "car.wheelbase_mm", "car.track_mm"}),
    ],
)
def test_what_is_missing_of_the_car_depends_on_where_the_load_comes_from(source: str, asked: set[str]) -> None:
    assert asked <= set(reading(car__load_source=source).missing)
    assert ("car.gross_mass_kg" in reading(car__load_source=source).missing) == (source == "statics")


def test_empty_text_is_a_field_not_given() -> None:
    assert reading(jack__cup_bore_mm="  ", title="", service__wetness="").document == {}


def test_a_wrong_number_is_named_while_other_fields_are_still_missing() -> None:
    form = reading(jack__cup_bore_mm="2")
    assert "at least 20 mm" in message(form, "jack.cup_bore_mm")
    assert "jack.cup_depth_mm" in form.missing


def test_fields_that_contradict_each_other_are_named_while_others_are_missing() -> None:
    form = reading(jack__cup_depth_mm="12", jack__cup_corner_radius_mm="30", make__material="pla", make__process="cnc")
    assert "at most 11 mm" in message(form, "jack.cup_corner_radius_mm")
    assert "choose the process “printed”" in message(form, "make.material")
    assert "jack.cup_bore_mm" in form.missing


def test_groups_that_contradict_each_other_are_named_while_others_are_missing() -> None:
    form = reading(make__material="pur_90")
    assert "not offered for a slot" in message(form, "make.material")


def test_an_unreadable_field_is_wrong_and_not_missing() -> None:
    form = reading(jack__cup_bore_mm="about 68")
    assert "“about 68” is not a length" in message(form, "jack.cup_bore_mm")
    assert "jack.cup_bore_mm" not in form.missing
    assert form.typed == {"jack.cup_bore_mm": "about 68"}


def test_unknown_keys_and_keys_given_twice_are_refused_by_name() -> None:
    form = read_form([("jack.bore", "68"), ("title", "a"), ("title", "b"), ("units", "furlong"), ("version", "1")])
    assert {p.field for p in form.problems} == {"jack.bore", "title", "units", "version"}
    assert "not a field of this form" in message(form, "jack.bore")
    assert form.typed == {"title": "a"}


def test_texts_and_keys_beyond_all_measure_are_cut_off() -> None:
    form = read_form([("k" * 10_000, "x" * 10_000), ("make.cutter_diameters_mm", "9;" * 5_000), ("title", "t" * 5_000)])
    assert form.problems
    assert all(len(p.field) < 100 and len(p.message) < 400 and len(str(p.value)) <= 1000 for p in form.problems)


def test_every_field_of_the_document_can_be_typed_and_says_what_it_is() -> None:
    """Oracle: the models themselves; a field without title or kind would be a hole in the form."""
    assert len(FIELDS) > 60
    assert all(field.title and field.kind and field.help for field in FIELDS.values())
    assert all(field.choices for field in FIELDS.values() if field.kind == "choice")


@given(documents())
def test_any_document_typed_out_is_read_as_itself(document: dict[str, object]) -> None:
    """Oracle: the document's own reader."""
    form = read_form(list(typed_of_document(document).items()))
    assert form.measurements == read_measurements(document)


@given(st.lists(st.tuples(st.sampled_from(["units", "x", *FIELDS]), st.text(max_size=60)), max_size=8))
def test_no_text_makes_the_reader_fail(pairs: list[tuple[str, str]]) -> None:
    form = read_form(pairs)
    assert form.measurements is None
    assert {p.field for p in form.problems}.isdisjoint(form.missing)


@given(
    st.dictionaries(st.sampled_from(sorted(FIELDS)), st.sampled_from(["0", "1", "40", "9999", "cup", "printed", "¼"]))
)
def test_half_a_form_never_says_anything_about_a_number_that_nobody_gave(typed: dict[str, str]) -> None:
    form = read_form(list(typed.items()))
    assert not [p for p in form.problems if "nan" in p.message.split()]
    # The default of a choice can be at odds with what was typed: a material that is not printed, say.
    given_or_default = set(typed) | {key for key, field in FIELDS.items() if field.default is not None}
    assert {p.field for p in form.problems} <= given_or_default


def test_a_complete_form_has_measurements() -> None:
    form = read_form(list(typed_of_document(van()).items()))
    assert form.measurements == read_measurements(van())
    assert (form.missing, form.problems) == ((), ())
