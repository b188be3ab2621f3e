"""The command that compares: every opening's hinge widths side by side, as text or as data."""

import argparse
import json
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.cli.shared import (
    add_strict,
    load_job,
    refused,
    result_header,
    selected,
    strict_status,
    studied,
)
from configurator.model import Job
from configurator.units import Display

if TYPE_CHECKING:
    from configurator.rules.finding import Finding
    from configurator.study import Study
    from configurator.study.tolerance.result import ToleranceResult


def add_compare_command(commands: Any) -> None:
    """Add `compare` to the command line's commands."""
    compare = commands.add_parser(
        "compare",
        help="print every opening's widths side by side",
        epilog="example: opening-configurator compare job.json --mark 112A --widths",
    )
    compare.add_argument("file", type=Path, metavar="FILE", help="the job; - is standard input")
    compare.add_argument("--mark", help="only the opening with this mark")
    compare.add_argument("--json", action="store_true", help="print results as data")
    compare.add_argument("--widths", action="store_true", help="add what every stock hinge width would do")
    compare.add_argument("--metric", action="store_true", help="show millimetres; data stay in inches")
    add_strict(compare)
    compare.add_argument("--sure", action="store_true", help="add how sure each is, tolerances considered")
    compare.set_defaults(run=_compare)


def _compare(options: argparse.Namespace) -> tuple[str, int]:
    """Return the comparison as text or data, and the exit status."""
    job = load_job(options.file)
    openings = selected(job, options.mark)
    studies = [studied(job, opening) for opening in openings]
    status = strict_status(options, (found.severity for each in studies for found in each.all_findings()))
    whole = _job_findings(studies) if options.mark is None else ()
    results = [_tolerances_of(job, each) if options.sure else () for each in studies]
    if options.json:
        data = result_header("comparison") | {
            "openings": [
                _with_tolerances(_as_data(each, options.widths), one)
                for each, one in zip(studies, results, strict=True)
            ],
            "job_findings": [finding.as_data() for finding in whole],
        }
        return json.dumps(data, allow_nan=False) + "\n", status
    from configurator.export.plain_text import job_as_text, studies_as_text

    shown = Display(metric=options.metric)
    widths = _widths_text(studies, shown) if options.widths else ""
    tolerances = _tolerance_text(studies, results, shown) if options.sure else ""
    return studies_as_text(studies, shown) + widths + tolerances + job_as_text(whole, shown), status


def _tolerances_of(job: Job, study: "Study") -> "tuple[ToleranceResult, ...]":
    """Work out how sure every candidate is; tolerances that leave no door are refused as input."""
    from configurator.study.tolerance.analysis import tolerance_results

    try:
        return tolerance_results(study)
    except ValueError as error:
        field = f"openings[{job.openings.index(study.opening)}].tolerances"
        raise refused(field, f"{error} (opening {study.opening.mark})") from None


def _with_tolerances(data: dict[str, Any], results: "Sequence[ToleranceResult]") -> dict[str, Any]:
    """Add to every candidate how sure it is, where that was asked for."""
    if results:
        from configurator.study.tolerance.analysis import tolerance_data

        for candidate, one in zip(data["candidates"], results, strict=True):
            candidate["how_sure"] = tolerance_data(one)
    return data


def _tolerance_text(
    studies: "list[Study]", results: "Sequence[Sequence[ToleranceResult]]", shown: Display
) -> str:
    from configurator.export.plain_text import tolerance_as_text

    return "".join(
        tolerance_as_text(each.opening.mark, one, shown) for each, one in zip(studies, results, strict=True)
    )


def _as_data(study: "Study", with_widths: bool) -> dict[str, Any]:
    if not with_widths:
        return study.as_data()
    from configurator.study.widths.leaf_widths import widths_of

    return study.as_data() | {"widths": [leaf.as_data() for leaf in widths_of(study)]}


def _widths_text(studies: "list[Study]", shown: Display) -> str:
    from configurator.export.plain_text import widths_as_text
    from configurator.study.widths.leaf_widths import widths_of

    return "".join(widths_as_text(each.opening.mark, widths_of(each), shown) for each in studies)


def _job_findings(studies: "list[Study]") -> "tuple[Finding, ...]":
    from configurator.study import job_findings

    return job_findings(studies)
