"""What is said when an opening is changed that was approved or ordered: nothing is stopped. No Qt here."""

from collections.abc import Container, Iterable, Iterator

from configurator.model import Job, Opening

SETTLED = ("approved", "ordered", "received")
NOT_PART_OF_IT = {
    "status", "order_state", "notes", "questions", "level", "remarks", "other_columns", "global_id",
    "background",
}  # fmt: skip
"""What may be written down about an opening at any time: it is not what was approved or ordered."""
_NAMED = 3


def settled_changes(before: Iterable[Opening], job: Job, told: frozenset[str]) -> tuple[frozenset[str], str]:
    """Return the marks told about by now, and what to say of settled openings that are not as they were.

    `before` are openings as they were, those that stayed the same may be among them. A mark in `told` was
    spoken of earlier, and is again only after its status was changed.
    """
    settled = [opening for opening in before if opening.settled or opening.mark in told]
    kept = {id(opening) for opening in job.openings} if settled else set()
    gone = [opening for opening in settled if id(opening) not in kept]
    if not gone:
        return told, ""
    now = {opening.mark: opening for opening in job.openings}
    fresh = {was.mark for was in gone if was.mark in now and now[was.mark].settled != was.settled}
    changed = list(_changed(gone, now, told - fresh))
    told = told - fresh | {opening.mark for opening in changed}
    return told, " ".join(_said(status, changed, job) for status in SETTLED if _of(status, changed))


def _changed(gone: Iterable[Opening], now: dict[str, Opening], told: Container[str]) -> Iterator[Opening]:
    for was in gone:
        if was.settled and was.mark not in told:
            after = now.get(was.mark)
            if after is None or _what_counts(was) != _what_counts(after):
                yield was


def _what_counts(opening: Opening) -> dict[str, object]:
    return opening.model_dump(exclude=NOT_PART_OF_IT)


def _of(status: str, openings: Iterable[Opening]) -> list[str]:
    return [opening.mark for opening in openings if opening.settled == status]


def _said(status: str, changed: Iterable[Opening], job: Job) -> str:
    marks = _of(status, changed)
    more = f" and {len(marks) - _NAMED} more" if len(marks) > _NAMED else ""
    names = f"{', '.join(marks[:_NAMED])}{more} {'is' if len(marks) == 1 else 'are'} marked {status}"
    if status == "approved":
        return f"{names}; what is changed now was not approved."
    if job.revisions:
        return f"{names}; what was ordered is kept under revisions."
    return f"{names}; no order of this job is kept as a revision to compare with."
