"""A study as plain text for a terminal: the comparison, then the findings."""

import textwrap
from collections.abc import Sequence

from configurator.drawing.comparison import Comparison, comparisons
from configurator.drawing.hinge_parts import cited
from configurator.rules.finding import Finding
from configurator.study import Study
from configurator.units import Display

WIDTH = 110


def studies_as_text(studies: Sequence[Study], display: Display | None = None) -> str:
    """Return the comparison and findings of each study, one after the other."""
    shown = display or Display()
    return "\n".join(_study_text(study, shown) for study in studies)


def job_as_text(found: Sequence[Finding]) -> str:
    """Return what there is to say of the openings together; empty where there is nothing."""
    if not found:
        return ""
    heading = "The whole job"
    lines = ["", heading, "=" * len(heading), *(line for one in found for line in _finding_lines(one))]
    return "\n".join(lines) + "\n"


def _study_text(study: Study, display: Display) -> str:
    opening = study.opening
    size = display.opening(opening.size.width, opening.size.height)
    heading = "  ".join(
        part for part in (opening.mark, opening.location or "", size, opening.hand or "") if part
    )
    lines = [heading, "=" * len(heading)]
    for comparison in comparisons(study, display):
        lines += _table(comparison)
    lines += [line for finding in study.all_findings() for line in _finding_lines(finding)]
    if study.filled.assumed:
        lines += textwrap.wrap("Assumed, not given: " + ", ".join(sorted(study.filled.assumed)), WIDTH)
    return "\n".join(lines) + "\n"


def _table(comparison: Comparison) -> list[str]:
    title = "" if comparison.leaf == "single" else f"{comparison.leaf} leaf"
    head = [
        title,
        *(f"{width} hinge" for width in comparison.widths),
        f"difference, {comparison.between}" if comparison.between else "",
    ]
    body = [[f"{row.plain} ({row.trade})", *row.values, row.difference] for row in comparison.rows]
    table = [head, *body]
    widths = [max(len(line[column]) for line in table) for column in range(len(head))]
    return ["  ".join(cell.ljust(w) for cell, w in zip(line, widths, strict=True)).rstrip() for line in table]


def _finding_lines(finding: Finding) -> list[str]:
    text = f"{finding.severity}: {finding.message} [{cited(finding.source, finding.mark_of_source)}]"
    return textwrap.wrap(text, WIDTH, subsequent_indent="    ")
