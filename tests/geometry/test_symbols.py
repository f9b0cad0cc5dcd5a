"""The table of symbols: none missing, none idle, and the same unit wherever a symbol is used."""

from geometry import formulas
from geometry.bound_rules import BOUND_RULES
from geometry.calculation.as_data import sheet_data
from geometry.calculation.sheet import calculation_sheet
from geometry.design import design_pad
from geometry.measurements import read_measurements
from geometry.rules import CHECK_RULES
from geometry.symbols import LOCAL, SYMBOLS, TOLERANCE_OF, dimension_title, symbol_in
from tests.documents import SAMPLES, sample, van


def of_rules() -> dict[str, set[str]]:
    """The symbols of every bound and check, with the rules that use them."""
    found: dict[str, set[str]] = {}
    for bound in BOUND_RULES:
        for name in formulas.symbols(bound.formula):
            found.setdefault(name, set()).add(bound.dimension)
    for check in CHECK_RULES.values():
        for name in (*formulas.symbols(check.formula), *formulas.symbols(check.limit_formula)):
            found.setdefault(name, set()).add(check.code)
    return found


def of_sheets() -> set[str]:
    """The symbols of the lines of sheets of every kind of load, of a stem and of none, and of a stuck jack."""
    documents = [sample(p.stem) for p in SAMPLES.glob("*.json") if "no_pad" not in p.stem]
    documents += [
        van(car={"load_source": "stated", "load_kg": 700}),
        van(seam__edge_height_flat_mm=170, seam__roll_in_obstacle_mm=5, jack__rim_height_high_mm=450),
        van(jack__floor_boss_height_mm=4, jack__floor_boss_diameter_mm=20),
        van(seam__local_thickness_mm=7, seam__local_length_mm=20, make__body="two_flats"),
        van(make__slots="crossed"),
        van(car={**sample("mobile_library_van")["car"], "lift_needed_mm": 160.5}),
    ]
    found: set[str] = set()
    for document in documents:
        lines = sheet_data(calculation_sheet(design_pad(read_measurements(document))))["lines"]
        found |= {line["symbol"] for part in lines.values() for line in part}
    return found


def test_every_symbol_of_a_rule_has_a_meaning() -> None:
    assert of_rules().keys() <= SYMBOLS.keys()


def test_no_symbol_of_the_table_is_idle() -> None:
    assert SYMBOLS.keys() <= of_rules().keys() | of_sheets()


def test_a_local_meaning_is_that_of_a_symbol_its_rule_uses() -> None:
    used = of_rules()
    for rule, symbols in LOCAL.items():
        assert all(rule in used[name] for name in symbols), rule


def test_every_check_with_a_tolerance_says_whose_it_is() -> None:
    checks = {rule for rule in of_rules()["tol"] if rule in CHECK_RULES}
    assert checks == set(TOLERANCE_OF)


def test_meanings_are_words_without_a_full_stop() -> None:
    for name, symbol in SYMBOLS.items():
        assert len(symbol.meaning) > 3, name
        assert not symbol.meaning.endswith("."), name


def test_a_tolerance_is_named_after_its_dimension() -> None:
    assert symbol_in("web_mm", "tol").meaning == f"general tolerance of the {dimension_title('web_mm')}"
