"""Documents of a jack with a bore for a post, with every head: one ordinary one, and strategies over the whole domain."""

from typing import Any

from hypothesis import strategies as st

from geometry.feet.post.fields import PostJack
from geometry.heads.cushion.fields import FlatRail
from geometry.heads.plug.fields import Pocket
from geometry.quantity import Group
from tests.documents import cars, makes, seams, services

HEADS = ("slot", "cushion", "plug")
FACES: dict[str, dict[str, Any]] = {
    "slot": {"seam": {"thickness_mm": 3.0, "height_mm": 19, "edge_height_mm": 205}},
    "cushion": {"rail": {"face_width_mm": 60, "face_length_mm": 200, "face_height_mm": 205}},
    "plug": {"pocket": {"hole_width_mm": 24, "hole_depth_mm": 30, "rim_width_mm": 12, "rim_height_mm": 205}},
}


def posted(head: str = "slot", *, pinned: bool = True, **changes: Any) -> dict[str, Any]:
    """An ordinary bore in a tube of 62 mm; ``changes`` are dotted keys with ``__`` for the dot."""
    document: dict[str, Any] = {
        "foot": "post",
        "head": head,
        "jack": {
            "post_bore_mm": 35,
            "post_bore_depth_mm": 80,
            "bore_rim_diameter_mm": 62,
            "rated_load_kg": 2000,
            "rim_height_low_mm": 110,
            **({"pin_diameter_mm": 8, "pin_distance_mm": 20} if pinned else {}),
        },
        "car": {"gross_mass_kg": 1500},
    } | {group: dict(fields) for group, fields in FACES[head].items()}
    for key, value in changes.items():
        group, name = key.split("__")
        document.setdefault(group, {})[name] = value
    return document


def _within(group: type[Group], name: str, least: float = -1e9, most: float = 1e9) -> st.SearchStrategy[float]:
    """Values of a field over its whole domain, or the part of it between ``least`` and ``most``."""
    metadata = group.model_fields[name].metadata
    low = max(least, next(m.ge for m in metadata if hasattr(m, "ge")))
    high = min(most, next(m.le for m in metadata if hasattr(m, "le")))
    return st.floats(low, max(low, high), allow_nan=False).map(lambda x: min(max(low, high), max(low, round(x, 2))))


@st.composite
def post_jacks(draw: st.DrawFn) -> dict[str, Any]:
    """A jack with a bore over the whole domain of its fields."""
    bore = draw(_within(PostJack, "post_bore_mm"))
    low = draw(_within(PostJack, "rim_height_low_mm"))
    jack: dict[str, Any] = {
        "post_bore_mm": bore,
        "bore_rim_diameter_mm": draw(_within(PostJack, "bore_rim_diameter_mm", least=bore + 4.01)),
        "rated_load_kg": draw(_within(PostJack, "rated_load_kg")),
        "rim_height_low_mm": low,
    }
    deepest = 200.0
    if low > 9 and draw(st.booleans()):
        deepest = draw(_within(PostJack, "post_bore_depth_mm", most=low - 0.5))
        jack["post_bore_depth_mm"] = deepest
    if deepest > 5 and draw(st.booleans()):
        jack["pin_diameter_mm"] = draw(_within(PostJack, "pin_diameter_mm", most=int(bore * 33) / 100))
        jack["pin_distance_mm"] = draw(_within(PostJack, "pin_distance_mm", most=deepest - 0.5))
    if draw(st.booleans()):
        jack["rim_height_high_mm"] = draw(_within(PostJack, "rim_height_high_mm", least=low + 10))
    return jack


def _rails() -> st.SearchStrategy[dict[str, Any]]:
    return st.fixed_dictionaries(
        {name: _within(FlatRail, name) for name in ("face_width_mm", "face_length_mm", "face_height_mm")},
        optional={"roll_in_obstacle_mm": _within(FlatRail, "roll_in_obstacle_mm")},
    )


@st.composite
def _pockets(draw: st.DrawFn) -> dict[str, Any]:
    pocket: dict[str, Any] = {
        name: draw(_within(Pocket, name)) for name in ("hole_width_mm", "hole_depth_mm", "rim_height_mm")
    }
    if draw(st.booleans()):
        pocket |= {"shape": "rectangular", "hole_length_mm": draw(_within(Pocket, "hole_length_mm"))}
    return pocket | draw(st.fixed_dictionaries({}, optional={"rim_width_mm": _within(Pocket, "rim_width_mm")}))


@st.composite
def post_documents(draw: st.DrawFn, head: str | None = None) -> dict[str, Any]:
    """Any document of a post that the rules of the fields let through, with any head."""
    head, service = head or draw(st.sampled_from(HEADS)), draw(services())
    faces: dict[str, st.SearchStrategy[dict[str, Any]]] = {"slot": seams(), "cushion": _rails(), "plug": _pockets()}
    group = {"slot": "seam", "cushion": "rail", "plug": "pocket"}[head]
    return {
        "foot": "post",
        "head": head,
        "jack": draw(post_jacks()),
        group: draw(faces[head]),
        "car": draw(cars()),
        "service": service,
        "make": draw(makes(hold=service["hold"])),
    }


@st.composite
def roomy_post_documents(draw: st.DrawFn) -> dict[str, Any]:
    """Documents near real tubes and cars, most of which have a pad, in any service and of any material."""
    head, service = draw(st.sampled_from(HEADS)), draw(services())
    bore = draw(st.floats(22, 60).map(lambda x: round(x, 1)))
    document = posted(head, pinned=False, jack__post_bore_mm=bore)
    jack = document["jack"]
    jack["bore_rim_diameter_mm"] = round(bore + draw(st.floats(14, 60)), 1)
    jack["post_bore_depth_mm"] = round(bore + draw(st.floats(10, 40)), 1)
    if draw(st.booleans()):
        jack["pin_diameter_mm"] = draw(st.floats(3, bore / 5).map(lambda x: round(x, 1)))
        jack["pin_distance_mm"] = draw(st.floats(14, bore / 2 + 10).map(lambda x: round(x, 1)))
    height = {"slot": "edge_height_mm", "cushion": "face_height_mm", "plug": "rim_height_mm"}[head]
    group = next(iter(FACES[head]))
    document[group][height] = jack["rim_height_low_mm"] + draw(st.floats(60, 300).map(round))
    return document | {
        "car": {"gross_mass_kg": draw(st.floats(900, 2400).map(round))},
        "service": service,
        "make": draw(makes(hold=service["hold"])),
    }
