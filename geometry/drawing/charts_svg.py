"""A laid-out line chart as SVG: classes named for their meaning, plain attributes as fallback, no style anywhere."""

from collections.abc import Iterable
from html import escape

from geometry.drawing.charts import BOTTOM, LEFT, LINE, TEXT, Band, Chart, Laid, Marker, Series, Words, lay_out
from geometry.outline import Point

PAPER, INK, PENCIL, HAIRLINE = "#fffdf7", "#1d262d", "#55636d", "#d8d0be"


def svg_of(chart: Chart, *, width: float, prefix: str) -> str:
    """A chart as a picture that needs no style sheet; classes let a page recolour it."""
    laid = lay_out(chart, width=width)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="chart" viewBox="0 0 {_n(width)} {_n(laid.height)}"'
        f' width="{_n(width)}" height="{_n(laid.height)}" role="img" aria-labelledby="{prefix}-title {prefix}-words"'
        f' font-family="sans-serif" font-size="{_n(TEXT)}">',
        f'<title id="{prefix}-title">{escape(chart.title)}</title>',
        f'<desc id="{prefix}-words">{escape(chart.description)}</desc>',
        f'<defs><pattern id="{prefix}-hatch" width="7" height="7" patternUnits="userSpaceOnUse"'
        f' patternTransform="rotate(45)"><path class="chart-hatch" d="M0 0V7" stroke="{PENCIL}" stroke-width="0.6"/>'
        "</pattern></defs>",
        _axes(laid),
        "".join(_band(laid, band, prefix) for band in chart.bands),
        "".join(_marker_line(laid, marker, words) for marker, words in zip(chart.markers, laid.above, strict=True)),
        "".join(_line(laid, series) for series in chart.series),
        "".join(_words(words) for words in (*laid.above, *laid.beside)),
        "".join(
            f'<text class="chart-note" x="{_n(LEFT)}" y="{_n(laid.area.bottom + BOTTOM + LINE * i + 12)}" fill="{PENCIL}">'
            f"{escape(note)}</text>"
            for i, note in enumerate(chart.notes)
        ),
        "</svg>",
    ]
    return "".join(parts)


def _axes(laid: Laid) -> str:
    chart, area = laid.chart, laid.area
    rows = []
    for tick in chart.y.ticks:
        y = laid.at((chart.x.low, tick))[1]
        rows.append(_stroke("chart-grid", HAIRLINE, (area.left, y), (area.right, y), "0.8"))
        rows.append(_number(_tick(tick), area.left - 6, y + 4.5, "end"))
    for tick in chart.x.ticks:
        x = laid.at((tick, chart.y.low))[0]
        rows.append(_stroke("chart-axis", PENCIL, (x, area.bottom), (x, area.bottom + 4), "1"))
        rows.append(_number(_tick(tick), x, area.bottom + 18, "middle"))
    rows.append(_stroke("chart-axis", PENCIL, (area.left, area.bottom), (area.right, area.bottom), "1"))
    rows.append(_number(chart.y.words, 2, 14, "start"))
    rows.append(_number(chart.x.words, area.right, area.bottom + 35, "end"))
    return "".join(rows)


def _number(text: str, x: float, y: float, anchor: str) -> str:
    return f'<text class="chart-number" x="{_n(x)}" y="{_n(y)}" text-anchor="{anchor}" fill="{PENCIL}">{escape(text)}</text>'


def _stroke(name: str, colour: str, a: Point, b: Point, width: str) -> str:
    return f'<path class="{name}" d="{_path((a, b))}" fill="none" stroke="{colour}" stroke-width="{width}"/>'


def _band(laid: Laid, band: Band, prefix: str) -> str:
    around = [laid.at(p) for p in (*band.upper, *reversed(band.lower))]
    return f'<path class="chart-band" d="{_path(around)}Z" fill="url(#{prefix}-hatch)"/>'


def _marker_line(laid: Laid, marker: Marker, words: Words) -> str:
    x, bottom = laid.at((marker.x, laid.chart.y.low))
    return (
        f'<path class="chart-marker" d="{_path(((x, bottom), (x, words.box.top + 2)))}" fill="none" stroke="{INK}"'
        ' stroke-width="0.8" stroke-dasharray="1 3"/>'
    )


def _line(laid: Laid, series: Series) -> str:
    dashes = f' stroke-dasharray="{series.dashes}"' if series.dashes else ""
    d = _path([laid.at(p) for p in series.points])
    return (
        f'<path class="chart-line" d="{d}" fill="none" stroke="{INK}" stroke-width="{_n(series.width)}"'
        f' stroke-linejoin="round"{dashes}/>'
    )


def _words(words: Words) -> str:
    box = words.box
    return (
        f'<text class="chart-words" x="{_n(box.left)}" y="{_n(box.bottom - 3.5)}" fill="{INK}" stroke="{PAPER}"'
        f' stroke-width="3" stroke-linejoin="round" paint-order="stroke">{escape(words.text)}</text>'
    )


def _path(points: Iterable[Point]) -> str:
    return "M" + "L".join(f"{_n(x)} {_n(y)}" for x, y in points)


def _tick(value: float) -> str:
    return f"{value:g}".replace("-", "−")


def _n(value: float) -> str:
    """A coordinate, no finer than a hundredth of a page unit."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
