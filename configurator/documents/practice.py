"""How far somebody is in practice, as a page for the one who teaches."""

from datetime import date

from configurator.documents.document import Column, Document, Table
from configurator.practice.course import LEVELS, TOPICS, of_topic
from configurator.practice.progress import Progress, Tally, strength
from configurator.sentences import capitalized

_TOPICS = (
    Column("topic", "topic", "text", 20),
    Column("kinds", "kinds of problem", "count", 8),
    Column("known", "known", "count", 8),
    Column("stands", "stands", "text", 8),
    Column("answered", "answered", "count", 9),
    Column("right", "right at first try", "count", 9),
)
_WEAK = (
    Column("problem", "kind of problem", "text", 34),
    Column("topic", "topic", "text", 18),
    Column("level", "level", "count", 7),
    Column("wrong", "went wrong", "count", 8),
    Column("due", "due again", "text", 12),
)
_NOTE = (
    "A kind of problem is known after two right answers in a row on different days; a topic once all its "
    "kinds are, each among problems of other kinds too. What went wrong comes back the same day, what went "
    "right after 1, 3, 7, 16 and 35 days."
)


def progress_document(progress: Progress, today: date) -> Document:
    """Return a person's progress: topic by topic, and what is weak."""
    tables = (_topics(progress), _weak(progress, today))
    answered = sum(count for count, _ in progress.days.values())
    jobs = ", ".join(str(level) for level in LEVELS if str(level) in progress.jobs)
    head = (
        ("Date", today.isoformat()),
        ("Known", f"{progress.known('')} of {len(of_topic(''))} kinds of problem"),
        (
            "Practised",
            f"{len(progress.days)} days, {answered} answers; {progress.days_in_a_row(today)} days in a row",
        ),
        ("Small jobs passed", f"levels {jobs}" if jobs else "none yet"),
    )
    shown = tuple(table for table in tables if table.rows)
    return Document("Practice", (("Name", progress.person),), shown, shown, (_NOTE,), head=head)


def _due(tally: Tally, today: date) -> str:
    return "now" if tally.is_due(today) else tally.due


def _topics(progress: Progress) -> Table:
    rows = []
    for topic in TOPICS:
        tallies = [progress.of(one) for one in of_topic(topic)]
        right, wrong = sum(one.right for one in tallies), sum(one.wrong for one in tallies)
        stands = strength(progress, topic)
        rows.append((capitalized(topic), len(tallies), progress.known(topic), stands, right + wrong, right))
    return Table("Topics", _TOPICS, tuple(rows))


def _weak(progress: Progress, today: date) -> Table:
    rows = tuple(
        (capitalized(one.key), one.topic, one.level, progress.of(one).wrong, _due(progress.of(one), today))
        for one in progress.weak()
    )
    return Table("Weak", _WEAK, rows)
