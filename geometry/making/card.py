"""What a route card is made of: operations with their holding, tool, speed, passes and dial readings."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from geometry.drawing.model import Box, Layer, Line, Point, Shape, View
from geometry.making.wording import Sentence, joined
from geometry.provenance import Source

Axis = Literal["diameter", "bore", "length"]
"""What a pass changes: a turned diameter, a bore that it widens, a turned length."""
Kind = Literal["rough", "finish"]
AT_THE_SAW, FIRST, SECOND, ON_TOP, FOR_THE_HOLE, AT_THE_BENCH = range(6)
"""Set-ups by number: two on the lathe, one for all that is milled on top, one for the stem's cross-hole."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """Speed and feed of one operation on this machine."""

    wanted_speed_m_min: float
    diameter_mm: float
    """The diameter that the speed is reckoned at: of the work in turning, of the cutter in milling."""
    wanted_rpm: float
    rpm: float
    """To set: rounded down to a speed of the machine, or its slowest."""
    speed_m_min: float
    """What that makes at the diameter."""
    is_too_fast: bool
    """Even the machine's slowest speed is above the wanted one."""
    feed_mm_rev: float | None = None
    table_feed_mm_min: float | None = None
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Pass:
    """One cut: from what to what, how far the tool moves in, and what its dial then reads."""

    number: int
    kind: Kind
    axis: Axis
    before_mm: float
    after_mm: float
    """Diameter, or length still standing."""
    infeed_mm: float
    """Travel of the tool into the work."""
    dial_step_mm: float
    """How far to advance the dial for this pass."""
    dial_reading_mm: float
    """What the dial reads then, counted from zero where the tool first touched."""
    length_mm: float
    """Length of the cut."""
    time_min: float


@dataclass(frozen=True, slots=True)
class Label:
    """A few words at a point of a picture."""

    at: Point
    words: Sentence


@dataclass(frozen=True, slots=True)
class Picture:
    """A simple picture in model mm, y up, with labels."""

    view: View
    labels: tuple[Label, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Figures in rows; a column in mm is shown in the shop's unit."""

    title: str
    columns: tuple[tuple[str, str], ...]
    """(heading, unit) of each column; the unit is mm, ° or empty."""
    rows: tuple[tuple[float | str, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Operation:
    """One thing to do, complete enough to be done from the card alone."""

    title: str
    set_up: int
    holding: Sentence
    tools: tuple[Sentence, ...]
    """Each tool by itself, named alike wherever it is used."""
    steps: tuple[Sentence, ...]
    why: Sentence | None = None
    cut: Cut | None = None
    finish_cut: Cut | None = None
    """Speed and feed of the finishing passes, where they differ."""
    passes: tuple[Pass, ...] = ()
    tables: tuple[Table, ...] = ()
    picture: Picture | None = None
    watch: tuple[Sentence, ...] = ()
    leaves_mm: Mapping[str, float] = field(default_factory=dict)
    """Dimensions of the pad that are finished after this operation."""
    roughness_um: float | None = None
    """Estimated average roughness of the finished surface."""
    other_time_min: float = 0.0
    """Clamping, measuring and hand work on each part: estimated by judgement."""
    setting_time_min: float = 0.0
    """Setting a machine, once for a run of parts: estimated by judgement."""
    extra_cutting_min: float = 0.0
    """Time in the cut of passes that stand in a table of their own."""
    sources: tuple[tuple[str, Source], ...] = ()
    """What this operation alone rests on."""

    @property
    def tool(self) -> Sentence:
        """All its tools in one line."""
        return joined(self.tools)

    @property
    def cutting_time_min(self) -> float:
        """Time in the cut."""
        return sum(p.time_min for p in self.passes) + self.extra_cutting_min

    @property
    def each_time_min(self) -> float:
        """Estimated time for every part of a run."""
        return self.cutting_time_min + self.other_time_min

    @property
    def time_min(self) -> float:
        """Estimated time of the whole operation for a single part."""
        return self.each_time_min + self.setting_time_min


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolEntry:
    """One tool of the list, with the operations that use it."""

    number: int
    name: Sentence
    operations: tuple[int, ...]


def tools_of(operations: tuple[Operation, ...]) -> tuple[ToolEntry, ...]:
    """Every tool once, in the order of first use; operations are counted from 1."""
    uses: dict[str, tuple[Sentence, list[int]]] = {}
    for number, operation in enumerate(operations, start=1):
        for tool in operation.tools:
            uses.setdefault(tool.shown(), (tool, []))[1].append(number)
    return tuple(
        ToolEntry(number=i, name=name, operations=tuple(used)) for i, (name, used) in enumerate(uses.values(), start=1)
    )


def watched_once(operations: Iterable[Operation]) -> tuple[Operation, ...]:
    """The same operations, each warning left only where it matters first."""
    seen: set[str] = set()
    found = []
    for operation in operations:
        fresh = tuple(words for words in operation.watch if words.template not in seen)
        seen |= {words.template for words in fresh}
        found.append(replace(operation, watch=fresh))
    return tuple(found)


def picture(name: str, shapes: list[Shape], labels: tuple[Label, ...] = ()) -> Picture:
    """A picture of lines and arcs, its box from the straight lines' ends."""
    points = [point for shape in shapes if isinstance(shape, Line) for point in (shape.start, shape.end)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Picture(View(name, tuple(shapes), Box(min(xs), min(ys), max(xs), max(ys))), labels)


def rectangle(left: float, bottom: float, right: float, top: float, layer: Layer) -> list[Shape]:
    """The four sides of an upright frame, as lines of one layer."""
    corners = [(left, bottom), (right, bottom), (right, top), (left, top)]
    return [Line(a, b, layer) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
