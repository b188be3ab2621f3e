"""Undo and redo over whole jobs, each step named as the user would name it."""

from dataclasses import dataclass

from configurator.model import Job

LONGEST = 500
"""Steps kept; a step shares the openings that it did not change with the step before, so it costs little."""


@dataclass(frozen=True, slots=True)
class Step:
    """A job as it stood after one change, and what the change was."""

    job: Job
    name: str = ""
    field: str | None = None
    """What was edited; two edits in a row of the same field count as one step."""


class History:
    """The states a job went through, where in them the user is, and which of them is on disk."""

    def __init__(self, job: Job, *, saved: bool = True) -> None:
        self._steps = [Step(job)]
        self._now = 0
        self._saved: int | None = 0 if saved else None

    @property
    def job(self) -> Job:
        """The job as it stands now."""
        return self._steps[self._now].job

    @property
    def unsaved(self) -> bool:
        """Whether the job as it stands differs from what was last saved or opened."""
        return self._now != self._saved

    @property
    def undo_name(self) -> str | None:
        """What undo would take back, as "change door thickness of 112A"; None with nothing to undo."""
        return self._steps[self._now].name if self._now else None

    @property
    def redo_name(self) -> str | None:
        """What redo would do again; None with nothing to redo."""
        return self._steps[self._now + 1].name if self._now + 1 < len(self._steps) else None

    def push(self, job: Job, name: str, field: str | None = None) -> None:
        """Take `job` as the new state; what had been undone is forgotten.

        An edit of the same `field` as the step before joins that step, unless that one was saved or something
        had been undone. An edit that leads back to where its step began removes the step. No change, no step.
        """
        if job == self.job:
            return
        merging = field is not None and self._can_join(field)
        self._forget_undone()
        if merging:
            self._drop_last()
        if job != self.job:
            self._append(Step(job, name, field))

    def undo(self) -> str | None:
        """Step back; return the name of what was taken back, None with nothing to undo."""
        name = self.undo_name
        if name is not None:
            self._now -= 1
        return name

    def redo(self) -> str | None:
        """Step forward again; return the name of what was done again, None with nothing to redo."""
        name = self.redo_name
        if name is not None:
            self._now += 1
        return name

    def mark_saved(self) -> None:
        """Note that the job as it stands is on disk."""
        self._saved = self._now

    def _can_join(self, field: str) -> bool:
        last = self._now == len(self._steps) - 1
        return last and self._now > 0 and self._saved != self._now and self._steps[self._now].field == field

    def _forget_undone(self) -> None:
        del self._steps[self._now + 1 :]
        if self._saved is not None and self._saved > self._now:
            self._saved = None

    def _drop_last(self) -> None:
        self._steps.pop()
        self._now -= 1

    def _append(self, step: Step) -> None:
        self._steps.append(step)
        self._now += 1
        if len(self._steps) > LONGEST:
            del self._steps[0]
            self._now -= 1
            self._saved = self._saved - 1 if self._saved else None
