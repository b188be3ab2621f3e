"""Studies, widths and documents as plain text for a terminal."""

import textwrap
from collections.abc import Sequence
from itertools import zip_longest

from configurator.documents.document import FOR_THE_OFFICE, Column, Document, Table, cell_words, headed
from configurator.rules.finding import Finding
from configurator.rules.wording import leaf_named
from configurator.sentences import as_sentence
from configurator.study import Study
from configurator.study.hang import hinge_words
from configurator.study.tolerance.findings import tolerance_sentence, what_to_do
from configurator.study.tolerance.result import NAMES, ToleranceResult
from configurator.study.widths.leaf_widths import LeafWidths
from configurator.units import Display
from configurator.wording.comparison import Comparison, comparisons
from configurator.wording.hinge_order_line import verdict
from configurator.wording.hinge_parts import cited
from configurator.wording.width_words import break_words, headline, width_table

WIDTH = 110
"""Characters of a line."""
_RIGHT = ("count", "inches", "degrees", "money")
_GAP = 2
_INDENT = " " * 8
WIDE = 20
"""Characters; a wider column holds sentences and lists."""
LONGEST_WORD = 24
"""Characters; a longer word is broken."""


def studies_as_text(studies: Sequence[Study], display: Display | None = None) -> str:
    """Return the comparison and findings of each study, one after the other."""
    shown = display or Display()
    return "\n".join(_study_text(study, shown) for study in studies)


def job_as_text(found: Sequence[Finding], display: Display | None = None) -> str:
    """Return what there is to say of the openings together; empty where there is nothing."""
    if not found:
        return ""
    heading = "The whole job"
    lines = ["", heading, "=" * len(heading)]
    lines += [line for one in found for line in _finding_lines(one, display or Display())]
    return "\n".join(lines) + "\n"


def _study_text(study: Study, display: Display) -> str:
    opening = study.opening
    size = display.opening(opening.size.width, opening.size.height)
    heading = "  ".join(
        part for part in (opening.mark, opening.location or "", size, opening.hand or "") if part
    )
    lines = [heading, "=" * len(heading)]
    for comparison in comparisons(study, display):
        lines += _comparison_lines(comparison)
    lines += filter(None, [verdict(study)])
    lines += [line for finding in study.all_findings() for line in _finding_lines(finding, display)]
    if study.filled.assumed:
        lines += textwrap.wrap("Assumed, not given: " + ", ".join(sorted(study.filled.assumed)), WIDTH)
    return "\n".join(lines) + "\n"


def _comparison_lines(comparison: Comparison) -> list[str]:
    title = leaf_named(comparison.leaf)
    head = [
        title,
        *comparison.heads,
        f"difference, {comparison.between}" if comparison.between else "",
    ]
    body = [[f"{row.plain} ({row.trade})", *row.values, row.difference] for row in comparison.rows]
    return [*_columns([head, *body]), *_told_lines(comparison)]


def _told_lines(comparison: Comparison) -> list[str]:
    """Return a sentence a way of hanging on what no number measures; none where butts alone are compared."""
    told = {
        name: "; ".join(f"{row.plain}: {row.values[place]}" for row in comparison.told)
        for place, name in enumerate(comparison.widths if comparison.told else ())
    }
    sentences = [f"{name}: {text}." for name, text in told.items()]
    return [line for one in sentences for line in textwrap.wrap(one, WIDTH, subsequent_indent="    ")]


def _columns(rows: Sequence[Sequence[str]]) -> list[str]:
    """Return rows of cells as lines, each column as wide as its widest cell."""
    widths = [max(map(len, cells)) for cells in zip(*rows, strict=True)]
    return ["  ".join(cell.ljust(w) for cell, w in zip(row, widths, strict=True)).rstrip() for row in rows]


def _finding_lines(finding: Finding, display: Display) -> list[str]:
    text = f"{finding.severity}: {finding.said(display)} [{cited(finding.source, finding.mark_of_source)}]"
    return textwrap.wrap(text, WIDTH, subsequent_indent="    ")


def tolerance_as_text(mark: str, result: Sequence[ToleranceResult], display: Display | None = None) -> str:
    """Return a line for each hinge width of an opening, and the tolerances that they rest on."""
    heading = f"{mark}: how sure"
    lines, shown = ["", heading, "=" * len(heading)], display or Display()
    for one in result:
        lines += textwrap.wrap(_tolerance_line(one, shown), WIDTH, subsequent_indent="    ")
    if result:
        lines += textwrap.wrap(_tolerances(result[0], shown), WIDTH, subsequent_indent="    ")
    return "\n".join(lines) + "\n"


def _tolerance_line(result: ToleranceResult, display: Display) -> str:
    leaf = leaf_named(result.leaf, ", {}")
    most = f" The {NAMES[result.matters_most]} matters most." if result.matters_most else ""
    said = " ".join(filter(None, (tolerance_sentence(result, display), what_to_do(result))))
    return f"{hinge_words(result.on)}{leaf}: {said}{most}"


def _tolerances(result: ToleranceResult, display: Display) -> str:
    assumed = result.tolerances.assumed
    taken = {key: " (assumed)" if f"tolerances.{key}" in assumed else "" for key in result.tolerances.values}
    each = [
        f"{key.replace('_', ' ')} {display.exact(value)}{taken[key]}"
        for key, value in result.tolerances.values.items()
    ]
    return f"Tolerances, plus or minus: {', '.join(each)}"


def widths_as_text(mark: str, leaves: Sequence[LeafWidths], display: Display | None = None) -> str:
    """Return the widths of each leaf of one opening."""
    shown = display or Display()
    return "\n".join(_leaf_text(mark, leaf, shown) for leaf in leaves) + "\n"


def _leaf_text(mark: str, leaf: LeafWidths, display: Display) -> str:
    named = mark + leaf_named(leaf.leaf, ", {}")
    heading = f"{named}: widths and angles"
    breaks = "; ".join(break_words(one, display)[0] for one in leaf.breaks)
    lines = ["", heading, "-" * len(heading), headline(leaf, display)]
    table = width_table(leaf, display)
    lines += [as_sentence(breaks)] if breaks else []
    return "\n".join([*lines, *_columns([table.heads, *(line.cells for line in table.lines)])])


def document_text(document: Document) -> str:
    """Return the heading, every sheet as a table, and the notes."""
    heading = f"{document.title}: {headed(document)}"
    lines = [*textwrap.wrap(heading, WIDTH), "=" * min(len(heading), WIDTH)]
    lines += [line for name, fact in document.head for line in textwrap.wrap(f"{name}: {fact}", WIDTH)]
    for table in document.sheets:
        lines += ["", table.title, "-" * len(table.title), *_table_lines(table)]
    lines += ["", *(line for note in document.notes for line in textwrap.wrap(note, WIDTH))]
    if document.office or document.office_notes:
        lines += ["", FOR_THE_OFFICE, "=" * len(FOR_THE_OFFICE)]
    for table in document.office:
        lines += ["", table.title, "-" * len(table.title), *_table_lines(table)]
    lines += [line for note in document.office_notes for line in textwrap.wrap(note, WIDTH)]
    return "\n".join(lines) + "\n"


def _table_lines(table: Table) -> list[str]:
    """Return a table's lines; of one too wide for the terminal the wide columns stand under each row."""
    if not table.rows:
        return ["nothing"]
    rows = [
        [column.heading for column in table.columns],
        *([cell_words(cell) for cell in row] for row in (*table.rows, *table.totals)),
    ]
    widths = _widths(rows, table.columns)
    under = any(column.under for column in table.columns)
    if sum(widths) + _GAP * (len(widths) - 1) <= WIDTH and not under:
        return [line for row in rows for line in _row_lines(row, widths, table.columns)]
    return _in_two_parts(rows, table.columns, widths)


def _in_two_parts(
    rows: Sequence[Sequence[str]], columns: Sequence[Column], widths: Sequence[int]
) -> list[str]:
    narrow = [index for index, column in enumerate(columns) if column.width < WIDE and not column.under]
    wide = [index for index in range(len(columns)) if index not in narrow]
    beside = [widths[index] for index in narrow], [columns[index] for index in narrow]
    titles = rows[0]
    lines = _row_lines([titles[index] for index in narrow], *beside)
    for row in rows[1:]:
        lines += _row_lines([row[index] for index in narrow], *beside)
        lines += _under([(titles[index], row[index]) for index in wide])
    return lines


def _under(said: Sequence[tuple[str, str]]) -> list[str]:
    text = "; ".join(f"{title.lower()}: {words}" for title, words in said if words)
    return textwrap.wrap(
        text, WIDTH, initial_indent=_INDENT, subsequent_indent=_INDENT, break_on_hyphens=False
    )


def _widths(rows: Sequence[Sequence[str]], columns: Sequence[Column]) -> list[int]:
    """Return what each column needs, no more than its usual width or its longest word."""
    return [
        min(max(map(len, cells)), max(column.width, *map(_longest_word, cells)))
        for cells, column in zip(zip(*rows, strict=True), columns, strict=True)
    ]


def _longest_word(text: str) -> int:
    return min(max((len(word) for word in text.split()), default=1), LONGEST_WORD)


def _row_lines(row: Sequence[str], widths: Sequence[int], columns: Sequence[Column]) -> list[str]:
    cells = [
        [piece for line in text.split("\n") for piece in textwrap.wrap(line, width, break_on_hyphens=False)]
        or [""]
        for text, width in zip(row, widths, strict=True)
    ]
    return [
        (" " * _GAP)
        .join(
            piece.rjust(width) if column.kind in _RIGHT else piece.ljust(width)
            for piece, width, column in zip(pieces, widths, columns, strict=True)
        )
        .rstrip()
        for pieces in zip_longest(*cells, fillvalue="")
    ]
