"""The door schedule: a row for every mark, with its hinges and its swing; and the questions still open."""

from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from configurator.documents.document import Cell, Column, Table
from configurator.model import Job, Opening
from configurator.order.tally import LeafTally, Tally
from configurator.rules.finding import SEVERITIES
from configurator.rules.wording import counted, feet, size
from configurator.units import format_angle

NOT_WORKED_OUT = "not worked out"
NO_QUESTIONS = "No opening of this job has a question to the architect."


@dataclass(frozen=True, slots=True)
class ScheduleRow:
    """One mark of the schedule; sizes are inches, `angles` degrees, one for each leaf.

    The opening's own facts are as they were given, None where they were not.

    `hinge` and `angle` name each leaf where there are two, and what an opening hangs on instead of hinges.
    """

    mark: str
    location: str | None
    quantity: int
    status: str
    order_state: str
    hand: str | None
    leaves: str
    size: str
    width: float
    height: float
    thickness: float | None
    door: str | None
    frame: str
    frame_proud: float | None
    fire: bool | None
    minutes: int | None
    level: str | None
    hardware_set: str | None
    glass: str | None
    details: tuple[str | None, str | None, str | None]
    hung_on: str
    hinge: str
    angle: str
    stopped_by: str
    angles: tuple[float | None, ...]
    errors: int
    warnings: int
    notes_of_program: int
    findings: str
    notes: str | None
    questions: str | None
    remarks: str | None
    other_columns: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class ScheduleColumn:
    """A column with the cell it takes from a row; `path` is the field it gives, empty where worked out."""

    column: Column
    cell: Callable[[ScheduleRow], Cell]
    path: str = ""
    on_paper: bool = False


COLUMNS = (
    ScheduleColumn(Column("mark", "mark", "text", 9), lambda row: row.mark, path="mark", on_paper=True),
    ScheduleColumn(
        Column("location", "location", "text", 22), lambda row: row.location, path="location", on_paper=True
    ),
    ScheduleColumn(
        Column("quantity", "quantity", "count", 8), lambda row: row.quantity, path="quantity", on_paper=True
    ),
    ScheduleColumn(
        Column("status", "status", "text", 12), lambda row: row.status, path="status", on_paper=True
    ),
    ScheduleColumn(
        Column("order_state", "state of order", "text", 12), lambda row: row.order_state, path="order_state"
    ),
    ScheduleColumn(Column("hand", "hand", "text", 5), lambda row: row.hand, path="hand", on_paper=True),
    ScheduleColumn(
        Column("leaves", "leaves", "text", 8), lambda row: row.leaves, path="leaves", on_paper=True
    ),
    ScheduleColumn(
        Column("size", "size, width x height", "text", 16), lambda row: row.size, path="size", on_paper=True
    ),
    ScheduleColumn(Column("width", "width", "inches", 8), lambda row: row.width, path="size.width"),
    ScheduleColumn(Column("height", "height", "inches", 8), lambda row: row.height, path="size.height"),
    ScheduleColumn(
        Column("thickness", "thickness", "inches", 8), lambda row: row.thickness, path="door.thickness"
    ),
    ScheduleColumn(Column("door", "door", "text", 20), lambda row: row.door, path="door.construction"),
    ScheduleColumn(
        Column("frame", "frame", "text", 20), lambda row: row.frame, path="frame.kind", on_paper=True
    ),
    ScheduleColumn(
        Column("frame_proud", "frame proud of wall", "inches", 8),
        lambda row: row.frame_proud,
        path="wall.frame_proud",
    ),
    ScheduleColumn(Column("fire", "fire rated", "flag", 6), lambda row: row.fire, path="use.fire_rated"),
    ScheduleColumn(
        Column("fire_minutes", "fire rating, minutes", "count", 8),
        lambda row: row.minutes,
        path="fire_minutes",
    ),
    ScheduleColumn(Column("level", "level", "text", 8), lambda row: row.level, path="level"),
    ScheduleColumn(
        Column("hardware_set", "hardware set", "text", 8), lambda row: row.hardware_set, path="hardware_set"
    ),
    ScheduleColumn(Column("glass", "glass", "text", 10), lambda row: row.glass, path="glass"),
    ScheduleColumn(Column("head", "head detail", "text", 8), lambda row: row.details[0], path="details.head"),
    ScheduleColumn(Column("jamb", "jamb detail", "text", 8), lambda row: row.details[1], path="details.jamb"),
    ScheduleColumn(Column("sill", "sill detail", "text", 8), lambda row: row.details[2], path="details.sill"),
    ScheduleColumn(Column("hung_on", "hung on", "text", 14), lambda row: row.hung_on, path="hung_on"),
    ScheduleColumn(Column("hinge", "hinges", "text", 20), lambda row: row.hinge, on_paper=True),
    ScheduleColumn(Column("angle", "opens to", "text", 14), lambda row: row.angle, on_paper=True),
    ScheduleColumn(Column("stopped_by", "stopped by", "text", 12), lambda row: row.stopped_by, on_paper=True),
    ScheduleColumn(Column("errors", "errors", "count", 7), lambda row: row.errors),
    ScheduleColumn(Column("findings", "findings", "text", 40), lambda row: row.findings, on_paper=True),
    ScheduleColumn(Column("notes", "notes", "text", 24), lambda row: row.notes, path="notes"),
    ScheduleColumn(
        Column("questions", "questions to the architect", "text", 24),
        lambda row: row.questions,
        path="questions",
    ),
    ScheduleColumn(
        Column("remarks", "schedule's remarks", "text", 24), lambda row: row.remarks, path="remarks"
    ),
)


def schedule_rows(tallies: Iterable[Tally]) -> tuple[ScheduleRow, ...]:
    """Return a row for every mark, in the order of the job."""
    return tuple(schedule_row(one) for one in tallies)


def schedule_row(one: Tally) -> ScheduleRow:
    """Return the row of one mark."""
    opening = one.opening
    severities = Counter(found.severity for found in one.findings)
    return ScheduleRow(
        mark=opening.mark,
        location=opening.location,
        quantity=opening.quantity,
        status=opening.status,
        order_state=opening.order_state,
        hand=opening.hand,
        leaves=opening.leaves,
        size=f"{feet(opening.size.width)} x {feet(opening.size.height)}",
        width=opening.size.width,
        height=opening.size.height,
        thickness=opening.door.thickness,
        door=opening.door.construction,
        frame=opening.frame.kind,
        frame_proud=opening.wall.frame_proud,
        fire=opening.fire_label,
        minutes=opening.fire_minutes,
        level=opening.level,
        hardware_set=opening.hardware_set,
        glass=opening.glass,
        details=(opening.details.head, opening.details.jamb, opening.details.sill),
        hung_on=opening.hung_on,
        hinge=_hinge(one),
        angle=_by_leaf(one, _angle),
        stopped_by=_by_leaf(one, lambda leaf: leaf.stopped_by or ""),
        angles=tuple(leaf.greatest_angle for leaf in one.leaves or one.otherwise),
        errors=severities["error"] + (one.fault is not None),
        warnings=severities["warning"],
        notes_of_program=severities["note"],
        findings=_findings(one),
        notes=opening.notes,
        questions=opening.questions,
        remarks=opening.remarks,
        other_columns=opening.other_columns,
    )


def schedule_table(tallies: Iterable[Tally], on_paper: bool = False) -> Table:
    """Return the schedule as a table: every column, or those that a sheet of paper has room for."""
    shown = tuple(one for one in COLUMNS if one.on_paper or not on_paper)
    of_openings = schedule_rows(tallies)
    kept = dict.fromkeys(name for row in of_openings for name in row.other_columns) if not on_paper else ()
    columns = (*(one.column for one in shown), *(Column(name, name, "text", 12) for name in kept))
    rows = (
        (*(one.cell(row) for one in shown), *(row.other_columns.get(name) for name in kept))
        for row in of_openings
    )
    return Table("Schedule", columns, tuple(rows))


def _hinge(one: Tally) -> str:
    if one.fault is not None:
        return NOT_WORKED_OUT
    if not one.leaves:
        return one.opening.hung_on
    return _by_leaf(one, _hinges_of_leaf)


def _hinges_of_leaf(leaf: LeafTally) -> str:
    if leaf.width is None:
        return "none to be had"
    return f"{leaf.count} x {size(leaf.height, leaf.width)}"


def _angle(leaf: LeafTally) -> str:
    return "" if leaf.greatest_angle is None else format_angle(leaf.greatest_angle)


def _by_leaf(one: Tally, words: Any) -> str:
    """Return the words for each leaf, once where both are the same."""
    by_leaf = {leaf.leaf: words(leaf) for leaf in one.leaves or one.otherwise}
    if len(set(by_leaf.values())) <= 1:
        same = next(iter(by_leaf.values()), "")
        return f"{same} each leaf" if same and len(by_leaf) > 1 else same
    return "; ".join(f"{leaf} {text}" for leaf, text in by_leaf.items() if text)


def _findings(one: Tally) -> str:
    """Count the findings of each severity, and name what the errors and warnings are about."""
    if one.fault is not None:
        return f"error: {one.fault}"
    counts = []
    for severity in SEVERITIES:
        codes = [found.code for found in one.findings if found.severity == severity]
        if codes:
            many = counted(len(codes), severity, f"{severity}s")
            counts.append(many if severity == "note" else f"{many}: {', '.join(dict.fromkeys(codes))}")
    return "; ".join(counts)


# --- Questions to the architect ---


def with_questions(job: Job) -> tuple[Opening, ...]:
    """Return the openings that have a question, in the order of the job."""
    return tuple(opening for opening in job.openings if opening.questions and opening.questions.strip())


def questions_text(job: Job) -> str:
    """Return all questions as a text to send: the job, then each mark with its location and question."""
    open_ones = with_questions(job)
    if not open_ones:
        return NO_QUESTIONS
    about = ", ".join(fact for fact in (job.job.name, job.job.number) if fact)
    head = f"Questions to the architect{': ' if about else ''}{about}"
    return "\n\n".join([head, *(_question(opening) for opening in open_ones)])


def _question(opening: Opening) -> str:
    name = ", ".join(filter(None, (opening.mark, opening.location)))
    lines = "\n".join(f"  {line}" for line in (opening.questions or "").strip().splitlines())
    return f"{name}\n{lines}"
