"""What is worked out for the schedule, kept by opening: a few words each, not whole studies. No Qt."""

from collections.abc import Callable, Generator, Iterable, Sequence
from contextlib import closing
from dataclasses import dataclass
from typing import Any

from configurator.long_work import ROWS_A_STEP
from configurator.model import JobFacts, Opening


@dataclass(frozen=True, slots=True)
class Answer:
    """The hinges and how far the door opens, in words; findings counted by severity, and named.

    `least_angle` is that of the leaf that opens least, degrees; None where there is none. `fault` says why
    the opening could not be studied.
    """

    hinge: str
    angle: str
    least_angle: float | None
    errors: int
    warnings: int
    notes: int
    findings: str
    fault: str = ""

    @property
    def counted(self) -> str:
        """Findings in words by severity: `1 error, 2 notes`."""
        counts = ((self.errors, "error"), (self.warnings, "warning"), (self.notes, "note"))
        said = [f"{number} {word}{'' if number == 1 else 's'}" for number, word in counts if number]
        return ", ".join(said) or "none"


def together(answers: Sequence[Answer]) -> Answer:
    """Return one answer for openings that share a row: what all have alike, else of how many kinds it is."""
    if len({id(answer) for answer in answers}) == 1:
        return answers[0]
    angles = [answer.least_angle for answer in answers if answer.least_angle is not None]
    return Answer(
        hinge=_same_or_many(answer.hinge for answer in answers),
        angle=_same_or_many(answer.angle for answer in answers),
        least_angle=min(angles, default=None),
        errors=sum(answer.errors for answer in answers),
        warnings=sum(answer.warnings for answer in answers),
        notes=sum(answer.notes for answer in answers),
        findings="; ".join(dict.fromkeys(answer.findings for answer in answers if answer.findings)),
        fault=next((answer.fault for answer in answers if answer.fault), ""),
    )


def _same_or_many(texts: Iterable[str]) -> str:
    found = set(texts)
    return found.pop() if len(found) == 1 else f"{len(found)} different"


Studier = Callable[[Opening, JobFacts], Answer]


class Answers:
    """Answers by opening; like openings share one, and one is forgotten when what it rests on changes."""

    def __init__(self, studier: Studier | None = None) -> None:
        self._studier = studier or answer_of
        self._facts = JobFacts()
        self._by_record: dict[int, tuple[Opening, Answer]] = {}
        self._by_key: dict[str, Answer] = {}

    def use_facts(self, facts: JobFacts) -> None:
        """Answer for another job's facts; what it asks of its hinges counts in every answer."""
        if facts.asks_of_hinges != self._facts.asks_of_hinges:
            self._by_record.clear()
            self._by_key.clear()
        self._facts = facts

    def known(self, opening: Opening) -> Answer | None:
        """Return the answer for this very record if it was worked out."""
        found = self._by_record.get(id(opening))
        return found[1] if found is not None else None

    def work_out(self, opening: Opening) -> Answer:
        """Return the answer, worked out now unless it or a like opening's is known."""
        found = self._by_record.get(id(opening))
        if found is not None:
            return found[1]
        from configurator.order.tally import study_key  # the order desk is loaded on use

        key = study_key(opening)
        answer = self._by_key.get(key)
        if answer is None:
            answer = self._by_key[key] = self._studier(opening, self._facts)
        # The record is kept beside its answer, so that no other one can come to have its identity.
        self._by_record[id(opening)] = (opening, answer)
        return answer

    def work_out_all(self, openings: Sequence[Opening]) -> Generator[int, None, None]:
        """Work openings out, a large job by every core; yield how many are done every few milliseconds.

        Those that are done stay known when it is closed before its end.
        """
        from configurator.order.helpers import helpers_for, tally_each
        from configurator.order.tally import study_key

        unlike: dict[str, list[Opening]] = {}
        for place, opening in enumerate(openings):
            unlike.setdefault(study_key(opening), []).append(opening)
            if place % ROWS_A_STEP == 0:
                yield 0
        asked = [(key, alike) for key, alike in unlike.items() if key not in self._by_key]
        done = len(openings) - sum(len(alike) for _, alike in asked)
        firsts = [alike[0] for _, alike in asked]
        with closing(tally_each(firsts, self._facts, helpers_for(len(firsts)))) as steps:
            for worked in steps:
                for place, tallied in worked:
                    key, alike = asked[place]
                    answer = self._by_key[key] = _answer(tallied)
                    self._by_record |= {id(one): (one, answer) for one in alike}
                    done += len(alike)
                yield done
        for place, opening in enumerate(openings):
            self.work_out(opening)
            if place % ROWS_A_STEP == 0:
                yield done

    def forget_others(self, openings: Sequence[Opening]) -> None:
        """Forget what belongs to records that are no longer there, once these are the most."""
        if len(self._by_record) > 2 * len(openings) + 100:
            there = {id(opening) for opening in openings}
            self._by_record = {place: kept for place, kept in self._by_record.items() if place in there}
            answers = {id(answer) for _, answer in self._by_record.values()}
            self._by_key = {key: answer for key, answer in self._by_key.items() if id(answer) in answers}


def answer_of(opening: Opening, facts: JobFacts) -> Answer:
    """Study an opening and keep what the schedule shows of it, in the words of the printed one."""
    from configurator.order.tally import tally_of

    return _answer(tally_of(opening, facts))


def _answer(tallied: Any) -> Answer:
    from configurator.documents.schedule import schedule_row

    row = schedule_row(tallied)
    angles = [angle for angle in row.angles if angle is not None]
    return Answer(
        hinge=row.hinge,
        angle=row.angle,
        least_angle=min(angles, default=None),
        errors=row.errors,
        warnings=row.warnings,
        notes=row.notes_of_program,
        findings=row.findings,
        fault=tallied.fault or "",
    )
