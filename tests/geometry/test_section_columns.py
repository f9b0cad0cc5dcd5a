from fractions import Fraction
from itertools import combinations, pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.drawing.section_columns import CLOSEST, placed_beside, spread, told_apart, without_crossings
from geometry.outline import Point

_X = 500.0


def _turn(a: Point, b: Point, c: Point) -> Fraction:
    (ax, ay), (bx, by), (cx, cy) = ((Fraction(p[0]), Fraction(p[1])) for p in (a, b, c))
    return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)


def leaders_cross(a: tuple[Point, Point], b: tuple[Point, Point]) -> bool:
    """Whether two segments properly cross, in exact arithmetic: each separates the other's ends."""
    return _turn(*a, b[0]) * _turn(*a, b[1]) < 0 and _turn(*b, a[0]) * _turn(*b, a[1]) < 0


def _targets(step: float) -> st.SearchStrategy[list[Point]]:
    """Points on a coarse grid, so that many lie in one line."""
    point = st.tuples(st.integers(0, 8).map(lambda i: i * step), st.integers(-4, 8).map(lambda i: i * step))
    return st.lists(point, min_size=1, max_size=10, unique=True)


@settings(deadline=None)
@given(_targets(50.0) | _targets(7.3))
def test_leaders_to_a_column_never_cross(targets: list[Point]) -> None:
    """Oracle: exact orientation of the four ends of every two leaders."""
    ends = placed_beside(targets, pitch=44, low=0, high=520, x=_X)
    leaders = [(target, (_X, y)) for target, y in zip(targets, ends, strict=True)]
    assert not any(leaders_cross(a, b) for a, b in combinations(leaders, 2))


@settings(deadline=None)
@given(_targets(50.0), st.booleans())
def test_either_sweep_alone_crosses_nothing_on_either_side(targets: list[Point], is_from_top: bool) -> None:
    """Oracle: exact orientation; the column may stand left or right of the targets."""
    for x in (-60.0, 460.0):
        places = [i * 40.0 for i in range(len(targets))]
        ends = without_crossings(targets, places=places, x=x, is_from_top=is_from_top)
        leaders = [(target, (x, y)) for target, y in zip(targets, ends, strict=True)]
        assert not any(leaders_cross(a, b) for a, b in combinations(leaders, 2))


@settings(deadline=None)
@given(_targets(50.0) | _targets(0.9))
def test_balloons_of_a_column_keep_their_distance_and_stay_within_it(targets: list[Point]) -> None:
    ends = sorted(placed_beside(targets, pitch=44, low=10, high=520, x=_X))
    assert ends[0] >= 10 - 1e-9
    assert ends[-1] <= 520 + 1e-9
    assert all(b - a >= 44 - 1e-9 for a, b in pairwise(ends))


@settings(deadline=None)
@given(st.lists(st.floats(-1000, 2000), min_size=1, max_size=10))
def test_what_is_far_apart_already_stays_where_it_is(wanted: list[float]) -> None:
    """Oracle: with gaps of at least the pitch, inside the limits, nothing has a reason to move."""
    apart = [sum(abs(w) + 44 for w in wanted[: i + 1]) for i in range(len(wanted))]
    placed = spread(apart, pitch=44, low=0, high=1e6)
    assert all(abs(a - b) < 1e-6 for a, b in zip(placed, apart, strict=True))


@settings(deadline=None)
@given(st.lists(st.tuples(st.floats(0, 20), st.floats(0, 20)), max_size=12))
def test_no_two_dots_hide_each_other(points: list[Point]) -> None:
    kept = told_apart(points)
    for (ax, ay), (bx, by) in combinations(kept, 2):
        assert max(abs(ax - bx), abs(ay - by)) >= CLOSEST - 1e-9
