"""What a fixed size costs: the same job once more with that size let go."""

from geometry.design import Design, let_go
from geometry.errors import NoPadFitsError
from geometry.letters import lower_first
from server import shown

_SAME = 0.005
"""Shares of a limit that read alike."""


def cost_of_fixing(design: Design, key: str, units: str) -> str:
    """What became worse or better by fixing one size, in a sentence."""
    dimension = key.removeprefix("fixed.")
    free = let_go(design, dimension)
    if isinstance(free, NoPadFitsError):
        return "Let go, it would leave no pad that fits."
    if free is None:
        return ""
    told = [*_failures(design, free), *_nearest(design, free), *_mass(design, free, units)]
    size = getattr(free.pad, dimension)
    would = f"Let go, it would be {shown.length(size, units)}." if size else "Let go, there would be none."
    return f"{would} Fixing it {'costs nothing' if not told else 'means: ' + '; '.join(told)}."


def sizes_behind(design: Design) -> dict[str, tuple[str, ...]]:
    """For each check that fails or is past its limit, the keys of the fixed sizes without which it would keep it."""
    past = [c for c in design.checks if c.verdict == "fail" or (c.verdict == "advice" and c.utilisation > 1)]
    if not past:
        return {}
    freed = {name: let_go(design, name) for name in design.measurements.fixed.given()}
    keeps = {
        name: {c.code for c in free.checks if c.verdict in {"pass", "not_applicable"}}
        for name, free in freed.items()
        if isinstance(free, Design)
    }
    return {c.code: tuple(f"fixed.{name}" for name, codes in keeps.items() if c.code in codes) for c in past}


def _failures(fixed: Design, free: Design) -> list[str]:
    """What fails by it, and what it mends."""
    now, then = ({c.code: c for c in d.failures} for d in (fixed, free))
    fails = [lower_first(c.title) for code, c in now.items() if code not in then]
    mends = [lower_first(c.title) for code, c in then.items() if code not in now]
    return [f"{title} fails" for title in fails] + [f"{title} no longer fails" for title in mends]


def _nearest(fixed: Design, free: Design) -> list[str]:
    """How near the pad comes to a limit, with and without it."""
    now, then = fixed.governing, free.governing
    if now.code == then.code and abs(now.utilisation - then.utilisation) < _SAME:
        return []
    title, other = (lower_first(c.title) for c in (now, then))
    instead = "" if now.code == then.code else f" by {other}"
    nearest, of_it = ("farthest past its limit", "times it") if now.utilisation > 1 else ("nearest its limit", "of it")
    return [
        f"{nearest} is {title} with {shown.share(now.utilisation)} {of_it}; free it would be"
        f" {shown.share(then.utilisation)}{instead}"
    ]


def _mass(fixed: Design, free: Design, units: str) -> list[str]:
    """How heavy it is, with and without it."""
    now, then = (shown.mass(d.mass_kg, units) for d in (fixed, free))
    return [] if now == then else [f"it weighs {now} instead of {then}"]
