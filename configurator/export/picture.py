"""A plan as a file: PNG, SVG or PDF, the same bytes every time for the same opening."""

from collections.abc import Callable, Mapping
from io import BytesIO
from pathlib import Path
from typing import Any

from matplotlib import rc_context
from matplotlib.figure import Figure

from configurator.drawing.sheet import plan_sheet
from configurator.export.figure import sheet_figure
from configurator.model import JobFacts
from configurator.project_file import write_whole
from configurator.study.records import Study
from configurator.units import Display

SIZE = (864.0, 540.0)
"""Points: 12 by 7-1/2 in."""
PNG_DPI = 144.0
_NO_FACTS = JobFacts()


def write_plan(
    study: Study,
    path: Path,
    angle: float,
    display: Display,
    dark: bool = False,
    job: JobFacts = _NO_FACTS,
    plain: bool = False,
    swept: bool = False,
) -> None:
    """Write every candidate's plan side by side with the leaves at `angle` degrees, on a sheet of one size.

    The format goes by the ending: .png, .svg or .pdf. The foot names the opening and what is known of the
    job; `plain` letters it in plain words, `swept` shows what leaf and hardware sweep. Raises
    ValueError for any other ending, OSError when the file cannot be written.
    """
    write = _WRITERS.get(path.suffix.lower())
    if write is None:
        raise ValueError(f"a picture ends in {', '.join(_WRITERS)}; {path.name} was given")
    write(sheet_figure(plan_sheet(study, display, *SIZE, job, plain, swept), angle, dark), path)


def _png(figure: Figure, path: Path) -> None:
    _save(figure, path, "png", dpi=PNG_DPI, metadata={"Software": None})


def _svg(figure: Figure, path: Path) -> None:
    # Names inside the file are hashed from a salt that is random unless it is set.
    with rc_context({"svg.hashsalt": "plan"}):
        _save(figure, path, "svg", metadata={"Date": None, "Creator": None})


def _pdf(figure: Figure, path: Path) -> None:
    _save(figure, path, "pdf", metadata={"CreationDate": None, "Producer": None, "Creator": None})


def _save(figure: Figure, path: Path, kind: str, **options: Any) -> None:
    written = BytesIO()
    figure.savefig(written, format=kind, facecolor=figure.get_facecolor(), edgecolor="none", **options)
    write_whole(path, written.getvalue())


_WRITERS: Mapping[str, Callable[[Figure, Path], None]] = {".png": _png, ".svg": _svg, ".pdf": _pdf}
