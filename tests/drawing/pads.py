"""Pads of every proportion that can be built, and the facts of a sheet."""

from functools import cache

from hypothesis import strategies as st

from geometry.buildable import FUSED_MM, require_buildable
from geometry.drawing import Drawing, SheetFacts, draw
from geometry.geometrical import GEOMETRICAL_TOLERANCES
from geometry.pad import Pad

TYPICAL = Pad(
    seat_diameter_mm=67.2,
    seat_length_mm=14.0,
    seat_corner_radius_mm=5.0,
    stem_diameter_mm=0.0,
    stem_length_mm=0.0,
    body_diameter_mm=74.0,
    slot_width_mm=8.0,
    slot_depth_mm=16.5,
    web_mm=20.0,
    slot_corner_radius_mm=0.5,
    slot_mouth_chamfer_mm=1.0,
    edge_chamfer_mm=1.0,
)
LONG_STEM = TYPICAL.with_(seat_diameter_mm=57.6, stem_diameter_mm=18.0, stem_length_mm=35.0, body_diameter_mm=70.0)
TINY = TYPICAL.with_(
    seat_diameter_mm=24.0,
    seat_length_mm=6.0,
    seat_corner_radius_mm=2.0,
    body_diameter_mm=30.0,
    slot_width_mm=5.0,
    slot_depth_mm=8.0,
    web_mm=11.0,
)
HUGE = TYPICAL.with_(
    seat_diameter_mm=138.4,
    seat_length_mm=25.0,
    seat_corner_radius_mm=8.0,
    body_diameter_mm=145.0,
    slot_width_mm=10.0,
    web_mm=33.0,
)
DEEP = TYPICAL.with_(
    seat_diameter_mm=60.0,
    body_diameter_mm=66.0,
    slot_width_mm=6.0,
    slot_depth_mm=45.0,
    slot_corner_radius_mm=0.3,
    web_mm=18.0,
)
FLAT = TYPICAL.with_(
    seat_diameter_mm=100.0,
    seat_length_mm=3.0,
    seat_corner_radius_mm=1.0,
    stem_diameter_mm=10.0,
    stem_length_mm=5.0,
    body_diameter_mm=110.0,
    slot_width_mm=14.0,
    slot_depth_mm=5.0,
    web_mm=10.0,
    slot_corner_radius_mm=3.0,
    slot_mouth_chamfer_mm=2.0,
)
KNOWN = {"typical": TYPICAL, "long stem": LONG_STEM, "tiny": TINY, "huge": HUGE, "deep slot": DEEP, "flat": FLAT}

CAUTIONS = (
    ("WARNING", "Never be under a car that only a jack holds up. Set it on stands at once."),
    ("WARNING", "Lift on level, hard ground, wheels chocked, park brake on."),
    ("CAUTION", "Inspect before each use; discard when cracked, dished or swollen."),
)


def facts(**changes: object) -> SheetFacts:
    """Ordinary facts, some of them changed."""
    ordinary: dict[str, object] = {
        "title": "Lifting pad, left front point",
        "design_id": "K7Q3M9T2XW",
        "revision": "A",
        "date": "2026-11-25",
        "material": "POM-C (acetal copolymer)",
        "mass_kg": 0.187,
        "design_load_n": 11416.0,
        "moisture": "sizes at 20 °C, machined from dry stock; used in room air",
        "temperature": "−10 to 40 °C",
        "creator": "A person",
        "owner": "A workshop",
        "cautions": CAUTIONS,
        "fit_to_make": True,
    }
    return SheetFacts(**(ordinary | changes))  # type: ignore[arg-type]


def shown_sizes(pad: Pad) -> dict[str, float]:
    """What a drawing must show of a pad: all that it has, but not what says the same again: a round plug's length, the overall
    height of a pad without a foot below its seat, the top of a head that adds nothing to the web."""
    is_own = {
        "overall_height_mm": pad.foot_depth_mm > 0,
        "top_height_mm": pad.has_slot or pad.has_plug,
        "plug_length_mm": not pad.plug_is_round,
        "plug_corner_radius_mm": not pad.plug_is_round,
        "cross_slot_width_mm": pad.cross_slot_width_mm != pad.slot_width_mm,
    }
    return {name: value for name, value in pad.as_dict().items() if value > 0 and is_own.get(name, True)}


MARKED = (
    *("seat_diameter_mm", "seat_length_mm", "seat_corner_radius_mm", "slot_width_mm", "slot_depth_mm", "web_mm"),
    *("slot_corner_radius_mm", "slot_mouth_chamfer_mm"),
    *(zone.name for zone in GEOMETRICAL_TOLERANCES),
)
"""What an estimate depends on in most cases."""


@cache
def laid_out(pad: Pad, sheet: SheetFacts) -> Drawing:
    """The drawing of a pad on a sheet, laid out once for all who only look at it: one may take some seconds."""
    return draw(pad, sheet)


def drawn(pad: Pad, **changes: object) -> Drawing:
    """The same with such facts."""
    return laid_out(pad, facts(**changes))


def _step(low: float, high: float, step: float = 0.1) -> st.SearchStrategy[float]:
    return st.integers(round(low / step), max(round(low / step), int(high / step))).map(lambda n: round(n * step, 3))


@st.composite
def pads(draw: st.DrawFn) -> Pad:
    """Any pad that can be built, from thumbnail to dinner plate, with and without a stem."""
    seat = draw(_step(16, 150))
    corner = draw(_step(0, min(12, seat / 4)))
    length = draw(_step(max(2.0, corner), max(corner, 30.0)))
    edge = draw(_step(0, min(3.0, seat / 12)))
    body = draw(_step(seat + max(FUSED_MM, 2 * edge) + 0.2, seat + 30))
    mouth = draw(_step(0, 2))
    slot = draw(_step(2, max(2.0, min(30.0, body - 2 * (edge + mouth + FUSED_MM + 1)))))
    depth = draw(_step(mouth + 1.2, 45))
    floor = draw(_step(0, min(3.0, slot / 2, depth - mouth)))
    web = draw(_step(max(length + edge + 0.2, length + 2 * edge + FUSED_MM - depth + 0.2), length + 60))
    stem = draw(st.one_of(st.just(0.0), _step(3, max(3.0, seat - 2 * corner - FUSED_MM))))
    stem_length = draw(_step(2, 60)) if stem else 0.0
    pad = Pad(
        seat_diameter_mm=seat,
        seat_length_mm=length,
        seat_corner_radius_mm=corner,
        stem_diameter_mm=stem,
        stem_length_mm=stem_length,
        body_diameter_mm=body,
        slot_width_mm=slot,
        slot_depth_mm=depth,
        web_mm=web,
        slot_corner_radius_mm=floor,
        slot_mouth_chamfer_mm=mouth,
        edge_chamfer_mm=edge,
    )
    require_buildable(pad)
    return pad


@st.composite
def sheets(draw: st.DrawFn) -> SheetFacts:
    """Any kind of sheet: units, projection, paper, fit or not, few or many words."""
    fit = draw(st.booleans())
    return facts(
        units=draw(st.sampled_from(["mm", "in", "in_fraction", "dual"])),
        projection=draw(st.sampled_from(["first", "third"])),
        paper=draw(st.sampled_from(["A4", "A3", "letter", "tabloid"])),
        critical=draw(st.sampled_from([(), MARKED])),
        fit_to_make=fit,
        not_fit_words="" if fit else "The slot floor carries 12 % more than acetal bears for minutes.",
        cautions=CAUTIONS * draw(st.integers(0, 2)),
        title=draw(
            st.sampled_from(
                ["Pad", "A long title that goes on about van, wheel, point and season until the end of its line"]
            )
        ),
    )
