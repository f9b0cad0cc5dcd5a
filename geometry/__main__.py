"""``python -m geometry FILE.json --out DIR``: a pad, its drawing and its models from one measurement document."""

import argparse
import json
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

from geometry import drawing
from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError, SeamrestError
from geometry.measurements import read_measurements
from geometry.model_label import file_stem
from geometry.model_process import write_models
from geometry.rules import Check
from geometry.sheet_facts import model_label, sheet_facts

EXIT_PASSES, EXIT_FAILS, EXIT_BAD_INPUT, EXIT_NO_PAD, EXIT_NOT_WRITTEN = 0, 1, 2, 3, 4
_VERDICTS = {
    "pass": "passes",
    "fail": "FAILS",
    "advice": "advice",
    "not_checked": "not checked",
    "not_applicable": "does not apply",
}


def main(arguments: list[str] | None = None) -> int:
    """Run the command; returns its exit status: 0 all estimates pass, 1 some fail, 2 bad input, 3 no pad fits, 4 not written."""
    parser = argparse.ArgumentParser(prog="python -m geometry", description="Make a lifting pad from measurements.")
    parser.add_argument("file", type=Path, help="a measurement document, JSON")
    parser.add_argument("--out", type=Path, required=True, help="the folder that the files are written to")
    asked = parser.parse_args(arguments)
    try:
        design = design_pad(read_measurements(_read(asked.file)))
    except BadMeasurementsError as error:
        for problem in error.problems:
            _complain(f"{problem.field}: {problem.message}")
        return EXIT_BAD_INPUT
    except NoPadFitsError as error:
        _complain(_no_pad(error))
        return EXIT_NO_PAD
    print(_summary(design))
    try:
        for path in _write(design, asked.out):
            print(f"wrote {path}")
    except (OSError, SeamrestError) as error:
        _complain(f"Not all files could be written: {error}")
        return EXIT_NOT_WRITTEN
    return EXIT_PASSES if design.fit_to_make else EXIT_FAILS


def _read(path: Path) -> dict[str, Any]:
    try:
        document = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, json.JSONDecodeError, RecursionError) as error:
        raise SystemExit(_complain(f"{path} cannot be read as a measurement document: {error}")) from error
    if not isinstance(document, dict):
        raise SystemExit(_complain(f"{path} must hold one JSON object, not a {type(document).__name__}"))
    return document


def _complain(words: str) -> int:
    print(words, file=sys.stderr)
    return EXIT_BAD_INPUT


def _no_pad(error: NoPadFitsError) -> str:
    return (
        f"No pad fits. {error.words}\n"
        f"  at least {error.lower.value_mm:.2f} mm: change {error.lower.field}\n"
        f"  at most  {error.upper.value_mm:.2f} mm: change {error.upper.field}"
    )


def _summary(design: Design) -> str:
    pad = "\n".join(
        f"  {name.removesuffix('_mm').replace('_', ' '):20} {mm:8.3f} mm" for name, mm in design.pad.as_dict().items()
    )
    checks = "\n".join(map(_line, design.checks))
    return f"{design.verdict_words}\n\nThe pad ({design.design_id})\n{pad}\n\nWhat was estimated, governing first\n{checks}\n"


def _line(check: Check) -> str:
    share = f"{check.utilisation:6.2f}" if check.finding else "     –"
    return f"  {_VERDICTS[check.verdict]:14} {share}  {check.title}: {check.words}"


def _write(design: Design, folder: Path) -> list[Path]:
    """Every file of a design, light ones first, each announced as it is made."""
    folder.mkdir(parents=True, exist_ok=True)
    label = model_label(design)
    # What draws is loaded here: whoever is told what is wrong with a document does not wait for it.
    sheet = drawing.draw(design.pad, sheet_facts(design, issued=date.today()))
    made: dict[str, Callable[[], str | bytes]] = {
        "json": lambda: json.dumps(design.to_dict(), indent=2, ensure_ascii=False, allow_nan=False),
        "svg": lambda: drawing.to_svg(sheet),
        "dxf": lambda: drawing.to_dxf(sheet),
        "pdf": lambda: drawing.to_pdf(sheet),
    }
    paths = []
    for ending, make in made.items():
        _progress(f"making {ending.upper()} …")
        path = folder / f"{file_stem(label)}.{ending}"
        content = make()
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
        paths.append(path)
    _progress("making the model (a few seconds) …")
    return paths + list(write_models(design.pad, label, folder, ("step", "stl")).values())


def _progress(words: str) -> None:
    print(words, file=sys.stderr, flush=True)


if __name__ == "__main__":
    sys.exit(main())
