"""The tallies of a whole job, each kind of opening studied once, a large job by every core."""

from collections import Counter
from collections.abc import Generator, Mapping, Sequence
from contextlib import closing
from dataclasses import replace

from configurator.long_work import ROWS_A_STEP, Progress, unwatched
from configurator.model import Job, JobFacts, Opening
from configurator.order.helpers import helpers_for, tally_each
from configurator.order.tally import KnownFindings, Tally, for_opening, held_once, study_key, tally_of


def tally_job(job: Job, progress: Progress = unwatched) -> tuple[Tally, ...]:
    """Study every kind of opening of a job and keep a tally of each mark. Raises what `progress` raises."""
    book, total = TallyBook(job.job), len(job.openings)
    progress(0, total)
    with closing(book.work_out(job.openings)) as steps:
        for done in steps:
            progress(done, total)
    return tuple(book.of(opening) for opening in job.openings)


class TallyBook:
    """The tallies of a job while it is worked on, kept by opening: an edit costs one study."""

    def __init__(self, facts: JobFacts | None = None) -> None:
        self._facts = facts or JobFacts()
        self._by_record: dict[int, Tally] = {}
        self._by_key: dict[str, Tally] = {}
        self._findings: KnownFindings = {}

    def use_facts(self, facts: JobFacts) -> None:
        """Answer for other facts of the job; what it asks of its hinges counts in every answer."""
        if facts.asks_of_hinges != self._facts.asks_of_hinges:
            self._by_record.clear()
            self._by_key.clear()
        self._facts = facts

    def known(self, opening: Opening) -> Tally | None:
        """Return the tally of this very record if it was worked out."""
        return self._by_record.get(id(opening))

    def work_out(self, openings: Sequence[Opening]) -> Generator[int, None, None]:
        """Work openings out, yielding how many are done every few milliseconds."""
        if not helpers_for(len(openings)):
            for done, opening in enumerate(openings, 1):
                self.of(opening)
                yield done
            return
        keys: list[str] = []
        for some in range(0, len(openings), ROWS_A_STEP):
            keys += map(study_key, openings[some : some + ROWS_A_STEP])
            yield 0
        alike = Counter(keys)
        unlike = {key: one for key, one in zip(keys, openings, strict=True) if key not in self._by_key}
        done = len(openings) - sum(alike[key] for key in unlike)
        with closing(self._shared_out(unlike)) as made:
            for new in made:
                done += sum(alike[key] for key in new)
                yield min(done, len(openings) - 1)
        for place, (key, opening) in enumerate(zip(keys, openings, strict=True)):
            self._by_record.setdefault(id(opening), for_opening(self._by_key[key], opening))
            if place % ROWS_A_STEP == 0:
                yield len(openings) - 1
        yield len(openings)

    def _shared_out(self, unlike: Mapping[str, Opening]) -> Generator[list[str], None, None]:
        """Study openings by every core and keep their tallies; yield the keys of those that are there."""
        keys, openings = list(unlike), list(unlike.values())
        with closing(tally_each(openings, self._facts, helpers_for(len(openings)))) as steps:
            for worked in steps:
                for place, one in worked:
                    findings = held_once(one.findings, self._findings)
                    self._by_key[keys[place]] = replace(one, opening=openings[place], findings=findings)
                yield [keys[place] for place, _ in worked]

    def of(self, opening: Opening) -> Tally:
        """Return the tally of an opening, studied now unless that of a like one is known."""
        found = self._by_record.get(id(opening))
        if found is not None:
            return found
        key = study_key(opening)
        if key not in self._by_key:
            self._by_key[key] = tally_of(opening, self._facts, self._findings)
        # A tally holds its record, so that no other one can come to have that identity.
        found = self._by_record[id(opening)] = for_opening(self._by_key[key], opening)
        return found

    def forget_others(self, openings: Sequence[Opening]) -> None:
        """Forget what belongs to records that are no longer there, once these are the most."""
        if len(self._by_record) > 2 * len(openings) + 100:
            there = {id(opening) for opening in openings}
            self._by_record = {place: kept for place, kept in self._by_record.items() if place in there}
            self._by_key = {study_key(one.opening): one for one in self._by_record.values()}
            self._findings = {}
